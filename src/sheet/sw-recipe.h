/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sheet/sw-sheet.h"

G_BEGIN_DECLS

/**
 * sw_sheet_recipe:
 * Returns: (transfer full): the amounts as plain lines for the memory of a batch: bath, then each step in
 *   order with its amount, metric, numbers as in files (never by locale), names as the dyer gave them
 */
char *sw_sheet_recipe (const SwSheet *sheet) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_recipe_changes:
 * @before, @after: from sw_sheet_recipe()
 * Returns: (transfer full): what differs, a line each ("Coral band: 12 mL, was 10 mL"), translated; "" if nothing
 */
char *sw_recipe_changes (const char *before, const char *after) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
