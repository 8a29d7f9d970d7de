/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/pan/sw-step-list.h"
#include "app/pan/sw-step-row.h"

G_BEGIN_DECLS

/* Shared by the files of the list: its actions and its drags. */

struct _SwStepList
{
  AdwBin parent_instance;

  SwLive *live;
  SwSelection *selection;
  gboolean inches;
  SwStepRow *drop_row; /* the row that bears the drop line, or NULL */
  SwDrop drop;

  GtkListView *list;
  GtkStack *stack;
  GMenuModel *row_menu;
  GtkWidget *menu;
};

SwDocument *sw_step_list_document (SwStepList *self); /* (nullable) */

/* The row at @y in the list's own coordinates, or NULL. */
SwStepRow *sw_step_list_row_at (SwStepList *self, double x, double y);

/* Puts the keyboard on the step's row once the list has it. */
void sw_step_list_focus (SwStepList *self, guint step);

void sw_step_list_install_actions (GtkWidgetClass *widget_class);
void sw_step_list_update_actions (SwStepList *self);
void sw_step_list_accept_drops (SwStepList *self);

G_END_DECLS
