/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-scan-geometry.h"

#include <math.h>
#include <stdlib.h>

#define LEFT_PX 44
#define RIGHT_PX 14
#define ABOVE_PX 40    /* the key and the present width's name */
#define KEY_LINE_PX 16 /* more, where the key takes two lines */
#define NARROW_PX 480
#define HEAD_PX 20 /* within the plot, above a stacking of 1: room for the peaks' names */
#define BELOW_PX 40
#define LEAST_LABEL_PX 44

void
sw_scan_geometry (gsize from, gsize to, double width, double height, SwScanGeometry *geometry)
{
  const double above = width < NARROW_PX ? ABOVE_PX + KEY_LINE_PX : ABOVE_PX;

  g_return_if_fail (from <= to);
  geometry->plot = (SwBox){ LEFT_PX, above, MAX (width - LEFT_PX - RIGHT_PX, 1), MAX (height - above - BELOW_PX, 1) };
  geometry->key_lines = width < NARROW_PX ? 2 : 1;
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
  const double head = MIN (HEAD_PX, geometry->plot.height / 4);

  return geometry->plot.y + head + (1 - CLAMP (stack, 0, 1)) * (geometry->plot.height - head);
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

/* None within @reach is higher; of a plateau all are. */
static gboolean
is_highest (const SwPooling *results, gsize n, gsize i, gsize reach)
{
  const gsize from = i > reach ? i - reach : 0, to = MIN (i + reach, n - 1);

  for (gsize j = from; j <= to; j++)
    if (results[j].stack > results[i].stack)
      return FALSE;
  return TRUE;
}

/* Highest first; of a plateau where colours stand straight up, since that is what a knitter looks for; then the narrower. */
static int
compare_peaks (gconstpointer a, gconstpointer b)
{
  const SwPooling *p = *(const SwPooling *const *) a, *q = *(const SwPooling *const *) b;

  if (p->stack != q->stack)
    return p->stack > q->stack ? -1 : 1;
  if (ABS (p->stitch_step) != ABS (q->stitch_step))
    return ABS (p->stitch_step) - ABS (q->stitch_step);
  return p->width < q->width ? -1 : p->width > q->width;
}

gsize
sw_scan_peaks (const SwPooling *results, gsize n, gsize spacing, const SwPooling **peaks)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new ();
  gsize kept = 0;

  for (gsize i = 0; i < n; i++)
    if (results[i].verdict != SW_VERDICT_SCATTERS && results[i].verdict != SW_VERDICT_EVEN && is_highest (results, n, i, spacing))
      g_ptr_array_add (found, (gpointer) &results[i]);
  g_ptr_array_sort (found, compare_peaks);
  for (guint i = 0; i < found->len && kept < SW_SCAN_MAX_PEAKS; i++)
    {
      const SwPooling *peak = g_ptr_array_index (found, i);
      gboolean apart = TRUE;

      for (gsize k = 0; k < kept; k++)
        apart = apart && MAX (peak->width, peaks[k]->width) - MIN (peak->width, peaks[k]->width) > spacing;
      if (apart)
        peaks[kept++] = peak;
    }
  return kept;
}
