/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-picture.h"

#include "draw/sw-cloth-geometry.h"
#include "files/sw-colourway.h"
#include "files/sw-jpeg-private.h"
#include "files/sw-maker-mark.h"
#include "files/sw-png-private.h"
#include "files/sw-vector-private.h"
#include "forecast/sw-listing-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define LARGEST_PX 8000

static void
draw_scan (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look)
{
  sw_draw_scan (cr, forecast, look->from > 0 ? look->from : SW_SCAN_FROM, look->to > 0 ? look->to : SW_SCAN_TO, width, height, look);
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
  [SW_PICTURE_ITEM] = { "item", N_ ("Forecast drawing of a knitted item, laid flat"), sw_draw_item },
  [SW_PICTURE_SCAN] = { "scan", N_ ("Chart of how far colours stack at each width of the cloth"), draw_scan },
  [SW_PICTURE_SKEIN] = { "skein", N_ ("Forecast drawing of the laid skein"), sw_draw_skein },
  [SW_PICTURE_HANK] = { "hank", N_ ("Forecast drawing of the twisted hank"), sw_draw_hank },
  [SW_PICTURE_LISTING] = { "listing", N_ ("Forecast drawing of the yarn for a shop's page, not a photograph"), sw_draw_listing },
};

static const struct
{
  SwFormat format;
  const char *ending;
} endings[] = {
  { SW_FORMAT_PNG, ".png" },
  { SW_FORMAT_SVG, ".svg" },
  { SW_FORMAT_PDF, ".pdf" },
  { SW_FORMAT_JPEG, ".jpg" },
  { SW_FORMAT_JPEG, ".jpeg" },
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

const char *
sw_format_ending (SwFormat format)
{
  for (gsize i = 0; i < G_N_ELEMENTS (endings); i++)
    if (endings[i].format == format)
      return endings[i].ending;
  g_return_val_if_reached (NULL);
}

/* Longer side as the listing asks for. */
static void
listing_size (const SwListingSettings *listing, int *width, int *height)
{
  static const double aspects[] = { [SW_SHAPE_SQUARE] = 1, [SW_SHAPE_UPRIGHT] = 4.0 / 5, [SW_SHAPE_WIDE] = 3.0 / 2 };
  const double aspect = aspects[listing->shape];

  *width = (int) lround ((double) listing->longest_px * MIN (aspect, 1));
  *height = (int) lround ((double) listing->longest_px / MAX (aspect, 1));
}

void
sw_picture_usual_size (SwPicture picture, const SwForecast *forecast, int *width, int *height)
{
  static const struct
  {
    int width, height;
  } usual[SW_N_PICTURES] = {
    [SW_PICTURE_PAN] = { 1200, 1000 },
    [SW_PICTURE_STRIP] = { 1200, 100 },
    [SW_PICTURE_CLOTH] = { 1000, 1000 },
    [SW_PICTURE_ITEM] = { 1000, 1000 },
    [SW_PICTURE_SCAN] = { 1200, 400 },
    [SW_PICTURE_SKEIN] = { 1600, 700 },
    [SW_PICTURE_HANK] = { 1600, 440 },
  };
  const SwLaySettings *lay = &forecast->sketch->lay;
  const double length = MAX (lay->pan_length_cm, sw_sketch_lay_length (forecast->sketch));
  const double across = MAX (lay->pan_width_cm, sw_sketch_lay_width (forecast->sketch));

  *width = usual[picture].width;
  *height = usual[picture].height;
  if (picture == SW_PICTURE_PAN) /* the pan to scale, with its rulers */
    *height = (int) CLAMP (round (46 + (1200 - 54) * across / length), 200, 1200);
  if (picture == SW_PICTURE_LISTING)
    listing_size (&forecast->sketch->listing, width, height);
}

/* Words that go with the picture into the file. */
static char *
describe (SwPicture picture, const SwForecast *forecast)
{
  return picture == SW_PICTURE_LISTING ? sw_listing_alt (forecast) : g_strdup (_ (pictures[picture].description));
}

static GBytes *
render_pixels (SwPicture picture, SwFormat format, const SwForecast *forecast, int width, int height, const SwLook *look, GError **error)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);
  g_autofree char *description = describe (picture, forecast);
  GBytes *bytes = NULL;

  pictures[picture].draw (cr, forecast, width, height, look);
  if (cairo_status (cr) != CAIRO_STATUS_SUCCESS)
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_PICTURE, _ ("The picture could not be drawn: %s. Try a smaller size."), cairo_status_to_string (cairo_status (cr)));
  else if (format == SW_FORMAT_JPEG)
    bytes = sw_jpeg_encode (surface, forecast->sketch->title, description, error);
  else
    bytes = sw_png_encode (surface, forecast->sketch->title, description, error);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return bytes;
}

static GBytes *
render_vector (SwPicture picture, SwFormat format, const SwForecast *forecast, int width, int height, const SwLook *look, GError **error)
{
  g_autofree char *description = describe (picture, forecast);
  SwVector *vector = sw_vector_new (format, width, height, forecast->sketch->title, description);

  pictures[picture].draw (sw_vector_get_cairo (vector), forecast, width, height, look);
  return sw_vector_finish (vector, error);
}

/* A page of cairo's own, or pixels that a library packs. */
static GBytes *
render (SwPicture picture, SwFormat format, const SwForecast *forecast, int width, int height, const SwLook *look, GError **error)
{
  const gboolean vector = format == SW_FORMAT_SVG || format == SW_FORMAT_PDF;

  return (vector ? render_vector : render_pixels) (picture, format, forecast, width, height, look, error);
}

/* A hank shows it on its label only. */
static gboolean
shows_mark (SwPicture picture, const SwListingSettings *listing)
{
  if (listing->mark[0] == '\0')
    return FALSE;
  return picture == SW_PICTURE_LISTING || (picture == SW_PICTURE_HANK && listing->label != SW_LABEL_NONE && listing->label_words);
}

GBytes *
sw_picture_render (SwPicture picture, SwFormat format, const SwForecast *forecast, int width, int height, const SwLook *look, GError **error)
{
  SwLook marked = *look;
  GBytes *bytes;

  g_return_val_if_fail (picture < SW_N_PICTURES && format < SW_N_FORMATS, NULL);
  if (width < 1 || width > LARGEST_PX || height < 1 || height > LARGEST_PX)
    {
      g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_PICTURE,
                   _ ("A picture of %d by %d pixels cannot be drawn. Give a width and a height between 1 and %d."), width, height, LARGEST_PX);
      return NULL;
    }
  if (!shows_mark (picture, &forecast->sketch->listing) || look->mark != NULL || look->no_mark)
    return render (picture, format, forecast, width, height, look, error);
  marked.mark = sw_maker_mark_read (forecast->sketch->listing.mark, error);
  if (marked.mark == NULL)
    return NULL;
  bytes = render (picture, format, forecast, width, height, &marked, error);
  cairo_surface_destroy (marked.mark);
  return bytes;
}
