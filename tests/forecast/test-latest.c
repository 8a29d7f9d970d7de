/* SPDX-License-Identifier: GPL-3.0-or-later */

/* One job at a time, the newest question wins, late answers are dropped. */

#include "config.h"

#include "forecast/sw-latest.h"

/* Questions are numbers; a job waits at the gate until it is opened, and says what it was asked. */
typedef struct
{
  GMutex mutex;
  GCond cond;
  gboolean open;
  guint under_way, most_at_once, ran;

  /* main thread */
  GMainLoop *loop;
  GArray *answers;
} Desk;

static gpointer
answer_question (gpointer question, gpointer user_data, GCancellable *cancellable, GError **error)
{
  Desk *desk = user_data;

  g_mutex_lock (&desk->mutex);
  desk->ran++;
  desk->under_way++;
  desk->most_at_once = MAX (desk->most_at_once, desk->under_way);
  while (!desk->open)
    g_cond_wait (&desk->cond, &desk->mutex);
  desk->under_way--;
  g_mutex_unlock (&desk->mutex);

  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return NULL;
  if (*(int *) question < 0)
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_FAILED, "no answer");
      return NULL;
    }
  return g_memdup2 (question, sizeof (int));
}

static void
answer_done_cb (gpointer answer, const GError *error, gpointer user_data)
{
  Desk *desk = user_data;
  int number = answer != NULL ? *(int *) answer : -1;

  g_assert_true ((answer == NULL) == (error != NULL));
  g_array_append_val (desk->answers, number);
  g_free (answer);
  g_main_loop_quit (desk->loop);
}

static void
desk_init (Desk *desk)
{
  g_mutex_init (&desk->mutex);
  g_cond_init (&desk->cond);
  desk->loop = g_main_loop_new (NULL, FALSE);
  desk->answers = g_array_new (FALSE, FALSE, sizeof (int));
}

static void
desk_clear (Desk *desk)
{
  g_mutex_clear (&desk->mutex);
  g_cond_clear (&desk->cond);
  g_main_loop_unref (desk->loop);
  g_array_unref (desk->answers);
}

static void
open_gate (Desk *desk)
{
  g_mutex_lock (&desk->mutex);
  desk->open = TRUE;
  g_cond_broadcast (&desk->cond);
  g_mutex_unlock (&desk->mutex);
}

static void
ask (SwLatest *latest, int question)
{
  sw_latest_ask (latest, g_memdup2 (&question, sizeof question));
}

static void
wait_for_start (Desk *desk)
{
  gboolean started = FALSE;

  while (!started)
    {
      g_mutex_lock (&desk->mutex);
      started = desk->ran > 0;
      g_mutex_unlock (&desk->mutex);
      g_thread_yield ();
    }
}

/* However many are asked while one runs, only the last is answered. */
static void
test_newest_wins (void)
{
  Desk desk = { 0 };
  g_autoptr (SwLatest) latest = NULL;

  desk_init (&desk);
  latest = sw_latest_new (answer_question, answer_done_cb, &desk, g_free, g_free);
  ask (latest, 1);
  wait_for_start (&desk);
  for (int i = 2; i <= 50; i++)
    ask (latest, i);
  g_assert_true (sw_latest_is_busy (latest));
  open_gate (&desk);
  g_main_loop_run (desk.loop);

  g_assert_cmpuint (desk.answers->len, ==, 1);
  g_assert_cmpint (g_array_index (desk.answers, int, 0), ==, 50);
  g_assert_cmpuint (desk.most_at_once, ==, 1);
  g_assert_cmpuint (desk.ran, ==, 2);
  g_assert_false (sw_latest_is_busy (latest));
  desk_clear (&desk);
}

