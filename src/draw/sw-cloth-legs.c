/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-cloth-legs.h"

void
sw_cloth_legs (const SwForecast *forecast, gboolean purl_side, gsize row, gsize first, gsize n, float *x, float *y, float *z)
{
  const SwSkeinLegs *skein = &forecast->skeins[sw_alternation_skein (&forecast->layout.alternation, row)];
  const gsize left = sw_layout_rightward (&forecast->layout, row) != purl_side ? 0 : 1, last = forecast->layout.width - 1;

  for (gsize c = 0; c < n; c++)
    {
      const gsize stitch = sw_layout_stitch (&forecast->layout, row, purl_side ? last - first - c : first + c);

      g_assert (stitch < skein->n_stitches);
      for (gsize leg = 0; leg < 2; leg++)
        {
          const gsize from = 2 * stitch + (left ^ leg), to = 2 * c + leg;

          x[to] = skein->leg_x[from];
          y[to] = skein->leg_y[from];
          z[to] = skein->leg_z[from];
        }
    }
}

void
sw_cloth_cast_on (const SwForecast *forecast, gboolean purl_side, gsize first, gsize n, float *x, float *y, float *z)
{
  const SwLayout *layout = &forecast->layout;
  const gboolean with_row = (layout->worked == SW_WORKED_ROUND) == (sw_layout_rightward (layout, 0) != purl_side);

  for (gsize c = 0; c < n; c++)
    {
      const gsize column = with_row ? first + c : layout->width - 1 - first - c;
      const gsize stitch = MIN (column * layout->cast_on / layout->width, forecast->n_stitches - 1);

      x[c] = forecast->leg_x[2 * stitch];
      y[c] = forecast->leg_y[2 * stitch];
      z[c] = forecast->leg_z[2 * stitch];
    }
}
