/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-grain.h"
#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/*
 * Ties keep a skein's wraps in order: a cotton thread laid round them as a
 * figure of eight, half of the wraps in each eye. Acid dye leaves cotton pale.
 * Four to a loop (common practice, no source).
 */

/* @bundle: which run of which skein, counted from the near edge */
typedef struct
{
  double x_cm;
  int bundle;
} SwLaidTie;

typedef struct
{
  SwLaidTie *ties;
  int n;
  double pinch; /* at a tie, a share of the bundle's width */
  guint64 seed;
} SwLaidTies;

void sw_laid_ties_init (SwLaidTies *ties, const SwSketch *sketch);
void sw_laid_ties_clear (SwLaidTies *ties);

/* How much narrower the bundle is there, a share. */
double sw_laid_ties_pinch (const SwLaidTies *ties, int bundle, double x_cm);

G_END_DECLS
