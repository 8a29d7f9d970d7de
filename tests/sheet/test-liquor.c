/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/sw-sheet.h"

#include "bath/sw-ph.h"
#include "tests/bath/bath-checks.h"
#include "tests/colour/published-table.h"
#include "tests/sw-test-sketch.h"

/* What the sheet asks for brings the pH: the bath's own states say so, liquor, acid volume and all. */
static void
assert_reached (SwSketch *sketch, double ph)
{
  g_autoptr (SwSheet) sheet = NULL, again = NULL;

  sketch->sheet.target_ph = ph;
  sheet = sw_sheet_new (sketch, NULL);
  if (sheet->liquor.target_acid_ml <= 0.0)
    return;
  sketch->bath.acid_ml = sheet->liquor.target_acid_ml;
  again = sw_sheet_new (sketch, NULL);
  assert_near (again->liquor.start_ph, ph, 1e-6);
}

static void
test_target (void)
{
  static const double strengths[] = { 4.0, 5.0, 8.0, 20.0, 80.0 }, alkalinities[] = { 0.0, 0.5, 1.5, 4.5 }, targets[] = { 3.0, 3.5, 4.0, 4.5, 5.0, 6.0 };

  for (SwAcid acid = SW_ACID_ACETIC; acid <= SW_ACID_CITRIC; acid++)
    for (int covered = 0; covered <= 1; covered++)
      for (gsize i = 0; i < G_N_ELEMENTS (strengths); i++)
        for (gsize j = 0; j < G_N_ELEMENTS (alkalinities); j++)
          for (gsize k = 0; k < G_N_ELEMENTS (targets); k++)
            {
              g_autoptr (SwSketch) sketch = test_sketch (2);

              sketch->bath.acid = acid;
              sketch->bath.keep_carbonate = covered;
              sketch->bath.acid_percent = strengths[i];
              sketch->bath.alkalinity_meq_per_l = alkalinities[j];
              assert_reached (sketch, targets[k]);
            }
}

/*
 * tests/reference/ph_examples.csv, made by another program: a bath with the
 * table's acid in a litre has the table's pH, and for that pH the sheet asks
 * for that acid.
 */
static void
test_published (void)
{
  g_auto (PublishedTable) table = published_table_open ("ph_examples.csv");
  guint compared = 0;

  for (guint row = 0; row < published_table_n_rows (&table); row++)
    {
      g_autoptr (SwSketch) sketch = test_bare_sketch (2);
      g_autoptr (SwSheet) sheet = NULL;
      gboolean citric = g_str_equal (published_table_text (&table, row, "acid"), "citric");
      double molar = published_table_number (&table, row, "molar"), ph = published_table_number (&table, row, "ph");
      double alkalinity = published_table_number (&table, row, "alkalinity_eq_per_l");
      double grams = molar * (citric ? sw_citric_acid.molar_mass : sw_acetic_acid.molar_mass);

      if (molar < 1e-4 || grams > 50.0)
        continue; /* next to no acid, or more than a bath ever holds */
      compared++;
      sketch->bath.acid = citric ? SW_ACID_CITRIC : SW_ACID_ACETIC;
      sketch->bath.acid_percent = 100.0; /* next to no volume */
      sketch->bath.acid_ml = grams;
      sketch->bath.water_ml = 1000.0 - grams;
      sketch->bath.alkalinity_meq_per_l = alkalinity * 1e3 * 1000.0 / sketch->bath.water_ml; /* as much in the litre */
      sketch->sheet.target_ph = ph;
      sheet = sw_sheet_new (sketch, NULL);
      assert_near (sheet->liquor.start_ph, ph, 1e-4);
      assert_near (sheet->liquor.target_acid_ml / grams, 1.0, 2e-3);
    }
  g_assert_cmpuint (compared, >=, 14);
}

/* The kitchen measure, common practice, no source: 8 US cups of pure water, 3 tablespoons of 5 % vinegar. */
static void
test_kitchen (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  g_autoptr (SwSheet) sheet = NULL;

  sketch->bath.water_ml = 8.0 * 236.5882365;
  sketch->bath.acid_ml = 3.0 * 14.78676478125;
  sketch->bath.acid_percent = 5.0;
  sketch->bath.alkalinity_meq_per_l = 0.0;
  sheet = sw_sheet_new (sketch, NULL);
  assert_near (sheet->liquor.start_ph, 3.2445, 2e-3); /* 0.01907 mol/L */
}

/* Vinegar of twice the strength: half the volume, but for the water it brings. */
static void
test_strengths (void)
{
  double volumes[2];

  for (int i = 0; i < 2; i++)
    {
      g_autoptr (SwSketch) sketch = test_bare_sketch (2);
      g_autoptr (SwSheet) sheet = NULL;

      sketch->bath.acid_percent = i == 0 ? 5.0 : 10.0;
      sketch->sheet.target_ph = 4.0;
      sheet = sw_sheet_new (sketch, NULL);
      volumes[i] = sheet->liquor.target_acid_ml;
    }
  assert_near (volumes[0] / volumes[1], 2.0, 0.02);
}

/* Acid too thin for the pH is said to be, and water that is sour enough needs none. */
static void
test_out_of_reach (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  g_autoptr (SwSheet) thin = NULL, none = NULL;

  sketch->bath.acid_percent = 0.1;
  sketch->sheet.target_ph = 2.5;
  thin = sw_sheet_new (sketch, NULL);
  g_assert_cmpfloat (thin->liquor.target_acid_ml, ==, -1.0);
  sketch->bath.alkalinity_meq_per_l = 0.0;
  sketch->sheet.target_ph = 7.5;
  none = sw_sheet_new (sketch, NULL);
  g_assert_cmpfloat (none->liquor.target_acid_ml, ==, 0.0);
}

