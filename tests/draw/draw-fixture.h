/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "../sw-test-sketch.h"

#include "colour/sw-spectrum.h"
#include "draw/sw-look.h"
#include "forecast/sw-forecast.h"

#include <cairo.h>

/* Forecasts and pictures for the tests of the drawing. */

static inline SwForecast *
fixture_forecast (const SwSketch *sketch)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (GError) error = NULL;
  SwForecast *forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);

  g_assert_no_error (error);
  return forecast;
}

/* A picture's pixel as XYZ: light adds up, so each channel's codes are asked for once. */
static inline SwXyz
fixture_pixel (cairo_surface_t *surface, int x, int y)
{
  static SwXyz parts[3][256];
  static gsize ready = 0;
  const guint8 *line = cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface);
  const guint32 pixel = ((const guint32 *) (gconstpointer) line)[x];
  SwXyz xyz = { 0, 0, 0 };

  if (g_once_init_enter (&ready))
    {
      for (int code = 0; code < 256; code++)
        {
          parts[0][code] = sw_xyz_from_srgb ((SwSrgb){ code / 255.0, 0, 0 });
          parts[1][code] = sw_xyz_from_srgb ((SwSrgb){ 0, code / 255.0, 0 });
          parts[2][code] = sw_xyz_from_srgb ((SwSrgb){ 0, 0, code / 255.0 });
        }
      g_once_init_leave (&ready, 1);
    }
  for (int channel = 0; channel < 3; channel++)
    {
      const SwXyz part = parts[channel][pixel >> (16 - 8 * channel) & 0xff];

      xyz = (SwXyz){ xyz.x + part.x, xyz.y + part.y, xyz.z + part.z };
    }
  return xyz;
}

/* The mean colour over a box of a picture, averaged as light. */
static inline SwLab
fixture_mean (cairo_surface_t *surface, int x, int y, int width, int height)
{
  SwXyz sum = { 0, 0, 0 };
  const double n = (double) width * height;

  for (int j = y; j < y + height; j++)
    for (int i = x; i < x + width; i++)
      {
        const SwXyz pixel = fixture_pixel (surface, i, j);

        sum = (SwXyz){ sum.x + pixel.x, sum.y + pixel.y, sum.z + pixel.z };
      }
  return sw_lab_from_xyz ((SwXyz){ sum.x / n, sum.y / n, sum.z / n });
}

/* The strand of a forecast without pours. */
static inline SwLab
fixture_strand_colour (const SwForecast *forecast)
{
  return sw_lab_from_xyz ((SwXyz){ (double) forecast->leg_x[0], (double) forecast->leg_y[0], (double) forecast->leg_z[0] });
}

/* The mean of the opaque pixels, as light. */
static inline SwLab
fixture_opaque_mean (cairo_surface_t *surface)
{
  const int width = cairo_image_surface_get_width (surface), height = cairo_image_surface_get_height (surface);
  SwXyz sum = { 0, 0, 0 };
  double n = 0;

  for (int j = 0; j < height; j++)
    for (int i = 0; i < width; i++)
      {
        const guint8 *line = cairo_image_surface_get_data (surface) + j * cairo_image_surface_get_stride (surface);
        SwXyz pixel;

        if (((const guint32 *) (gconstpointer) line)[i] >> 24 < 0xff)
          continue;
        pixel = fixture_pixel (surface, i, j);
        sum = (SwXyz){ sum.x + pixel.x, sum.y + pixel.y, sum.z + pixel.z };
        n++;
      }
  g_assert_cmpfloat (n, >, 500);
  return sw_lab_from_xyz ((SwXyz){ sum.x / n, sum.y / n, sum.z / n });
}

typedef void (*FixtureDraw) (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look);

static inline void
fixture_draw_scan (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look)
{
  sw_draw_scan (cr, forecast, 10, 300, width, height, look);
}

static const struct
{
  const char *name;
  FixtureDraw draw;
} fixture_pictures[] = {
  { "pan", sw_draw_pan },
  { "strip", sw_draw_strip },
  { "cloth", sw_draw_cloth },
  { "item", sw_draw_item },
  { "scan", fixture_draw_scan },
  { "skein", sw_draw_skein },
  { "hank", sw_draw_hank },
  { "listing", sw_draw_listing },
};

static inline cairo_surface_t *
fixture_paint (FixtureDraw draw, const SwForecast *forecast, int width, int height, const SwLook *look)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);

  draw (cr, forecast, width, height, look);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}
