/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/sw-measure.h"
#include "sheet/sw-sheet-lay.h"
#include "sheet/sw-sheet.h"

#include "tests/sw-test-sketch.h"

#include <math.h>
#include <string.h>

static void
assert_near (double value, double expected, double tolerance)
{
  g_assert_cmpfloat (fabs (value - expected), <=, tolerance);
}

/* One dye in one pour by depth: how many mL of stock and g of dye. */
static void
assert_shade (double fibre_g, double depth_percent, double stock_percent, double ml, double grams)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  SwDye *dye = test_add_dye (sketch, "Red", 178, 60, 52);
  SwStep *band = test_add_band (sketch, dye, 10.0, 5.0, 999.0, 0.5);
  g_autoptr (SwSheet) sheet = NULL;

  sketch->yarn.mass_g = fibre_g;
  sketch->sheet.stock_margin_percent = 0.0;
  dye->stock_percent = stock_percent;
  band->depth_percent = depth_percent;
  sheet = sw_sheet_new (sketch, NULL);

  g_assert_cmpuint (sheet->n_pours, ==, 1);
  g_assert_true (sheet->pours[0].by_depth);
  assert_near (sheet->pours[0].stock_ml.exact, ml, 1e-9);
  assert_near (sheet->pours[0].dye_g.exact, grams, 1e-9);
  assert_near (sheet->pours[0].depth_percent, depth_percent, 1e-9);
  assert_near (sheet->dyes[0].depth_percent, depth_percent, 1e-9);
  assert_near (sheet->dyes[0].poured_ml.exact, ml, 1e-9);
}

/* tests/reference/acid_dye_facts.csv: percent shade and stock, by definition and arithmetic; 4 kg on 100 kg from VFSTR lecture notes. */
static void
test_shades (void)
{
  assert_shade (100.0, 1.0, 1.0, 100.0, 1.0);
  assert_shade (100.0, 0.25, 1.0, 25.0, 0.25);
  assert_shade (50.0, 2.0, 0.5, 200.0, 1.0);
  assert_shade (115.0, 1.5, 1.0, 172.5, 1.725);
  assert_shade (100.0, 4.0, 1.0, 400.0, 4.0);
}

/* A sketch with anything in it. */
static SwSketch *
random_sketch (GRand *random)
{
  static const double measures[] = { 0.0, 0.01, 0.1, 0.5, 1.0, 5.0 }, scales[] = { 0.0, 0.001, 0.01, 0.1, 1.0 };
  SwSketch *sketch = test_bare_sketch (2);
  const SwDye *dyes[4];
  int n_pours = g_rand_int_range (random, 1, 12);

  for (int i = 0; i < 4; i++)
    {
      SwDye *dye = test_add_dye (sketch, "", 178, 60, 20 + 50 * i);

      dye->stock_percent = g_rand_double_range (random, 0.1, 3.0);
      dyes[i] = dye;
    }
  for (int i = 0; i < n_pours; i++)
    {
      SwStep *band = test_add_band (sketch, dyes[g_rand_int_range (random, 0, 4)], 10.0, 5.0, g_rand_double_range (random, 0.0, 60.0), 0.5);

      if (g_rand_int_range (random, 0, 3) == 0)
        band->depth_percent = g_rand_double_range (random, 0.01, 2.0);
      if (g_rand_int_range (random, 0, 4) == 0)
        {
          band->kind = SW_STEP_SPECKLE;
          band->dry = TRUE;
          band->length_cm = 4.0;
          band->grams = g_rand_double_range (random, 0.0, 1.0);
        }
    }
  sketch->lay.skeins = g_rand_int_range (random, 1, 5);
  sketch->sheet.skeins = g_rand_int_range (random, 0, 24);
  sketch->sheet.pans = g_rand_int_range (random, 0, 6);
  sketch->sheet.stock_margin_percent = g_rand_double_range (random, 0.0, 30.0);
  sketch->sheet.measure_step_ml = measures[g_rand_int_range (random, 0, (int) G_N_ELEMENTS (measures))];
  sketch->sheet.weigh_step_g = scales[g_rand_int_range (random, 0, (int) G_N_ELEMENTS (scales))];
  return sketch;
}

