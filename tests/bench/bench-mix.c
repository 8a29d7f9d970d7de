/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-mix.h"
#include "colour/sw-recover.h"
#include "sw-bench.h"

/* As many places as a skein of 100 g of fine yarn, by the half centimetre or so. */
#define N_PLACES 117000
#define N_DYES 4

static const SwSrgb samples[N_DYES] = { { 0.74, 0.25, 0.36 }, { 0.13, 0.35, 0.55 }, { 0.90, 0.70, 0.05 }, { 0.30, 0.12, 0.45 } };

typedef struct
{
  SwPalette palette;
  float *depths[N_DYES];
  float *x, *y, *z, *l, *a, *b;
  guint32 *pixels;
} Bench;

static void
run_mix (gpointer data)
{
  Bench *bench = data;

  sw_mix_xyz (&bench->palette, (const float *const *) bench->depths, N_PLACES, bench->x, bench->y, bench->z);
}

static void
run_lab (gpointer data)
{
  Bench *bench = data;

  sw_lab_from_xyz_many (bench->x, bench->y, bench->z, N_PLACES, bench->l, bench->a, bench->b);
}

static void
run_pixels (gpointer data)
{
  Bench *bench = data;

  sw_pixels_from_xyz (bench->x, bench->y, bench->z, 1, N_PLACES, bench->pixels);
}

/* X and Z to @share times as far from the grey of the same luminance. */
static void
away_from_grey (Bench *bench, float share)
{
  for (int i = 0; i < N_PLACES; i++)
    {
      float grey_x = bench->y[i] * (float) (sw_white.x / sw_white.y);
      float grey_z = bench->y[i] * (float) (sw_white.z / sw_white.y);

      bench->x[i] = grey_x + share * (bench->x[i] - grey_x);
      bench->z[i] = grey_z + share * (bench->z[i] - grey_z);
    }
}

/* A row of evenly spread colours, few of them alike in a block, so that nothing is gained by luck. */
static void
report_recovery (void)
{
  gint64 start = g_get_monotonic_time ();
  double reflectance[SW_BANDS];
  int n = 0;

  for (int r = 0; r < 5; r++)
    for (int g = 0; g < 5; g++)
      for (int b = 0; b < 5; b++)
        n += sw_recover_reflectance (sw_xyz_from_srgb ((SwSrgb){ 0.1 + 0.2 * r, 0.1 + 0.2 * g, 0.1 + 0.2 * b }), reflectance, NULL);
  g_print ("%-28s %8.3f ms each, %d of 125 found\n", "spectrum of a colour", (double) (g_get_monotonic_time () - start) / 125000, n);
}

int
main (void)
{
  g_autoptr (GRand) chance = g_rand_new_with_seed (5);
  double yarn[SW_BANDS], sample[SW_BANDS];
  Bench bench = { 0 };

  if (!sw_recover_reflectance (sw_xyz_from_srgb ((SwSrgb){ 0.93, 0.90, 0.82 }), yarn, NULL))
    return 1;
  sw_palette_set_yarn (&bench.palette, yarn);
  for (int dye = 0; dye < N_DYES; dye++)
    {
      if (!sw_recover_reflectance (sw_xyz_from_srgb (samples[dye]), sample, NULL))
        return 1;
      sw_palette_add_dye (&bench.palette, sample, 1);
      bench.depths[dye] = g_new (float, N_PLACES);
      for (int i = 0; i < N_PLACES; i++)
        bench.depths[dye][i] = (float) MAX (g_rand_double_range (chance, -0.5, 1.5), 0);
    }
  bench.x = g_new (float, N_PLACES);
  bench.y = g_new (float, N_PLACES);
  bench.z = g_new (float, N_PLACES);
  bench.l = g_new (float, N_PLACES);
  bench.a = g_new (float, N_PLACES);
  bench.b = g_new (float, N_PLACES);
  bench.pixels = g_new (guint32, N_PLACES);

  g_print ("%d places, %d dyes\n", N_PLACES, N_DYES);
  sw_bench_run ("mix to XYZ", run_mix, &bench);
  sw_bench_run ("CIELAB", run_lab, &bench);
  sw_bench_run ("pixels, as mixed", run_pixels, &bench);
  away_from_grey (&bench, 0.3f);
  sw_bench_run ("pixels, all within sRGB", run_pixels, &bench);
  away_from_grey (&bench, 12);
  sw_bench_run ("pixels, all outside sRGB", run_pixels, &bench);
  report_recovery ();

  for (int dye = 0; dye < N_DYES; dye++)
    g_free (bench.depths[dye]);
  g_free (bench.x);
  g_free (bench.y);
  g_free (bench.z);
  g_free (bench.l);
  g_free (bench.a);
  g_free (bench.b);
  g_free (bench.pixels);
  return 0;
}
