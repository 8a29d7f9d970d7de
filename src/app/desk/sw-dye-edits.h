/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "forecast/sw-forecast.h"
#include "sketch/sw-edit.h"

G_BEGIN_DECLS

/* Edits of the dye pots, and what is to be known before them. */

/**
 * sw_dye_edits_new:
 * @id: (out): the new pot's
 * A pot with a colour that no other has yet, and a name that says so.
 */
SwEdit *sw_dye_edits_new (const SwSketch *sketch, guint *id) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full) (nullable): NULL if @dye is none */
SwEdit *sw_dye_edits_duplicate (const SwSketch *sketch, guint dye, guint *id) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_dye_edits_delete:
 * The pours of the dye go with it.
 */
SwEdit *sw_dye_edits_delete (const SwSketch *sketch, guint dye) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_dye_edits_class:
 * The class, and the half-time that is usual for it.
 */
SwEdit *sw_dye_edits_class (guint dye, SwDyeClass dye_class) G_GNUC_WARN_UNUSED_RESULT;

/* Ids of the pours of a dye, in the order of the dyeing: (element-type guint) (transfer full). */
GArray *sw_dye_pours (const SwSketch *sketch, guint dye) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_dye_pours_sentence:
 * Returns: (transfer full) (nullable): why the dye cannot simply go: "3 pours use it: 1 Canal, 4 Sky, 7 Far bank."; NULL if none does
 */
char *sw_dye_pours_sentence (const SwSketch *sketch, guint dye) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_dye_window_words:
 * Returns: (transfer full) (nullable): the pH at which dyes of the class are usually dyed: "Usually dyed at pH 4 to 6."; NULL if the class is not known
 */
char *sw_dye_window_words (SwDyeClass dye_class) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_dye_window_warning:
 * @forecast: (nullable)
 * Returns: (transfer full) (nullable): a sentence if the bath leaves that window while the dye is in it and strikes
 */
char *sw_dye_window_warning (const SwForecast *forecast, guint dye) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
