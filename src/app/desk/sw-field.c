/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-field.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* Members whose figure for people is not simply a quantity in the member's own unit. */
typedef struct
{
  const char *name;
  SwQuantity quantity;
  double scale[2];      /* per system: core units of the quantity in one of the member's */
  const char *fixed;    /* the unit that is always shown, or NULL for those of the system */
  const char *notes[2]; /* per system: what it is counted on */
} Special;

static const Special specials[] = {
  { "worked_in", SW_QUANTITY_PERCENT, { 100, 100 } },
  { "growth", SW_QUANTITY_PERCENT, { 100, 100 } },
  { "wander", SW_QUANTITY_PERCENT, { 100, 100 } },
  { "quick_share", SW_QUANTITY_PERCENT, { 100, 100 } },
  { "speck_mm", SW_QUANTITY_LENGTH, { 0.1, 0.1 }, N_ ("mm") },
  /* Translators: after a length of yarn */
  { "metres_per_100_g", SW_QUANTITY_LENGTH, { 100, 100 }, NULL, { N_ ("per 100 g"), N_ ("per 100 g") } },
  /* Translators: after a number of stitches or rows */
  { "stitches_per_10cm", SW_QUANTITY_NONE, { 1, 1.016 }, NULL, { N_ ("to 10 cm"), N_ ("to 4 in") } },
  { "rows_per_10cm", SW_QUANTITY_NONE, { 1, 1.016 }, NULL, { N_ ("to 10 cm"), N_ ("to 4 in") } },
  /* Translators: after a number of specks */
  { "specks_per_100_cm2", SW_QUANTITY_NONE, { 1, 0.64516 }, NULL, { N_ ("on 100 cm²"), N_ ("on 10 in²") } },
};

/* Prices: to the last coin, whatever their size. */
static const char *const prices[] = { "yarn_price", "acid_price_per_l", "label_price", "batch_price", "rate_per_hour", "price_per_g", "cost" };
#define PRICE_DECIMALS 4

static const struct
{
  const char *name;
  const char *words;
} zeroes[] = {
  /* Translators: of a band of dye: over the whole width of the skein */
  { "length_cm", N_ ("right across") },
  /* Translators: of the depth of a pour: not set, the amount counts */
  { "depth_percent", N_ ("from the amount") },
  /* Translators: stands in an empty field: the program works the figure out itself */
  { "rows_per_10cm", N_ ("worked out") },
  { "stitch_length_cm", N_ ("worked out") },
  /* Translators: of the skeins of a batch: as many as lie in the pan */
  { "skeins", N_ ("as in the pan") },
  /* Translators: of the pans of a batch: as many as its skeins need */
  { "pans", N_ ("as needed") },
  /* Translators: of amounts, where neither scale nor measure asks for it */
  { "weigh_step_g", N_ ("not rounded") },
  { "measure_step_ml", N_ ("not rounded") },
  /* Translators: no pH is wanted */
  { "target_ph", N_ ("as it comes") },
  /* Translators: no liquor ratio is wanted */
  { "liquor_ratio", N_ ("as it comes") },
};

/* How a member is shown: a special one, or in the quantity of its unit. */
static Special
manner_of (const SwMember *member)
{
  for (gsize i = 0; i < G_N_ELEMENTS (specials); i++)
    if (g_str_equal (specials[i].name, member->name))
      return specials[i];
  return (Special){ member->name, sw_quantity_of_unit (member->unit), { 1, 1 } };
}

static double
number_of (const SwMember *member, const SwValue *value)
{
  return member->kind == SW_KIND_WHOLE ? (double) value->as.whole : value->as.number;
}

static SwValue
value_of (const SwMember *member, double number)
{
  return member->kind == SW_KIND_WHOLE ? sw_value_whole (llround (number)) : sw_value_number (number);
}

/* Core units of the quantity in one of the unit that is shown. */
static double
unit_size (const Special *manner, const char *symbol)
{
  g_autofree char *one = g_strconcat ("1 ", symbol, NULL);
  g_autofree char *none = g_strconcat ("0 ", symbol, NULL);
  double size = 1, origin = 0;

  if (manner->quantity == SW_QUANTITY_NONE || !sw_units_parse (manner->quantity, one, SW_SYSTEM_METRIC, 0, &size, NULL) ||
      !sw_units_parse (manner->quantity, none, SW_SYSTEM_METRIC, 0, &origin, NULL))
    return 1;
  return size - origin;
}

