/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/sw-day-clock.h"

/* The dye day against a fake clock: what is left of a timer is what a watch beside the pan would say. */

#define MINUTE ((gint64) 60 * G_USEC_PER_SEC)
#define START ((gint64) 1764064800 * G_USEC_PER_SEC) /* 2025-11-25 10:00 UTC */

static SwMoment
at (double minutes)
{
  return (SwMoment){ START + (gint64) (minutes * MINUTE), 500 * MINUTE + (gint64) (minutes * MINUTE) };
}

/* The wall clock says @off minutes more than it would have. */
static SwMoment
set_by (double minutes, double off)
{
  SwMoment moment = at (minutes);

  moment.wall_us += (gint64) (off * MINUTE);
  return moment;
}

/* A soak, stocks, filling, heating, a pour, a rest of 10 min, a pour, a set; two rinses. */
static SwSketch *
make_sketch (void)
{
  SwSketch *sketch = sw_sketch_new ();
  const SwStepKind kinds[] = { SW_STEP_BAND, SW_STEP_REST, SW_STEP_SPLOTCH, SW_STEP_SET };

  g_ptr_array_add (sketch->dyes, sw_dye_new (sketch->next_id++));
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      SwStep *step = sw_step_new (sketch->next_id++, kinds[i]);

      if (sw_step_is_pour (step))
        step->dye = 1;
      step->minutes = kinds[i] == SW_STEP_REST ? 10 : 30;
      g_ptr_array_add (sketch->steps, step);
    }
  return sketch;
}

/* Goes on until that kind of deed, a minute each. Returns the minute that it is then. */
static double
go_to (SwDayClock *clock, SwDeedKind kind, double minute)
{
  while (sw_day_clock_deed (clock, 0) != NULL && sw_day_clock_deed (clock, 0)->kind != kind)
    g_assert_true (sw_day_clock_done (clock, at (minute += 1)));
  g_assert_nonnull (sw_day_clock_deed (clock, 0));
  return minute;
}

static double
left (const SwDayTimer *timer, SwMoment now)
{
  return (double) sw_day_timer_left (timer, now) / MINUTE;
}

/* The deeds are those of the day, in order, and all of them can be gone through. */
static void
test_through (void)
{
  g_autoptr (SwSketch) sketch = make_sketch ();
  g_autoptr (SwDayClock) clock = sw_day_clock_new (sketch, at (0));
  g_autofree SwDeed *day = NULL;
  gsize n;

  day = sw_day_new (sketch, &n);
  g_assert_cmpuint (clock->deeds->len, ==, n);
  for (gsize i = 0; i < n; i++)
    {
      const SwDayDeed *deed = sw_day_clock_deed (clock, 0);

      g_assert_cmpint (deed->kind, ==, day[i].kind);
      g_assert_cmpuint (deed->step, ==, day[i].step);
      g_assert_cmpfloat (deed->minutes, ==, day[i].minutes);
      /* What waits has its timer from the moment it is come to. */
      if (deed->waits)
        g_assert_cmpfloat_with_epsilon (left (sw_day_clock_current_timer (clock, 0), at ((double) i)), deed->minutes, 1e-6);
      g_assert_true (sw_day_clock_done (clock, at ((double) i + 1)));
    }
  g_assert_null (sw_day_clock_deed (clock, 0));
  g_assert_false (sw_day_clock_done (clock, at (100)));
  sw_day_clock_end (clock, at (101));
  g_assert_true (clock->ended);
  g_assert_null (sw_day_clock_tick (clock, at (10000)));
}

