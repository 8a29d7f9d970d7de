/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cloth/sw-pooling.h"

#include "cloth/sw-stitches.h"
#include "cloth/sw-variogram.h"

#include <math.h>

/* A strand with all that its verdicts are made from. */
typedef struct
{
  gsize n;
  float *l, *a, *b;
  double *gamma, *sums;
  SwPoolingInput input;
} Strand;

static void
strand_measure (Strand *strand, double turn)
{
  gsize n_lags = sw_pooling_lags (600);

  strand->gamma = g_new (double, n_lags);
  strand->sums = g_new (double, n_lags);
  strand->input = (SwPoolingInput){
    .gamma = strand->gamma,
    .n_lags = n_lags,
    .n = strand->n,
    .gamma_inf = sw_variogram (strand->l, strand->a, strand->b, strand->n, n_lags, strand->gamma),
    .turn = turn,
    .stripe_stitches = 1,
    .stitch_width_cm = 1 / 3.2,
    .row_height_cm = 1 / 4.4,
  };
  sw_pooling_sums (&strand->input, strand->sums);
}

static Strand
strand_new (gsize n)
{
  return (Strand){ .n = n, .l = g_new0 (float, n), .a = g_new0 (float, n), .b = g_new0 (float, n) };
}

static void
strand_clear (Strand *strand)
{
  g_free (strand->l);
  g_free (strand->a);
  g_free (strand->b);
  g_free (strand->gamma);
  g_free (strand->sums);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Strand, strand_clear)

/* Blocks of colour, of uneven lengths and with no two alike, repeated every @period stitches. */
static Strand
repeating_strand (gsize n, gsize period)
{
  Strand strand = strand_new (n);
  gsize left = 0;

  for (gsize i = 0; i < n; i++)
    {
      if (i >= period)
        {
          strand.l[i] = strand.l[i - period];
          strand.a[i] = strand.a[i - period];
          strand.b[i] = strand.b[i - period];
          continue;
        }
      if (left == 0)
        left = (gsize) g_test_rand_int_range (2, (gint32) period / 3);
      else
        {
          strand.l[i] = strand.l[i - 1];
          strand.a[i] = strand.a[i - 1];
          strand.b[i] = strand.b[i - 1];
          left--;
          continue;
        }
      left--;
      strand.l[i] = (float) g_test_rand_double_range (15, 90);
      strand.a[i] = (float) g_test_rand_double_range (-50, 50);
      strand.b[i] = (float) g_test_rand_double_range (-50, 50);
    }

  strand_measure (&strand, 0);
  return strand;
}

/* Colours that forget themselves over some @memory stitches and never repeat. */
static Strand
wandering_strand (gsize n, double memory, double turn)
{
  Strand strand = strand_new (n);
  double keep = memory > 0 ? exp (-1 / memory) : 0;

  for (gsize i = 0; i < n; i++)
    {
      float fresh = (float) (g_test_rand_double_range (-60, 60) * sqrt (1 - keep * keep));

      strand.l[i] = fresh + (i > 0 ? (float) keep * strand.l[i - 1] : 0);
      strand.a[i] = 0.5f * strand.l[i];
    }

  strand_measure (&strand, turn);
  return strand;
}

/* The stack of a neighbour by looking: over all pairs of stitches of the cloth, laid out row by row. */
static double
look (const Strand *strand, SwWorked worked, gsize width, gsize cast_on, int dr, int dj)
{
  SwLayout layout = { worked, .width = width, .cast_on = cast_on, .turn = strand->input.turn, .n = strand->n };
  gsize rows = sw_layout_rows (&layout), pairs = 0;
  double sum = 0;

  for (gsize row = 0; row + (gsize) dr < rows; row++)
    for (gsize column = 0; column < width; column++)
      {
        gint64 beside = (gint64) column + dj;

        if (beside >= 0 && beside < (gint64) width)
          {
            gsize i = sw_layout_stitch (&layout, row, column);
            gsize k = sw_layout_stitch (&layout, row + (gsize) dr, (gsize) beside);
            double l = (double) (strand->l[i] - strand->l[k]), a = (double) (strand->a[i] - strand->a[k]), b = (double) (strand->b[i] - strand->b[k]);

            sum += l * l + a * a + b * b;
            pairs++;
          }
      }

  return 1 - sum / (double) pairs / strand->input.gamma_inf;
}

