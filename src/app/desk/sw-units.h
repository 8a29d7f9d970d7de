/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Amounts as a person reads and writes them, in metric or US customary units.
 * The core's own units are the unit of the metric system that stands first in
 * the table for each quantity: cm, mL, g, min, degrees C.
 */

typedef enum
{
  SW_QUANTITY_NONE, /* a bare number */
  SW_QUANTITY_LENGTH,
  SW_QUANTITY_VOLUME,
  SW_QUANTITY_MASS,
  SW_QUANTITY_TIME,
  SW_QUANTITY_TEMPERATURE,
  SW_QUANTITY_PERCENT,
  SW_QUANTITY_ANGLE,
} SwQuantity;

typedef enum
{
  SW_SYSTEM_METRIC,
  SW_SYSTEM_US,
} SwSystem;

/**
 * sw_quantity_of_unit:
 * @unit: a core unit, as in SwMember.unit; others are bare numbers
 */
SwQuantity sw_quantity_of_unit (const char *unit);

/**
 * sw_units_format:
 * @value: in the core's unit
 * Returns: (transfer full): "12.5 cm", "4.9 in", "1½ tsp"; decimals by the
 *   locale, no more of them than can be measured in a kitchen
 */
char *sw_units_format (SwQuantity quantity, double value, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/* The same with @decimals in any case, for numbers that stand one under the other. */
char *sw_units_format_column (SwQuantity quantity, double value, int decimals, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_units_parse:
 * @text: a number, or a fraction as on a measuring spoon ("1 1/2", "¼"), and
 *   any unit of the quantity. Comma and full stop both mark decimals
 * @shown: in the core's unit: what the field showed before; a number without
 *   a unit is in the unit that was shown
 * @value: (out): in the core's unit
 * @error: SW_UNITS_ERROR with a sentence
 */
gboolean sw_units_parse (SwQuantity quantity, const char *text, SwSystem system, double shown, double *value, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The unit in which @value (in the core's unit) is shown, for people: "cm"; "" for bare numbers. */
const char *sw_units_symbol (SwQuantity quantity, double value, SwSystem system);

#define SW_UNITS_ERROR (sw_units_error_quark ())
GQuark sw_units_error_quark (void);
typedef enum
{
  SW_UNITS_ERROR_NUMBER, /* no number in it */
  SW_UNITS_ERROR_UNIT,   /* a unit that is not one of this quantity */
} SwUnitsError;

G_END_DECLS
