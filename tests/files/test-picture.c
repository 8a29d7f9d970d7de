/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "../sw-test-sketch.h"

#include "files/sw-colourway.h"
#include "files/sw-jpeg-private.h"
#include "files/sw-picture.h"
#include "forecast/sw-forecast.h"

#include <cairo.h>
#include <glib/gstdio.h>
#include <libxml/parser.h>
#include <libxml/tree.h>
#include <stdlib.h>
#include <string.h>

/* Pictures as files: what other programs will find in them. */

static SwForecast *forecast;

static GBytes *
render (SwPicture picture, SwFormat format, int width, int height)
{
  g_autoptr (GError) error = NULL;
  SwLook look = sw_look_plain;
  GBytes *bytes = sw_picture_render (picture, format, forecast, width, height, &look, &error);

  g_assert_no_error (error);
  return bytes;
}

static guint32
read_u32 (const guint8 *data)
{
  return (guint32) data[0] << 24 | (guint32) data[1] << 16 | (guint32) data[2] << 8 | data[3];
}

/* The checksum of the PNG specification (W3C Recommendation 2003), Annex D, bit by bit. */
static guint32
crc32_of (const guint8 *data, gsize n)
{
  guint32 crc = 0xffffffffu;

  for (gsize i = 0; i < n; i++)
    {
      crc ^= data[i];
      for (int bit = 0; bit < 8; bit++)
        crc = crc >> 1 ^ (crc & 1 ? 0xedb88320u : 0);
    }
  return ~crc;
}

/* Walks the chunks, checking each one's checksum; their types joined by blanks. */
static char *
chunk_types (const guint8 *data, gsize n, GHashTable *first_of_type)
{
  static const guint8 signature[] = { 137, 'P', 'N', 'G', 13, 10, 26, 10 };
  GString *types = g_string_new (NULL);
  gsize at = sizeof signature;

  g_assert_cmpmem (data, at, signature, sizeof signature);
  while (at < n)
    {
      const guint32 length = read_u32 (data + at);
      g_autofree char *type = g_strndup ((const char *) data + at + 4, 4);

      g_assert_cmpuint (at + 12 + length, <=, n);
      g_assert_cmphex (read_u32 (data + at + 8 + length), ==, crc32_of (data + at + 4, 4 + length));
      if (!g_hash_table_contains (first_of_type, type))
        {
          g_string_append_printf (types, "%s%s", types->len > 0 ? " " : "", type);
          g_hash_table_insert (first_of_type, g_strdup (type), (gpointer) (data + at));
        }
      at += 12 + length;
    }
  g_assert_cmpuint (at, ==, n);
  return g_string_free (types, FALSE);
}

static void
test_png (gconstpointer picture)
{
  g_autoptr (GBytes) bytes = render (GPOINTER_TO_INT (picture), SW_FORMAT_PNG, 321, 203);
  g_autoptr (GHashTable) chunks = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  gsize n;
  const guint8 *data = g_bytes_get_data (bytes, &n);
  g_autofree char *types = chunk_types (data, n, chunks);
  static const char *const ahead[] = { "sRGB", "gAMA", "cHRM", "pHYs", "iTXt", "tEXt" };
  const guint8 *chunk, *pixels = g_hash_table_lookup (chunks, "IDAT");

  /* Colour space and size stand before the pixels, as the specification asks; so do the words, where a reader of the head finds them. */
  g_assert_true (g_str_has_prefix (types, "IHDR "));
  g_assert_true (g_str_has_suffix (types, " IDAT IEND"));
  for (gsize i = 0; i < G_N_ELEMENTS (ahead); i++)
    {
      chunk = g_hash_table_lookup (chunks, ahead[i]);
      g_assert_nonnull (chunk);
      g_assert_true (chunk < pixels);
    }
  chunk = g_hash_table_lookup (chunks, "IHDR");
  g_assert_cmpuint (read_u32 (chunk + 8), ==, 321);
  g_assert_cmpuint (read_u32 (chunk + 12), ==, 203);
  chunk = g_hash_table_lookup (chunks, "pHYs");
  g_assert_cmpuint (read_u32 (chunk + 8), ==, 3780); /* 96 / 0.0254 */
  g_assert_cmpuint (chunk[16], ==, 1);
  chunk = g_hash_table_lookup (chunks, "iTXt");
  g_assert_cmpstr ((const char *) chunk + 8, ==, "Title");
}

