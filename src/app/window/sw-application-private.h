/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/window/sw-application.h"
#include "app/window/sw-window.h"

G_BEGIN_DECLS

struct _SwApplication
{
  AdwApplication parent_instance;

  GSettings *settings;
  SwDrafts *drafts;     /* NULL if drafts cannot be kept */
  char *drafts_problem; /* why not */
  GPtrArray *recovered; /* of SwDraft: found at start, not yet offered */
};

void sw_application_add_actions (SwApplication *self);

SwWindow *sw_application_new_window (SwApplication *self);

/* Opens the folder of drafts, and takes over what a program that stopped left there. */
void sw_application_find_drafts (SwApplication *self);

/* Asks once whether to bring back what was found. */
void sw_application_offer_drafts (SwApplication *self);

G_END_DECLS
