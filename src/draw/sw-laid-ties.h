/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-canvas.h"
#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/*
 * Ties keep a skein's wraps in order: a cotton thread laid round them as a
 * figure of eight, half of the wraps in each eye. Acid dye leaves cotton pale.
 * Four to a loop (common practice, no source).
 */

#define SW_LAID_MOST_TIES 8

typedef struct
{
  int n;
  double x_cm[SW_LAID_MOST_TIES]; /* along the laid skeins, rising */
  double lane_cm;
  int lanes, runs_across;
  guint64 seed;
} SwLaidTies;

void sw_laid_ties_init (SwLaidTies *ties, const SwSketch *sketch);

/* How much narrower the skein is there, a share. */
double sw_laid_ties_pinch (const SwLaidTies *ties, double x_cm);

/* @box: px, of the laid skeins; @length_cm: theirs */
void sw_laid_ties_draw (const SwLaidTies *ties, const SwCanvas *canvas, const SwBox *box, double length_cm);

G_END_DECLS
