/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/sw-day-clock-private.h"

/*
 * Pans that are not done side by side: each has a place of its own in the
 * day. That of the pan in hand is the clock's own, and its entry in the list
 * is written when another pan is taken.
 */

static SwDayPlace *
place_at (const SwDayClock *clock, guint pan)
{
  return &g_array_index (clock->places, SwDayPlace, pan - 1);
}

static void
put_down (SwDayClock *clock)
{
  if (clock->hand > 0)
    *place_at (clock, clock->hand) = (SwDayPlace){ clock->current, clock->entered_us };
}

static void
pick_up (SwDayClock *clock, guint pan)
{
  clock->hand = pan;
  clock->current = place_at (clock, pan)->deed;
  clock->entered_us = place_at (clock, pan)->entered_us;
}

/* The deed with which a pan begins. */
static guint
first_in_pan (const SwDayClock *clock)
{
  guint i = 0;

  while (i < clock->deeds->len && !sw_deed_is_in_pan (((const SwDayDeed *) clock->deeds->pdata[i])->kind))
    i++;
  return i;
}

gboolean
sw_day_clock_can_part (const SwDayClock *clock)
{
  const SwDayDeed *deed = sw_day_clock_deed (clock, 0);

  return !clock->ended && clock->hand == 0 && clock->pans > 1 && deed != NULL && sw_deed_is_in_pan (deed->kind);
}

/* Of the deed under way; pans that have no timer yet for what waits have not begun it. */
gboolean
sw_day_clock_part (SwDayClock *clock, SwMoment now)
{
  const gboolean waits = sw_day_clock_can_part (clock) && sw_day_clock_deed (clock, 0)->waits;

  sw_day_clock_look (clock, now);
  if (!sw_day_clock_can_part (clock))
    return FALSE;
  g_array_set_size (clock->places, clock->pans);
  for (guint pan = 1; pan <= clock->pans; pan++)
    {
      const gboolean begun = pan == 1 || (waits && sw_day_clock_current_timer (clock, pan) != NULL);

      *place_at (clock, pan) = (SwDayPlace){ clock->current, begun ? clock->entered_us : 0 };
    }
  pick_up (clock, 1);
  sw_day_clock_note (clock, now, SW_DAY_PARTED, "", 0);
  return TRUE;
}

gboolean
sw_day_clock_take (SwDayClock *clock, SwMoment now, guint pan)
{
  sw_day_clock_look (clock, now);
  if (clock->ended || clock->hand == 0 || pan == 0 || pan > clock->pans || pan == clock->hand)
    return FALSE;
  put_down (clock);
  pick_up (clock, pan);
  if (clock->entered_us == 0 && !sw_day_clock_is_unbegun (clock)) /* the dyer's own work begins with that */
    clock->entered_us = now.wall_us;
  return TRUE;
}

gboolean
sw_day_clock_is_unbegun (const SwDayClock *clock)
{
  const SwDayDeed *deed = sw_day_clock_deed (clock, 0);

  return clock->hand > 0 && clock->entered_us == 0 && deed != NULL && deed->waits;
}

gboolean
sw_day_clock_begin (SwDayClock *clock, SwMoment now)
{
  sw_day_clock_look (clock, now);
  if (clock->ended || !sw_day_clock_is_unbegun (clock))
    return FALSE;
  sw_day_clock_enter (clock, now);
  return TRUE;
}

const SwDayDeed *
sw_day_clock_pan_deed (const SwDayClock *clock, guint pan)
{
  guint deed = clock->current;

  g_return_val_if_fail (pan >= 1 && pan <= clock->pans, NULL);

  if (clock->hand > 0 && pan != clock->hand)
    deed = place_at (clock, pan)->deed;
  return deed < clock->deeds->len ? clock->deeds->pdata[deed] : NULL;
}

const SwDayTimer *
sw_day_clock_pan_timer (const SwDayClock *clock, guint pan)
{
  const SwDayDeed *deed = sw_day_clock_pan_deed (clock, pan);

  for (guint i = 0; deed != NULL && i < clock->timers->len; i++)
    {
      const SwDayTimer *timer = clock->timers->pdata[i];

      if (timer->deed >= 0 && clock->deeds->pdata[timer->deed] == deed && timer->pan == pan && !timer->put_away)
        return timer;
    }
  return NULL;
}

guint
sw_day_clock_unfinished_pan (const SwDayClock *clock)
{
  for (guint pan = 1; clock->hand > 0 && pan <= clock->pans; pan++)
    if (sw_day_clock_pan_deed (clock, pan) != NULL)
      return pan;
  return 0;
}

void
sw_day_clock_fit_pans (SwDayClock *clock)
{
  const SwDayPlace fresh = { first_in_pan (clock), 0 };

  if (clock->hand == 0)
    return;
  put_down (clock);
  while (clock->places->len < clock->pans)
    g_array_append_val (clock->places, fresh);
  pick_up (clock, MIN (clock->hand, clock->pans));
  g_array_set_size (clock->places, clock->pans);
  if (clock->pans == 1)
    clock->hand = 0;
}
