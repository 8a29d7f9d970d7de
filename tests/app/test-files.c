/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sw-app-test.h"

#include "files/sw-colourway.h"

#include <glib/gstdio.h>
#include <unistd.h>
#include <utime.h>

typedef struct
{
  char *folder;
  GFile *file;
  SwDocument *document;
  guint ids[5];
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  g_autofree char *path = NULL;

  f->folder = sw_test_folder ();
  path = g_build_filename (f->folder, "tide.colourway", NULL);
  f->file = g_file_new_for_path (path);
  f->document = sw_test_document (f->ids);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  sw_test_finalize (f->document);
  g_object_unref (f->file);
  sw_test_remove (f->folder);
  g_free (f->folder);
}

static void
finished_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  GAsyncResult **taken = user_data;

  *taken = g_object_ref (result);
}

static gboolean
save (SwDocument *document, GFile *file, gboolean overwrite, GError **error)
{
  g_autoptr (GAsyncResult) result = NULL;

  sw_document_save_async (document, file, overwrite, NULL, finished_cb, &result);
  sw_test_wait (result != NULL);
  return sw_document_save_finish (document, result, error);
}

static void
save_well (SwDocument *document, GFile *file)
{
  GError *error = NULL;
  gboolean saved = save (document, file, FALSE, &error);

  g_assert_no_error (error);
  g_assert_true (saved);
}

static gboolean
load (SwDocument *document, GFile *file, GError **error)
{
  g_autoptr (GAsyncResult) result = NULL;

  sw_document_load_async (document, file, NULL, finished_cb, &result);
  sw_test_wait (result != NULL);
  return sw_document_load_finish (document, result, error);
}

static void
edit (Fixture *f, gint64 seed)
{
  sw_test_edit (f->document, sw_test_set_seed (seed), "Edit");
}

/* As if by another program; file systems may count seconds only, so the time is set apart by hand. */
static void
write_behind_its_back (Fixture *f, gint64 seed)
{
  g_autoptr (SwSketch) sketch = sw_sketch_copy (sw_document_get_sketch (f->document));
  g_autofree char *text = NULL;
  struct utimbuf times = { 1000000000 + seed, 1000000000 + seed };
  GError *error = NULL;

  sketch->seed = seed;
  text = sw_colourway_print (sketch);
  g_assert_true (g_file_set_contents (g_file_peek_path (f->file), text, -1, &error));
  g_assert_no_error (error);
  g_assert_cmpint (utime (g_file_peek_path (f->file), &times), ==, 0);
}

static void
test_round_trip (Fixture *f, gconstpointer data)
{
  g_autoptr (SwSketch) drawn = NULL;
  SwDocument *other = sw_document_new ();
  GError *error = NULL;

  edit (f, 77);
  g_assert_true (sw_document_get_modified (f->document));
  save_well (f->document, f->file);
  g_assert_false (sw_document_get_modified (f->document));
  g_assert_true (g_file_equal (sw_document_get_file (f->document), f->file));
  g_assert_cmpstr (sw_document_get_title (f->document), ==, "tide");

  g_assert_true (load (other, f->file, &error));
  g_assert_no_error (error);
  g_assert_true (sw_sketch_equal (sw_document_get_sketch (f->document), sw_document_get_sketch (other)));
  g_assert_false (sw_document_get_modified (other));
  g_assert_false (sw_document_get_busy (other));
  g_assert_cmpstr (sw_document_get_etag (other), ==, sw_document_get_etag (f->document));
  sw_test_finalize (other);
}

/* Undo past a save is a change; redo back to it is none. */
static void
test_modified (Fixture *f, gconstpointer data)
{
  GError *error = NULL;

  edit (f, 5);
  save_well (f->document, f->file);
  g_assert_true (sw_document_undo (f->document, &error));
  g_assert_true (sw_document_get_modified (f->document));
  g_assert_true (sw_document_redo (f->document, &error));
  g_assert_no_error (error);
  g_assert_false (sw_document_get_modified (f->document));
}

