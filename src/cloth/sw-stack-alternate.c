/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cloth/sw-stack-private.h"

#include <math.h>
#include <string.h>

/*
 * Several skeins in turn. A row and the one @dr above it are some of their
 * own skeins' rows; how far apart they are along the yarn depends on where in
 * the cycle of skeins the row stands, so the mean is taken over one cycle, or
 * over two if rows of both directions come to stand at the same place in it.
 *
 * The skeins are treated as drawn from one recipe and laid alike: two of them
 * at the same place are as alike as one is to itself. In truth each was wound
 * with wander of its own, so cloth of several skeins is a little calmer than
 * this says.
 */

/* Strand between the starts of the two rows, in stitches; less than 0 if the upper one lies nearer its skein's start. */
static double
strand_between (const SwPoolingInput *input, SwWorked worked, gsize width, gsize row, gsize above)
{
  const SwAlternation *turns = &input->alternation;
  const gsize one = sw_alternation_skein (turns, row), other = sw_alternation_skein (turns, above);
  const double own = (double) sw_alternation_own_row (turns, above) - (double) sw_alternation_own_row (turns, row);
  const double step = (double) width + (worked == SW_WORKED_FLAT ? input->turn : 0.0);
  const double cast_on = round (input->cast_on * (double) width);

  return own * step + ((double) other - (double) one) * input->shift + (other == 0 ? cast_on : 0.0) - (one == 0 ? cast_on : 0.0);
}

/* Adds @weight x the neighbours' gamma with the upper row a whole number of stitches on. @way: 1 for a row that runs to the left as seen, else -1. */
static void
add_row (const SwPoolingInput *input, const double *sums, gboolean back, gint64 between, gint64 way, gsize width, gsize reach, double weight, double *gammas)
{
  for (gint64 side = -(gint64) reach; side <= (gint64) reach; side++)
    {
      const gint64 apart = ABS (side);
      const double gamma = back ? sw_stack_mean_gamma (input, sums, between + 1 + apart - (gint64) width, width - (gsize) apart)
                                : sw_stack_gamma (input, between - way * side);

      gammas[SW_STACK_MIDDLE + side] += weight * gamma;
    }
}

void
sw_stack_alternate_row (const SwPoolingInput *input, const double *sums, SwWorked worked, gsize width, int dr, gsize reach, double *gammas)
{
  const gsize cycle = input->alternation.skeins * input->alternation.rows;
  const gsize rows = worked == SW_WORKED_FLAT && cycle % 2 == 1 ? 2 * cycle : cycle;
  const gboolean back = worked == SW_WORKED_FLAT && dr % 2 == 1;

  memset (gammas + SW_STACK_MIDDLE - reach, 0, (2 * reach + 1) * sizeof *gammas);
  for (gsize row = 0; row < rows; row++)
    {
      const double between = strand_between (input, worked, width, row, row + (gsize) dr);
      const double whole = floor (between), part = between - whole;
      const gint64 way = worked == SW_WORKED_FLAT && row % 2 == 1 ? -1 : 1;

      add_row (input, sums, back, (gint64) whole, way, width, reach, (1.0 - part) / (double) rows, gammas);
      if (part > 0.0)
        add_row (input, sums, back, (gint64) whole + 1, way, width, reach, part / (double) rows, gammas);
    }
}

gsize
sw_pooling_lags_apart (const SwPoolingInput *input, gsize width)
{
  if (input->alternation.skeins <= 1)
    return 0;
  return (gsize) ceil (input->cast_on * (double) width + (double) (input->alternation.skeins - 1) * input->shift) + 1;
}
