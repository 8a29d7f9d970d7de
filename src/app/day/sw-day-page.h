/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-day-session.h"
#include "app/desk/sw-live.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwDayPage: the dye day, to be read across a kitchen and worked with wet
 * gloves: what to do now and next in large type, the timers side by side, one
 * large button.
 *
 * Properties "live" (SwLive) and "inches".
 * Actions: day.done, day.back, day.pause, day.longer, day.leave, day.end; with the keys Space, Backspace, P,
 * Plus and Escape.
 * Signal "left": back to the window, the day goes on.
 * Signal "finished": the day is over and wants to be noted.
 */
#define SW_TYPE_DAY_PAGE (sw_day_page_get_type ())
G_DECLARE_FINAL_TYPE (SwDayPage, sw_day_page, SW, DAY_PAGE, AdwBin)

/* Once. */
void sw_day_page_set_session (SwDayPage *self, SwDaySession *session);

/* The keys go to the large button. */
void sw_day_page_focus (SwDayPage *self);

G_END_DECLS
