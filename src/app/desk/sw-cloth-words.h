/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-units.h"
#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/* The cloth told in words, for eyes and for screen readers. */

/**
 * sw_cloth_drift:
 * Returns: (transfer full): how far from upright the colours run, or how they
 *   stack: "17° to the left of upright"; empty where there is no pattern
 */
char *sw_cloth_drift (const SwPooling *pooling) G_GNUC_WARN_UNUSED_RESULT;

/* To the nearest @grain: no more than can be counted in a cloth; but an amount is never rounded to nothing. */
double sw_cloth_rounded (double amount, double grain);

/* Returns: (transfer full): "34 % of the yarn: 12.5 cm, 14 stitches, 0.2 rows at a time" */
char *sw_cloth_stripe (const SwForecast *forecast, const SwStripe *stripe, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): "64 stitches, 21.3 cm" */
char *sw_cloth_width (const SwForecast *forecast, gsize width, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_cloth_scan_words:
 * @piece: (nullable): what is usually knitted at this width
 * Returns: (transfer full): one place on the width scan: the verdict and how strong it is
 */
char *sw_cloth_scan_words (const SwPooling *pooling, const char *piece) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
