/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/sheet/sw-sheet-line.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwSheetTable: lines of amounts under headers, in a frame. What it shows is
 * given anew as a whole; lines that stay are kept, so that neither the focus
 * nor what is chosen is lost while figures change.
 *
 * Signal "chosen" (guint id): a line with an id was chosen.
 */
#define SW_TYPE_SHEET_TABLE (sw_sheet_table_get_type ())
G_DECLARE_FINAL_TYPE (SwSheetTable, sw_sheet_table, SW, SHEET_TABLE, AdwBin)

/**
 * sw_sheet_table_set_headers:
 * @first: of the first column, may be empty
 * @headers: (array length=n): of the figures, translated; at most SW_SHEET_MAX_CELLS
 * To be called once; without any header the line of headers is left out.
 */
void sw_sheet_table_set_headers (SwSheetTable *self, const char *first, const char *const *headers, guint n);

/* @name: of the table, for a screen reader */
void sw_sheet_table_set_name (SwSheetTable *self, const char *name);

/* Lines are added in order between these two; what is left of the former ones goes. */
void sw_sheet_table_begin (SwSheetTable *self);
void sw_sheet_table_add (SwSheetTable *self, const SwSheetWords *words);
void sw_sheet_table_end (SwSheetTable *self);

/* The line with that id is shown as chosen, without the signal; none if there is no such line. */
void sw_sheet_table_choose (SwSheetTable *self, guint id);

G_END_DECLS
