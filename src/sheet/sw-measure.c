/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/sw-measure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define CM_INCH 2.54
#define DUST 1e-9 /* relative: what rounding in sums may have added */

/* Multiples of a step such as 0.01 are made by division where that is exact, so that 35 of them are 0.35. */
static double
multiple (double n, double step)
{
  double per_unit = 1.0 / step, whole = round (per_unit);

  return step < 1.0 && fabs (per_unit - whole) < DUST * whole ? n / whole : n * step;
}

double
sw_round_to (double value, double step)
{
  return step > 0.0 ? multiple (floor (value / step + 0.5 + DUST), step) : value;
}

double
sw_round_up_to (double value, double step)
{
  double n = step > 0.0 ? value / step : 0.0;

  return step > 0.0 ? multiple (ceil (n - DUST * MAX (n, 1.0)), step) : value;
}

/* A number for people: as few decimals as show it, at most @decimals. */
static char *
number_text (double value, int decimals)
{
  double half = 0.5 * pow (10.0, -decimals);
  int needed = 0;

  while (needed < decimals && fabs (value - round (value * pow (10.0, needed)) / pow (10.0, needed)) > half * 0.999)
    needed++;
  /* Nothing but a sign would be left of a number below half the last decimal. */
  return g_strdup_printf ("%.*f", needed, fabs (value) < half ? 0.0 : value);
}

/* A household's set of measures. */
typedef struct
{
  double cup, tablespoon, teaspoon; /* mL */
} Spoons;

static const Spoons sets[] = {
  [SW_MEASURE_METRIC] = { SW_ML_METRIC_CUP, SW_ML_METRIC_TABLESPOON, SW_ML_METRIC_TEASPOON },
  [SW_MEASURE_US] = { SW_ML_US_CUP, SW_ML_US_TABLESPOON, SW_ML_US_TEASPOON },
};

/* What is dipped out; cups and teaspoons in quarters. */
typedef struct
{
  int quarter_cups, tablespoons, quarter_teaspoons;
} Measured;

#define CUPS_ALONE 4 /* from so many cups on, spoons are not counted out beside them */

/* Least volume that is spooned out: half the smallest spoon. Below it drops are counted. */
static double
least_spoon (const Spoons *set)
{
  return set->teaspoon / 8.0;
}

/*
 * The nearest of what a person would measure: quarter teaspoons up to three
 * tablespoons, whole teaspoons up to a cup, tablespoons beside cups, and
 * quarter cups from four cups on.
 */
static Measured
measure (double ml, const Spoons *set)
{
  Measured measured = { 0, 0, 0 };
  double step = ml < 3.0 * set->tablespoon ? set->teaspoon / 4.0 : set->teaspoon;
  double rest = ml;

  if (ml >= CUPS_ALONE * set->cup)
    return (Measured){ (int) sw_round_to (ml * 4.0 / set->cup, 1.0), 0, 0 };
  if (ml >= set->cup)
    {
      measured.quarter_cups = 4 * (int) floor (ml / set->cup);
      rest = ml - measured.quarter_cups / 4 * set->cup;
      step = set->tablespoon;
    }
  rest = sw_round_to (rest, step);
  if (rest > set->cup - step / 2.0)
    return (Measured){ measured.quarter_cups + 4, 0, 0 };

  measured.tablespoons = (int) floor (rest / set->tablespoon + DUST);
  measured.quarter_teaspoons = (int) sw_round_to ((rest - measured.tablespoons * set->tablespoon) * 4.0 / set->teaspoon, 1.0);
  return measured;
}

double
sw_spoons_ml (double ml, SwMeasureSystem system)
{
  const Spoons *set = &sets[system];
  Measured measured = measure (ml, set);

  return measured.quarter_cups * set->cup / 4.0 + measured.tablespoons * set->tablespoon + measured.quarter_teaspoons * set->teaspoon / 4.0;
}

/* Quarters as a person writes them: "1", "2 ½", "¾". */
static char *
quarters_text (int quarters)
{
  static const char *const fractions[] = { "", "¼", "½", "¾" };

  if (quarters < 4)
    return g_strdup (fractions[quarters]);
  if (quarters % 4 == 0)
    return g_strdup_printf ("%d", quarters / 4);
  return g_strdup_printf ("%d\u00a0%s", quarters / 4, fractions[quarters % 4]);
}

