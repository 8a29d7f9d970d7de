/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "forecast/sw-listing-cloth.h"

#include "forecast/sw-main-colours.h"

#include <math.h>

#define SWATCH_CM 25.0 /* as high as a swatch beside a hank is */
#define MISSED 0.30    /* of the strand's colours, as shares */

/* The share of @shares that has to be moved to come to those of the colours in the first @stitches. */
static double
missed (const SwForecast *forecast, gsize stitches)
{
  SwMainColour colours[SW_MOST_COLOURS];
  const int n = sw_main_colours (forecast, colours);
  double seen[SW_MOST_COLOURS] = { 0 }, sum = 0;

  for (gsize i = 0; i < stitches; i++)
    {
      const SwLab lab = { (double) forecast->lab_l[i], (double) forecast->lab_a[i], (double) forecast->lab_b[i] };
      double least = INFINITY;
      int best = 0;

      for (int k = 0; k < n; k++)
        {
          const double off = hypot (hypot (lab.l - colours[k].lab.l, lab.a - colours[k].lab.a), lab.b - colours[k].lab.b);

          if (off < least)
            {
              least = off;
              best = k;
            }
        }
      seen[best] += 1.0 / (double) stitches;
    }
  for (int k = 0; k < n; k++)
    sum += fabs (seen[k] - colours[k].share) / 2;
  return sum;
}

/* Rows in so much of the cloth's height. */
static double
rows_in (const SwForecast *forecast, double height_cm)
{
  return MAX (floor (height_cm / forecast->row_height_cm), 1);
}

gboolean
sw_listing_cloth_is_wide (const SwForecast *forecast)
{
  const double stitches = rows_in (forecast, SWATCH_CM) * (double) forecast->layout.width;

  if (forecast->n_skeins > 1 || forecast->n_stitches == 0 || !(forecast->row_height_cm > 0) || stitches >= (double) forecast->n_stitches)
    return FALSE;
  return missed (forecast, (gsize) stitches) > MISSED;
}

void
sw_listing_cloth_widen (const SwForecast *forecast, double height_cm, SwForecast *wide)
{
  const double own = (double) MAX (forecast->layout.width, 1), cast_on = (double) forecast->layout.cast_on / own; /* rows' worth */
  const double width = floor ((double) forecast->n_stitches / (rows_in (forecast, height_cm) + cast_on));
  const double to = CLAMP (width, own, MAX (own, SW_CLOTH_WIDEST));

  *wide = *forecast;
  wide->layout.width = (gsize) to;
  wide->layout.cast_on = (gsize) (cast_on * to);
}
