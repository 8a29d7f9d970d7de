/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "skein/sw-wander-private.h"

#include "sketch/sw-chance.h"

#include <math.h>

static double
knot (const SwWander *wander, gint64 index)
{
  return sw_chance_normal (sw_chance_mix (wander->address, (guint64) index));
}

static void
move_to_cell (SwWander *wander, gint64 cell)
{
  int kept = 0;

  if (cell == wander->cell + 1)
    for (; kept < 3; kept++)
      wander->knots[kept] = wander->knots[kept + 1];

  for (int i = kept; i < 4; i++)
    wander->knots[i] = knot (wander, cell - 1 + i);

  wander->cell = cell;
}

void
sw_wander_init (SwWander *wander, guint64 address)
{
  wander->address = address;
  wander->cell = 0;
  for (int i = 0; i < 4; i++)
    wander->knots[i] = knot (wander, i - 1);
}

/*
 * A weighted sum of independent normals has the variance sum w^2. A plain
 * spline would therefore wander less between its knots (0.8 of the sd half
 * way); divided by the root of that sum it has the same sd everywhere.
 */
double
sw_wander_at (SwWander *wander, double place)
{
  gint64 cell = (gint64) place;
  double f = place - (double) cell;
  double f2 = f * f, f3 = f2 * f;
  double w0 = 0.5 * (-f + 2 * f2 - f3);
  double w1 = 0.5 * (2 - 5 * f2 + 3 * f3);
  double w2 = 0.5 * (f + 4 * f2 - 3 * f3);
  double w3 = 0.5 * (f3 - f2);

  if (cell != wander->cell)
    move_to_cell (wander, cell);

  return (w0 * wander->knots[0] + w1 * wander->knots[1] + w2 * wander->knots[2] + w3 * wander->knots[3]) /
         sqrt (w0 * w0 + w1 * w1 + w2 * w2 + w3 * w3);
}
