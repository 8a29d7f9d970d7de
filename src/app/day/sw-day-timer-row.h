/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-day-session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* SwDayTimerRow: one of the timers that run side by side, with its own pause, more and stop. */
#define SW_TYPE_DAY_TIMER_ROW (sw_day_timer_row_get_type ())
G_DECLARE_FINAL_TYPE (SwDayTimerRow, sw_day_timer_row, SW, DAY_TIMER_ROW, GtkListBoxRow)

GtkWidget *sw_day_timer_row_new (SwDaySession *session, guint timer);
guint sw_day_timer_row_get_timer (SwDayTimerRow *self);

/* How it stands now; a timer that is gone leaves it as it was. */
void sw_day_timer_row_show (SwDayTimerRow *self);

G_END_DECLS
