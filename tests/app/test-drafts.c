/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sw-app-test.h"

#include "app/desk/sw-autosave.h"
#include "app/desk/sw-drafts.h"
#include "files/sw-colourway.h"

#include <fcntl.h>
#include <glib/gstdio.h>

#include <sys/stat.h>

typedef struct
{
  char *folder;
  SwDrafts *drafts; /* as of another program */
  SwDrafts *mine;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  GError *error = NULL;

  f->folder = sw_test_folder ();
  f->drafts = sw_drafts_open (f->folder, &error);
  f->mine = sw_drafts_open (f->folder, &error);
  g_assert_no_error (error);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  g_clear_pointer (&f->drafts, sw_drafts_close);
  g_clear_pointer (&f->mine, sw_drafts_close);
  sw_test_remove (f->folder);
  g_free (f->folder);
}

static char *
write_draft (SwDrafts *drafts, const SwSketch *sketch, GFile *file, const char *etag)
{
  char *path = sw_drafts_new_path (drafts);
  GError *error = NULL;

  g_assert_true (sw_draft_write (path, sketch, file, etag, &error));
  g_assert_no_error (error);
  return path;
}

static SwSketch *
some_sketch (gint64 seed)
{
  SwSketch *sketch = sw_sketch_new ();

  sketch->seed = seed;
  return sketch;
}

/* A draft gives back the drawing to the letter, and knows its file, whatever that is called. */
static void
test_round_trip (Fixture *f, gconstpointer data)
{
  const struct
  {
    const char *path, *etag;
  } rows[] = {
    { NULL, NULL },
    { "/dye studio/tide \"pool\" \\ 1.colourway", "123:456" },
    { "/färberei/Ебру.colourway", "\"W/quoted\\\"" },
  };
  g_autoptr (SwSketch) sketch = some_sketch (11);

  sw_extras_add (&sketch->extras, "from_the_future", "{\"kept\":true}");
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GFile) file = rows[i].path != NULL ? g_file_new_for_path (rows[i].path) : NULL;
      g_autofree char *path = write_draft (f->mine, sketch, file, rows[i].etag);
      g_autoptr (GError) error = NULL;
      g_autoptr (SwDraft) draft = sw_draft_read (path, &error);

      g_assert_no_error (error);
      g_assert_true (sw_sketch_equal (draft->sketch, sketch));
      g_assert_true (file == NULL ? draft->file == NULL : g_file_equal (draft->file, file));
      g_assert_cmpstr (draft->etag, ==, rows[i].etag);
      g_assert_nonnull (draft->written);
      g_unlink (path);
    }
}

