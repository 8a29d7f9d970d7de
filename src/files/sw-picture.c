/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-picture.h"

#include "draw/sw-cloth-geometry.h"
#include "files/sw-colourway.h"
#include "files/sw-png-private.h"
#include "files/sw-vector-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define LARGEST_PX 8000
#define SCAN_FROM 10
#define SCAN_TO 600

static void
draw_scan (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look)
{
  sw_draw_scan (cr, forecast, SCAN_FROM, SCAN_TO, width, height, look);
}

typedef struct
{
  const char *name;
  const char *description; /* for the file: what is in the picture */
  void (*draw) (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look);
} Picture;

static const Picture pictures[SW_N_PICTURES] = {
  [SW_PICTURE_PAN] = { "pan", N_ ("Forecast drawing of the skein as it lies in the dye pan"), sw_draw_pan },
  [SW_PICTURE_STRIP] = { "strip", N_ ("Forecast drawing of one loop's colours along the strand"), sw_draw_strip },
  [SW_PICTURE_CLOTH] = { "cloth", N_ ("Forecast drawing of the knitted cloth"), sw_draw_cloth },
  [SW_PICTURE_SCAN] = { "scan", N_ ("Chart of how far colours stack at each width of the cloth"), draw_scan },
};

static const struct
{
  SwFormat format;
  const char *ending;
} endings[] = {
  { SW_FORMAT_PNG, ".png" },
  { SW_FORMAT_SVG, ".svg" },
  { SW_FORMAT_PDF, ".pdf" },
};

const char *
sw_picture_name (SwPicture picture)
{
  g_return_val_if_fail (picture < SW_N_PICTURES, NULL);
  return pictures[picture].name;
}

int
sw_picture_from_name (const char *name)
{
  for (int i = 0; i < SW_N_PICTURES; i++)
    if (strcmp (name, pictures[i].name) == 0)
      return i;
  return -1;
}

int
sw_format_from_file_name (const char *file_name)
{
  const gsize n = strlen (file_name);

  for (gsize i = 0; i < G_N_ELEMENTS (endings); i++)
    if (n >= strlen (endings[i].ending) && g_ascii_strcasecmp (file_name + n - strlen (endings[i].ending), endings[i].ending) == 0)
      return (int) endings[i].format;
  return -1;
}

void
sw_picture_usual_size (SwPicture picture, const SwForecast *forecast, int *width, int *height)
{
  const SwLaySettings *lay = &forecast->sketch->lay;
  const double length = MAX (lay->pan_length_cm, sw_sketch_lay_length (forecast->sketch));
  const double across = MAX (lay->pan_width_cm, sw_sketch_lay_width (forecast->sketch));

  *width = picture == SW_PICTURE_CLOTH ? 1000 : 1200;
  *height = picture == SW_PICTURE_STRIP ? 100 : picture == SW_PICTURE_SCAN ? 400
                                                                           : 1000;
  if (picture == SW_PICTURE_PAN) /* the pan to scale, with its rulers */
    *height = (int) CLAMP (round (46 + (1200 - 54) * across / length), 200, 1200);
}

static GBytes *
render_png (const Picture *picture, const SwForecast *forecast, int width, int height, const SwLook *look, GError **error)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);
  GBytes *bytes = NULL;

  picture->draw (cr, forecast, width, height, look);
  if (cairo_status (cr) == CAIRO_STATUS_SUCCESS)
    bytes = sw_png_encode (surface, forecast->sketch->title, _ (picture->description), error);
  else
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_PICTURE, _ ("The picture could not be drawn: %s. Try a smaller size."), cairo_status_to_string (cairo_status (cr)));
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return bytes;
}

static GBytes *
render_vector (const Picture *picture, SwFormat format, const SwForecast *forecast, int width, int height, const SwLook *look, GError **error)
{
  SwVector *vector = sw_vector_new (format, width, height, forecast->sketch->title, _ (picture->description));

  picture->draw (sw_vector_get_cairo (vector), forecast, width, height, look);
  return sw_vector_finish (vector, error);
}

GBytes *
sw_picture_render (SwPicture picture, SwFormat format, const SwForecast *forecast, int width, int height, const SwLook *look, GError **error)
{
  g_return_val_if_fail (picture < SW_N_PICTURES && format < SW_N_FORMATS, NULL);
  if (width < 1 || width > LARGEST_PX || height < 1 || height > LARGEST_PX)
    {
      g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_PICTURE,
                   _ ("A picture of %d by %d pixels cannot be drawn. Give a width and a height between 1 and %d."), width, height, LARGEST_PX);
      return NULL;
    }
  if (format == SW_FORMAT_PNG)
    return render_png (&pictures[picture], forecast, width, height, look, error);
  return render_vector (&pictures[picture], format, forecast, width, height, look, error);
}
