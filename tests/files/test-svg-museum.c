/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * Drawings that are no layouts are refused with a sentence; odd ones are read,
 * and nothing outside them is. Every file in bad-svg/ has its code and its
 * sentence beside it. Run with SW_RECORD=1 to write them anew, then read what
 * changed.
 */
#include "../sw-test-sketch.h"

#include "files/sw-colourway.h"
#include "files/sw-svg.h"

#include <string.h>

static const char *const codes[] = {
  [SW_FILE_ERROR_SYNTAX] = "syntax",
  [SW_FILE_ERROR_MEMBER] = "member",
  [SW_FILE_ERROR_SIZE] = "size",
  [SW_FILE_ERROR_REFUSED] = "refused",
};

static char *
refusal_of (const char *bytes, gsize n)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwSketch) before = sw_sketch_copy (sketch);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwTraced) traced = sw_svg_read (bytes, n, sketch, &error);

  g_assert_null (traced);
  g_assert_nonnull (error);
  g_assert_true (error->domain == SW_FILE_ERROR);
  g_assert_cmpint (error->code, <, G_N_ELEMENTS (codes));
  g_assert_nonnull (codes[error->code]);
  g_assert_cmpuint (strlen (error->message), <, 400);
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  g_assert_true (sw_sketch_equal (sketch, before));
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

/* One band of 50 mm, whatever else is in it. */
static void
test_good (gconstpointer data)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (GFile) file = g_file_new_for_path (data);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = sw_svg_load (file, NULL, &error);
  g_autoptr (SwTraced) traced = bytes != NULL ? sw_svg_read (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), sketch, &error) : NULL;
  const SwStep *pour;

  g_assert_no_error (error);
  g_assert_cmpuint (traced->pours->len, ==, 1);
  pour = g_array_index (traced->pours, SwTracedPour, 0).pour;
  g_assert_cmpint (pour->kind, ==, SW_STEP_BAND);
  g_assert_cmpfloat_with_epsilon (pour->x_cm, 10.5, 0.01);
  g_assert_cmpfloat_with_epsilon (pour->width_cm, 5, 0.01);
}

/* Exhibits too large for a folder: @n times @unit between @head and @tail; %u is the place of the unit. */
#define HEAD "<svg xmlns='http://www.w3.org/2000/svg' width='640mm' height='120mm' viewBox='0 0 640 120'><rect id='lay' x='20' y='20' width='600' height='80'/>"

static const struct
{
  const char *name, *head, *unit, *tail;
  guint n;
  SwFileError code;
} large[] = {
  { "many-elements", HEAD, "<g/>", "</svg>", SW_SVG_MAX_ELEMENTS + 1, SW_FILE_ERROR_SIZE },
  { "deep", HEAD, "<g>", "", SW_SVG_MAX_DEPTH + 1, SW_FILE_ERROR_SIZE },
  { "very-deep", HEAD, "<g>", "", 15000, SW_FILE_ERROR_SIZE },
  { "many-points", HEAD "<path d='M100 100", " 140 20", "z'/></svg>", SW_SVG_MAX_POINTS + 1, SW_FILE_ERROR_SIZE },
  { "many-curves", HEAD "<path d='M0 0C", " 9e5 9e5 -9e5 0 0 9e5", "z'/></svg>", 5000, SW_FILE_ERROR_SIZE },
  { "many-shapes", HEAD, "<rect x='100' y='30' width='9' height='9'/>", "</svg>", SW_SVG_MAX_POURS + 1, SW_FILE_ERROR_SIZE },
  { "many-dyes", HEAD, "<rect x='100' y='30' width='9' height='9' fill='rgb(%u,0,0)'/>", "</svg>", 60, SW_FILE_ERROR_SIZE },
  { "many-bytes", HEAD "<text>", "0123456789", "</text></svg>", 900000, SW_FILE_ERROR_SIZE },
  { "one-long-attribute", HEAD "<g id='", "0123456789", "'/></svg>", 800000, SW_FILE_ERROR_MEMBER },
  { "many-attributes", HEAD "<g", " a%u='0'", "/></svg>", 50000, SW_FILE_ERROR_MEMBER },
  { "many-namespaces", HEAD "<g", " xmlns:a%u='b'", "/></svg>", 5000, SW_FILE_ERROR_MEMBER },
  { "many-numbers", HEAD "<rect id='a' transform='matrix(", "1 ", ")'/></svg>", 100000, SW_FILE_ERROR_MEMBER },
  { "a-long-number", HEAD "<rect id='a' x='", "1", "'/></svg>", 100000, SW_FILE_ERROR_MEMBER },
};

static void
test_large (gconstpointer data)
{
  const gsize i = GPOINTER_TO_SIZE (data);
  g_autoptr (GString) text = g_string_new (large[i].head);
  g_autofree char *refusal = NULL;
  const char *place = strstr (large[i].unit, "%u");

  for (guint k = 0; k < large[i].n; k++)
    if (place != NULL)
      g_string_append_printf (text, "%.*s%u%s", (int) (place - large[i].unit), large[i].unit, 4 * k, place + 2);
    else
      g_string_append (text, large[i].unit);
  g_string_append (text, large[i].tail);
  refusal = refusal_of (text->str, text->len);
  g_assert_true (g_str_has_prefix (refusal, codes[large[i].code]));
}

static int
add_folder (const char *folder, GTestDataFunc test)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "files", folder, NULL);
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;
  int n = 0;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, ".svg"))
      {
        g_autofree char *test_path = g_strdup_printf ("/svg-museum/%s/%s", folder, name);

        g_test_add_data_func_full (test_path, g_build_filename (path, name, NULL), test, g_free);
        n++;
      }
  return n;
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_assert_cmpint (add_folder ("bad-svg", test_bad), >=, 40);
  g_assert_cmpint (add_folder ("good-svg", test_good), >=, 10);
  for (gsize i = 0; i < G_N_ELEMENTS (large); i++)
    {
      g_autofree char *path = g_strdup_printf ("/svg-museum/large/%s", large[i].name);

      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_large);
    }
  return g_test_run ();
}
