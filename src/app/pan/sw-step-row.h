/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-entry.h"
#include "app/desk/sw-live.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Where a dragged step would go. */
typedef enum
{
  SW_DROP_NONE,
  SW_DROP_ABOVE,
  SW_DROP_BELOW,
} SwDrop;

/**
 * SwStepRow: a step in the list: its kind, name and amounts, and under them
 * the running forecast. The amounts can be changed where they stand.
 * Properties "entry" (SwEntry), "live" (SwLive) and "inches" (US customary units).
 *
 * Signal "touched": the keyboard or the pointer went into one of the amounts.
 */
#define SW_TYPE_STEP_ROW (sw_step_row_get_type ())
G_DECLARE_FINAL_TYPE (SwStepRow, sw_step_row, SW, STEP_ROW, GtkWidget)

SwEntry *sw_step_row_get_entry (SwStepRow *self); /* (nullable) */

void sw_step_row_set_drop (SwStepRow *self, SwDrop drop);

G_END_DECLS
