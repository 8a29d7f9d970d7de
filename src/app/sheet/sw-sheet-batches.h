/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-day-session.h"
#include "sheet/sw-sheet.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* SwSheetBatches: the dyeings that were done, the newest first, and the button that notes one. */
#define SW_TYPE_SHEET_BATCHES (sw_sheet_batches_get_type ())
G_DECLARE_FINAL_TYPE (SwSheetBatches, sw_sheet_batches, SW, SHEET_BATCHES, AdwBin)

/* Once. The log of the session's day goes into the batch that is noted. */
void sw_sheet_batches_set_session (SwSheetBatches *self, SwDaySession *session);

/* @sheet: (nullable): what is noted; must live until the next call */
void sw_sheet_batches_show (SwSheetBatches *self, const SwSheet *sheet);

G_END_DECLS
