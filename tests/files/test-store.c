/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Saving either takes place whole or leaves the old file, and the folder, as they were. */
#include "config.h"

#include "files/sw-colourway.h"

#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#define OLD_TEXT "{\"colourway\":1,\"title\":\"Old\"}"

typedef struct
{
  char *folder;
  char *path; /* of a colourway in it */
  GFile *file;
  SwSketch *sketch;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  fixture->folder = g_dir_make_tmp ("strandwise-XXXXXX", &error);
  g_assert_no_error (error);
  fixture->path = g_build_filename (fixture->folder, "tide.colourway", NULL);
  g_assert_true (g_file_set_contents (fixture->path, OLD_TEXT, -1, NULL));
  fixture->file = g_file_new_for_path (fixture->path);
  fixture->sketch = sw_sketch_new ();
  g_free (fixture->sketch->title);
  fixture->sketch->title = g_strdup ("New");
}

static guint
count_files (const char *folder, gboolean and_remove)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  guint n = 0;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      n++;
      if (and_remove)
        g_remove (path);
    }
  return n;
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_chmod (fixture->folder, 0700);
  count_files (fixture->folder, TRUE);
  g_assert_cmpint (g_rmdir (fixture->folder), ==, 0);
  g_free (fixture->folder);
  g_free (fixture->path);
  g_object_unref (fixture->file);
  sw_sketch_free (fixture->sketch);
}

static void
assert_title (GFile *file, const char *title)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwSketch) sketch = sw_colourway_load (file, NULL, NULL, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (sketch->title, ==, title);
}

/* A saving that must fail, with the old file whole and nothing else left behind. */
static void
assert_refused (Fixture *fixture, GFile *file, char **etag, int code)
{
  g_autoptr (GError) error = NULL;
  guint before = count_files (fixture->folder, FALSE);

  g_assert_false (sw_colourway_save (fixture->sketch, file, etag, NULL, &error));
  g_assert_nonnull (error);
  g_assert_true (error->domain == G_IO_ERROR);
  if (code >= 0)
    g_assert_cmpint (error->code, ==, code);
  g_assert_true (g_str_has_suffix (error->message, "."));
  g_assert_cmpuint (count_files (fixture->folder, FALSE), ==, before);
  assert_title (fixture->file, "Old");
}

static void
test_save (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  g_autofree char *printed = sw_colourway_print (fixture->sketch);

  g_test_summary ("What is saved is what is printed, and nothing else is left in the folder");

  g_assert_true (sw_colourway_save (fixture->sketch, fixture->file, NULL, NULL, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (fixture->path, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, printed);
  g_assert_cmpuint (count_files (fixture->folder, FALSE), ==, 1);
}

static void
test_new_file (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "new.colourway", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *etag = NULL;
  mode_t mask = umask (0);
  struct stat now;

  g_test_summary ("A new file gets the mode that any new file gets");

  umask (027);
  g_assert_true (sw_colourway_save (fixture->sketch, file, &etag, NULL, NULL));
  umask (mask);
  g_assert_cmpint (stat (path, &now), ==, 0);
  g_assert_cmpint (now.st_mode & 0777, ==, 0640);
  g_assert_nonnull (etag);
  assert_title (file, "New");
}

static void
test_etag (Fixture *fixture, gconstpointer data)
{
  g_autofree char *etag = NULL;
  g_autofree char *stale = NULL;
  g_autofree char *kept = NULL;
  g_autoptr (SwSketch) sketch = sw_colourway_load (fixture->file, &etag, NULL, NULL);

  g_test_summary ("A file that changed since it was opened is not overwritten, unless asked to");

  g_assert_nonnull (etag);
  stale = g_strdup (etag);
  g_usleep (20000); /* so that the time in the tag moves on */
  g_assert_true (sw_colourway_save (sketch, fixture->file, &etag, NULL, NULL));
  g_assert_cmpstr (etag, !=, stale);
  kept = g_strdup (stale);
  assert_refused (fixture, fixture->file, &stale, G_IO_ERROR_WRONG_ETAG);
  g_assert_cmpstr (stale, ==, kept);
  g_assert_true (sw_colourway_save (fixture->sketch, fixture->file, &etag, NULL, NULL));
  g_clear_pointer (&stale, g_free);
  g_assert_true (sw_colourway_save (fixture->sketch, fixture->file, &stale, NULL, NULL));
  g_assert_nonnull (stale);
}

static void
test_gone (Fixture *fixture, gconstpointer data)
{
  g_autofree char *etag = NULL;
  g_autoptr (SwSketch) sketch = sw_colourway_load (fixture->file, &etag, NULL, NULL);

  g_test_summary ("A file that was deleted since it was opened is written again");

  g_assert_nonnull (sketch);
  g_assert_cmpint (g_unlink (fixture->path), ==, 0);
  g_assert_true (sw_colourway_save (fixture->sketch, fixture->file, &etag, NULL, NULL));
  assert_title (fixture->file, "New");
}

static void
test_link (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "link.colourway", NULL);
  g_autoptr (GFile) link = g_file_new_for_path (path);
  struct stat now;

  g_test_summary ("A link stays a link, and what it leads to is saved");

  g_assert_cmpint (symlink ("tide.colourway", path), ==, 0);
  g_assert_true (sw_colourway_save (fixture->sketch, link, NULL, NULL, NULL));
  g_assert_cmpint (lstat (path, &now), ==, 0);
  g_assert_true (S_ISLNK (now.st_mode));
  assert_title (fixture->file, "New");
}

static void
test_link_to_nowhere (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "link.colourway", NULL);
  g_autoptr (GFile) link = g_file_new_for_path (path);

  g_test_summary ("A link to nothing is not replaced by a file");

  g_assert_cmpint (symlink ("nowhere/tide.colourway", path), ==, 0);
  assert_refused (fixture, link, NULL, G_IO_ERROR_NOT_FOUND);
}

