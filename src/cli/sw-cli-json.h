/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "colour/sw-spectrum.h"

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/*
 * Figures as they are printed: rounded to what stays the same on every
 * machine, since the last bits of a sum do not.
 */
#define SW_DIGITS_FIGURE 9 /* lengths, counts, pH: plain arithmetic */
#define SW_DIGITS_MASS 12  /* grams of dye, so that the balance closes */
#define SW_DIGITS_SUM 10   /* a single sum of `calc` */
#define SW_DIGITS_COLOUR 5 /* colours averaged along the strand, in single precision */

/* @number to so many significant digits. */
double sw_cli_round (double number, int digits);

void sw_cli_json_number (JsonBuilder *builder, const char *member, double number, int digits);
void sw_cli_json_whole (JsonBuilder *builder, const char *member, gint64 whole);
void sw_cli_json_text (JsonBuilder *builder, const char *member, const char *text);

/* @member: (nullable): NULL inside a list */
void sw_cli_json_numbers (JsonBuilder *builder, const char *member, const double *numbers, gsize n, int digits);

/* "xyz": [X, Y, Z]; "lab": [L, a, b]; "srgb": [r, g, b] of whole codes, and "hex": "#rrggbb". */
void sw_cli_json_xyz (JsonBuilder *builder, SwXyz xyz, int digits);
void sw_cli_json_lab (JsonBuilder *builder, SwLab lab, int digits);
void sw_cli_json_srgb (JsonBuilder *builder, SwSrgb srgb);

/* "#rrggbb". */
char *sw_cli_hex (SwSrgb srgb) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
