/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/* What dyes and steps are called, by the dyer or for want of that. */

/* Returns: (transfer none): the dye's name; "a dye without a name", translated, if it has none or is NULL */
const char *sw_dye_title (const SwDye *dye);

/* The same of its name alone. */
const char *sw_dye_name_title (const char *name);

/**
 * sw_step_title:
 * Returns: (transfer full): what the dyer calls it, or else its kind and dye: "Band of Teal"
 */
char *sw_step_title (const SwSketch *sketch, const SwStep *step) G_GNUC_WARN_UNUSED_RESULT;

/* The same of a step that is not in a sketch. @kind: SwStepKind, or -1: not known. @name, @dye_name: (nullable) */
char *sw_step_title_of (int kind, const char *name, const char *dye_name) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