static gboolean
is_price (const SwMember *member)
{
  for (gsize i = 0; i < G_N_ELEMENTS (prices); i++)
    if (g_str_equal (prices[i], member->name))
      return TRUE;
  return FALSE;
}

/* "12.5", "0.085", "1200": no idle noughts, no rounding that a bill would show. */
static char *
price_text (double price)
{
  g_autofree char *text = g_strdup_printf ("%.*f", PRICE_DECIMALS, price);
  gsize n = strlen (text);

  while (text[n - 1] == '0')
    n--;
  if (!g_ascii_isdigit (text[n - 1]))
    n--;
  return g_strndup (text, n);
}

static char *
number_text (const SwMember *member, double number, SwSystem system)
{
  Special manner = manner_of (member);
  double amount = number * manner.scale[system];

  if (is_price (member))
    return price_text (number);
  if (manner.fixed != NULL)
    {
      g_autofree char *figure = sw_units_format (SW_QUANTITY_NONE, amount / unit_size (&manner, manner.fixed), system);

      /* Translators: a number and its unit, with a no-break space between; like 12.5 cm */
      return g_strdup_printf (_ ("%s\u00a0%s"), figure, _ (manner.fixed));
    }
  return sw_units_format (manner.quantity, amount, system);
}

char *
sw_field_text (const SwMember *member, const SwValue *value, SwSystem system)
{
  g_return_val_if_fail (member != NULL && value != NULL, NULL);

  if (member->above_zero > 0 && number_of (member, value) == 0)
    return g_strdup ("");
  if (member->kind == SW_KIND_WHOLE)
    return g_strdup_printf ("%" G_GINT64_FORMAT, value->as.whole);
  return number_text (member, value->as.number, system);
}

/* A limit as it is shown may lie a hair outside itself, as 0.039 in does for 0.1 cm: it is the limit that is meant. */
static gboolean
within_limits (const SwMember *member, double *number, SwSystem system, GError **error)
{
  double least = member->above_zero > 0 ? member->above_zero : member->min;
  double nearest = CLAMP (*number, least, member->max);
  g_autofree char *from = number_text (member, least, system);
  g_autofree char *to = number_text (member, member->max, system);
  g_autofree char *given = number_text (member, *number, system);
  g_autofree char *limit = number_text (member, nearest, system);

  if (member->above_zero > 0 && *number == 0)
    return TRUE;
  if (g_str_equal (given, limit))
    {
      *number = nearest;
      return TRUE;
    }

  /* Translators: two amounts with their units: "This goes from 0.1 cm to 400 cm." */
  g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("This goes from %1$s to %2$s."), from, to);
  return FALSE;
}

/* What is typed into a field that shows one unit only, like mm, means that unit unless it names another. */
static gboolean
parse_fixed (const Special *manner, const char *text, SwSystem system, double *amount, GError **error)
{
  g_autofree char *with_unit = g_strconcat (text, " ", manner->fixed, NULL);

  if (sw_units_parse (SW_QUANTITY_NONE, text, system, 0, amount, NULL))
    return sw_units_parse (manner->quantity, with_unit, system, 0, amount, error);
  return sw_units_parse (manner->quantity, text, system, 0, amount, error);
}

/* A bare number may carry the words that the field shows after it, and nothing else. */
static gboolean
parse_bare (const Special *manner, const SwMember *member, const char *text, SwSystem system, double *amount, GError **error)
{
  const char *note = manner->notes[system] != NULL ? manner->notes[system] : member->unit;
  g_autofree char *bare = g_strdup (text);

  if (*note != '\0' && g_str_has_suffix (g_strchomp (bare), _ (note)))
    bare[strlen (bare) - strlen (_ (note))] = '\0';
  if (sw_units_parse (SW_QUANTITY_NONE, bare, system, 0, amount, NULL))
    return TRUE;
  g_set_error (error, SW_UNITS_ERROR, SW_UNITS_ERROR_NUMBER, _ ("“%s” is not a number. Write one like 2.5 or 1/4."), text);
  return FALSE;
}

static gboolean
parse_number (const SwMember *member, const char *text, const SwValue *shown, SwSystem system, double *number, GError **error)
{
  Special manner = manner_of (member);
  double before = number_of (member, shown) * manner.scale[system];
  gboolean done;

  if (manner.fixed != NULL)
    done = parse_fixed (&manner, text, system, number, error);
  else if (manner.quantity == SW_QUANTITY_NONE)
    done = parse_bare (&manner, member, text, system, number, error);
  else
    done = sw_units_parse (manner.quantity, text, system, before, number, error);
  *number /= manner.scale[system];
  return done;
}

