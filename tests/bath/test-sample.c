/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Reading the pan along the strand: fields by straight lines, specks found by bins as by looking at every place. */

#include "config.h"

#include "bath/sw-sample.h"

#include <math.h>

#define PLACES 4000

static const SwGrid grid = { .nx = 30, .ny = 12, .nz = 8, .lx = 15.0, .ly = 6.0, .lz = 2.0 };

typedef struct
{
  float x[PLACES], y[PLACES], z[PLACES];
} Strewn;

static Strewn *
strew (void)
{
  Strewn *strewn = g_new (Strewn, 1);

  for (int i = 0; i < PLACES; i++)
    {
      strewn->x[i] = (float) g_test_rand_double ();
      strewn->y[i] = (float) g_test_rand_double ();
      strewn->z[i] = (float) g_test_rand_double ();
    }
  /* The corners of the box belong to it. */
  strewn->x[0] = strewn->y[0] = strewn->z[0] = 0.0f;
  strewn->x[1] = strewn->y[1] = strewn->z[1] = 1.0f;
  return strewn;
}

/* A field that is linear in x, y and z is read back exactly between the outermost cell centres. */
static void
test_linear_field (void)
{
  g_autofree Strewn *strewn = strew ();
  g_autofree float *field = g_new (float, sw_grid_cells (&grid));
  g_autofree float *values = g_new (float, PLACES);
  double worst = 0.0;
  SwPlaces places;

  for (int iz = 0; iz < grid.nz; iz++)
    for (int iy = 0; iy < grid.ny; iy++)
      for (int ix = 0; ix < grid.nx; ix++)
        field[(iz * grid.ny + iy) * grid.nx + ix] = (float) (2.0 * (ix + 0.5) / grid.nx - (iy + 0.5) / grid.ny + 0.5 * (iz + 0.5) / grid.nz);

  sw_places_init (&places, &grid, strewn->x, strewn->y, strewn->z, PLACES);
  sw_places_read (&places, &grid, field, 3.0f, values);

  for (int i = 0; i < PLACES; i++)
    {
      double x = CLAMP ((double) strewn->x[i], 0.5 / grid.nx, 1.0 - 0.5 / grid.nx);
      double y = CLAMP ((double) strewn->y[i], 0.5 / grid.ny, 1.0 - 0.5 / grid.ny);
      double z = CLAMP ((double) strewn->z[i], 0.5 / grid.nz, 1.0 - 0.5 / grid.nz);

      worst = MAX (worst, fabs ((double) values[i] - 3.0 * (2.0 * x - y + 0.5 * z)));
    }
  g_test_message ("largest error %g", worst);
  g_assert_cmpfloat (worst, <, 2e-5);
  sw_places_clear (&places);
}

/* Grids of one cell along an axis hold it. */
static void
test_flat_grids (void)
{
  const SwGrid column = { .nx = 1, .ny = 1, .nz = 4, .lx = 1.0, .ly = 1.0, .lz = 1.0 };
  const float field[] = { 1.0f, 2.0f, 3.0f, 4.0f };
  const float x = 0.9f, y = 0.1f, z = 0.5f;
  SwPlaces places;
  float value;

  sw_places_init (&places, &column, &x, &y, &z, 1);
  sw_places_read (&places, &column, field, 1.0f, &value);
  g_assert_cmpfloat_with_epsilon (value, 2.5f, 1e-6f);
  sw_places_clear (&places);
}

/* Every place is in exactly one bin, and in the right one. */
static void
test_bins (void)
{
  g_autofree Strewn *strewn = strew ();
  g_autofree gboolean *seen = g_new0 (gboolean, PLACES);
  SwBins bins;

  sw_bins_init (&bins, &grid, 0.5, strewn->x, strewn->y, PLACES);
  g_assert_cmpuint (bins.start[bins.nx * bins.ny], ==, PLACES);
  for (int bin = 0; bin < bins.nx * bins.ny; bin++)
    for (guint32 j = bins.start[bin]; j < bins.start[bin + 1]; j++)
      {
        guint32 i = bins.place[j];
        int bx = MIN ((int) ((double) strewn->x[i] * grid.lx / 0.5), bins.nx - 1);
        int by = MIN ((int) ((double) strewn->y[i] * grid.ly / 0.5), bins.ny - 1);

        g_assert_false (seen[i]);
        seen[i] = TRUE;
        g_assert_cmpint (bin, ==, by * bins.nx + bx);
      }
  sw_bins_clear (&bins);
}

/* What the bins find is what looking at every place finds, summed speck by speck. */
static void
test_specks (void)
{
  const SwSpan set = { .minutes = 30.0, .rate = 0.3, .spread_xy = 0.01, .spread_z = 0.003 };
  g_autofree Strewn *strewn = strew ();
  g_autofree float *found = g_new0 (float, PLACES);
  SwSpeck specks[40];
  guint8 class_of[G_N_ELEMENTS (specks)];
  SwMark marks[2];
  double worst = 0.0, most = 0.0;
  SwBins bins;

  sw_mark_for (0.1, &set, 1, grid.nz, grid.lz, 0.0, FALSE, &marks[0]);
  sw_mark_for (0.2, &set, 1, grid.nz, grid.lz, 0.0, FALSE, &marks[1]);
  for (gsize k = 0; k < G_N_ELEMENTS (specks); k++)
    {
      specks[k].x = (float) (g_test_rand_double () * grid.lx);
      specks[k].y = (float) (g_test_rand_double () * grid.ly);
      specks[k].radius = k % 2 ? 0.2f : 0.1f;
      specks[k].grams = 0.002f;
      class_of[k] = k % 2;
    }

  sw_bins_init (&bins, &grid, 0.5, strewn->x, strewn->y, PLACES);
  sw_specks_read (&bins, &grid, strewn->x, strewn->y, strewn->z, 0.15, specks, class_of, G_N_ELEMENTS (specks), marks, 1000.0f, found);

  for (int i = 0; i < PLACES; i++)
    {
      double expected = 0.0;
      double layer = CLAMP ((double) strewn->z[i] * grid.nz - 0.5, 0.0, grid.nz - 1.0);
      int iz = MIN ((int) layer, grid.nz - 2);

      for (gsize k = 0; k < G_N_ELEMENTS (specks); k++)
        {
          const SwMark *mark = &marks[class_of[k]];
          double share = (double) mark->depth[iz] + (layer - iz) * (double) (mark->depth[iz + 1] - mark->depth[iz]);
          double dy = (double) strewn->y[i] * grid.ly - (double) specks[k].y;
          double sum = 0.0;

          /* The mean along the strand by many small steps, not by the program's table. */
          for (int step = 0; step < 200; step++)
            {
              double dx = (double) strewn->x[i] * grid.lx - (double) specks[k].x + 0.15 * ((step + 0.5) / 100.0 - 1.0);

              sum += sw_mark_density (mark, dx * dx + dy * dy) / 200.0;
            }
          expected += 1000.0 * (double) specks[k].grams * sum * share;
        }
      most = MAX (most, expected);
      worst = MAX (worst, fabs (expected - (double) found[i]));
    }
  g_test_message ("largest hit %g, largest error %g", most, worst);
  g_assert_cmpfloat (most, >, 0.1);
  g_assert_cmpfloat (worst, <, 0.01 * most);
  sw_bins_clear (&bins);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sample/linear-field", test_linear_field);
  g_test_add_func ("/sample/flat-grids", test_flat_grids);
  g_test_add_func ("/sample/bins", test_bins);
  g_test_add_func ("/sample/specks", test_specks);
  return g_test_run ();
}
