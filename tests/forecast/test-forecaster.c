/* SPDX-License-Identifier: GPL-3.0-or-later */

/*
 * The pipeline keeps what an edit does not touch, and what it keeps is what
 * it would compute afresh. What the model says follows for whole sketches:
 * mass, palindromes, closed-form pooling.
 */

#include "config.h"

#include "cloth/sw-fabric.h"
#include "forecast/sw-forecast.h"
#include "sw-test-sketch.h"

#include <math.h>
#include <string.h>

static SwForecast *
run (SwForecaster *forecaster, const SwSketch *sketch)
{
  g_autoptr (GError) error = NULL;
  SwForecast *forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (forecast);
  return forecast;
}

static SwForecast *
run_afresh (const SwSketch *sketch)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();

  return run (forecaster, sketch);
}

static void
assert_same_bytes (const SwForecast *a, const SwForecast *b)
{
  gsize n = 2 * a->n_stitches;

  g_assert_cmpuint (a->n_stitches, ==, b->n_stitches);
  g_assert_cmpmem (a->leg_x, n * sizeof (float), b->leg_x, n * sizeof (float));
  g_assert_cmpmem (a->leg_y, n * sizeof (float), b->leg_y, n * sizeof (float));
  g_assert_cmpmem (a->leg_z, n * sizeof (float), b->leg_z, n * sizeof (float));
  g_assert_cmpmem (a->pooling_input.gamma, a->pooling_input.n_lags * sizeof (double),
                   b->pooling_input.gamma, b->pooling_input.n_lags * sizeof (double));
  g_assert_cmpint (a->pooling.verdict, ==, b->pooling.verdict);
  g_assert_cmpfloat (a->pooling.stack, ==, b->pooling.stack);
  g_assert_cmpfloat (a->clear_percent, ==, b->clear_percent);
}

/* --- What an edit computes again --- */

static void
edit_nothing (SwSketch *sketch)
{
}

static void
edit_drag (SwSketch *sketch)
{
  ((SwStep *) sketch->steps->pdata[1])->x_cm += 1.0;
}

static void
edit_width (SwSketch *sketch)
{
  sketch->cloth.width_stitches += 7;
}

static void
edit_worked (SwSketch *sketch)
{
  sketch->cloth.worked = SW_WORKED_FLAT;
}

static void
edit_colour (SwSketch *sketch)
{
  ((SwDye *) sketch->dyes->pdata[0])->sample.numbers[0] -= 20.0;
}

static void
edit_stitch_length (SwSketch *sketch)
{
  sketch->cloth.stitch_length_cm = 1.1;
}

static void
edit_last_rest (SwSketch *sketch)
{
  ((SwStep *) sketch->steps->pdata[5])->minutes += 5.0;
}

static void
edit_title (SwSketch *sketch)
{
  g_free (sketch->title);
  sketch->title = g_strdup ("Another title");
}

static void
edit_half_time (SwSketch *sketch)
{
  ((SwDye *) sketch->dyes->pdata[1])->half_time_min = 2.0;
}

static const struct
{
  const char *name;
  void (*edit) (SwSketch *sketch);
  guint expected[SW_N_STAGES]; /* palette basis schedule pour field strand read legs series pooling */
} edits[] = {
  { "nothing", edit_nothing, { 0, 0, 0, 0, 0, 0, 0, 0, 0, 1 } },
  { "title", edit_title, { 0, 0, 0, 0, 0, 0, 0, 0, 0, 1 } },
  { "drag-one-pour", edit_drag, { 0, 0, 0, 1, 1, 0, 1, 1, 1, 1 } },
  { "width", edit_width, { 0, 0, 0, 0, 0, 0, 0, 0, 0, 1 } },
  { "flat", edit_worked, { 0, 0, 0, 0, 0, 0, 0, 0, 0, 1 } },
  { "colour-of-a-dye", edit_colour, { 1, 0, 0, 0, 0, 0, 0, 1, 1, 1 } },
  { "stitch-length", edit_stitch_length, { 0, 0, 0, 0, 0, 1, 2, 1, 1, 1 } },
  { "minutes-of-the-set", edit_last_rest, { 0, 0, 1, 0, 2, 0, 2, 1, 1, 1 } },
  { "half-time-of-a-dye", edit_half_time, { 0, 0, 1, 0, 1, 0, 1, 1, 1, 1 } },
};

