/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-subject.h"
#include "sheet/sw-sheet.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* SwSheetCost: what a batch costs by the dyer's own prices, and what a skein would have to bring. Nothing is reckoned with that was not given. */
#define SW_TYPE_SHEET_COST (sw_sheet_cost_get_type ())
G_DECLARE_FINAL_TYPE (SwSheetCost, sw_sheet_cost, SW, SHEET_COST, AdwBin)

/* @subject: of the sheet's settings; once */
void sw_sheet_cost_set_subject (SwSheetCost *self, SwSubject *subject);
void sw_sheet_cost_show (SwSheetCost *self, const SwSheet *sheet);

G_END_DECLS
