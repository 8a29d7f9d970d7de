/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/*
 * The whole cloth at one size, of which parts are painted: what a window
 * scrolls over. Parts that meet are alike, bit for bit, to one that holds
 * both, wherever they are cut.
 */

/* Device pixels of one stitch's width and one row's height. */
typedef struct
{
  double stitch, row;
  gboolean purl_side; /* seen from behind */
} SwClothSize;

/**
 * sw_cloth_size:
 * @stitch: device pixels
 * Returns: that size at the forecast's gauge. Stitches and rows are whole
 *   65536ths of a pixel, so that the place of each is exact from wherever it
 *   is counted
 */
SwClothSize sw_cloth_size (const SwForecast *forecast, double stitch, gboolean purl_side);

static inline gboolean
sw_cloth_size_equal (const SwClothSize *a, const SwClothSize *b)
{
  return a->stitch == b->stitch && a->row == b->row && a->purl_side == b->purl_side;
}

/* Pixels of the whole cloth; what reaches beyond its cells is not counted. */
void sw_cloth_size_extent (const SwForecast *forecast, const SwClothSize *size, double *width, double *height);

/**
 * sw_cloth_part:
 * @x, @y, @width, @height: of the part, from the whole cloth's upper left corner; it may reach beyond
 * @stride: pixels from one line of @pixels to the next, >= @width
 * @pixels: (out caller-allocates): premultiplied CAIRO_FORMAT_ARGB32, clear beside the cloth
 */
void sw_cloth_part (const SwForecast *forecast, const SwClothSize *size, int x, int y, int width, int height, int stride, guint32 *pixels);

G_END_DECLS
