/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cloth/sw-stack-private.h"

#include <math.h>
#include <stdlib.h>

/* Colour sd, in CIELAB units, under which cloth looks plain. A difference of 2 is seen only with the two side by side. */
#define EVEN_SD 2.0

/*
 * Least stack that is called a pattern: a quarter of the colour's variance is
 * then shared with that neighbour. The best of the 104 neighbours of a strand
 * without any order reached 0.14 with 1 000 stitches, over all widths.
 */
#define PATTERN 0.25

/*
 * What repeats every row repeats every second and seventh row as well, and
 * with speckles on it the seventh may be ahead by a hair. In thousandths.
 */
#define HAIR 20

#define N_STEPS (2 * SW_POOLING_STITCHES + 1)
#define N_NEIGHBOURS (SW_POOLING_ROWS * N_STEPS)

typedef struct
{
  int row_step, stitch_step;
  gint64 distance; /* in the cloth, um */
} Neighbour;

/* All neighbours in the order in which equals win. */
typedef struct
{
  Neighbour neighbours[N_NEIGHBOURS];
  int places[SW_POOLING_ROWS][N_STEPS]; /* in that order, counted from the end */
} Order;

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

/* Distances in whole micrometres, so that no order hangs on a last bit. */
static void
put_in_order (const SwPoolingInput *input, Order *order)
{
  gsize n = 0;

  for (int dr = 1; dr <= SW_POOLING_ROWS; dr++)
    for (int dj = -SW_POOLING_STITCHES; dj <= SW_POOLING_STITCHES; dj++)
      order->neighbours[n++] = (Neighbour){
        .row_step = dr,
        .stitch_step = dj,
        .distance = (gint64) (1e4 * hypot (dj * input->stitch_width_cm, dr * input->row_height_cm) + 0.5),
      };

  qsort (order->neighbours, n, sizeof *order->neighbours, compare_neighbours);
  for (int i = 0; i < N_NEIGHBOURS; i++)
    order->places[order->neighbours[i].row_step - 1][order->neighbours[i].stitch_step + SW_POOLING_STITCHES] = N_NEIGHBOURS - 1 - i;
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
         width / 4 < input->n_lags && input->gamma[width / 4] <= (1.0 - PATTERN) * input->gamma_inf;
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

/*
 * In thousandths. Rounded by a cast, which only works upwards of zero. The
 * grain of salt lets exact halves, which strands in whole stitches have, go
 * one way on every machine.
 */
static int
quantised (double stack)
{
  return (int) (1000.0 * MAX (stack, -1.0) + 1000.5 + 1e-6) - 1000;
}

/* The shortest step in the best one's direction that is as good but for a hair. */
static void
shorten_step (const SwPoolingInput *input, const double *sums, SwPooling *best, int *stack)
{
  int dr = best->row_step, dj = best->stitch_step;

  for (int part = dr; part > 1; part--)
    if (dr % part == 0 && dj % part == 0)
      {
        int nearer = quantised (sw_pooling_stack (input, sums, best->worked, best->width, dr / part, dj / part));

        if (nearer >= *stack - HAIR)
          {
            best->row_step = dr / part;
            best->stitch_step = dj / part;
            *stack = nearer;
            return;
          }
      }
}

/* Whether the widest step is no peak, but on the way up to one further out. */
static gboolean
rises_beyond (const SwPoolingInput *input, const double *sums, const SwPooling *best)
{
  double stacks[SW_STACK_ROW];
  int at = SW_STACK_MIDDLE + best->stitch_step;

  if (ABS (best->stitch_step) < SW_POOLING_STITCHES)
    return FALSE;

  sw_stack_row (input, sums, best->worked, best->width, best->row_step, stacks);
  return quantised (stacks[best->stitch_step > 0 ? at + 1 : at - 1]) > quantised (stacks[at]);
}

/* Rows up that are weighed: at least half of the stitches have a neighbour there. */
static int
rows_up (const SwPoolingInput *input, gsize width)
{
  const gsize n = input->n * MAX (input->alternation.skeins, 1);

  return n == 0 ? SW_POOLING_ROWS : (int) MIN (n / (2 * width), SW_POOLING_ROWS);
}

static void
judge (const SwPoolingInput *input, const double *sums, const Order *order, SwWorked worked, gsize width, SwPooling *pooling)
{
  SwPooling best = { .width = width, .worked = worked, .row_step = 1 };
  int rows = rows_up (input, width);
  int highest = 0; /* stack in thousandths, from -1000 on, and place in the order: one number to compare */

  for (int dr = 1; dr <= rows; dr++)
    {
      double stacks[SW_STACK_ROW];
      const double *first = stacks + SW_STACK_MIDDLE - SW_POOLING_STITCHES;

      sw_stack_row (input, sums, worked, width, dr, stacks);
      for (int i = 0; i < N_STEPS; i++)
        highest = MAX (highest, (quantised (first[i]) + 1000) * N_NEIGHBOURS + order->places[dr - 1][i]);
    }

  if (rows > 0)
    {
      const Neighbour *neighbour = &order->neighbours[N_NEIGHBOURS - 1 - highest % N_NEIGHBOURS];
      int stack = highest / N_NEIGHBOURS - 1000;

      best.row_step = neighbour->row_step;
      best.stitch_step = neighbour->stitch_step;
      shorten_step (input, sums, &best, &stack);
      best.stack = stack / 1000.0;
      best.beyond = rises_beyond (input, sums, &best);
    }

  best.angle_deg = atan2 (best.stitch_step * input->stitch_width_cm, best.row_step * input->row_height_cm) * 180.0 / G_PI;
  best.verdict = verdict_of (input, &best);
  *pooling = best;
}

void
sw_pooling_judge (const SwPoolingInput *input, const double *sums, SwWorked worked, gsize width, SwPooling *pooling)
{
  Order order;

  g_return_if_fail (width >= 1);

  put_in_order (input, &order);
  judge (input, sums, &order, worked, width, pooling);
}

void
sw_pooling_scan (const SwPoolingInput *input, SwWorked worked, gsize from, gsize to, SwPooling *results)
{
  Order order;
  g_autofree double *sums = g_new (double, input->n_lags);

  g_return_if_fail (from >= 1 && from <= to);

  put_in_order (input, &order);
  sw_pooling_sums (input, sums);
  for (gsize width = from; width <= to; width++)
    judge (input, sums, &order, worked, width, &results[width - from]);
}
