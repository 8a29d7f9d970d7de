/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-cloth-part.h"

#include "draw/sw-cloth-raster.h"

#include <math.h>
#include <string.h>

/* Steps of a size in a pixel: sums and products of so many are exact in double precision. */
#define STEPS 65536.0

/* A stitch's loop reaches into its neighbours' columns. */
#define NEIGHBOURS 2

/* Painted to the left and cut off: where two stitches leave a pixel to each other it takes the one before it. */
#define BEFORE 8

static double
in_steps (double px)
{
  return MAX (round (px * STEPS), 1) / STEPS;
}

SwClothSize
sw_cloth_size (const SwForecast *forecast, double stitch, gboolean purl_side)
{
  return (SwClothSize){ in_steps (stitch), in_steps (stitch * forecast->row_height_cm / forecast->stitch_width_cm), purl_side };
}

void
sw_cloth_size_extent (const SwForecast *forecast, const SwClothSize *size, double *width, double *height)
{
  *width = (double) forecast->layout.width * size->stitch;
  *height = (double) sw_layout_rows (&forecast->layout) * size->row;
}

static void
clear (int width, int height, int stride, guint32 *pixels)
{
  for (int j = 0; j < height; j++)
    memset (pixels + (gsize) j * (gsize) stride, 0, sizeof *pixels * (gsize) width);
}

void
sw_cloth_part (const SwForecast *forecast, const SwClothSize *size, int x, int y, int width, int height, int stride, guint32 *pixels)
{
  const gsize rows = sw_layout_rows (&forecast->layout), columns = forecast->layout.width;
  const double first = floor ((x - BEFORE) / size->stitch) - NEIGHBOURS, last = ceil ((x + width) / size->stitch) + NEIGHBOURS;
  const int wider = width + BEFORE;
  SwClothGeometry geometry = { .stitch = size->stitch, .row = size->row, .rows = rows, .purl_side = size->purl_side };
  guint32 *painted;

  geometry.first_column = (gsize) CLAMP (first, 0, (double) columns);
  geometry.columns = (gsize) CLAMP (last, (double) geometry.first_column, (double) columns) - geometry.first_column;
  geometry.cloth = (SwBox){ (double) geometry.first_column * size->stitch, 0, (double) geometry.columns * size->stitch, (double) rows * size->row };
  if (geometry.columns == 0 || rows == 0)
    {
      clear (width, height, stride, pixels);
      return;
    }
  painted = g_new (guint32, (gsize) wider * (gsize) height);
  sw_cloth_raster (forecast, &geometry, 1, x - BEFORE, y, wider, height, wider, painted);
  for (int j = 0; j < height; j++)
    memcpy (pixels + (gsize) j * (gsize) stride, painted + (gsize) j * (gsize) wider + BEFORE, sizeof *pixels * (gsize) width);
  g_free (painted);
}
