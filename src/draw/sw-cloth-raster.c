/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-cloth-raster.h"

#include "draw/sw-cloth-average.h"
#include "draw/sw-cloth-legs.h"
#include "draw/sw-stitch-painter.h"
#include "draw/sw-yarn-light.h"
#include "sketch/sw-chance.h"

#include <math.h>

/* Lines gathered at once, so that they stay in the processor's near memory; a row at least, lest stitches be laid too often. */
#define BAND_LINES 32

typedef struct
{
  const SwForecast *forecast;
  const SwClothGeometry *geometry;
  double scale;
  gsize first, n; /* columns: the geometry's, and beside them those that drift into the picture */
  SwStitchPainter painter;
  float *xyz, *edge_xyz;
} Cloth;

void
sw_cloth_style (const SwForecast *forecast, const SwClothGeometry *geometry, double scale, SwStitchStyle *style)
{
  const SwYarn *yarn = &forecast->sketch->yarn;

  *style = (SwStitchStyle){
    .stitch = geometry->stitch * scale,
    .row = geometry->row * scale,
    .length = forecast->stitch_length_cm / forecast->stitch_width_cm,
    .diameter = CLAMP (sw_yarn_diameter_cm (yarn->metres_per_100_g) / forecast->stitch_width_cm, 0.30, 0.48),
    .fabric = forecast->sketch->cloth.fabric,
    .purl_side = geometry->purl_side,
    .fibre = yarn->fibre,
    .plies = (int) yarn->plies,
    .quarters = geometry->turned ? 2 : 0,
  };
}

/* The legs of a row and of its neighbours to both sides; beyond the cloth's edge the strand goes on in the last colour. */
static void
read_legs (const Cloth *cloth, gsize row)
{
  const SwClothGeometry *geometry = cloth->geometry;
  const gsize n = cloth->n, first = cloth->first, stride = 2 * (n + 2);
  const gsize before = first > 0 ? 1 : 0, after = first + n < cloth->forecast->layout.width ? 1 : 0;
  float *x = cloth->xyz, *y = x + stride, *z = y + stride;
  const gsize skip = 2 * (1 - before);

  sw_cloth_legs (cloth->forecast, geometry->purl_side, row, first - before, n + before + after, x + skip, y + skip, z + skip);
  for (int plane = 0; plane < 3; plane++)
    {
      float *legs = cloth->xyz + (gsize) plane * stride;

      if (before == 0)
        legs[0] = legs[1] = legs[2];
      if (after == 0)
        legs[stride - 2] = legs[stride - 1] = legs[stride - 3];
    }
}

static void
add_row (Cloth *cloth, gsize row)
{
  const SwClothGeometry *geometry = cloth->geometry;
  const SwLayout *layout = &cloth->forecast->layout;
  const gsize n = cloth->n, first = cloth->first;
  SwBox cell;
  SwStitchRow stitches = { .row = row, .n = n, .xyz = cloth->xyz, .address = sw_chance_mix (0x636c6f7468, row) };

  sw_cloth_stitch_box (geometry, row, first, &cell);
  stitches.x = cell.x * cloth->scale;
  stitches.y = cell.y * cloth->scale;
  /* Seen from behind, the fabric's columns count from the other side. */
  stitches.column = first + (geometry->purl_side ? layout->width % 2 + 1 : 0);
  stitches.left_edge = first == 0;
  stitches.right_edge = first + n == layout->width;
  read_legs (cloth, row);
  if (row == 0)
    {
      stitches.edges |= SW_EDGE_CAST_ON;
      stitches.edge_xyz = cloth->edge_xyz;
      sw_cloth_cast_on (cloth->forecast, geometry->purl_side, first, n, cloth->edge_xyz, cloth->edge_xyz + n, cloth->edge_xyz + 2 * n);
    }
  if (row + 1 == sw_layout_rows (layout))
    stitches.edges |= SW_EDGE_TOP;
  sw_stitch_painter_add (&cloth->painter, &stitches);
}

/*
 * Rows that reach into the band, upwards: also those just outside the
 * geometry's box, whose heads and feet show at its edges.
 */
static void
add_rows (Cloth *cloth)
{
  const SwClothGeometry *geometry = cloth->geometry;
  const double bottom = (geometry->cloth.y + geometry->cloth.height) * cloth->scale, row = geometry->row * cloth->scale;
  const double reach = sw_stitch_mask_get_reach (cloth->painter.mask) / row;
  const double up_from = floor ((bottom - cloth->painter.y - cloth->painter.lines) / row - reach - 1), up_to = (bottom - cloth->painter.y) / row + reach;
  const double first = (double) geometry->first_row, all = (double) sw_layout_rows (&cloth->forecast->layout);

  for (double r = MAX (first + up_from, 0); r < MIN (first + up_to, all); r++)
    add_row (cloth, (gsize) r);
}

void
sw_cloth_raster (const SwForecast *forecast, const SwClothGeometry *geometry, double scale, int x, int y, int width, int height, int stride, guint32 *pixels)
{
  const gsize last = MIN (geometry->first_column + geometry->columns + 1, forecast->layout.width);
  Cloth cloth = { forecast, geometry, scale, geometry->first_column - (geometry->first_column > 0 ? 1 : 0) };
  SwStitchStyle style;
  int most_lines;

  if (geometry->stitch * scale < SW_CLOTH_AVERAGE_BELOW || geometry->columns == 0)
    {
      sw_cloth_average (forecast, geometry, scale, x, y, width, height, stride, pixels);
      return;
    }
  cloth.n = last - cloth.first;
  sw_cloth_style (forecast, geometry, scale, &style);
  most_lines = MAX (BAND_LINES, (int) style.row);
  sw_stitch_painter_init (&cloth.painter, &style, x, width, most_lines, cloth.n);
  cloth.xyz = g_new (float, 6 * (cloth.n + 2));
  cloth.edge_xyz = g_new (float, 3 * cloth.n);
  for (int line = 0; line < height; line += most_lines)
    {
      sw_stitch_painter_begin (&cloth.painter, y + line, MIN (most_lines, height - line));
      add_rows (&cloth);
      sw_stitch_painter_end (&cloth.painter, stride, pixels + (gsize) line * (gsize) stride);
    }
  sw_stitch_painter_clear (&cloth.painter);
  g_free (cloth.xyz);
  g_free (cloth.edge_xyz);
}
