/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-png-private.h"

#include "files/sw-colourway.h"

#include <glib/gi18n-lib.h>
#include <png.h>
#include <string.h>

#define PIXELS_PER_METRE 3780 /* 96 to the inch */

/*
 * Packing large pictures takes as long as drawing them: packed less hard, and
 * each line against the one above it without trying the other ways, grainy ones
 * take half of the time and a twentieth more room.
 */
#define LARGE_PIXELS 4000000
#define LARGE_LEVEL 2
#define LARGE_FILTER PNG_FILTER_UP

/* libpng leaves by a jump: what must be freed then is reached through here. */
typedef struct
{
  GByteArray *bytes;
  char problem[160];
} Writer;

static void
write_cb (png_structp png, png_bytep data, size_t n)
{
  Writer *writer = png_get_io_ptr (png);

  g_byte_array_append (writer->bytes, data, (guint) n);
}

static void
flush_cb (png_structp png)
{
}

static void
error_cb (png_structp png, png_const_charp message)
{
  Writer *writer = png_get_error_ptr (png);

  g_strlcpy (writer->problem, message, sizeof writer->problem);
  png_longjmp (png, 1);
}

static void
warning_cb (png_structp png, png_const_charp message)
{
  g_debug ("PNG: %s", message);
}

static void
write_head (png_structp png, png_infop info, int width, int height, const char *title, const char *description)
{
  png_text texts[3];

  memset (texts, 0, sizeof texts);
  texts[0] = (png_text){ .compression = PNG_ITXT_COMPRESSION_NONE, .key = (char *) "Title", .text = (char *) title };
  texts[1] = (png_text){ .compression = PNG_ITXT_COMPRESSION_NONE, .key = (char *) "Description", .text = (char *) description };
  texts[2] = (png_text){ .compression = PNG_TEXT_COMPRESSION_NONE, .key = (char *) "Software", .text = (char *) "Strandwise" };

  png_set_IHDR (png, info, (png_uint_32) width, (png_uint_32) height, 8, PNG_COLOR_TYPE_RGB, PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  if ((gint64) width * height > LARGE_PIXELS)
    {
      png_set_compression_level (png, LARGE_LEVEL);
      png_set_filter (png, PNG_FILTER_TYPE_BASE, LARGE_FILTER);
    }
  png_set_sRGB_gAMA_and_cHRM (png, info, PNG_sRGB_INTENT_RELATIVE);
  png_set_pHYs (png, info, PIXELS_PER_METRE, PIXELS_PER_METRE, PNG_RESOLUTION_METER);
  png_set_text (png, info, texts, G_N_ELEMENTS (texts));
  png_write_info (png, info);
}

/* A line of 0xffRRGGBB as bytes. */
static void
unpack_line (const guint32 *pixels, int width, guint8 *line)
{
  for (int i = 0; i < width; i++)
    {
      line[3 * i] = (guint8) (pixels[i] >> 16);
      line[3 * i + 1] = (guint8) (pixels[i] >> 8);
      line[3 * i + 2] = (guint8) pixels[i];
    }
}

static gboolean
write_picture (png_structp png, png_infop info, cairo_surface_t *surface, guint8 *line, const char *title, const char *description)
{
  const int width = cairo_image_surface_get_width (surface), height = cairo_image_surface_get_height (surface);
  const guint8 *data = cairo_image_surface_get_data (surface);
  const gsize stride = (gsize) cairo_image_surface_get_stride (surface);

  if (setjmp (png_jmpbuf (png)))
    return FALSE;
  write_head (png, info, width, height, title, description);
  for (int j = 0; j < height; j++)
    {
      unpack_line ((const guint32 *) (gconstpointer) (data + (gsize) j * stride), width, line);
      png_write_row (png, line);
    }
  png_write_end (png, info);
  return TRUE;
}

GBytes *
sw_png_encode (cairo_surface_t *surface, const char *title, const char *description, GError **error)
{
  Writer writer = { g_byte_array_new (), "" };
  png_structp png = png_create_write_struct (PNG_LIBPNG_VER_STRING, &writer, error_cb, warning_cb);
  png_infop info = png_create_info_struct (png);
  guint8 *line = g_new (guint8, 3 * (gsize) cairo_image_surface_get_width (surface));
  gboolean written;

  cairo_surface_flush (surface);
  png_set_write_fn (png, &writer, write_cb, flush_cb);
  written = write_picture (png, info, surface, line, title, description);
  png_destroy_write_struct (&png, &info);
  g_free (line);
  if (written)
    return g_byte_array_free_to_bytes (writer.bytes);
  g_byte_array_unref (writer.bytes);
  /* Translators: %s is what the PNG library said, in English. */
  g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_PICTURE, _ ("The picture could not be written as PNG: %s. Try a smaller size."), writer.problem);
  return NULL;
}
