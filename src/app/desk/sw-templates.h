/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/* What a new drawing can begin with. They are demo colourways built into the program. */
typedef struct
{
  const char *id;    /* in actions: "bands" */
  const char *label; /* for people, marked with N_() */
  const char *demo;  /* the file's name without its ending; NULL for a pan with nothing in it but water and heat */
} SwTemplate;

extern const SwTemplate sw_templates[];
extern const gsize sw_n_templates;

/* (nullable) */
const SwTemplate *sw_template_find (const char *id);

/**
 * sw_template_new_sketch:
 * Returns: (transfer full): a drawing to make one's own: without a title or notes, and with heat after every pour:
 *   an empty pan begins with a rest and a set, so that what is poured before them shows its colour
 */
SwSketch *sw_template_new_sketch (const SwTemplate *self, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_template_demo:
 * Returns: (transfer full): the colourway that the program opens with, title and notes and all
 */
SwSketch *sw_template_demo (GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