/* Whole steps of a measure; whatever it is without one. */
static void
assert_on_step (double value, double step)
{
  if (step > 0.0)
    assert_near (value / step, round (value / step), 1e-6);
}

static void
assert_rounding (SwAmount amount, double step)
{
  assert_on_step (amount.rounded, step);
  assert_near (amount.rounded, amount.exact, step / 2.0 + 1e-9);
}

/* The pans one by one: skeins are shared out, and the totals are what all of them get. */
static void
assert_closes (const SwSheet *sheet)
{
  const SwSheetSettings *settings = &sheet->sketch->sheet;
  gsize skeins = 0;
  double *ml = g_new0 (double, 2 * sheet->sketch->dyes->len), *grams = g_new0 (double, 2 * sheet->sketch->dyes->len);

  for (gsize pan = 0; pan < sheet->pans; pan++)
    {
      gboolean fuller = pan < sheet->fuller_pans;
      gsize in_pan = fuller ? sheet->fullest : sheet->lesser;

      g_assert_cmpuint (in_pan, >, 0);
      skeins += in_pan;
      for (gsize i = 0; i < sheet->n_pours; i++)
        {
          const SwSheetPour *pour = &sheet->pours[i];
          SwAmount stock = fuller ? pour->stock_ml : pour->lesser_stock_ml, dye = fuller ? pour->dye_g : pour->lesser_dye_g;

          assert_rounding (stock, settings->measure_step_ml);
          if (pour->dry)
            assert_rounding (dye, settings->weigh_step_g);
          ml[2 * pour->dye] += stock.exact;
          ml[2 * pour->dye + 1] += stock.rounded;
          grams[2 * pour->dye] += dye.exact;
          grams[2 * pour->dye + 1] += dye.rounded;
        }
    }
  g_assert_cmpuint (skeins, ==, sheet->skeins);

  for (gsize i = 0; i < sheet->n_dyes; i++)
    {
      const SwSheetDye *dye = &sheet->dyes[i];

      assert_near (dye->poured_ml.exact, ml[2 * dye->dye], 1e-9);
      assert_near (dye->poured_ml.rounded, ml[2 * dye->dye + 1], 1e-9);
      assert_near (dye->poured_g.exact, grams[2 * dye->dye], 1e-9);
      assert_near (dye->poured_g.rounded, grams[2 * dye->dye + 1], 1e-9);
      assert_near (dye->depth_percent, 100.0 * grams[2 * dye->dye] / sheet->fibre_g, 1e-9);
    }
  g_free (ml);
  g_free (grams);
}

/* Stock is never too little, and has its strength to half a step of the measure. */
static void
assert_stock (const SwSheet *sheet)
{
  const SwSheetSettings *settings = &sheet->sketch->sheet;

  for (gsize i = 0; i < sheet->n_dyes; i++)
    {
      const SwSheetDye *dye = &sheet->dyes[i];
      double percent = ((const SwDye *) sheet->sketch->dyes->pdata[dye->dye])->stock_percent;

      g_assert_cmpfloat (dye->stock_ml.rounded, >=, dye->poured_ml.rounded - 1e-9);
      assert_on_step (dye->stock_ml.rounded, settings->measure_step_ml);
      assert_on_step (dye->weigh_g.rounded, settings->weigh_step_g);
      assert_near (dye->strength_percent * dye->stock_ml.rounded, 100.0 * dye->weigh_g.rounded, dye->stock_ml.rounded > 0.0 ? 1e-9 : INFINITY);
      if (dye->stock_ml.rounded > 0.0)
        assert_near (dye->strength_percent / percent, 1.0, settings->measure_step_ml / 2.0 / dye->stock_ml.rounded + 1e-9);
    }
}

static void
test_closing (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20250);

  for (int i = 0; i < 400; i++)
    {
      g_autoptr (SwSketch) sketch = random_sketch (random);
      g_autoptr (GError) error = NULL;
      g_autoptr (SwSheet) sheet = NULL;

      g_assert_true (sw_sketch_validate (sketch, &error));
      sheet = sw_sheet_new (sketch, NULL);
      assert_closes (sheet);
      assert_stock (sheet);
    }
}

