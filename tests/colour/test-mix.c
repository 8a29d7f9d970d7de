/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-mix.h"
#include "tests/colour/published-table.h"

#include <math.h>
#include <stdlib.h>

/* Kubelka & Munk 1931: the tabled pairs, both ways. */
static void
test_function (void)
{
  g_auto (PublishedTable) table = published_table_open ("kubelka_munk_values.csv");

  for (guint row = 0; row < published_table_n_rows (&table); row++)
    {
      double reflectance = published_table_number (&table, row, "reflectance");
      double ks = published_table_number (&table, row, "k_over_s");

      g_assert_cmpfloat_with_epsilon (sw_ks_from_reflectance (reflectance), ks, 1e-9 * (1 + ks));
      g_assert_cmpfloat_with_epsilon (sw_reflectance_from_ks (ks), reflectance, 1e-9);
    }
}

static void
test_function_limits (void)
{
  g_assert_cmpfloat (sw_ks_from_reflectance (1), ==, 0);
  g_assert_cmpfloat (sw_reflectance_from_ks (0), ==, 1);
  g_assert_cmpfloat (sw_ks_from_reflectance (0), ==, sw_ks_from_reflectance (1e-6));
  g_assert_cmpfloat_with_epsilon (sw_reflectance_from_ks (sw_ks_from_reflectance (1e-6)), 1e-6, 1e-15);
}

static void
fill (double *reflectance, double value)
{
  for (int band = 0; band < SW_BANDS; band++)
    reflectance[band] = value;
}

/* The textile form, worked by hand for one band. The palette keeps single precision, hence 1e-6. */
static void
test_single_constant (void)
{
  g_auto (PublishedTable) table = published_table_open ("kubelka_munk_single_constant.csv");

  for (guint row = 0; row < published_table_n_rows (&table); row++)
    {
      SwPalette palette;
      double reflectance[SW_BANDS];
      double depths[2] = { published_table_number (&table, row, "depth_1"), published_table_number (&table, row, "depth_2") };

      fill (reflectance, published_table_number (&table, row, "r_yarn"));
      sw_palette_set_yarn (&palette, reflectance);
      fill (reflectance, published_table_number (&table, row, "r_sample_1"));
      sw_palette_add_dye (&palette, reflectance, published_table_number (&table, row, "sample_depth_1"));
      if (*published_table_text (&table, row, "depth_2") != '\0')
        {
          fill (reflectance, published_table_number (&table, row, "r_sample_2"));
          sw_palette_add_dye (&palette, reflectance, published_table_number (&table, row, "sample_depth_2"));
        }
      sw_mix_reflectance (&palette, depths, reflectance);
      g_assert_cmpfloat_with_epsilon (reflectance[0], published_table_number (&table, row, "r_mix"), 1e-6);
      g_assert_cmpfloat (reflectance[SW_BANDS - 1], ==, reflectance[0]);
    }
}

typedef struct
{
  double paper[SW_BANDS], a[SW_BANDS], b[SW_BANDS], measured[SW_BANDS];
} Watercolours;

static Watercolours
watercolours (const PublishedTable *table, const char *mixture)
{
  g_autofree char *a = g_strconcat (mixture, "_a", NULL);
  g_autofree char *b = g_strconcat (mixture, "_b", NULL);
  g_autofree char *mix = g_strconcat (mixture, "_mix", NULL);
  Watercolours w;

  published_table_column (table, "paper", w.paper, SW_BANDS);
  published_table_column (table, a, w.a, SW_BANDS);
  published_table_column (table, b, w.b, SW_BANDS);
  published_table_column (table, mix, w.measured, SW_BANDS);
  return w;
}

static SwLab
lab_of (const double *reflectance)
{
  return sw_lab_from_xyz (sw_xyz_from_reflectance (reflectance));
}

static void
mix_watercolours (const Watercolours *w, double *reflectance)
{
  const double depths[2] = { 1, 1 };
  SwPalette palette;

  sw_palette_set_yarn (&palette, w->paper);
  sw_palette_add_dye (&palette, w->a, 1);
  sw_palette_add_dye (&palette, w->b, 1);
  sw_mix_reflectance (&palette, depths, reflectance);
}

