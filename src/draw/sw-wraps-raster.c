/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-wraps-raster.h"

#include <math.h>
#include <string.h>

/* Samples stand a little aside of their square grid, neighbours the other way, so that no edge meets a whole line of them at once. All pixels alike: no pattern. */
#define ASIDE 0.25f

/* A segment in samples, from the picture's upper left. */
typedef struct
{
  float x, y, dx, dy; /* from its first point to the next */
  float z, dz;        /* cm */
  float radius, radius_cm;
  float top; /* its highest place, cm */
} Segment;

static Segment
segment_at (const SwWrapGrid *grid, guint32 at)
{
  const SwWrapPoint *p = &g_array_index (grid->wraps->points, SwWrapPoint, at), *q = p + 1;
  const float radius = g_array_index (grid->wraps->wraps, SwWrap, p->wrap).radius;

  return (Segment){ p->x * grid->scale - grid->left, p->y * grid->scale - grid->top, (q->x - p->x) * grid->scale, (q->y - p->y) * grid->scale, p->z, q->z - p->z, radius * grid->scale, radius, MAX (p->z, q->z) + radius };
}

typedef struct
{
  int left, top, right, bottom; /* the last ones are in it */
} Extent;

/* Tiles that a segment reaches into; right < left: none. */
static Extent
tiles_of (const SwWrapGrid *grid, const Segment *segment)
{
  const float tile = (float) grid->tile, r = segment->radius;
  const float left = segment->x + MIN (segment->dx, 0) - r, right = segment->x + MAX (segment->dx, 0) + r, top = segment->y + MIN (segment->dy, 0) - r, bottom = segment->y + MAX (segment->dy, 0) + r;

  if (right < 0 || bottom < 0)
    return (Extent){ 0, 0, -1, -1 };
  return (Extent){ (int) (MAX (left, 0) / tile), (int) (MAX (top, 0) / tile), MIN ((int) (right / tile), grid->columns - 1), MIN ((int) (bottom / tile), grid->rows - 1) };
}

static gboolean
is_last (const SwWrapGrid *grid, guint32 at)
{
  const SwWrapPoint *p = &g_array_index (grid->wraps->points, SwWrapPoint, at);

  return at + 1 >= grid->points || p[1].wrap != p->wrap;
}

/* Counts (@segments NULL) or files every segment. */
static void
file_segments (SwWrapGrid *grid, guint32 *next)
{
  for (guint32 at = 0; at < grid->points; at++)
    {
      Segment segment;
      Extent extent;

      if (is_last (grid, at))
        continue;
      segment = segment_at (grid, at);
      extent = tiles_of (grid, &segment);
      for (int j = extent.top; j <= extent.bottom; j++)
        for (int i = extent.left; i <= extent.right; i++)
          {
            const gsize k = (gsize) j * (gsize) grid->columns + (gsize) i;

            if (next == NULL)
              grid->starts[k + 1]++;
            else
              grid->segments[next[k]++] = at;
          }
    }
}

void
sw_wrap_grid_init (SwWrapGrid *grid, const SwWraps *wraps, guint points, float scale, float left, float top, int width, int height, int tile, int finer)
{
  const int columns = (width + tile - 1) / tile, rows = (height + tile - 1) / tile;
  const gsize n = (gsize) columns * (gsize) rows;
  g_autofree guint32 *next = g_new (guint32, n);

  *grid = (SwWrapGrid){ .wraps = wraps, .points = points, .scale = scale, .left = left, .top = top, .tile = tile, .columns = columns, .rows = rows };
  grid->asides = g_new (float, tile);
  for (int i = 0; i < tile; i++)
    grid->asides[i] = i % finer & 1 ? -ASIDE : ASIDE;
  grid->starts = g_new0 (guint32, n + 1);
  file_segments (grid, NULL);
  for (gsize k = 0; k < n; k++)
    grid->starts[k + 1] += grid->starts[k];
  grid->segments = g_new (guint32, MAX (grid->starts[n], 1));
  memcpy (next, grid->starts, n * sizeof *next);
  file_segments (grid, next);
}

void
sw_wrap_grid_clear (SwWrapGrid *grid)
{
  g_free (grid->asides);
  g_free (grid->starts);
  g_free (grid->segments);
}

/* What a segment covers of one line of samples: it is a band with round ends. */
static void
sample_line (const Segment *segment, const SwWrapGrid *grid, int row, int from, int to, guint32 number, SwWrapSample *line)
{
  const float per = 1 / MAX (segment->dx * segment->dx + segment->dy * segment->dy, 1e-6f), r2 = segment->radius * segment->radius, inverse = 1 / segment->radius;
  const float aside = grid->asides[row];

  for (int i = from; i <= to; i++)
    {
      SwWrapSample *sample = &line[i];
      float px, py, t, ex, ey, away2, z;

      if (segment->top <= sample->z)
        continue;
      px = (float) i + 0.5f + aside - segment->x;
      py = (float) row + 0.5f - grid->asides[i] - segment->y;
      t = CLAMP ((px * segment->dx + py * segment->dy) * per, 0.0f, 1.0f);
      ex = px - t * segment->dx;
      ey = py - t * segment->dy;
      away2 = ex * ex + ey * ey;
      if (away2 >= r2)
        continue;
      z = segment->z + t * segment->dz + segment->radius_cm * sqrtf (1 - away2 * inverse * inverse);
      if (z <= sample->z)
        continue;
      *sample = (SwWrapSample){ number, t, copysignf (sqrtf (away2) * inverse, ex * segment->dy - ey * segment->dx), z };
    }
}

static void
sample_segment (const Segment *segment, const SwWrapGrid *grid, guint32 number, SwWrapSample *samples)
{
  const float r = segment->radius, reach = r * sqrtf (segment->dx * segment->dx + segment->dy * segment->dy);
  const float left = segment->x + MIN (segment->dx, 0) - r, right = segment->x + MAX (segment->dx, 0) + r;
  const int top = MAX ((int) (segment->y + MIN (segment->dy, 0) - r), 0), bottom = MIN ((int) (segment->y + MAX (segment->dy, 0) + r), grid->tile - 1);

  for (int j = top; j <= bottom; j++)
    {
      const float y = (float) j + 0.5f;
      float from = left, to = right;

      if (fabsf (segment->dy) > 0.05f)
        {
          const float middle = segment->x + (y - segment->y) * segment->dx / segment->dy, half = (reach + ASIDE * fabsf (segment->dx)) / fabsf (segment->dy);

          from = MAX (from, middle - half);
          to = MIN (to, middle + half);
        }
      sample_line (segment, grid, j, (int) MAX (from - 1, 0), (int) MIN (to + 1, (float) (grid->tile - 1)), number, samples + (gsize) j * (gsize) grid->tile);
    }
}

void
sw_wrap_grid_sample (const SwWrapGrid *grid, int column, int row, SwWrapSample *samples)
{
  const gsize k = (gsize) row * (gsize) grid->columns + (gsize) column;

  memset (samples, 0, (gsize) grid->tile * (gsize) grid->tile * sizeof *samples);
  for (guint32 i = grid->starts[k]; i < grid->starts[k + 1]; i++)
    {
      Segment segment = segment_at (grid, grid->segments[i]);

      segment.x -= (float) (column * grid->tile);
      segment.y -= (float) (row * grid->tile);
      sample_segment (&segment, grid, grid->segments[i] + 1, samples);
    }
}
