/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-cloth-geometry.h"
#include "draw/sw-stitch-mask.h"

G_BEGIN_DECLS

/* Below this many device pixels a stitch, its two legs are averaged instead of drawn. */
#define SW_CLOTH_AVERAGE_BELOW 4.0

/**
 * sw_cloth_raster:
 * @geometry: where the stitches are, px
 * @scale: device pixels per px
 * @x, @y: the picture's upper left corner in the geometry's space, device pixels
 * @width, @height: of the picture, device pixels
 * @stride: pixels from one line of @pixels to the next, >= @width
 * @pixels: (out caller-allocates): premultiplied CAIRO_FORMAT_ARGB32, clear beside the cloth
 *
 * The strand in its forecast colours, from leg to leg. One colour keeps its
 * mean at every size: light and shade balance in linear light.
 */
void sw_cloth_raster (const SwForecast *forecast, const SwClothGeometry *geometry, double scale, int x, int y, int width, int height, int stride, guint32 *pixels);

/* What the stitches of that cloth look like. */
void sw_cloth_style (const SwForecast *forecast, const SwClothGeometry *geometry, double scale, SwStitchStyle *style);

G_END_DECLS
