/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-document.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* SwSheetBatchRow: one dyeing that was done: its day, amounts, log, how it came out, photographs. */
#define SW_TYPE_SHEET_BATCH_ROW (sw_sheet_batch_row_get_type ())
G_DECLARE_FINAL_TYPE (SwSheetBatchRow, sw_sheet_batch_row, SW, SHEET_BATCH_ROW, AdwExpanderRow)

GtkWidget *sw_sheet_batch_row_new (SwDocument *document, guint batch);
guint sw_sheet_batch_row_get_batch (SwSheetBatchRow *self);

/* As the document has it now. */
void sw_sheet_batch_row_show (SwSheetBatchRow *self);

G_END_DECLS
