/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "forecast/sw-main-colours.h"

G_BEGIN_DECLS

/* Yarn this near to the bare wool, CIEDE2000, is called undyed: a difference that is seen only side by side. Ours. */
#define SW_UNDYED_WITHIN 2.0

/**
 * sw_forecast_colour_name:
 * Returns: (transfer full): the colour's name for people; bare wool is "undyed"
 */
char *sw_forecast_colour_name (const SwForecast *forecast, SwLab colour) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_forecast_colour_names:
 * @colours: (array length=n): those of one table, the most important first
 * Returns: (transfer full): as sw_colour_names() has them, but bare wool is "undyed"
 */
char **sw_forecast_colour_names (const SwForecast *forecast, const SwLab *colours, gsize n) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): the names of a strand's main colours: see sw_forecast_colour_names() */
char **sw_main_colour_names (const SwForecast *forecast, const SwMainColour *colours, int n) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_forecast_stripe_names:
 * Returns: (transfer full): the names of the forecast's stripes, in their
 *   order; one that is like a main colour is called as that is, so that a table
 *   and a palette of one yarn speak of the same colours
 */
char **sw_forecast_stripe_names (const SwForecast *forecast) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
