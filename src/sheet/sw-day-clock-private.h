/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sheet/sw-day-clock.h"

G_BEGIN_DECLS

/* What the parts of the clock share. */

#define SW_DAY_MINUTE_US ((gint64) 60 * G_USEC_PER_SEC)

/* It is @now: if the clock on the wall was set, all times move with it. Before anything else that is done. */
void sw_day_clock_look (SwDayClock *clock, SwMoment now);

/* A line of the log. */
void sw_day_clock_note (SwDayClock *clock, SwMoment now, SwDayEventKind kind, const char *title, double minutes);

/* The deed under way is begun: its timer starts if it waits. */
void sw_day_clock_enter (SwDayClock *clock, SwMoment now);

/* As many places as there are pans, after their number has changed. */
void sw_day_clock_fit_pans (SwDayClock *clock);

G_END_DECLS
