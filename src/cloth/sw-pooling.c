/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cloth/sw-pooling.h"

#include <math.h>
#include <stdlib.h>

/* Colour sd, in CIELAB units, under which cloth looks plain. A difference of 2 is seen only with the two side by side. */
#define EVEN_SD 2.0

/*
 * Least stack that is called a pattern: a quarter of the colour's variance is
 * then shared with that neighbour. The best of the 104 neighbours of a strand
 * without any order stays under 0.2 from some 500 stitches on.
 */
#define PATTERN 0.25

/*
 * What repeats every row repeats every second and seventh row as well, and
 * with speckles on it the seventh may be ahead by a hair. In thousandths.
 */
#define HAIR 20

#define N_NEIGHBOURS (SW_POOLING_ROWS * (2 * SW_POOLING_STITCHES + 1))

typedef struct
{
  int row_step, stitch_step;
  gint64 distance; /* in the cloth, um */
} Neighbour;

static int
compare_neighbours (const void *one, const void *other)
{
  const Neighbour *a = one, *b = other;
  int a_side = ABS (a->stitch_step), b_side = ABS (b->stitch_step);

  if (a->distance != b->distance)
    return a->distance < b->distance ? -1 : 1;
  if (a->row_step != b->row_step)
    return a->row_step - b->row_step;
  if (a_side != b_side)
    return a_side - b_side;
  return b->stitch_step - a->stitch_step;
}

/* All that are looked at, in the order in which equals win. Whole micrometres, so that no order hangs on a last bit. */
static void
list_neighbours (const SwPoolingInput *input, Neighbour *neighbours)
{
  gsize n = 0;

  for (int dr = 1; dr <= SW_POOLING_ROWS; dr++)
    for (int dj = -SW_POOLING_STITCHES; dj <= SW_POOLING_STITCHES; dj++)
      neighbours[n++] = (Neighbour){
        .row_step = dr,
        .stitch_step = dj,
        .distance = (gint64) (1e4 * hypot (dj * input->stitch_width_cm, dr * input->row_height_cm) + 0.5),
      };

  qsort (neighbours, n, sizeof *neighbours, compare_neighbours);
}

