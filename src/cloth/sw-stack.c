/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cloth/sw-stack-private.h"

#include <math.h>

/* gamma_inf, in squared CIELAB units, under which all that varies is rounding. */
#define ONE_COLOUR 1e-6

/*
 * From lags along the strand to neighbours in the cloth. The rows in here hold
 * gamma of the SW_STACK_ROW neighbours some rows up and are filled as far as `reach` to both sides.
 */

gsize
sw_pooling_lags (gsize width)
{
  /* An odd row step of 7 reaches on to the far end of its row: 7 widths and one more. */
  return SW_POOLING_ROWS * (width + SW_POOLING_TURN) + SW_STACK_MIDDLE + 1;
}

void
sw_pooling_sums (const SwPoolingInput *input, double *sums)
{
  for (gsize lag = 0; lag < input->n_lags; lag++)
    sums[lag] = input->gamma[lag] + (lag >= 2 ? sums[lag - 2] : 0.0);
}

static double
gamma_at (const SwPoolingInput *input, gsize lag)
{
  return lag < input->n_lags ? input->gamma[lag] : input->gamma_inf;
}

/* Mean of gamma over @count lags from @first by two. */
static double
mean_gamma (const SwPoolingInput *input, const double *sums, gsize first, gsize count)
{
  gsize known = first < input->n_lags ? MIN (count, (input->n_lags - first + 1) / 2) : 0;
  double sum = (double) (count - known) * input->gamma_inf;

  if (known > 0)
    sum += sums[first + 2 * (known - 1)] - (first >= 2 ? sums[first - 2] : 0.0);

  return sum / (double) count;
}

double
sw_stack_gamma (const SwPoolingInput *input, gint64 lag)
{
  return gamma_at (input, (gsize) ABS (lag));
}

double
sw_stack_mean_gamma (const SwPoolingInput *input, const double *sums, gint64 first, gsize count)
{
  const gsize before = first < 0 ? MIN ((gsize) (1 - first) / 2, count) : 0; /* lags below zero */
  double sum = 0.0;

  if (before > 0)
    sum += (double) before * mean_gamma (input, sums, (gsize) (-first) - 2 * (before - 1), before);
  if (before < count)
    sum += (double) (count - before) * mean_gamma (input, sums, (gsize) (first + 2 * (gint64) before), count - before);

  return sum / (double) count;
}

/* In the round all rows run to the left: a stitch to the right came earlier. @between: strand from a stitch to the one straight up. */
static void
round_row (const SwPoolingInput *input, gsize between, gsize reach, double *row)
{
  const double *middle = input->gamma + between;

  if (between + reach < input->n_lags)
    for (gsize side = 0; side <= reach; side++)
      {
        row[SW_STACK_MIDDLE - side] = middle[side];
        row[SW_STACK_MIDDLE + side] = *(middle - side);
      }
  else
    for (gsize side = 0; side <= reach; side++)
      {
        row[SW_STACK_MIDDLE - side] = gamma_at (input, between + side);
        row[SW_STACK_MIDDLE + side] = gamma_at (input, between - side);
      }
}

/* Flat, a row that runs the same way: to the left in half of the rows, to the right in the others. */
static void
same_way_row (const SwPoolingInput *input, gsize between, gsize reach, double *row)
{
  for (gsize side = 0; side <= reach; side++)
    row[SW_STACK_MIDDLE - side] = row[SW_STACK_MIDDLE + side] =
        0.5 * (gamma_at (input, between - side) + gamma_at (input, between + side));
}

/* Flat, a row that runs back: the strand goes on to the turn and returns, so that each column away from the turn adds two stitches. */
static void
way_back_row (const SwPoolingInput *input, const double *sums, gsize between, gsize width, gsize reach, double *row)
{
  for (gsize side = 0; side <= reach; side++)
    row[SW_STACK_MIDDLE - side] = row[SW_STACK_MIDDLE + side] =
        mean_gamma (input, sums, between + 1 + side - width, width - side);
}

/* @between: strand from the start of a row to the start of that @dr rows up. */
static void
flat_row (const SwPoolingInput *input, const double *sums, gsize between, gsize width, int dr, gsize reach, double *row)
{
  if (dr % 2 == 0)
    same_way_row (input, between, reach, row);
  else
    way_back_row (input, sums, between, width, reach, row);
}

/* Turns use whole stitches, but not the same number each: of all rows, the share `part` uses one more. */
static void
turned_row (const SwPoolingInput *input, const double *sums, gsize width, int dr, gsize reach, double *row)
{
  double turns = dr * input->turn;
  gsize whole = (gsize) turns;
  gsize between = (gsize) dr * width + whole;
  double part = turns - (double) whole;

  flat_row (input, sums, between, width, dr, reach, row);
  if (part > 0.0)
    {
      double one_more[SW_STACK_ROW];

      flat_row (input, sums, between + 1, width, dr, reach, one_more);
      for (gsize i = SW_STACK_MIDDLE - reach; i <= SW_STACK_MIDDLE + reach; i++)
        row[i] += part * (one_more[i] - row[i]);
    }
}

void
sw_stack_row (const SwPoolingInput *input, const double *sums, SwWorked worked, gsize width, int dr, double *stacks)
{
  gsize reach = MIN (width - 1, SW_STACK_MIDDLE);
  double scale = 1.0 / input->gamma_inf;

  if (reach < SW_STACK_MIDDLE)
    for (int i = 0; i < SW_STACK_ROW; i++)
      stacks[i] = INFINITY;

  if (input->alternation.skeins > 1)
    sw_stack_alternate_row (input, sums, worked, width, dr, reach, stacks);
  else if (worked == SW_WORKED_ROUND)
    round_row (input, (gsize) dr * width, reach, stacks);
  else
    turned_row (input, sums, width, dr, reach, stacks);

  /* A strand of one colour throughout is no more alike anywhere than it is by chance. */
  for (int i = 0; i < SW_STACK_ROW; i++)
    stacks[i] = input->gamma_inf > ONE_COLOUR ? 1.0 - scale * stacks[i] : 0.0;
}

double
sw_pooling_stack (const SwPoolingInput *input, const double *sums, SwWorked worked, gsize width, int dr, int dj)
{
  double stacks[SW_STACK_ROW];

  g_return_val_if_fail (dr >= 1 && ABS (dj) <= SW_POOLING_STITCHES && (gsize) ABS (dj) < width, 0.0);

  sw_stack_row (input, sums, worked, width, dr, stacks);
  return stacks[SW_STACK_MIDDLE + dj];
}
