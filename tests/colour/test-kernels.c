/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-mix.h"

#include <math.h>

/* Not a multiple of any block. */
#define N_PLACES 5003

static void
random_palette (SwPalette *palette, int n_dyes)
{
  double reflectance[SW_BANDS];

  for (int band = 0; band < SW_BANDS; band++)
    reflectance[band] = g_test_rand_double_range (0.5, 0.95);
  sw_palette_set_yarn (palette, reflectance);
  for (int dye = 0; dye < n_dyes; dye++)
    {
      for (int band = 0; band < SW_BANDS; band++)
        reflectance[band] = pow (g_test_rand_double_range (0.05, 0.95), 2);
      sw_palette_add_dye (palette, reflectance, g_test_rand_double_range (0.2, 4));
    }
}

/* A dye at a time deep, so that very dark places come up too; a few below 0, which count as 0. */
static float *
random_depths (gsize n)
{
  float *depths = g_new (float, n);

  for (gsize i = 0; i < n; i++)
    depths[i] = (float) (i % 7 == 0 ? g_test_rand_double_range (-1, 100) : g_test_rand_double_range (-0.2, 3));
  return depths;
}

static double
mix_error (const SwPalette *palette, float *const *depths, gsize n)
{
  g_autofree float *xyz = g_new (float, 3 * n);
  float *x = xyz, *y = xyz + n, *z = xyz + 2 * n;
  double worst = 0;

  sw_mix_xyz (palette, (const float *const *) depths, n, x, y, z);
  for (gsize i = 0; i < n; i++)
    {
      double place[SW_MAX_DYES], reflectance[SW_BANDS];
      SwXyz exact;

      for (int dye = 0; dye < palette->n_dyes; dye++)
        place[dye] = (double) depths[dye][i];
      sw_mix_reflectance (palette, place, reflectance);
      exact = sw_xyz_from_reflectance (reflectance);
      worst = MAX (worst, fabs ((double) x[i] - exact.x) / (1e-3 + exact.x));
      worst = MAX (worst, fabs ((double) y[i] - exact.y) / (1e-3 + exact.y));
      worst = MAX (worst, fabs ((double) z[i] - exact.z) / (1e-3 + exact.z));
    }
  return worst;
}

/* Against sw_mix_reflectance(), in doubles one place at a time, for every number of dyes that fits. Errors are shares of X, Y and Z. */
static void
test_mix (void)
{
  float *depths[SW_MAX_DYES];
  double worst = 0;

  for (int dye = 0; dye < SW_MAX_DYES; dye++)
    depths[dye] = random_depths (N_PLACES);
  for (int n_dyes = 0; n_dyes <= SW_MAX_DYES; n_dyes += n_dyes < 5 ? 1 : 6)
    {
      SwPalette palette;

      random_palette (&palette, n_dyes);
      worst = MAX (worst, mix_error (&palette, depths, N_PLACES));
    }
  for (gsize n = 0; n <= 40; n++)
    {
      SwPalette palette;

      random_palette (&palette, 2);
      worst = MAX (worst, mix_error (&palette, depths, n));
    }
  g_test_message ("largest error of X, Y or Z, as a share %.2g", worst);
  g_assert_cmpfloat (worst, <, 5e-6);
  for (int dye = 0; dye < SW_MAX_DYES; dye++)
    g_free (depths[dye]);
}

typedef struct
{
  float x[N_PLACES], y[N_PLACES], z[N_PLACES];
} Places;

/* Dark to white, most within sRGB and many far out; some black, some beyond white, some impossible. */
static Places *
random_places (void)
{
  Places *places = g_new (Places, 1);

  for (int i = 0; i < N_PLACES; i++)
    {
      double spread = i % 3 == 0 ? 120 : 40;
      SwLab lab = { g_test_rand_double_range (0, 101), g_test_rand_double_range (-spread, spread), g_test_rand_double_range (-spread, spread) };
      SwXyz xyz = sw_xyz_from_lab (lab);

      if (i % 50 == 0)
        xyz = (SwXyz){ 0, 0, 0 };
      places->x[i] = (float) xyz.x;
      places->y[i] = (float) xyz.y;
      places->z[i] = (float) xyz.z;
    }
  return places;
}

static SwXyz
place (const Places *places, int i)
{
  return (SwXyz){ (double) places->x[i], (double) places->y[i], (double) places->z[i] };
}

static void
test_lab (void)
{
  g_autofree Places *places = random_places ();
  g_autofree Places *lab = g_new (Places, 1);
  double worst = 0;

  sw_lab_from_xyz_many (places->x, places->y, places->z, N_PLACES, lab->x, lab->y, lab->z);
  for (int i = 0; i < N_PLACES; i++)
    {
      SwLab exact = sw_lab_from_xyz (place (places, i));

      worst = MAX (worst, fabs ((double) lab->x[i] - exact.l));
      worst = MAX (worst, fabs ((double) lab->y[i] - exact.a));
      worst = MAX (worst, fabs ((double) lab->z[i] - exact.b));
    }
  g_test_message ("largest error of L*, a* or b* %.2g", worst);
  g_assert_cmpfloat (worst, <, 1e-3);

  sw_lab_from_xyz_many (places->x, places->y, places->z, N_PLACES, places->x, places->y, places->z);
  g_assert_cmpmem (places, sizeof *places, lab, sizeof *lab);
}

