/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/sw-day-clock-private.h"

#include "sheet/sw-sheet.h"
#include "sheet/sw-step-title.h"

#include <math.h>

/* The two clocks may drift apart by that much from one look to the next without anyone having set one. */
#define SET_US ((gint64) 2 * G_USEC_PER_SEC)

void
sw_day_deed_free (SwDayDeed *deed)
{
  g_free (deed->title);
  g_free (deed);
}

void
sw_day_timer_free (SwDayTimer *timer)
{
  g_free (timer->label);
  g_free (timer);
}

void
sw_day_event_free (SwDayEvent *event)
{
  g_free (event->title);
  g_free (event);
}

SwDayClock *
sw_day_clock_new_empty (void)
{
  SwDayClock *clock = g_new0 (SwDayClock, 1);

  clock->deeds = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_day_deed_free);
  clock->timers = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_day_timer_free);
  clock->events = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_day_event_free);
  clock->places = g_array_new (FALSE, TRUE, sizeof (SwDayPlace));
  clock->pans = 1;
  clock->next_timer = 1;
  return clock;
}

void
sw_day_clock_free (SwDayClock *clock)
{
  if (clock == NULL)
    return;
  g_ptr_array_unref (clock->deeds);
  g_ptr_array_unref (clock->timers);
  g_ptr_array_unref (clock->events);
  g_array_unref (clock->places);
  g_free (clock);
}

/* Deeds */

static guint
count_before (const GPtrArray *deeds, SwDeedKind kind, guint step)
{
  guint n = 0;

  for (guint i = 0; i < deeds->len; i++)
    {
      const SwDayDeed *deed = deeds->pdata[i];

      n += deed->kind == kind && deed->step == step;
    }
  return n;
}

static char *
deed_title (const SwSketch *sketch, const SwDeed *deed)
{
  const SwStep *step = sw_sketch_find_step (sketch, deed->step);

  return step != NULL ? sw_step_title (sketch, step) : g_strdup (sw_deed_label (deed->kind));
}

static GPtrArray *
deeds_of (const SwSketch *sketch)
{
  GPtrArray *deeds = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_day_deed_free);
  g_autofree SwDeed *day = NULL;
  gsize n;

  day = sw_day_new (sketch, &n);
  for (gsize i = 0; i < n; i++)
    {
      SwDayDeed *deed = g_new0 (SwDayDeed, 1);

      deed->kind = day[i].kind;
      deed->step = day[i].step;
      deed->nth = count_before (deeds, deed->kind, deed->step);
      deed->pour = day[i].pour;
      deed->minutes = day[i].minutes;
      deed->temperature_c = day[i].temperature_c;
      deed->waits = day[i].waits && day[i].minutes > 0;
      deed->beside = i > 0 && day[i].start_min < day[i - 1].start_min + day[i - 1].minutes - 1e-9;
      deed->title = deed_title (sketch, &day[i]);
      g_ptr_array_add (deeds, deed);
    }
  return deeds;
}

static gboolean
same_deed (const SwDayDeed *a, const SwDayDeed *b)
{
  return a->kind == b->kind && a->step == b->step && a->nth == b->nth;
}

static int
find_deed (const GPtrArray *deeds, const SwDayDeed *wanted)
{
  for (guint i = 0; i < deeds->len; i++)
    if (same_deed (deeds->pdata[i], wanted))
      return (int) i;
  return -1;
}

gboolean
sw_day_clock_fits (const SwDayClock *clock, const SwSketch *sketch)
{
  g_autoptr (GPtrArray) deeds = deeds_of (sketch);

  if (deeds->len != clock->deeds->len)
    return FALSE;
  for (guint i = 0; i < deeds->len; i++)
    if (!same_deed (deeds->pdata[i], clock->deeds->pdata[i]))
      return FALSE;
  return TRUE;
}

/* Where the day stands among other deeds: at the same one, or the first after it that is still there. */
static guint
place_among (const SwDayClock *clock, guint place, const GPtrArray *deeds)
{
  for (guint i = place; i < clock->deeds->len; i++)
    {
      int at = find_deed (deeds, clock->deeds->pdata[i]);

      if (at >= 0)
        return (guint) at;
    }
  return deeds->len;
}

static guint
pans_of (const SwSketch *sketch)
{
  g_autoptr (SwSheet) sheet = sw_sheet_new (sketch, NULL);

  return (guint) sheet->pans;
}