/* What is drawn while the file is being written is not in it, and is not forgotten, even when undone to the older save. */
static void
test_edit_while_saving (Fixture *f, gconstpointer data)
{
  g_autoptr (GAsyncResult) result = NULL;
  g_autoptr (SwSketch) written = NULL;
  GError *error = NULL;

  edit (f, 1);
  save_well (f->document, f->file);
  edit (f, 2);
  sw_document_save_async (f->document, NULL, FALSE, NULL, finished_cb, &result);
  g_assert_true (sw_document_get_busy (f->document));
  edit (f, 3);
  sw_test_wait (result != NULL);
  g_assert_true (sw_document_save_finish (f->document, result, &error));
  g_assert_no_error (error);

  written = sw_colourway_load (f->file, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpint (written->seed, ==, 2);
  g_assert_true (sw_document_get_modified (f->document));
  g_assert_true (sw_document_undo (f->document, &error));
  g_assert_true (sw_document_undo (f->document, &error));
  g_assert_no_error (error);
  g_assert_cmpint (sw_document_get_sketch (f->document)->seed, ==, 1);
  g_assert_true (sw_document_get_modified (f->document));
}

static void
test_busy (Fixture *f, gconstpointer data)
{
  g_autoptr (GAsyncResult) first = NULL;
  g_autoptr (GAsyncResult) second = NULL;
  g_autoptr (GError) error = NULL;

  sw_document_save_async (f->document, f->file, FALSE, NULL, finished_cb, &first);
  sw_document_save_async (f->document, f->file, FALSE, NULL, finished_cb, &second);
  sw_test_wait (first != NULL && second != NULL);
  g_assert_false (sw_document_save_finish (f->document, second, &error));
  g_assert_error (error, SW_DOCUMENT_ERROR, SW_DOCUMENT_ERROR_BUSY);
  g_clear_error (&error);
  g_assert_true (sw_document_save_finish (f->document, first, &error));
  g_assert_no_error (error);
}

/* Another program's file is not written over unasked; asked, it is. */
static void
test_changed_on_disk (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwSketch) kept = NULL;
  g_autoptr (SwSketch) written = NULL;

  edit (f, 1);
  save_well (f->document, f->file);
  write_behind_its_back (f, 50);
  edit (f, 2);
  g_assert_false (save (f->document, NULL, FALSE, &error));
  g_assert_error (error, SW_DOCUMENT_ERROR, SW_DOCUMENT_ERROR_CHANGED);
  g_assert_nonnull (strstr (error->message, "tide.colourway"));
  g_clear_error (&error);
  g_assert_cmpint (sw_document_get_disk (f->document), ==, SW_DISK_CHANGED);
  g_assert_true (sw_document_get_modified (f->document));
  kept = sw_colourway_load (f->file, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpint (kept->seed, ==, 50);

  g_assert_true (save (f->document, NULL, TRUE, &error));
  g_assert_no_error (error);
  g_assert_cmpint (sw_document_get_disk (f->document), ==, SW_DISK_SAME);
  g_assert_false (sw_document_get_modified (f->document));
  written = sw_colourway_load (f->file, NULL, NULL, &error);
  g_assert_cmpint (written->seed, ==, 2);
}

/* Noticed without being asked, and our own saves are not taken for another's. */
static void
test_watch (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  edit (f, 1);
  save_well (f->document, f->file);
  sw_test_idle (800);
  g_assert_cmpint (sw_document_get_disk (f->document), ==, SW_DISK_SAME);
  edit (f, 2);
  save_well (f->document, NULL);
  sw_test_idle (800);
  g_assert_cmpint (sw_document_get_disk (f->document), ==, SW_DISK_SAME);

  write_behind_its_back (f, 50);
  sw_test_wait (sw_document_get_disk (f->document) == SW_DISK_CHANGED);
  g_assert_false (sw_document_get_modified (f->document));
  sw_document_keep_mine (f->document);
  g_assert_true (sw_document_get_modified (f->document));
  g_assert_cmpint (sw_document_get_disk (f->document), ==, SW_DISK_SAME);
  save_well (f->document, NULL);
  g_assert_false (sw_document_get_modified (f->document));

  g_assert_true (g_file_delete (f->file, NULL, &error));
  sw_test_wait (sw_document_get_disk (f->document) == SW_DISK_GONE);
  save_well (f->document, NULL);
  g_assert_true (g_file_query_exists (f->file, NULL));
  g_assert_cmpint (sw_document_get_disk (f->document), ==, SW_DISK_SAME);
}

/* Loading again takes what is on the disk, and forgets the history. */
static void
test_reload (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  edit (f, 1);
  save_well (f->document, f->file);
  write_behind_its_back (f, 50);
  g_assert_true (load (f->document, f->file, &error));
  g_assert_no_error (error);
  g_assert_cmpint (sw_document_get_sketch (f->document)->seed, ==, 50);
  g_assert_null (sw_document_get_undo_name (f->document));
  g_assert_cmpint (sw_document_get_disk (f->document), ==, SW_DISK_SAME);
}

/* A file that cannot be opened leaves the drawing alone, and the sentence names the file. */
static void
test_bad_load (Fixture *f, gconstpointer data)
{
  const struct
  {
    const char *name, *text; /* NULL: not there */
    SwDocumentError code;
  } rows[] = {
    { "lost.colourway", NULL, SW_DOCUMENT_ERROR_READ },
    { "empty.colourway", "", SW_DOCUMENT_ERROR_READ },
    { "half.colourway", "{ \"colourway\": 1, \"yarn\": {", SW_DOCUMENT_ERROR_READ },
    { "newer.colourway", "{ \"colourway\": 99 }", SW_DOCUMENT_ERROR_READ },
  };
  g_autoptr (SwSketch) before = NULL;

  edit (f, 9);
  before = sw_sketch_copy (sw_document_get_sketch (f->document));
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_build_filename (f->folder, rows[i].name, NULL);
      g_autoptr (GFile) file = g_file_new_for_path (path);
      g_autoptr (GError) error = NULL;

      if (rows[i].text != NULL)
        g_assert_true (g_file_set_contents (path, rows[i].text, -1, NULL));
      g_assert_false (load (f->document, file, &error));
      g_assert_error (error, SW_DOCUMENT_ERROR, (int) rows[i].code);
      g_test_message ("%s", error->message);
      g_assert_nonnull (strstr (error->message, rows[i].name));
      g_assert_true (sw_sketch_equal (before, sw_document_get_sketch (f->document)));
      g_assert_true (sw_document_get_modified (f->document));
      g_assert_false (sw_document_get_busy (f->document));
      g_assert_null (sw_document_get_file (f->document));
    }
}

