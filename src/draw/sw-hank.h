/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-canvas.h"
#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/*
 * Twisted hanks, ready to be painted at any size. See sw-hank-shape.h for how
 * one is built, sw-hank-yarn.h for its colours and sw-hank-label.h for the
 * paper round it.
 */
typedef struct _SwHank SwHank;

/**
 * sw_hank_new:
 * @number: which of several hanks of one batch: each is another skein, as
 *   sw_forecast_skein() counts them, and lies in its own way
 * @angle: radians, clockwise as seen; at 0 it lies along x, the fold at the right
 * @mark: (nullable): the maker's own picture, for the label
 */
SwHank *sw_hank_new (const SwForecast *forecast, int number, double angle, cairo_surface_t *mark) G_GNUC_WARN_UNUSED_RESULT;
void sw_hank_free (SwHank *self);

/* Width of a hank of that yarn over its length, about. */
double sw_hank_slim (const SwSketch *sketch);

/* Its outline's box, cm, about the hank's own origin. */
SwBox sw_hank_get_box (const SwHank *self);

/**
 * sw_hanks_lay:
 * @hanks: (array length=n): none is on a table yet
 * @x, @y: (array length=n): each hank's origin, cm
 * Lays them on one table, where they keep light off each other.
 */
void sw_hanks_lay (SwHank *const *hanks, int n, const double *x, const double *y);

/**
 * sw_hank_raster:
 * @self: lies on a table
 * @px_per_cm: device pixels
 * @left, @top: of the picture, device pixels from the hank's origin
 * @pixels: (out caller-allocates): premultiplied CAIRO_FORMAT_ARGB32, clear beside the hank
 *
 * The mean of the light over the yarn of the hank is 1, so that yarn of one
 * colour has its colour in the mean.
 */
void sw_hank_raster (SwHank *self, double px_per_cm, int left, int top, int width, int height, int stride, guint32 *pixels);

/**
 * sw_hanks_draw:
 * @hanks: (array length=n): of one table
 * @x, @y: of the table's origin, px
 * @px_per_cm: px
 * Their shadows on what they lie on, then the hanks.
 */
void sw_hanks_draw (SwHank *const *hanks, int n, const SwCanvas *canvas, double x, double y, double px_per_cm);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwHank, sw_hank_free)

G_END_DECLS