static void
test_recomputes (gconstpointer data)
{
  gsize row = GPOINTER_TO_SIZE (data);
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwForecast) before = run (forecaster, sketch);
  g_autoptr (SwForecast) after = NULL;
  g_autoptr (SwForecast) afresh = NULL;
  guint counts[SW_N_STAGES];

  for (int stage = 0; stage < SW_N_STAGES; stage++)
    counts[stage] = sw_forecaster_count (forecaster, stage);

  edits[row].edit (sketch);
  after = run (forecaster, sketch);
  for (int stage = 0; stage < SW_N_STAGES; stage++)
    {
      g_test_message ("stage %d", stage);
      g_assert_cmpuint (sw_forecaster_count (forecaster, stage) - counts[stage], ==, edits[row].expected[stage]);
    }

  afresh = run_afresh (sketch);
  assert_same_bytes (after, afresh);
}

/* Any row of edits: kept results are those computed afresh, bit for bit. */
static void
test_kept_is_fresh (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();

  test_add_speckles (sketch, sketch->dyes->pdata[1], 4);
  for (int i = 0; i < 25; i++)
    {
      g_autoptr (SwForecast) kept = NULL;
      g_autoptr (SwForecast) afresh = NULL;

      edits[g_test_rand_int_range (1, 5)].edit (sketch);
      ((SwStep *) sketch->steps->pdata[1])->x_cm = g_test_rand_double_range (5.0, 55.0);
      kept = run (forecaster, sketch);
      afresh = run_afresh (sketch);
      assert_same_bytes (kept, afresh);
    }
}

/* --- Mass --- */

static void
test_mass (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = run_afresh (sketch);
  double poured[2] = { 0.45, 0.25 }; /* grams: 45 mL and 25 mL of a 1 % stock, by hand */

  for (int dye = 0; dye < 2; dye++)
    {
      const SwDyeForecast *sums = &forecast->dyes[dye];
      double in_cells = 0.0;

      for (gsize i = 0; i < sw_grid_cells (&forecast->grid); i++)
        in_cells += (double) forecast->fields[dye].depth[i] / 100.0 * forecast->grams_per_cell;

      g_assert_cmpfloat_with_epsilon (sums->poured_g, poured[dye], 1e-12);
      g_assert_cmpfloat_with_epsilon (sums->struck_g + sums->left_g, sums->poured_g, 1e-9 * sums->poured_g);
      /* The field is single precision: its sum is good to that. */
      g_assert_cmpfloat_with_epsilon (in_cells, sums->struck_g, 2e-6 * sums->struck_g);
    }
}

/* What has struck after a step is what would have, had the dyeing stopped there. */
static void
test_step_balances (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = NULL;
  double poured[2] = { 0.0, 0.0 };
  gsize n;

  ((SwDye *) sketch->dyes->pdata[0])->quick_share = 0.3;
  test_add_speckles (sketch, sketch->dyes->pdata[1], 3);
  forecast = run_afresh (sketch);
  n = forecast->n_steps;
  g_assert_cmpuint (n, ==, sketch->steps->len);

  for (gsize i = 0; i < n; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];
      g_autoptr (SwSketch) cut = sw_sketch_copy (sketch);
      g_autoptr (SwForecast) stopped = NULL;

      g_ptr_array_set_size (cut->steps, (int) i + 1);
      stopped = run_afresh (cut);
      for (gsize dye = 0; dye < 2; dye++)
        {
          const SwStepBalance *balance = &forecast->step_balances[i * 2 + dye];

          if (sw_step_is_pour (step) && step->dye == ((const SwDye *) sketch->dyes->pdata[dye])->id)
            poured[dye] += sw_schedule_pour_grams (sketch, step);
          g_assert_cmpfloat_with_epsilon (balance->struck_g + balance->left_g, poured[dye], 1e-12);
          g_assert_cmpfloat_with_epsilon (balance->struck_g, stopped->dyes[dye].struck_g, 1e-12);
        }
    }
}

/* At the end it is the dye's whole account, by the transfer taken from each pour to the end. */
static void
test_end_balance (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = run_afresh (sketch);
  gsize n = forecast->n_steps;
  g_autofree SwSpan *spans = g_new (SwSpan, n);

  for (gsize dye = 0; dye < 2; dye++)
    {
      const SwDye *record = sketch->dyes->pdata[dye];
      double wanted = 0.0;

      g_assert_cmpfloat (record->quick_share, ==, 0.0);
      sw_schedule_spans (sketch, forecast->states, record, 0, spans);
      for (gsize i = 0; i < n; i++)
        {
          const SwStep *step = sketch->steps->pdata[i];

          if (sw_step_is_pour (step) && step->dye == record->id)
            wanted += sw_schedule_pour_grams (sketch, step) * sw_transfer_share (spans + i, n - i);
        }
      g_assert_cmpfloat (wanted, >, 0.0);
      g_assert_cmpfloat_with_epsilon (forecast->dyes[dye].struck_g, wanted, 1e-12);
      g_assert_cmpfloat_with_epsilon (forecast->step_balances[(n - 1) * 2 + dye].struck_g, wanted, 1e-12);
    }
}