typedef struct
{
  const guint8 *data;
  gsize n, at;
} Source;

static cairo_status_t
read_cb (void *closure, unsigned char *data, unsigned int n)
{
  Source *source = closure;

  if (source->at + n > source->n)
    return CAIRO_STATUS_READ_ERROR;
  memcpy (data, source->data + source->at, n);
  source->at += n;
  return CAIRO_STATUS_SUCCESS;
}

/* Another reader finds the pixels that cairo painted. */
static void
test_png_pixels (gconstpointer picture)
{
  g_autoptr (GBytes) bytes = render (GPOINTER_TO_INT (picture), SW_FORMAT_PNG, 240, 160);
  Source source = { g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), 0 };
  cairo_surface_t *read = cairo_image_surface_create_from_png_stream (read_cb, &source);
  cairo_surface_t *painted = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 240, 160);
  cairo_t *cr = cairo_create (painted);

  switch (GPOINTER_TO_INT (picture))
    {
    case SW_PICTURE_PAN:
      sw_draw_pan (cr, forecast, 240, 160, &sw_look_plain);
      break;
    case SW_PICTURE_STRIP:
      sw_draw_strip (cr, forecast, 240, 160, &sw_look_plain);
      break;
    case SW_PICTURE_CLOTH:
      sw_draw_cloth (cr, forecast, 240, 160, &sw_look_plain);
      break;
    case SW_PICTURE_ITEM:
      sw_draw_item (cr, forecast, 240, 160, &sw_look_plain);
      break;
    case SW_PICTURE_SKEIN:
      sw_draw_skein (cr, forecast, 240, 160, &sw_look_plain);
      break;
    case SW_PICTURE_HANK:
      sw_draw_hank (cr, forecast, 240, 160, &sw_look_plain);
      break;
    case SW_PICTURE_LISTING:
      sw_draw_listing (cr, forecast, 240, 160, &sw_look_plain);
      break;
    default:
      sw_draw_scan (cr, forecast, 10, 600, 240, 160, &sw_look_plain);
      break;
    }
  cairo_surface_flush (painted);
  for (int y = 0; y < 160; y++)
    {
      const guint32 *a = (const guint32 *) (gconstpointer) (cairo_image_surface_get_data (read) + y * cairo_image_surface_get_stride (read));
      const guint32 *b = (const guint32 *) (gconstpointer) (cairo_image_surface_get_data (painted) + y * cairo_image_surface_get_stride (painted));

      for (int x = 0; x < 240; x++)
        g_assert_cmphex (a[x] & 0xffffff, ==, b[x] & 0xffffff);
    }
  cairo_destroy (cr);
  cairo_surface_destroy (painted);
  cairo_surface_destroy (read);
}

static void
test_svg (gconstpointer picture)
{
  g_autoptr (GBytes) bytes = render (GPOINTER_TO_INT (picture), SW_FORMAT_SVG, 320, 200);
  gsize n;
  const char *data = g_bytes_get_data (bytes, &n);
  xmlDoc *document = xmlReadMemory (data, (int) n, NULL, NULL, XML_PARSE_NONET | XML_PARSE_HUGE);
  xmlNode *root;
  xmlChar *width, *title;

  g_assert_nonnull (document);
  root = xmlDocGetRootElement (document);
  g_assert_cmpstr ((const char *) root->name, ==, "svg");
  width = xmlGetProp (root, (const xmlChar *) "width");
  g_assert_cmpstr ((const char *) width, ==, "320px");
  title = xmlNodeGetContent (xmlFirstElementChild (root));
  g_assert_cmpstr ((const char *) xmlFirstElementChild (root)->name, ==, "title");
  g_assert_cmpstr ((const char *) title, ==, "Red & <blue>");
  xmlFree (width);
  xmlFree (title);
  xmlFreeDoc (document);
}