static char *
join (const GPtrArray *parts)
{
  char *text = g_strdup (parts->pdata[0]);

  for (guint i = 1; i < parts->len; i++)
    {
      g_autofree char *before = text;

      /* Translators: one kitchen measure and another: "2 tbsp + 1 tsp" */
      text = g_strdup_printf (_ ("%s + %s"), before, (const char *) parts->pdata[i]);
    }
  return text;
}

char *
sw_spoons_text (double ml, SwMeasureSystem system)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *cups = NULL, *tablespoons = NULL, *teaspoons = NULL;
  Measured measured;

  g_return_val_if_fail (system == SW_MEASURE_METRIC || system == SW_MEASURE_US, NULL);

  if (ml <= 0.0)
    return g_strdup (_ ("none"));
  if (ml < least_spoon (&sets[system]))
    return g_strdup (_ ("a few drops"));

  measured = measure (ml, &sets[system]);
  cups = quarters_text (measured.quarter_cups);
  tablespoons = quarters_text (4 * measured.tablespoons);
  teaspoons = quarters_text (measured.quarter_teaspoons);
  if (measured.quarter_cups > 0)
    /* Translators: kitchen measure of 237 or 250 mL; "1", "¾", "2 ½" */
    g_ptr_array_add (parts, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s cup", "%s cups", (gulong) (measured.quarter_cups + 3) / 4), cups));
  if (measured.tablespoons > 0)
    /* Translators: tablespoons, abbreviated */
    g_ptr_array_add (parts, g_strdup_printf (_ ("%s tbsp"), tablespoons));
  if (measured.quarter_teaspoons > 0)
    /* Translators: teaspoons, abbreviated */
    g_ptr_array_add (parts, g_strdup_printf (_ ("%s tsp"), teaspoons));
  return join (parts);
}

/* Decimals that a volume in mL is shown with: those of a fine syringe, then of a jug. */
static int
decimals_for (double value)
{
  return value < 10.0 ? 2 : value < 1000.0 ? 1
                                           : 0;
}

char *
sw_volume_text (double ml, SwMeasureSystem system)
{
  double ounces = ml / SW_ML_US_FLUID_OUNCE;
  gboolean us = system == SW_MEASURE_US && ml >= SW_ML_US_QUART, litres = !us && ml >= 1000.0;
  g_autofree char *number = NULL;

  if (us)
    number = number_text (ounces, 1);
  else
    number = litres ? number_text (ml / 1000.0, 3) : number_text (ml, decimals_for (ml));

  if (us)
    /* Translators: US fluid ounces */
    return g_strdup_printf (_ ("%s fl oz"), number);
  return litres ? g_strdup_printf (_ ("%s L"), number) : g_strdup_printf (_ ("%s mL"), number);
}

char *
sw_dye_text (double g)
{
  g_autofree char *number = number_text (g, g < 10.0 ? 3 : 2);

  return g_strdup_printf (_ ("%s g"), number);
}

char *
sw_mass_text (double g, SwMeasureSystem system)
{
  gboolean ounces = system == SW_MEASURE_US && g >= 10.0;
  g_autofree char *number = ounces ? number_text (g / SW_G_OUNCE, 2) : number_text (g, decimals_for (g));

  /* Translators: ounces avoirdupois */
  return ounces ? g_strdup_printf (_ ("%s oz"), number) : g_strdup_printf (_ ("%s g"), number);
}

char *
sw_length_text (double cm, SwMeasureSystem system)
{
  gboolean inches = system == SW_MEASURE_US;
  g_autofree char *number = inches ? number_text (cm / CM_INCH, 2) : number_text (cm, 1);

  /* Translators: inches */
  return inches ? g_strdup_printf (_ ("%s in"), number) : g_strdup_printf (_ ("%s cm"), number);
}

char *
sw_temperature_text (double c, SwMeasureSystem system)
{
  gboolean fahrenheit = system == SW_MEASURE_US;
  g_autofree char *number = number_text (fahrenheit ? c * 9.0 / 5.0 + 32.0 : c, 0);

  return fahrenheit ? g_strdup_printf (_ ("%s °F"), number) : g_strdup_printf (_ ("%s °C"), number);
}

char *
sw_minutes_text (double minutes)
{
  long hours = lround (minutes) / 60, rest = lround (minutes) % 60;

  if (hours == 0)
    {
      g_autofree char *number = number_text (minutes, 1);

      return g_strdup_printf (_ ("%s min"), number);
    }
  if (rest == 0)
    /* Translators: hours */
    return g_strdup_printf (_ ("%ld h"), hours);
  /* Translators: hours and minutes */
  return g_strdup_printf (_ ("%ld h %ld min"), hours, rest);
}
