/* SPDX-License-Identifier: GPL-3.0-or-later */

/*
 * A program that edits and saves without rest is killed at a random moment, a
 * hundred times over. Afterwards the file is whole or not there yet, the draft
 * is whole or not there, and together they hold every edit but those of the
 * last moments.
 */
#include "sw-app-test.h"

#include "app/desk/sw-autosave.h"
#include "app/desk/sw-drafts.h"
#include "files/sw-colourway.h"

#include <glib/gstdio.h>
#include <signal.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <unistd.h>

#define PAUSE_MS 20

/* A draft may be this much older than its pause: the machine may be busy with other things. */
#define SLACK_MS 2000

/* The victim: it writes each edit's number and time to standard output before it makes the edit. */

typedef struct
{
  gint64 number, time;
} Mark;

static void
saved_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  gboolean *saving = user_data;

  /* Whatever becomes of a save, the drawing must survive it. */
  sw_document_save_finish (SW_DOCUMENT (source), result, NULL);
  *saving = FALSE;
}

static int
live_dangerously (const char *drafts_folder, const char *file_path)
{
  SwDrafts *drafts = sw_drafts_open (drafts_folder, NULL);
  g_autofree char *draft = sw_drafts_new_path (drafts);
  SwDocument *document = sw_document_new ();
  SwAutosave *autosave = sw_autosave_new (document, draft);
  g_autoptr (GFile) file = g_file_new_for_path (file_path);
  gboolean saving = FALSE;

  sw_autosave_set_pause (autosave, PAUSE_MS);
  for (Mark mark = { 1, 0 };; mark.number++)
    {
      mark.time = g_get_monotonic_time ();
      if (write (STDOUT_FILENO, &mark, sizeof mark) != sizeof mark)
        return 1;
      sw_test_edit (document, sw_test_set_seed (mark.number), "Edit");
      if (!saving && mark.number % 7 == 0)
        {
          saving = TRUE;
          sw_document_save_async (document, file, TRUE, NULL, saved_cb, &saving);
        }
      sw_test_idle (2);
    }
}

static Mark *
read_marks (int fd, gsize *n)
{
  GArray *marks = g_array_new (FALSE, FALSE, sizeof (Mark));
  Mark mark;

  while (read (fd, &mark, sizeof mark) == sizeof mark)
    g_array_append_val (marks, mark);
  *n = marks->len;
  return (Mark *) g_array_free (marks, FALSE);
}

static gint64
seed_of_file (const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwSketch) sketch = sw_colourway_load (file, NULL, NULL, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND))
    return 0;
  g_assert_no_error (error);
  return sketch->seed;
}

static gint64
seed_of_drafts (const char *folder)
{
  GError *error = NULL;
  g_autoptr (SwDrafts) drafts = sw_drafts_open (folder, &error);
  g_autoptr (GPtrArray) found = NULL;
  gint64 seed = 0;

  g_assert_no_error (error);
  found = sw_drafts_adopt (drafts);
  g_assert_cmpuint (found->len, <=, 1);
  for (guint i = 0; i < found->len; i++)
    {
      const SwDraft *draft = found->pdata[i];

      g_assert_cmpstr (draft->problem, ==, NULL);
      seed = draft->sketch->seed;
      g_unlink (draft->path);
    }
  return seed;
}

/* Every edit older than pause and slack at the time of death is in the file or in the draft. */
static double
check_nothing_lost (const Mark *marks, gsize n, gint64 kept, gint64 killed_at)
{
  double oldest_lost_ms = 0;

  g_assert_cmpint (kept, <=, n > 0 ? marks[n - 1].number : 0);
  if (kept < (gint64) n)
    oldest_lost_ms = (double) (killed_at - marks[kept].time) / 1000;
  g_assert_cmpfloat (oldest_lost_ms, <, PAUSE_MS + SLACK_MS);
  return oldest_lost_ms;
}

static double
kill_once (const char *self, const char *drafts, const char *file)
{
  const char *argv[] = { self, "--live-dangerously", drafts, file, NULL };
  g_autofree Mark *marks = NULL;
  gint64 kept, killed_at;
  GError *error = NULL;
  int out, status;
  gsize n;
  GPid pid;

  g_spawn_async_with_pipes (NULL, (char **) argv, NULL, G_SPAWN_DO_NOT_REAP_CHILD, NULL, NULL, &pid, NULL, &out, NULL, &error);
  g_assert_no_error (error);
  g_usleep ((gulong) g_test_rand_int_range (10000, 160000));
  g_assert_cmpint (kill (pid, SIGKILL), ==, 0);
  killed_at = g_get_monotonic_time ();
  g_assert_cmpint (waitpid (pid, &status, 0), ==, pid);
  g_assert_true (WIFSIGNALED (status));
  marks = read_marks (out, &n);
  close (out);

  kept = MAX (seed_of_file (file), seed_of_drafts (drafts));
  return check_nothing_lost (marks, n, kept, killed_at);
}

static const char *program;

static void
test_kill (void)
{
  g_autofree char *folder = sw_test_folder ();
  g_autofree char *drafts = g_build_filename (folder, "drafts", NULL);
  int times = g_test_slow () ? 400 : 100;
  double worst = 0;

  for (int i = 0; i < times; i++)
    {
      g_autofree char *name = g_strdup_printf ("%d.colourway", i);
      g_autofree char *file = g_build_filename (folder, name, NULL);
      double lost = kill_once (program, drafts, file);

      worst = MAX (worst, lost);
    }
  g_test_message ("%d kills; at worst the last %.0f ms of edits were lost", times, worst);
  sw_test_remove (folder);
}

int
main (int argc, char **argv)
{
  if (argc == 4 && g_str_equal (argv[1], "--live-dangerously"))
    return live_dangerously (argv[2], argv[3]);

  program = argv[0];
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/app/kill/nothing-lost", test_kill);
  return g_test_run ();
}