static gsize
count (const char *haystack, gsize n, const char *needle)
{
  gsize found = 0;

  for (gsize i = 0; i + strlen (needle) <= n; i++)
    if (memcmp (haystack + i, needle, strlen (needle)) == 0)
      found++;
  return found;
}

static void
test_pdf (gconstpointer picture)
{
  g_autoptr (GBytes) bytes = render (GPOINTER_TO_INT (picture), SW_FORMAT_PDF, 320, 200);
  g_autofree char *pdfinfo = g_find_program_in_path ("pdfinfo");
  gsize n;
  const char *data = g_bytes_get_data (bytes, &n);

  g_assert_cmpmem (data, 5, "%PDF-", 5);
  g_assert_cmpuint (count (data, n, "/CreationDate"), ==, 0);
  if (pdfinfo != NULL)
    {
      const char *argv[] = { pdfinfo, "-", NULL };
      g_autoptr (GError) error = NULL;
      g_autoptr (GSubprocess) process = g_subprocess_newv (argv, G_SUBPROCESS_FLAGS_STDIN_PIPE | G_SUBPROCESS_FLAGS_STDOUT_PIPE, &error);
      g_autoptr (GBytes) out = NULL;
      g_autofree char *text = NULL;

      g_assert_no_error (error);
      g_subprocess_communicate (process, bytes, NULL, &out, NULL, &error);
      g_assert_no_error (error);
      text = g_strndup (g_bytes_get_data (out, NULL), g_bytes_get_size (out));
      g_assert_nonnull (g_strrstr (text, "Pages:           1\n"));
      g_assert_nonnull (g_strrstr (text, "240 x 150 pts"));
      g_assert_nonnull (g_strrstr (text, "Red & <blue>"));
    }
}

static gboolean
holds (const guint8 *data, gsize n, const char *words)
{
  for (gsize i = 0; i + strlen (words) <= n; i++)
    if (memcmp (data + i, words, strlen (words)) == 0)
      return TRUE;
  return FALSE;
}

/* A JPEG says its size, its colours and its words in its head, and shows what the PNG shows. */
static void
test_jpeg (gconstpointer picture)
{
  g_autoptr (GBytes) bytes = render (GPOINTER_TO_INT (picture), SW_FORMAT_JPEG, 240, 160);
  g_autoptr (GBytes) exact = render (GPOINTER_TO_INT (picture), SW_FORMAT_PNG, 240, 160);
  g_autoptr (GError) error = NULL;
  gsize n;
  const guint8 *data = g_bytes_get_data (bytes, &n);
  Source source = { g_bytes_get_data (exact, NULL), g_bytes_get_size (exact), 0 };
  cairo_surface_t *read = sw_jpeg_decode (data, n, &error), *png = cairo_image_surface_create_from_png_stream (read_cb, &source);
  double off = 0;

  g_assert_no_error (error);
  g_assert_cmpmem (data, 4, "\xff\xd8\xff\xe0", 4);
  g_assert_cmpmem (data + 6, 5, "JFIF", 5);
  g_assert_cmpmem (data + 13, 5, "\x01\x00\x60\x00\x60", 5); /* 96 to the inch, both ways: ITU-T T.871, 10.1 */
  g_assert_true (holds (data, n, "ICC_PROFILE"));
  g_assert_true (holds (data, n, "sRGB") || holds (data, n, "s\0R\0G\0B"));
  g_assert_true (holds (data, n, "Red &amp; &lt;blue&gt;"));
  g_assert_cmpint (cairo_image_surface_get_width (read), ==, 240);
  g_assert_cmpint (cairo_image_surface_get_height (read), ==, 160);
  for (int y = 0; y < 160; y++)
    for (int x = 0; x < 4 * 240; x++)
      if (x % 4 != 3)
        off += abs (cairo_image_surface_get_data (read)[y * cairo_image_surface_get_stride (read) + x] - cairo_image_surface_get_data (png)[y * cairo_image_surface_get_stride (png) + x]);
  g_assert_cmpfloat (off / (3 * 240 * 160), <, 4);
  cairo_surface_destroy (read);
  cairo_surface_destroy (png);
}

