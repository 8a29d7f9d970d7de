/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-units.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

G_DEFINE_QUARK (sw_units_error, sw_units_error)

#define METRIC (1 << SW_SYSTEM_METRIC)
#define US (1 << SW_SYSTEM_US)

/* A unit: core = value x factor + offset. US measures by NIST Handbook 44, appendix C. */
typedef struct
{
  SwQuantity quantity;
  int systems;        /* that show it */
  double least;       /* shown from this many core units on */
  const char *symbol; /* for people */
  const char *words;  /* also understood, between blanks */
  double factor, offset;
} Unit;

static const Unit units[] = {
  { SW_QUANTITY_LENGTH, METRIC, 0, N_ ("cm"), " cm ", 1 },
  { SW_QUANTITY_LENGTH, METRIC, 1000, N_ ("m"), " m ", 100 },
  { SW_QUANTITY_LENGTH, 0, 0, N_ ("mm"), " mm ", 0.1 },
  { SW_QUANTITY_LENGTH, US, 0, N_ ("in"), " in inch inches \" ″ ", 2.54 },
  { SW_QUANTITY_LENGTH, US, 914.4, N_ ("yd"), " yd yds yard yards ", 91.44 },
  { SW_QUANTITY_LENGTH, 0, 0, N_ ("ft"), " ft foot feet ' ′ ", 30.48 },
  { SW_QUANTITY_VOLUME, METRIC, 0, N_ ("mL"), " ml cc ", 1 },
  { SW_QUANTITY_VOLUME, METRIC, 1000, N_ ("L"), " l litre litres liter liters ", 1000 },
  /* Translators: teaspoon, short */
  { SW_QUANTITY_VOLUME, US, 0, N_ ("tsp"), " tsp teaspoon teaspoons ", 4.92892159375 },
  /* Translators: tablespoon, short */
  { SW_QUANTITY_VOLUME, US, 14.78676478125, N_ ("tbsp"), " tbsp tablespoon tablespoons ", 14.78676478125 },
  /* Translators: the kitchen measure, 237 mL */
  { SW_QUANTITY_VOLUME, US, 59.147118, N_ ("cup"), " cup cups ", 236.5882365 },
  /* Translators: fluid ounce, short */
  { SW_QUANTITY_VOLUME, 0, 0, N_ ("fl oz"), " floz fl.oz. ", 29.5735295625 },
  /* Dye is weighed in grams everywhere: kitchen scales have no fine ounces. */
  { SW_QUANTITY_MASS, METRIC | US, 0, N_ ("g"), " g gram grams ", 1 },
  { SW_QUANTITY_MASS, METRIC, 1000, N_ ("kg"), " kg ", 1000 },
  { SW_QUANTITY_MASS, 0, 0, N_ ("mg"), " mg ", 0.001 },
  { SW_QUANTITY_MASS, US, 14.1747615625, N_ ("oz"), " oz ounce ounces ", 28.349523125 },
  { SW_QUANTITY_MASS, US, 453.59237, N_ ("lb"), " lb lbs pound pounds ", 453.59237 },
  { SW_QUANTITY_TIME, METRIC | US, 0, N_ ("min"), " min minute minutes ' ", 1 },
  { SW_QUANTITY_TIME, METRIC | US, 120, N_ ("h"), " h hr hour hours ", 60 },
  { SW_QUANTITY_TIME, 0, 0, N_ ("s"), " s sec second seconds \" ", 1.0 / 60 },
  { SW_QUANTITY_TEMPERATURE, METRIC, 0, N_ ("°C"), " °c c ", 1 },
  { SW_QUANTITY_TEMPERATURE, US, 0, N_ ("°F"), " °f f ", 5.0 / 9, -160.0 / 9 },
  { SW_QUANTITY_PERCENT, METRIC | US, 0, N_ ("%"), " % ", 1 },
  { SW_QUANTITY_ANGLE, METRIC | US, 0, N_ ("°"), " ° deg degrees ", 1 },
};