void
sw_day_clock_follow (SwDayClock *clock, const SwSketch *sketch)
{
  g_autoptr (GPtrArray) deeds = deeds_of (sketch);
  guint current = place_among (clock, clock->current, deeds);

  for (guint i = 0; i < clock->timers->len; i++)
    {
      SwDayTimer *timer = clock->timers->pdata[i];

      if (timer->deed >= 0)
        timer->deed = find_deed (deeds, clock->deeds->pdata[timer->deed]);
    }
  for (guint i = 0; i < clock->places->len; i++)
    {
      SwDayPlace *place = &g_array_index (clock->places, SwDayPlace, i);

      place->deed = place_among (clock, place->deed, deeds);
    }
  g_ptr_array_unref (clock->deeds);
  clock->deeds = g_steal_pointer (&deeds);
  clock->current = current;
  clock->pans = pans_of (sketch);
  sw_day_clock_fit_pans (clock);
}

const SwDayDeed *
sw_day_clock_deed (const SwDayClock *clock, guint ahead)
{
  return clock->current + ahead < clock->deeds->len ? clock->deeds->pdata[clock->current + ahead] : NULL;
}

/* Time */

void
sw_day_clock_note (SwDayClock *clock, SwMoment now, SwDayEventKind kind, const char *title, double minutes)
{
  SwDayEvent *event;

  if (clock->events->len >= SW_DAY_MAX_EVENTS)
    return;
  event = g_new0 (SwDayEvent, 1);
  event->wall_us = now.wall_us;
  event->kind = kind;
  event->title = g_strdup (title != NULL ? title : "");
  event->minutes = minutes;
  g_ptr_array_add (clock->events, event);
}

/* All that is kept in wall-clock time moves with the clock that was set. */
static void
shift (SwDayClock *clock, SwMoment now, gint64 by_us)
{
  for (guint i = 0; i < clock->timers->len; i++)
    ((SwDayTimer *) clock->timers->pdata[i])->end_us += by_us;
  clock->entered_us += by_us;
  for (guint i = 0; i < clock->places->len; i++)
    g_array_index (clock->places, SwDayPlace, i).entered_us += by_us;
  sw_day_clock_note (clock, now, SW_DAY_CLOCK_SET, "", (double) by_us / SW_DAY_MINUTE_US);
}

void
sw_day_clock_look (SwDayClock *clock, SwMoment now)
{
  gint64 set_us = 0;

  if (clock->seen_steady)
    set_us = (now.wall_us - clock->seen.wall_us) - (now.steady_us - clock->seen.steady_us);
  else if (now.wall_us < clock->seen.wall_us)
    set_us = now.wall_us - clock->seen.wall_us;
  clock->seen = now;
  clock->seen_steady = TRUE;
  if (ABS (set_us) > SET_US)
    shift (clock, now, set_us);
}

gint64
sw_day_timer_left (const SwDayTimer *timer, SwMoment now)
{
  return timer->paused ? timer->left_us : timer->end_us - now.wall_us;
}

/* Timers */

static SwDayTimer *
timer_of (const SwDayClock *clock, guint id)
{
  for (guint i = 0; i < clock->timers->len; i++)
    {
      SwDayTimer *timer = clock->timers->pdata[i];

      if (timer->id == id && !timer->put_away)
        return timer;
    }
  return NULL;
}

const SwDayTimer *
sw_day_clock_find (const SwDayClock *clock, guint id)
{
  return timer_of (clock, id);
}

const SwDayTimer *
sw_day_clock_current_timer (const SwDayClock *clock, guint pan)
{
  for (guint i = 0; i < clock->timers->len; i++)
    {
      const SwDayTimer *timer = clock->timers->pdata[i];

      if (timer->deed == (int) clock->current && !timer->put_away && (pan == 0 || timer->pan == pan))
        return timer;
    }
  return NULL;
}

guint
sw_day_clock_start (SwDayClock *clock, SwMoment now, const char *label, double minutes, int deed, guint pan)
{
  SwDayTimer *timer;

  sw_day_clock_look (clock, now);
  if (clock->timers->len >= SW_DAY_MAX_TIMERS || !(minutes > 0) || minutes > SW_DAY_MAX_MINUTES)
    return 0;
  timer = g_new0 (SwDayTimer, 1);
  timer->id = clock->next_timer++;
  timer->deed = deed;
  timer->pan = pan;
  timer->label = g_strdup (label != NULL ? label : "");
  timer->length_us = llround (minutes * SW_DAY_MINUTE_US);
  timer->end_us = now.wall_us + timer->length_us;
  g_ptr_array_add (clock->timers, timer);
  sw_day_clock_note (clock, now, SW_DAY_TIMER, timer->label, minutes);
  return timer->id;
}

