/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "skein/sw-strand.h"

#include "skein/sw-reel-private.h"

#include <math.h>

double
sw_strand_length (double mass_g, double metres_per_100_g)
{
  return mass_g * metres_per_100_g; /* x 100 cm in a metre / 100 g */
}

/* Grams in a kilometre: ISO 1144. */
double
sw_tex (double metres_per_100_g)
{
  return 100000.0 / metres_per_100_g;
}

/* Shares by multiplying: 1 / runs and 1 / lanes are then worked out once for a whole strand. */
static inline void
lay_place (const SwLay *lay, double loop, double u, double v, double *x, double *y, double *z)
{
  double run_share = 1.0 / lay->runs, lane_share = 1.0 / lay->lanes;
  double along = loop * lay->runs;
  int run = MIN ((int) along, lay->runs - 1);
  double r = along - run;

  *x = run % 2 == 0 ? r : 1.0 - r;

  if (lay->folding == SW_FOLDING_STACKED)
    {
      *y = (lay->lane + u) * lane_share;
      *z = (run + v) * run_share;
    }
  else
    {
      *y = (lay->lane + (run + u) * run_share) * lane_share;
      *z = v;
    }
}

void
sw_lay_place (const SwLay *lay, double loop, double u, double v, double *x, double *y, double *z)
{
  lay_place (lay, loop, u, v, x, y, z);
}

void
sw_strand_places (const SwReel *reel, const SwLay *lay, const double *t, gsize n, float *x, float *y, float *z)
{
  SwLay own_lay = *lay; /* which the arrays cannot overlap */
  SwReelWalk walk;

  sw_reel_walk_init (&walk, reel);

  for (gsize i = 0; i < n; i++)
    {
      SwReelPlace place = sw_reel_walk_to (&walk, t[i]);
      double px, py, pz;

      lay_place (&own_lay, place.loop, place.u, place.v, &px, &py, &pz);
      x[i] = (float) px;
      y[i] = (float) py;
      z[i] = (float) pz;
    }
}
