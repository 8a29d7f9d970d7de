/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cloth/sw-pooling.h"
#include "cloth/sw-stripes.h"
#include "cloth/sw-variogram.h"
#include "sketch/sw-chance.h"
#include "skein/sw-strand.h"
#include "sw-bench.h"

/* A 400 m skein of sock yarn: 36 000 stitches of two legs each. */
#define N_STITCHES 36000
#define N_PLACES (2 * N_STITCHES)

enum
{
  NARROWEST = 10,
  WIDEST = 600,
};

typedef struct
{
  SwReel reel;
  SwLay lay;
  double t[N_PLACES];
  float x[N_PLACES], y[N_PLACES], z[N_PLACES];
  float l[N_STITCHES], a[N_STITCHES], b[N_STITCHES];
  gsize n_lags;
  double *gamma;
  SwPooling results[WIDEST - NARROWEST + 1];
  SwStripe stripes[SW_MAX_STRIPES];
  double gamma_inf, mean_run;
} Bench;

static void
run_places (gpointer data)
{
  Bench *bench = data;

  sw_strand_places (&bench->reel, &bench->lay, bench->t, N_PLACES, bench->x, bench->y, bench->z);
}

static void
run_variogram (gpointer data)
{
  Bench *bench = data;

  bench->gamma_inf = sw_variogram (bench->l, bench->a, bench->b, N_STITCHES, bench->n_lags, bench->gamma);
}

static void
run_scan (gpointer data)
{
  Bench *bench = data;

  SwPoolingInput input = {
    .gamma = bench->gamma,
    .n_lags = bench->n_lags,
    .n = N_STITCHES,
    .gamma_inf = bench->gamma_inf,
    .turn = 0.5,
    .stripe_stitches = 12,
    .stitch_width_cm = 1 / 3.2,
    .row_height_cm = 1 / 4.4,
  };

  sw_pooling_scan (&input, SW_WORKED_FLAT, NARROWEST, WIDEST, bench->results);
  sw_pooling_scan (&input, SW_WORKED_ROUND, NARROWEST, WIDEST, bench->results);
}

static void
run_both (gpointer data)
{
  Bench *bench = data;

  run_variogram (bench);
  run_scan (bench);
}

static void
run_stripes (gpointer data)
{
  Bench *bench = data;

  sw_stripes (bench->l, bench->a, bench->b, N_STITCHES, bench->stripes, &bench->mean_run);
}

/* Three bands of a doubled skein, seen through a wander, with a speck now and then. */
static void
colour_stitches (Bench *bench)
{
  for (gsize i = 0; i < N_STITCHES; i++)
    {
      gboolean speck = sw_chance_even (i) < 0.05;

      bench->l[i] = speck ? 20 : 40 + 40 * (bench->x[2 * i] > 0.4f);
      bench->a[i] = bench->x[2 * i] > 0.75f ? 40 : -10;
      bench->b[i] = 30 * bench->z[2 * i];
    }
}

int
main (void)
{
  Bench *bench = g_new0 (Bench, 1);

  bench->reel = (SwReel){ .length_cm = 40000, .circumference_cm = 150, .growth = 0.02, .winding = SW_WINDING_TRAVERSED, .wraps_per_sweep = 12, .wander = 0.06, .seed = 1 };
  bench->lay = (SwLay){ .runs = 2, .folding = SW_FOLDING_STACKED, .lanes = 1 };
  bench->n_lags = sw_pooling_lags (WIDEST);
  bench->gamma = g_new (double, bench->n_lags);
  for (gsize i = 0; i < N_PLACES; i++)
    bench->t[i] = bench->reel.length_cm * ((double) i + 0.5) / N_PLACES;
  run_places (bench);
  colour_stitches (bench);

  sw_bench_run ("72 000 places along the strand", run_places, bench);
  sw_bench_run ("variogram of 36 000 stitches, 5 300 lags", run_variogram, bench);
  sw_bench_run ("scan of 10..600, flat and round", run_scan, bench);
  sw_bench_run ("variogram and scan", run_both, bench);
  sw_bench_run ("stripes of 36 000 stitches", run_stripes, bench);

  g_free (bench->gamma);
  g_free (bench);
  return EXIT_SUCCESS;
}
