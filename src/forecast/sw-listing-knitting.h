/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/**
 * sw_listing_add_knitting:
 * @us: gauge over 4 in, and the names that knitters of the United States have for fabrics
 *
 * Adds a heading and a list to @out: how the yarn is likely to knit up at the
 * colourway's own width, then as pieces that suit its weight, those that come
 * out alike in one line.
 */
void sw_listing_add_knitting (GString *out, const SwForecast *forecast, gboolean us);

G_END_DECLS
