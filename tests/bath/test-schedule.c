/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-schedule.h"

#include "bath/sw-ph.h"
#include "bath/sw-strike.h"

#include "tests/bath/bath-checks.h"

#define CUP_ML 236.588
#define TABLESPOON_ML 14.787
#define MOST_STEPS 16

static SwStep *
add_step (SwSketch *sketch, SwStepKind kind)
{
  SwStep *step = sw_step_new (sketch->next_id++, kind);

  g_ptr_array_add (sketch->steps, step);
  return step;
}

static SwDye *
add_dye (SwSketch *sketch)
{
  SwDye *dye = sw_dye_new (sketch->next_id++);

  g_ptr_array_add (sketch->dyes, dye);
  return dye;
}

static SwStep *
add_wait (SwSketch *sketch, SwStepKind kind, double minutes, double temperature_c)
{
  SwStep *step = add_step (sketch, kind);

  step->minutes = minutes;
  step->temperature_c = temperature_c;
  return step;
}

/* 300 g in 8 US cups of pure water with 3 tablespoons of 5 % vinegar, 30 min at 95 C: common practice, no source. */
static void
test_kitchen (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  SwDye *dye = add_dye (sketch);
  SwBathState states[2];
  SwSpan span;

  sketch->yarn.mass_g = 300.0;
  sketch->bath.water_ml = 8.0 * CUP_ML;
  sketch->bath.alkalinity_meq_per_l = 0.0;
  sketch->bath.acid_ml = 3.0 * TABLESPOON_ML;
  sketch->bath.acid_percent = 5.0;
  add_wait (sketch, SW_STEP_SET, 30.0, 95.0);
  sw_schedule_run (sketch, states);
  sw_schedule_spans (sketch, states, dye, 0, &span);

  g_assert_cmpfloat (states[1].ph, >, 3.1);
  g_assert_cmpfloat (states[1].ph, <, 3.4);
  g_test_message ("pH %.3f, left in the bath %.2g", states[1].ph, 1.0 - sw_transfer_share (&span, 1));
  g_assert_cmpfloat (1.0 - sw_transfer_share (&span, 1), <, 0.02);
}

/* What each step does to the state, and what it leaves alone. */
static void
test_states (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  SwDye *dye = add_dye (sketch);
  SwBathState states[MOST_STEPS];
  SwStep *band, *grains, *step;

  sketch->bath.temperature_c = 70.0;
  sketch->bath.water_ml = 1000.0;
  sketch->bath.acid_ml = 50.0;
  band = add_step (sketch, SW_STEP_BAND);
  band->dye = dye->id;
  band->amount_ml = 25.0;
  grains = add_step (sketch, SW_STEP_SPECKLE);
  grains->dye = dye->id;
  grains->dry = TRUE;
  grains->grams = 0.3;
  add_wait (sketch, SW_STEP_REST, 10.0, 85.0);
  add_step (sketch, SW_STEP_FLIP);
  step = add_step (sketch, SW_STEP_WATER);
  step->volume_ml = 500.0;
  step = add_step (sketch, SW_STEP_ACID);
  step->volume_ml = 30.0;
  step->acid_percent = 10.0;
  add_wait (sketch, SW_STEP_SET, 30.0, 95.0);
  add_step (sketch, SW_STEP_FLIP);
  sw_schedule_run (sketch, states);

  const double minutes[] = { 0, 0, 0, 10, 0, 0, 0, 30, 0 };
  const double celsius[] = { 70, 70, 70, 85, 85, 85, 85, 95, 95 };
  const double liquor[] = { 1050, 1075, 1075, 1075, 1075, 1575, 1605, 1605, 1605 };
  const gboolean second[] = { FALSE, FALSE, FALSE, FALSE, TRUE, TRUE, TRUE, TRUE, FALSE };

  for (guint i = 0; i < G_N_ELEMENTS (minutes); i++)
    {
      g_assert_cmpfloat (states[i].minutes, ==, minutes[i]);
      g_assert_cmpfloat (states[i].temperature_c, ==, celsius[i]);
      assert_near (states[i].liquor_ml, liquor[i], 1e-9);
      assert_near (states[i].cover, sw_schedule_cover (sketch, liquor[i]), 1e-12);
      g_assert_cmpint (states[i].second_face, ==, second[i]);
    }
  g_assert_cmpfloat (states[1].ph, >, states[0].ph); /* stock thins the acid */
  g_assert_cmpfloat (states[5].ph, >, states[4].ph); /* tap water more so */
  g_assert_cmpfloat (states[6].ph, <, states[5].ph);

  assert_near (sw_schedule_pour_grams (sketch, band), 25.0 * dye->stock_percent / 100.0, 1e-12);
  assert_near (sw_schedule_pour_grams (sketch, grains), 0.3, 1e-12);
}

/* 0.0190644 mol/L with 3 meq/L: the table's pH, reached through volumes and strengths. */
static void
test_ph (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  SwBathState state;

  sketch->bath.acid_percent = 5.0;
  sketch->bath.acid_ml = 1000.0 * 0.0190644 * 60.052 / 50.0;
  sketch->bath.water_ml = 1000.0 - sketch->bath.acid_ml;
  sketch->bath.alkalinity_meq_per_l = 3.0 * 1000.0 / sketch->bath.water_ml;
  sketch->bath.keep_carbonate = FALSE;
  sw_schedule_run (sketch, &state);
  assert_near (state.ph, 4.0426, 1e-4);
  sketch->bath.keep_carbonate = TRUE;
  sw_schedule_run (sketch, &state);
  assert_near (state.ph, 4.0402, 1e-4);

  /* 0.01 mol/L of citric acid in the same water. */
  sketch->bath.acid = SW_ACID_CITRIC;
  sketch->bath.acid_percent = 10.0;
  sketch->bath.acid_ml = 1000.0 * 0.01 * 192.124 / 100.0;
  sketch->bath.water_ml = 1000.0 - sketch->bath.acid_ml;
  sketch->bath.alkalinity_meq_per_l = 3.0 * 1000.0 / sketch->bath.water_ml;
  sw_schedule_run (sketch, &state);
  assert_near (state.ph, 2.9532, 1e-4);
}

