/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-document.h"
#include "sheet/sw-day-clock.h"

G_BEGIN_DECLS

/**
 * SwDaySession: the dye day of one document: its clock, kept in a file at
 * each change, taken up again when the document is opened by the next
 * program. Without a day under way it only looks for one.
 *
 * A day belongs to the document's file; before there is one, to its title,
 * as long as its deeds are the same. When the drawing is saved under a name,
 * the day goes with it.
 *
 * Property, read-only: "state" (SwDayState as int).
 *
 * Signal "changed": another deed, timer or line of the log.
 * Signal "tick": some time has gone by, a few times a second while a timer is there.
 * Signal "rang" (guint timer): its time is up; told once.
 * Signal "found": a day was taken up again.
 * Signal "failed" (const char *sentence): the day could not be read or kept; once until it can be again.
 */
#define SW_TYPE_DAY_SESSION (sw_day_session_get_type ())
G_DECLARE_FINAL_TYPE (SwDaySession, sw_day_session, SW, DAY_SESSION, GObject)

typedef enum
{
  SW_DAY_STATE_NONE,
  SW_DAY_STATE_UNDER_WAY,
  SW_DAY_STATE_OVER, /* the log is there, not yet noted with a batch */
} SwDayState;

/**
 * SwDayNow: asks the clocks
 */
typedef SwMoment (*SwDayNow) (gpointer data);

/**
 * sw_day_session_new:
 * @folder: where days are kept; made when one is begun
 */
SwDaySession *sw_day_session_new (SwDocument *document, const char *folder) G_GNUC_WARN_UNUSED_RESULT;

/* For tests: other clocks than the machine's. */
void sw_day_session_set_now (SwDaySession *self, SwDayNow now, gpointer data);

SwMoment sw_day_session_now (SwDaySession *self);
SwDayState sw_day_session_get_state (SwDaySession *self);
SwDocument *sw_day_session_get_document (SwDaySession *self);

/* (transfer none) (nullable): NULL without a day */
const SwDayClock *sw_day_session_get_clock (SwDaySession *self);

/* Begins the day; one that is over is forgotten. */
void sw_day_session_begin (SwDaySession *self);

/* See sw-day-clock.h for what each does. What has rung counts as heard with each of them. */
void sw_day_session_done (SwDaySession *self);
void sw_day_session_back (SwDaySession *self);
void sw_day_session_toggle_pause (SwDaySession *self, guint timer);
void sw_day_session_longer (SwDaySession *self, guint timer, double minutes);
void sw_day_session_stop (SwDaySession *self, guint timer);
void sw_day_session_hush (SwDaySession *self);
void sw_day_session_end (SwDaySession *self);

/* A timer of the dyer's own. */
void sw_day_session_start (SwDaySession *self, const char *label, double minutes);

/* The next pan's timer for the deed that is being done; sw_day_session_next_pan() says which pan, 0 if all run. */
void sw_day_session_start_pan (SwDaySession *self);
guint sw_day_session_next_pan (SwDaySession *self);

/* Pans by themselves: see sw-day-clock.h. */
void sw_day_session_part (SwDaySession *self);
void sw_day_session_take (SwDaySession *self, guint pan);
void sw_day_session_begin_deed (SwDaySession *self);

/* The day was noted with its batch, or given up: it and its file go. */
void sw_day_session_forget (SwDaySession *self);

/* Looks at the clocks now, as it does by itself a few times a second. */
void sw_day_session_look (SwDaySession *self);

G_END_DECLS
