/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "bath/sw-sample.h"
#include "forecast/sw-forecast.h"

#include <math.h>
#include <string.h>

/*
 * What a person sees looking down on the skein, and along one loop of it.
 */

/* The outermost layer's dye at each pixel, by straight lines between cell centres. */
static void
read_layer (const SwForecast *forecast, int dye, int layer, int nx, int ny, float *depths)
{
  const SwGrid *grid = &forecast->grid;
  gsize n = (gsize) nx * (gsize) ny;
  g_autofree float *x = g_new (float, n);
  g_autofree float *y = g_new (float, n);
  g_autofree float *z = g_new (float, n);
  SwPlaces places;

  for (int j = 0; j < ny; j++)
    for (int i = 0; i < nx; i++)
      {
        gsize k = (gsize) j * (gsize) nx + (gsize) i;

        x[k] = ((float) i + 0.5f) / (float) nx;
        y[k] = ((float) j + 0.5f) / (float) ny;
        z[k] = ((float) layer + 0.5f) / (float) grid->nz;
      }
  sw_places_init (&places, grid, x, y, z, n);
  sw_places_read (&places, grid, forecast->fields[dye].depth, 1.0f, depths);
  sw_places_clear (&places);
}

static void
add_specks (const SwForecast *forecast, const SwSpecks *specks, int layer, int nx, int ny, float *depths)
{
  const SwGrid *grid = &forecast->grid;
  double px = grid->lx / nx, py = grid->ly / ny;
  double scale = 100.0 * (grid->lx / grid->nx) * (grid->ly / grid->ny) / forecast->grams_per_cell;

  for (gsize k = 0; k < specks->n_specks; k++)
    {
      const SwSpeck *speck = &specks->specks[k];
      const SwMark *mark = &specks->marks[specks->class_of[k]];
      double amount = scale * (double) speck->grams * (double) mark->depth[layer];
      int i0 = MAX ((int) floor (((double) speck->x - mark->reach_cm) / px), 0);
      int i1 = MIN ((int) ceil (((double) speck->x + mark->reach_cm) / px), nx - 1);
      int j0 = MAX ((int) floor (((double) speck->y - mark->reach_cm) / py), 0);
      int j1 = MIN ((int) ceil (((double) speck->y + mark->reach_cm) / py), ny - 1);

      for (int j = j0; j <= j1; j++)
        for (int i = i0; i <= i1; i++)
          {
            double dx = (i + 0.5) * px - (double) speck->x;
            double dy = (j + 0.5) * py - (double) speck->y;

            depths[(gsize) j * (gsize) nx + (gsize) i] += (float) (amount * sw_mark_density (mark, dx * dx + dy * dy));
          }
    }
}

void
sw_forecast_face (const SwForecast *forecast, gboolean second, int nx, int ny, float *x, float *y, float *z)
{
  gsize n = (gsize) nx * (gsize) ny;
  int layer = second ? forecast->grid.nz - 1 : 0;
  const float *depths[SW_MAX_DYES];

  for (int dye = 0; dye < forecast->n_dyes; dye++)
    {
      float *depth = g_new (float, n);

      read_layer (forecast, dye, layer, nx, ny, depth);
      for (gsize i = 0; i < forecast->n_specks; i++)
        if (forecast->specks[i]->dye == dye)
          add_specks (forecast, forecast->specks[i], layer, nx, ny, depth);
      depths[dye] = depth;
    }

  sw_mix_xyz (&forecast->palette, depths, n, x, y, z);

  for (int dye = 0; dye < forecast->n_dyes; dye++)
    g_free ((gpointer) depths[dye]);
}

void
sw_forecast_strip (const SwForecast *forecast, gsize n, float *x, float *y, float *z)
{
  g_autofree guint *counts = g_new0 (guint, n);
  gsize filled = n;

  memset (x, 0, n * sizeof (float));
  memset (y, 0, n * sizeof (float));
  memset (z, 0, n * sizeof (float));

  for (gsize i = 0; i < 2 * forecast->n_stitches; i++)
    {
      double t = forecast->sketch->cloth.start_cm +
                 ((double) (i / 2) + (i % 2 == 0 ? SW_LEG_FIRST : SW_LEG_SECOND)) * forecast->stitch_length_cm;
      double loop, u, v;
      gsize wrap, at;

      sw_reel_place (&forecast->reel, MIN (t, forecast->strand_length_cm), &wrap, &loop, &u, &v);
      at = MIN ((gsize) (loop * (double) n), n - 1);
      counts[at]++;
      x[at] += forecast->leg_x[i];
      y[at] += forecast->leg_y[i];
      z[at] += forecast->leg_z[i];
    }

  for (gsize at = 0; at < n; at++)
    if (counts[at] > 0)
      {
        x[at] /= (float) counts[at];
        y[at] /= (float) counts[at];
        z[at] /= (float) counts[at];
        filled = at;
      }

  /* A short strand may leave places bare: they take the colour before them, going round. */
  for (gsize at = 0, last = filled; at < n && filled < n; at++)
    if (counts[at] > 0)
      last = at;
    else
      {
        x[at] = x[last];
        y[at] = y[last];
        z[at] = z[last];
      }
}
