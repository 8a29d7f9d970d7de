/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Skeins in turn through the whole pipeline: the next skein is the one of the next place in the pan, and what was kept stays kept. */

#include "config.h"

#include "forecast/sw-forecast.h"
#include "sw-test-sketch.h"

static SwForecast *
run (SwForecaster *forecaster, const SwSketch *sketch)
{
  g_autoptr (GError) error = NULL;
  SwForecast *forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);

  g_assert_no_error (error);
  return forecast;
}

static void
assert_same_legs (const SwSkeinLegs *a, const SwSkeinLegs *b)
{
  g_assert_cmpuint (a->n_stitches, ==, b->n_stitches);
  g_assert_cmpmem (a->leg_x, 2 * a->n_stitches * sizeof (float), b->leg_x, 2 * b->n_stitches * sizeof (float));
  g_assert_cmpmem (a->leg_y, 2 * a->n_stitches * sizeof (float), b->leg_y, 2 * b->n_stitches * sizeof (float));
  g_assert_cmpmem (a->leg_z, 2 * a->n_stitches * sizeof (float), b->leg_z, 2 * b->n_stitches * sizeof (float));
}

static gboolean
same_colours (const SwSkeinLegs *a, const SwSkeinLegs *b)
{
  gsize unlike = 0;

  for (gsize i = 0; i < 2 * MIN (a->n_stitches, b->n_stitches); i++)
    unlike += a->leg_y[i] != b->leg_y[i];
  return unlike == 0;
}

/* One skein: whatever the other members say, everything is as if they were not there. */
static void
test_one_skein (void)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwSketch) sketch = test_sketch (1);
  g_autoptr (SwForecast) before = run (forecaster, sketch);
  g_autoptr (SwForecast) after = NULL;

  sketch->cloth.alternate_rows = 7;
  sketch->cloth.alternate_shift_cm = 900;
  after = run (forecaster, sketch);
  g_assert_cmpuint (after->n_skeins, ==, 1);
  assert_same_legs (&before->skeins[0], &after->skeins[0]);
  g_assert_true (after->pooling_input.gamma == before->pooling_input.gamma);
  g_assert_cmpuint (after->pooling_input.n_lags, ==, before->pooling_input.n_lags);
  g_assert_cmpfloat (after->pooling.stack, ==, before->pooling.stack);
  g_assert_cmpuint (sw_layout_rows (&after->layout), ==, sw_layout_rows (&before->layout));
}

/* Two skeins of a pan of two, in turn, are the two that are there; the third is of the next pan. */
static void
test_next_skeins (void)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwSketch) sketch = test_sketch (1);
  g_autoptr (SwForecast) in_turn = NULL, second = NULL;

  sketch->lay.skeins = 2;
  sketch->cloth.alternate_skeins = 3;
  in_turn = run (forecaster, sketch);
  sketch->cloth.alternate_skeins = 1;
  sketch->cloth.skein = 2;
  second = run (forecaster, sketch);

  g_assert_cmpuint (in_turn->n_skeins, ==, 3);
  g_assert_true (in_turn->leg_x == in_turn->skeins[0].leg_x);
  assert_same_legs (&in_turn->skeins[1], &second->skeins[0]);
  g_assert_false (same_colours (&in_turn->skeins[0], &in_turn->skeins[1]));
  g_assert_false (same_colours (&in_turn->skeins[0], &in_turn->skeins[2]));
}

/* A later start is the same strand, cut: whole stitches of shift drop that many. */
static void
test_shift (void)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwSketch) sketch = test_sketch (1);
  g_autoptr (SwForecast) forecast = NULL, shifted = NULL;

  sketch->cloth.stitch_length_cm = 1.25;
  sketch->cloth.alternate_skeins = 2;
  forecast = run (forecaster, sketch);
  sketch->cloth.alternate_shift_cm = 1.25 * 64;
  shifted = run (forecaster, sketch);

  g_assert_cmpuint (shifted->skeins[0].n_stitches, ==, forecast->skeins[0].n_stitches);
  g_assert_cmpuint (shifted->skeins[1].n_stitches, ==, forecast->skeins[1].n_stitches - 64);
  g_assert_cmpuint (shifted->layout.next_n[0], ==, shifted->skeins[1].n_stitches);
  for (gsize i = 0; i < 2 * shifted->skeins[1].n_stitches; i++)
    g_assert_cmpfloat_with_epsilon (shifted->skeins[1].leg_y[i], forecast->skeins[1].leg_y[i + 128], 1e-3f);
}

/* Another width, or other rows in turn, asks for no strand, no colour and no variogram again. */
static void
test_cheap_edits (void)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwSketch) sketch = test_sketch (1);
  g_autoptr (SwForecast) first = NULL;
  guint counts[SW_N_STAGES];

  sketch->cloth.alternate_skeins = 2;
  sketch->cloth.alternate_shift_cm = 75;
  first = run (forecaster, sketch);
  g_assert_cmpuint (sw_forecaster_count (forecaster, SW_STAGE_STRAND), ==, 2);
  for (int stage = 0; stage < SW_N_STAGES; stage++)
    counts[stage] = sw_forecaster_count (forecaster, stage);

  for (gsize i = 1; i <= 4; i++)
    {
      g_autoptr (SwForecast) forecast = NULL;

      sketch->cloth.width_stitches += 3;
      sketch->cloth.alternate_rows = (gint64) i;
      forecast = run (forecaster, sketch);
      g_assert_cmpuint (forecast->layout.alternation.rows, ==, i);
    }
  for (int stage = 0; stage < SW_STAGE_POOLING; stage++)
    g_assert_cmpuint (sw_forecaster_count (forecaster, stage), ==, counts[stage]);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/forecast/alternate/one-skein", test_one_skein);
  g_test_add_func ("/forecast/alternate/next-skeins", test_next_skeins);
  g_test_add_func ("/forecast/alternate/shift", test_shift);
  g_test_add_func ("/forecast/alternate/cheap-edits", test_cheap_edits);
  return g_test_run ();
}
