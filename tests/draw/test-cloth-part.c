/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw-fixture.h"

#include "draw/sw-cloth-part.h"
#include "draw/sw-cloth-raster.h"
#include "files/sw-colourway.h"

#include <math.h>
#include <string.h>

/* A cloth painted in parts is the cloth painted at once, and is the same cloth at every size. */

typedef struct
{
  SwForecast *base;
  SwForecast forecast; /* with a sketch of its own */
  SwSketch *sketch;
} Knitted;

/* A demo of several colours, knitted as @fabric. */
static void
knitted_init (Knitted *knitted, const char *demo, SwFabric fabric)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", "demos", demo, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;

  knitted->sketch = sw_colourway_load (file, NULL, NULL, &error);
  g_assert_no_error (error);
  knitted->base = fixture_forecast (knitted->sketch);
  knitted->forecast = *knitted->base;
  knitted->sketch->cloth.fabric = fabric;
  knitted->forecast.sketch = knitted->sketch;
}

static void
knitted_clear (Knitted *knitted)
{
  sw_forecast_unref (knitted->base);
  sw_sketch_free (knitted->sketch);
}

static guint32 *
paint (const SwForecast *forecast, const SwClothSize *size, int x, int y, int width, int height)
{
  guint32 *pixels = g_new (guint32, (gsize) width * (gsize) height);

  sw_cloth_part (forecast, size, x, y, width, height, width, pixels);
  return pixels;
}

/* Cut into tiles of @tile pixels, counted from the cloth's upper left, each must be what the whole has there. */
static void
assert_no_seams (const SwForecast *forecast, const SwClothSize *size, int tile, int x, int y, int width, int height)
{
  g_autofree guint32 *whole = paint (forecast, size, x, y, width, height);

  for (int top = (int) floor ((double) y / tile) * tile; top < y + height; top += tile)
    for (int left = (int) floor ((double) x / tile) * tile; left < x + width; left += tile)
      {
        g_autofree guint32 *part = paint (forecast, size, left, top, tile, tile);

        for (int j = MAX (top, y); j < MIN (top + tile, y + height); j++)
          for (int i = MAX (left, x); i < MIN (left + tile, x + width); i++)
            if (part[(j - top) * tile + i - left] != whole[(j - y) * width + i - x])
              g_error ("%g px a stitch: at %d, %d the part has %08x, the whole %08x", size->stitch, i, j, part[(j - top) * tile + i - left],
                       whole[(j - y) * width + i - x]);
      }
}

static const double scales[] = { 0.4, 1, 1.5, 2, 3.3, 4, 5.7, 8, 12, 17.3, 24, 40, 63, 80 };

/* At the edges and amid the cloth, at every size of the window's, on screens of one and two pixels to one. */
static void
test_tiles (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (scales); i++)
    for (int side = 0; side < 2; side++)
      {
        Knitted knitted;
        SwClothSize size;
        double width, height;

        knitted_init (&knitted, "deckchair.colourway", (SwFabric) (i % SW_N_FABRICS));
        size = sw_cloth_size (&knitted.forecast, scales[i], side == 1);
        sw_cloth_size_extent (&knitted.forecast, &size, &width, &height);
        assert_no_seams (&knitted.forecast, &size, 256, -30, -30, 600, 500);
        assert_no_seams (&knitted.forecast, &size, 256, (int) width - 400, (int) height - 300, 450, 340);
        assert_no_seams (&knitted.forecast, &size, 61, (int) width / 2, (int) height / 2, 200, 150);
        knitted_clear (&knitted);
      }
}

/* The whole cloth's raster, which knows of no parts, has the same pixels. */
static void
test_as_the_raster (void)
{
  Knitted knitted;

  knitted_init (&knitted, "rock-pool.colourway", SW_FABRIC_STOCKINETTE);
  for (gsize i = 0; i < G_N_ELEMENTS (scales); i++)
    {
      const SwClothSize size = sw_cloth_size (&knitted.forecast, scales[i], FALSE);
      SwClothGeometry geometry = { .stitch = size.stitch, .row = size.row, .rows = sw_layout_rows (&knitted.forecast.layout), .columns = knitted.forecast.layout.width };
      g_autofree guint32 *raster = g_new (guint32, 300 * 200), *part = NULL;

      sw_cloth_size_extent (&knitted.forecast, &size, &geometry.cloth.width, &geometry.cloth.height);
      sw_cloth_raster (&knitted.forecast, &geometry, 1, (int) geometry.cloth.width / 2, (int) geometry.cloth.height - 180, 300, 200, 300, raster);
      part = paint (&knitted.forecast, &size, (int) geometry.cloth.width / 2, (int) geometry.cloth.height - 180, 300, 200);
      g_assert_cmpmem (part, 300 * 200 * sizeof *part, raster, 300 * 200 * sizeof *raster);
    }
  knitted_clear (&knitted);
}