/* The maker's mark is in the listing; one that is not there is told of by its name. */
static void
test_mark (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_copy (forecast->sketch);
  g_autoptr (GBytes) without = render (SW_PICTURE_LISTING, SW_FORMAT_PNG, 200, 200);
  g_autofree char *folder = g_dir_make_tmp (NULL, NULL), *path = g_build_filename (folder, "mark.jpg", NULL);
  /* A folder, a device that never ends, words, and a PNG of 60000 x 60000 pixels in 33 bytes. */
  static const char bomb[] = "\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\xea\x60\0\0\xea\x60\1\0\0\0\0\0\0\0";
  g_autofree char *bomb_path = g_build_filename (folder, "bomb.png", NULL), *nowhere = g_build_filename (folder, "nowhere.png", NULL);
  const char *const wrong[] = { nowhere, path, folder, "/dev/zero", bomb_path };
  g_autoptr (GBytes) mark = render (SW_PICTURE_STRIP, SW_FORMAT_JPEG, 60, 30);
  g_autoptr (GError) error = NULL;
  SwForecast marked = *forecast;
  SwLook no_mark = sw_look_plain;

  no_mark.no_mark = TRUE;
  g_assert_true (g_file_set_contents (path, g_bytes_get_data (mark, NULL), (gssize) g_bytes_get_size (mark), NULL));
  g_free (sketch->listing.mark);
  sketch->listing.mark = g_strdup (path);
  marked.sketch = sketch;
  {
    g_autoptr (GBytes) with = sw_picture_render (SW_PICTURE_LISTING, SW_FORMAT_PNG, &marked, 200, 200, &sw_look_plain, &error);

    g_assert_no_error (error);
    g_assert_false (g_bytes_equal (with, without));
  }
  g_assert_true (g_file_set_contents (path, "words", -1, NULL));
  g_assert_true (g_file_set_contents (bomb_path, bomb, sizeof bomb - 1, NULL));
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_free (sketch->listing.mark);
      sketch->listing.mark = g_strdup (wrong[i]);
      g_assert_null (sw_picture_render (SW_PICTURE_LISTING, SW_FORMAT_PNG, &marked, 200, 200, &sw_look_plain, &error));
      g_assert_error (error, SW_FILE_ERROR, SW_FILE_ERROR_MARK);
      g_assert_nonnull (strstr (error->message, sketch->listing.mark));
      g_assert_true ((strstr (error->message, "there is no such file") != NULL) == (i == 0));
      g_clear_error (&error);
      {
        g_autoptr (GBytes) again = sw_picture_render (SW_PICTURE_LISTING, SW_FORMAT_PNG, &marked, 200, 200, &no_mark, &error);

        g_assert_no_error (error);
        g_assert_true (g_bytes_equal (again, without));
      }
    }
  g_remove (path);
  g_remove (bomb_path);
  g_rmdir (folder);
}

static void
test_twice (gconstpointer picture)
{
  for (SwFormat format = SW_FORMAT_PNG; format < SW_N_FORMATS; format++)
    {
      g_autoptr (GBytes) a = render (GPOINTER_TO_INT (picture), format, 300, 180);
      g_autoptr (GBytes) b = render (GPOINTER_TO_INT (picture), format, 300, 180);

      g_assert_true (g_bytes_equal (a, b));
    }
}

