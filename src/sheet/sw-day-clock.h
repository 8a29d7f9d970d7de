/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sheet/sw-day.h"

G_BEGIN_DECLS

/*
 * The dye day under way: which deed is being done, the timers that run side
 * by side, and what was really done and when. It asks no clock: whoever uses
 * it tells it the moment. It can be written down at any time and taken up
 * again by another program, so all that lasts is in wall-clock time.
 */

/**
 * SwMoment: now, by two clocks.
 * @wall_us: since 1970, UTC; a person may set it forward or back
 * @steady_us: from any beginning; nobody sets it, and it runs on while the machine sleeps.
 *   When the two disagree about how long it has been, the wall clock was set,
 *   and timers go on as if it had not been
 */
typedef struct
{
  gint64 wall_us, steady_us;
} SwMoment;

/* One deed of the day as it is being done; the drawing may change meanwhile. */
typedef struct
{
  SwDeedKind kind;
  guint step; /* id; 0 */
  guint nth;  /* of the deeds of that kind and step, from 0: rinses have no other name */
  guint pour; /* number, from 1; 0 */
  double minutes;
  double temperature_c;
  gboolean waits;
  gboolean beside; /* is done while the one before it still runs by itself */
  char *title;     /* for people */
} SwDayDeed;

/**
 * SwDayTimer:
 * @deed: index of the deed that it belongs to; -1: the dyer's own
 * @pan: from 1, if each pan has its own; else 0
 * @end_us: wall clock, while it is not paused
 * @left_us: while it is paused
 * @rung: its end has been told of
 * @quiet: somebody heard it, or it need not be heard any more
 * @put_away: the deed was done; kept in case it was a slip
 */
typedef struct
{
  guint id;
  int deed;
  guint pan;
  char *label;
  gint64 length_us;
  gint64 end_us, left_us;
  gboolean paused, rung, quiet, put_away;
} SwDayTimer;

typedef enum
{
  SW_DAY_BEGUN,
  SW_DAY_DONE, /* minutes: how long it took */
  SW_DAY_BACK,
  SW_DAY_TIMER, /* minutes: its length */
  SW_DAY_PAUSED,
  SW_DAY_RESUMED,
  SW_DAY_LONGER, /* minutes: added */
  SW_DAY_UP,     /* minutes: how late it was told */
  SW_DAY_STOPPED,
  SW_DAY_CLOCK_SET, /* minutes: by how much */
  SW_DAY_REOPENED,
  SW_DAY_ENDED,
  SW_DAY_SKIPPED, /* minutes: that were left of the wait */
  SW_DAY_PARTED,
  SW_N_DAY_EVENTS,
} SwDayEventKind;

typedef struct
{
  gint64 wall_us;
  SwDayEventKind kind;
  char *title; /* of the deed or timer; may be empty */
  double minutes;
} SwDayEvent;

/* Most that a day may hold, so that a file of one is bounded. */
#define SW_DAY_MAX_DEEDS (SW_MAX_STEPS + 40)
#define SW_DAY_MAX_TIMERS 200
#define SW_DAY_MAX_EVENTS 20000
#define SW_DAY_MAX_MINUTES 40320.0

/**
 * SwDayPlace: where a pan stands that is done by itself
 * @deed: index of the deed that is being done
 * @entered_us: when that was begun; 0: not yet
 */
typedef struct
{
  guint deed;
  gint64 entered_us;
} SwDayPlace;

/**
 * SwDayClock: read by all, changed by the functions below and by whoever reads one from a file.
 * @current: index of the deed that is being done; n deeds when all are done. Of the pan in hand, if each is by itself
 * @hand: 0: all pans are done side by side; else from 1, the pan in hand
 * @places: of SwDayPlace, for each pan, if each is by itself; that of the pan in hand is out of date
 */
typedef struct
{
  GPtrArray *deeds;  /* of SwDayDeed */
  GPtrArray *timers; /* of SwDayTimer */
  GPtrArray *events; /* of SwDayEvent, the oldest first */
  guint current;
  guint pans;
  guint hand;
  GArray *places;
  guint next_timer;
  gint64 begun_us;
  gint64 entered_us; /* when the current deed was begun */
  gboolean ended;
  SwMoment seen;        /* the last moment it was told */
  gboolean seen_steady; /* whether that knows the steady clock: not right after reading it from a file */
} SwDayClock;

/**
 * sw_day_clock_new: begins the day with its first deed; a deed that waits starts its timer when it is come to
 */
SwDayClock *sw_day_clock_new (const SwSketch *sketch, SwMoment now) G_GNUC_WARN_UNUSED_RESULT;

/* Nothing in it yet: to be filled from a file. */
SwDayClock *sw_day_clock_new_empty (void) G_GNUC_WARN_UNUSED_RESULT;
void sw_day_clock_free (SwDayClock *clock);

/**
 * sw_day_clock_wake:
 * Goes on after it was read from a file. Timers have run on meanwhile; if the
 * wall clock stands before what was last seen, it was set back, and they go on
 * from there.
 */
void sw_day_clock_wake (SwDayClock *clock, SwMoment now);

/**
 * sw_day_clock_follow: the drawing has changed: other deeds, the same day
 * The deed that is being done stays if it is still there, else the next that
 * is. Timers run on, also those of deeds that are gone.
 */