gboolean
sw_field_parse (const SwMember *member, const char *text, const SwValue *shown, SwSystem system, SwValue *value, GError **error)
{
  g_autofree char *bare = NULL;
  double number = 0;

  g_return_val_if_fail (member != NULL && text != NULL && shown != NULL && value != NULL, FALSE);

  bare = g_strstrip (g_strdup (text));
  if (*bare != '\0' || member->above_zero <= 0)
    {
      if (!parse_number (member, bare, shown, system, &number, error) || !within_limits (member, &number, system, error))
        return FALSE;
    }
  if (member->kind == SW_KIND_WHOLE && number != floor (number))
    {
      g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("This must be a whole number."));
      return FALSE;
    }
  *value = value_of (member, number);
  return sw_member_check (member, value, error);
}

/* Steps of an amount in the unit shown: a tenth of its size, for figures that a kitchen can measure. */
static double
tenth (double figure)
{
  return fabs (figure) < 0.1 ? 0.01 : pow (10, floor (log10 (fabs (figure)) + 1e-9) - 1);
}

static double
step_of (const Special *manner, double figure, SwSystem system)
{
  switch (manner->quantity)
    {
    case SW_QUANTITY_ANGLE:
    case SW_QUANTITY_TEMPERATURE:
      return 1;
    case SW_QUANTITY_PERCENT:
      return manner->scale[0] == 100 ? 5 : tenth (figure);
    case SW_QUANTITY_TIME:
      return figure < 5 ? 0.5 : 1;
    case SW_QUANTITY_LENGTH:
      return manner->fixed == NULL && manner->scale[0] == 1 ? (system == SW_SYSTEM_US ? 0.25 : 0.5) : tenth (figure);
    case SW_QUANTITY_VOLUME:
      return system == SW_SYSTEM_US ? 0.25 : tenth (figure);
    case SW_QUANTITY_MASS:
    case SW_QUANTITY_NONE:
    default:
      return tenth (figure);
    }
}

static double
nudge_whole (const SwMember *member, gint64 whole, int steps)
{
  for (int i = 0; member->doubling && i < ABS (steps); i++)
    whole = steps > 0 ? whole * 2 : whole / 2;
  return (double) (member->doubling ? whole : whole + steps);
}

/* To the next round figure of the unit in which the amount is shown. */
static double
nudge_number (const SwMember *member, double number, SwSystem system, int steps)
{
  Special manner = manner_of (member);
  double amount = number * manner.scale[system];
  const char *symbol = manner.fixed != NULL ? manner.fixed : sw_units_symbol (manner.quantity, amount, system);
  g_autofree char *none = g_strconcat ("0 ", symbol, NULL);
  double size = unit_size (&manner, symbol), origin = 0;
  double figure, step;

  if (manner.quantity == SW_QUANTITY_TEMPERATURE && !sw_units_parse (manner.quantity, none, system, 0, &origin, NULL))
    origin = 0;
  figure = (amount - origin) / size;
  step = step_of (&manner, figure, system);
  figure = (steps > 0 ? floor (figure / step + 1e-6) : ceil (figure / step - 1e-6)) * step + steps * step;
  return (figure * size + origin) / manner.scale[system];
}

void
sw_field_nudge (const SwMember *member, const SwValue *value, SwSystem system, int steps, SwValue *nudged)
{
  double number;

  g_return_if_fail (member != NULL && value != NULL && nudged != NULL);

  if (member->kind == SW_KIND_WHOLE)
    number = nudge_whole (member, value->as.whole, steps);
  else
    number = nudge_number (member, value->as.number, system, steps);
  number = CLAMP (number, member->min, member->max);
  if (member->above_zero > 0 && number < member->above_zero)
    number = steps > 0 ? member->above_zero : 0;
  *nudged = value_of (member, number);
}

const char *
sw_field_zero (const SwMember *member)
{
  g_return_val_if_fail (member != NULL, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (zeroes); i++)
    if (member->above_zero > 0 && g_str_equal (zeroes[i].name, member->name))
      return _ (zeroes[i].words);
  return NULL;
}

const char *
sw_field_note (const SwMember *member, SwSystem system)
{
  const char *note;

  g_return_val_if_fail (member != NULL, NULL);

  note = manner_of (member).notes[system];
  if (note != NULL)
    return _ (note);
  if (*member->unit != '\0' && manner_of (member).quantity == SW_QUANTITY_NONE)
    return _ (member->unit);
  return NULL;
}
