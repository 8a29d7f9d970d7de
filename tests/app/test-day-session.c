/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sw-app-test.h"

#include "app/desk/sw-day-session.h"
#include "files/sw-colourway.h"

#include <glib/gstdio.h>

/* The dye day of a document: kept at each change, found again by the next program, and by no other document. */

#define MINUTE ((gint64) 60 * G_USEC_PER_SEC)

/* A clock that stands where it is put. */
static SwMoment fake = { (gint64) 1764064800 * G_USEC_PER_SEC, 0 };

static SwMoment
fake_now (gpointer data)
{
  return fake;
}

static void
pass (double minutes)
{
  fake.wall_us += (gint64) (minutes * MINUTE);
  fake.steady_us += (gint64) (minutes * MINUTE);
}

static SwDaySession *
session_of (SwDocument *document, const char *folder)
{
  SwDaySession *session = sw_day_session_new (document, folder);

  sw_day_session_set_now (session, fake_now, NULL);
  return session;
}

static void
count_cb (guint *count)
{
  ++*count;
}

static double
left (SwDaySession *session)
{
  return (double) sw_day_timer_left (sw_day_clock_current_timer (sw_day_session_get_clock (session), 0), fake) / MINUTE;
}

static void
loaded_cb (GObject *source, GAsyncResult *result, gpointer done)
{
  GError *error = NULL;

  *(gboolean *) done = sw_document_load_finish (SW_DOCUMENT (source), result, &error);
  g_assert_no_error (error);
}

static void
saved_cb (GObject *source, GAsyncResult *result, gpointer done)
{
  GError *error = NULL;

  *(gboolean *) done = sw_document_save_finish (SW_DOCUMENT (source), result, &error);
  g_assert_no_error (error);
}

static void
load (SwDocument *document, const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  gboolean done = FALSE;

  sw_document_load_async (document, file, NULL, loaded_cb, &done);
  sw_test_wait (done);
  sw_test_idle (20);
}

static void
save (SwDocument *document, const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  gboolean done = FALSE;

  sw_document_save_async (document, file, TRUE, NULL, saved_cb, &done);
  sw_test_wait (done);
  sw_test_idle (20);
}

/* A program ends in the middle, however that came; the next one opens the same file. */
static void
test_restart (void)
{
  guint ids[5], found = 0, rang = 0;
  g_autofree char *folder = sw_test_folder ();
  g_autofree char *days = g_build_filename (folder, "days", NULL);
  g_autofree char *path = g_build_filename (folder, "tideline.colourway", NULL);
  SwDocument *document = sw_test_document (ids);
  SwDaySession *session = session_of (document, days);
  SwDocument *other;

  save (document, path);
  sw_day_session_begin (session);
  g_assert_cmpint (sw_day_session_get_state (session), ==, SW_DAY_STATE_UNDER_WAY);
  g_assert_cmpfloat_with_epsilon (left (session), 30, 1e-6);
  sw_test_finalize (session);
  sw_test_finalize (document);

  pass (12);
  other = sw_document_new ();
  session = session_of (other, days);
  g_signal_connect_swapped (session, "found", G_CALLBACK (count_cb), &found);
  g_signal_connect_swapped (session, "rang", G_CALLBACK (count_cb), &rang);
  load (other, path);
  g_assert_cmpuint (found, ==, 1);
  g_assert_cmpint (sw_day_session_get_state (session), ==, SW_DAY_STATE_UNDER_WAY);
  g_assert_cmpfloat_with_epsilon (left (session), 18, 1e-6);

  /* And it rings when it is up, once. */
  pass (17.9);
  sw_day_session_look (session);
  g_assert_cmpuint (rang, ==, 0);
  pass (0.2);
  sw_day_session_look (session);
  sw_day_session_look (session);
  g_assert_cmpuint (rang, ==, 1);
  sw_test_finalize (session);
  sw_test_finalize (other);
  sw_test_remove (folder);
}