static void
test_usual_size (gconstpointer picture)
{
  int width = 0, height = 0;

  sw_picture_usual_size (GPOINTER_TO_INT (picture), forecast, &width, &height);
  g_assert_cmpint (width, >=, 600);
  g_assert_cmpint (height, >=, 60);
  g_assert_cmpint (MAX (width, height), <=, 2000);
}

static const struct
{
  int width, height;
} refused[] = { { 0, 100 }, { 100, 0 }, { -5, 100 }, { 8001, 100 }, { 100, 8001 }, { G_MAXINT, G_MAXINT } };

static void
test_sizes (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    for (SwFormat format = SW_FORMAT_PNG; format < SW_N_FORMATS; format++)
      {
        g_autoptr (GError) error = NULL;
        g_autofree char *size = g_strdup_printf ("%d by %d", refused[i].width, refused[i].height);

        g_assert_null (sw_picture_render (SW_PICTURE_STRIP, format, forecast, refused[i].width, refused[i].height, &sw_look_plain, &error));
        g_assert_error (error, SW_FILE_ERROR, SW_FILE_ERROR_PICTURE);
        g_assert_nonnull (strstr (error->message, size));
        g_assert_nonnull (strstr (error->message, "8000"));
      }
  for (SwFormat format = SW_FORMAT_PNG; format < SW_N_FORMATS; format++)
    {
      g_autoptr (GBytes) least = render (SW_PICTURE_STRIP, format, 1, 1);
      g_autoptr (GBytes) long_one = render (SW_PICTURE_STRIP, format, 8000, 40);

      g_assert_cmpuint (g_bytes_get_size (least), >, 60);
      g_assert_cmpuint (g_bytes_get_size (long_one), >, 1000);
    }
}

static void
test_names (void)
{
  static const struct
  {
    const char *file;
    int format;
  } files[] = {
    { "a.png", SW_FORMAT_PNG },
    { "/tmp/b.c.SVG", SW_FORMAT_SVG },
    { ".pdf", SW_FORMAT_PDF },
    { "png", -1 },
    { "a.jpg", SW_FORMAT_JPEG },
    { "a.JPEG", SW_FORMAT_JPEG },
    { "a.gif", -1 },
    { "", -1 },
  };

  for (int i = 0; i < SW_N_PICTURES; i++)
    g_assert_cmpint (sw_picture_from_name (sw_picture_name (i)), ==, i);
  g_assert_cmpint (sw_picture_from_name ("hat"), ==, -1);
  for (gsize i = 0; i < G_N_ELEMENTS (files); i++)
    g_assert_cmpint (sw_format_from_file_name (files[i].file), ==, files[i].format);
}

static const struct
{
  const char *name;
  GTestDataFunc test;
} checks[] = {
  { "png", test_png },
  { "png-pixels", test_png_pixels },
  { "svg", test_svg },
  { "pdf", test_pdf },
  { "jpeg", test_jpeg },
  { "twice", test_twice },
  { "usual-size", test_usual_size },
};

static SwForecast *
make_forecast (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (GError) error = NULL;
  SwForecast *made;

  g_free (sketch->title);
  sketch->title = g_strdup ("Red & <blue>");
  made = sw_forecaster_run (forecaster, sketch, NULL, &error);
  g_assert_no_error (error);
  return made;
}

int
main (int argc, char **argv)
{
  int result;

  g_test_init (&argc, &argv, NULL);
  forecast = make_forecast ();
  for (int i = 0; i < SW_N_PICTURES; i++)
    for (gsize c = 0; c < G_N_ELEMENTS (checks); c++)
      {
        g_autofree char *path = g_strdup_printf ("/picture/%s/%s", sw_picture_name (i), checks[c].name);

        g_test_add_data_func (path, GINT_TO_POINTER (i), checks[c].test);
      }
  g_test_add_func ("/picture/sizes", test_sizes);
  g_test_add_func ("/picture/names", test_names);
  g_test_add_func ("/picture/mark", test_mark);
  result = g_test_run ();
  sw_forecast_unref (forecast);
  return result;
}
