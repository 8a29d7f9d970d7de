/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/desk/sw-units.h"

#include <locale.h>
#include <math.h>

#define NBSP "\u00a0"

/* US measures: NIST Handbook 44, appendix C, exact by definition of the inch and the pound. */
static const struct
{
  const char *name;
  SwQuantity quantity;
  const char *text;
  SwSystem system;
  double value;
} parses[] = {
  { "inch", SW_QUANTITY_LENGTH, "1 in", SW_SYSTEM_METRIC, 2.54 },
  { "inch-sign", SW_QUANTITY_LENGTH, "2\"", SW_SYSTEM_METRIC, 5.08 },
  { "yard", SW_QUANTITY_LENGTH, "1yd", SW_SYSTEM_METRIC, 91.44 },
  { "foot", SW_QUANTITY_LENGTH, "1 ft", SW_SYSTEM_METRIC, 30.48 },
  { "millimetre", SW_QUANTITY_LENGTH, "5 mm", SW_SYSTEM_US, 0.5 },
  { "metre", SW_QUANTITY_LENGTH, "1.5 m", SW_SYSTEM_US, 150 },
  { "bare-cm", SW_QUANTITY_LENGTH, " 12.5 ", SW_SYSTEM_METRIC, 12.5 },
  { "bare-in", SW_QUANTITY_LENGTH, "10", SW_SYSTEM_US, 25.4 },
  { "comma", SW_QUANTITY_LENGTH, "12,5 cm", SW_SYSTEM_METRIC, 12.5 },
  { "negative", SW_QUANTITY_LENGTH, "-3 cm", SW_SYSTEM_METRIC, -3 },
  { "teaspoon", SW_QUANTITY_VOLUME, "1 tsp", SW_SYSTEM_METRIC, 4.92892159375 },
  { "half-teaspoon", SW_QUANTITY_VOLUME, "1/2 tsp", SW_SYSTEM_METRIC, 2.464460796875 },
  { "mixed", SW_QUANTITY_VOLUME, "1 1/2 cups", SW_SYSTEM_METRIC, 354.88235475 },
  { "sign", SW_QUANTITY_VOLUME, "1½ tbsp", SW_SYSTEM_METRIC, 22.180147171875 },
  { "quarter-sign", SW_QUANTITY_VOLUME, "¼", SW_SYSTEM_US, 1.2322303984375 },
  { "cup", SW_QUANTITY_VOLUME, "1 Cup", SW_SYSTEM_METRIC, 236.5882365 },
  { "fluid-ounce", SW_QUANTITY_VOLUME, "1 fl oz", SW_SYSTEM_METRIC, 29.5735295625 },
  { "litre", SW_QUANTITY_VOLUME, "0.5 L", SW_SYSTEM_US, 500 },
  { "ounce", SW_QUANTITY_MASS, "1 oz", SW_SYSTEM_METRIC, 28.349523125 },
  { "pound", SW_QUANTITY_MASS, "1 lb", SW_SYSTEM_METRIC, 453.59237 },
  { "hour", SW_QUANTITY_TIME, "1.5 h", SW_SYSTEM_METRIC, 90 },
  { "second", SW_QUANTITY_TIME, "30 s", SW_SYSTEM_METRIC, 0.5 },
  { "boiling", SW_QUANTITY_TEMPERATURE, "212 °F", SW_SYSTEM_METRIC, 100 },
  { "freezing", SW_QUANTITY_TEMPERATURE, "32", SW_SYSTEM_US, 0 },
  { "celsius", SW_QUANTITY_TEMPERATURE, "85 C", SW_SYSTEM_US, 85 },
  { "percent", SW_QUANTITY_PERCENT, "5 %", SW_SYSTEM_US, 5 },
  { "degrees", SW_QUANTITY_ANGLE, "-12°", SW_SYSTEM_METRIC, -12 },
  { "none", SW_QUANTITY_NONE, "0.3", SW_SYSTEM_METRIC, 0.3 },
  { "fraction-below-one", SW_QUANTITY_NONE, ".5", SW_SYSTEM_METRIC, 0.5 },
};

