/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "skein/sw-strand.h"
#include "skein/sw-wander-private.h"

/* A place on the reel. */
typedef struct
{
  gsize wrap;
  double loop;
  double u, v;
} SwReelPlace;

/*
 * A walk along the strand. It may jump, but is quick when it goes forward by
 * less than a wrap, as the stitches do.
 */
typedef struct
{
  const SwReel *reel;
  double step;                    /* growth from one wrap to the next, a fraction of the first's circumference */
  gsize wrap;                     /* where the walk is ... */
  double wrap_start, wrap_length; /* ... and the strand of that wrap, cm */
  double u, v;                    /* ... and its scattered places: u only when wound by hand */
  double knots_per_cm;
  SwWander wander;
} SwReelWalk;

void sw_reel_walk_init (SwReelWalk *walk, const SwReel *reel);
SwReelPlace sw_reel_walk_to (SwReelWalk *walk, double t);
