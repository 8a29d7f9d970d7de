/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Round strands on a grid of samples, the nearest to the eye kept: who lies
 * over whom comes from their height alone.
 */

/**
 * SwTubePoint: one place of a strand's centre line, in grid units.
 * @z: towards the eye
 * @place: share of the strand's length, 0 .. 1
 */
typedef struct
{
  float x, y, z, radius, place;
} SwTubePoint;

/**
 * SwTubeGrid: samples as seen, row by row from the top.
 * @left, @top: of the first sample's middle
 * @step: from one to the next
 */
typedef struct
{
  int width, height;
  float left, top, step;
} SwTubeGrid;

#define SW_TUBE_NOTHING (-1e9f)

/**
 * sw_tube_raster:
 * @points: (array length=n): @n >= 2
 * @z: (inout): width x height heights, SW_TUBE_NOTHING where nothing lies yet
 * @place, @across: (out) (nullable): of the strand, where it is the highest; across is -1 .. 1, positive to the left of its course
 */
void sw_tube_raster (const SwTubePoint *points, gsize n, const SwTubeGrid *grid, float *z, float *place, float *across);

G_END_DECLS
