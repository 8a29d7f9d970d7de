/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-value.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* SwSwatch: a small patch of one colour, as a dye pot or a pour is marked with. */
#define SW_TYPE_SWATCH (sw_swatch_get_type ())
G_DECLARE_FINAL_TYPE (SwSwatch, sw_swatch, SW, SWATCH, GtkWidget)

/**
 * sw_swatch_set_sample:
 * @sample: (nullable): NULL shows an empty outline
 */
void sw_swatch_set_sample (SwSwatch *self, const SwSample *sample);

/**
 * sw_swatch_set_text:
 * @text: (nullable): a number to stand in the swatch, in black or white by the colour
 */
void sw_swatch_set_text (SwSwatch *self, const char *text);

/* The colour a sample has on the screen. */
GdkRGBA sw_sample_to_rgba (const SwSample *sample);

G_END_DECLS
