/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/sw-look.h"
#include "files/sw-colourway.h"
#include "files/sw-picture.h"
#include "forecast/sw-forecast.h"
#include "sw-bench.h"

#include <cairo.h>

/* The pictures that look like photographs: what drawing them takes, and what their files take. */

#define RUNS 5

static const struct
{
  const char *name;
  SwPicture picture;
  int width, height;
  SwArrangement arrangement;
  int format; /* -1: drawing alone */
} rows[] = {
  { "hank 1200x400", SW_PICTURE_HANK, 1200, 400, SW_ARRANGEMENT_HANK, -1 },
  { "skein 1200x400", SW_PICTURE_SKEIN, 1200, 400, SW_ARRANGEMENT_HANK, -1 },
  { "listing 360x360", SW_PICTURE_LISTING, 360, 360, SW_ARRANGEMENT_HANK_CLOTH, -1 },
  { "listing 1000x1000", SW_PICTURE_LISTING, 1000, 1000, SW_ARRANGEMENT_HANK_CLOTH, -1 },
  { "listing 4000x4000, hank and cloth", SW_PICTURE_LISTING, 4000, 4000, SW_ARRANGEMENT_HANK_CLOTH, -1 },
  { "listing 4000x4000, whole", SW_PICTURE_LISTING, 4000, 4000, SW_ARRANGEMENT_WHOLE, -1 },
  { "listing 4000x4000, hank and cloth, JPEG", SW_PICTURE_LISTING, 4000, 4000, SW_ARRANGEMENT_HANK_CLOTH, SW_FORMAT_JPEG },
  { "listing 4000x4000, hank and cloth, PNG", SW_PICTURE_LISTING, 4000, 4000, SW_ARRANGEMENT_HANK_CLOTH, SW_FORMAT_PNG },
};

static void
draw (gsize i, const SwForecast *forecast)
{
  static void (*const drawings[SW_N_PICTURES]) (cairo_t *, const SwForecast *, double, double, const SwLook *) = { [SW_PICTURE_HANK] = sw_draw_hank, [SW_PICTURE_SKEIN] = sw_draw_skein, [SW_PICTURE_LISTING] = sw_draw_listing };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, rows[i].width, rows[i].height);
  cairo_t *cr = cairo_create (surface);

  drawings[rows[i].picture](cr, forecast, rows[i].width, rows[i].height, &sw_look_plain);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
run_row (gsize i, SwForecaster *forecaster, SwSketch *sketch)
{
  g_autoptr (SwForecast) forecast = NULL;
  double times[RUNS], middle;

  sketch->listing.arrangement = rows[i].arrangement;
  forecast = sw_forecaster_run (forecaster, sketch, NULL, NULL);
  for (int run = 0; run < RUNS; run++)
    {
      const gint64 start = g_get_monotonic_time ();

      if (rows[i].format < 0)
        draw (i, forecast);
      else
        g_bytes_unref (sw_picture_render (rows[i].picture, (SwFormat) rows[i].format, forecast, rows[i].width, rows[i].height, &sw_look_plain, NULL));
      times[run] = (double) (g_get_monotonic_time () - start) / 1000;
    }
  middle = sw_bench_median (times, RUNS);
  g_print ("%-42s %8.1f ms median, %8.1f least\n", rows[i].name, middle, times[0]);
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) file = NULL;
  g_autoptr (SwSketch) sketch = NULL;
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();

  if (argc != 2)
    {
      g_printerr ("Usage: bench-listing FILE.colourway\n");
      return 2;
    }
  file = g_file_new_for_commandline_arg (argv[1]);
  sketch = sw_colourway_load (file, NULL, NULL, &error);
  if (sketch == NULL)
    {
      g_printerr ("%s\n", error->message);
      return 1;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    run_row (i, forecaster, sketch);
  return 0;
}
