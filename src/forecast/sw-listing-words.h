/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/**
 * sw_listing_words:
 * @inches: ounces, yards, gauge to 4 in and the United States' names of fabrics instead of grams, metres and 10 cm
 *
 * Returns: (transfer full): text for a shop's page: the listing's own words
 *   if there are any, else sw_listing_written()
 */
char *sw_listing_words (const SwForecast *forecast, gboolean inches) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_listing_written:
 *
 * Returns: (transfer full): the text written from the forecast: title, maker,
 *   fibre, put-up, colours, how it is likely to knit up, care as chosen, and
 *   that the picture is a drawn forecast
 */
char *sw_listing_written (const SwForecast *forecast, gboolean inches) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_listing_alt:
 *
 * Returns: (transfer full): what the listing's picture shows, for those who
 *   do not see it: one or two sentences
 */
char *sw_listing_alt (const SwForecast *forecast) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): the main colours and their shares in a row: "deep teal 42 %, plum 30 %" */
char *sw_listing_colours (const SwForecast *forecast) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
