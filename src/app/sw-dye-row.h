/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/sw-entry.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* SwDyeRow: a dye pot in the list. Property "entry" (SwEntry). */
#define SW_TYPE_DYE_ROW (sw_dye_row_get_type ())
G_DECLARE_FINAL_TYPE (SwDyeRow, sw_dye_row, SW, DYE_ROW, GtkWidget)

G_END_DECLS
