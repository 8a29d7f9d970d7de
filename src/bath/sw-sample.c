/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "bath/sw-sample.h"

#include <math.h>
#include <string.h>

/* A layer with less of a speck's dye than this is not coloured by it. */
#define LEAST_SHARE 1e-4

/* Where a fraction of the box lies among n cell centres: the lower centre, and how far on. */
static inline int
lower_centre (float fraction, int n, float *on)
{
  float at = fraction * (float) n - 0.5f;
  int lower;

  at = CLAMP (at, 0.0f, (float) (n - 1));
  lower = MIN ((int) at, MAX (n - 2, 0));
  *on = n > 1 ? at - (float) lower : 0.0f;
  return lower;
}

void
sw_places_init (SwPlaces *places, const SwGrid *grid, const float *x, const float *y, const float *z, gsize n)
{
  places->n = n;
  places->cell = g_new (gint32, n);
  places->fx = g_new (float, n);
  places->fy = g_new (float, n);
  places->fz = g_new (float, n);

  for (gsize i = 0; i < n; i++)
    {
      int ix = lower_centre (x[i], grid->nx, &places->fx[i]);
      int iy = lower_centre (y[i], grid->ny, &places->fy[i]);
      int iz = lower_centre (z[i], grid->nz, &places->fz[i]);

      places->cell[i] = (iz * grid->ny + iy) * grid->nx + ix;
    }
}

void
sw_places_clear (SwPlaces *places)
{
  g_clear_pointer (&places->cell, g_free);
  g_clear_pointer (&places->fx, g_free);
  g_clear_pointer (&places->fy, g_free);
  g_clear_pointer (&places->fz, g_free);
  places->n = 0;
}

void
sw_places_read (const SwPlaces *places, const SwGrid *grid, const float *field, float scale, float *values)
{
  const gint32 *restrict cell = places->cell;
  const float *restrict fx = places->fx;
  const float *restrict fy = places->fy;
  const float *restrict fz = places->fz;
  float *restrict out = values;
  const int dx = grid->nx > 1 ? 1 : 0;
  const int dy = grid->ny > 1 ? grid->nx : 0;
  const int dz = grid->nz > 1 ? grid->nx * grid->ny : 0;

  for (gsize i = 0; i < places->n; i++)
    {
      const float *at = field + cell[i];
      float near_low = at[0] + fx[i] * (at[dx] - at[0]);
      float near_high = at[dy] + fx[i] * (at[dy + dx] - at[dy]);
      float far_low = at[dz] + fx[i] * (at[dz + dx] - at[dz]);
      float far_high = at[dz + dy] + fx[i] * (at[dz + dy + dx] - at[dz + dy]);
      float near = near_low + fy[i] * (near_high - near_low);
      float far = far_low + fy[i] * (far_high - far_low);

      out[i] = scale * (near + fz[i] * (far - near));
    }
}

static inline int
bin_of (double cm, double size_cm, int n)
{
  return CLAMP ((int) floor (cm / size_cm), 0, n - 1);
}

void
sw_bins_init (SwBins *bins, const SwGrid *grid, double size_cm, const float *x, const float *y, gsize n)
{
  g_autofree guint32 *bin = g_new (guint32, n);
  gsize n_bins;

  bins->size_cm = size_cm;
  bins->nx = (int) ceil (grid->lx / size_cm);
  bins->ny = (int) ceil (grid->ly / size_cm);
  n_bins = (gsize) bins->nx * (gsize) bins->ny;
  bins->start = g_new0 (guint32, n_bins + 1);
  bins->place = g_new (guint32, n);

  /* A counting sort: it keeps the strand's order within a bin. */
  for (gsize i = 0; i < n; i++)
    {
      int bx = bin_of ((double) x[i] * grid->lx, size_cm, bins->nx);
      int by = bin_of ((double) y[i] * grid->ly, size_cm, bins->ny);

      bin[i] = (guint32) (by * bins->nx + bx);
      bins->start[bin[i] + 1]++;
    }
  for (gsize i = 0; i < n_bins; i++)
    bins->start[i + 1] += bins->start[i];
  for (gsize i = n; i-- > 0;)
    bins->place[--bins->start[bin[i] + 1]] = (guint32) i;

  /* Each entry was moved down to its own bin's start, one place late. */
  memmove (bins->start, bins->start + 1, n_bins * sizeof (guint32));
  bins->start[n_bins] = (guint32) n;
}

