/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/sw-measure.h"

#include "tests/bath/bath-checks.h"
#include "tests/colour/published-table.h"

#include <locale.h>

#define NBSP "\u00a0"

/* tests/reference/units.csv: NIST Handbook 44 and conventions. */
static void
test_units (void)
{
  static const struct
  {
    const char *unit;
    double here;
  } units[] = {
    { "US cup", SW_ML_US_CUP },
    { "US tablespoon", SW_ML_US_TABLESPOON },
    { "US teaspoon", SW_ML_US_TEASPOON },
    { "US fluid ounce", SW_ML_US_FLUID_OUNCE },
    { "metric cup", SW_ML_METRIC_CUP },
    { "metric tablespoon", SW_ML_METRIC_TABLESPOON },
    { "metric teaspoon", SW_ML_METRIC_TEASPOON },
    { "ounce avoirdupois", SW_G_OUNCE },
  };
  g_auto (PublishedTable) table = published_table_open ("units.csv");
  guint found = 0;

  for (guint row = 0; row < published_table_n_rows (&table); row++)
    for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
      if (g_str_equal (published_table_text (&table, row, "unit"), units[i].unit))
        {
          g_assert_cmpfloat (published_table_number (&table, row, "value"), ==, units[i].here);
          found++;
        }
  g_assert_cmpuint (found, ==, G_N_ELEMENTS (units));
  /* A fluid ounce is two tablespoons, a cup eight ounces, a tablespoon three teaspoons. */
  assert_near (SW_ML_US_FLUID_OUNCE, 2.0 * SW_ML_US_TABLESPOON, 1e-9);
  assert_near (SW_ML_US_CUP, 8.0 * SW_ML_US_FLUID_OUNCE, 1e-9);
  assert_near (SW_ML_US_TABLESPOON, 3.0 * SW_ML_US_TEASPOON, 1e-9);
}

static void
test_rounding (void)
{
  g_assert_cmpfloat (sw_round_to (12.25, 0.5), ==, 12.5);
  g_assert_cmpfloat (sw_round_to (12.24, 0.5), ==, 12.0);
  g_assert_cmpfloat (sw_round_to (0.35, 0.01), ==, 0.35);
  g_assert_cmpfloat (sw_round_to (0.345, 0.01), ==, 0.35); /* half up, whatever the last bit */
  g_assert_cmpfloat (sw_round_to (17.3, 0.0), ==, 17.3);
  g_assert_cmpfloat (sw_round_to (0.004, 0.01), ==, 0.0);
  g_assert_cmpfloat (sw_round_up_to (0.341, 0.01), ==, 0.35);
  g_assert_cmpfloat (sw_round_up_to (0.1 + 0.2, 0.1), ==, 0.3); /* dust does not count */
  g_assert_cmpfloat (sw_round_up_to (7.0, 5.0), ==, 10.0);
  g_assert_cmpfloat (sw_round_up_to (17.3, 0.0), ==, 17.3);
  g_assert_cmpfloat (sw_round_up_to (0.0, 0.5), ==, 0.0);
}

static void
assert_spoons (double ml, SwMeasureSystem system, const char *expected)
{
  g_autofree char *text = sw_spoons_text (ml, system);

  g_assert_cmpstr (text, ==, expected);
}

static void
test_spoons (void)
{
  assert_spoons (0.0, SW_MEASURE_METRIC, "none");
  assert_spoons (0.3, SW_MEASURE_METRIC, "a few drops");
  assert_spoons (1.25, SW_MEASURE_METRIC, "¼ tsp");
  assert_spoons (12.0, SW_MEASURE_METRIC, "2" NBSP "½ tsp");
  assert_spoons (15.0, SW_MEASURE_METRIC, "1 tbsp");
  assert_spoons (37.5, SW_MEASURE_METRIC, "2 tbsp + 1" NBSP "½ tsp");
  assert_spoons (60.0, SW_MEASURE_METRIC, "4 tbsp");
  assert_spoons (250.0, SW_MEASURE_METRIC, "1 cup");
  assert_spoons (249.0, SW_MEASURE_METRIC, "1 cup");
  assert_spoons (295.0, SW_MEASURE_METRIC, "1 cup + 3 tbsp");
  assert_spoons (1400.0, SW_MEASURE_METRIC, "5" NBSP "½ cups");
  /* The kitchen measure: 8 US cups of water and 3 tablespoons of vinegar */
  assert_spoons (1892.706, SW_MEASURE_US, "8 cups");
  assert_spoons (44.36, SW_MEASURE_US, "3 tbsp");
  assert_spoons (2.46, SW_MEASURE_US, "½ tsp");
}