/* Stocks are made up while the skeins soak: that timer runs on, as no other does. */
static void
test_beside (void)
{
  g_autoptr (SwSketch) sketch = make_sketch ();
  g_autoptr (SwDayClock) clock = sw_day_clock_new (sketch, at (0));
  const SwDayTimer *soak = sw_day_clock_current_timer (clock, 0);
  guint id = soak->id, heat;

  g_assert_true (sw_day_clock_done (clock, at (1)));
  g_assert_cmpint (sw_day_clock_deed (clock, 0)->kind, ==, SW_DEED_STOCK);
  g_assert_nonnull (sw_day_clock_find (clock, id));
  go_to (clock, SW_DEED_HEAT, 2);
  heat = sw_day_clock_current_timer (clock, 0)->id;
  g_assert_nonnull (sw_day_clock_find (clock, id));
  g_assert_true (sw_day_clock_done (clock, at (9)));
  g_assert_null (sw_day_clock_find (clock, heat));
  g_assert_nonnull (sw_day_clock_find (clock, id));
}

static void
test_pause (void)
{
  g_autoptr (SwSketch) sketch = make_sketch ();
  g_autoptr (SwDayClock) clock = sw_day_clock_new (sketch, at (0));
  double begun = go_to (clock, SW_DEED_REST, 0);
  const SwDayTimer *rest = sw_day_clock_current_timer (clock, 0);

  g_assert_cmpfloat_with_epsilon (left (rest, at (begun + 4)), 6, 1e-6);
  g_assert_true (sw_day_clock_pause (clock, at (begun + 4), rest->id));
  g_assert_false (sw_day_clock_pause (clock, at (begun + 5), rest->id));
  g_assert_cmpfloat_with_epsilon (left (rest, at (begun + 60)), 6, 1e-6);
  for (double minute = begun + 5; minute < begun + 100; minute += 7)
    {
      g_autoptr (GPtrArray) rung = sw_day_clock_tick (clock, at (minute));

      for (guint i = 0; rung != NULL && i < rung->len; i++)
        g_assert_true (rung->pdata[i] != rest);
    }
  g_assert_true (sw_day_clock_resume (clock, at (begun + 100), rest->id));
  g_assert_false (sw_day_clock_resume (clock, at (begun + 100), rest->id));
  g_assert_cmpfloat_with_epsilon (left (rest, at (begun + 103)), 3, 1e-6);
}

/* Three timers of one's own and one of the deed, each to its own end, each told of once. */
static void
test_several (void)
{
  static const double lengths[] = { 3, 1, 2 };
  g_autoptr (SwSketch) sketch = make_sketch ();
  g_autoptr (SwDayClock) clock = NULL;
  guint ids[G_N_ELEMENTS (lengths)], n_rung = 0;

  sketch->sheet.presoak_min = 2.5;
  clock = sw_day_clock_new (sketch, at (0));
  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    ids[i] = sw_day_clock_start (clock, at (0), "Own", lengths[i], -1, 0);
  for (int second = 1; second <= 300; second++)
    {
      g_autoptr (GPtrArray) rung = sw_day_clock_tick (clock, at (second / 60.0));

      for (guint i = 0; rung != NULL && i < rung->len; i++)
        {
          const SwDayTimer *timer = rung->pdata[i];

          n_rung++;
          g_assert_cmpint (ABS (sw_day_timer_left (timer, at (second / 60.0))), <=, 1000000);
          for (guint k = 0; k < G_N_ELEMENTS (ids); k++)
            if (timer->id == ids[k])
              g_assert_cmpint (second, ==, (int) (lengths[k] * 60));
        }
    }
  g_assert_cmpuint (n_rung, ==, 4);
  g_assert_true (sw_day_clock_is_ringing (clock));
  sw_day_clock_hush (clock);
  g_assert_false (sw_day_clock_is_ringing (clock));

  /* More time on one that is over counts from now, and it rings again. */
  g_assert_true (sw_day_clock_longer (clock, at (6), ids[1], 2));
  g_assert_cmpfloat_with_epsilon (left (sw_day_clock_find (clock, ids[1]), at (6)), 2, 1e-6);
  g_assert_null (sw_day_clock_tick (clock, at (7.9)));
  {
    g_autoptr (GPtrArray) rung = sw_day_clock_tick (clock, at (8.1));

    g_assert_cmpuint (rung->len, ==, 1);
  }
  g_assert_true (sw_day_clock_stop (clock, at (9), ids[1]));
  g_assert_null (sw_day_clock_find (clock, ids[1]));
}

