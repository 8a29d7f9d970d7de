/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sheet/sw-sheet.h"

G_BEGIN_DECLS

/* The parts of a sheet that fill themselves in turn. */

/* Water and acid: liquors, what later steps add, and the batch's totals of them. */
void sw_sheet_fill_liquor (SwSheet *sheet);

/* Shares of mass and of colour strength; the amounts are there. */
void sw_sheet_fill_shares (SwSheet *sheet);

/* Of the drawing's amount, what a pan with that many skeins gets. */
double sw_sheet_part (const SwSheet *sheet, gsize skeins);

/* Over the real pans. */
SwAmount sw_sheet_over_pans (const SwSheet *sheet, SwAmount fuller, SwAmount lesser);

/* Fibre takes room in the pan: cm3 of what a pan with that many skeins holds. */
double sw_sheet_fibre_cm3 (const SwSheet *sheet, gsize skeins);

G_END_DECLS
