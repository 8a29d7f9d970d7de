/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cloth/sw-item.h"
#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/* What an item is knitted from, of a forecast. */
void sw_item_yarn (const SwForecast *forecast, SwItemYarn *yarn);

/**
 * sw_item_raster:
 * @scale: device px per cm
 * @x, @y: of the item's upper left corner (its left_cm, top_cm) in the picture, device px
 * @width, @height: of the picture
 * @stride: pixels from one line of @pixels to the next, >= @width
 * @pixels: (inout): premultiplied CAIRO_FORMAT_ARGB32; the item is laid over it
 *
 * Stitches smaller than can be drawn are drawn larger and averaged in linear
 * light. In a picture of a few pixels nothing is laid.
 */
void sw_item_raster (const SwForecast *forecast, const SwItemKnit *knit, double scale, int x, int y, int width, int height, int stride, guint32 *pixels);

G_END_DECLS