/* Specks at the strand carry their dye: the mean over the strand is the mean over the pan. */
static void
test_speckle_mass (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  SwDye *dye = test_add_dye (sketch, "Ink", 40, 40, 60);
  g_autoptr (SwForecast) forecast = NULL;
  const SwSpecks *specks;
  double grams = 0.0;

  sketch->yarn.metres_per_100_g = 1200.0;
  test_add_speckles (sketch, dye, 0)->specks_per_100_cm2 = 80.0;
  test_add_step (sketch, SW_STEP_SET)->minutes = 30.0;
  forecast = run_afresh (sketch);

  g_assert_cmpuint (forecast->n_specks, ==, 1);
  specks = forecast->specks[0];
  for (gsize i = 0; i < specks->n_specks; i++)
    grams += (double) specks->specks[i].grams * specks->marks[specks->class_of[i]].share;
  g_assert_cmpfloat_with_epsilon (grams, forecast->dyes[0].struck_g, 1e-5 * forecast->dyes[0].struck_g);
  g_assert_cmpfloat (forecast->pooling_input.gamma_inf, >, 1.0);
}

/* --- The strand --- */

/* A doubled skein is a palindrome: the loop's colours read the same from both ends. */
static void
test_palindrome (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = NULL;
  float x[120], y[120], z[120];
  double worst = 0.0;

  sketch->lay.folding = SW_FOLDING_SIDE_BY_SIDE;
  forecast = run_afresh (sketch);
  sw_forecast_strip (forecast, 120, x, y, z);
  for (int i = 0; i < 60; i++)
    worst = MAX (worst, (double) fabsf (y[i] - y[119 - i]));

  g_test_message ("largest difference in Y between mirrored places: %g", worst);
  g_assert_cmpfloat (worst, <, 0.01);
}

static void
test_opened_is_no_palindrome (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (1);
  g_autoptr (SwForecast) forecast = run_afresh (sketch);
  float x[120], y[120], z[120];
  double worst = 0.0;

  sw_forecast_strip (forecast, 120, x, y, z);
  for (int i = 0; i < 60; i++)
    worst = MAX (worst, (double) fabsf (y[i] - y[119 - i]));
  g_assert_cmpfloat (worst, >, 10.0);
}

/* Poured from above and not worked in, the underside stays mostly undyed: common practice, no source. */
static void
test_underside (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  SwDye *dye = test_add_dye (sketch, "Green", 60, 110, 70);
  g_autoptr (SwForecast) forecast = NULL;
  float x[60], y[60], z[60], above_y[60];
  gsize plane, last;
  double above, below;

  /* The yarn just covered, in the default acid. */
  sketch->bath.water_ml = 60.0 * 8.0 * 2.0 - 76.0;
  test_add_band (sketch, dye, 30.0, 20.0, 20.0, 0.0);
  test_add_step (sketch, SW_STEP_REST)->minutes = 10.0;
  test_add_step (sketch, SW_STEP_SET)->minutes = 30.0;
  forecast = run_afresh (sketch);

  plane = (gsize) forecast->grid.nx * (gsize) forecast->grid.ny;
  last = plane * (gsize) (forecast->grid.nz - 1);
  above = (double) forecast->fields[0].depth[plane / 2 + (gsize) forecast->grid.nx / 2];
  below = (double) forecast->fields[0].depth[last + plane / 2 + (gsize) forecast->grid.nx / 2];
  g_test_message ("depth above %g %% owf, below %g %%", above, below);
  g_assert_cmpfloat (below, <, 0.15 * above);

  sw_forecast_face (forecast, FALSE, 60, 1, x, above_y, z);
  sw_forecast_face (forecast, TRUE, 60, 1, x, y, z);
  g_test_message ("luminance above %g, below %g, undyed %g", (double) above_y[30], (double) y[30], (double) y[1]);
  g_assert_cmpfloat ((double) above_y[30], <, 0.4 * (double) y[30]);
}

/* --- Pooling of whole sketches: closed forms --- */

