/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-look.h"
#include "draw/sw-pan-geometry.h"

G_BEGIN_DECLS

/* Where which stitch is in the cloth picture. */
typedef struct
{
  SwBox cloth;                   /* px; may be larger than the picture */
  double stitch, row;            /* px of one stitch's width and of a row's height, at true gauge */
  gsize first_row, first_column; /* at the lower left of the box */
  gsize rows, columns;           /* in the box, in part at the upper and right edge */
  gboolean purl_side;            /* seen from behind: columns count from the other side */
  gboolean turned;               /* will be seen upside down: the light comes from below */
} SwClothGeometry;

/**
 * sw_cloth_geometry:
 * A cloth that fits is centred on the ground; one that does not is anchored
 * at the lower left with its first row and column as the look says (held
 * within the cloth).
 */
void sw_cloth_geometry (const SwForecast *forecast, double width, double height, const SwLook *look, SwClothGeometry *geometry);

/* @row, @column: of the stitch at @x, @y px. Returns: FALSE beside the cloth */
gboolean sw_cloth_stitch_at (const SwClothGeometry *geometry, double x, double y, gsize *row, gsize *column);

void sw_cloth_stitch_box (const SwClothGeometry *geometry, gsize row, gsize column, SwBox *box);

G_END_DECLS
