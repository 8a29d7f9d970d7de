/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/sw-look.h"
#include "files/sw-colourway.h"
#include "forecast/sw-forecast.h"
#include "sw-bench.h"

#include <cairo.h>

/* The pictures of the bench sketch, each a new drawing of everything: nothing is kept from one to the next. */

#define RUNS 21

static void
draw_scan (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look)
{
  sw_draw_scan (cr, forecast, 10, 600, width, height, look);
}

static const struct
{
  const char *name;
  void (*draw) (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look);
  int width, height;
  double stitch_px;
} rows[] = {
  { "cloth 1000x1000, 2 px a stitch", sw_draw_cloth, 1000, 1000, 2 },
  { "cloth 1000x1000, 8 px a stitch", sw_draw_cloth, 1000, 1000, 8 },
  { "cloth 1000x1000, 40 px a stitch", sw_draw_cloth, 1000, 1000, 40 },
  { "cloth 500x700, 8 px a stitch", sw_draw_cloth, 500, 700, 8 },
  { "pan 1200x400", sw_draw_pan, 1200, 400, 0 },
  { "strip 1200x90", sw_draw_strip, 1200, 90, 0 },
  { "scan 900x320", draw_scan, 900, 320, 0 },
};

static void
run_row (gsize i, SwForecast *forecast)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, rows[i].width, rows[i].height);
  cairo_t *cr = cairo_create (surface);
  SwLook look = sw_look_plain;
  SwLayout wide = forecast->layout;
  double times[RUNS], middle;

  /* Small stitches fill the picture only if there are enough of them in a row. */
  wide.width = 600;
  look.stitch_px = rows[i].stitch_px;
  for (int run = 0; run < RUNS; run++)
    {
      SwForecast shown = *forecast;
      const gint64 start = g_get_monotonic_time ();

      if (rows[i].stitch_px > 0)
        shown.layout = wide;
      rows[i].draw (cr, &shown, rows[i].width, rows[i].height, &look);
      times[run] = (double) (g_get_monotonic_time () - start) / 1000;
    }
  middle = sw_bench_median (times, RUNS);
  g_print ("%-32s %7.2f ms median, %7.2f least\n", rows[i].name, middle, times[0]);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) file = NULL;
  g_autoptr (SwSketch) sketch = NULL;
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwForecast) forecast = NULL;

  if (argc != 2)
    {
      g_printerr ("Usage: bench-draw FILE.colourway\n");
      return 2;
    }
  file = g_file_new_for_commandline_arg (argv[1]);
  sketch = sw_colourway_load (file, NULL, NULL, &error);
  if (sketch != NULL)
    forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);
  if (forecast == NULL)
    {
      g_printerr ("%s\n", error->message);
      return 1;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    run_row (i, forecast);
  return 0;
}
