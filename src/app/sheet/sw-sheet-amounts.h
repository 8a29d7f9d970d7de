/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-units.h"
#include "sheet/sw-sheet.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwSheetAmounts: what to weigh, to measure and to pour, with a remark beside
 * whatever it concerns.
 * Signal "step-chosen" (guint id).
 */
#define SW_TYPE_SHEET_AMOUNTS (sw_sheet_amounts_get_type ())
G_DECLARE_FINAL_TYPE (SwSheetAmounts, sw_sheet_amounts, SW, SHEET_AMOUNTS, AdwBin)

void sw_sheet_amounts_show (SwSheetAmounts *self, const SwSheet *sheet, SwSystem system);

/* Shows a step as chosen; 0 none. */
void sw_sheet_amounts_choose (SwSheetAmounts *self, guint step);

G_END_DECLS