static void
test_parse (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  GError *error = NULL;
  double value = NAN;

  g_assert_true (sw_units_parse (parses[i].quantity, parses[i].text, parses[i].system, 0, &value, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (value, parses[i].value, 1e-9 * fmax (1, fabs (parses[i].value)));
}

static const struct
{
  SwQuantity quantity;
  const char *text;
  SwUnitsError code;
} refusals[] = {
  { SW_QUANTITY_LENGTH, "", SW_UNITS_ERROR_NUMBER },
  { SW_QUANTITY_LENGTH, "wide", SW_UNITS_ERROR_NUMBER },
  { SW_QUANTITY_LENGTH, "inf", SW_UNITS_ERROR_NUMBER },
  { SW_QUANTITY_LENGTH, "nan cm", SW_UNITS_ERROR_NUMBER },
  { SW_QUANTITY_LENGTH, "1.2.3 cm", SW_UNITS_ERROR_NUMBER },
  { SW_QUANTITY_LENGTH, "1/0 cm", SW_UNITS_ERROR_UNIT },
  { SW_QUANTITY_LENGTH, "0x10", SW_UNITS_ERROR_UNIT },
  { SW_QUANTITY_LENGTH, "12 g", SW_UNITS_ERROR_UNIT },
  { SW_QUANTITY_VOLUME, "3 spoons", SW_UNITS_ERROR_UNIT },
  { SW_QUANTITY_NONE, "3 cm", SW_UNITS_ERROR_UNIT },
};

static void
test_refuse (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (refusals); i++)
    {
      g_autoptr (GError) error = NULL;
      double value = 7;

      g_assert_false (sw_units_parse (refusals[i].quantity, refusals[i].text, SW_SYSTEM_METRIC, 0, &value, &error));
      g_assert_error (error, SW_UNITS_ERROR, (int) refusals[i].code);
      g_assert_cmpfloat (value, ==, 7);
    }
}

static const struct
{
  SwQuantity quantity;
  double value;
  const char *metric, *us;
} formats[] = {
  { SW_QUANTITY_LENGTH, 12.5, "12.5" NBSP "cm", "4.92" NBSP "in" },
  { SW_QUANTITY_LENGTH, 2.54, "2.54" NBSP "cm", "1" NBSP "in" },
  { SW_QUANTITY_LENGTH, 0, "0" NBSP "cm", "0" NBSP "in" },
  { SW_QUANTITY_LENGTH, 150, "150" NBSP "cm", "59.1" NBSP "in" },
  { SW_QUANTITY_LENGTH, 40000, "400" NBSP "m", "437" NBSP "yd" },
  { SW_QUANTITY_LENGTH, -7.25, "-7.25" NBSP "cm", "-2.85" NBSP "in" },
  { SW_QUANTITY_VOLUME, 30, "30" NBSP "mL", "2.03" NBSP "tbsp" },
  { SW_QUANTITY_VOLUME, 2.4644607, "2.46" NBSP "mL", "½" NBSP "tsp" },
  { SW_QUANTITY_VOLUME, 7.3933824, "7.39" NBSP "mL", "1½" NBSP "tsp" },
  { SW_QUANTITY_VOLUME, 1400, "1.4" NBSP "L", "5.92" NBSP "cup" },
  { SW_QUANTITY_MASS, 100, "100" NBSP "g", "3.53" NBSP "oz" },
  { SW_QUANTITY_MASS, 0.25, "0.25" NBSP "g", "0.25" NBSP "g" },
  { SW_QUANTITY_TIME, 10, "10" NBSP "min", "10" NBSP "min" },
  { SW_QUANTITY_TIME, 150, "2.5" NBSP "h", "2.5" NBSP "h" },
  { SW_QUANTITY_TEMPERATURE, 85, "85" NBSP "°C", "185" NBSP "°F" },
  { SW_QUANTITY_TEMPERATURE, 100, "100" NBSP "°C", "212" NBSP "°F" },
  { SW_QUANTITY_PERCENT, 5, "5" NBSP "%", "5" NBSP "%" },
  { SW_QUANTITY_ANGLE, -12.5, "-12.5°", "-12.5°" },
  { SW_QUANTITY_NONE, 0.3, "0.3", "0.3" },
  { SW_QUANTITY_NONE, 9.999, "10", "10" },
  { SW_QUANTITY_NONE, 0.055, "0.055", "0.055" },
  { SW_QUANTITY_NONE, -0.0001, "0", "0" },
};

/* Numbers that stand one under the other have as many decimals. */
static void
test_column (void)
{
  g_autofree char *whole = sw_units_format_column (SW_QUANTITY_NONE, 8, 1, SW_SYSTEM_METRIC);
  g_autofree char *long_one = sw_units_format_column (SW_QUANTITY_LENGTH, 9.777, 1, SW_SYSTEM_METRIC);
  g_autofree char *inches = sw_units_format_column (SW_QUANTITY_LENGTH, 25.4, 1, SW_SYSTEM_US);

  g_assert_cmpstr (whole, ==, "8.0");
  g_assert_cmpstr (long_one, ==, "9.8\u00a0cm");
  g_assert_cmpstr (inches, ==, "10.0\u00a0in");
}

static void
test_format (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      g_autofree char *metric = sw_units_format (formats[i].quantity, formats[i].value, SW_SYSTEM_METRIC);
      g_autofree char *us = sw_units_format (formats[i].quantity, formats[i].value, SW_SYSTEM_US);

      g_assert_cmpstr (metric, ==, formats[i].metric);
      g_assert_cmpstr (us, ==, formats[i].us);
    }
}

