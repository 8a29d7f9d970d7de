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

/* Narrows @low .. @high to where @from < @slope * x + @at < @to. */
static void
narrow (float slope, float at, float from, float to, float *low, float *high)
{
  const float inverse = 1 / slope, p = (from - at) * inverse, q = (to - at) * inverse;

  /* Level, or as good as that: all of it or nothing, which is left to the samples. */
  if (fabsf (slope) < 1e-6f)
    return;
  *low = MAX (*low, MIN (p, q));
  *high = MIN (*high, MAX (p, q));
}

/* A piece seen from its first point; grid units but for what @inverse and @unit make of them. */
typedef struct
{
  const SwTubePoint *a;
  float dx, dy, dz, wider;
  float inverse, unit; /* 1 over the length's square, over the length */
  float reach, sink;
} Piece;

static Piece
piece_of (const SwTubePoint *a, const SwTubePoint *b)
{
  const float dx = b->x - a->x, dy = b->y - a->y, dz = b->z - a->z, length2 = MAX (dx * dx + dy * dy, 1e-9f), length = sqrtf (length2);

  return (Piece){
    .a = a,
    .dx = dx,
    .dy = dy,
    .dz = dz,
    .wider = b->radius - a->radius,
    .inverse = 1 / length2,
    .unit = 1 / length,
    .reach = MAX (a->radius, b->radius) + BEYOND * fabsf (b->radius - a->radius),
    .sink = SINK * (fabsf (dz) + length),
  };
}

/* The samples of a line, @y from the first point, that the piece may cover; most of the box around a slanting one it does not. */
static void
narrow_line (const Piece *piece, const SwTubeGrid *grid, float y, int *from_i, int *to_i)
{
  const float left = grid->left - piece->a->x;
  float low = left + (float) *from_i * grid->step, high = left + (float) *to_i * grid->step;

  narrow (piece->dx * piece->inverse, y * piece->dy * piece->inverse, -BEYOND, 1 + BEYOND, &low, &high);
  narrow (-piece->dy * piece->unit, y * piece->dx * piece->unit, -piece->reach, piece->reach, &low, &high);
  *from_i = MAX (*from_i, (int) ((low - left) / grid->step) - 1);
  *to_i = MIN (*to_i, (int) ((high - left) / grid->step) + 2);
}

static void
raster_piece (const SwTubePoint *a, const SwTubePoint *b, const SwTubeGrid *grid, float *z, float *place, float *across)
{
  const Piece piece = piece_of (a, b);
  const Span span = span_of (a, b, grid);

  for (int j = span.from_j; j <= span.to_j; j++)
    {
      const float y = grid->top - (float) j * grid->step - a->y;
      int from_i = span.from_i, to_i = span.to_i;

      narrow_line (&piece, grid, y, &from_i, &to_i);
      for (int i = from_i; i <= to_i; i++)
        {
          const float x = grid->left + (float) i * grid->step - a->x;
          const float u = (x * piece.dx + y * piece.dy) * piece.inverse;
          const float off = (y * piece.dx - x * piece.dy) * piece.unit, radius = a->radius + piece.wider * u;
          const float up2 = radius * radius - off * off;
          const int at = j * grid->width + i;
          float height;

          if (u < -BEYOND || u > 1 + BEYOND || up2 <= 0)
            continue;
          height = a->z + piece.dz * u + sqrtf (up2) - MAX (MAX (-u, u - 1), 0.0f) * piece.sink;
          if (height <= z[at])
            continue;
          z[at] = height;
          if (place != NULL)
            {
              place[at] = a->place + (b->place - a->place) * u;
              across[at] = off / radius;
            }
        }
    }
}

void
sw_tube_raster (const SwTubePoint *points, gsize n, const SwTubeGrid *grid, float *z, float *place, float *across)
{
  for (gsize i = 0; i + 1 < n; i++)
    raster_piece (&points[i], &points[i + 1], grid, z, place, across);
}