gsize
sw_pooling_lags (gsize width)
{
  /* An odd row step of 7 reaches on to the far end of its row: 7 widths and one more. */
  return SW_POOLING_ROWS * (width + SW_POOLING_TURN) + SW_POOLING_STITCHES + 1;
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

/*
 * Worked flat, with @between stitches of strand from a row's start to that of
 * the row @dr up. A row that runs the same way has its stitch dj to the right
 * dj later or, if they run to the left, earlier in the strand; half of the
 * rows do either. In a row that runs back the way is the longer the further
 * the stitch is from the turn: 2 stitches of strand for every column.
 */
static double
flat_gamma (const SwPoolingInput *input, const double *sums, gsize between, gsize width, int dr, int dj)
{
  gsize side = (gsize) ABS (dj);

  if (dr % 2 == 0)
    return 0.5 * (gamma_at (input, between - side) + gamma_at (input, between + side));

  return mean_gamma (input, sums, between + 1 + side - width, width - side);
}

double
sw_pooling_stack (const SwPoolingInput *input, const double *sums, SwWorked worked, gsize width, int dr, int dj)
{
  gsize between = (gsize) dr * width;
  double gamma;

  g_return_val_if_fail (dr >= 1 && (gsize) ABS (dj) < width, 0.0);

  if (input->gamma_inf <= 0.0)
    return 0.0;

  if (worked == SW_WORKED_ROUND)
    {
      /* Rows run to the left: the stitch to the right came earlier. */
      gamma = gamma_at (input, dj < 0 ? between + (gsize) -dj : between - (gsize) dj);
    }
  else
    {
      /* Whole stitches are used at a turn; of all rows, the share `part` uses one more. */
      double turns = dr * input->turn;
      double whole = floor (turns);
      double part = turns - whole;

      between += (gsize) whole;
      gamma = (1.0 - part) * flat_gamma (input, sums, between, width, dr, dj);
      if (part > 0.0)
        gamma += part * flat_gamma (input, sums, between + 1, width, dr, dj);
    }

  return 1.0 - gamma / input->gamma_inf;
}

static gboolean
is_weighed (const SwPoolingInput *input, const Neighbour *neighbour, gsize width)
{
  return (gsize) ABS (neighbour->stitch_step) < width &&
         (input->n == 0 || 2 * (gsize) neighbour->row_step * width <= input->n);
}

/*
 * A run as long as a row makes a stripe, unless what varies is not the run's
 * colour but the specks on it: then stitches a quarter of a row apart are not
 * alike either. (Half a row apart, stripes of two colours one row long are
 * alike as often as not.)
 */
static gboolean
is_striped (const SwPoolingInput *input, gsize width)
{
  return input->stripe_stitches >= (double) width &&
         gamma_at (input, width / 4) <= (1.0 - PATTERN) * input->gamma_inf;
}

static SwVerdict
verdict_of (const SwPoolingInput *input, const SwPooling *pooling)
{
  if (input->gamma_inf < 2.0 * EVEN_SD * EVEN_SD)
    return SW_VERDICT_EVEN;
  if (is_striped (input, pooling->width))
    return SW_VERDICT_STRIPES;
  if (pooling->stack < PATTERN)
    return SW_VERDICT_SCATTERS;
  return pooling->stitch_step == 0 ? SW_VERDICT_COLUMNS : SW_VERDICT_DRIFTS;
}

/* A neighbour's stack in thousandths. The grain of salt lets exact halves, which strands in whole stitches have, go one way on every machine. */
static int
stack_of (const SwPoolingInput *input, const double *sums, const SwPooling *at, int dr, int dj)
{
  return (int) floor (1000.0 * sw_pooling_stack (input, sums, at->worked, at->width, dr, dj) + 0.5 + 1e-6);
}

/* The shortest step in the best one's direction that is as good but for a hair. */
static void
shorten_step (const SwPoolingInput *input, const double *sums, SwPooling *best, int *stack)
{
  int dr = best->row_step, dj = best->stitch_step, highest = *stack;

  for (int part = dr; part > 1; part--)
    if (dr % part == 0 && dj % part == 0)
      {
        int nearer = stack_of (input, sums, best, dr / part, dj / part);

        if (nearer >= highest - HAIR)
          {
            best->row_step = dr / part;
            best->stitch_step = dj / part;
            *stack = nearer;
            return;
          }
      }
}

static void
judge (const SwPoolingInput *input, const double *sums, const Neighbour *neighbours, SwWorked worked, gsize width, SwPooling *pooling)
{
  SwPooling best = { .width = width, .worked = worked, .row_step = 1 };
  int highest = G_MININT;

  for (gsize i = 0; i < N_NEIGHBOURS; i++)
    if (is_weighed (input, &neighbours[i], width))
      {
        int dr = neighbours[i].row_step, dj = neighbours[i].stitch_step;
        int stack = stack_of (input, sums, &best, dr, dj);

        if (stack > highest)
          {
            best.row_step = dr;
            best.stitch_step = dj;
            highest = stack;
          }
      }

  if (highest == G_MININT)
    highest = 0;
  else
    shorten_step (input, sums, &best, &highest);

  best.stack = highest / 1000.0;
  best.angle_deg = atan2 (best.stitch_step * input->stitch_width_cm, best.row_step * input->row_height_cm) * 180.0 / G_PI;
  best.verdict = verdict_of (input, &best);
  *pooling = best;
}

void
sw_pooling_judge (const SwPoolingInput *input, const double *sums, SwWorked worked, gsize width, SwPooling *pooling)
{
  Neighbour neighbours[N_NEIGHBOURS];

  g_return_if_fail (width >= 1);

  list_neighbours (input, neighbours);
  judge (input, sums, neighbours, worked, width, pooling);
}

void
sw_pooling_scan (const SwPoolingInput *input, SwWorked worked, gsize from, gsize to, SwPooling *results)
{
  Neighbour neighbours[N_NEIGHBOURS];
  g_autofree double *sums = g_new (double, input->n_lags);

  g_return_if_fail (from >= 1 && from <= to);

  list_neighbours (input, neighbours);
  sw_pooling_sums (input, sums);
  for (gsize width = from; width <= to; width++)
    judge (input, sums, neighbours, worked, width, &results[width - from]);
}