/*
 * The tap's alkalinity comes with its water, at the start and later, and is
 * thinned by stock: 900 mL of 5 meq/L in a litre are the table's 0.0045 eq/L,
 * with 0.006 mol/L of acid, where carbonate kept or not counts most.
 */
static void
test_tap_water (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  SwDye *dye = add_dye (sketch);
  SwBathState states[3];
  SwStep *step;

  sketch->bath.water_ml = 500.0;
  sketch->bath.alkalinity_meq_per_l = 5.0;
  sketch->bath.acid_percent = 5.0;
  sketch->bath.acid_ml = 1000.0 * 0.006 * 60.052 / 50.0;
  step = add_step (sketch, SW_STEP_WATER);
  step->volume_ml = 400.0;
  step = add_step (sketch, SW_STEP_SPLOTCH);
  step->dye = dye->id;
  step->amount_ml = 100.0 - sketch->bath.acid_ml;

  sketch->bath.keep_carbonate = FALSE;
  sw_schedule_run (sketch, states);
  assert_near (states[2].liquor_ml, 1000.0, 1e-9);
  assert_near (states[2].ph, 5.2354, 2e-4);
  sketch->bath.keep_carbonate = TRUE;
  sw_schedule_run (sketch, states);
  assert_near (states[2].ph, 5.1389, 2e-4);
}

/* Acid at the start or as the first step: the same bath, and acid in two halves as at once. */
static void
test_acid_adds (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  SwBathState before, after[3];

  sketch->bath.acid_ml = 60.0;
  sw_schedule_run (sketch, &before);
  sketch->bath.acid_ml = 0.0;
  for (int i = 0; i < 2; i++)
    {
      SwStep *step = add_step (sketch, SW_STEP_ACID);

      step->volume_ml = 30.0;
      step->acid_percent = sketch->bath.acid_percent;
    }
  sw_schedule_run (sketch, after);
  assert_near (after[2].ph, before.ph, 1e-9);
  assert_near (after[2].liquor_ml, before.liquor_ml, 1e-9);
}

static void
test_spans (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  SwDye *dye = add_dye (sketch);
  SwBathState states[4];
  SwSpan spans[3], quick[3];

  dye->spread = 1.5;
  dye->quick_half_time_min = 0.5;
  add_step (sketch, SW_STEP_FLIP);
  add_wait (sketch, SW_STEP_REST, 5.0, 60.0);
  add_wait (sketch, SW_STEP_SET, 30.0, 95.0);
  sw_schedule_run (sketch, states);
  sw_schedule_spans (sketch, states, dye, 0, spans);
  sw_schedule_spans (sketch, states, dye, 1, quick);

  for (int i = 0; i < 3; i++)
    {
      g_assert_cmpfloat (spans[i].minutes, ==, states[i + 1].minutes);
      assert_near (spans[i].spread_xy, sketch->bath.spread_cm2_per_min * 1.5 * states[i + 1].cover, 1e-12);
      assert_near (spans[i].spread_z, spans[i].spread_xy / 3.0, 1e-12);
      assert_near (quick[i].rate / spans[i].rate, dye->half_time_min / 0.5, 1e-9);
    }
  assert_near (spans[1].rate,
               G_LN2 / 3.0 * sw_strike_ph_factor (states[2].ph) * 0.106802295469, 1e-9); /* 60 C: published row */
}

/* 75 x 8 x 2.5 cm less 100 g at 1.31 g/cm3. */
static void
test_cover (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  double covering = 75.0 * 8.0 * 2.5 - 100.0 / 1.31;

  assert_near (sw_sketch_lay_length (sketch), 75.0, 1e-9);
  assert_near (sw_schedule_cover (sketch, covering), 1.0, 1e-12);
  assert_near (sw_schedule_cover (sketch, 0.4 * covering), 0.4, 1e-12);
  g_assert_cmpfloat (sw_schedule_cover (sketch, 1.0), ==, 0.1);
  g_assert_cmpfloat (sw_schedule_cover (sketch, 1e6), ==, 3.0);

  /* Two skeins side by side take twice the liquor; one drawn smaller than its fibre has no room for any. */
  sketch->lay.skeins = 2;
  assert_near (sw_schedule_cover (sketch, 2.0 * covering), 1.0, 1e-12);
  sketch->lay.depth_cm = 0.01;
  g_assert_cmpfloat (sw_schedule_cover (sketch, 100.0), ==, 3.0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bath/schedule/kitchen", test_kitchen);
  g_test_add_func ("/bath/schedule/states", test_states);
  g_test_add_func ("/bath/schedule/ph", test_ph);
  g_test_add_func ("/bath/schedule/tap-water", test_tap_water);
  g_test_add_func ("/bath/schedule/acid-adds", test_acid_adds);
  g_test_add_func ("/bath/schedule/spans", test_spans);
  g_test_add_func ("/bath/schedule/cover", test_cover);
  return g_test_run ();
}
