/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-jpeg-private.h"

#include "files/sw-colourway.h"

#include <stdio.h> /* jpeglib.h needs it */

#include <glib/gi18n-lib.h>
#include <jpeglib.h>
#include <lcms2.h>
#include <setjmp.h>
#include <string.h>

#define QUALITY 92
#define PIXELS_PER_INCH 96
#define XMP_NAME "http://ns.adobe.com/xap/1.0/"
#define MOST_XMP 60000
#define MOST_PIXELS 100000000u

/* The library leaves by a jump. */
typedef struct
{
  struct jpeg_error_mgr manager;
  jmp_buf jump;
  char problem[JMSG_LENGTH_MAX];
} Problem;

static void
exit_cb (j_common_ptr jpeg)
{
  Problem *problem = (Problem *) jpeg->err;

  jpeg->err->format_message (jpeg, problem->problem);
  longjmp (problem->jump, 1);
}

static void
message_cb (j_common_ptr jpeg)
{
  char message[JMSG_LENGTH_MAX];

  jpeg->err->format_message (jpeg, message);
  g_debug ("JPEG: %s", message);
}

static struct jpeg_error_mgr *
problem_init (Problem *problem)
{
  jpeg_std_error (&problem->manager);
  problem->manager.error_exit = exit_cb;
  problem->manager.output_message = message_cb;
  problem->problem[0] = '\0';
  return &problem->manager;
}

/* The sRGB profile, its date taken out so that the same picture has the same bytes. */
static GBytes *
srgb_profile (void)
{
  cmsHPROFILE profile = cmsCreate_sRGBProfile ();
  cmsUInt32Number n = 0;
  guint8 *data;

  cmsSaveProfileToMem (profile, NULL, &n);
  data = g_malloc0 (n);
  cmsSaveProfileToMem (profile, data, &n);
  cmsCloseProfile (profile);
  if (n >= 36)
    memcpy (data + 24, "\x07\xe8\x00\x01\x00\x01\x00\x00\x00\x00\x00\x00", 12); /* ICC.1:2010, 7.2.8: date and time created; 2024-01-01 */
  return g_bytes_new_take (data, n);
}

static void
write_words (j_compress_ptr jpeg, const char *title, const char *description)
{
  g_autofree char *xmp = g_markup_printf_escaped (
      "<x:xmpmeta xmlns:x='adobe:ns:meta/'><rdf:RDF xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'>"
      "<rdf:Description rdf:about='' xmlns:dc='http://purl.org/dc/elements/1.1/' xmlns:xmp='http://ns.adobe.com/xap/1.0/' xmp:CreatorTool='Strandwise'>"
      "<dc:title><rdf:Alt><rdf:li xml:lang='x-default'>%s</rdf:li></rdf:Alt></dc:title>"
      "<dc:description><rdf:Alt><rdf:li xml:lang='x-default'>%s</rdf:li></rdf:Alt></dc:description>"
      "</rdf:Description></rdf:RDF></x:xmpmeta>",
      title, description);
  const gsize n = sizeof XMP_NAME + strlen (xmp); /* with the name's ending 0 */
  g_autofree guint8 *marker = g_malloc (n);

  if (n > MOST_XMP)
    return;
  memcpy (marker, XMP_NAME, sizeof XMP_NAME);
  memcpy (marker + sizeof XMP_NAME, xmp, strlen (xmp));
  jpeg_write_marker (jpeg, JPEG_APP0 + 1, marker, (unsigned int) n);
}

