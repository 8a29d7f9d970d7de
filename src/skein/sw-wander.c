/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "skein/sw-wander-private.h"

#include "sketch/sw-chance.h"

#include <math.h>

static void
draw_knots (SwWander *wander, int from)
{
  for (int axis = 0; axis < 2; axis++)
    for (int i = from; i < 4; i++)
      wander->knots[axis][i] = sw_chance_normal (sw_chance_mix (wander->address[axis], (guint64) (wander->cell - 1 + i)));
}

static void
move_to_cell (SwWander *wander, gint64 cell)
{
  int kept = 0;

  if (cell == wander->cell + 1)
    for (; kept < 3; kept++)
      for (int axis = 0; axis < 2; axis++)
        wander->knots[axis][kept] = wander->knots[axis][kept + 1];

  wander->cell = cell;
  draw_knots (wander, kept);
}

void
sw_wander_init (SwWander *wander, guint64 u_address, guint64 v_address)
{
  wander->address[0] = u_address;
  wander->address[1] = v_address;
  wander->cell = 0;
  draw_knots (wander, 0);
}

static double
weighted (const double knots[4], const double weights[4])
{
  return weights[0] * knots[0] + weights[1] * knots[1] + weights[2] * knots[2] + weights[3] * knots[3];
}

/*
 * A weighted sum of independent normals has the variance sum w^2. A plain
 * spline would therefore wander less between its knots (0.8 of the sd half
 * way); divided by the root of that sum it has the same sd everywhere.
 */
void
sw_wander_at (SwWander *wander, double place, double *u, double *v)
{
  gint64 cell = (gint64) place;
  double f = place - (double) cell;
  double f2 = f * f, f3 = f2 * f;
  double weights[4] = { 0.5 * (-f + 2 * f2 - f3), 0.5 * (2 - 5 * f2 + 3 * f3), 0.5 * (f + 4 * f2 - 3 * f3), 0.5 * (f3 - f2) };
  double scale = 1.0 / sqrt (weighted (weights, weights));

  if (cell != wander->cell)
    move_to_cell (wander, cell);

  *u = weighted (wander->knots[0], weights) * scale;
  *v = weighted (wander->knots[1], weights) * scale;
}
