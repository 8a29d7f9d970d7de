/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-canvas.h"
#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/*
 * A piece of the cloth as it lies on a table: not ruler-straight, its edges
 * turned under, and a shadow beneath it.
 */

/**
 * SwClothPiece:
 * @x, @y: its lower left corner, px
 * @width, @height: px; cut to what the cloth has
 * @tilt: about that corner, clockwise as seen, radians
 * @to_right, @to_top: px that its right and its upper edge reach at least, though it be small: then it lies further on; -INFINITY and INFINITY: anywhere
 */
typedef struct
{
  double x, y, width, height, tilt;
  double to_right, to_top;
} SwClothPiece;

/**
 * sw_cloth_piece_draw:
 * @px_per_cm: px; the gauge is true unless a stitch would be narrower than 2 px
 */
void sw_cloth_piece_draw (const SwCanvas *canvas, const SwForecast *forecast, const SwClothPiece *piece, double px_per_cm);

G_END_DECLS
