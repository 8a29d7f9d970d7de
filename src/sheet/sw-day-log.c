/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/sw-day-clock.h"

#include "sheet/sw-measure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* What was really done and when, in words for people, and the words of files. */

/* What a line tells. */
typedef enum
{
  TELLS_NOTHING,
  TELLS_TITLE,
  TELLS_MINUTES,
  TELLS_BOTH,
} Tells;

static const struct
{
  const char *name; /* in files */
  Tells tells;
  const char *text;
} kinds[SW_N_DAY_EVENTS] = {
  /* Translators: lines of the log of a dye day; %s is the name of the colourway, the deed or the timer */
  [SW_DAY_BEGUN] = { "begun", TELLS_TITLE, N_ ("%s: begun") },
  /* Translators: a deed, and how long it took */
  [SW_DAY_DONE] = { "done", TELLS_BOTH, N_ ("%1$s: done after %2$s") },
  [SW_DAY_BACK] = { "back", TELLS_TITLE, N_ ("%s: gone back to") },
  /* Translators: a timer, and its length */
  [SW_DAY_TIMER] = { "timer", TELLS_BOTH, N_ ("%1$s: timer of %2$s started") },
  [SW_DAY_PAUSED] = { "paused", TELLS_TITLE, N_ ("%s: timer paused") },
  [SW_DAY_RESUMED] = { "resumed", TELLS_TITLE, N_ ("%s: timer going on") },
  /* Translators: a timer, and a time */
  [SW_DAY_LONGER] = { "longer", TELLS_BOTH, N_ ("%1$s: %2$s longer") },
  [SW_DAY_UP] = { "up", TELLS_TITLE, N_ ("%s: time is up") },
  [SW_DAY_STOPPED] = { "stopped", TELLS_TITLE, N_ ("%s: timer stopped") },
  /* Translators: how far the computer's clock was moved */
  [SW_DAY_CLOCK_SET] = { "clock-set", TELLS_MINUTES, N_ ("The clock was set by %s; timers run on as they were") },
  [SW_DAY_REOPENED] = { "reopened", TELLS_NOTHING, N_ ("Taken up again") },
  /* Translators: a wait that was cut short, and how much of it was left */
  [SW_DAY_SKIPPED] = { "skipped", TELLS_BOTH, N_ ("%1$s: skipped, %2$s before its end") },
  /* Translators: the pans are no longer done side by side */
  [SW_DAY_PARTED] = { "parted", TELLS_NOTHING, N_ ("Each pan by itself from here on") },
  [SW_DAY_ENDED] = { "ended", TELLS_NOTHING, N_ ("The day is over") },
};

static const char *const deed_names[SW_N_DEEDS] = {
  [SW_DEED_PRESOAK] = "presoak",
  [SW_DEED_STOCK] = "stock",
  [SW_DEED_FILL] = "fill",
  [SW_DEED_HEAT] = "heat",
  [SW_DEED_POUR] = "pour",
  [SW_DEED_REST] = "rest",
  [SW_DEED_FLIP] = "flip",
  [SW_DEED_ACID] = "acid",
  [SW_DEED_WATER] = "water",
  [SW_DEED_SET] = "set",
  [SW_DEED_COOL] = "cool",
  [SW_DEED_WASH] = "wash",
  [SW_DEED_RINSE] = "rinse",
  [SW_DEED_SPIN] = "spin",
  [SW_DEED_DRY] = "dry",
};

const char *
sw_deed_kind_name (SwDeedKind kind)
{
  g_return_val_if_fail ((guint) kind < SW_N_DEEDS, NULL);
  return deed_names[kind];
}

int
sw_deed_kind_from_name (const char *name)
{
  for (int i = 0; i < SW_N_DEEDS; i++)
    if (g_strcmp0 (deed_names[i], name) == 0)
      return i;
  return -1;
}

const char *
sw_day_event_name (SwDayEventKind kind)
{
  g_return_val_if_fail ((guint) kind < SW_N_DAY_EVENTS, NULL);
  return kinds[kind].name;
}

int
sw_day_event_from_name (const char *name)
{
  for (int i = 0; i < SW_N_DAY_EVENTS; i++)
    if (g_strcmp0 (kinds[i].name, name) == 0)
      return i;
  return -1;
}

/* Below a minute nobody counts. */
static char *
minutes_text (double minutes)
{
  if (fabs (minutes) < 0.95)
    return g_strdup (_ ("less than a minute"));
  return sw_minutes_text (round (fabs (minutes)));
}

/* The formats are those of the table above, which says what each of them takes. */
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
static char *
event_words (const SwDayEvent *event)
{
  const char *text = _ (kinds[event->kind].text);
  g_autofree char *minutes = minutes_text (event->minutes);

  switch (kinds[event->kind].tells)
    {
    case TELLS_TITLE:
      return g_strdup_printf (text, event->title);
    case TELLS_MINUTES:
      return g_strdup_printf (text, minutes);
    case TELLS_BOTH:
      return g_strdup_printf (text, event->title, minutes);
    case TELLS_NOTHING:
    default:
      return g_strdup (text);
    }
}
#pragma GCC diagnostic pop

static char *
event_line (const SwDayEvent *event, const char *time_format)
{
  g_autoptr (GDateTime) at = g_date_time_new_from_unix_local (event->wall_us / G_USEC_PER_SEC);
  g_autofree char *time = at != NULL ? g_date_time_format (at, time_format) : g_strdup ("?");
  g_autofree char *words = event_words (event);

  return g_strdup_printf ("%s %s", time, words);
}

char *
sw_day_event_text (const SwDayEvent *event)
{
  g_return_val_if_fail (event != NULL && (guint) event->kind < SW_N_DAY_EVENTS, NULL);
  return event_line (event, "%H:%M");
}

char *
sw_day_clock_log (const SwDayClock *clock)
{
  GString *log = g_string_new (NULL);

  for (guint i = 0; i < clock->events->len; i++)
    {
      g_autofree char *line = event_line (clock->events->pdata[i], "%Y-%m-%d %H:%M");

      g_string_append_printf (log, "%s%s", i > 0 ? "\n" : "", line);
    }
  return g_string_free (log, FALSE);
}
