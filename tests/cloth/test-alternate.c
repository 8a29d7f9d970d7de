/* SPDX-License-Identifier: GPL-3.0-or-later */

/*
 * Skeins in turn: every stitch of every skein is used once and in order, and
 * the closed form of the pooling is what one finds by looking at all pairs of
 * stitches in a cloth laid out row by row.
 */

#include "cloth/sw-pooling.h"

#include <math.h>

#define MOST_PERIOD 40

/* A strand that repeats for ever, with its variogram known exactly: the mean over one period. */
typedef struct
{
  gsize period;
  double colour[MOST_PERIOD];
  double *gamma, *sums;
  SwPoolingInput input;
} Strand;

static double
colour_at (const Strand *strand, gsize i)
{
  return strand->colour[i % strand->period];
}

static void
strand_init (Strand *strand, gsize period, const SwPoolingInput *input)
{
  const gsize n_lags = sw_pooling_lags (100) + 2000;
  double mean = 0, square = 0;

  strand->period = period;
  for (gsize i = 0; i < period; i++)
    {
      strand->colour[i] = g_test_rand_double_range (0, 100);
      mean += strand->colour[i] / (double) period;
      square += strand->colour[i] * strand->colour[i] / (double) period;
    }
  strand->gamma = g_new0 (double, n_lags);
  strand->sums = g_new0 (double, n_lags);
  for (gsize lag = 0; lag < n_lags; lag++)
    for (gsize i = 0; i < period; i++)
      {
        const double d = colour_at (strand, i + lag) - colour_at (strand, i);

        strand->gamma[lag] += d * d / (double) period;
      }
  strand->input = *input;
  strand->input.gamma = strand->gamma;
  strand->input.n_lags = n_lags;
  strand->input.gamma_inf = 2 * (square - mean * mean);
  strand->input.stitch_width_cm = 0.3;
  strand->input.row_height_cm = 0.25;
  sw_pooling_sums (&strand->input, strand->sums);
}

static void
strand_clear (Strand *strand)
{
  g_free (strand->gamma);
  g_free (strand->sums);
}

/* Every skein reaches for @own_rows rows. */
static SwLayout
layout_of (const Strand *strand, SwWorked worked, gsize width, gsize own_rows)
{
  const gsize cast_on = (gsize) lround (strand->input.cast_on * (double) width);
  const gsize step = width + (gsize) strand->input.turn;
  SwLayout layout = {
    worked,
    .width = width,
    .cast_on = cast_on,
    .turn = strand->input.turn,
    .n = cast_on + step * own_rows,
    .alternation = strand->input.alternation,
  };

  for (gsize i = 0; i < G_N_ELEMENTS (layout.next_n); i++)
    layout.next_n[i] = step * own_rows;
  return layout;
}

/* The stack of a neighbour by looking at the cloth. Each next skein starts the shift further in. */
static double
look (const Strand *strand, SwWorked worked, gsize width, gsize rows, int dr, int dj)
{
  const SwLayout layout = layout_of (strand, worked, width, rows + SW_POOLING_ROWS);
  const gsize shift = (gsize) strand->input.shift;
  gsize pairs = 0;
  double sum = 0;

  g_assert_cmpuint (sw_layout_rows (&layout), >=, rows + (gsize) dr);
  for (gsize row = 0; row < rows; row++)
    for (gint64 column = MAX (0, -dj); column < (gint64) width - MAX (0, dj); column++)
      {
        const gsize above = row + (gsize) dr;
        const gsize i = sw_layout_stitch (&layout, row, (gsize) column) + shift * sw_alternation_skein (&layout.alternation, row);
        const gsize k = sw_layout_stitch (&layout, above, (gsize) (column + dj)) + shift * sw_alternation_skein (&layout.alternation, above);
        const double d = colour_at (strand, i) - colour_at (strand, k);

        sum += d * d;
        pairs++;
      }
  return 1 - sum / (double) pairs / strand->input.gamma_inf;
}

static const struct
{
  const char *name;
  SwWorked worked;
  SwPoolingInput input;
} cloths[] = {
  { "two-by-two", SW_WORKED_ROUND, { .alternation = { 2, 2 } } },
  { "two-by-one", SW_WORKED_ROUND, { .alternation = { 2, 1 }, .shift = 7 } },
  { "three-by-three", SW_WORKED_ROUND, { .alternation = { 3, 3 }, .shift = 11, .cast_on = 2.5 } },
  { "four-by-eight", SW_WORKED_ROUND, { .alternation = { 4, 8 }, .shift = 300, .cast_on = 1 } },
  { "flat-two-by-two", SW_WORKED_FLAT, { .alternation = { 2, 2 }, .shift = 5, .cast_on = 3 } },
  { "flat-odd-cycle", SW_WORKED_FLAT, { .alternation = { 3, 1 }, .shift = 4 } },
  { "flat-with-turns", SW_WORKED_FLAT, { .alternation = { 2, 3 }, .turn = 2, .cast_on = 3 } },
};

