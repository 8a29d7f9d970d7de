/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw-fixture.h"

#include "draw/sw-hank-private.h"

#include <math.h>

/* Hanks by themselves, for the tests of how they look. */

static inline SwForecast *
plain_forecast (const double *lab)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);

  sketch->yarn.undyed = (SwSample){ .kind = SW_SAMPLE_LAB, .numbers = { lab[0], lab[1], lab[2] } };
  return fixture_forecast (sketch);
}

static inline SwHank *
laid_hank (const SwForecast *forecast, int number, double angle)
{
  SwHank *hank = sw_hank_new (forecast, number, angle, NULL);
  const double nowhere = 0;

  sw_hanks_lay (&hank, 1, &nowhere, &nowhere);
  return hank;
}

static inline cairo_surface_t *
raster_hank (SwHank *hank, double px_per_cm, int left, int top, int width, int height)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);

  sw_hank_raster (hank, px_per_cm, left, top, width, height, cairo_image_surface_get_stride (surface) / 4, (guint32 *) (gpointer) cairo_image_surface_get_data (surface));
  cairo_surface_mark_dirty (surface);
  return surface;
}

static inline cairo_surface_t *
whole_hank (SwHank *hank, double px_per_cm)
{
  const SwBox box = sw_hank_get_box (hank);

  return raster_hank (hank, px_per_cm, (int) floor (box.x * px_per_cm), (int) floor (box.y * px_per_cm), (int) (box.width * px_per_cm) + 2, (int) (box.height * px_per_cm) + 2);
}