/* Each pan waits for its own time. */
static void
test_pans (void)
{
  g_autoptr (SwSketch) sketch = make_sketch ();
  g_autoptr (SwDayClock) clock = NULL;
  double begun;

  sketch->sheet.pans = 3;
  sketch->sheet.skeins = 3;
  clock = sw_day_clock_new (sketch, at (0));
  g_assert_cmpuint (clock->pans, ==, 3);
  g_assert_cmpuint (sw_day_clock_current_timer (clock, 0)->pan, ==, 0); /* all soak together */
  begun = go_to (clock, SW_DEED_REST, 0);
  g_assert_nonnull (sw_day_clock_current_timer (clock, 1));
  g_assert_null (sw_day_clock_current_timer (clock, 2));
  sw_day_clock_start (clock, at (begun + 2), "Rest", 10, (int) clock->current, 2);
  g_assert_cmpfloat_with_epsilon (left (sw_day_clock_current_timer (clock, 1), at (begun + 3)), 7, 1e-6);
  g_assert_cmpfloat_with_epsilon (left (sw_day_clock_current_timer (clock, 2), at (begun + 3)), 9, 1e-6);
}

/* Two pans on one stove, the second begun later: each goes through the day at its own pace, with its own timers. */
static void
test_parted (void)
{
  g_autoptr (SwSketch) sketch = make_sketch ();
  g_autoptr (SwDayClock) clock = NULL;
  guint rest_of_first;
  double minute;

  sketch->sheet.pans = sketch->sheet.skeins = 2;
  clock = sw_day_clock_new (sketch, at (0));
  g_assert_false (sw_day_clock_can_part (clock)); /* all soak together */
  g_assert_false (sw_day_clock_part (clock, at (0)));
  g_assert_false (sw_day_clock_take (clock, at (0), 2));
  minute = go_to (clock, SW_DEED_HEAT, 0);
  g_assert_true (sw_day_clock_part (clock, at (minute)));
  g_assert_cmpuint (clock->hand, ==, 1);
  g_assert_false (sw_day_clock_is_unbegun (clock));
  minute = go_to (clock, SW_DEED_REST, minute);
  rest_of_first = sw_day_clock_pan_timer (clock, 1)->id;
  g_assert_cmpint (sw_day_clock_pan_deed (clock, 2)->kind, ==, SW_DEED_HEAT);
  g_assert_null (sw_day_clock_pan_timer (clock, 2));

  /* The second one is put on now. */
  g_assert_true (sw_day_clock_take (clock, at (minute), 2));
  g_assert_true (sw_day_clock_is_unbegun (clock));
  g_assert_true (sw_day_clock_begin (clock, at (minute + 1)));
  g_assert_false (sw_day_clock_begin (clock, at (minute + 1)));
  g_assert_cmpuint (sw_day_clock_pan_timer (clock, 2)->pan, ==, 2);
  g_assert_cmpfloat_with_epsilon (left (sw_day_clock_find (clock, rest_of_first), at (minute + 1)), 9, 1e-6);

  /* What is done in one pan changes nothing in the other. */
  g_assert_true (sw_day_clock_done (clock, at (minute + 2)));
  g_assert_cmpint (sw_day_clock_pan_deed (clock, 2)->kind, ==, SW_DEED_POUR);
  g_assert_cmpint (sw_day_clock_pan_deed (clock, 1)->kind, ==, SW_DEED_REST);
  g_assert_cmpuint (sw_day_clock_pan_timer (clock, 1)->id, ==, rest_of_first);
  g_assert_true (sw_day_clock_back (clock, at (minute + 3)));
  g_assert_cmpuint (sw_day_clock_pan_timer (clock, 1)->id, ==, rest_of_first);
  g_assert_nonnull (sw_day_clock_pan_timer (clock, 2));
  g_assert_cmpstr (((SwDayEvent *) clock->events->pdata[clock->events->len - 1])->title, ==, "Heat the bath, pan 2");

  /* To the end, one after the other. */
  while (sw_day_clock_done (clock, at (minute += 1)))
    ;
  g_assert_cmpuint (sw_day_clock_unfinished_pan (clock), ==, 1);
  g_assert_true (sw_day_clock_take (clock, at (minute), 1));
  while (sw_day_clock_done (clock, at (minute += 1)))
    ;
  g_assert_cmpuint (sw_day_clock_unfinished_pan (clock), ==, 0);
}