static void
test_permissions (Fixture *fixture, gconstpointer data)
{
  static const mode_t modes[] = { 0600, 0640, 0664, 0755 };
  struct stat now;

  g_test_summary ("Permissions are kept, whatever the mask for new files");

  for (gsize i = 0; i < G_N_ELEMENTS (modes); i++)
    {
      g_assert_cmpint (g_chmod (fixture->path, (int) modes[i]), ==, 0);
      g_assert_true (sw_colourway_save (fixture->sketch, fixture->file, NULL, NULL, NULL));
      g_assert_cmpint (stat (fixture->path, &now), ==, 0);
      g_assert_cmpint (now.st_mode & 07777, ==, modes[i]);
    }
}

/* The system's limit on the size of a file fails a write as a full disk does. */
static void
test_full_disk (Fixture *fixture, gconstpointer data)
{
  struct rlimit had, limit;
  g_autoptr (GError) error = NULL;
  gboolean saved;

  g_test_summary ("A write that fails half way leaves the old file");

  g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &had), ==, 0);
  limit = had;
  limit.rlim_cur = 100;
  signal (SIGXFSZ, SIG_IGN);
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &limit), ==, 0);
  saved = sw_colourway_save (fixture->sketch, fixture->file, NULL, NULL, &error);
  setrlimit (RLIMIT_FSIZE, &had);
  signal (SIGXFSZ, SIG_DFL);
  g_assert_false (saved);
  g_assert_true (error->domain == G_IO_ERROR);
  assert_title (fixture->file, "Old");
  g_assert_cmpuint (count_files (fixture->folder, FALSE), ==, 1);
}

static void
test_folder_read_only (Fixture *fixture, gconstpointer data)
{
  g_test_summary ("In a folder that may not be written to, the old file is not written over in place");

  if (geteuid () == 0)
    {
      g_test_skip ("root may write everywhere; the next test stands in");
      return;
    }
  g_assert_cmpint (g_chmod (fixture->folder, 0500), ==, 0);
  assert_refused (fixture, fixture->file, NULL, G_IO_ERROR_PERMISSION_DENIED);
}

static void
test_file_read_only (Fixture *fixture, gconstpointer data)
{
  g_test_summary ("A file that may not be written to is not replaced by another");

  if (geteuid () == 0)
    {
      g_test_skip ("root may write everywhere");
      return;
    }
  g_assert_cmpint (g_chmod (fixture->path, 0400), ==, 0);
  assert_refused (fixture, fixture->file, NULL, G_IO_ERROR_PERMISSION_DENIED);
}

/* Places where nobody can save, and what they answer (-1: it depends on the system). */
static const struct
{
  const char *name, *path;
  int code;
} places[] = {
  { "folder", "/tmp", G_IO_ERROR_NOT_REGULAR_FILE },
  { "full-device", "/dev/full", G_IO_ERROR_NOT_REGULAR_FILE },
  { "no-folder", "/nowhere/at/all/tide.colourway", G_IO_ERROR_NOT_FOUND },
  { "kernel-folder", "/proc/tide.colourway", -1 },
  { "file-as-folder", "/etc/passwd/tide.colourway", -1 },
};

static void
test_place (Fixture *fixture, gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  g_autoptr (GFile) file = g_file_new_for_path (places[i].path);

  assert_refused (fixture, file, NULL, places[i].code);
}

