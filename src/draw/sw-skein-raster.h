/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/**
 * sw_skein_raster:
 * @second_face: which face is up
 * @window: pixels over the laid length and width of all the skeins, and which of them are painted
 * @stride: pixels from one line of @pixels to the next
 * @pixels: (out caller-allocates): the window's pixels, premultiplied
 *   CAIRO_FORMAT_ARGB32, the far edge first, clear where the loop turns away
 *   from the corners
 *
 * The face's forecast colours with the wraps' light and shade on them. The
 * shade is 1 in the mean over the skein's open face.
 */
void sw_skein_raster (const SwForecast *forecast, gboolean second_face, const SwFaceWindow *window, int stride, guint32 *pixels);

G_END_DECLS