/* Two pans by themselves, and the program ends without a good-bye: both stand where they stood, and both timers have run on. */
static void
test_parted (void)
{
  guint ids[5];
  g_autofree char *folder = sw_test_folder ();
  g_autofree char *days = g_build_filename (folder, "days", NULL);
  g_autofree char *path = g_build_filename (folder, "two.colourway", NULL);
  SwDocument *document = sw_test_document (ids);
  SwDaySession *session = session_of (document, days);
  SwDocument *other;
  const SwValue two = sw_value_whole (2);
  const SwDayClock *clock;
  double first;

  g_assert_true (sw_document_edit (document, sw_edit_set (SW_RECORD_SHEET, 0, "skeins", &two), "Edit", NULL));
  g_assert_true (sw_document_edit (document, sw_edit_set (SW_RECORD_SHEET, 0, "pans", &two), "Edit", NULL));
  save (document, path);
  sw_day_session_begin (session);
  clock = sw_day_session_get_clock (session);
  while (sw_day_clock_deed (clock, 0)->kind != SW_DEED_HEAT)
    sw_day_session_done (session);
  g_assert_cmpuint (sw_day_session_next_pan (session), ==, 2);
  sw_day_session_part (session);
  g_assert_cmpuint (sw_day_session_next_pan (session), ==, 0);
  pass (5);
  sw_day_session_take (session, 2);
  sw_day_session_begin_deed (session);
  first = (double) sw_day_timer_left (sw_day_clock_pan_timer (clock, 1), fake) / MINUTE;
  g_assert_cmpfloat_with_epsilon ((double) sw_day_timer_left (sw_day_clock_pan_timer (clock, 2), fake) / MINUTE, first + 5, 1e-6);
  sw_test_finalize (session);
  sw_test_finalize (document);

  pass (3);
  other = sw_document_new ();
  session = session_of (other, days);
  load (other, path);
  clock = sw_day_session_get_clock (session);
  g_assert_cmpuint (clock->hand, ==, 2);
  g_assert_cmpfloat_with_epsilon ((double) sw_day_timer_left (sw_day_clock_pan_timer (clock, 1), fake) / MINUTE, first - 3, 1e-6);
  g_assert_cmpfloat_with_epsilon ((double) sw_day_timer_left (sw_day_clock_pan_timer (clock, 2), fake) / MINUTE, first + 2, 1e-6);
  sw_test_finalize (session);
  sw_test_finalize (other);
  sw_test_remove (folder);
}

/* Saved under a name the day goes along; another drawing in the window leaves it where it is. */
static void
test_moves (void)
{
  guint ids[5];
  g_autofree char *folder = sw_test_folder ();
  g_autofree char *days = g_build_filename (folder, "days", NULL);
  g_autofree char *path = g_build_filename (folder, "tideline.colourway", NULL);
  g_autofree char *second = g_build_filename (folder, "other.colourway", NULL);
  SwDocument *document = sw_test_document (ids);
  SwDaySession *session = session_of (document, days);
  SwSketch *drawing = sw_sketch_new ();
  g_autoptr (GFile) other_file = g_file_new_for_path (second);
  GError *error = NULL;

  g_assert_true (sw_colourway_save (drawing, other_file, NULL, NULL, &error));
  g_assert_no_error (error);
  sw_sketch_free (drawing);

  sw_day_session_begin (session);
  g_assert_cmpuint (sw_test_count_files (days, ".json"), ==, 1);
  save (document, path);
  g_assert_cmpuint (sw_test_count_files (days, ".json"), ==, 1);
  sw_day_session_done (session);
  load (document, second);
  g_assert_cmpint (sw_day_session_get_state (session), ==, SW_DAY_STATE_NONE);
  g_assert_cmpuint (sw_test_count_files (days, ".json"), ==, 1);
  load (document, path);
  g_assert_cmpint (sw_day_session_get_state (session), ==, SW_DAY_STATE_UNDER_WAY);
  g_assert_cmpuint (sw_day_session_get_clock (session)->current, ==, 1);

  sw_day_session_end (session);
  g_assert_cmpint (sw_day_session_get_state (session), ==, SW_DAY_STATE_OVER);
  sw_day_session_forget (session);
  g_assert_cmpint (sw_day_session_get_state (session), ==, SW_DAY_STATE_NONE);
  g_assert_cmpuint (sw_test_count_files (days, ".json"), ==, 0);
  sw_test_finalize (session);
  sw_test_finalize (document);
  sw_test_remove (folder);
}