/* Pans come and go with the drawing; with one pan all is as it was before. */
static void
test_parted_follow (void)
{
  g_autoptr (SwSketch) sketch = make_sketch ();
  g_autoptr (SwDayClock) clock = NULL;

  sketch->sheet.pans = sketch->sheet.skeins = 2;
  clock = sw_day_clock_new (sketch, at (0));
  go_to (clock, SW_DEED_POUR, 0);
  g_assert_true (sw_day_clock_part (clock, at (10)));
  sw_day_clock_take (clock, at (11), 2);
  sketch->sheet.pans = sketch->sheet.skeins = 3;
  sw_day_clock_follow (clock, sketch);
  g_assert_cmpuint (clock->hand, ==, 2);
  g_assert_cmpint (sw_day_clock_pan_deed (clock, 2)->kind, ==, SW_DEED_POUR);
  g_assert_cmpint (sw_day_clock_pan_deed (clock, 3)->kind, ==, SW_DEED_FILL);
  g_assert_true (sw_day_clock_take (clock, at (12), 3));
  sketch->sheet.pans = sketch->sheet.skeins = 1;
  sw_day_clock_follow (clock, sketch);
  g_assert_cmpuint (clock->hand, ==, 0);
  g_assert_cmpint (sw_day_clock_deed (clock, 0)->kind, ==, SW_DEED_POUR);
}

/* Heating, rests and the set are told as skipped if they are; nothing else is. */
static void
test_skipped (void)
{
  g_autoptr (SwSketch) sketch = make_sketch ();
  g_autoptr (SwDayClock) clock = sw_day_clock_new (sketch, at (0));
  double minute = go_to (clock, SW_DEED_REST, 0);
  const SwDayEvent *event;

  g_assert_cmpfloat_with_epsilon (sw_day_clock_cut_short (clock, at (minute + 4)), 6, 1e-6);
  g_assert_cmpfloat (sw_day_clock_cut_short (clock, at (minute + 9.9)), ==, 0); /* as good as over */
  g_assert_cmpfloat (sw_day_clock_cut_short (clock, at (minute + 12)), ==, 0);
  g_assert_true (sw_day_clock_done (clock, at (minute + 4)));
  event = clock->events->pdata[clock->events->len - 1];
  g_assert_cmpint (event->kind, ==, SW_DAY_SKIPPED);
  g_assert_cmpfloat_with_epsilon (event->minutes, 6, 1e-6);
  g_assert_cmpfloat (sw_day_clock_cut_short (clock, at (minute + 5)), ==, 0); /* a pour */
  g_assert_true (sw_day_clock_done (clock, at (minute + 6)));
  g_assert_true (sw_day_clock_done (clock, at (minute + 36)));
  for (guint i = clock->events->len - 3; i < clock->events->len; i++)
    g_assert_cmpint (((const SwDayEvent *) clock->events->pdata[i])->kind, !=, SW_DAY_SKIPPED);
}

/* Whatever is done to the clock on the wall, forward or back, a timer takes as long as it takes. */
static void
test_clock_set (void)
{
  static const double offs[] = { -180, -60, -1, 1, 60, 600 };

  for (gsize i = 0; i < G_N_ELEMENTS (offs); i++)
    {
      g_autoptr (SwSketch) sketch = make_sketch ();
      g_autoptr (SwDayClock) clock = sw_day_clock_new (sketch, at (0));
      double begun = go_to (clock, SW_DEED_REST, 0);
      const SwDayTimer *rest = sw_day_clock_current_timer (clock, 0);
      g_autoptr (GPtrArray) rung = NULL;

      g_assert_null (sw_day_clock_tick (clock, set_by (begun + 4, 0)));
      g_assert_null (sw_day_clock_tick (clock, set_by (begun + 5, offs[i])));
      g_assert_cmpfloat_with_epsilon (left (rest, set_by (begun + 5, offs[i])), 5, 1e-6);
      rung = sw_day_clock_tick (clock, set_by (begun + 10.001, offs[i]));
      g_assert_cmpuint (rung->len, ==, 1);
      g_assert_true (rung->pdata[0] == rest);
    }
}

