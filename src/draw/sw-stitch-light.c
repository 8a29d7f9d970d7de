/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-stitch-light.h"

#include "sketch/sw-chance.h"

#include <math.h>

#define FOOT_Y (-0.38)
#define HEAD_Y 1.30

/* A leg covers the row above with all but its rim, since the leg that is laid there may be one of a slimmer shape. */
#define COVERING 0.88

static double
smooth (double t)
{
  t = CLAMP (t, 0, 1);
  return t * t * (3 - 2 * t);
}

/* Slim at the foot, round at the head. */
void
sw_stitch_outline_init (SwStitchOutline *outline)
{
  for (int i = 0; i <= SW_STITCH_STEPS; i++)
    {
      const double s = (double) i / SW_STITCH_STEPS;

      outline->half[i] = (float) (1.53 * pow (s, 0.50) * pow (1 - s, 0.34));
      outline->outwards[i] = (float) (0.6 * s + 0.4 * smooth (s));
    }
}

/* Whether the leg is at @x, @y; @along 0 foot .. 1 head, @across -1 inside .. 1 outside. */
static gboolean
leg_find (const SwStitchShape *shape, double x, double y, double *along, double *across)
{
  const double s = (y - FOOT_Y) / (HEAD_Y - FOOT_Y), at = s * SW_STITCH_STEPS;
  double half, centre, on;
  int i;

  if (s <= 0 || s >= 1)
    return FALSE;
  i = (int) at;
  on = at - i;
  half = shape->half * ((double) shape->outline->half[i] * (1 - on) + (double) shape->outline->half[i + 1] * on);
  centre = shape->foot_x + (shape->head_x - shape->foot_x) * (double) shape->outline->outwards[i];
  *along = s;
  *across = (x - centre) / half;
  return fabs (*across) < 1;
}

/* Depth of the groove between plies, 0..1, at so many turns of the plies; > -16. */
static double
ply_groove (double turns)
{
  const double turn = turns + 16 - (int) (turns + 16), from = fabs (2 * turn - 1); /* 1 in the groove */
  const double deep = MAX (from - 0.35, 0) / 0.65;

  return deep * deep * (3 - 2 * deep);
}

/*
 * Light from the upper left and the front on a round strand that dives behind
 * its neighbours at both ends; the plies wind round it.
 */
static double
leg_light (const SwStitchShape *shape, double along, double across)
{
  const double dive = 0.75 * (smooth ((along - 0.62) / 0.38) - smooth ((0.45 - along) / 0.45));
  const double nx = across * 0.86, ny = dive * 0.5;
  const double nz = sqrt (MAX (1 - nx * nx - ny * ny, 0.05));
  const double facing = MAX (-0.30 * shape->lean * nx + 0.34 * ny + 0.89 * nz, 0);
  const double depth = smooth (along / 0.42);                      /* the foot lies deep, in shadow */
  const double rim = 1 - 0.45 * across * across * across * across; /* and so do the sides */
  const double round = across * (0.64 + 0.36 * across * across);   /* nearly the arc sine over its greatest */
  const double groove = ply_groove (along * shape->turns + shape->lean * round * 0.45 + shape->turn_phase);

  return (0.22 + 0.78 * facing) * (0.45 + 0.55 * depth) * rim * (1 - shape->ply_depth * groove);
}

/* Between the wales one looks into the shade of the back. */
static float
gap_light (double x)
{
  return (float) (0.14 + 0.30 * smooth ((0.5 - x) / 0.2));
}

/* The cast-on's bead, a little aslant; @x from the middle of the stitch to the right. */
static gboolean
bead_find (double x, double y, double *along, double *across)
{
  const double u = x / 0.5, half = 0.25 * sqrt (MAX (1 - u * u * u * u, 0));

  *along = u;
  *across = half > 0 ? (y - (-0.10 + 0.09 * u)) / half : 2;
  return fabs (*across) < 1;
}

static double
bead_light (const SwStitchShape *shape, double along, double across)
{
  const double round = sqrt (MAX (1 - 0.75 * across * across, 0.05)), ends = 1 - 0.45 * along * along * along * along;
  const double groove = ply_groove (along * 1.1 + across * 0.45);

  return (0.25 + 0.75 * (0.85 * round + 0.15 * across)) * ends * (1 - shape->ply_depth * groove);
}

void
sw_stitch_sample (const SwStitchShape *shape, SwStitchPart part, double x, double y, float *light, float *cover)
{
  const gboolean first = part != SW_PART_LEFT && part != SW_PART_RIGHT;
  const gboolean on_bead = first && bead_find (x, y, &(double){ 0 }, &(double){ 0 });
  const double outwards = x * shape->lean;
  double along, across;

  if (part == SW_PART_BEAD)
    {
      if (!bead_find (x, y, &along, &across))
        return;
      *light += (float) bead_light (shape, along, across);
      *cover += 1;
      return;
    }
  if (outwards < 0 || outwards >= 0.5 || on_bead)
    return; /* another part's */
  if (!first && leg_find (shape, outwards, y + 1 + shape->slack, &along, &across) && fabs (across) < COVERING)
    return; /* behind the row below */
  if (leg_find (shape, outwards, y, &along, &across))
    {
      *light += (float) leg_light (shape, along, across);
      *cover += 1;
    }
  else if (y >= -shape->slack && y < 1 + shape->slack && !leg_find (shape, outwards, y - 1, &along, &across))
    {
      *light += gap_light (outwards);
      *cover += 1;
    }
}

SwStitchShape
sw_stitch_shape_for (const SwStitchOutline *outline, int number, SwStitchPart part, double stitch, int plies)
{
  const int right = part == SW_PART_RIGHT || part == SW_PART_FIRST_RIGHT;
  const guint64 address = sw_chance_mix (0x6c6567, (guint64) (number * 2 + right));
  const double loose = number == 0 ? 0 : 1;

  return (SwStitchShape){
    .outline = outline,
    .foot_x = 0.07 + loose * 0.012 * (sw_chance_even (sw_chance_mix (address, 1)) - 0.5),
    .head_x = 0.345 + loose * 0.02 * (sw_chance_even (sw_chance_mix (address, 2)) - 0.5),
    .half = 0.225 * (1 + loose * 0.07 * (sw_chance_even (sw_chance_mix (address, 3)) - 0.5)),
    .turns = plies == 1 ? 1.0 : 0.9 * plies,
    .turn_phase = sw_chance_even (sw_chance_mix (address, 4)),
    .ply_depth = (plies == 1 ? 0.08 : 0.34) * smooth ((stitch - 9) / 12),
    .lean = right ? 1 : -1,
  };
}
