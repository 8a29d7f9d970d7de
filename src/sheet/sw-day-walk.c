/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/sw-day-clock-private.h"

#include <glib/gi18n-lib.h>

/* Going through the day, with all pans or with the one that is in hand. */

#define CUT_SHORT_US (30 * (gint64) G_USEC_PER_SEC) /* less is not worth a question */

gboolean
sw_day_deed_is_per_pan (const SwDayDeed *deed)
{
  return deed->kind == SW_DEED_HEAT || deed->kind == SW_DEED_REST || deed->kind == SW_DEED_SET || deed->kind == SW_DEED_COOL;
}

/* Whether a timer is of what is in hand: of all pans, or of the one. */
static gboolean
is_in_hand (const SwDayClock *clock, const SwDayTimer *timer)
{
  return clock->hand == 0 || timer->pan == clock->hand;
}

/* Of the log: which pan's deed it is, if each is by itself. */
static char *
title_in_hand (const SwDayClock *clock, const char *title)
{
  if (clock->hand == 0)
    return g_strdup (title);
  /* Translators: a deed of the dye day, and the number of the pan in which it is done */
  return g_strdup_printf (_ ("%1$s, pan %2$u"), title, clock->hand);
}

static void
note_in_hand (SwDayClock *clock, SwMoment now, SwDayEventKind kind, const SwDayDeed *deed, double minutes)
{
  g_autofree char *title = title_in_hand (clock, deed->title);

  sw_day_clock_note (clock, now, kind, title, minutes);
}

static guint
pan_of_timer (const SwDayClock *clock, const SwDayDeed *deed)
{
  if (clock->hand > 0)
    return clock->hand;
  return clock->pans > 1 && sw_day_deed_is_per_pan (deed) ? 1 : 0;
}

void
sw_day_clock_enter (SwDayClock *clock, SwMoment now)
{
  const SwDayDeed *deed = sw_day_clock_deed (clock, 0);

  clock->entered_us = now.wall_us;
  if (deed != NULL && deed->waits && sw_day_clock_current_timer (clock, clock->hand) == NULL)
    sw_day_clock_start (clock, now, deed->title, deed->minutes, (int) clock->current, pan_of_timer (clock, deed));
}

/* What has rung was heard; what belongs to the deed is over, unless the next one is done beside it. */
static void
put_timers_away (SwDayClock *clock, gboolean keep_running)
{
  for (guint i = 0; i < clock->timers->len; i++)
    {
      SwDayTimer *timer = clock->timers->pdata[i];

      if (is_in_hand (clock, timer) && timer->deed >= 0 && timer->deed <= (int) clock->current &&
          (timer->rung || (timer->deed == (int) clock->current && !keep_running)))
        timer->put_away = TRUE;
      timer->quiet |= timer->rung;
    }
}

double
sw_day_clock_cut_short (const SwDayClock *clock, SwMoment now)
{
  const SwDayDeed *deed = sw_day_clock_deed (clock, 0), *next = sw_day_clock_deed (clock, 1);
  gint64 most = 0;

  if (deed == NULL || clock->ended || !sw_day_deed_is_per_pan (deed) || (next != NULL && next->beside))
    return 0;
  for (guint i = 0; i < clock->timers->len; i++)
    {
      const SwDayTimer *timer = clock->timers->pdata[i];

      if (timer->deed == (int) clock->current && !timer->put_away && is_in_hand (clock, timer))
        most = MAX (most, sw_day_timer_left (timer, now));
    }
  return most > CUT_SHORT_US ? (double) most / SW_DAY_MINUTE_US : 0;
}

static void
note_done (SwDayClock *clock, SwMoment now, const SwDayDeed *deed, double cut_short)
{
  if (cut_short > 0)
    note_in_hand (clock, now, SW_DAY_SKIPPED, deed, cut_short);
  else
    note_in_hand (clock, now, SW_DAY_DONE, deed, (double) (now.wall_us - clock->entered_us) / SW_DAY_MINUTE_US);
}

gboolean
sw_day_clock_done (SwDayClock *clock, SwMoment now)
{
  const SwDayDeed *deed = sw_day_clock_deed (clock, 0);
  const SwDayDeed *next = sw_day_clock_deed (clock, 1);
  double cut_short;

  sw_day_clock_look (clock, now);
  if (deed == NULL || clock->ended)
    return FALSE;
  if (sw_day_clock_is_unbegun (clock))
    clock->entered_us = now.wall_us;
  cut_short = sw_day_clock_cut_short (clock, now);
  put_timers_away (clock, next != NULL && next->beside);
  if (next != NULL && next->beside) /* the one before it is not done */
    note_in_hand (clock, now, SW_DAY_BEGUN, next, 0);
  else
    note_done (clock, now, deed, cut_short);
  clock->current++;
  sw_day_clock_enter (clock, now);
  return TRUE;
}

/* The deed that is left was begun by a slip: it begins anew when it is come to again. */
static void
drop_timers (SwDayClock *clock, int deed)
{
  for (guint i = clock->timers->len; i > 0; i--)
    {
      const SwDayTimer *timer = clock->timers->pdata[i - 1];

      if (timer->deed == deed && is_in_hand (clock, timer))
        g_ptr_array_remove_index (clock->timers, i - 1);
    }
}

gboolean
sw_day_clock_back (SwDayClock *clock, SwMoment now)
{
  sw_day_clock_look (clock, now);
  if (clock->current == 0 || clock->ended)
    return FALSE;

  drop_timers (clock, (int) clock->current);
  clock->current--;
  for (guint i = 0; i < clock->timers->len; i++)
    {
      SwDayTimer *timer = clock->timers->pdata[i];

      if (timer->deed == (int) clock->current && is_in_hand (clock, timer))
        timer->put_away = FALSE;
    }
  note_in_hand (clock, now, SW_DAY_BACK, sw_day_clock_deed (clock, 0), 0);
  sw_day_clock_enter (clock, now);
  return TRUE;
}