gboolean
sw_day_clock_pause (SwDayClock *clock, SwMoment now, guint id)
{
  SwDayTimer *timer = timer_of (clock, id);

  sw_day_clock_look (clock, now);
  if (timer == NULL || timer->paused)
    return FALSE;
  timer->left_us = timer->end_us - now.wall_us;
  timer->paused = TRUE;
  sw_day_clock_note (clock, now, SW_DAY_PAUSED, timer->label, 0);
  return TRUE;
}

gboolean
sw_day_clock_resume (SwDayClock *clock, SwMoment now, guint id)
{
  SwDayTimer *timer = timer_of (clock, id);

  sw_day_clock_look (clock, now);
  if (timer == NULL || !timer->paused)
    return FALSE;
  timer->end_us = now.wall_us + timer->left_us;
  timer->paused = FALSE;
  sw_day_clock_note (clock, now, SW_DAY_RESUMED, timer->label, 0);
  return TRUE;
}

/* From its end if that is to come, from now if it is over. */
gboolean
sw_day_clock_longer (SwDayClock *clock, SwMoment now, guint id, double minutes)
{
  SwDayTimer *timer = timer_of (clock, id);
  gint64 added = llround (minutes * SW_DAY_MINUTE_US);

  sw_day_clock_look (clock, now);
  if (timer == NULL || !(minutes > 0) || timer->length_us + added > (gint64) (SW_DAY_MAX_MINUTES * SW_DAY_MINUTE_US))
    return FALSE;
  timer->length_us += added;
  timer->left_us = MAX (timer->left_us, 0) + added;
  timer->end_us = MAX (timer->end_us, now.wall_us) + added;
  timer->rung = timer->quiet = FALSE;
  sw_day_clock_note (clock, now, SW_DAY_LONGER, timer->label, minutes);
  return TRUE;
}

gboolean
sw_day_clock_stop (SwDayClock *clock, SwMoment now, guint id)
{
  SwDayTimer *timer = timer_of (clock, id);

  sw_day_clock_look (clock, now);
  if (timer == NULL)
    return FALSE;
  timer->put_away = timer->quiet = TRUE;
  sw_day_clock_note (clock, now, SW_DAY_STOPPED, timer->label, 0);
  return TRUE;
}

GPtrArray *
sw_day_clock_tick (SwDayClock *clock, SwMoment now)
{
  GPtrArray *rung = NULL;

  sw_day_clock_look (clock, now);
  for (guint i = 0; i < clock->timers->len; i++)
    {
      SwDayTimer *timer = clock->timers->pdata[i];

      if (timer->put_away || timer->paused || timer->rung || timer->end_us > now.wall_us)
        continue;
      timer->rung = TRUE;
      sw_day_clock_note (clock, now, SW_DAY_UP, timer->label, (double) (now.wall_us - timer->end_us) / SW_DAY_MINUTE_US);
      if (rung == NULL)
        rung = g_ptr_array_new ();
      g_ptr_array_add (rung, timer);
    }
  return rung;
}

gboolean
sw_day_clock_is_ringing (const SwDayClock *clock)
{
  for (guint i = 0; i < clock->timers->len; i++)
    {
      const SwDayTimer *timer = clock->timers->pdata[i];

      if (timer->rung && !timer->quiet && !timer->put_away)
        return TRUE;
    }
  return FALSE;
}

void
sw_day_clock_hush (SwDayClock *clock)
{
  for (guint i = 0; i < clock->timers->len; i++)
    {
      SwDayTimer *timer = clock->timers->pdata[i];

      timer->quiet |= timer->rung;
    }
}

/* Beginning and end */

void
sw_day_clock_end (SwDayClock *clock, SwMoment now)
{
  sw_day_clock_look (clock, now);
  if (clock->ended)
    return;
  for (guint i = 0; i < clock->timers->len; i++)
    ((SwDayTimer *) clock->timers->pdata[i])->put_away = TRUE;
  clock->ended = TRUE;
  sw_day_clock_note (clock, now, SW_DAY_ENDED, "", 0);
}

SwDayClock *
sw_day_clock_new (const SwSketch *sketch, SwMoment now)
{
  SwDayClock *clock = sw_day_clock_new_empty ();

  g_ptr_array_unref (clock->deeds);
  clock->deeds = deeds_of (sketch);
  clock->pans = pans_of (sketch);
  clock->begun_us = now.wall_us;
  clock->seen = now;
  clock->seen_steady = TRUE;
  sw_day_clock_note (clock, now, SW_DAY_BEGUN, sketch->title, 0);
  sw_day_clock_enter (clock, now);
  return clock;
}

void
sw_day_clock_wake (SwDayClock *clock, SwMoment now)
{
  clock->seen_steady = FALSE;
  sw_day_clock_look (clock, now);
  sw_day_clock_note (clock, now, SW_DAY_REOPENED, "", 0);
}