/* A save that fails leaves the document as it was, still modified, still in its old file. */
static void
test_bad_save (Fixture *f, gconstpointer data)
{
  g_autofree char *lost = g_build_filename (f->folder, "no", "such", "folder.colourway", NULL);
  g_autofree char *dir = g_build_filename (f->folder, "dir.colourway", NULL);
  const char *paths[] = { lost, dir };

  g_assert_cmpint (g_mkdir (dir, 0700), ==, 0);
  edit (f, 1);
  save_well (f->document, f->file);
  edit (f, 2);
  for (gsize i = 0; i < G_N_ELEMENTS (paths); i++)
    {
      g_autoptr (GFile) file = g_file_new_for_path (paths[i]);
      g_autofree char *name = g_file_get_basename (file);
      g_autoptr (GError) error = NULL;

      g_assert_false (save (f->document, file, TRUE, &error));
      g_assert_error (error, SW_DOCUMENT_ERROR, SW_DOCUMENT_ERROR_WRITE);
      g_test_message ("%s", error->message);
      g_assert_nonnull (strstr (error->message, name));
      g_assert_true (sw_document_get_modified (f->document));
      g_assert_true (g_file_equal (sw_document_get_file (f->document), f->file));
    }
}

static void
test_read_only (Fixture *f, gconstpointer data)
{
  GError *error = NULL;

  if (geteuid () == 0)
    {
      g_test_skip ("nothing is read-only to root");
      return;
    }
  save_well (f->document, f->file);
  g_assert_cmpint (g_chmod (g_file_peek_path (f->file), 0400), ==, 0);
  g_assert_true (load (f->document, f->file, &error));
  g_assert_no_error (error);
  g_assert_true (sw_document_get_read_only (f->document));
}

/* A drawing that was brought back counts as modified until it is saved, whatever is undone. */
static void
test_recover (Fixture *f, gconstpointer data)
{
  GError *error = NULL;
  SwSketch *sketch = NULL;

  save_well (f->document, f->file);
  sketch = sw_sketch_copy (sw_document_get_sketch (f->document));
  sketch->seed = 8;
  sw_document_recover (f->document, sketch, f->file, sw_document_get_etag (f->document));
  g_assert_true (sw_document_get_modified (f->document));
  edit (f, 9);
  g_assert_true (sw_document_undo (f->document, &error));
  g_assert_no_error (error);
  g_assert_true (sw_document_get_modified (f->document));
  save_well (f->document, NULL);
  g_assert_false (sw_document_get_modified (f->document));

  /* Its file was changed while nobody looked. */
  write_behind_its_back (f, 50);
  sw_document_recover (f->document, sw_sketch_copy (sw_document_get_sketch (f->document)), f->file, "another tag");
  sw_test_wait (sw_document_get_disk (f->document) == SW_DISK_CHANGED);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)
  ADD ("/app/files/round-trip", test_round_trip);
  ADD ("/app/files/modified", test_modified);
  ADD ("/app/files/edit-while-saving", test_edit_while_saving);
  ADD ("/app/files/busy", test_busy);
  ADD ("/app/files/changed-on-disk", test_changed_on_disk);
  ADD ("/app/files/watch", test_watch);
  ADD ("/app/files/reload", test_reload);
  ADD ("/app/files/bad-load", test_bad_load);
  ADD ("/app/files/bad-save", test_bad_save);
  ADD ("/app/files/read-only", test_read_only);
  ADD ("/app/files/recover", test_recover);
  return g_test_run ();
}
