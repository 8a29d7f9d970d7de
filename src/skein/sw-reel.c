/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "skein/sw-reel-private.h"
#include "skein/sw-scatter-private.h"

#include "sketch/sw-chance.h"

#include <math.h>

/* Loops are this many correlation lengths of the wander long. */
#define CORRELATIONS_PER_LOOP 8

/* Parts of the seed's address. */
enum
{
  PART_U_SCATTER,
  PART_V_SCATTER,
  PART_U_WANDER,
  PART_V_WANDER,
};

/* Reflects at 0 and 1: what is spread evenly stays so. By a cast, since the library's floor() is a call and this is hot. */
static double
fold (double x)
{
  double far = fabs (x);
  gint64 crossings = (gint64) far;
  double y = far - (double) crossings;

  return crossings % 2 == 0 ? y : 1.0 - y;
}

/* Growth of one wrap over the one before, so that the last of N wraps with the mean circumference C (1 + g/2) has C (1 + g). */
static double
growth_step (const SwReel *reel)
{
  double wraps = reel->length_cm / (reel->circumference_cm * (1.0 + 0.5 * reel->growth));

  return reel->growth / wraps;
}

/* Wrap n is C (1 + n step) long, so that it starts at C (n + step n (n - 1) / 2). */
static double
wrap_start (const SwReel *reel, double step, double n)
{
  return reel->circumference_cm * (n + 0.5 * step * n * (n - 1.0));
}

/* The inverse of wrap_start(). In this form the root loses no digits as the growth goes to nothing. */
static gsize
wrap_at (const SwReel *reel, double step, double t)
{
  double loops = t / reel->circumference_cm;
  double b = 1.0 - 0.5 * step;
  double n = floor (2.0 * loops / (b + sqrt (b * b + 2.0 * step * loops)));

  if (t < wrap_start (reel, step, n))
    n -= 1.0;
  else if (t >= wrap_start (reel, step, n + 1.0))
    n += 1.0;

  return n > 0.0 ? (gsize) n : 0;
}

static void
move_to_wrap (SwReelWalk *walk, gsize wrap)
{
  walk->wrap = wrap;
  walk->wrap_start = wrap_start (walk->reel, walk->step, (double) wrap);
  walk->wrap_length = walk->reel->circumference_cm * (1.0 + walk->step * (double) wrap);
  walk->v = sw_scatter (sw_chance_mix (walk->reel->seed, PART_V_SCATTER), wrap);
  if (walk->reel->winding == SW_WINDING_BY_HAND)
    walk->u = sw_scatter (sw_chance_mix (walk->reel->seed, PART_U_SCATTER), wrap);
}

void
sw_reel_walk_init (SwReelWalk *walk, const SwReel *reel)
{
  walk->reel = reel;
  walk->step = growth_step (reel);
  walk->knots_per_cm = CORRELATIONS_PER_LOOP / (SW_WANDER_KNOTS * reel->circumference_cm);
  sw_wander_init (&walk->wander, sw_chance_mix (reel->seed, PART_U_WANDER), sw_chance_mix (reel->seed, PART_V_WANDER));
  move_to_wrap (walk, 0);
}

/* The guide's place at that wrap: it goes on moving while the wrap is wound. */
static double
traversed (const SwReel *reel, double wraps)
{
  return wraps / reel->wraps_per_sweep;
}

SwReelPlace
sw_reel_walk_to (SwReelWalk *walk, double t)
{
  const SwReel *reel = walk->reel;
  SwReelPlace place;
  double wrap, u, v;

  if (t < walk->wrap_start || t >= walk->wrap_start + walk->wrap_length)
    move_to_wrap (walk, wrap_at (reel, walk->step, t));

  wrap = (double) walk->wrap;
  place.wrap = walk->wrap;
  place.loop = CLAMP ((t - walk->wrap_start) / walk->wrap_length, 0.0, 1.0);

  if (reel->winding == SW_WINDING_TRAVERSED)
    u = traversed (reel, wrap + place.loop);
  else
    u = walk->u;
  v = walk->v;

  if (reel->wander > 0.0)
    {
      double u_wander, v_wander;

      sw_wander_at (&walk->wander, t * walk->knots_per_cm, &u_wander, &v_wander);
      u += reel->wander * u_wander;
      v += reel->wander * v_wander;
    }

  place.u = fold (u);
  place.v = fold (v);
  return place;
}

double
sw_reel_wraps (const SwReel *reel)
{
  double step = growth_step (reel);
  double wrap = (double) wrap_at (reel, step, reel->length_cm);
  double start = wrap_start (reel, step, wrap);

  return wrap + (reel->length_cm - start) / (reel->circumference_cm * (1.0 + step * wrap));
}

void
sw_reel_place (const SwReel *reel, double t, gsize *wrap, double *loop, double *u, double *v)
{
  SwReelWalk walk;
  SwReelPlace place;

  g_return_if_fail (t >= 0.0);

  sw_reel_walk_init (&walk, reel);
  place = sw_reel_walk_to (&walk, t);
  *wrap = place.wrap;
  *loop = place.loop;
  *u = place.u;
  *v = place.v;
}

double
sw_reel_loop (const SwReel *reel, double t)
{
  const double step = growth_step (reel);
  const double wrap = (double) wrap_at (reel, step, t);

  return CLAMP ((t - wrap_start (reel, step, wrap)) / (reel->circumference_cm * (1.0 + step * wrap)), 0.0, 1.0);
}
