/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/sw-colourway.h"
#include "files/sw-day-file.h"

#include <glib/gstdio.h>
#include <string.h>

/* A dye day as a file: all of it comes back, to the microsecond, and nothing else gets in. */

#define MINUTE ((gint64) 60 * G_USEC_PER_SEC)
#define START ((gint64) 1764064800 * G_USEC_PER_SEC + 123457)

static SwMoment
at (double minutes)
{
  return (SwMoment){ START + (gint64) (minutes * MINUTE), (gint64) (minutes * MINUTE) };
}

static void
tick (SwDayClock *day, SwMoment now)
{
  GPtrArray *rung = sw_day_clock_tick (day, now);

  g_clear_pointer (&rung, g_ptr_array_unref);
}

/* A day with everything in it that a day may have. */
static SwDayClock *
make_day (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  SwDayClock *clock;
  SwStep *rest = sw_step_new (5, SW_STEP_REST);
  guint own;

  g_free (sketch->title);
  sketch->title = g_strdup ("Tide “line” \\ with ümlauts\tand a tab");
  rest->minutes = 12.5;
  g_ptr_array_add (sketch->dyes, sw_dye_new (3));
  g_ptr_array_add (sketch->steps, sw_step_new (4, SW_STEP_BAND));
  ((SwStep *) sketch->steps->pdata[0])->dye = 3;
  g_ptr_array_add (sketch->steps, rest);
  clock = sw_day_clock_new (sketch, at (0));
  own = sw_day_clock_start (clock, at (0.3), "Own", 7.25, -1, 0);
  sw_day_clock_start (clock, at (0.4), "Second pan", 3, 0, 2);
  sw_day_clock_pause (clock, at (1.7), own);
  sw_day_clock_done (clock, at (2));
  tick (clock, at (3.6));
  sw_day_clock_done (clock, at (4));
  sw_day_clock_back (clock, at (5));
  return clock;
}

static void
assert_same_timers (const SwDayClock *a, const SwDayClock *b)
{
  g_assert_cmpuint (a->timers->len, ==, b->timers->len);
  for (guint i = 0; i < a->timers->len; i++)
    {
      const SwDayTimer *one = a->timers->pdata[i], *other = b->timers->pdata[i];

      g_assert_cmpuint (one->id, ==, other->id);
      g_assert_cmpint (one->deed, ==, other->deed);
      g_assert_cmpuint (one->pan, ==, other->pan);
      g_assert_cmpstr (one->label, ==, other->label);
      g_assert_cmpint (one->length_us, ==, other->length_us);
      g_assert_cmpint (one->paused, ==, other->paused);
      g_assert_cmpint (one->paused ? one->left_us : one->end_us, ==, other->paused ? other->left_us : other->end_us);
      g_assert_cmpint (one->rung, ==, other->rung);
      g_assert_cmpint (one->quiet, ==, other->quiet);
      g_assert_cmpint (one->put_away, ==, other->put_away);
    }
}

static void
assert_same (const SwDayClock *a, const SwDayClock *b)
{
  g_autofree char *log = sw_day_clock_log (a);
  g_autofree char *other = sw_day_clock_log (b);

  g_assert_cmpuint (a->current, ==, b->current);
  g_assert_cmpuint (a->pans, ==, b->pans);
  g_assert_cmpuint (a->next_timer, ==, b->next_timer);
  g_assert_cmpint (a->begun_us, ==, b->begun_us);
  g_assert_cmpint (a->entered_us, ==, b->entered_us);
  g_assert_cmpint (a->seen.wall_us, ==, b->seen.wall_us);
  g_assert_cmpint (a->ended, ==, b->ended);
  g_assert_cmpstr (log, ==, other);
  g_assert_cmpuint (a->deeds->len, ==, b->deeds->len);
  assert_same_timers (a, b);
}

static void
test_round_trip (void)
{
  g_autoptr (SwDayClock) day = make_day ();
  g_autofree char *text = sw_day_file_print (day, "file:///studio/tideline.colourway");
  g_autofree char *again = NULL;
  g_autoptr (SwDayClock) read = NULL;
  GError *error = NULL;

  read = sw_day_file_parse (text, strlen (text), &error);
  g_assert_no_error (error);
  assert_same (day, read);
  again = sw_day_file_print (read, "file:///studio/tideline.colourway");
  g_assert_cmpstr (text, ==, again);
}

