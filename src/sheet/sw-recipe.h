/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sheet/sw-sheet.h"

G_BEGIN_DECLS

/**
 * sw_recipe_words:
 * @data: from sw_recipe_data()
 * Returns: (transfer full): the amounts as plain lines in the language of the one who reads: bath, then each step in
 *   order with its amount, metric, numbers as in files (never by locale), names as the dyer gave them
 */
char *sw_recipe_words (const char *data) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_recipe_changes:
 * @before, @after: from sw_recipe_data()
 * Returns: (transfer full): what differs by its numbers, whatever it is called, a line each ("Coral band: 12 mL, was
 *   10 mL"), translated; "" if nothing
 */
char *sw_recipe_changes (const char *before, const char *after) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_recipe_changes_of_words:
 * @before, @after: from sw_recipe_words()
 * The same for recipes of which only the words were kept. Those that were written in another language are compared line by
 * line, by their numbers alone; if they have not as many lines nothing is said.
 */
char *sw_recipe_changes_of_words (const char *before, const char *after) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
