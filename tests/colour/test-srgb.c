/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-spectrum.h"
#include "tests/colour/published-table.h"

#include <math.h>

/* Codes worked out from IEC 61966-2-1; the table's XYZ is over the standard's white, ours over that of the 36 bands. */
static void
test_worked_codes (void)
{
  g_auto (PublishedTable) table = published_table_open ("srgb_worked_codes.csv");

  for (guint row = 0; row < published_table_n_rows (&table); row++)
    {
      SwSrgb srgb = {
        published_table_number (&table, row, "r") / 255,
        published_table_number (&table, row, "g") / 255,
        published_table_number (&table, row, "b") / 255,
      };
      SwXyz xyz = sw_xyz_from_srgb (srgb);
      SwLab lab = sw_lab_from_xyz (xyz);
      SwSrgb back = sw_srgb_from_xyz (xyz);

      g_assert_cmpfloat_with_epsilon (xyz.x * 95.05 / sw_white.x, published_table_number (&table, row, "X"), 2e-4);
      g_assert_cmpfloat_with_epsilon (xyz.y, published_table_number (&table, row, "Y"), 2e-4);
      g_assert_cmpfloat_with_epsilon (xyz.z * 108.9 / sw_white.z, published_table_number (&table, row, "Z"), 2e-4);
      g_assert_cmpfloat_with_epsilon (lab.l, published_table_number (&table, row, "L"), 2e-3);
      g_assert_cmpfloat_with_epsilon (lab.a, published_table_number (&table, row, "a"), 2e-3);
      g_assert_cmpfloat_with_epsilon (lab.b, published_table_number (&table, row, "b_star"), 2e-3);
      g_assert_cmpfloat_with_epsilon (back.r, srgb.r, 1e-9);
      g_assert_cmpfloat_with_epsilon (back.g, srgb.g, 1e-9);
      g_assert_cmpfloat_with_epsilon (back.b, srgb.b, 1e-9);
    }
}

/* Every code there and back; greys stay grey exactly enough for pixels to be equal. */
static void
test_round_trip (void)
{
  double worst = 0;

  for (int r = 0; r <= 255; r += 15)
    for (int g = 0; g <= 255; g += 15)
      for (int b = 0; b <= 255; b += 15)
        {
          SwSrgb srgb = { r / 255.0, g / 255.0, b / 255.0 };
          SwXyz xyz = sw_xyz_from_srgb (srgb);
          SwSrgb back = sw_srgb_from_xyz (xyz);

          g_assert_true (sw_xyz_in_gamut (xyz));
          worst = MAX (worst, MAX (fabs (back.r - srgb.r), MAX (fabs (back.g - srgb.g), fabs (back.b - srgb.b))));
        }
  g_test_message ("largest error there and back %.2g", worst);
  g_assert_cmpfloat (worst, <, 1e-9);
}

static double
hue (SwLab lab)
{
  return atan2 (lab.b, lab.a);
}

static double
chroma (SwLab lab)
{
  return hypot (lab.a, lab.b);
}

/* Whatever lies outside comes in with its lightness and hue, no more chroma, and as much as there is room for. */
static void
test_gamut_mapping (void)
{
  double worst_l = 0, worst_hue = 0, worst_slack = 0;
  int n_outside = 0;

  for (int i = 0; i < 5000; i++)
    {
      SwLab lab = { g_test_rand_double_range (0.5, 99.5), g_test_rand_double_range (-150, 150), g_test_rand_double_range (-150, 150) };
      SwXyz xyz = sw_xyz_from_lab (lab);
      SwSrgb srgb = sw_srgb_from_xyz (xyz);
      SwLab mapped = sw_lab_from_xyz (sw_xyz_from_srgb (srgb));
      double nearest_face;

      g_assert_true (srgb.r >= 0 && srgb.r <= 1 && srgb.g >= 0 && srgb.g <= 1 && srgb.b >= 0 && srgb.b <= 1);
      g_assert_true (sw_xyz_in_gamut (sw_xyz_from_srgb (srgb)));
      worst_l = MAX (worst_l, fabs (mapped.l - lab.l));
      if (sw_xyz_in_gamut (xyz))
        continue;

      n_outside++;
      g_assert_cmpfloat (chroma (mapped), <, chroma (lab));
      /* As a distance, since a hue angle means little near grey. */
      worst_hue = MAX (worst_hue, fabs (sin (hue (mapped) - hue (lab))) * chroma (mapped));
      nearest_face = MIN (MIN (MIN (srgb.r, srgb.g), srgb.b), 1 - MAX (MAX (srgb.r, srgb.g), srgb.b));
      worst_slack = MAX (worst_slack, nearest_face);
    }
  g_test_message ("%d outside; largest change of L* %.2g, of hue %.2g (as a distance), farthest from a face of the cube %.2g", n_outside, worst_l, worst_hue, worst_slack);
  g_assert_cmpint (n_outside, >, 1000);
  g_assert_cmpfloat (worst_l, <, 1e-5);
  g_assert_cmpfloat (worst_hue, <, 1e-5);
  g_assert_cmpfloat (worst_slack, <, 1e-6);
}

/* Lighter than white is white, darker than black is black: there is no hue left to keep. */
static void
test_beyond_black_and_white (void)
{
  SwSrgb white = sw_srgb_from_xyz ((SwXyz){ 130, 125, 90 });
  SwSrgb black = sw_srgb_from_xyz ((SwXyz){ 0.1, -0.2, 0.1 });

  g_assert_cmpfloat_with_epsilon (white.r, 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (white.g, 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (white.b, 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (black.r, 0, 1e-6);
  g_assert_cmpfloat_with_epsilon (black.g, 0, 1e-6);
  g_assert_cmpfloat_with_epsilon (black.b, 0, 1e-6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/colour/srgb/worked-codes", test_worked_codes);
  g_test_add_func ("/colour/srgb/round-trip", test_round_trip);
  g_test_add_func ("/colour/srgb/gamut-mapping", test_gamut_mapping);
  g_test_add_func ("/colour/srgb/beyond-black-and-white", test_beyond_black_and_white);
  return g_test_run ();
}