/* While the machine sleeps both clocks run on: the time is gone. */
static void
test_sleep (void)
{
  g_autoptr (SwSketch) sketch = make_sketch ();
  g_autoptr (SwDayClock) clock = sw_day_clock_new (sketch, at (0));
  double begun = go_to (clock, SW_DEED_REST, 0);
  const SwDayTimer *rest = sw_day_clock_current_timer (clock, 0);

  sw_day_clock_tick (clock, at (begun + 1));
  sw_day_clock_tick (clock, at (begun + 200));
  g_assert_cmpfloat_with_epsilon (left (rest, at (begun + 200)), -190, 1e-6);
}

/* One step back after a slip: the timer is as if nothing had happened. */
static void
test_back (void)
{
  g_autoptr (SwSketch) sketch = make_sketch ();
  g_autoptr (SwDayClock) clock = sw_day_clock_new (sketch, at (0));
  double begun = go_to (clock, SW_DEED_REST, 0);
  guint rest = sw_day_clock_current_timer (clock, 0)->id;

  g_assert_true (sw_day_clock_done (clock, at (begun + 3)));
  g_assert_null (sw_day_clock_find (clock, rest));
  g_assert_true (sw_day_clock_back (clock, at (begun + 4)));
  g_assert_cmpuint (sw_day_clock_current_timer (clock, 0)->id, ==, rest);
  g_assert_cmpfloat_with_epsilon (left (sw_day_clock_find (clock, rest), at (begun + 4)), 6, 1e-6);

  /* A deed that is gone back from begins anew when it is come to again. */
  g_assert_true (sw_day_clock_back (clock, at (begun + 5)));
  g_assert_true (sw_day_clock_done (clock, at (begun + 6)));
  g_assert_cmpuint (sw_day_clock_current_timer (clock, 0)->id, !=, rest);
  g_assert_cmpfloat_with_epsilon (left (sw_day_clock_current_timer (clock, 0), at (begun + 6)), 10, 1e-6);
  while (sw_day_clock_back (clock, at (begun + 7)))
    ;
  g_assert_cmpuint (clock->current, ==, 0);
}

/* The drawing changes while its day is under way. */
static void
test_follow (void)
{
  g_autoptr (SwSketch) sketch = make_sketch ();
  g_autoptr (SwDayClock) clock = sw_day_clock_new (sketch, at (0));
  double begun = go_to (clock, SW_DEED_REST, 0);
  const SwDayTimer *rest = sw_day_clock_current_timer (clock, 0);
  guint at_rest = clock->current;

  g_assert_true (sw_day_clock_fits (clock, sketch));
  sketch->sheet.presoak_min = 0; /* a deed before it is gone */
  sw_day_clock_follow (clock, sketch);
  g_assert_cmpuint (clock->current, ==, at_rest - 1);
  g_assert_true (sw_day_clock_current_timer (clock, 0) == rest);

  g_ptr_array_remove_index (sketch->steps, 1); /* the rest itself */
  g_assert_false (sw_day_clock_fits (clock, sketch));
  sw_day_clock_follow (clock, sketch);
  g_assert_cmpint (sw_day_clock_deed (clock, 0)->kind, ==, SW_DEED_POUR);
  g_assert_cmpint (rest->deed, ==, -1);
  g_assert_cmpfloat_with_epsilon (left (rest, at (begun + 1)), 9, 1e-6);
}

