/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-tube.h"

#include <math.h>

/*
 * A piece reaches a little beyond its ends, so that no wedge opens on the
 * outside of a bend nor between two strands that go on from each other; the
 * higher one wins. There it sinks faster than strands do, lest it hide the
 * piece that goes on from it.
 */
#define BEYOND 0.6f
#define SINK 2.0f

typedef struct
{
  int from_i, to_i, from_j, to_j;
} Span;

static Span
span_of (const SwTubePoint *a, const SwTubePoint *b, const SwTubeGrid *grid)
{
  const float r = MAX (a->radius, b->radius), scale = 1 / grid->step;

  return (Span){
    .from_i = MAX (0, (int) ceilf ((MIN (a->x, b->x) - r - grid->left) * scale)),
    .to_i = MIN (grid->width - 1, (int) floorf ((MAX (a->x, b->x) + r - grid->left) * scale)),
    .from_j = MAX (0, (int) ceilf ((grid->top - MAX (a->y, b->y) - r) * scale)),
    .to_j = MIN (grid->height - 1, (int) floorf ((grid->top - MIN (a->y, b->y) + r) * scale)),
  };
}

static void
raster_piece (const SwTubePoint *a, const SwTubePoint *b, const SwTubeGrid *grid, float *z, float *place, float *across)
{
  const float dx = b->x - a->x, dy = b->y - a->y, length2 = MAX (dx * dx + dy * dy, 1e-9f);
  const float inverse = 1 / length2, unit = 1 / sqrtf (length2);
  const float sink = SINK * (fabsf (b->z - a->z) + sqrtf (length2));
  const Span span = span_of (a, b, grid);

  for (int j = span.from_j; j <= span.to_j; j++)
    for (int i = span.from_i; i <= span.to_i; i++)
      {
        const float x = grid->left + (float) i * grid->step - a->x, y = grid->top - (float) j * grid->step - a->y;
        const float u = (x * dx + y * dy) * inverse;
        const float radius = a->radius + (b->radius - a->radius) * u;
        const float s = (y * dx - x * dy) * unit / radius;
        const int at = j * grid->width + i;
        float beyond, height;

        if (u < -BEYOND || u > 1 + BEYOND || s * s >= 1)
          continue;
        beyond = MAX (MAX (-u, u - 1), 0.0f);
        height = a->z + (b->z - a->z) * u + radius * sqrtf (1 - s * s) - beyond * sink;
        if (height <= z[at])
          continue;
        z[at] = height;
        if (place != NULL)
          {
            place[at] = a->place + (b->place - a->place) * u;
            across[at] = s;
          }
      }
}

void
sw_tube_raster (const SwTubePoint *points, gsize n, const SwTubeGrid *grid, float *z, float *place, float *across)
{
  for (gsize i = 0; i + 1 < n; i++)
    raster_piece (&points[i], &points[i + 1], grid, z, place, across);
}
