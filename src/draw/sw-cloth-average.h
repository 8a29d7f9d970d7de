/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-cloth-geometry.h"

G_BEGIN_DECLS

/**
 * sw_cloth_average:
 * As sw_cloth_raster(), for stitches too small to draw: every pixel is the
 * mean XYZ of the cloth beneath it, by exact shares of its area, so nothing
 * beats with the pixel grid.
 */
void sw_cloth_average (const SwForecast *forecast, const SwClothGeometry *geometry, double scale, int x, int y, int width, int height, int stride, guint32 *pixels);

G_END_DECLS
