/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-subject.h"
#include "sheet/sw-day.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* SwSheetDeedRow: one deed of the day: when it begins, what it is, and how long and how hot, to be changed here. */
#define SW_TYPE_SHEET_DEED_ROW (sw_sheet_deed_row_get_type ())
G_DECLARE_FINAL_TYPE (SwSheetDeedRow, sw_sheet_deed_row, SW, SHEET_DEED_ROW, GtkListBoxRow)

/* @settings: subject of the sheet's settings */
GtkWidget *sw_sheet_deed_row_new (SwSubject *settings, const SwDeed *deed);

/* Whether the row is about that deed; then it can show it. */
gboolean sw_sheet_deed_row_is_of (SwSheetDeedRow *self, const SwDeed *deed);
void sw_sheet_deed_row_show (SwSheetDeedRow *self, const SwSketch *sketch, const SwDeed *deed);
guint sw_sheet_deed_row_get_step (SwSheetDeedRow *self);

G_END_DECLS
