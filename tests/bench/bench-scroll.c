/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/desk/sw-cloth-tiles.h"
#include "files/sw-colourway.h"
#include "sw-bench.h"

/*
 * A whole skein's cloth scrolled from end to end and back, a frame every
 * sixtieth of a second: how long each frame's picture takes to be there, all
 * of it sharp, from tiles that are kept, and painted anew as a whole. The two
 * go by turns.
 */

#define WIDTH 875 /* of the window's place for it */
#define HEIGHT 500
#define STEP 60 /* px a frame */
#define MOST_FRAMES 600
#define FRAME_US 16667

static void
ready_cb (gpointer user_data)
{
}

/* What is left of the frame: tiles are painted ahead meanwhile. */
static void
rest (gint64 until)
{
  while (g_get_monotonic_time () < until)
    if (!g_main_context_iteration (NULL, FALSE))
      g_usleep (200);
}

static double
time_tiles (SwClothTiles *tiles, const SwClothSight *sight)
{
  const double begin = sw_bench_now_ms ();

  sw_cloth_tiles_look (tiles, sight);
  while (!sw_cloth_tiles_is_sharp (tiles))
    if (!sw_cloth_tiles_wait (tiles, g_get_monotonic_time () + FRAME_US))
      g_main_context_iteration (NULL, FALSE);
  return sw_bench_now_ms () - begin;
}

static double
time_anew (const SwClothSight *sight, guint32 *pixels)
{
  const double begin = sw_bench_now_ms ();

  sw_cloth_part (sight->forecast, &sight->size, -sight->left, -sight->top, WIDTH, HEIGHT, WIDTH, pixels);
  return sw_bench_now_ms () - begin;
}

static void
scroll (SwForecast *forecast, double stitch)
{
  SwClothTiles *tiles = sw_cloth_tiles_new (ready_cb, NULL);
  SwClothSight sight = { .forecast = forecast, .size = sw_cloth_size (forecast, stitch, FALSE), .left = 24, .width = WIDTH, .height = HEIGHT };
  g_autofree guint32 *pixels = g_new (guint32, WIDTH * HEIGHT);
  static double kept[MOST_FRAMES], anew[MOST_FRAMES];
  double width, height, first, middle;
  gsize n = 0;

  sw_cloth_size_extent (forecast, &sight.size, &width, &height);
  first = time_tiles (tiles, &sight);
  for (int turn = 0; turn < 2; turn++)
    for (int y = 0; y < (int) height - HEIGHT && n < MOST_FRAMES; y += STEP, n++)
      {
        const gint64 begin = g_get_monotonic_time ();

        sight.top = turn == 0 ? -y : y + HEIGHT - (int) height;
        kept[n] = time_tiles (tiles, &sight);
        rest (begin + FRAME_US);
        anew[n] = time_anew (&sight, pixels);
      }
  g_print ("%4zu stitches, %4.1f px each: the first %6.1f ms", forecast->layout.width, stitch, first);
  if (n > 0)
    {
      middle = sw_bench_median (kept, n);
      g_print ("; %3zu frames, kept %6.3f ms, 95 in 100 %6.3f", n, middle, kept[n * 95 / 100]);
      g_print ("; anew %6.2f ms, 95 in 100 %6.2f: %.0f times", sw_bench_median (anew, n), anew[n * 95 / 100], sw_bench_median (anew, n) / middle);
    }
  g_print ("; %.1f MB\n", (double) sw_cloth_tiles_get_bytes (tiles) / (1 << 20));
  sw_cloth_tiles_free (tiles);
}

int
main (int argc, char **argv)
{
  static const gint64 columns[] = { 64, 320 };
  static const double sizes[] = { 2, 4, 8, 12, 24, 40, 80 };
  g_autoptr (GFile) file = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (SwSketch) sketch = NULL;
  g_autoptr (SwForecaster) forecaster = NULL;

  if (argc != 2)
    {
      g_printerr ("Usage: bench-scroll FILE.colourway\n");
      return EXIT_FAILURE;
    }
  file = g_file_new_for_commandline_arg (argv[1]);
  sketch = sw_colourway_load (file, NULL, NULL, &error);
  if (sketch == NULL)
    {
      g_printerr ("%s\n", error->message);
      return EXIT_FAILURE;
    }
  forecaster = sw_forecaster_new ();
  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
    {
      g_autoptr (SwForecast) forecast = NULL;

      sketch->cloth.width_stitches = columns[i];
      forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);
      g_assert_no_error (error);
      for (gsize k = 0; k < G_N_ELEMENTS (sizes); k++)
        scroll (forecast, sizes[k]);
    }
  return EXIT_SUCCESS;
}