/* Two pans, each by itself: both stand where they stood, whichever was in hand. */
static void
test_parted (void)
{
  for (guint hand = 1; hand <= 2; hand++)
    {
      g_autoptr (SwSketch) sketch = sw_sketch_new ();
      g_autoptr (SwDayClock) day = NULL, read = NULL;
      g_autofree char *text = NULL, *again = NULL;
      GError *error = NULL;

      sketch->sheet.pans = sketch->sheet.skeins = 2;
      day = sw_day_clock_new (sketch, at (0));
      while (!sw_day_clock_can_part (day))
        g_assert_true (sw_day_clock_done (day, at (30)));
      g_assert_true (sw_day_clock_part (day, at (31)));
      sw_day_clock_done (day, at (32));
      if (hand == 2)
        g_assert_true (sw_day_clock_take (day, at (33), 2));
      text = sw_day_file_print (day, NULL);
      read = sw_day_file_parse (text, strlen (text), &error);
      g_assert_no_error (error);
      assert_same (day, read);
      g_assert_cmpuint (read->hand, ==, hand);
      for (guint pan = 1; pan <= 2; pan++)
        g_assert_cmpstr (sw_day_clock_pan_deed (read, pan)->title, ==, sw_day_clock_pan_deed (day, pan)->title);
      g_assert_cmpint (sw_day_clock_is_unbegun (read), ==, sw_day_clock_is_unbegun (day));
      g_assert_true (sw_day_clock_take (read, at (40), 3 - hand));
      sw_day_clock_take (day, at (40), 3 - hand);
      again = sw_day_file_print (read, NULL);
      g_clear_pointer (&text, g_free);
      text = sw_day_file_print (day, NULL);
      g_assert_cmpstr (text, ==, again);
    }
}

