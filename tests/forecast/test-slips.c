/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "forecast/sw-repeat.h"

#include "sw-test-sketch.h"

static GArray *
slips_of (const SwSketch *sketch)
{
  g_autoptr (GError) error = NULL;
  GArray *slips = sw_slips_new (sketch, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (slips);
  return slips;
}

static const SwSlipEffect *
find (const GArray *slips, SwSlip slip, guint step, int dye)
{
  for (guint i = 0; i < slips->len; i++)
    {
      const SwSlipEffect *effect = &g_array_index (slips, SwSlipEffect, i);

      if (effect->slip == slip && effect->step == step && effect->dye == dye)
        return effect;
    }
  g_assert_not_reached ();
}

/* Two dyes and three pours, each with more and less, and the rounding of all. */
static void
test_rows (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (GArray) slips = NULL;

  test_add_dye (sketch, "Unused", 10, 200, 20);
  slips = slips_of (sketch);
  g_assert_cmpuint (slips->len, ==, 2 * 2 + 2 * 3 + 1);
  for (guint i = 0; i < slips->len; i++)
    {
      const SwSlipEffect *effect = &g_array_index (slips, SwSlipEffect, i);

      g_test_message ("slip %u, step %u, dye %d: %.3f, %.3f", effect->slip, effect->step, effect->dye, effect->mean, effect->most);
      g_assert_cmpfloat (effect->mean, <=, effect->most);
      if (effect->slip != SW_SLIP_ROUNDED)
        g_assert_cmpfloat (effect->mean, >, 0.0);
      g_assert_cmpfloat (effect->most, <, 6.0); /* small slips */
    }
}

/* Against a whole forecast of the slipped sketch, made by itself. */
static void
assert_as_afresh (const SwSketch *sketch, const SwSketch *slipped, const SwSlipEffect *effect)
{
  g_autoptr (SwForecaster) one = sw_forecaster_new (), other = sw_forecaster_new ();
  g_autoptr (SwForecast) plain = sw_forecaster_run (one, sketch, NULL, NULL), changed = sw_forecaster_run (other, slipped, NULL, NULL);
  double sum = 0.0;

  for (gsize i = 0; i < plain->n_stitches; i++)
    sum += sw_ciede2000 ((SwLab){ plain->lab_l[i], plain->lab_a[i], plain->lab_b[i] }, (SwLab){ changed->lab_l[i], changed->lab_a[i], changed->lab_b[i] });
  g_assert_cmpfloat_with_epsilon (effect->mean, sum / (double) plain->n_stitches, 1e-4);
}

static void
test_as_afresh (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwSketch) heavier = sw_sketch_copy (sketch), shorter = sw_sketch_copy (sketch);
  g_autoptr (GArray) slips = slips_of (sketch);
  SwStep *second = shorter->steps->pdata[1];

  ((SwDye *) heavier->dyes->pdata[1])->stock_percent *= 1.05;
  assert_as_afresh (sketch, heavier, find (slips, SW_SLIP_WEIGHED_MORE, 0, 1));
  second->amount_ml -= 1.0;
  assert_as_afresh (sketch, shorter, find (slips, SW_SLIP_POURED_LESS, second->id, -1));
}

/* A depth is a volume by the time it is poured: the same slips. */
static void
test_by_depth (void)
{
  g_autoptr (SwSketch) by_volume = test_sketch (2), by_depth = test_sketch (2);
  g_autoptr (GArray) a = NULL, b = NULL;

  by_volume->sheet.measure_step_ml = by_depth->sheet.measure_step_ml = 0.0;
  by_volume->sheet.weigh_step_g = by_depth->sheet.weigh_step_g = 0.0;
  for (guint i = 0; i < by_depth->steps->len; i++)
    {
      SwStep *step = by_depth->steps->pdata[i];

      if (!sw_step_is_pour (step))
        continue;
      step->depth_percent = step->amount_ml / 100.0; /* of 1 % stock on 100 g */
      step->amount_ml = 7.0;
    }
  a = slips_of (by_volume);
  b = slips_of (by_depth);
  g_assert_cmpuint (a->len, ==, b->len);
  for (guint i = 0; i < a->len; i++)
    g_assert_cmpfloat_with_epsilon (g_array_index (a, SwSlipEffect, i).mean, g_array_index (b, SwSlipEffect, i).mean, 1e-4);
}

static double
rounding_of (const SwSketch *sketch)
{
  g_autoptr (GArray) slips = slips_of (sketch);

  return find (slips, SW_SLIP_ROUNDED, 0, -1)->mean;
}

/* Nothing rounded, nothing changed; a coarse measure shows, and twenty skeins in one pan hide it again. */
static void
test_rounded (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  double coarse, many;

  for (guint i = 0; i < sketch->steps->len; i++)
    {
      SwStep *step = sketch->steps->pdata[i];

      step->amount_ml += 1.7;
    }
  sketch->sheet.measure_step_ml = 0.0;
  sketch->sheet.weigh_step_g = 0.0;
  g_assert_cmpfloat (rounding_of (sketch), ==, 0.0);

  sketch->sheet.measure_step_ml = 10.0;
  coarse = rounding_of (sketch);
  sketch->sheet.skeins = 20;
  sketch->sheet.pans = 1;
  many = rounding_of (sketch);
  g_test_message ("rounded to 10 mL: %.3f for one skein, %.3f for twenty", coarse, many);
  g_assert_cmpfloat (coarse, >, 0.3);
  g_assert_cmpfloat (many, <, coarse / 5.0);
}

/* Of uneven pans the one that rounding hits harder counts. */
static void
test_uneven (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  double one, two, uneven;

  sketch->sheet.measure_step_ml = 20.0;
  sketch->sheet.skeins = 1;
  one = rounding_of (sketch);
  sketch->sheet.skeins = 2;
  sketch->sheet.pans = 1;
  two = rounding_of (sketch);
  sketch->sheet.skeins = 3;
  sketch->sheet.pans = 2;
  uneven = rounding_of (sketch);
  g_assert_cmpfloat (one, !=, two);
  g_assert_cmpfloat_with_epsilon (uneven, MAX (one, two), 0.05); /* the stock's own rounding differs a little */
}

static void
test_refused (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (GError) error = NULL;

  sketch->yarn.mass_g = -1.0;
  g_assert_null (sw_slips_new (sketch, NULL, &error));
  g_assert_nonnull (error);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/forecast/slips/rows", test_rows);
  g_test_add_func ("/forecast/slips/as-afresh", test_as_afresh);
  g_test_add_func ("/forecast/slips/by-depth", test_by_depth);
  g_test_add_func ("/forecast/slips/rounded", test_rounded);
  g_test_add_func ("/forecast/slips/uneven", test_uneven);
  g_test_add_func ("/forecast/slips/refused", test_refused);
  return g_test_run ();
}