/* What is told is what is held, and no further off than half the step of that size. */
static void
test_spoons_hold (void)
{
  for (double ml = 1.0; ml < 3000.0; ml *= 1.01)
    for (SwMeasureSystem system = SW_MEASURE_METRIC; system <= SW_MEASURE_US; system++)
      {
        double teaspoon = system == SW_MEASURE_US ? SW_ML_US_TEASPOON : SW_ML_METRIC_TEASPOON;
        double cup = system == SW_MEASURE_US ? SW_ML_US_CUP : SW_ML_METRIC_CUP;
        double held = sw_spoons_ml (ml, system);
        double step = ml < 9.0 * teaspoon ? teaspoon / 4.0 : ml < cup     ? teaspoon
                                                         : ml < 4.0 * cup ? 3.0 * teaspoon
                                                                          : cup / 4.0;

        assert_near (held, ml, step / 2.0 + teaspoon / 4.0 + 1e-6);
        assert_near (sw_spoons_ml (held, system), held, 1e-6); /* a measure is its own nearest */
      }
}

static void
assert_text (char *text, const char *expected)
{
  g_assert_cmpstr (text, ==, expected);
  g_free (text);
}

static void
test_texts (void)
{
  assert_text (sw_volume_text (35.0, SW_MEASURE_METRIC), "35 mL");
  assert_text (sw_volume_text (12.5, SW_MEASURE_METRIC), "12.5 mL");
  assert_text (sw_volume_text (0.25, SW_MEASURE_METRIC), "0.25 mL");
  assert_text (sw_volume_text (1200.0, SW_MEASURE_METRIC), "1.2 L");
  assert_text (sw_volume_text (1465.0, SW_MEASURE_METRIC), "1.465 L");
  assert_text (sw_volume_text (12.5, SW_MEASURE_US), "12.5 mL");
  assert_text (sw_volume_text (35.488, SW_MEASURE_US), "35.5 mL"); /* a syringe has no ounces */
  assert_text (sw_volume_text (946.0, SW_MEASURE_US), "946 mL");
  assert_text (sw_volume_text (947.0, SW_MEASURE_US), "32 fl oz");
  assert_text (sw_volume_text (1892.706, SW_MEASURE_US), "64 fl oz");
  assert_text (sw_dye_text (0.35), "0.35 g");
  assert_text (sw_dye_text (12.0), "12 g");
  assert_text (sw_dye_text (1.725), "1.725 g");
  assert_text (sw_mass_text (115.0, SW_MEASURE_METRIC), "115 g");
  assert_text (sw_mass_text (100.0, SW_MEASURE_US), "3.53 oz");
  assert_text (sw_mass_text (3.0, SW_MEASURE_US), "3 g");
  assert_text (sw_length_text (75.0, SW_MEASURE_METRIC), "75 cm");
  assert_text (sw_length_text (25.4, SW_MEASURE_US), "10 in");
  assert_text (sw_temperature_text (85.0, SW_MEASURE_METRIC), "85 °C");
  assert_text (sw_temperature_text (85.0, SW_MEASURE_US), "185 °F");
  assert_text (sw_minutes_text (10.0), "10 min");
  assert_text (sw_minutes_text (0.5), "0.5 min");
  assert_text (sw_minutes_text (90.0), "1 h 30 min");
  assert_text (sw_minutes_text (1440.0), "24 h");
  assert_text (sw_minutes_text (59.7), "1 h");
}

/* Decimals shown are as few as hold the figure. */
static void
test_no_loss (void)
{
  for (int step = 0; step < 4000; step++)
    {
      double ml = 0.25 * step;
      g_autofree char *text = sw_volume_text (ml, SW_MEASURE_METRIC);

      assert_near (g_ascii_strtod (text, NULL), ml, ml < 10.0 ? 1e-9 : 0.0501);
    }
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "C.UTF-8");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet/measure/units", test_units);
  g_test_add_func ("/sheet/measure/rounding", test_rounding);
  g_test_add_func ("/sheet/measure/spoons", test_spoons);
  g_test_add_func ("/sheet/measure/spoons-hold", test_spoons_hold);
  g_test_add_func ("/sheet/measure/texts", test_texts);
  g_test_add_func ("/sheet/measure/no-loss", test_no_loss);
  return g_test_run ();
}