/* By another program, later: timers have run on; a clock set back meanwhile does not make them longer than they were. */
static void
test_restart (void)
{
  static const struct
  {
    double later, wall_off;
  } rows[] = {
    { 10, 0 },
    { 45, 0 },
    { 1.25, 0 },
    { 0, -120 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (SwSketch) sketch = sw_sketch_new ();
      g_autoptr (SwDayClock) day = NULL;
      g_autoptr (SwDayClock) read = NULL;
      g_autofree char *text = NULL;
      SwMoment now = { START + (gint64) ((rows[i].later + rows[i].wall_off) * MINUTE), 77 };
      double expected = 30 - (rows[i].wall_off < 0 ? 0 : rows[i].later);
      GError *error = NULL;

      sketch->sheet.presoak_min = 30;
      day = sw_day_clock_new (sketch, at (0));
      text = sw_day_file_print (day, NULL);
      read = sw_day_file_parse (text, strlen (text), &error);
      g_assert_no_error (error);
      sw_day_clock_wake (read, now);
      g_assert_cmpfloat_with_epsilon ((double) sw_day_timer_left (sw_day_clock_current_timer (read, 0), now) / MINUTE, expected, 1e-6);
    }
}

/* An end that nobody saw is told of when the day is taken up again, with how late it is. */
static void
test_late (void)
{
  g_autoptr (SwDayClock) day = make_day ();
  g_autofree char *text = sw_day_file_print (day, NULL);
  g_autoptr (SwDayClock) read = NULL;
  g_autoptr (GPtrArray) rung = NULL;
  guint waiting = 0;
  GError *error = NULL;

  for (guint i = 0; i < day->timers->len; i++)
    {
      const SwDayTimer *timer = day->timers->pdata[i];

      waiting += !timer->paused && !timer->rung && !timer->put_away;
    }
  g_assert_cmpuint (waiting, >, 0);
  read = sw_day_file_parse (text, strlen (text), &error);
  g_assert_no_error (error);
  sw_day_clock_wake (read, at (500));
  rung = sw_day_clock_tick (read, at (500));
  g_assert_cmpuint (rung->len, ==, waiting);
}

static void
test_disk (void)
{
  g_autofree char *folder = g_dir_make_tmp ("strandwise-day-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "day.json", NULL);
  g_autofree char *nowhere = g_build_filename (folder, "no", "such", "folder.json", NULL);
  g_autoptr (SwDayClock) day = make_day ();
  g_autoptr (SwDayClock) read = NULL;
  GError *error = NULL;

  g_assert_null (sw_day_file_load (path, &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
  g_clear_error (&error);
  g_assert_true (sw_day_file_save (day, NULL, path, &error));
  g_assert_no_error (error);
  read = sw_day_file_load (path, &error);
  g_assert_no_error (error);
  assert_same (day, read);
  g_assert_false (sw_day_file_save (day, NULL, nowhere, &error));
  g_assert_nonnull (error);
  g_clear_error (&error);
  g_unlink (path);
  g_rmdir (folder);
}

#define HEAD "{\"strandwise_day\":1,\"begun\":\"2025-11-25T10:00:00Z\",\"seen\":\"2025-11-25T10:00:00Z\",\"deed_begun\":\"2025-11-25T10:00:00Z\","
#define LISTS "\"timers\":[],\"log\":[],\"deeds\":[]}"

static const struct
{
  const char *name, *text;
  int code;
} bad[] = {
  { "nothing", "", SW_FILE_ERROR_SYNTAX },
  { "no-json", "a day", SW_FILE_ERROR_SYNTAX },
  { "list", "[]", SW_FILE_ERROR_MEMBER },
  { "empty", "{}", SW_FILE_ERROR_MEMBER },
  { "newer", "{\"strandwise_day\":2}", SW_FILE_ERROR_VERSION },
  { "version-text", "{\"strandwise_day\":\"1\"}", SW_FILE_ERROR_MEMBER },
  { "no-lists", HEAD "\"deed\":0}", SW_FILE_ERROR_MEMBER },
  { "deed-beyond", HEAD "\"deed\":1," LISTS, SW_FILE_ERROR_MEMBER },
  { "deed-half", HEAD "\"deed\":0.5," LISTS, SW_FILE_ERROR_MEMBER },
  { "no-time", "{\"strandwise_day\":1,\"begun\":\"yesterday\"," LISTS, SW_FILE_ERROR_MEMBER },
  { "list-of-numbers", HEAD "\"timers\":[1],\"log\":[],\"deeds\":[]}", SW_FILE_ERROR_MEMBER },
  { "timer-without-end", HEAD "\"timers\":[{\"id\":1,\"minutes\":3}],\"log\":[],\"deeds\":[]}", SW_FILE_ERROR_MEMBER },
  { "timer-of-no-deed", HEAD "\"timers\":[{\"id\":1,\"deed\":3,\"minutes\":3,\"ends\":\"2025-11-25T10:00:00Z\"}],\"log\":[],\"deeds\":[]}", SW_FILE_ERROR_MEMBER },
  { "timer-of-years", HEAD "\"timers\":[{\"id\":1,\"minutes\":1e9,\"ends\":\"2025-11-25T10:00:00Z\"}],\"log\":[],\"deeds\":[]}", SW_FILE_ERROR_MEMBER },
  { "unknown-deed", HEAD "\"timers\":[],\"log\":[],\"deeds\":[{\"kind\":\"fly\"}]}", SW_FILE_ERROR_MEMBER },
  { "unknown-event", HEAD "\"timers\":[],\"log\":[{\"at\":\"2025-11-25T10:00:00Z\",\"what\":\"flown\"}],\"deeds\":[]}", SW_FILE_ERROR_MEMBER },
  { "flag-number", HEAD "\"ended\":1," LISTS, SW_FILE_ERROR_MEMBER },
};

static void
test_bad (gconstpointer data)
{
  const gsize i = GPOINTER_TO_SIZE (data);
  GError *error = NULL;

  g_assert_null (sw_day_file_parse (bad[i].text, strlen (bad[i].text), &error));
  g_assert_error (error, SW_FILE_ERROR, bad[i].code);
  g_assert_cmpuint (strlen (error->message), >, 10);
  g_clear_error (&error);
}

/* Whatever is cut off or written over, it is refused with a sentence or read as a day that can be used. */
static void
test_mauled (void)
{
  g_autoptr (SwDayClock) day = make_day ();
  g_autofree char *text = sw_day_file_print (day, NULL);
  const gsize n = strlen (text);

  for (int i = 0; i < 3000; i++)
    {
      g_autofree char *mauled = g_strdup (text);
      gsize length = g_test_rand_int () & 1 ? n : (gsize) g_test_rand_int_range (0, (int) n);
      g_autoptr (SwDayClock) read = NULL;
      g_autoptr (GError) error = NULL;

      for (int k = 0; k < 3 && length == n; k++)
        mauled[g_test_rand_int_range (0, (int) n)] = (char) g_test_rand_int_range (32, 127);
      mauled[length] = '\0';
      read = sw_day_file_parse (mauled, length, &error);
      g_assert_true ((read == NULL) == (error != NULL));
      if (read == NULL)
        continue;
      sw_day_clock_wake (read, at (9));
      tick (read, at (10));
      sw_day_clock_done (read, at (11));
      sw_day_clock_back (read, at (12));
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/day-file/round-trip", test_round_trip);
  g_test_add_func ("/day-file/parted", test_parted);
  g_test_add_func ("/day-file/restart", test_restart);
  g_test_add_func ("/day-file/late", test_late);
  g_test_add_func ("/day-file/disk", test_disk);
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autofree char *path = g_strconcat ("/day-file/bad/", bad[i].name, NULL);

      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_bad);
    }
  g_test_add_func ("/day-file/mauled", test_mauled);
  return g_test_run ();
}
