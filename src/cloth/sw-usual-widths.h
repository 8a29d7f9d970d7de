/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/* What knitters usually make at which widths. */

#define SW_USUAL_SIZES 4

typedef struct
{
  const char *label; /* for people, marked with NC_("knitting") */
  SwWorked worked;
  gsize n;
  gsize widths[SW_USUAL_SIZES]; /* stitches, rising, no two the same */
} SwUsualWidths;

#define SW_N_USUAL 7

/**
 * sw_usual_widths:
 * @usual: (out caller-allocates): SW_N_USUAL pieces; those in one way of working from narrow to wide
 * The usual finished sizes of each piece at a gauge, in the multiple of
 * stitches that its patterns are written in: at 30 stitches to 10 cm a sock
 * has 56, 60, 64 or 72.
 */
void sw_usual_widths (double stitches_per_10cm, SwUsualWidths *usual);

/* Returns: (nullable): what is usually knitted at just that width, translated */
const char *sw_usual_piece (double stitches_per_10cm, SwWorked worked, gsize width);

G_END_DECLS
