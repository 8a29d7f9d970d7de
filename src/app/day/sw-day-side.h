/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-day-session.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwDaySide: what runs beside the deed that is being done: other timers, those
 * of other pans, timers of the dyer's own; and the log.
 * Signal "started": a timer was started; the keys may go back to the large button.
 */
#define SW_TYPE_DAY_SIDE (sw_day_side_get_type ())
G_DECLARE_FINAL_TYPE (SwDaySide, sw_day_side, SW, DAY_SIDE, AdwBin)

/* Once. */
void sw_day_side_set_session (SwDaySide *self, SwDaySession *session);

/* Other timers than before, or more of the log. */
void sw_day_side_show (SwDaySide *self);

/* Some time has gone by. */
void sw_day_side_tick (SwDaySide *self);

G_END_DECLS