static SwPooling
verdict (const Strand *strand, SwWorked worked, gsize width)
{
  SwPooling pooling;

  sw_pooling_judge (&strand->input, strand->sums, worked, width, &pooling);
  return pooling;
}

static void
assert_best (const Strand *strand, SwWorked worked, gsize width, gsize period, int row_step, int stitch_step)
{
  SwPooling pooling = verdict (strand, worked, width);

  if (pooling.stack != 1 || pooling.row_step != row_step || pooling.stitch_step != stitch_step)
    g_error ("period %zu, width %zu: stack %g at %d rows up, %d over; expected 1 at %d, %d",
             period, width, pooling.stack, pooling.row_step, pooling.stitch_step, row_step, stitch_step);
  g_assert_cmpfloat_with_epsilon (look (strand, worked, width, 0, row_step, stitch_step), 1, 1e-9);
}

/* In the round a period of p stacks at w = m p and at w = p / m, and one stitch more or less drifts by one a row. */
static void
test_round_closed_forms (void)
{
  for (gsize period = 20; period <= 140; period++)
    {
      g_auto (Strand) strand = repeating_strand (3000, period);

      for (gsize m = 1; m * period <= 600; m++)
        {
          assert_best (&strand, SW_WORKED_ROUND, m * period, period, 1, 0);
          assert_best (&strand, SW_WORKED_ROUND, m * period + 1, period, 1, 1);
          assert_best (&strand, SW_WORKED_ROUND, m * period - 1, period, 1, -1);
        }
      for (gsize m = 2; m <= 8 && period / m >= 13; m++)
        if (period % m == 0)
          assert_best (&strand, SW_WORKED_ROUND, period / m, period, (int) m, 0);
    }
}

/* Worked flat it stacks at 2 w = m p, on every second row; on every fourth at 4 w = m p. */
static void
test_flat_closed_forms (void)
{
  for (gsize period = 20; period <= 140; period++)
    {
      g_auto (Strand) strand = repeating_strand (3000, period);

      for (gsize width = 10; width <= 300; width++)
        if (2 * width % period == 0)
          assert_best (&strand, SW_WORKED_FLAT, width, period, 2, 0);
        else if (4 * width % period == 0)
          assert_best (&strand, SW_WORKED_FLAT, width, period, 4, 0);
    }
}

/* Every width of a few periods, both ways: the neighbours found to be the same by looking are the ones told, the nearest of them first. */
static void
test_repeats_by_looking (void)
{
  static const gsize periods[] = { 24, 37, 60, 91 };
  int found = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (periods); i++)
    {
      g_auto (Strand) strand = repeating_strand (2400, periods[i]);

      for (gsize width = 10; width <= 130; width++)
        {
          SwPooling pooling = verdict (&strand, SW_WORKED_ROUND, width);
          double nearest = INFINITY;

          for (int dr = 1; dr <= SW_POOLING_ROWS; dr++)
            for (int dj = -SW_POOLING_STITCHES; dj <= SW_POOLING_STITCHES; dj++)
              if (look (&strand, SW_WORKED_ROUND, width, 0, dr, dj) > 0.999999)
                nearest = MIN (nearest, hypot (dj / 3.2, dr / 4.4));

          if (isfinite (nearest))
            {
              found++;
              g_assert_cmpfloat (pooling.stack, ==, 1);
              g_assert_cmpfloat_with_epsilon (hypot (pooling.stitch_step / 3.2, pooling.row_step / 4.4), nearest, 1e-4);
              g_assert_cmpint (pooling.verdict, ==, pooling.stitch_step == 0 ? SW_VERDICT_COLUMNS : SW_VERDICT_DRIFTS);
            }
          else
            g_assert_cmpfloat (pooling.stack, <, 1);
        }
    }

  g_assert_cmpint (found, >, 100);
}

