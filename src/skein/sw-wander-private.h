/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/*
 * A smooth random wander across a line, in two directions: each normal with
 * mean 0 and sd 1 at every place, and as smooth as a Catmull-Rom spline. Its
 * knots are drawn by address, so that any place can be asked for in any order;
 * a walk that goes forward draws each knot once.
 */
typedef struct
{
  guint64 address[2];
  gint64 cell;        /* the interval that `knots` are for */
  double knots[2][4]; /* before it, at its start, at its end, after it */
} SwWander;

/* Distance between knots over the distance at which the correlation has fallen to 1/e. */
#define SW_WANDER_KNOTS 1.241

void sw_wander_init (SwWander *wander, guint64 u_address, guint64 v_address);

/* @place: along the line, in knots, >= 0 */
void sw_wander_at (SwWander *wander, double place, double *u, double *v);