static int
compare_doubles (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static double
median (double *values, guint n)
{
  qsort (values, n, sizeof (double), compare_doubles);
  return (values[(n - 1) / 2] + values[n / 2]) / 2;
}

/*
 * Chen, Huang, Chang & Ouhyoung 2019: pairs of watercolours measured alone and mixed. No model of this kind comes near the
 * measurement for every pair; a model worth having errs less than a plain average and than multiplying reflectances.
 */
static void
test_measured_mixtures (void)
{
  g_auto (PublishedTable) spectra = published_table_open ("kubelka_munk_mixtures_measured.csv");
  g_auto (PublishedTable) expected = published_table_open ("kubelka_munk_mixtures_expected.csv");
  guint n = published_table_n_rows (&expected);
  g_autofree double *km = g_new (double, n);
  g_autofree double *average = g_new (double, n);
  g_autofree double *product = g_new (double, n);
  double worst = 0;

  for (guint row = 0; row < n; row++)
    {
      Watercolours w = watercolours (&spectra, published_table_text (&expected, row, "mixture"));
      SwLab measured = lab_of (w.measured);
      double mixed[SW_BANDS], averaged[SW_BANDS], multiplied[SW_BANDS];
      SwLab independent = {
        published_table_number (&expected, row, "L_single_constant"),
        published_table_number (&expected, row, "a_single_constant"),
        published_table_number (&expected, row, "b_single_constant"),
      };

      mix_watercolours (&w, mixed);
      for (int band = 0; band < SW_BANDS; band++)
        {
          averaged[band] = (w.a[band] + w.b[band]) / 2;
          multiplied[band] = w.a[band] * w.b[band] / w.paper[band];
        }
      worst = MAX (worst, sw_ciede2000 (lab_of (mixed), independent));
      km[row] = sw_ciede2000 (lab_of (mixed), measured);
      average[row] = sw_ciede2000 (lab_of (averaged), measured);
      product[row] = sw_ciede2000 (lab_of (multiplied), measured);
      g_assert_cmpfloat_with_epsilon (average[row], published_table_number (&expected, row, "ciede2000_plain_average"), 0.05);
    }
  g_test_message ("largest difference from the independent computation %.4f CIEDE2000", worst);
  g_assert_cmpfloat (worst, <, 0.05);

  g_test_message ("median error: Kubelka-Munk %.2f, product %.2f, plain average %.2f CIEDE2000",
                  median (km, n), median (product, n), median (average, n));
  g_assert_cmpfloat (median (km, n), <, median (product, n));
  g_assert_cmpfloat (median (km, n), <, 0.45 * median (average, n));
}

static void
random_reflectance (double least, double most, double *reflectance)
{
  for (int band = 0; band < SW_BANDS; band++)
    reflectance[band] = g_test_rand_double_range (least, most);
}

/* More dye never reflects more, at any band, whatever the samples. */
static void
test_monotone_in_depth (void)
{
  for (int i = 0; i < 200; i++)
    {
      SwPalette palette;
      double sample[SW_BANDS], lighter[SW_BANDS], darker[SW_BANDS];
      double depths[3] = { g_test_rand_double_range (0, 3), g_test_rand_double_range (0, 3), g_test_rand_double_range (0, 3) };

      random_reflectance (0.4, 1.1, sample);
      sw_palette_set_yarn (&palette, sample);
      for (int dye = 0; dye < 3; dye++)
        {
          random_reflectance (0, 1.1, sample);
          sw_palette_add_dye (&palette, sample, g_test_rand_double_range (0.1, 4));
        }
      sw_mix_reflectance (&palette, depths, lighter);
      depths[i % 3] += g_test_rand_double_range (0, 2);
      sw_mix_reflectance (&palette, depths, darker);
      for (int band = 0; band < SW_BANDS; band++)
        {
          g_assert_cmpfloat (darker[band], <=, lighter[band]);
          g_assert_cmpfloat (darker[band], >, 0);
          g_assert_cmpfloat (lighter[band], <=, 1);
        }
    }
}

/* No dye is the yarn; a dye at its sample's depth is the sample; the order of dyes does not matter. */
static void
test_fixed_points (void)
{
  SwPalette palette, swapped;
  double yarn[SW_BANDS], first[SW_BANDS], second[SW_BANDS], mixed[SW_BANDS], again[SW_BANDS];

  random_reflectance (0.7, 0.95, yarn);
  random_reflectance (0.02, 0.6, first);
  random_reflectance (0.02, 0.6, second);
  sw_palette_set_yarn (&palette, yarn);
  sw_mix_reflectance (&palette, NULL, mixed);
  for (int band = 0; band < SW_BANDS; band++)
    g_assert_cmpfloat_with_epsilon (mixed[band], yarn[band], 1e-6);

  sw_palette_add_dye (&palette, first, 1.5);
  sw_palette_add_dye (&palette, second, 0.4);
  sw_mix_reflectance (&palette, (double[]){ 1.5, 0 }, mixed);
  for (int band = 0; band < SW_BANDS; band++)
    g_assert_cmpfloat_with_epsilon (mixed[band], first[band], 1e-6);

  sw_palette_set_yarn (&swapped, yarn);
  sw_palette_add_dye (&swapped, second, 0.4);
  sw_palette_add_dye (&swapped, first, 1.5);
  sw_mix_reflectance (&palette, (double[]){ 0.7, 0.9 }, mixed);
  sw_mix_reflectance (&swapped, (double[]){ 0.9, 0.7 }, again);
  for (int band = 0; band < SW_BANDS; band++)
    g_assert_cmpfloat_with_epsilon (mixed[band], again[band], 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/colour/mix/function", test_function);
  g_test_add_func ("/colour/mix/function-limits", test_function_limits);
  g_test_add_func ("/colour/mix/single-constant", test_single_constant);
  g_test_add_func ("/colour/mix/measured-mixtures", test_measured_mixtures);
  g_test_add_func ("/colour/mix/monotone-in-depth", test_monotone_in_depth);
  g_test_add_func ("/colour/mix/fixed-points", test_fixed_points);
  return g_test_run ();
}