static const struct
{
  const char *name;
  SwWorked worked;
  gint64 width;
  SwVerdict verdict;
  int row_step, stitch_step; /* stitch_step without its sign where mirrored layouts allow both */
} pools[] = {
  { "round-one-loop", SW_WORKED_ROUND, 120, SW_VERDICT_COLUMNS, 1, 0 },
  { "round-half-loop", SW_WORKED_ROUND, 60, SW_VERDICT_COLUMNS, 2, 0 },
  { "round-two-loops", SW_WORKED_ROUND, 240, SW_VERDICT_COLUMNS, 1, 0 },
  { "round-one-more", SW_WORKED_ROUND, 121, SW_VERDICT_DRIFTS, 1, 1 },
  { "round-one-less", SW_WORKED_ROUND, 119, SW_VERDICT_DRIFTS, 1, 1 },
  { "flat-half-loop", SW_WORKED_FLAT, 60, SW_VERDICT_COLUMNS, 2, 0 },
};

static void
test_pools (gconstpointer data)
{
  gsize row = GPOINTER_TO_SIZE (data);
  g_autoptr (SwSketch) sketch = test_bare_sketch (1);
  SwDye *red = test_add_dye (sketch, "Red", 178, 60, 52);
  SwDye *blue = test_add_dye (sketch, "Blue", 30, 80, 140);
  g_autoptr (SwForecast) forecast = NULL;

  /* Straight and worked through: every wrap is coloured alike, so the loop repeats exactly. */
  test_add_band (sketch, red, 17.0, 21.0, 40.0, 1.0);
  test_add_band (sketch, blue, 71.0, 33.0, 40.0, 1.0);
  test_add_step (sketch, SW_STEP_SET)->minutes = 30.0;
  sketch->cloth.worked = pools[row].worked;
  sketch->cloth.width_stitches = pools[row].width;

  forecast = run_afresh (sketch);
  g_test_message ("stack %g, %d rows up, %d stitches over", forecast->pooling.stack, forecast->pooling.row_step, forecast->pooling.stitch_step);
  g_assert_cmpint (forecast->pooling.verdict, ==, pools[row].verdict);
  g_assert_cmpint (forecast->pooling.row_step, ==, pools[row].row_step);
  g_assert_cmpint (ABS (forecast->pooling.stitch_step), ==, pools[row].stitch_step);
  g_assert_cmpfloat (forecast->pooling.stack, >, 0.99);
}

/*
 * A slanted band meets each wrap at another place, which breaks up pooling; a
 * straight one does not. Wound by hand, since a traversing guide lays
 * neighbouring wraps side by side, and then the pools only waver.
 */
static void
test_slant_breaks_pooling (void)
{
  double stack[2];

  for (int slanted = 0; slanted < 2; slanted++)
    {
      g_autoptr (SwSketch) sketch = test_bare_sketch (1);
      SwDye *red = test_add_dye (sketch, "Red", 178, 60, 52);
      g_autoptr (SwForecast) forecast = NULL;

      sketch->reel.winding = SW_WINDING_BY_HAND;
      test_add_band (sketch, red, 60.0, 20.0, 40.0, 1.0)->angle_deg = slanted ? 60.0 : 0.0;
      test_add_step (sketch, SW_STEP_SET)->minutes = 30.0;
      sketch->cloth.width_stitches = 120;
      forecast = run_afresh (sketch);
      stack[slanted] = forecast->pooling.stack;
    }
  g_test_message ("straight %g, slanted %g", stack[0], stack[1]);
  g_assert_cmpfloat (stack[1], <, stack[0] - 0.05);
}

/* --- Asking wrongly, and stopping --- */

static void
test_cancelled (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (SwForecast) after = NULL;
  g_autoptr (SwForecast) afresh = NULL;

  g_cancellable_cancel (cancellable);
  g_assert_null (sw_forecaster_run (forecaster, sketch, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);

  after = run (forecaster, sketch);
  afresh = run_afresh (sketch);
  assert_same_bytes (after, afresh);
}

static void
test_no_cloth (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (GError) error = NULL;

  sketch->cloth.start_cm = 29999.5;
  g_assert_null (sw_forecaster_run (forecaster, sketch, NULL, &error));
  g_assert_nonnull (error);
  g_assert_nonnull (strstr (error->message, "shorter than one stitch"));
}

/* Without dyes or steps there is still a skein, undyed and even. */
static void
test_undyed (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  g_autoptr (SwForecast) forecast = run_afresh (sketch);

  g_assert_cmpint (forecast->pooling.verdict, ==, SW_VERDICT_EVEN);
  g_assert_cmpuint (forecast->n_stitches, ==, 30000);
  g_assert_cmpfloat (forecast->clear_percent, ==, 100.0);
  g_assert_cmpfloat_with_epsilon (forecast->lab_l[0], 89.0, 1.0);
}

/* Adding a pour must not move the others' specks. */
static void
test_specks_stay (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwForecast) before = NULL;
  g_autoptr (SwForecast) after = NULL;
  SwDye *dye = sketch->dyes->pdata[1];
  SwStep *first = test_add_speckles (sketch, dye, 4);
  const SwSpecks *then, *now = NULL;

  before = run (forecaster, sketch);
  test_add_speckles (sketch, dye, 0);
  after = run (forecaster, sketch);

  then = before->specks[0];
  for (gsize i = 0; i < after->n_specks; i++)
    if (after->specks[i]->step == first->id)
      now = after->specks[i];
  g_assert_nonnull (now);
  g_assert_cmpuint (now->n_specks, ==, then->n_specks);
  for (gsize i = 0; i < now->n_specks; i++)
    {
      g_assert_cmpfloat (now->specks[i].x, ==, then->specks[i].x);
      g_assert_cmpfloat (now->specks[i].y, ==, then->specks[i].y);
    }
}

