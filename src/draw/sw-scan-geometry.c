/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-scan-geometry.h"

#include <math.h>
#include <stdlib.h>

#define LEFT_PX 44
#define RIGHT_PX 14
#define ABOVE_PX 40 /* the legend and the present width's name */
#define BELOW_PX 40
#define LEAST_LABEL_PX 44

void
sw_scan_geometry (gsize from, gsize to, double width, double height, SwScanGeometry *geometry)
{
  g_return_if_fail (from <= to);
  geometry->plot = (SwBox){ LEFT_PX, ABOVE_PX, MAX (width - LEFT_PX - RIGHT_PX, 1), MAX (height - ABOVE_PX - BELOW_PX, 1) };
  geometry->from = from;
  geometry->to = to;
}

double
sw_scan_to_x (const SwScanGeometry *geometry, double stitches)
{
  const double span = MAX ((double) (geometry->to - geometry->from), 1);

  return geometry->plot.x + (stitches - (double) geometry->from) / span * geometry->plot.width;
}

double
sw_scan_to_y (const SwScanGeometry *geometry, double stack)
{
  return geometry->plot.y + (1 - CLAMP (stack, 0, 1)) * geometry->plot.height;
}

gsize
sw_scan_width_at (const SwScanGeometry *geometry, double x)
{
  const double span = (double) (geometry->to - geometry->from);
  const double share = CLAMP ((x - geometry->plot.x) / geometry->plot.width, 0, 1);

  return geometry->from + (gsize) lround (share * span);
}

gsize
sw_scan_step (const SwScanGeometry *geometry)
{
  static const gsize steps[] = { 1, 2, 5, 10, 20, 50, 100, 200, 500 };
  const double px = sw_scan_to_x (geometry, 1) - sw_scan_to_x (geometry, 0);

  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    if ((double) steps[i] * px >= LEAST_LABEL_PX)
      return steps[i];
  return 1000;
}

static gboolean
is_peak (const SwPooling *results, gsize n, gsize i, gsize spacing)
{
  const gsize from = i > spacing ? i - spacing : 0, to = MIN (i + spacing, n - 1);

  if (results[i].verdict == SW_VERDICT_SCATTERS || results[i].verdict == SW_VERDICT_EVEN)
    return FALSE;
  for (gsize j = from; j <= to; j++)
    if (results[j].stack > results[i].stack || (results[j].stack == results[i].stack && j < i))
      return FALSE;
  return TRUE;
}

/* Highest first; of equals the narrower. */
static int
compare_peaks (gconstpointer a, gconstpointer b)
{
  const SwScanPeak *p = a, *q = b;

  if (p->stack != q->stack)
    return p->stack > q->stack ? -1 : 1;
  return p->width < q->width ? -1 : 1;
}

gsize
sw_scan_peaks (const SwPooling *results, gsize n, gsize spacing, SwScanPeak *peaks)
{
  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (SwScanPeak));
  gsize kept;

  for (gsize i = 0; i < n; i++)
    if (is_peak (results, n, i, spacing))
      {
        const SwScanPeak peak = { results[i].width, results[i].stack, results[i].verdict, results[i].worked };

        g_array_append_val (found, peak);
      }
  g_array_sort (found, compare_peaks);
  kept = MIN (found->len, SW_SCAN_MAX_PEAKS);
  for (gsize i = 0; i < kept; i++)
    peaks[i] = g_array_index (found, SwScanPeak, i);
  return kept;
}
