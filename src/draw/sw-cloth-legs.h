/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/**
 * sw_cloth_legs:
 * @purl_side: seen from behind
 * @row: of the cloth
 * @first, @n: columns as seen from the left; all in the cloth
 * @x, @y, @z: (out caller-allocates): 2 n XYZ, left and right leg in turn
 */
void sw_cloth_legs (const SwForecast *forecast, gboolean purl_side, gsize row, gsize first, gsize n, float *x, float *y, float *z);

/**
 * sw_cloth_cast_on:
 * As sw_cloth_legs() for the cast-on below the first row: one XYZ a column,
 * from the yarn that it used. In the round it runs as the first row does;
 * flat, the work was turned after it.
 */
void sw_cloth_cast_on (const SwForecast *forecast, gboolean purl_side, gsize first, gsize n, float *x, float *y, float *z);

G_END_DECLS