SwQuantity
sw_quantity_of_unit (const char *unit)
{
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (units[i].factor == 1.0 && g_str_equal (units[i].symbol, unit))
      return units[i].quantity;
  return SW_QUANTITY_NONE;
}

/* The largest unit of the system that the amount reaches: they stand in the table by size. */
static const Unit *
unit_to_show (SwQuantity quantity, double value, SwSystem system)
{
  const Unit *unit = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (units[i].quantity == quantity && (units[i].systems & (1 << system)) && fabs (value) >= units[i].least * (1 - 1e-9))
      unit = &units[i];
  return unit;
}

const char *
sw_units_symbol (SwQuantity quantity, double value, SwSystem system)
{
  const Unit *unit = unit_to_show (quantity, value, system);

  return unit != NULL ? _ (unit->symbol) : "";
}

/* Three figures, without idle noughts. */
static char *
format_number (double number)
{
  double size = fabs (number);
  int decimals = size < 0.9995 ? 3 : size < 9.995 ? 2
                                 : size < 99.95   ? 1
                                                  : 0;

  for (; decimals > 0; decimals--)
    {
      double unit = pow (10, decimals - 1);

      if (fabs (round (number * unit * 10) - round (number * unit) * 10) > 0.5)
        break;
    }
  number = round (number * pow (10, decimals)) / pow (10, decimals) + 0.0; /* no "-0" */
  return g_strdup_printf ("%.*f", decimals, number);
}

static const struct
{
  double value;
  const char *sign;
} fractions[] = {
  { 0.125, "⅛" },
  { 0.25, "¼" },
  { 1.0 / 3, "⅓" },
  { 0.5, "½" },
  { 2.0 / 3, "⅔" },
  { 0.75, "¾" },
};

/* What measuring spoons and cups are marked with, if the amount is one of those. */
static char *
format_spoons (double number)
{
  double whole = floor (number + 1e-9);

  for (gsize i = 0; i < G_N_ELEMENTS (fractions); i++)
    if (fabs (number - whole - fractions[i].value) < 0.005 * number)
      return whole > 0 ? g_strdup_printf ("%.0f%s", whole, fractions[i].sign) : g_strdup (fractions[i].sign);
  return NULL;
}

/* @number: (transfer full): of that unit; none of a bare one */
static char *
with_unit (char *number, SwQuantity quantity, const Unit *unit)
{
  g_autofree char *own = number;

  if (unit == NULL)
    return g_steal_pointer (&own);
  if (quantity == SW_QUANTITY_ANGLE)
    return g_strconcat (own, _ (unit->symbol), NULL);
  /* Translators: a number and its unit, with a no-break space between; like 12.5 cm */
  return g_strdup_printf (_ ("%s\u00a0%s"), own, _ (unit->symbol));
}

static double
in_unit (double value, const Unit *unit)
{
  return unit != NULL ? (value - unit->offset) / unit->factor : value;
}

char *
sw_units_format (SwQuantity quantity, double value, SwSystem system)
{
  const Unit *unit = unit_to_show (quantity, value, system);
  const double shown = in_unit (value, unit);
  char *number = NULL;

  if (quantity == SW_QUANTITY_VOLUME && system == SW_SYSTEM_US)
    number = format_spoons (shown);
  return with_unit (number != NULL ? number : format_number (shown), quantity, unit);
}

char *
sw_units_format_column (SwQuantity quantity, double value, int decimals, SwSystem system)
{
  const Unit *unit = unit_to_show (quantity, value, system);

  return with_unit (g_strdup_printf ("%.*f", decimals, in_unit (value, unit) + 0.0), quantity, unit);
}

/* Reading */

static const char *
skip_blanks (const char *text)
{
  while (g_unichar_isspace (g_utf8_get_char (text)))
    text = g_utf8_next_char (text);
  return text;
}

