/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "../sw-test-sketch.h"

#include "forecast/sw-forecast.h"

/* The skeins beside the one that a forecast follows. */

static SwForecast *
run (const SwSketch *sketch)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (GError) error = NULL;
  SwForecast *forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);

  g_assert_no_error (error);
  return forecast;
}

/* Three skeins in one pan, specks all over, and one splotch that does not reach the third. */
static SwSketch *
three_skeins (void)
{
  SwSketch *sketch = test_sketch (2);
  SwStep *step = test_add_step (sketch, SW_STEP_SPECKLE);

  sketch->lay.skeins = 3;
  step->dye = ((const SwDye *) sketch->dyes->pdata[1])->id;
  step->x_cm = 30;
  step->y_cm = 6;
  step->width_cm = 40;
  step->length_cm = 10;
  step->amount_ml = 2;
  return sketch;
}

static void
assert_same (const SwSkeinLegs *legs, const SwForecast *forecast)
{
  g_assert_cmpuint (legs->n_stitches, ==, forecast->n_stitches);
  for (gsize i = 0; i < 2 * legs->n_stitches; i++)
    {
      g_assert_cmpfloat ((double) legs->leg_x[i], ==, (double) forecast->leg_x[i]);
      g_assert_cmpfloat ((double) legs->leg_y[i], ==, (double) forecast->leg_y[i]);
      g_assert_cmpfloat ((double) legs->leg_z[i], ==, (double) forecast->leg_z[i]);
    }
}

static double
mean_apart (const SwSkeinLegs *legs, const SwForecast *forecast)
{
  double sum = 0;

  for (gsize i = 0; i < 2 * legs->n_stitches; i++)
    sum += ABS ((double) (legs->leg_y[i] - forecast->leg_y[i]));
  return sum / (double) (2 * legs->n_stitches);
}

/* Each of the pan's skeins is what a forecast that follows it says, bit by bit, whatever the cloth does with skeins in turn. */
static void
test_lanes (void)
{
  g_autoptr (SwSketch) sketch = three_skeins ();
  g_autoptr (SwForecast) forecast = NULL;

  sketch->cloth.alternate_skeins = 2;
  sketch->cloth.alternate_shift_cm = 33;
  forecast = run (sketch);
  for (gsize turn = 0; turn < 3; turn++)
    {
      g_autoptr (SwSketch) other = sw_sketch_copy (sketch);
      g_autoptr (SwForecast) followed = NULL;
      SwForecastSkein skein;

      other->cloth.skein = (gint64) turn + 1;
      other->cloth.alternate_skeins = 1;
      followed = run (other);
      sw_forecast_skein (forecast, turn, &skein);
      assert_same (&skein.legs, followed);
      if (turn > 0)
        g_assert_cmpfloat (mean_apart (&skein.legs, forecast), >, 0.5);
      sw_forecast_skein_clear (&skein);
    }
}

/* More hanks than skeins: of another pan, wound another way. */
static void
test_more (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = NULL;
  SwForecastSkein second, again;

  sketch->reel.wander = 0.06;
  forecast = run (sketch);
  sw_forecast_skein (forecast, 1, &second);
  sw_forecast_skein (forecast, 1, &again);
  g_assert_cmpfloat (mean_apart (&second.legs, forecast), >, 0.05);
  for (gsize i = 0; i < 2 * second.legs.n_stitches; i++)
    g_assert_cmpfloat ((double) second.legs.leg_y[i], ==, (double) again.legs.leg_y[i]);
  sw_forecast_skein_clear (&second);
  sw_forecast_skein_clear (&again);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/skein/lanes", test_lanes);
  g_test_add_func ("/skein/more", test_more);
  return g_test_run ();
}