/* What is exact goes with the skeins, whatever the pans. */
static void
test_scaling (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwSheet) one = sw_sheet_new (sketch, NULL);

  for (gint64 n = 1; n <= 20; n++)
    {
      g_autoptr (SwSketch) many = sw_sketch_copy (sketch);
      g_autoptr (SwSheet) sheet = NULL;

      many->sheet.skeins = n;
      many->sheet.pans = 1 + n / 3;
      sheet = sw_sheet_new (many, NULL);
      assert_near (sheet->fibre_g, (double) n * one->fibre_g, 1e-9);
      assert_near (sheet->water_ml.exact, (double) n * one->water_ml.exact, 1e-9);
      assert_near (sheet->acid_ml.exact, (double) n * one->acid_ml.exact, 1e-9);
      for (gsize i = 0; i < sheet->n_dyes; i++)
        {
          assert_near (sheet->dyes[i].poured_ml.exact, (double) n * one->dyes[i].poured_ml.exact, 1e-9);
          assert_near (sheet->dyes[i].poured_g.exact, (double) n * one->dyes[i].poured_g.exact, 1e-9);
          assert_near (sheet->dyes[i].depth_percent, one->dyes[i].depth_percent, 1e-12);
        }
      assert_near (sheet->liquor.ratio, one->liquor.ratio, 1e-9);
      assert_near (sheet->liquor.start_ph, one->liquor.start_ph, 1e-12);
    }
}

/* What is said of how real pans lie; nothing where they lie as drawn. */
static void
test_lay (void)
{
  static const struct
  {
    gint64 drawn, skeins, pans;
    gboolean across;
    const char *begin, *hold[2];
  } batches[] = {
    { 2, 4, 2, FALSE, NULL, { NULL } },
    { 1, 3, 1, FALSE, "Skeins drawn: 1; in a full pan: 3. The drawing is repeated across", { NULL } },
    { 2, 1, 1, TRUE, "Skeins drawn: 2; in a full pan: 1. The far ones are left out", { NULL } },
    { 2, 5, 2, TRUE, "Skeins drawn: 2; in a full pan: 3.", { "1 pan lies the same" } },
    { 2, 5, 2, FALSE, "Skeins drawn: 2; in a full pan: 3.", { "1 pan lies the same", "do not go right across" } },
    { 2, 6, 4, FALSE, "2 pans lie the same", { "do not go right across" } },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (batches); i++)
    {
      g_autoptr (SwSketch) sketch = test_bare_sketch (2);
      SwStep *band = test_add_band (sketch, test_add_dye (sketch, "Red", 178, 60, 52), 10.0, 5.0, 9.0, 0.5);
      g_autoptr (SwSheet) sheet = NULL;
      g_autofree char *text = NULL;

      sketch->lay.skeins = batches[i].drawn;
      sketch->sheet.skeins = batches[i].skeins;
      sketch->sheet.pans = batches[i].pans;
      band->length_cm = 0;
      band->angle_deg = batches[i].across ? 0 : 20;
      sheet = sw_sheet_new (sketch, NULL);
      text = sw_sheet_lay_text (sheet);
      g_assert_true ((text != NULL) == (batches[i].begin != NULL));
      if (text == NULL)
        continue;
      g_assert_true (g_str_has_prefix (text, batches[i].begin));
      for (gsize k = 0; k < G_N_ELEMENTS (batches[i].hold); k++)
        g_assert_true (batches[i].hold[k] == NULL || strstr (text, batches[i].hold[k]) != NULL);
      g_assert_true (!batches[i].across || strstr (text, "right across") == NULL);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet/percent-shade", test_shades);
  g_test_add_func ("/sheet/closing", test_closing);
  g_test_add_func ("/sheet/scaling", test_scaling);
  g_test_add_func ("/sheet/lay", test_lay);
  return g_test_run ();
}