/* @text: (inout): behind the fraction, if there is one */
static gboolean
read_fraction (const char **text, double *fraction)
{
  const char *start = skip_blanks (*text);
  char *end;
  gint64 over, under;

  for (gsize i = 0; i < G_N_ELEMENTS (fractions); i++)
    if (g_str_has_prefix (start, fractions[i].sign))
      {
        *fraction = fractions[i].value;
        *text = start + strlen (fractions[i].sign);
        return TRUE;
      }

  if (!g_ascii_isdigit (*start))
    return FALSE;
  over = g_ascii_strtoll (start, &end, 10);
  if (*end != '/' || !g_ascii_isdigit (end[1]))
    return FALSE;
  under = g_ascii_strtoll (end + 1, &end, 10);
  if (under == 0)
    return FALSE;
  *fraction = (double) over / (double) under;
  *text = end;
  return TRUE;
}

/* Digits, a sign and one mark of decimals: neither "1e3" nor "infinity" is an amount that a dyer writes. */
static gboolean
read_decimal (const char **text, double *number)
{
  gsize span = strspn (*text, "+-0123456789.,");
  g_autofree char *plain = g_strndup (*text, span);
  char *end;

  g_strdelimit (plain, ",", '.');
  *number = g_ascii_strtod (plain, &end);
  if (span == 0 || *end != '\0' || !isfinite (*number))
    return FALSE;
  *text += span;
  return TRUE;
}

static gboolean
read_number (const char **text, double *number)
{
  double fraction;

  if (read_fraction (text, number))
    return TRUE;

  *text = skip_blanks (*text);
  if (!read_decimal (text, number))
    return FALSE;
  if (read_fraction (text, &fraction))
    *number += *number < 0 ? -fraction : fraction;
  return TRUE;
}

static char *
without_blanks (const char *text)
{
  GString *bare = g_string_new (NULL);

  for (; *text != '\0'; text = g_utf8_next_char (text))
    if (!g_unichar_isspace (g_utf8_get_char (text)))
      g_string_append_unichar (bare, g_utf8_get_char (text));
  return g_string_free (bare, FALSE);
}

static const Unit *
find_unit (SwQuantity quantity, const char *text)
{
  g_autofree char *folded = g_utf8_strdown (text, -1);
  g_autofree char *bare = without_blanks (folded);
  g_autofree char *word = g_strdup_printf (" %s ", bare);

  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    {
      g_autofree char *local = g_utf8_strdown (_ (units[i].symbol), -1);
      g_autofree char *own = without_blanks (local);

      if (units[i].quantity == quantity && (strstr (units[i].words, word) != NULL || g_str_equal (own, bare)))
        return &units[i];
    }
  return NULL;
}

gboolean
sw_units_parse (SwQuantity quantity, const char *text, SwSystem system, double shown, double *value, GError **error)
{
  const Unit *unit = unit_to_show (quantity, shown, system);
  g_autofree char *rest = NULL;
  const char *at = text;
  double number;

  g_return_val_if_fail (text != NULL && value != NULL, FALSE);

  if (!read_number (&at, &number))
    {
      g_set_error (error, SW_UNITS_ERROR, SW_UNITS_ERROR_NUMBER,
                   _ ("“%s” is not a number. Write one like 2.5 or 1/4."), text);
      return FALSE;
    }

  rest = g_strstrip (g_strdup (at));
  if (*rest != '\0')
    unit = find_unit (quantity, rest);
  if (*rest != '\0' && unit == NULL)
    {
      g_set_error (error, SW_UNITS_ERROR, SW_UNITS_ERROR_UNIT,
                   /* Translators: the first %s is what was typed, the second a unit that fits */
                   _ ("“%s” is not a unit that fits here. Use %s, or leave it out."), rest, sw_units_symbol (quantity, shown, system));
      return FALSE;
    }
  *value = unit != NULL ? number * unit->factor + unit->offset : number;
  return TRUE;
}
