/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/sw-entry.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* SwStepRow: a step in the list. Properties "entry" (SwEntry) and "inches" (US customary units). */
#define SW_TYPE_STEP_ROW (sw_step_row_get_type ())
G_DECLARE_FINAL_TYPE (SwStepRow, sw_step_row, SW, STEP_ROW, GtkWidget)

G_END_DECLS
