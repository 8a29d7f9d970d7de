/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-subject.h"
#include "sheet/sw-sheet.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwSheetSetup: how the batch is done: how many skeins in how many pans, what
 * the dyer's scale and measure show, and the acid and the water that are
 * wanted, with a button each that puts them into the bath.
 */
#define SW_TYPE_SHEET_SETUP (sw_sheet_setup_get_type ())
G_DECLARE_FINAL_TYPE (SwSheetSetup, sw_sheet_setup, SW, SHEET_SETUP, AdwBin)

/* @subject: of the sheet's settings; once */
void sw_sheet_setup_set_subject (SwSheetSetup *self, SwSubject *subject);

/* What the settings lead to. */
void sw_sheet_setup_show (SwSheetSetup *self, const SwSheet *sheet);

G_END_DECLS
