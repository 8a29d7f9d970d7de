/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-maker-mark.h"

#include "files/sw-colourway.h"
#include "files/sw-jpeg-private.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

#define MOST_BYTES (32 * 1024 * 1024)
#define MOST_PIXELS 100000000u /* as of a JPEG */

/* Bytes that cairo reads bit by bit. */
typedef struct
{
  const guint8 *data;
  gsize n, at;
} Source;

static cairo_status_t
read_cb (void *closure, unsigned char *data, unsigned int n)
{
  Source *source = closure;

  if (source->n - source->at < n)
    return CAIRO_STATUS_READ_ERROR;
  memcpy (data, source->data + source->at, n);
  source->at += n;
  return CAIRO_STATUS_SUCCESS;
}

/* Width times height, as the first chunk tells (ISO/IEC 15948, 11.2.2): a small file may unpack to more than there is memory. */
static guint64
png_pixels (const guint8 *data, gsize n)
{
  guint32 sides[2] = { 0, 0 };

  if (n >= 24)
    memcpy (sides, data + 16, sizeof sides);
  return (guint64) GUINT32_FROM_BE (sides[0]) * GUINT32_FROM_BE (sides[1]);
}

static cairo_surface_t *
decode_png (const guint8 *data, gsize n, GError **error)
{
  Source source = { data, n, 0 };
  cairo_surface_t *surface = cairo_image_surface_create_from_png_stream (read_cb, &source);
  const cairo_status_t status = cairo_surface_status (surface);

  if (status == CAIRO_STATUS_SUCCESS)
    return surface;
  cairo_surface_destroy (surface);
  g_set_error_literal (error, SW_FILE_ERROR, SW_FILE_ERROR_PICTURE, cairo_status_to_string (status));
  return NULL;
}

static cairo_surface_t *
decode (const guint8 *data, gsize n, GError **error)
{
  const gboolean png = n >= 8 && memcmp (data, "\x89PNG\r\n\x1a\n", 8) == 0;

  if (n > MOST_BYTES || (png && png_pixels (data, n) > MOST_PIXELS))
    g_set_error_literal (error, SW_FILE_ERROR, SW_FILE_ERROR_PICTURE, _ ("it is too large"));
  else if (png)
    return decode_png (data, n, error);
  else if (n >= 3 && memcmp (data, "\xff\xd8\xff", 3) == 0)
    return sw_jpeg_decode (data, n, error);
  else
    g_set_error_literal (error, SW_FILE_ERROR, SW_FILE_ERROR_PICTURE, _ ("it is neither PNG nor JPEG"));
  return NULL;
}

/* What a path leads to may be a device that never ends, or a film: that is told before it is read. */
static gboolean
may_be_read (const char *name, GError **error)
{
  GStatBuf info;

  if (g_stat (name, &info) != 0)
    {
      if (errno != ENOENT && errno != ENOTDIR)
        return TRUE; /* reading says why */
      g_set_error_literal (error, SW_FILE_ERROR, SW_FILE_ERROR_PICTURE, _ ("there is no such file"));
      return FALSE;
    }
  if (S_ISREG (info.st_mode) && info.st_size <= MOST_BYTES)
    return TRUE;
  g_set_error_literal (error, SW_FILE_ERROR, SW_FILE_ERROR_PICTURE, S_ISREG (info.st_mode) ? _ ("it is too large") : _ ("it is neither PNG nor JPEG"));
  return FALSE;
}

cairo_surface_t *
sw_maker_mark_read (const char *path, GError **error)
{
  g_autofree char *name = g_filename_from_utf8 (path, -1, NULL, NULL, NULL);
  g_autofree char *data = NULL;
  g_autoptr (GError) fault = NULL;
  cairo_surface_t *surface = NULL;
  gsize n;

  if (may_be_read (name != NULL ? name : path, &fault) && g_file_get_contents (name != NULL ? name : path, &data, &n, &fault))
    surface = decode ((const guint8 *) data, n, &fault);
  if (surface == NULL)
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_MARK,
                 /* Translators: 1 the path of a picture, 2 why it could not be read */
                 _ ("The maker’s mark “%1$s” could not be read: %2$s. Choose another picture, or none."), path, fault->message);
  return surface;
}
