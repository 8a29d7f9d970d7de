/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-units.h"
#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/* Yarn, reel, lay and bath, each summed up on a line: (transfer full). */

char *sw_yarn_summary (const SwSketch *sketch, SwSystem system) G_GNUC_WARN_UNUSED_RESULT; /* "Superwash wool, 100 g, 400 m per 100 g" */
char *sw_reel_summary (const SwSketch *sketch, SwSystem system) G_GNUC_WARN_UNUSED_RESULT; /* "150 cm round, wound with a guide" */
char *sw_lay_summary (const SwSketch *sketch, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;  /* "1 skein in 2 runs, 75 cm by 8 cm" */

/* @forecast: (nullable): "1.4 L, pH 3.6, 90 °C"; without it the pH is left out */
char *sw_bath_summary (const SwSketch *sketch, const SwForecast *forecast, SwSystem system) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_pours_outside:
 * Returns: (element-type guint) (transfer full): ids of the pours that do not touch the laid skein anywhere
 */
GArray *sw_pours_outside (const SwSketch *sketch) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full) (nullable): a sentence if there are such pours */
char *sw_pours_outside_sentence (const SwSketch *sketch) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
