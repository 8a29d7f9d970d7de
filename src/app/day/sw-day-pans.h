/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-day-session.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* Pans that are done each by itself, side by side: what each is at, and its timer. A click takes one in hand. Hidden while all are done together. */
#define SW_TYPE_DAY_PANS (sw_day_pans_get_type ())
G_DECLARE_FINAL_TYPE (SwDayPans, sw_day_pans, SW, DAY_PANS, AdwBin)

/* Once. */
void sw_day_pans_set_session (SwDayPans *self, SwDaySession *session);

/* The day has changed. */
void sw_day_pans_show (SwDayPans *self);

/* Time has gone by. */
void sw_day_pans_tick (SwDayPans *self);

G_END_DECLS
