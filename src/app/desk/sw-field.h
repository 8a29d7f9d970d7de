/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-units.h"
#include "sketch/sw-member.h"

G_BEGIN_DECLS

/*
 * A member's value as the text of a field, and back. Numbers and whole
 * numbers only; the other kinds of member have controls of their own.
 */

/**
 * sw_field_text:
 * @value: of the member's kind
 * Returns: (transfer full): "12.5 cm", "1½ tsp", "30 %"; empty where 0 stands for "work it out"
 */
char *sw_field_text (const SwMember *member, const SwValue *value, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_field_parse:
 * @text: a number with or without a unit; see sw_units_parse()
 * @shown: what the field showed before: a bare number is in the unit of that
 * @value: (out caller-allocates): plain, nothing to be cleared
 * @error: SW_UNITS_ERROR, or SW_SKETCH_ERROR with the limits in the units of @system
 */
gboolean sw_field_parse (const SwMember *member, const char *text, const SwValue *shown, SwSystem system, SwValue *value, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_field_nudge:
 * @steps: how many steps up (or down, below 0)
 * Moves to the next round figure of the unit that is shown, and stays within the member's limits.
 */
void sw_field_nudge (const SwMember *member, const SwValue *value, SwSystem system, int steps, SwValue *nudged);

/**
 * sw_field_zero:
 * Returns: (nullable): what 0 stands for where it is not an amount ("right across"), translated
 */
const char *sw_field_zero (const SwMember *member);

/**
 * sw_field_note:
 * Returns: (nullable): what the figure is counted on, where its unit does not say it ("per 100 g"), translated
 */
const char *sw_field_note (const SwMember *member, SwSystem system);

G_END_DECLS