/* Another fabric has the same stitches in the same order: other rows, the same strand and the same colours above one another. */
static void
test_fabrics (void)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) plain = NULL;

  sketch->cloth.rows_per_10cm = 0;
  sketch->cloth.stitch_length_cm = 0;
  plain = sw_forecaster_run (forecaster, sketch, NULL, NULL);
  for (int fabric = 0; fabric < SW_N_FABRICS; fabric++)
    for (int measured = 0; measured < 2; measured++)
      {
        g_autoptr (SwForecast) forecast = NULL;

        sketch->cloth.fabric = (SwFabric) fabric;
        sketch->cloth.rows_per_10cm = measured == 1 ? 77 : 0;
        forecast = sw_forecaster_run (forecaster, sketch, NULL, NULL);
        g_assert_cmpfloat_with_epsilon (1 / forecast->row_height_cm, measured == 1 ? 7.7 : sw_fabric_courses ((SwFabric) fabric, 1 / forecast->stitch_width_cm), 1e-9);
        if (fabric == SW_FABRIC_STOCKINETTE && measured == 1) /* Munden: denser rows, less yarn */
          {
            g_assert_cmpfloat (forecast->stitch_length_cm, <, plain->stitch_length_cm);
            continue;
          }
        g_assert_cmpfloat (forecast->stitch_length_cm, ==, plain->stitch_length_cm);
        g_assert_cmpuint (sw_layout_rows (&forecast->layout), ==, sw_layout_rows (&plain->layout));
        g_assert_cmpmem (forecast->leg_x, 2 * forecast->n_stitches * sizeof (float), plain->leg_x, 2 * plain->n_stitches * sizeof (float));
        g_assert_cmpfloat (sw_pooling_stack (&forecast->pooling_input, NULL, SW_WORKED_ROUND, 64, 2, 1), ==, sw_pooling_stack (&plain->pooling_input, NULL, SW_WORKED_ROUND, 64, 2, 1));
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (gsize row = 0; row < G_N_ELEMENTS (edits); row++)
    {
      g_autofree char *path = g_strconcat ("/forecast/recomputes/", edits[row].name, NULL);

      g_test_add_data_func (path, GSIZE_TO_POINTER (row), test_recomputes);
    }
  for (gsize row = 0; row < G_N_ELEMENTS (pools); row++)
    {
      g_autofree char *path = g_strconcat ("/forecast/pools/", pools[row].name, NULL);

      g_test_add_data_func (path, GSIZE_TO_POINTER (row), test_pools);
    }
  g_test_add_func ("/forecast/kept-is-fresh", test_kept_is_fresh);
  g_test_add_func ("/forecast/mass", test_mass);
  g_test_add_func ("/forecast/step-balances", test_step_balances);
  g_test_add_func ("/forecast/end-balance", test_end_balance);
  g_test_add_func ("/forecast/speckle-mass", test_speckle_mass);
  g_test_add_func ("/forecast/palindrome", test_palindrome);
  g_test_add_func ("/forecast/opened-is-no-palindrome", test_opened_is_no_palindrome);
  g_test_add_func ("/forecast/underside", test_underside);
  g_test_add_func ("/forecast/slant-breaks-pooling", test_slant_breaks_pooling);
  g_test_add_func ("/forecast/cancelled", test_cancelled);
  g_test_add_func ("/forecast/no-cloth", test_no_cloth);
  g_test_add_func ("/forecast/undyed", test_undyed);
  g_test_add_func ("/forecast/specks-stay", test_specks_stay);
  g_test_add_func ("/forecast/fabrics", test_fabrics);

  return g_test_run ();
}
