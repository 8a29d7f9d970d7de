/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-cloth-scan.h"

#include "draw/sw-scan-geometry.h"

/* Peaks closer than this are one to a knitter. */
#define SPACING 3

void
sw_cloth_scan_clear (SwClothScan *scan)
{
  g_clear_pointer (&scan->forecast, sw_forecast_unref);
  g_clear_pointer (&scan->results, g_free);
}

void
sw_cloth_scan_of (SwClothScan *scan, SwForecast *forecast, gsize from, gsize to)
{
  g_return_if_fail (from >= 1 && from <= to && to <= SW_SCAN_WIDEST);

  if (scan->forecast == forecast && scan->from == from && scan->to == to)
    return;
  sw_cloth_scan_clear (scan);
  scan->forecast = sw_forecast_ref (forecast);
  scan->worked = forecast->layout.worked;
  scan->from = from;
  scan->to = to;
  scan->results = g_new0 (SwPooling, to - from + 1);
  sw_forecast_scan (forecast, scan->worked, from, to, scan->results);
}

const SwPooling *
sw_cloth_scan_at (const SwClothScan *scan, gsize width)
{
  g_return_val_if_fail (scan->results != NULL, NULL);
  return &scan->results[CLAMP (width, scan->from, scan->to) - scan->from];
}

gsize
sw_cloth_scan_next_peak (const SwClothScan *scan, gsize width, int direction)
{
  const SwPooling *peaks[SW_SCAN_MAX_PEAKS];
  gsize nearest = width, n;

  g_return_val_if_fail (scan->results != NULL, width);

  n = sw_scan_peaks (scan->results, scan->to - scan->from + 1, SPACING, peaks);
  for (gsize i = 0; i < n; i++)
    {
      const gboolean ahead = direction > 0 ? peaks[i]->width > width : peaks[i]->width < width;
      const gboolean nearer = nearest == width || (direction > 0 ? peaks[i]->width < nearest : peaks[i]->width > nearest);

      if (ahead && nearer)
        nearest = peaks[i]->width;
    }
  return nearest;
}
