/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/*
 * A smooth random wander along a line: normal with mean 0 and sd 1 at every
 * place, and as smooth as a Catmull-Rom spline. Its knots are drawn by
 * address, so that any place can be asked for in any order; a walk that goes
 * forward draws each knot once.
 */
typedef struct
{
  guint64 address;
  gint64 cell;     /* the interval that `knots` are for */
  double knots[4]; /* before, at its start, at its end, after */
} SwWander;

/* Distance between knots over the distance at which the correlation has fallen to 1/e. */
#define SW_WANDER_KNOTS 1.241

void sw_wander_init (SwWander *wander, guint64 address);

/* @place: along the line, in knots, >= 0 */
double sw_wander_at (SwWander *wander, double place);
