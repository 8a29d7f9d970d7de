/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/* The verdict at every width, kept while the forecast stays: what the width scan's pointer and keys read. */
typedef struct
{
  SwForecast *forecast; /* (nullable): they are of */
  SwWorked worked;
  gsize from, to;
  SwPooling *results; /* to - from + 1 */
} SwClothScan;

void sw_cloth_scan_clear (SwClothScan *scan);

/* Makes @scan one of @forecast, as the cloth is worked, computing it if it is not that already. */
void sw_cloth_scan_of (SwClothScan *scan, SwForecast *forecast, gsize from, gsize to);

/* @width is held between from and to. */
const SwPooling *sw_cloth_scan_at (const SwClothScan *scan, gsize width);

/**
 * sw_cloth_scan_next_peak:
 * @direction: 1 wider, -1 narrower
 * Returns: the next width whose colours stack more than at those beside it and make a pattern; @width itself if there is none
 */
gsize sw_cloth_scan_next_peak (const SwClothScan *scan, gsize width, int direction);

G_END_DECLS
