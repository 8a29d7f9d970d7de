/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-cloth-geometry.h"

#include <math.h>

/* Ground left around a cloth fitted to the picture, as a share of the smaller side. */
#define MARGIN 0.04

/* A cloth seen from its corner that leaves room is centred; else its lower left is the picture's. */
static void
place (SwClothGeometry *geometry, double width, double height, double margin)
{
  SwBox *cloth = &geometry->cloth;
  const double beside = geometry->first_column == 0 ? MAX (width - cloth->width, 0) / 2 : 0;
  double below = 0;

  if (geometry->first_row == 0 && cloth->height + 2 * margin <= height)
    below = (height - cloth->height) / 2;
  else if (geometry->first_row == 0)
    below = MIN (beside, margin); /* it runs off at the top; below the cast-on edge ground shows as at the sides */
  cloth->x = beside;
  cloth->y = height - below - cloth->height;
}

void
sw_cloth_geometry (const SwForecast *forecast, double width, double height, const SwLook *look, SwClothGeometry *geometry)
{
  const SwLayout *layout = &forecast->layout;
  const gsize all_rows = sw_layout_rows (layout), all_columns = layout->width;
  const double margin = MARGIN * MIN (width, height);

  *geometry = (SwClothGeometry){ .purl_side = look->purl_side };
  geometry->stitch = look->stitch_px > 0 ? look->stitch_px : MAX (width - 2 * margin, 1) / (double) MAX (all_columns, 1);
  geometry->row = geometry->stitch * forecast->row_height_cm / forecast->stitch_width_cm;
  if (all_rows == 0 || all_columns == 0)
    return;

  geometry->first_row = MIN (look->first_row, all_rows - 1);
  geometry->first_column = MIN (look->first_column, all_columns - 1);
  geometry->columns = MIN (all_columns - geometry->first_column, (gsize) ceil (width / geometry->stitch));
  geometry->rows = MIN (all_rows - geometry->first_row, (gsize) ceil (height / geometry->row));
  geometry->cloth.width = (double) geometry->columns * geometry->stitch;
  geometry->cloth.height = (double) geometry->rows * geometry->row;
  place (geometry, width, height, margin);
}

gboolean
sw_cloth_stitch_at (const SwClothGeometry *geometry, double x, double y, gsize *row, gsize *column)
{
  const double across = (x - geometry->cloth.x) / geometry->stitch;
  const double up = (geometry->cloth.y + geometry->cloth.height - y) / geometry->row;

  if (!(across >= 0 && across < (double) geometry->columns && up >= 0 && up < (double) geometry->rows))
    return FALSE;
  *row = geometry->first_row + (gsize) up;
  *column = geometry->first_column + (gsize) across;
  return TRUE;
}

void
sw_cloth_stitch_box (const SwClothGeometry *geometry, gsize row, gsize column, SwBox *box)
{
  const double across = (double) column - (double) geometry->first_column, up = (double) row - (double) geometry->first_row;

  box->x = geometry->cloth.x + across * geometry->stitch;
  box->y = geometry->cloth.y + geometry->cloth.height - (up + 1) * geometry->row;
  box->width = geometry->stitch;
  box->height = geometry->row;
}