/*
 * All 104 neighbours of strands that do not repeat, by looking at the whole
 * cloth: the round, flat, with turns that use whole and broken stitches, after
 * a cast-on. What is left is that the cloth holds a part of the strand's pairs.
 */
static void
test_stacks_by_looking (void)
{
  static const struct
  {
    SwWorked worked;
    gsize width, cast_on;
    double turn, memory;
  } rows[] = {
    { SW_WORKED_ROUND, 40, 120, 0, 30 },
    { SW_WORKED_ROUND, 23, 0, 2.6, 60 }, /* no turns in the round */
    { SW_WORKED_FLAT, 40, 120, 0, 30 },
    { SW_WORKED_FLAT, 15, 0, 1, 20 },
    { SW_WORKED_FLAT, 33, 99, 0.5, 30 },
    { SW_WORKED_FLAT, 18, 7, 2.7, 40 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_auto (Strand) strand = wandering_strand (80000, rows[i].memory, rows[i].turn);
      double worst = 0;

      for (int dr = 1; dr <= SW_POOLING_ROWS; dr++)
        for (int dj = -SW_POOLING_STITCHES; dj <= SW_POOLING_STITCHES; dj++)
          {
            double seen = look (&strand, rows[i].worked, rows[i].width, rows[i].cast_on, dr, dj);
            double told = sw_pooling_stack (&strand.input, strand.sums, rows[i].worked, rows[i].width, dr, dj);

            worst = MAX (worst, fabs (seen - told));
          }

      g_test_message ("%s, width %zu, turn %g: largest difference %.4f",
                      rows[i].worked == SW_WORKED_FLAT ? "flat" : "round", rows[i].width, rows[i].turn, worst);
      g_assert_cmpfloat (worst, <, 0.03);
    }
}

/*
 * A doubled skein repeats as a palindrome. Worked flat over half the loop a row
 * runs back over the mirrored half: each row stands on the one below when the
 * mirror falls on the turn, and on the second below wherever it falls. That is
 * told; where the mirrors fall, a variogram cannot know.
 */
static void
test_palindrome (void)
{
  for (gsize half = 12; half <= 60; half += 3)
    {
      g_auto (Strand) strand = repeating_strand (5000, 3 * half);
      gsize period = 2 * half;

      for (gsize i = 0; i < strand.n; i++)
        {
          gsize place = i % period, mirrored = MIN (place, period - 1 - place);

          strand.l[i] = strand.l[mirrored];
          strand.a[i] = strand.a[mirrored];
          strand.b[i] = strand.b[mirrored];
        }
      g_free (strand.gamma);
      g_free (strand.sums);
      strand_measure (&strand, 0);

      for (gsize m = 1; m * half <= 300; m++)
        {
          g_assert_cmpfloat_with_epsilon (look (&strand, SW_WORKED_FLAT, m * half, 0, 1, 0), 1, 1e-9);
          g_assert_cmpfloat_with_epsilon (look (&strand, SW_WORKED_FLAT, m * half, half / 2, 2, 0), 1, 1e-9);
          assert_best (&strand, SW_WORKED_FLAT, m * half, period, 2, 0);
          assert_best (&strand, SW_WORKED_ROUND, m * period, period, 1, 0);
        }
    }
}

/* No order at all scatters at every width, both ways. */
static void
test_noise_scatters (void)
{
  static const gsize lengths[] = { 1000, 4000, 36000 };

  for (gsize i = 0; i < G_N_ELEMENTS (lengths); i++)
    {
      g_auto (Strand) strand = wandering_strand (lengths[i], 0, 0);
      double highest = 0;

      for (gsize width = 10; width <= 600; width++)
        for (int worked = SW_WORKED_FLAT; worked <= SW_WORKED_ROUND; worked++)
          {
            SwPooling pooling = verdict (&strand, (SwWorked) worked, width);

            g_assert_cmpint (pooling.verdict, ==, SW_VERDICT_SCATTERS);
            highest = MAX (highest, pooling.stack);
          }

      g_test_message ("%zu stitches: highest stack %.3f", lengths[i], highest);
    }
}

/* A strand too short for the width tells nothing, whatever its last few stitches do. */
static void
test_few_pairs (void)
{
  g_auto (Strand) strand = wandering_strand (300, 12, 0);

  for (gsize width = 151; width <= 600; width++)
    {
      SwPooling pooling = verdict (&strand, SW_WORKED_ROUND, width);

      g_assert_cmpint (pooling.verdict, ==, SW_VERDICT_SCATTERS);
      g_assert_cmpfloat (pooling.stack, ==, 0);
    }
}

/* One colour for longer than a row is a stripe; but a plain strand with specks is not, however long it stays plain. */
static void
test_stripes_and_specks (void)
{
  g_auto (Strand) blocks = strand_new (20000);
  g_auto (Strand) specks = strand_new (20000);

  for (gsize i = 0; i < blocks.n; i++)
    {
      blocks.l[i] = i / 150 % 2 == 0 ? 30 : 80;
      specks.l[i] = g_test_rand_int_range (0, 100) < 6 ? 20 : 85;
    }
  strand_measure (&blocks, 0);
  strand_measure (&specks, 0);
  blocks.input.stripe_stitches = 150;
  specks.input.stripe_stitches = 20000;

  for (int worked = SW_WORKED_FLAT; worked <= SW_WORKED_ROUND; worked++)
    {
      g_assert_cmpint (verdict (&blocks, (SwWorked) worked, 60).verdict, ==, SW_VERDICT_STRIPES);
      g_assert_cmpint (verdict (&blocks, (SwWorked) worked, 150).verdict, ==, SW_VERDICT_STRIPES);
      g_assert_cmpint (verdict (&blocks, (SwWorked) worked, 300).verdict, ==, SW_VERDICT_COLUMNS);
      g_assert_cmpint (verdict (&specks, (SwWorked) worked, 60).verdict, ==, SW_VERDICT_SCATTERS);
    }
}

static void
test_even (void)
{
  g_auto (Strand) plain = strand_new (5000);
  g_auto (Strand) faint = strand_new (5000);

  for (gsize i = 0; i < faint.n; i++)
    faint.l[i] = 50 + (i / 30 % 2 == 0 ? 1.0f : -1.0f);
  strand_measure (&plain, 0);
  strand_measure (&faint, 0);

  g_assert_cmpint (verdict (&plain, SW_WORKED_ROUND, 60).verdict, ==, SW_VERDICT_EVEN);
  g_assert_cmpfloat (verdict (&plain, SW_WORKED_ROUND, 60).stack, ==, 0);
  g_assert_cmpint (verdict (&faint, SW_WORKED_FLAT, 60).verdict, ==, SW_VERDICT_EVEN);
}

/* Six stitches over is a drift of six; with nine, the flank of the peak is found, and that it is only a flank. */
static void
test_beyond (void)
{
  for (int side = -1; side <= 1; side += 2)
    {
      g_auto (Strand) strand = strand_new (6000);
      SwPooling six, nine;

      for (gsize i = 0; i < strand.n; i++)
        strand.l[i] = 50 + 30 * (float) sin (2 * G_PI * (double) i / 97);
      strand_measure (&strand, 0);
      six = verdict (&strand, SW_WORKED_ROUND, (gsize) (97 + 6 * side));
      nine = verdict (&strand, SW_WORKED_ROUND, (gsize) (97 + 9 * side));

      g_assert_cmpfloat (six.stack, ==, 1);
      g_assert_cmpint (six.stitch_step, ==, 6 * side);
      g_assert_false (six.beyond);
      g_assert_cmpint (nine.stitch_step, ==, 6 * side);
      g_assert_cmpint (nine.row_step, ==, 1);
      g_assert_true (nine.beyond);
    }
}

/* To the right and up is positive; straight up is 0; a stitch over and a row up by the gauge. */
static void
test_angle (void)
{
  g_auto (Strand) strand = repeating_strand (6000, 50);
  SwPooling right = verdict (&strand, SW_WORKED_ROUND, 51), left = verdict (&strand, SW_WORKED_ROUND, 49);

  g_assert_cmpfloat_with_epsilon (right.angle_deg, atan (4.4 / 3.2) * 180 / G_PI, 1e-9);
  g_assert_cmpfloat_with_epsilon (left.angle_deg, -right.angle_deg, 1e-9);
  g_assert_cmpfloat (verdict (&strand, SW_WORKED_ROUND, 50).angle_deg, ==, 0);
}

/* The scan is the single verdicts, and speckles lower what it finds without moving it: one row up, not seven. */
static void
test_scan (void)
{
  g_auto (Strand) strand = repeating_strand (8000, 64);
  SwPooling scanned[191];

  for (int worked = SW_WORKED_FLAT; worked <= SW_WORKED_ROUND; worked++)
    {
      sw_pooling_scan (&strand.input, (SwWorked) worked, 10, 200, scanned);
      for (gsize width = 10; width <= 200; width++)
        {
          SwPooling single = verdict (&strand, (SwWorked) worked, width);
          const SwPooling *other = &scanned[width - 10];

          g_assert_cmpuint (other->width, ==, width);
          g_assert_cmpint (other->worked, ==, worked);
          g_assert_cmpfloat (other->stack, ==, single.stack);
          g_assert_cmpint (other->row_step, ==, single.row_step);
          g_assert_cmpint (other->stitch_step, ==, single.stitch_step);
          g_assert_cmpint (other->verdict, ==, single.verdict);
          g_assert_cmpfloat (other->angle_deg, ==, single.angle_deg);
        }
    }

  for (gsize i = 0; i < strand.n; i++)
    if (g_test_rand_int_range (0, 10) == 0)
      strand.l[i] = 100;
  g_free (strand.gamma);
  g_free (strand.sums);
  strand_measure (&strand, 0);
  g_assert_cmpfloat (verdict (&strand, SW_WORKED_ROUND, 64).stack, <, 1);
  g_assert_cmpfloat (verdict (&strand, SW_WORKED_ROUND, 64).stack, >, 0.25);
  g_assert_cmpint (verdict (&strand, SW_WORKED_ROUND, 64).verdict, ==, SW_VERDICT_COLUMNS);
  g_assert_cmpint (verdict (&strand, SW_WORKED_ROUND, 64).row_step, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cloth/pooling/round-closed-forms", test_round_closed_forms);
  g_test_add_func ("/cloth/pooling/flat-closed-forms", test_flat_closed_forms);
  g_test_add_func ("/cloth/pooling/repeats-by-looking", test_repeats_by_looking);
  g_test_add_func ("/cloth/pooling/stacks-by-looking", test_stacks_by_looking);
  g_test_add_func ("/cloth/pooling/palindrome", test_palindrome);
  g_test_add_func ("/cloth/pooling/noise-scatters", test_noise_scatters);
  g_test_add_func ("/cloth/pooling/few-pairs", test_few_pairs);
  g_test_add_func ("/cloth/pooling/stripes-and-specks", test_stripes_and_specks);
  g_test_add_func ("/cloth/pooling/even", test_even);
  g_test_add_func ("/cloth/pooling/beyond", test_beyond);
  g_test_add_func ("/cloth/pooling/angle", test_angle);
  g_test_add_func ("/cloth/pooling/scan", test_scan);
  return g_test_run ();
}
