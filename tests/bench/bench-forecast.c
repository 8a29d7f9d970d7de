/* SPDX-License-Identifier: GPL-3.0-or-later */

/*
 * What a dyer waits for: the first forecast of a sketch, a pour under the
 * hand, another width, every width, and more skeins in the pan.
 * Prints lines "figure<tab>median<tab>unit"; see docs/performance.md.
 */

#include "config.h"

#include "cloth/sw-variogram.h"
#include "files/sw-colourway.h"
#include "forecast/sw-forecast.h"
#include "forecast/sw-memory.h"
#include "sw-bench.h"

#include <sys/resource.h>

#define ROUNDS 41

/* Frames of a drag: a hand takes some seconds, and the first frames still touch new memory. */
#define FRAMES 201

static void
report (const char *figure, double value, const char *unit)
{
  g_print ("%s\t%.3f\t%s\n", figure, value, unit);
}

static SwForecast *
must_run (SwForecaster *forecaster, const SwSketch *sketch)
{
  g_autoptr (GError) error = NULL;
  SwForecast *forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);

  if (forecast == NULL)
    g_error ("%s", error->message);
  return forecast;
}

static void
bench_first (const SwSketch *sketch)
{
  double times[ROUNDS];

  for (gsize i = 0; i < ROUNDS; i++)
    {
      double begin = sw_bench_now_ms ();
      g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
      g_autoptr (SwForecast) forecast = must_run (forecaster, sketch);

      times[i] = sw_bench_now_ms () - begin;
      if (i == 0)
        report ("first_in_process", times[0], "ms");
    }
  report ("first", sw_bench_median (times, ROUNDS), "ms");
}

static void
bench_drag (SwForecaster *forecaster, SwSketch *sketch)
{
  SwStep *band = sketch->steps->pdata[1];
  double home = band->x_cm;
  double times[FRAMES];

  for (gsize i = 0; i < FRAMES; i++)
    {
      double begin = sw_bench_now_ms ();
      g_autoptr (SwForecast) forecast = NULL;

      band->x_cm = home + 0.02 * (double) (i + 1);
      forecast = must_run (forecaster, sketch);
      times[i] = sw_bench_now_ms () - begin;
    }
  report ("drag", sw_bench_median (times, FRAMES), "ms");
  report ("drag_p95", times[(FRAMES * 95) / 100], "ms");
  band->x_cm = home;
}

static void
bench_width (SwForecaster *forecaster, SwSketch *sketch)
{
  gint64 home = sketch->cloth.width_stitches;
  double times[ROUNDS];

  for (gsize i = 0; i < ROUNDS; i++)
    {
      double begin = sw_bench_now_ms ();
      g_autoptr (SwForecast) forecast = NULL;

      sketch->cloth.width_stitches = 40 + (gint64) i;
      forecast = must_run (forecaster, sketch);
      times[i] = sw_bench_now_ms () - begin;
    }
  report ("width", sw_bench_median (times, ROUNDS), "ms");
  sketch->cloth.width_stitches = home;
}

static void
bench_scan (SwForecaster *forecaster, const SwSketch *sketch)
{
  g_autoptr (SwForecast) forecast = must_run (forecaster, sketch);
  g_autofree SwPooling *results = g_new (SwPooling, 591);
  gsize n_lags = sw_pooling_lags (600);
  g_autofree double *gamma = g_new (double, n_lags);
  SwPoolingInput input = forecast->pooling_input;
  double times[ROUNDS];

  input.gamma = gamma;
  for (gsize i = 0; i < ROUNDS; i++)
    {
      double begin = sw_bench_now_ms ();

      input.gamma_inf = sw_variogram (forecast->lab_l, forecast->lab_a, forecast->lab_b, forecast->n_stitches, n_lags, gamma);
      sw_pooling_scan (&input, SW_WORKED_FLAT, 10, 600, results);
      sw_pooling_scan (&input, SW_WORKED_ROUND, 10, 600, results);
      times[i] = sw_bench_now_ms () - begin;
    }
  report ("all_widths", sw_bench_median (times, ROUNDS), "ms");
}

static void
bench_skeins (SwSketch *sketch)
{
  static const gint64 counts[] = { 1, 2, 5, 10, 20 };

  sketch->lay.pan_width_cm = 400.0;
  for (gsize k = 0; k < G_N_ELEMENTS (counts); k++)
    {
      double times[5];
      g_autofree char *figure = g_strdup_printf ("first_%d_skeins", (int) counts[k]);

      sketch->lay.skeins = counts[k];
      for (gsize i = 0; i < G_N_ELEMENTS (times); i++)
        {
          double begin = sw_bench_now_ms ();
          g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
          g_autoptr (SwForecast) forecast = must_run (forecaster, sketch);

          times[i] = sw_bench_now_ms () - begin;
        }
      report (figure, sw_bench_median (times, G_N_ELEMENTS (times)), "ms");
    }
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) file = NULL;
  g_autoptr (SwSketch) sketch = NULL;
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwForecast) forecast = NULL;
  struct rusage usage;

  if (argc != 2)
    g_error ("Usage: %s FILE.colourway", argv[0]);

  sw_memory_keep ();
  file = g_file_new_for_path (argv[1]);
  sketch = sw_colourway_load (file, NULL, NULL, &error);
  if (sketch == NULL)
    g_error ("%s", error->message);

  bench_first (sketch);
  forecast = must_run (forecaster, sketch);
  g_print ("# grid %d x %d x %d, %" G_GSIZE_FORMAT " stitches\n", forecast->grid.nx, forecast->grid.ny, forecast->grid.nz, forecast->n_stitches);
  bench_drag (forecaster, sketch);
  bench_width (forecaster, sketch);
  bench_scan (forecaster, sketch);
  getrusage (RUSAGE_SELF, &usage);
  report ("peak_memory", (double) usage.ru_maxrss / 1024.0, "MB");
  bench_skeins (sketch);
  return 0;
}
