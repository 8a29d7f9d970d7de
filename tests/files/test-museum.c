/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * Broken colourways are refused with a sentence that says what is wrong, where,
 * why and what to do; odd ones are read. Every file in bad/ has its code and
 * its sentence beside it. Run with SW_RECORD=1 to write them anew, then read
 * what changed.
 */
#include "config.h"

#include "files/sw-colourway.h"

#include <string.h>

static const char *const codes[] = {
  [SW_FILE_ERROR_SYNTAX] = "syntax",
  [SW_FILE_ERROR_VERSION] = "version",
  [SW_FILE_ERROR_MEMBER] = "member",
  [SW_FILE_ERROR_SIZE] = "size",
};

/* Of a text that must be refused: its code and its sentence. */
static char *
refusal_of (const char *bytes, gsize n)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwSketch) sketch = sw_colourway_parse (bytes, n, &error);

  g_assert_null (sketch);
  g_assert_nonnull (error);
  g_assert_true (error->domain == SW_FILE_ERROR);
  g_assert_cmpint (error->code, <, G_N_ELEMENTS (codes));
  return g_strdup_printf ("%s\n%s\n", codes[error->code], error->message);
}

static void
test_bad (gconstpointer data)
{
  const char *path = data;
  g_autofree char *bytes = NULL;
  g_autofree char *refusal = NULL;
  g_autofree char *expected = NULL;
  g_autofree char *message_path = g_strdup (path);
  g_autoptr (GError) error = NULL;
  gsize n;

  memcpy (strrchr (message_path, '.'), ".txt", strlen (".txt") + 1);
  g_file_get_contents (path, &bytes, &n, &error);
  g_assert_no_error (error);
  refusal = refusal_of (bytes, n);
  if (g_getenv ("SW_RECORD") != NULL)
    g_file_set_contents (message_path, refusal, -1, &error);
  else
    g_file_get_contents (message_path, &expected, NULL, &error);
  g_assert_no_error (error);
  if (expected != NULL)
    g_assert_cmpstr (refusal, ==, expected);
}

/* Reads, and from then on prints the same. */
static void
test_good (gconstpointer data)
{
  const char *path = data;
  g_autofree char *bytes = NULL;
  g_autofree char *text = NULL;
  g_autofree char *text_again = NULL;
  g_autoptr (SwSketch) sketch = NULL;
  g_autoptr (SwSketch) again = NULL;
  g_autoptr (GError) error = NULL;
  gsize n;

  g_file_get_contents (path, &bytes, &n, &error);
  g_assert_no_error (error);
  sketch = sw_colourway_parse (bytes, n, &error);
  g_assert_no_error (error);
  text = sw_colourway_print (sketch);
  again = sw_colourway_parse (text, strlen (text), &error);
  g_assert_no_error (error);
  text_again = sw_colourway_print (again);
  g_assert_true (sw_sketch_equal (sketch, again));
  g_assert_cmpstr (text, ==, text_again);
}

/* Exhibits too large for a folder: @n times @unit between @head and @tail. */
static const struct
{
  const char *name, *head, *unit, *tail;
  gsize n;
  SwFileError code;
} large[] = {
  { "deep-lists", "{\"colourway\":1,\"x\":", "[", "", 1000000, SW_FILE_ERROR_SIZE },
  { "deep-objects", "", "{\"x\":", "", 1000000, SW_FILE_ERROR_SIZE },
  { "deep-and-closed", "{\"colourway\":1,\"x\":[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[", "", "]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]}", 1, SW_FILE_ERROR_SIZE },
  { "many-values", "{\"colourway\":1,\"x\":[0", ",0", "]}", 300000, SW_FILE_ERROR_SIZE },
  { "many-objects", "{\"colourway\":1,\"x\":[0", ",{}", "]}", 300000, SW_FILE_ERROR_SIZE },
  { "many-bytes", "{\"colourway\":1,\"title\":\"", "0123456789", "\"}", 900000, SW_FILE_ERROR_SIZE },
  { "many-steps", "{\"colourway\":1,\"steps\":[{\"id\":0}", ",{\"id\":1,\"kind\":\"flip\"}", "]}", 5000, SW_FILE_ERROR_MEMBER },
  { "long-number", "{\"colourway\":1,\"seed\":1", "0", "}", 1000000, SW_FILE_ERROR_MEMBER },
  { "long-text", "{\"colourway\":1,\"notes\":\"", "tide ", "\"}", 1000000, SW_FILE_ERROR_MEMBER },
  { "long-line-of-errors", "{\"colourway\":1,\"x\":[", "\xc3\xa9", "", 1000000, SW_FILE_ERROR_SYNTAX },
};

static void
test_large (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  g_autoptr (GString) text = g_string_new (large[i].head);
  g_autoptr (GError) error = NULL;

  for (gsize k = 0; k < large[i].n; k++)
    g_string_append (text, large[i].unit);
  g_string_append (text, large[i].tail);
  g_assert_null (sw_colourway_parse (text->str, text->len, &error));
  g_assert_error (error, SW_FILE_ERROR, (int) large[i].code);
  g_assert_cmpuint (strlen (error->message), <, 400);
}

/* Just within the limits of depth, values and bytes. */
static void
test_large_enough (void)
{
  g_autoptr (GString) text = g_string_new ("{\"colourway\":1,\"x\":[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]],\"y\":[0");
  g_autoptr (SwSketch) sketch = NULL;
  g_autoptr (GError) error = NULL;

  g_test_summary ("A large file is read as long as it is within the limits");

  for (int i = 0; i < 190000; i++)
    g_string_append (text, ",0");
  g_string_append (text, "],\"z\":\"");
  for (int i = 0; i < 700000; i++)
    g_string_append (text, "0123456789");
  g_string_append (text, "\"}");
  sketch = sw_colourway_parse (text->str, text->len, &error);
  g_assert_no_error (error);
  g_assert_nonnull (sketch);
}

/* A text cut at every byte is refused or read, and never more. */
static void
test_cut (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "files", "good", "unknown-members.colourway", NULL);
  g_autofree char *text = NULL;
  gsize n;

  g_test_summary ("A file that ends at any byte is refused with a sentence");

  g_assert_true (g_file_get_contents (path, &text, &n, NULL));
  g_strchomp (text);
  n = strlen (text);
  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *cut = g_memdup2 (text, i); /* not ended by a zero, so that reading on is seen by a sanitizer */
      g_autofree char *refusal = refusal_of (cut, i);

      g_assert_true (g_str_has_prefix (refusal, "syntax\nLine "));
    }
}

static void
add_folder (const char *folder, GTestDataFunc test)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "files", folder, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GDir) dir = g_dir_open (path, 0, &error);
  const char *name;
  guint n = 0;

  g_assert_no_error (error);
  while ((name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, ".colourway"))
      {
        g_autofree char *test_path = g_strdup_printf ("/files/museum/%s/%.*s", folder, (int) (strlen (name) - strlen (".colourway")), name);

        g_test_add_data_func_full (test_path, g_build_filename (path, name, NULL), test, g_free);
        n++;
      }
  g_assert_cmpuint (n, >, 10);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add_folder ("bad", test_bad);
  add_folder ("good", test_good);
  for (gsize i = 0; i < G_N_ELEMENTS (large); i++)
    {
      g_autofree char *test_path = g_strconcat ("/files/museum/large/", large[i].name, NULL);

      g_test_add_data_func (test_path, GSIZE_TO_POINTER (i), test_large);
    }
  g_test_add_func ("/files/museum/large-enough", test_large_enough);
  g_test_add_func ("/files/museum/cut", test_cut);
  return g_test_run ();
}