void
sw_bins_clear (SwBins *bins)
{
  g_clear_pointer (&bins->start, g_free);
  g_clear_pointer (&bins->place, g_free);
}

/* Beyond this many half lengths from a mark's centre it is flat enough for one reading. */
#define FAR 4.0

/* Three-point Gauss-Legendre over the strand that a place stands for. Abramowitz & Stegun 1964, table 25.4. */
static double
mean_density (const SwMark *mark, double dx, double dy, double half_cm)
{
  const double node = 0.774596669241483 * half_cm;
  const double dy2 = dy * dy;

  if (dx * dx + dy2 > FAR * FAR * half_cm * half_cm)
    return sw_mark_density (mark, dx * dx + dy2);

  return (5.0 * sw_mark_density (mark, (dx - node) * (dx - node) + dy2) +
          8.0 * sw_mark_density (mark, dx * dx + dy2) +
          5.0 * sw_mark_density (mark, (dx + node) * (dx + node) + dy2)) /
         18.0;
}

/* A mark's share in the layer at a depth, by straight lines between layer centres like the field. */
static double
depth_share (const SwMark *mark, int nz, float z)
{
  float on;
  int iz = lower_centre (z, nz, &on);

  return (double) mark->depth[iz] + (nz > 1 ? (double) (on * (mark->depth[iz + 1] - mark->depth[iz])) : 0.0);
}

/* One speck at the places of one row of bins. */
static void
read_row (const SwBins *bins, int by, int x0, int x1, const SwGrid *grid, const float *x, const float *y, const float *z, double half_cm, const SwSpeck *speck, const SwMark *mark, float scale, float *values)
{
  double reach = mark->reach_cm + half_cm;

  for (guint32 j = bins->start[by * bins->nx + x0]; j < bins->start[by * bins->nx + x1 + 1]; j++)
    {
      guint32 k = bins->place[j];
      double dx = (double) x[k] * grid->lx - (double) speck->x;
      double dy = (double) y[k] * grid->ly - (double) speck->y;
      double share;

      if (dx * dx + dy * dy > reach * reach)
        continue;

      /* Most of the strand lies deeper than a speck reaches. */
      share = depth_share (mark, grid->nz, z[k]);
      if (share > LEAST_SHARE)
        values[k] += scale * speck->grams * (float) (mean_density (mark, dx, dy, half_cm) * share);
    }
}

void
sw_specks_read (const SwBins *bins, const SwGrid *grid, const float *x, const float *y, const float *z, double half_cm, const SwSpeck *specks, const guint8 *class_of, gsize n_specks, const SwMark *marks, float scale, float *values)
{
  for (gsize i = 0; i < n_specks; i++)
    {
      const SwSpeck *speck = &specks[i];
      const SwMark *mark = &marks[class_of[i]];
      double reach = mark->reach_cm + half_cm;
      int x0 = bin_of ((double) speck->x - reach, bins->size_cm, bins->nx);
      int x1 = bin_of ((double) speck->x + reach, bins->size_cm, bins->nx);
      int y0 = bin_of ((double) speck->y - reach, bins->size_cm, bins->ny);
      int y1 = bin_of ((double) speck->y + reach, bins->size_cm, bins->ny);

      for (int by = y0; by <= y1; by++)
        read_row (bins, by, x0, x1, grid, x, y, z, half_cm, speck, mark, scale, values);
    }
}