void sw_day_clock_follow (SwDayClock *clock, const SwSketch *sketch);

/* Whether the deeds are those of the sketch: kinds, steps and order. */
gboolean sw_day_clock_fits (const SwDayClock *clock, const SwSketch *sketch);

/* Returns: (nullable): the deed that is being done, and those that come after; NULL past the end */
const SwDayDeed *sw_day_clock_deed (const SwDayClock *clock, guint ahead);

/* Whether each pan has its own time for the deed: what is soaked or washed is so all at once. */
gboolean sw_day_deed_is_per_pan (const SwDayDeed *deed);

/**
 * sw_day_clock_done: on to the next deed
 * The timers of what was done are put away, unless the next deed is done
 * while they run. Returns: FALSE if all is done already
 */
gboolean sw_day_clock_done (SwDayClock *clock, SwMoment now);

/**
 * sw_day_clock_cut_short:
 * Returns: minutes that are left of heating, rest, set or cooling, if sw_day_clock_done() would skip them; 0 if it would not
 */
double sw_day_clock_cut_short (const SwDayClock *clock, SwMoment now);

/* Back to the deed before, with the timers it had. Returns: FALSE at the first one */
gboolean sw_day_clock_back (SwDayClock *clock, SwMoment now);

/*
 * Pans by themselves, one begun later than the other: from when they are
 * parted each has its own place in the day, and what is done, gone back to or
 * cut short is so for the pan in hand.
 */

/* Several pans are done side by side, and what is done now is done in each. */
gboolean sw_day_clock_can_part (const SwDayClock *clock);

/* The first pan goes on, in hand; the others stay where all are. Returns: FALSE if sw_day_clock_can_part() says so */
gboolean sw_day_clock_part (SwDayClock *clock, SwMoment now);

/* Another pan in hand. Returns: FALSE if there is none such, or it is so already */
gboolean sw_day_clock_take (SwDayClock *clock, SwMoment now, guint pan);

/* Whether the pan in hand has come to something that waits, which is not begun: sw_day_clock_begin() starts its timer. */
gboolean sw_day_clock_is_unbegun (const SwDayClock *clock);
gboolean sw_day_clock_begin (SwDayClock *clock, SwMoment now);

/* What pan @pan, from 1, is at. Returns: (nullable): NULL past the end */
const SwDayDeed *sw_day_clock_pan_deed (const SwDayClock *clock, guint pan);

/* Its timer for that. Returns: (nullable) */
const SwDayTimer *sw_day_clock_pan_timer (const SwDayClock *clock, guint pan);

/* The first pan by itself that has something left to do; 0 if none has. */
guint sw_day_clock_unfinished_pan (const SwDayClock *clock);

/**
 * sw_day_clock_start:
 * @deed: index of the deed it is for, or -1
 * @pan: from 1, or 0
 * Returns: the new timer's id; 0 if there are too many, or the minutes are none
 */
guint sw_day_clock_start (SwDayClock *clock, SwMoment now, const char *label, double minutes, int deed, guint pan);

/* Each returns FALSE if there is no such timer, or it is so already. */
gboolean sw_day_clock_pause (SwDayClock *clock, SwMoment now, guint id);
gboolean sw_day_clock_resume (SwDayClock *clock, SwMoment now, guint id);
gboolean sw_day_clock_longer (SwDayClock *clock, SwMoment now, guint id, double minutes);
gboolean sw_day_clock_stop (SwDayClock *clock, SwMoment now, guint id);

/* Returns: (nullable) */
const SwDayTimer *sw_day_clock_find (const SwDayClock *clock, guint id);

/* The first timer of the deed that is being done; of pan @pan if that is not 0. Returns: (nullable) */
const SwDayTimer *sw_day_clock_current_timer (const SwDayClock *clock, guint pan);

/* What is left of it, us; below 0: how long it is over. */
gint64 sw_day_timer_left (const SwDayTimer *timer, SwMoment now);

/**
 * sw_day_clock_tick: it is now that late
 * Returns: (nullable) (transfer container): timers that have come to their end since it was last asked, once each
 */
GPtrArray *sw_day_clock_tick (SwDayClock *clock, SwMoment now);

/* Whether an end was told of that nobody has heard. */
gboolean sw_day_clock_is_ringing (const SwDayClock *clock);
void sw_day_clock_hush (SwDayClock *clock);

/* The day is over, whatever was left to do. */
void sw_day_clock_end (SwDayClock *clock, SwMoment now);

/**
 * sw_day_event_text:
 * Returns: (transfer full): "10:43 Soak the skeins: done after 31 min", local time, translated
 */
char *sw_day_event_text (const SwDayEvent *event) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): all events, a line each, each with its day and time */
char *sw_day_clock_log (const SwDayClock *clock) G_GNUC_WARN_UNUSED_RESULT;

/* Words of files: "presoak", "pour" ... and "begun", "done" ...; -1 for a word that is none. */
const char *sw_deed_kind_name (SwDeedKind kind);
int sw_deed_kind_from_name (const char *name);
const char *sw_day_event_name (SwDayEventKind kind);
int sw_day_event_from_name (const char *name);

void sw_day_deed_free (SwDayDeed *deed);
void sw_day_timer_free (SwDayTimer *timer);
void sw_day_event_free (SwDayEvent *event);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwDayClock, sw_day_clock_free)

G_END_DECLS