static void
test_log (void)
{
  g_autoptr (SwSketch) sketch = make_sketch ();
  g_autoptr (SwDayClock) clock = NULL;
  g_autofree char *log = NULL;
  g_auto (GStrv) lines = NULL;

  g_free (sketch->title);
  sketch->title = g_strdup ("Tideline");
  clock = sw_day_clock_new (sketch, at (0));
  sw_day_clock_done (clock, at (1));
  sw_day_clock_done (clock, at (32));
  log = sw_day_clock_log (clock);
  lines = g_strsplit (log, "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), ==, clock->events->len);
  g_assert_cmpstr (lines[0], ==, "2025-11-25 10:00 Tideline: begun");
  g_assert_cmpstr (lines[1], ==, "2025-11-25 10:00 Soak the skeins: timer of 30 min started");
  g_assert_cmpstr (lines[2], ==, "2025-11-25 10:01 Make up the stocks: begun");
  g_assert_cmpstr (lines[3], ==, "2025-11-25 10:32 Make up the stocks: done after 31 min");

  /* Every kind of event has its words and its name in files. */
  for (int kind = 0; kind < SW_N_DAY_EVENTS; kind++)
    {
      SwDayEvent event = { START, (SwDayEventKind) kind, (char *) "Rest", 5 };
      g_autofree char *text = sw_day_event_text (&event);

      g_assert_true (g_str_has_prefix (text, "10:00 "));
      g_assert_cmpint (sw_day_event_from_name (sw_day_event_name ((SwDayEventKind) kind)), ==, kind);
    }
  for (int kind = 0; kind < SW_N_DEEDS; kind++)
    g_assert_cmpint (sw_deed_kind_from_name (sw_deed_kind_name ((SwDeedKind) kind)), ==, kind);
  g_assert_cmpint (sw_deed_kind_from_name ("nonsense"), ==, -1);
  g_assert_cmpint (sw_day_event_from_name (NULL), ==, -1);
}

/* What nobody can mean is refused, and changes nothing. */
static void
test_refused (void)
{
  static const double minutes[] = { 0, -1, SW_DAY_MAX_MINUTES + 1, G_MAXDOUBLE };
  g_autoptr (SwSketch) sketch = make_sketch ();
  g_autoptr (SwDayClock) clock = sw_day_clock_new (sketch, at (0));
  guint n = clock->timers->len;

  for (gsize i = 0; i < G_N_ELEMENTS (minutes); i++)
    g_assert_cmpuint (sw_day_clock_start (clock, at (0), "Own", minutes[i], -1, 0), ==, 0);
  g_assert_cmpuint (clock->timers->len, ==, n);
  g_assert_false (sw_day_clock_pause (clock, at (0), 999));
  g_assert_false (sw_day_clock_resume (clock, at (0), 999));
  g_assert_false (sw_day_clock_longer (clock, at (0), 999, 1));
  g_assert_false (sw_day_clock_stop (clock, at (0), 999));
  while (clock->timers->len < SW_DAY_MAX_TIMERS)
    g_assert_cmpuint (sw_day_clock_start (clock, at (0), "Own", 1, -1, 0), !=, 0);
  g_assert_cmpuint (sw_day_clock_start (clock, at (0), "Own", 1, -1, 0), ==, 0);
}

int
main (int argc, char *argv[])
{
  g_setenv ("TZ", "UTC", TRUE);
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/day-clock/through", test_through);
  g_test_add_func ("/day-clock/beside", test_beside);
  g_test_add_func ("/day-clock/pause", test_pause);
  g_test_add_func ("/day-clock/several", test_several);
  g_test_add_func ("/day-clock/pans", test_pans);
  g_test_add_func ("/day-clock/parted", test_parted);
  g_test_add_func ("/day-clock/parted-follow", test_parted_follow);
  g_test_add_func ("/day-clock/skipped", test_skipped);
  g_test_add_func ("/day-clock/clock-set", test_clock_set);
  g_test_add_func ("/day-clock/sleep", test_sleep);
  g_test_add_func ("/day-clock/back", test_back);
  g_test_add_func ("/day-clock/follow", test_follow);
  g_test_add_func ("/day-clock/log", test_log);
  g_test_add_func ("/day-clock/refused", test_refused);
  return g_test_run ();
}