static void
test_cancelled (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  g_test_summary ("A saving that was cancelled changes nothing");

  g_cancellable_cancel (cancellable);
  g_assert_false (sw_colourway_save (fixture->sketch, fixture->file, NULL, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  assert_title (fixture->file, "Old");
}

static void
test_load_refusals (Fixture *fixture, gconstpointer data)
{
  g_autofree char *missing_path = g_build_filename (fixture->folder, "missing.colourway", NULL);
  g_autoptr (GFile) missing = g_file_new_for_path (missing_path);
  g_autoptr (GFile) folder = g_file_new_for_path (fixture->folder);
  g_autoptr (GFile) endless = g_file_new_for_path ("/dev/zero");
  g_autofree char *etag = g_strdup ("untouched");
  g_autoptr (GError) error = NULL;

  g_test_summary ("What cannot be read is said, and an endless file is not read to its end");

  g_assert_null (sw_colourway_load (missing, NULL, NULL, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_null (sw_colourway_load (folder, NULL, NULL, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_IS_DIRECTORY);
  g_clear_error (&error);
  g_assert_null (sw_colourway_load (endless, NULL, NULL, &error));
  g_assert_error (error, SW_FILE_ERROR, SW_FILE_ERROR_SIZE);
}

#define ADD(name, function) g_test_add ("/files/store/" name, Fixture, NULL, set_up, function, tear_down)

/* Saves @sketch with a mark at @mark in @folder, and tells the mark's path in the file. */
static char *
kept_mark (SwSketch *sketch, GFile *file, const char *mark)
{
  g_autoptr (SwSketch) parsed = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  gsize n;

  g_free (sketch->listing.mark);
  sketch->listing.mark = g_strdup (mark);
  g_assert_true (sw_colourway_save (sketch, file, NULL, NULL, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (sketch->listing.mark, ==, mark); /* the sketch in memory stays as it was */
  g_assert_true (g_file_load_contents (file, NULL, &text, &n, NULL, &error));
  parsed = sw_colourway_parse (text, n, &error);
  g_assert_no_error (error);
  return g_strdup (parsed->listing.mark);
}

static char *
found_mark (GFile *file)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwSketch) sketch = sw_colourway_load (file, NULL, NULL, &error);

  g_assert_no_error (error);
  return g_strdup (sketch->listing.mark);
}

/* A mark in the colourway's folder, beneath, beside or two up is told from it; and the folder can be moved. */
static void
test_mark (void)
{
  g_autofree char *top = g_dir_make_tmp (NULL, NULL);
  g_autofree char *shop = g_build_filename (top, "shop", NULL), *moved = g_build_filename (top, "moved", NULL), *art = g_build_filename (shop, "art", NULL);
  const struct
  {
    const char *folder, *name, *kept;
  } rows[] = { { shop, "mark.png", "mark.png" }, { art, "mark.png", "art/mark.png" }, { top, "mark.png", "../mark.png" }, { "/nowhere/at/all", "mark.png", "/nowhere/at/all/mark.png" } };
  g_autofree char *place = g_build_filename (shop, "a.colourway", NULL), *new_place = g_build_filename (moved, "a.colourway", NULL), *new_mark = g_build_filename (moved, "mark.png", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (place);
  g_autoptr (GFile) new_file = g_file_new_for_path (new_place);
  g_autoptr (SwSketch) sketch = sw_sketch_new ();

  g_assert_cmpint (g_mkdir_with_parents (art, 0700), ==, 0);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *mark = g_build_filename (rows[i].folder, rows[i].name, NULL);
      g_autofree char *kept = kept_mark (sketch, file, mark);
      g_autofree char *found = found_mark (file);

      g_assert_cmpstr (kept, ==, rows[i].kept);
      g_assert_cmpstr (found, ==, mark);
    }
  {
    /* Told as a whole path that no longer leads anywhere, but the mark came along; then by its way from the file. */
    g_autofree char *here = g_build_filename (shop, "mark.png", NULL);
    g_autofree char *kept = kept_mark (sketch, file, "/nowhere/at/all/mark.png");
    g_autofree char *beside = NULL;
    g_autofree char *kept_here = NULL;
    g_autofree char *after = NULL;

    g_assert_cmpstr (kept, ==, "/nowhere/at/all/mark.png");
    g_assert_true (g_file_set_contents (here, "mark", -1, NULL));
    beside = found_mark (file);
    g_assert_cmpstr (beside, ==, here);
    kept_here = kept_mark (sketch, file, here);
    g_assert_cmpint (g_rename (shop, moved), ==, 0);
    after = found_mark (new_file);
    g_assert_cmpstr (after, ==, new_mark);
  }
  g_remove (new_mark);
  g_remove (new_place);
  {
    g_autofree char *moved_art = g_build_filename (moved, "art", NULL);

    g_rmdir (moved_art);
  }
  g_rmdir (moved);
  g_rmdir (top);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD ("save", test_save);
  ADD ("new-file", test_new_file);
  ADD ("etag", test_etag);
  ADD ("gone", test_gone);
  ADD ("link", test_link);
  ADD ("link-to-nowhere", test_link_to_nowhere);
  ADD ("permissions", test_permissions);
  ADD ("full-disk", test_full_disk);
  ADD ("folder-read-only", test_folder_read_only);
  ADD ("file-read-only", test_file_read_only);
  ADD ("cancelled", test_cancelled);
  ADD ("load-refusals", test_load_refusals);
  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    {
      g_autofree char *path = g_strconcat ("/files/store/refused/", places[i].name, NULL);

      g_test_add (path, Fixture, GSIZE_TO_POINTER (i), set_up, test_place, tear_down);
    }
  g_test_add_func ("/files/store/mark", test_mark);
  return g_test_run ();
}