/* The mean of columns @column.. and rows @row.., as light: pixels at the edges count by their share. */
static SwLab
mean_of (const SwForecast *forecast, const SwClothSize *size, double column, double row, double columns, double rows)
{
  const double all = (double) sw_layout_rows (&forecast->layout) * size->row;
  const double left = column * size->stitch, right = (column + columns) * size->stitch, top = all - (row + rows) * size->row, bottom = all - row * size->row;
  const int x = (int) floor (left), y = (int) floor (top), width = (int) ceil (right) - x, height = (int) ceil (bottom) - y;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  SwXyz sum = { 0, 0, 0 };
  double whole = 0;

  sw_cloth_part (forecast, size, x, y, width, height, cairo_image_surface_get_stride (surface) / 4, (guint32 *) (gpointer) cairo_image_surface_get_data (surface));
  cairo_surface_mark_dirty (surface);
  for (int j = 0; j < height; j++)
    for (int i = 0; i < width; i++)
      {
        const double share = (MIN (x + i + 1, right) - MAX (x + i, left)) * (MIN (y + j + 1, bottom) - MAX (y + j, top));
        const SwXyz pixel = fixture_pixel (surface, i, j);

        sum = (SwXyz){ sum.x + share * pixel.x, sum.y + share * pixel.y, sum.z + share * pixel.z };
        whole += share;
      }
  cairo_surface_destroy (surface);
  return sw_lab_from_xyz ((SwXyz){ sum.x / whole, sum.y / whole, sum.z / whole });
}

static const double levels[] = { 1, 2, 4, 6, 8, 12, 16, 24, 40, 60, 80 };

/* The same patch of many colours, nearer and farther, is of one colour in the mean: pairwise within 1. */
static void
test_levels_agree (void)
{
  double worst = 0;

  for (int fabric = 0; fabric < SW_N_FABRICS; fabric++)
    for (int side = 0; side < 2; side++)
      {
        SwLab means[G_N_ELEMENTS (levels)];
        Knitted knitted;

        knitted_init (&knitted, "deckchair.colourway", (SwFabric) fabric);
        for (gsize i = 0; i < G_N_ELEMENTS (levels); i++)
          {
            const SwClothSize size = sw_cloth_size (&knitted.forecast, levels[i], side == 1);

            means[i] = mean_of (&knitted.forecast, &size, 6, 8, 24, 32);
            for (gsize k = 0; k < i; k++)
              {
                const double difference = sw_ciede2000 (means[i], means[k]);

                if (difference > worst)
                  g_test_message ("fabric %d, side %d, %g and %g px: %.2f", fabric, side, levels[k], levels[i], difference);
                worst = MAX (worst, difference);
              }
          }
        knitted_clear (&knitted);
      }
  g_test_message ("worst: %.2f", worst);
  g_assert_cmpfloat (worst, <, 1);
}

/* Where averaging gives way to drawing, the picture neither moves nor changes colour anywhere: each small patch keeps its mean. */
static void
test_change_of_level (void)
{
  Knitted knitted;
  SwClothSize below, above;
  double sum = 0, worst = 0;
  int n = 0;

  knitted_init (&knitted, "deckchair.colourway", SW_FABRIC_STOCKINETTE);
  below = sw_cloth_size (&knitted.forecast, SW_CLOTH_AVERAGE_BELOW - 1e-3, FALSE);
  above = sw_cloth_size (&knitted.forecast, SW_CLOTH_AVERAGE_BELOW + 1e-3, FALSE);
  for (int row = 0; row < 96; row += 8)
    for (int column = 0; column < 64; column += 8, n++)
      {
        const double difference = sw_ciede2000 (mean_of (&knitted.forecast, &below, column, row, 8, 8), mean_of (&knitted.forecast, &above, column, row, 8, 8));

        sum += difference;
        worst = MAX (worst, difference);
      }
  g_test_message ("patches of 8 x 8 stitches: mean %.2f, worst %.2f", sum / n, worst);
  g_assert_cmpfloat (worst, <, 1);
  knitted_clear (&knitted);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cloth-part/tiles", test_tiles);
  g_test_add_func ("/cloth-part/as-the-raster", test_as_the_raster);
  g_test_add_func ("/cloth-part/levels-agree", test_levels_agree);
  g_test_add_func ("/cloth-part/change-of-level", test_change_of_level);
  return g_test_run ();
}