static double
code_error (guint32 pixel, int shift, double exact)
{
  return fabs ((double) (pixel >> shift & 0xff) - 255 * exact);
}

/*
 * 16 halvings leave the share of chroma open by 2^-16, and a channel's linear light moves with it by less than 2 (from
 * grey to a channel far outside of sRGB). The curve of IEC 61966-2-1 is steepest near black, 12.92.
 */
#define HALVINGS_CODES (2 * 12.92 * 255 / 65536)

/* Within half a code of sw_srgb_from_xyz(), and what the halvings of the chroma add to that. */
static void
test_pixels (void)
{
  g_autofree Places *places = random_places ();
  g_autofree guint32 *pixels = g_new (guint32, N_PLACES);
  double worst = 0;
  int n_outside = 0;

  sw_pixels_from_xyz (places->x, places->y, places->z, 1, N_PLACES, pixels);
  for (int i = 0; i < N_PLACES; i++)
    {
      SwXyz xyz = place (places, i);
      SwSrgb exact = sw_srgb_from_xyz (xyz);

      n_outside += !sw_xyz_in_gamut (xyz);
      g_assert_cmphex (pixels[i] >> 24, ==, 0xff);
      worst = MAX (worst, code_error (pixels[i], 16, exact.r));
      worst = MAX (worst, code_error (pixels[i], 8, exact.g));
      worst = MAX (worst, code_error (pixels[i], 0, exact.b));
    }
  g_test_message ("%d of %d outside sRGB; largest error %.3f of a code", n_outside, N_PLACES, worst);
  g_assert_cmpint (n_outside, >, N_PLACES / 10);
  g_assert_cmpfloat (worst, <, 0.5 + HALVINGS_CODES);
}

/* Every code of every channel comes out as itself. */
static void
test_pixel_codes (void)
{
  for (guint code = 0; code < 256; code++)
    for (int shift = 0; shift <= 24; shift += 8)
      {
        guint32 wanted = 0xff000000u | (shift == 24 ? code * 0x010101u : code << shift);
        SwXyz xyz = sw_xyz_from_srgb ((SwSrgb){ (wanted >> 16 & 0xff) / 255.0, (wanted >> 8 & 0xff) / 255.0, (wanted & 0xff) / 255.0 });
        float x = (float) xyz.x, y = (float) xyz.y, z = (float) xyz.z;
        guint32 pixel;

        sw_pixels_from_xyz (&x, &y, &z, 1, 1, &pixel);
        g_assert_cmphex (pixel, ==, wanted);
      }
}

/* Interleaved is the same as planar, and nothing is written past the end. */
static void
test_pixel_stride (void)
{
  g_autofree Places *places = random_places ();
  g_autofree float *interleaved = g_new (float, 3 * N_PLACES);
  g_autofree guint32 *planar = g_new (guint32, N_PLACES);
  g_autofree guint32 *strided = g_new0 (guint32, N_PLACES + 1);

  for (int i = 0; i < N_PLACES; i++)
    {
      interleaved[3 * i] = places->x[i];
      interleaved[3 * i + 1] = places->y[i];
      interleaved[3 * i + 2] = places->z[i];
    }
  sw_pixels_from_xyz (places->x, places->y, places->z, 1, N_PLACES, planar);
  sw_pixels_from_xyz (interleaved, interleaved + 1, interleaved + 2, 3, N_PLACES, strided);
  g_assert_cmpmem (planar, N_PLACES * sizeof *planar, strided, N_PLACES * sizeof *strided);
  g_assert_cmphex (strided[N_PLACES], ==, 0);
}

/* A place without a number is a black pixel, not a crash. */
static void
test_pixel_nonsense (void)
{
  const float x[] = { NAN, 50, INFINITY }, y[] = { 50, NAN, 50 }, z[] = { 50, 50, -INFINITY };
  guint32 pixels[3];

  sw_pixels_from_xyz (x, y, z, 1, 3, pixels);
  for (int i = 0; i < 3; i++)
    g_assert_cmphex (pixels[i] >> 24, ==, 0xff);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/colour/kernels/mix", test_mix);
  g_test_add_func ("/colour/kernels/lab", test_lab);
  g_test_add_func ("/colour/kernels/pixels", test_pixels);
  g_test_add_func ("/colour/kernels/pixel-codes", test_pixel_codes);
  g_test_add_func ("/colour/kernels/pixel-stride", test_pixel_stride);
  g_test_add_func ("/colour/kernels/pixel-nonsense", test_pixel_nonsense);
  return g_test_run ();
}
