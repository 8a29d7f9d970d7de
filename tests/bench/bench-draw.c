/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/sw-cloth-geometry.h"
#include "draw/sw-look.h"
#include "files/sw-colourway.h"
#include "forecast/sw-forecast.h"
#include "sw-bench.h"

#include <cairo.h>

/*
 * The pictures of the bench sketch. Prepared stitches are kept from one
 * drawing to the next; `most` is the first, which prepares them. Cloth is held
 * against the straightforward way in the same run: a path to a stitch.
 */

#define RUNS 21
#define PLAIN_RUNS 3

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
  { "cloth 1000x1000, 80 px a stitch", sw_draw_cloth, 1000, 1000, 80 },
  { "cloth 500x700, 8 px a stitch", sw_draw_cloth, 500, 700, 8 },
  { "sock 1000x1000", sw_draw_item, 1000, 1000, 0 },
  { "pan 1200x400", sw_draw_pan, 1200, 400, 0 },
  { "strip 1200x90", sw_draw_strip, 1200, 90, 0 },
  { "scan 900x320", draw_scan, 900, 320, 0 },
};

/* A loop as one stroked path of four curves, the colour of the stitch's first leg. */
static void
draw_plainly (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look)
{
  SwClothGeometry geometry;
  SwBox cell;

  sw_cloth_geometry (forecast, width, height, look, &geometry);
  cairo_set_line_width (cr, 0.4 * geometry.stitch);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  for (gsize r = geometry.rows; r-- > 0;)
    for (gsize c = 0; c < geometry.columns; c++)
      {
        const gsize stitch = sw_layout_stitch (&forecast->layout, geometry.first_row + r, geometry.first_column + c);
        const double w = geometry.stitch, h = geometry.row;

        sw_cloth_stitch_box (&geometry, geometry.first_row + r, geometry.first_column + c, &cell);
        cairo_set_source_rgb (cr, (double) forecast->leg_x[2 * stitch] / 100, (double) forecast->leg_y[2 * stitch] / 100, (double) forecast->leg_z[2 * stitch] / 100);
        cairo_move_to (cr, cell.x, cell.y + 1.2 * h);
        cairo_curve_to (cr, cell.x + 0.4 * w, cell.y + 1.2 * h, cell.x + 0.3 * w, cell.y + 0.8 * h, cell.x + 0.25 * w, cell.y + 0.5 * h);
        cairo_curve_to (cr, cell.x + 0.1 * w, cell.y, cell.x + 0.2 * w, cell.y - 0.2 * h, cell.x + 0.5 * w, cell.y - 0.2 * h);
        cairo_curve_to (cr, cell.x + 0.8 * w, cell.y - 0.2 * h, cell.x + 0.9 * w, cell.y, cell.x + 0.75 * w, cell.y + 0.5 * h);
        cairo_curve_to (cr, cell.x + 0.7 * w, cell.y + 0.8 * h, cell.x + 0.6 * w, cell.y + 1.2 * h, cell.x + w, cell.y + 1.2 * h);
        cairo_stroke (cr);
      }
}

typedef void (*Draw) (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look);

/* Times one picture. @most: (out): the slowest run. Returns: the median, ms */
static double
time_picture (Draw draw, gsize i, const SwForecast *forecast, int runs, double *least, double *most)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, rows[i].width, rows[i].height);
  cairo_t *cr = cairo_create (surface);
  SwLook look = sw_look_plain;
  SwLayout wide = forecast->layout;
  double times[RUNS], middle;

  /* Small stitches fill the picture only if there are enough of them in a row. */
  wide.width = 600;
  look.stitch_px = rows[i].stitch_px;
  for (int run = 0; run < runs; run++)
    {
      SwForecast shown = *forecast;
      const double start = sw_bench_now_ms ();

      if (rows[i].stitch_px > 0)
        shown.layout = wide;
      draw (cr, &shown, rows[i].width, rows[i].height, &look);
      times[run] = sw_bench_now_ms () - start;
    }
  middle = sw_bench_median (times, (gsize) runs);
  *least = times[0];
  *most = times[runs - 1];
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return middle;
}

static void
run_row (gsize i, SwForecast *forecast)
{
  double least, most;
  const double middle = time_picture (rows[i].draw, i, forecast, RUNS, &least, &most);

  g_print ("%-32s %7.2f ms median, %7.2f least, %7.2f most", rows[i].name, middle, least, most);
  if (rows[i].stitch_px > 0)
    {
      const double plainly = time_picture (draw_plainly, i, forecast, PLAIN_RUNS, &least, &most);

      g_print ("; a path to a stitch %8.2f: %.1f times", plainly, plainly / middle);
    }
  g_print ("\n");
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
