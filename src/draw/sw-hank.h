/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-canvas.h"
#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/*
 * One twisted hank, ready to be painted at any size. See sw-hank-shape.h for
 * how it is built and sw-hank-yarn.h for its colours.
 */
typedef struct _SwHank SwHank;

/**
 * sw_hank_new:
 * @number: which of several hanks of one batch: each lies in its own way and shows other wraps
 * @angle: radians, clockwise as seen; at 0 it lies along x, the fold at the right
 */
SwHank *sw_hank_new (const SwForecast *forecast, int number, double angle) G_GNUC_WARN_UNUSED_RESULT;
void sw_hank_free (SwHank *self);

/* Its outline's box, cm, about the hank's own origin. */
SwBox sw_hank_get_box (const SwHank *self);

/**
 * sw_hank_raster:
 * @px_per_cm: device pixels
 * @left, @top: of the picture, device pixels from the hank's origin
 * @pixels: (out caller-allocates): premultiplied CAIRO_FORMAT_ARGB32, clear beside the hank
 *
 * The mean of the light over the hank is 1, so that yarn of one colour has
 * its colour in the mean.
 */
void sw_hank_raster (SwHank *self, double px_per_cm, int left, int top, int width, int height, int stride, guint32 *pixels);

/**
 * sw_hank_draw:
 * @x, @y: of the hank's origin, px
 * @px_per_cm: px
 * The hank and its shadow on what it lies on.
 */
void sw_hank_draw (SwHank *self, const SwCanvas *canvas, double x, double y, double px_per_cm);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwHank, sw_hank_free)

G_END_DECLS