/* What is shown can be typed again, and means the same to the figures shown: any quantity, amount and system. */
static void
test_round_trip (void)
{
  for (SwQuantity quantity = SW_QUANTITY_NONE; quantity <= SW_QUANTITY_ANGLE; quantity++)
    for (int system = SW_SYSTEM_METRIC; system <= SW_SYSTEM_US; system++)
      for (int i = 0; i < 200; i++)
        {
          double value = exp (g_test_rand_double_range (log (0.1), log (5000)));
          g_autofree char *text = sw_units_format (quantity, value, (SwSystem) system);
          GError *error = NULL;
          double again = NAN;

          g_assert_true (sw_units_parse (quantity, text, (SwSystem) system, value, &again, &error));
          g_assert_no_error (error);
          /* three figures, or a spoon's mark within 0.5 %; half a degree */
          if (fabs (again - value) > (quantity == SW_QUANTITY_TEMPERATURE ? 0.51 : 0.006 * value + 0.003))
            g_error ("%.9g was shown as %s and read as %.9g", value, text, again);
        }
}

/* A number without a unit is in the unit that the field showed. */
static void
test_bare_number (void)
{
  double value = NAN;

  g_assert_true (sw_units_parse (SW_QUANTITY_VOLUME, "2", SW_SYSTEM_METRIC, 1400, &value, NULL));
  g_assert_cmpfloat (value, ==, 2000);
  g_assert_true (sw_units_parse (SW_QUANTITY_VOLUME, "2", SW_SYSTEM_METRIC, 30, &value, NULL));
  g_assert_cmpfloat (value, ==, 2);
  g_assert_cmpstr (sw_units_symbol (SW_QUANTITY_VOLUME, 30, SW_SYSTEM_US), ==, "tbsp");
  g_assert_true (sw_units_parse (SW_QUANTITY_VOLUME, "3", SW_SYSTEM_US, 30, &value, NULL));
  g_assert_cmpfloat_with_epsilon (value, 3 * 14.78676478125, 1e-9);
}

static void
test_core_units (void)
{
  g_assert_cmpint (sw_quantity_of_unit ("cm"), ==, SW_QUANTITY_LENGTH);
  g_assert_cmpint (sw_quantity_of_unit ("mL"), ==, SW_QUANTITY_VOLUME);
  g_assert_cmpint (sw_quantity_of_unit ("g"), ==, SW_QUANTITY_MASS);
  g_assert_cmpint (sw_quantity_of_unit ("min"), ==, SW_QUANTITY_TIME);
  g_assert_cmpint (sw_quantity_of_unit ("°C"), ==, SW_QUANTITY_TEMPERATURE);
  g_assert_cmpint (sw_quantity_of_unit ("%"), ==, SW_QUANTITY_PERCENT);
  g_assert_cmpint (sw_quantity_of_unit ("°"), ==, SW_QUANTITY_ANGLE);
  g_assert_cmpint (sw_quantity_of_unit ("kJ/mol"), ==, SW_QUANTITY_NONE);
  g_assert_cmpint (sw_quantity_of_unit (""), ==, SW_QUANTITY_NONE);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (parses); i++)
    {
      g_autofree char *path = g_strconcat ("/app/units/parse/", parses[i].name, NULL);

      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_parse);
    }
  g_test_add_func ("/app/units/refuse", test_refuse);
  g_test_add_func ("/app/units/format", test_format);
  g_test_add_func ("/app/units/column", test_column);
  g_test_add_func ("/app/units/round-trip", test_round_trip);
  g_test_add_func ("/app/units/bare-number", test_bare_number);
  g_test_add_func ("/app/units/core-units", test_core_units);
  return g_test_run ();
}
