/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-skein-shape.h"

#include <math.h>

#define TURN_ASPECT 0.7 /* a turn reaches this share of a run's width along the skein: wet yarn is pushed flat */

void
sw_skein_shape_init (SwSkeinShape *shape, const SwSketch *sketch)
{
  const gboolean beside = sketch->lay.folding == SW_FOLDING_SIDE_BY_SIDE;

  *shape = (SwSkeinShape){
    .length = sw_sketch_lay_length (sketch),
    .lane = sketch->lay.width_cm,
    .lanes = (int) sketch->lay.skeins,
    .runs_across = beside ? (int) sketch->lay.runs : 1,
    .ring = sketch->lay.runs == 1,
    .fold_cm = MIN (0.22 * sketch->lay.width_cm, 1.6),
  };
}

/* A straight run: @y within the lane. */
static SwSkeinPoint
point_in_run (const SwSkeinShape *shape, double y)
{
  const double run = shape->lane / shape->runs_across;
  const double in_run = y - run * floor (MIN (y / run, shape->runs_across - 1.0));

  return (SwSkeinPoint){ .inside = (float) MIN (in_run, run - in_run), .across = (float) (2 * in_run / run - 1), .strand = (float) y };
}

/*
 * Near the ends of side by side runs the wraps go round a centre between the
 * two runs that the turn joins: at the right end runs 0 and 1, 2 and 3 ...; at
 * the left end 1 and 2, 3 and 4 .... The last run goes back to the first at
 * the left end too, beneath the others; of more than two runs each has a
 * rounded end of its own there.
 */
static void
turn (const SwSkeinShape *shape, double x, double y, SwSkeinPoint *point)
{
  const double run = shape->lane / shape->runs_across;
  const int at = (int) MIN (y / run, shape->runs_across - 1.0);
  const gboolean right = x > shape->length / 2;
  const gboolean alone = !right && shape->runs_across > 2 && (at == 0 || at == shape->runs_across - 1);
  const int first = right || shape->runs_across == 2 ? at / 2 * 2 : (at + 1) / 2 * 2 - 1; /* of the pair */
  const double outer = alone ? run / 2 : run, centre = alone ? (at + 0.5) * run : (first + 1) * run;
  const double reach = outer * TURN_ASPECT;
  const double along = right ? x - (shape->length - reach) : reach - x;
  const double across = y - centre, round = hypot (along / TURN_ASPECT, across);

  if (along <= 0)
    return;
  point->inside = (float) (alone ? outer - round : MIN (round, outer - round));
  if (alone)
    return;
  point->across = (float) ((across < 0 ? -1 : 1) * (2 * round / run - 1));
  point->strand = (float) (centre + (across < 0 ? -round : round));
}

/* The end of stacked runs: the loop dives into the pan, its corners rounded off. */
static void
fold (const SwSkeinShape *shape, double x, double y, SwSkeinPoint *point)
{
  const double from_end = MIN (x, shape->length - x), fold = shape->fold_cm;
  const double dx = 1 - from_end / fold, dy = 1 - MIN (y, shape->lane - y) / fold;

  if (dx <= 0)
    return;
  point->end = (float) MIN (dx, 1);
  point->inside = (float) MIN (point->inside, from_end);
  if (dy > 0)
    point->inside = (float) (fold * (1 - hypot (dx, dy)));
}

SwSkeinPoint
sw_skein_shape_at (const SwSkeinShape *shape, double x_cm, double y_cm)
{
  const double lane = floor (CLAMP (y_cm / shape->lane, 0, shape->lanes - 1.0));
  const double y = y_cm - lane * shape->lane;
  SwSkeinPoint point = point_in_run (shape, y);

  if (shape->runs_across > 1)
    turn (shape, x_cm, y, &point);
  else if (!shape->ring)
    fold (shape, x_cm, y, &point);
  point.strand += (float) (lane * 1.37 * shape->lane);
  return point;
}
