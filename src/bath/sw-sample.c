/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "bath/sw-sample.h"

#include "bath/sw-leg-mark.h"

#include <math.h>
#include <string.h>

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

/* A mark's share in the layer at a depth, by straight lines between layer centres like the field. */
static inline float
depth_share (const SwMark *mark, int nz, float z)
{
  float on;
  int iz = lower_centre (z, nz, &on);

  return mark->depth[iz] + (nz > 1 ? on * (mark->depth[iz + 1] - mark->depth[iz]) : 0.0f);
}

static float
largest_share (const SwMark *mark, int nz)
{
  float largest = 0.0f;

  for (int iz = 0; iz < nz; iz++)
    largest = MAX (largest, mark->depth[iz]);
  return largest;
}

/* One speck, and how far and how deep it can be seen. */
typedef struct
{
  float x, y;  /* cm */
  float scale; /* its dye's */
  float reach; /* cm */
  float least_share;
  const SwMark *mark;
  const SwLegMark *leg;
} Spot;

static Spot
spot_of (const SwSpeck *speck, const SwMark *mark, const SwLegMark *leg, int nz, double half_cm, float scale)
{
  Spot spot = { speck->x, speck->y, scale * speck->grams, 0.0f, 0.0f, mark, leg };
  float most = spot.scale * largest_share (mark, nz);

  if (most > 0.0f)
    {
      spot.reach = (float) (sw_mark_extent (mark, SW_LEAST_AMOUNT / (double) most) + half_cm);
      spot.least_share = (float) SW_LEAST_AMOUNT / (spot.scale * leg->mean[0][0]);
    }
  return spot;
}

/* One speck at the places of one row of bins. */
static void
read_row (const SwBins *bins, int by, int x0, int x1, const SwGrid *grid, const float *x, const float *y, const float *z, const Spot *spot, float *values)
{
  const float lx = (float) grid->lx, ly = (float) grid->ly, reach2 = spot->reach * spot->reach;

  for (guint32 j = bins->start[by * bins->nx + x0]; j < bins->start[by * bins->nx + x1 + 1]; j++)
    {
      guint32 k = bins->place[j];
      float dx = x[k] * lx - spot->x, dy = y[k] * ly - spot->y;
      float share;

      if (dx * dx + dy * dy > reach2)
        continue;

      /* Most of the strand lies deeper than a speck reaches. */
      share = depth_share (spot->mark, grid->nz, z[k]);
      if (share > spot->least_share)
        values[k] += spot->scale * share * sw_leg_mark_mean (spot->leg, dx, dy);
    }
}

void
sw_specks_read (const SwBins *bins, const SwGrid *grid, const float *x, const float *y, const float *z, double half_cm, const SwSpeck *specks, const guint8 *class_of, gsize n_specks, const SwMark *marks, float scale, float *values)
{
  SwLegMark *legs[G_MAXUINT8 + 1] = { NULL }; /* of the classes that occur */

  for (gsize i = 0; i < n_specks; i++)
    {
      SwLegMark **leg = &legs[class_of[i]];

      if (*leg == NULL)
        {
          *leg = g_new (SwLegMark, 1);
          sw_leg_mark_for (&marks[class_of[i]], half_cm, *leg);
        }

      Spot spot = spot_of (&specks[i], &marks[class_of[i]], *leg, grid->nz, half_cm, scale);
      int x0 = bin_of ((double) (spot.x - spot.reach), bins->size_cm, bins->nx);
      int x1 = bin_of ((double) (spot.x + spot.reach), bins->size_cm, bins->nx);
      int y0 = bin_of ((double) (spot.y - spot.reach), bins->size_cm, bins->ny);
      int y1 = bin_of ((double) (spot.y + spot.reach), bins->size_cm, bins->ny);

      for (int by = y0; by <= y1; by++)
        read_row (bins, by, x0, x1, grid, x, y, z, &spot, values);
    }

  for (gsize i = 0; i < G_N_ELEMENTS (legs); i++)
    g_free (legs[i]);
}
