/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-entry.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * SwDyeRow: a dye pot in the list. A file with a spectrum dropped on it gives
 * it that colour. Properties "entry" (SwEntry) and "current" (whether it is
 * the pot to pour from).
 */
#define SW_TYPE_DYE_ROW (sw_dye_row_get_type ())
G_DECLARE_FINAL_TYPE (SwDyeRow, sw_dye_row, SW, DYE_ROW, GtkWidget)

SwEntry *sw_dye_row_get_entry (SwDyeRow *self); /* (nullable) */

G_END_DECLS