/* A draft is a colourway that the program itself opens, should all else fail. */
static void
test_is_colourway (Fixture *f, gconstpointer data)
{
  g_autoptr (SwSketch) sketch = some_sketch (12);
  g_autofree char *path = write_draft (f->mine, sketch, NULL, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  GError *error = NULL;
  g_autoptr (SwSketch) opened = sw_colourway_load (file, NULL, NULL, &error);

  g_assert_no_error (error);
  g_assert_cmpint (opened->seed, ==, 12);
}

/* Drafts of a program that lives are its own; once it is gone they are the finder's, newest first, and only once. */
static void
test_adopt (Fixture *f, gconstpointer data)
{
  g_autoptr (GPtrArray) none = NULL;
  g_autoptr (GPtrArray) found = NULL;
  g_autoptr (GPtrArray) again = NULL;

  for (gint64 seed = 1; seed <= 3; seed++)
    {
      g_autoptr (SwSketch) sketch = some_sketch (seed);
      g_autofree char *path = write_draft (f->drafts, sketch, NULL, NULL);
      struct timespec times[2] = { { 1000000000 + seed, 0 }, { 1000000000 + seed, 0 } };

      g_assert_cmpint (utimensat (AT_FDCWD, path, times, 0), ==, 0);
    }

  none = sw_drafts_adopt (f->mine);
  g_assert_cmpuint (none->len, ==, 0);

  g_clear_pointer (&f->drafts, sw_drafts_close);
  found = sw_drafts_adopt (f->mine);
  g_assert_cmpuint (found->len, ==, 3);
  for (guint i = 0; i < 3; i++)
    {
      const SwDraft *draft = found->pdata[i];

      g_assert_cmpint (draft->sketch->seed, ==, 3 - i);
      g_assert_true (g_file_test (draft->path, G_FILE_TEST_EXISTS));
    }
  again = sw_drafts_adopt (f->mine);
  g_assert_cmpuint (again->len, ==, 0);

  /* Not settled now, they are found by the next program. */
  g_clear_pointer (&f->mine, sw_drafts_close);
  f->mine = sw_drafts_open (f->folder, NULL);
  g_clear_pointer (&again, g_ptr_array_unref);
  again = sw_drafts_adopt (f->mine);
  g_assert_cmpuint (again->len, ==, 3);
}

/* A program that ends well leaves nothing behind. */
static void
test_tidy (Fixture *f, gconstpointer data)
{
  g_autoptr (SwSketch) sketch = some_sketch (1);
  g_autofree char *path = write_draft (f->drafts, sketch, NULL, NULL);

  g_unlink (path);
  g_clear_pointer (&f->drafts, sw_drafts_close);
  g_clear_pointer (&f->mine, sw_drafts_close);
  g_assert_cmpuint (sw_test_count_files (f->folder, ""), ==, 1); /* the gate */
}

/* What cannot be read is put aside with its reason, and never thrown away; half-written files go. */
static void
test_unreadable (Fixture *f, gconstpointer data)
{
  g_autofree char *bad = sw_drafts_new_path (f->drafts);
  g_autofree char *folder = g_path_get_dirname (bad);
  g_autofree char *half = g_build_filename (folder, ".half-written", NULL);
  g_autofree char *text = NULL;
  g_autoptr (GPtrArray) found = NULL;
  const SwDraft *draft;

  g_assert_true (g_file_set_contents (bad, "not a colourway", -1, NULL));
  g_assert_true (g_file_set_contents (half, "{", -1, NULL));
  g_clear_pointer (&f->drafts, sw_drafts_close);

  found = sw_drafts_adopt (f->mine);
  g_assert_cmpuint (found->len, ==, 1);
  draft = found->pdata[0];
  g_assert_null (draft->sketch);
  g_assert_nonnull (draft->problem);
  g_assert_true (g_file_get_contents (draft->path, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, "not a colourway");
  g_assert_false (g_file_test (half, G_FILE_TEST_EXISTS));
  g_assert_false (g_file_test (folder, G_FILE_TEST_EXISTS));

  g_clear_pointer (&found, g_ptr_array_unref);
  g_clear_pointer (&f->mine, sw_drafts_close);
  f->mine = sw_drafts_open (f->folder, NULL);
  found = sw_drafts_adopt (f->mine);
  g_assert_cmpuint (found->len, ==, 0);
}

static void
test_no_folder (void)
{
  g_autofree char *folder = sw_test_folder ();
  g_autofree char *path = g_build_filename (folder, "a file", NULL);
  g_autofree char *inside = g_build_filename (path, "drafts", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_set_contents (path, "", -1, NULL));
  g_assert_null (sw_drafts_open (inside, &error));
  g_assert_error (error, SW_DOCUMENT_ERROR, SW_DOCUMENT_ERROR_DRAFT);
  g_test_message ("%s", error->message);
  sw_test_remove (folder);
}

/* Autosave */

typedef struct
{
  char *folder, *path;
  SwDocument *document;
  SwAutosave *autosave;
  guint n_failed;
} Saver;

static void
failed_cb (SwAutosave *autosave, const char *sentence, guint *n)
{
  g_assert_nonnull (sentence);
  (*n)++;
}

static void
saver_set_up (Saver *f, gconstpointer data)
{
  guint ids[5];

  f->folder = sw_test_folder ();
  f->path = g_build_filename (f->folder, "draft.colourway", NULL);
  f->document = sw_test_document (ids);
  f->autosave = sw_autosave_new (f->document, f->path);
  sw_autosave_set_pause (f->autosave, 30);
  g_signal_connect (f->autosave, "failed", G_CALLBACK (failed_cb), &f->n_failed);
}

static void
saver_tear_down (Saver *f, gconstpointer data)
{
  sw_test_finalize (f->autosave);
  sw_test_finalize (f->document);
  sw_test_remove (f->folder);
  g_free (f->folder);
  g_free (f->path);
}

static gboolean
there_is_a_draft (Saver *f)
{
  return g_file_test (f->path, G_FILE_TEST_EXISTS);
}

static gint64
drafted_seed (Saver *f)
{
  g_autoptr (SwDraft) draft = there_is_a_draft (f) ? sw_draft_read (f->path, NULL) : NULL;

  return draft != NULL ? draft->sketch->seed : -1;
}

static void
seed (Saver *f, gint64 number)
{
  sw_test_edit (f->document, sw_test_set_seed (number), "Edit");
}

static void
saved_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  GError *error = NULL;

  g_assert_true (sw_document_save_finish (SW_DOCUMENT (source), result, &error));
  g_assert_no_error (error);
  *(gboolean *) user_data = TRUE;
}

static void
test_follows (Saver *f, gconstpointer data)
{
  GError *error = NULL;

  sw_test_idle (100);
  g_assert_false (there_is_a_draft (f));
  seed (f, 5);
  sw_test_wait (drafted_seed (f) == 5);
  seed (f, 6);
  sw_test_wait (drafted_seed (f) == 6);
  g_assert_true (sw_document_undo (f->document, &error));
  g_assert_true (sw_document_undo (f->document, &error));
  g_assert_no_error (error);
  g_assert_false (there_is_a_draft (f));
  sw_test_idle (100);
  g_assert_false (there_is_a_draft (f));
}

/* A hand that never rests is drafted too: the pause counts from the first edit. */
static void
test_long_drag (Saver *f, gconstpointer data)
{
  gint64 number = 100;

  sw_document_begin_group (f->document, "Drag");
  while (drafted_seed (f) < 105)
    {
      seed (f, ++number);
      sw_test_turn ();
      g_assert_cmpint (number, <, 100000);
    }
  sw_document_end_group (f->document);
}

/* The draft goes once the file is safe, and not before. */
static void
test_until_saved (Saver *f, gconstpointer data)
{
  g_autofree char *path = g_build_filename (f->folder, "real.colourway", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (SwSketch) saved = NULL;
  gboolean done = FALSE;

  seed (f, 5);
  sw_test_wait (there_is_a_draft (f));
  sw_document_save_async (f->document, file, FALSE, NULL, saved_cb, &done);
  while (!done)
    {
      g_assert_true (there_is_a_draft (f) || g_file_test (path, G_FILE_TEST_EXISTS));
      sw_test_turn ();
    }
  g_assert_false (there_is_a_draft (f));
  saved = sw_colourway_load (file, NULL, NULL, NULL);
  g_assert_cmpint (saved->seed, ==, 5);

  /* The next draft knows whose it is. */
  seed (f, 6);
  sw_test_wait (there_is_a_draft (f));
  {
    g_autoptr (SwDraft) draft = sw_draft_read (f->path, NULL);

    g_assert_true (g_file_equal (draft->file, file));
    g_assert_cmpstr (draft->etag, ==, sw_document_get_etag (f->document));
  }
}

/* No late writer brings back what was given up. */
static void
test_give_up (Saver *f, gconstpointer data)
{
  for (gint64 i = 1; i <= 20; i++)
    {
      seed (f, i);
      sw_test_turn ();
    }
  sw_autosave_give_up (f->autosave);
  g_assert_false (there_is_a_draft (f));
  seed (f, 99);
  sw_test_idle (150);
  g_assert_false (there_is_a_draft (f));
}

static void
test_flush (Saver *f, gconstpointer data)
{
  sw_autosave_set_pause (f->autosave, 60000);
  sw_autosave_flush (f->autosave);
  g_assert_false (there_is_a_draft (f));
  seed (f, 8);
  sw_autosave_flush (f->autosave);
  g_assert_cmpint (drafted_seed (f), ==, 8);
}

/* A draft that was brought back goes on as this document's draft. */
static void
test_other_path (Saver *f, gconstpointer data)
{
  g_autofree char *old = g_strdup (f->path);

  seed (f, 3);
  sw_test_wait (there_is_a_draft (f));
  g_free (f->path);
  f->path = g_build_filename (f->folder, "other.colourway", NULL);
  sw_autosave_set_path (f->autosave, f->path);
  g_assert_false (g_file_test (old, G_FILE_TEST_EXISTS));
  sw_test_wait (drafted_seed (f) == 3);
}

/* Trouble is told once, and is over when a draft can be written again. */
static void
test_failure (Saver *f, gconstpointer data)
{
  g_autofree char *away = g_strconcat (f->folder, ".away", NULL);

  g_assert_cmpint (g_rename (f->folder, away), ==, 0);
  seed (f, 1);
  sw_test_wait (f->n_failed == 1);
  sw_test_idle (200);
  g_assert_cmpuint (f->n_failed, ==, 1);
  g_assert_cmpint (g_rename (away, f->folder), ==, 0);
  sw_test_wait (drafted_seed (f) == 1);
  g_assert_cmpuint (f->n_failed, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)
  ADD ("/app/drafts/round-trip", test_round_trip);
  ADD ("/app/drafts/is-colourway", test_is_colourway);
  ADD ("/app/drafts/adopt", test_adopt);
  ADD ("/app/drafts/tidy", test_tidy);
  ADD ("/app/drafts/unreadable", test_unreadable);
  g_test_add_func ("/app/drafts/no-folder", test_no_folder);
#define ADD_SAVER(path, func) g_test_add (path, Saver, NULL, saver_set_up, func, saver_tear_down)
  ADD_SAVER ("/app/autosave/follows", test_follows);
  ADD_SAVER ("/app/autosave/long-drag", test_long_drag);
  ADD_SAVER ("/app/autosave/until-saved", test_until_saved);
  ADD_SAVER ("/app/autosave/give-up", test_give_up);
  ADD_SAVER ("/app/autosave/flush", test_flush);
  ADD_SAVER ("/app/autosave/other-path", test_other_path);
  ADD_SAVER ("/app/autosave/failure", test_failure);
  return g_test_run ();
}
