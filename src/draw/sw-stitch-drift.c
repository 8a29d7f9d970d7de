/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-stitch-drift.h"

#include "sketch/sw-chance.h"

/* Stitches from one pull of the hand to the next. */
#define PERIOD 5

/* Two chances, -1 .. 1, at a point of the lattice. */
static void
pull_at (gsize row, gsize column, double *pull)
{
  const guint64 chance = sw_chance_mix (sw_chance_mix (0x6472696674, row), column);

  pull[0] = (double) (chance & 0xffff) / 32767.5 - 1;
  pull[1] = (double) (chance >> 16 & 0xffff) / 32767.5 - 1;
}

static double
smooth (gsize step)
{
  const double t = (double) step / PERIOD;

  return t * t * (3 - 2 * t);
}

void
sw_stitch_drift (gsize row, gsize column, double *right, double *up)
{
  const gsize r = row / PERIOD, c = column / PERIOD;
  const double v = smooth (row % PERIOD), u = smooth (column % PERIOD);
  double corners[2][2][2], mean[2];

  for (gsize j = 0; j < 2; j++)
    for (gsize i = 0; i < 2; i++)
      pull_at (r + j, c + i, corners[j][i]);
  for (int axis = 0; axis < 2; axis++)
    mean[axis] = (corners[0][0][axis] * (1 - u) + corners[0][1][axis] * u) * (1 - v) + (corners[1][0][axis] * (1 - u) + corners[1][1][axis] * u) * v;
  *right = SW_STITCH_DRIFT * mean[0];
  *up = SW_STITCH_DRIFT * mean[1];
}