static void
write_head (j_compress_ptr jpeg, int width, int height, GBytes *profile, const char *title, const char *description)
{
  gsize n;
  const guint8 *data = g_bytes_get_data (profile, &n);

  jpeg->image_width = (JDIMENSION) width;
  jpeg->image_height = (JDIMENSION) height;
  jpeg->input_components = 3;
  jpeg->in_color_space = JCS_RGB;
  jpeg_set_defaults (jpeg);
  jpeg_set_quality (jpeg, QUALITY, TRUE);
  jpeg->comp_info[0].h_samp_factor = jpeg->comp_info[0].v_samp_factor = 1; /* strands are a few pixels wide: their colours must not run together */
  jpeg->optimize_coding = TRUE;
  jpeg->density_unit = 1;
  jpeg->X_density = jpeg->Y_density = PIXELS_PER_INCH;
  jpeg_start_compress (jpeg, TRUE);
  write_words (jpeg, title, description);
  jpeg_write_icc_profile (jpeg, data, (unsigned int) n);
}

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
write_picture (j_compress_ptr jpeg, Problem *problem, cairo_surface_t *surface, GBytes *profile, guint8 *line, const char *title, const char *description)
{
  const int width = cairo_image_surface_get_width (surface), height = cairo_image_surface_get_height (surface);
  const guint8 *data = cairo_image_surface_get_data (surface);
  const gsize stride = (gsize) cairo_image_surface_get_stride (surface);

  if (setjmp (problem->jump))
    return FALSE;
  write_head (jpeg, width, height, profile, title, description);
  for (int j = 0; j < height; j++)
    {
      unpack_line ((const guint32 *) (gconstpointer) (data + (gsize) j * stride), width, line);
      jpeg_write_scanlines (jpeg, &line, 1);
    }
  jpeg_finish_compress (jpeg);
  return TRUE;
}

GBytes *
sw_jpeg_encode (cairo_surface_t *surface, const char *title, const char *description, GError **error)
{
  struct jpeg_compress_struct jpeg;
  Problem problem;
  unsigned char *bytes = NULL;
  unsigned long n = 0;
  g_autoptr (GBytes) profile = srgb_profile ();
  g_autofree guint8 *line = g_new (guint8, 3 * (gsize) cairo_image_surface_get_width (surface));
  GBytes *written = NULL;

  cairo_surface_flush (surface);
  jpeg.err = problem_init (&problem);
  jpeg_create_compress (&jpeg);
  jpeg_mem_dest (&jpeg, &bytes, &n);
  if (write_picture (&jpeg, &problem, surface, profile, line, title, description))
    written = g_bytes_new (bytes, n);
  else
    /* Translators: %s is what the JPEG library said, in English. */
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_PICTURE, _ ("The picture could not be written as JPEG: %s. Try a smaller size."), problem.problem);
  jpeg_destroy_compress (&jpeg);
  free (bytes);
  return written;
}

static gboolean
read_picture (j_decompress_ptr jpeg, Problem *problem, cairo_surface_t **surface, guint8 **line)
{
  gsize stride;
  guint8 *data;

  if (setjmp (problem->jump))
    return FALSE;
  jpeg_read_header (jpeg, TRUE);
  if ((guint64) jpeg->image_width * jpeg->image_height > MOST_PIXELS)
    {
      g_strlcpy (problem->problem, "too many pixels", sizeof problem->problem);
      return FALSE;
    }
  jpeg->out_color_space = JCS_RGB;
  jpeg_start_decompress (jpeg);
  *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) jpeg->output_width, (int) jpeg->output_height);
  if (cairo_surface_status (*surface) != CAIRO_STATUS_SUCCESS)
    return FALSE;
  *line = g_new (guint8, 3 * (gsize) jpeg->output_width);
  data = cairo_image_surface_get_data (*surface);
  stride = (gsize) cairo_image_surface_get_stride (*surface);
  while (jpeg->output_scanline < jpeg->output_height)
    {
      guint32 *row = (guint32 *) (gpointer) (data + jpeg->output_scanline * stride);

      jpeg_read_scanlines (jpeg, line, 1);
      for (JDIMENSION i = 0; i < jpeg->output_width; i++)
        row[i] = (guint32) (*line)[3 * i] << 16 | (guint32) (*line)[3 * i + 1] << 8 | (*line)[3 * i + 2];
    }
  jpeg_finish_decompress (jpeg);
  cairo_surface_mark_dirty (*surface);
  return TRUE;
}

cairo_surface_t *
sw_jpeg_decode (const guint8 *data, gsize n, GError **error)
{
  struct jpeg_decompress_struct jpeg;
  Problem problem;
  cairo_surface_t *surface = NULL;
  guint8 *line = NULL;

  jpeg.err = problem_init (&problem);
  jpeg_create_decompress (&jpeg);
  jpeg_mem_src (&jpeg, data, (unsigned long) n);
  if (!read_picture (&jpeg, &problem, &surface, &line))
    {
      g_set_error_literal (error, SW_FILE_ERROR, SW_FILE_ERROR_PICTURE, problem.problem);
      g_clear_pointer (&surface, cairo_surface_destroy);
    }
  jpeg_destroy_decompress (&jpeg);
  g_free (line);
  return surface;
}
