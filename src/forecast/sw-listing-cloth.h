/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/* Which cloth stands for a colourway in the picture of a shop's page. */

/**
 * sw_listing_cloth_is_wide:
 *
 * Returns: whether a swatch of the colourway's own width would tell only the
 *   beginning of the skein, as it does of a long gradient. Then the cloth of the
 *   picture is knitted so much wider that the whole skein shows
 */
gboolean sw_listing_cloth_is_wide (const SwForecast *forecast);

/**
 * sw_listing_cloth_widen:
 * @height_cm: of what is to be seen
 * @wide: (out caller-allocates): @forecast as knitted over so many stitches that the whole skein is used in that height; it lives no longer than @forecast and is not to be freed
 */
void sw_listing_cloth_widen (const SwForecast *forecast, double height_cm, SwForecast *wide);

G_END_DECLS