/* Drawings without a file and of one name are told apart by their deeds. */
static void
test_unsaved (void)
{
  guint ids[5];
  g_autofree char *folder = sw_test_folder ();
  SwDocument *document = sw_test_document (ids);
  SwDaySession *session = session_of (document, folder);
  SwSketch *same = sw_sketch_copy (sw_document_get_sketch (document));

  sw_day_session_begin (session);
  sw_document_set_template (document, sw_sketch_new ());
  sw_test_idle (20);
  g_assert_cmpint (sw_day_session_get_state (session), ==, SW_DAY_STATE_NONE);
  sw_document_set_template (document, same);
  sw_test_idle (20);
  g_assert_cmpint (sw_day_session_get_state (session), ==, SW_DAY_STATE_UNDER_WAY);
  sw_test_finalize (session);
  sw_test_finalize (document);
  sw_test_remove (folder);
}

/* An edit of a step's minutes is of the drawing; the timer that runs is the dyer's to change. */
static void
test_edited (void)
{
  guint ids[5];
  g_autofree char *folder = sw_test_folder ();
  SwDocument *document = sw_test_document (ids);
  SwDaySession *session = session_of (document, folder);
  const SwDayClock *clock;
  guint n;

  sw_day_session_begin (session);
  clock = sw_day_session_get_clock (session);
  n = clock->deeds->len;
  sw_test_edit (document, sw_edit_remove (SW_RECORD_STEP, ids[3]), "No rest");
  g_assert_cmpuint (clock->deeds->len, ==, n - 1);
  g_assert_cmpfloat_with_epsilon (left (session), 30, 1e-6);
  g_assert_true (sw_document_undo (document, NULL));
  g_assert_cmpuint (clock->deeds->len, ==, n);
  sw_test_finalize (session);
  sw_test_finalize (document);
  sw_test_remove (folder);
}

/* What cannot be read is kept aside and told of; what cannot be written is told of once, and the timers run on. */
static void
test_trouble (void)
{
  guint ids[5], failed = 0;
  g_autofree char *folder = sw_test_folder ();
  g_autofree char *days = g_build_filename (folder, "days", NULL);
  g_autofree char *path = g_build_filename (folder, "tideline.colourway", NULL);
  SwDocument *document = sw_test_document (ids);
  SwDaySession *session = session_of (document, days);
  GDir *dir;

  g_signal_connect_swapped (session, "failed", G_CALLBACK (count_cb), &failed);
  save (document, path);
  sw_day_session_begin (session);
  dir = g_dir_open (days, 0, NULL);
  {
    g_autofree char *file = g_build_filename (days, g_dir_read_name (dir), NULL);

    g_assert_true (g_file_set_contents (file, "{ half a", -1, NULL));
  }
  g_dir_close (dir);
  load (document, path);
  g_assert_cmpuint (failed, ==, 1);
  g_assert_cmpuint (sw_test_count_files (days, ".unreadable"), ==, 1);
  g_assert_cmpint (sw_day_session_get_state (session), ==, SW_DAY_STATE_NONE);
  sw_test_finalize (session);

  /* A file stands where the folder should be. */
  g_assert_true (g_file_set_contents (path, "", -1, NULL));
  session = session_of (document, path);
  failed = 0;
  g_signal_connect_swapped (session, "failed", G_CALLBACK (count_cb), &failed);
  sw_day_session_begin (session);
  sw_day_session_done (session);
  g_assert_cmpuint (failed, ==, 1);
  g_assert_cmpuint (sw_day_session_get_clock (session)->current, ==, 1);
  sw_test_finalize (session);
  sw_test_finalize (document);
  sw_test_remove (folder);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/day-session/restart", test_restart);
  g_test_add_func ("/day-session/parted", test_parted);
  g_test_add_func ("/day-session/moves", test_moves);
  g_test_add_func ("/day-session/unsaved", test_unsaved);
  g_test_add_func ("/day-session/edited", test_edited);
  g_test_add_func ("/day-session/trouble", test_trouble);
  return g_test_run ();
}