/* Crystals: the grams that the solution would hold; rounded by the scale, not the measure. */
static void
test_crystals (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  SwStep *acid = test_add_step (sketch, SW_STEP_ACID);
  g_autoptr (SwSheet) sheet = NULL;
  g_autoptr (SwSheet) vinegar = NULL;

  sketch->bath.acid = SW_ACID_CITRIC;
  sketch->bath.acid_percent = 10.0;
  sketch->bath.acid_ml = 33.33;
  sketch->sheet.acid_form = SW_ACID_FORM_CRYSTALS;
  sketch->sheet.weigh_step_g = 0.1;
  acid->volume_ml = 20.0;
  acid->acid_percent = 25.0;
  sheet = sw_sheet_new (sketch, NULL);
  assert_near (sheet->liquor.crystals_g.exact, 3.333, 1e-9);
  assert_near (sheet->liquor.crystals_g.rounded, 3.3, 1e-9);
  assert_near (sheet->steps[sheet->n_steps - 1].crystals_g.exact, 5.0, 1e-9);
  assert_near (sheet->crystals_g.exact, 8.333, 1e-9);
  assert_near (SW_MONOHYDRATE, 1.0938, 1e-4); /* (6 x 12.011 + 10 x 1.008 + 8 x 15.999) / (6 x 12.011 + 8 x 1.008 + 7 x 15.999) */

  sketch->bath.acid = SW_ACID_ACETIC; /* there are no crystals of vinegar */
  vinegar = sw_sheet_new (sketch, NULL);
  g_assert_cmpfloat (vinegar->crystals_g.exact, ==, 0.0);
}

/* Acid of several strengths in one total: by what is in it. */
static void
test_total_acid (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  SwStep *acid = test_add_step (sketch, SW_STEP_ACID), *water = test_add_step (sketch, SW_STEP_WATER);
  g_autoptr (SwSheet) sheet = NULL;

  sketch->sheet.skeins = 3;
  sketch->bath.acid_percent = 5.0;
  sketch->bath.acid_ml = 40.0;
  sketch->bath.water_ml = 1000.0;
  acid->acid_percent = 10.0;
  acid->volume_ml = 15.0;
  water->volume_ml = 200.0;
  sheet = sw_sheet_new (sketch, NULL);
  assert_near (sheet->acid_ml.exact, 3.0 * (40.0 + 2.0 * 15.0), 1e-9);
  assert_near (sheet->water_ml.exact, 3.0 * 1200.0, 1e-9);
}

/* 100 kg in 1000 L is 1:10 (VFSTR lecture notes): 10 mL a gram. Laboratory ratios for wool, 1:30 to 1:50. */
static void
test_ratio (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  g_autoptr (SwSheet) sheet = NULL;

  sketch->yarn.mass_g = 100.0;
  sketch->bath.acid_ml = 40.0;
  sketch->bath.water_ml = 960.0;
  sketch->sheet.liquor_ratio = 30.0;
  sheet = sw_sheet_new (sketch, NULL);
  assert_near (sheet->liquor.ratio, 10.0, 1e-9);
  assert_near (sheet->liquor.ratio_water_ml + 40.0, 3000.0, 1e-9);
}

/* A box of water with fibre in it: what covers is the box less the fibre. */
static void
test_cover (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (1);
  g_autoptr (SwSheet) sheet = NULL;

  sketch->yarn.mass_g = 131.0; /* 100 cm3 */
  sketch->lay.depth_cm = 2.0;
  sketch->lay.pan_length_cm = 130.0;
  sketch->lay.pan_width_cm = 10.0;
  sheet = sw_sheet_new (sketch, NULL);
  assert_near (sheet->liquor.lay_cover_ml, 120.0 * 8.0 * 2.0 - 100.0, 1e-9);
  assert_near (sheet->liquor.cover_ml, 130.0 * 10.0 * 2.0 - 100.0, 1e-9);
  assert_near (sheet->liquor.pan_ml, 130.0 * 10.0 * 3.0 - 100.0, 1e-9);
  assert_near (sw_schedule_cover (sketch, sheet->liquor.lay_cover_ml), 1.0, 1e-9); /* the forecast agrees */
}

/* pH at each step is the bath's. */
static void
test_steps (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autofree SwBathState *states = g_new (SwBathState, sketch->steps->len + 1);
  g_autoptr (SwSheet) sheet = sw_sheet_new (sketch, NULL);

  sw_schedule_run (sketch, states);
  g_assert_cmpuint (sheet->n_steps, ==, sketch->steps->len);
  for (gsize i = 0; i < sheet->n_steps; i++)
    {
      g_assert_cmpfloat (sheet->steps[i].ph, ==, states[i + 1].ph);
      g_assert_cmpfloat (sheet->steps[i].left_percent, ==, -1.0);
    }
  g_assert_cmpfloat (sheet->clear_percent, ==, -1.0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet/liquor/target", test_target);
  g_test_add_func ("/sheet/liquor/published", test_published);
  g_test_add_func ("/sheet/liquor/kitchen", test_kitchen);
  g_test_add_func ("/sheet/liquor/strengths", test_strengths);
  g_test_add_func ("/sheet/liquor/out-of-reach", test_out_of_reach);
  g_test_add_func ("/sheet/liquor/crystals", test_crystals);
  g_test_add_func ("/sheet/liquor/total-acid", test_total_acid);
  g_test_add_func ("/sheet/liquor/ratio", test_ratio);
  g_test_add_func ("/sheet/liquor/cover", test_cover);
  g_test_add_func ("/sheet/liquor/steps", test_steps);
  return g_test_run ();
}
