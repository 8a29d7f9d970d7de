/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-spectrum.h"
#include "tests/colour/published-table.h"

#include <math.h>

/* The weights follow from CIE 15's tables: matching function times D65 at every tenth nanometre, Y of white 100. */
static void
test_weights (void)
{
  g_auto (PublishedTable) table = published_table_open ("cie_1931_2deg_d65_5nm.csv");
  double sum_y = 0, worst = 0;
  double products[3][SW_BANDS];

  for (guint row = 0, band = 0; row < published_table_n_rows (&table) && band < SW_BANDS; row += 2, band++)
    {
      double power = published_table_number (&table, row, "d65");

      g_assert_cmpfloat (published_table_number (&table, row, "nm"), ==, 380 + 10 * band);
      products[0][band] = power * published_table_number (&table, row, "x_bar");
      products[1][band] = power * published_table_number (&table, row, "y_bar");
      products[2][band] = power * published_table_number (&table, row, "z_bar");
      sum_y += products[1][band];
    }
  for (int band = 0; band < SW_BANDS; band++)
    {
      worst = MAX (worst, fabs (sw_weight_x[band] - 100 * products[0][band] / sum_y));
      worst = MAX (worst, fabs (sw_weight_y[band] - 100 * products[1][band] / sum_y));
      worst = MAX (worst, fabs (sw_weight_z[band] - 100 * products[2][band] / sum_y));
    }
  g_test_message ("largest difference of a weight %.2g", worst);
  g_assert_cmpfloat (worst, <, 1e-8);
}

static void
test_white (void)
{
  double perfect[SW_BANDS];
  SwXyz xyz;
  SwLab lab;

  for (int band = 0; band < SW_BANDS; band++)
    perfect[band] = 1;
  xyz = sw_xyz_from_reflectance (perfect);
  g_assert_cmpfloat_with_epsilon (xyz.x, sw_white.x, 1e-12);
  g_assert_cmpfloat_with_epsilon (xyz.y, 100, 1e-12);
  g_assert_cmpfloat_with_epsilon (xyz.z, sw_white.z, 1e-12);
  lab = sw_lab_from_xyz (sw_white);
  g_assert_cmpfloat (lab.l, ==, 100);
  g_assert_cmpfloat (lab.a, ==, 0);
  g_assert_cmpfloat (lab.b, ==, 0);
}

/* CIE 13.3 test colour samples and averaged chart patches, through ArgyllCMS (its own bands and white), and by plain sums done independently. */
static void
test_samples (void)
{
  g_auto (PublishedTable) spectra = published_table_open ("spectra_reflectance.csv");
  g_auto (PublishedTable) colours = published_table_open ("spectra_xyz_lab.csv");
  double worst_argyll = 0, worst_sum = 0;

  for (guint row = 0; row < published_table_n_rows (&colours); row++)
    {
      double reflectance[SW_BANDS];
      SwLab argyll = {
        published_table_number (&colours, row, "L_argyll"),
        published_table_number (&colours, row, "a_argyll"),
        published_table_number (&colours, row, "b_argyll"),
      };
      SwXyz xyz;
      double difference;

      published_table_column (&spectra, published_table_text (&colours, row, "sample"), reflectance, SW_BANDS);
      xyz = sw_xyz_from_reflectance (reflectance);
      difference = sw_ciede2000 (sw_lab_from_xyz (xyz), argyll);
      g_assert_cmpfloat (difference, <, 0.05);
      worst_argyll = MAX (worst_argyll, difference);
      worst_sum = MAX (worst_sum, fabs (xyz.x - published_table_number (&colours, row, "X_36band")));
      worst_sum = MAX (worst_sum, fabs (xyz.y - published_table_number (&colours, row, "Y_36band")));
      worst_sum = MAX (worst_sum, fabs (xyz.z - published_table_number (&colours, row, "Z_36band")));
    }
  g_test_message ("largest difference: %.4f CIEDE2000 from ArgyllCMS, %.6f in XYZ from plain sums", worst_argyll, worst_sum);
  /* The table has four decimals. */
  g_assert_cmpfloat (worst_sum, <, 1e-4);
}

/* From black to white and past it, through both branches of the cube root. */
static void
test_lab_round_trip (void)
{
  double worst = 0;

  for (int i = 0; i < 2000; i++)
    {
      SwXyz xyz = { g_test_rand_double_range (0, 120), g_test_rand_double_range (0, 120), g_test_rand_double_range (0, 120) };
      SwXyz back;

      if (i % 2 == 0)
        xyz = (SwXyz){ xyz.x / 100, xyz.y / 100, xyz.z / 100 };
      back = sw_xyz_from_lab (sw_lab_from_xyz (xyz));
      worst = MAX (worst, MAX (fabs (back.x - xyz.x), MAX (fabs (back.y - xyz.y), fabs (back.z - xyz.z))));
    }
  g_test_message ("largest error there and back %.2g", worst);
  g_assert_cmpfloat (worst, <, 1e-11);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/colour/cie/weights", test_weights);
  g_test_add_func ("/colour/cie/white", test_white);
  g_test_add_func ("/colour/cie/samples", test_samples);
  g_test_add_func ("/colour/cie/lab-round-trip", test_lab_round_trip);
  return g_test_run ();
}