/* So many rows that each place in the cycle meets each place of the period equally often: the width shares no factor with it. */
static void
test_by_looking (gconstpointer data)
{
  const gsize i = GPOINTER_TO_SIZE (data);
  const gsize cycle = cloths[i].input.alternation.skeins * cloths[i].input.alternation.rows;
  const gsize period = 17, width = 23;
  Strand strand;

  strand_init (&strand, period, &cloths[i].input);
  for (int dr = 1; dr <= SW_POOLING_ROWS; dr++)
    for (int dj = -SW_POOLING_STITCHES; dj <= SW_POOLING_STITCHES; dj++)
      {
        const double seen = look (&strand, cloths[i].worked, width, 2 * cycle * period, dr, dj);
        const double found = sw_pooling_stack (&strand.input, strand.sums, cloths[i].worked, width, dr, dj);

        g_assert_cmpfloat_with_epsilon (found, seen, 1e-9);
      }
  strand_clear (&strand);
}

/* One skein is what there was before there were several: to the last bit. */
static void
test_one_skein (void)
{
  Strand strand;

  strand_init (&strand, 29, &(SwPoolingInput){ .turn = 1.37 });
  for (int worked = SW_WORKED_FLAT; worked <= SW_WORKED_ROUND; worked++)
    for (gsize width = 8; width < 60; width++)
      {
        SwPoolingInput one = strand.input;
        SwPooling before, after;

        one.alternation = (SwAlternation){ 1, 5 };
        one.shift = 40;
        one.cast_on = 3;
        sw_pooling_judge (&strand.input, strand.sums, worked, width, &before);
        sw_pooling_judge (&one, strand.sums, worked, width, &after);
        g_assert_cmpmem (&before.stack, sizeof (double), &after.stack, sizeof (double));
        g_assert_cmpint (before.row_step, ==, after.row_step);
        g_assert_cmpint (before.stitch_step, ==, after.stitch_step);
        g_assert_cmpint (before.verdict, ==, after.verdict);
      }
  strand_clear (&strand);
}

/*
 * What alternating is done for: at a width that stacks in columns, a second
 * skein that starts half a repeat later breaks the columns where the skeins
 * meet; what is left is within each skein's own rows.
 */
static void
test_breaks_columns (void)
{
  Strand one, two;

  strand_init (&one, 24, &(SwPoolingInput){ .cast_on = 0 });
  g_assert_cmpfloat_with_epsilon (sw_pooling_stack (&one.input, one.sums, SW_WORKED_ROUND, 48, 1, 0), 1, 1e-9);
  two = one;
  two.input.alternation = (SwAlternation){ 2, 1 };
  two.input.shift = 12;
  g_assert_cmpfloat (sw_pooling_stack (&two.input, two.sums, SW_WORKED_ROUND, 48, 1, 0), <, 0.9);
  g_assert_cmpfloat_with_epsilon (sw_pooling_stack (&two.input, two.sums, SW_WORKED_ROUND, 48, 1, 0), 1 - one.gamma[12] / one.input.gamma_inf, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_pooling_stack (&two.input, two.sums, SW_WORKED_ROUND, 48, 2, 0), 1, 1e-9);
  strand_clear (&one);
}

/* Each skein is used once, from its start, in the order of the rows; the cloth ends where one is used up. */
static void
test_layout (void)
{
  const gsize n[] = { 40, 33, 25 };
  SwLayout layout = { SW_WORKED_ROUND, .width = 5, .cast_on = 10, .n = n[0], .alternation = { 3, 2 }, .next_n = { n[1], n[2] } };
  gsize next[] = { 10, 0, 0 };
  const gsize rows = sw_layout_rows (&layout);

  for (gsize row = 0; row < rows; row++)
    {
      const gsize skein = sw_alternation_skein (&layout.alternation, row);

      g_assert_cmpuint (skein, ==, row / 2 % 3);
      for (gsize column = 5; column-- > 0;)
        g_assert_cmpuint (sw_layout_stitch (&layout, row, column), ==, next[skein]++);
      g_assert_cmpuint (next[skein], <=, n[skein]);
    }
  /* 6, 6 and 5 rows: the third is used up in the middle of its third block. */
  g_assert_cmpuint (rows, ==, 17);
  g_assert_cmpuint (sw_layout_stitch (&layout, rows, 4), ==, G_MAXSIZE);

  layout.next_n[1] = 4;
  g_assert_cmpuint (sw_layout_rows (&layout), ==, 4);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cloth/alternate/layout", test_layout);
  g_test_add_func ("/cloth/alternate/one-skein", test_one_skein);
  g_test_add_func ("/cloth/alternate/breaks-columns", test_breaks_columns);
  for (gsize i = 0; i < G_N_ELEMENTS (cloths); i++)
    {
      g_autofree char *path = g_strconcat ("/cloth/alternate/by-looking/", cloths[i].name, NULL);

      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_by_looking);
    }
  return g_test_run ();
}
