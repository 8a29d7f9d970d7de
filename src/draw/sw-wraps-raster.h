/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-wraps.h"

G_BEGIN_DECLS

/* Which wrap is seen at each place of a picture: the highest. */

/**
 * SwWrapSample:
 * @segment: one more than its first point's number; 0: none is seen
 * @t: 0 .. 1 from its first point to the next
 * @across: -1 .. 1 from edge to edge, positive to the left of the course
 * @z: cm
 */
typedef struct
{
  guint32 segment;
  float t, across, z;
} SwWrapSample;

/* The segments that reach into each square tile of a picture. */
typedef struct
{
  const SwWraps *wraps;
  guint points;
  float scale, left, top; /* samples per cm; samples from the lay's upper left to the picture's */
  int tile, columns, rows;
  float *asides; /* how far each of a tile's samples stands off its square place */
  guint32 *starts; /* columns x rows + 1 */
  guint32 *segments;
} SwWrapGrid;

/**
 * sw_wrap_grid_init:
 * @points: only the first so many points are drawn
 * @scale: samples per cm
 * @left, @top: where the picture begins, samples from the lay's upper left
 * @width, @height: of the picture, samples
 * @tile: samples along a tile's side
 * @finer: samples along a pixel's side
 * Keeps @wraps, which must not change meanwhile.
 */
void sw_wrap_grid_init (SwWrapGrid *grid, const SwWraps *wraps, guint points, float scale, float left, float top, int width, int height, int tile, int finer);
void sw_wrap_grid_clear (SwWrapGrid *grid);

/* @samples: (out caller-allocates): tile x tile, the far edge first */
void sw_wrap_grid_sample (const SwWrapGrid *grid, int column, int row, SwWrapSample *samples);

G_END_DECLS