/* With patience a young job is let finish, then the newest is answered: always in order. */
static void
test_patience (void)
{
  Desk desk = { 0 };
  g_autoptr (SwLatest) latest = NULL;

  desk_init (&desk);
  latest = sw_latest_new (answer_question, answer_done_cb, &desk, g_free, g_free);
  sw_latest_set_patience (latest, 60000);
  ask (latest, 1);
  wait_for_start (&desk);
  for (int i = 2; i <= 9; i++)
    ask (latest, i);
  open_gate (&desk);
  while (desk.answers->len < 2)
    g_main_loop_run (desk.loop);

  g_assert_cmpint (g_array_index (desk.answers, int, 0), ==, 1);
  g_assert_cmpint (g_array_index (desk.answers, int, 1), ==, 9);
  desk_clear (&desk);
}

static void
test_error_is_an_answer (void)
{
  Desk desk = { 0 };
  g_autoptr (SwLatest) latest = NULL;

  desk_init (&desk);
  desk.open = TRUE;
  latest = sw_latest_new (answer_question, answer_done_cb, &desk, g_free, g_free);
  ask (latest, -5);
  g_main_loop_run (desk.loop);
  g_assert_cmpint (g_array_index (desk.answers, int, 0), ==, -1);
  desk_clear (&desk);
}

static gboolean
quit_cb (gpointer data)
{
  g_main_loop_quit (data);
  return G_SOURCE_REMOVE;
}

/* Freed while a job runs: nothing is called back. */
static void
test_freed_is_silent (void)
{
  Desk desk = { 0 };
  SwLatest *latest;
  gboolean idle = FALSE;

  desk_init (&desk);
  latest = sw_latest_new (answer_question, answer_done_cb, &desk, g_free, g_free);
  ask (latest, 1);
  wait_for_start (&desk);
  ask (latest, 2);
  sw_latest_free (latest);
  open_gate (&desk);

  while (!idle)
    {
      g_mutex_lock (&desk.mutex);
      idle = desk.under_way == 0;
      g_mutex_unlock (&desk.mutex);
      g_thread_yield ();
    }
  g_timeout_add (100, quit_cb, desk.loop);
  g_main_loop_run (desk.loop);
  g_assert_cmpuint (desk.answers->len, ==, 0);
  g_assert_cmpuint (desk.ran, ==, 1);
  desk_clear (&desk);
}

/* Waited for, an answer is there at once and only once; the main loop does not bring it again. */
static void
test_wait (void)
{
  Desk desk = { 0 };
  g_autoptr (SwLatest) latest = NULL;

  desk_init (&desk);
  latest = sw_latest_new (answer_question, answer_done_cb, &desk, g_free, g_free);
  sw_latest_set_patience (latest, 60000);
  g_assert_true (sw_latest_wait (latest, 0)); /* nothing to wait for */

  ask (latest, 1);
  ask (latest, 2);
  g_assert_false (sw_latest_wait (latest, g_get_monotonic_time () + 20000));
  g_assert_cmpuint (desk.answers->len, ==, 0);
  open_gate (&desk);
  g_assert_true (sw_latest_wait (latest, g_get_monotonic_time () + 60 * G_USEC_PER_SEC));
  g_assert_cmpuint (desk.answers->len, ==, 1);
  g_assert_cmpint (g_array_index (desk.answers, int, 0), ==, 1);
  g_assert_true (sw_latest_is_busy (latest));
  g_assert_true (sw_latest_wait (latest, g_get_monotonic_time () + 60 * G_USEC_PER_SEC));
  g_assert_false (sw_latest_is_busy (latest));

  g_timeout_add (50, quit_cb, desk.loop);
  g_main_loop_run (desk.loop);
  g_assert_cmpuint (desk.answers->len, ==, 2);
  g_assert_cmpint (g_array_index (desk.answers, int, 1), ==, 2);
  desk_clear (&desk);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/latest/newest-wins", test_newest_wins);
  g_test_add_func ("/latest/patience", test_patience);
  g_test_add_func ("/latest/error-is-an-answer", test_error_is_an_answer);
  g_test_add_func ("/latest/freed-is-silent", test_freed_is_silent);
  g_test_add_func ("/latest/wait", test_wait);
  return g_test_run ();
}
