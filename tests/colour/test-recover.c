/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-recover.h"
#include "tests/colour/published-table.h"

#include <math.h>

static double
distance (SwXyz a, SwXyz b)
{
  return MAX (fabs (a.x - b.x), MAX (fabs (a.y - b.y), fabs (a.z - b.z)));
}

/* What the method makes least: the squared steps of artanh (2 R - 1). */
static double
slope_squared (const double *reflectance)
{
  double sum = 0;

  for (int band = 1; band < SW_BANDS; band++)
    {
      double step = atanh (2 * reflectance[band] - 1) - atanh (2 * reflectance[band - 1] - 1);

      sum += step * step;
    }
  return sum;
}

/* Burns 2020, worked out independently (reference/SOURCES.md). */
static void
test_tabled (void)
{
  g_auto (PublishedTable) targets = published_table_open ("smoothest_reflectance_targets.csv");
  g_auto (PublishedTable) spectra = published_table_open ("smoothest_reflectance.csv");
  double worst = 0, worst_colour = 0;

  for (guint row = 0; row < published_table_n_rows (&targets); row++)
    {
      g_autofree char *column = g_strdup_printf ("srgb_%s_%s_%s", published_table_text (&targets, row, "r"),
                                                 published_table_text (&targets, row, "g"), published_table_text (&targets, row, "b"));
      SwXyz target = { published_table_number (&targets, row, "X"), published_table_number (&targets, row, "Y"), published_table_number (&targets, row, "Z") };
      double tabled[SW_BANDS], reflectance[SW_BANDS];
      g_autoptr (GError) error = NULL;

      g_assert_true (sw_recover_reflectance (target, reflectance, &error));
      g_assert_no_error (error);
      published_table_column (&spectra, column, tabled, SW_BANDS);
      for (int band = 0; band < SW_BANDS; band++)
        worst = MAX (worst, fabs (reflectance[band] - tabled[band]));
      worst_colour = MAX (worst_colour, distance (sw_xyz_from_reflectance (reflectance), target));
      /* The table has eight decimals, and its target five. */
      g_assert_cmpfloat (slope_squared (reflectance), <=, published_table_number (&targets, row, "objective_sum_dz2") * (1 + 1e-4) + 1e-8);
    }
  g_test_message ("largest difference: %.2g in reflectance, %.2g in colour", worst, worst_colour);
  g_assert_cmpfloat (worst, <, 0.005);
  g_assert_cmpfloat (worst_colour, <, 1e-6);
}

/* A least one cannot be bettered: any small step that keeps the colour (to first order) makes the slope larger. */
static void
test_least (void)
{
  for (int i = 0; i < 50; i++)
    {
      double reflectance[SW_BANDS], other[SW_BANDS], wish[SW_BANDS];
      SwXyz target = sw_xyz_from_srgb ((SwSrgb){ g_test_rand_double_range (0.05, 0.95), g_test_rand_double_range (0.05, 0.95), g_test_rand_double_range (0.05, 0.95) });

      g_assert_true (sw_recover_reflectance (target, reflectance, NULL));
      for (int band = 0; band < SW_BANDS; band++)
        wish[band] = CLAMP (reflectance[band] * (1 + g_test_rand_double_range (-0.02, 0.02)), 0.001, 0.999);
      /* Of the wish's colour the smoothest is at least as smooth as the wish. */
      g_assert_true (sw_recover_reflectance (sw_xyz_from_reflectance (wish), other, NULL));
      g_assert_cmpfloat (slope_squared (other), <=, slope_squared (wish));
    }
}

/* Every fifteenth sRGB code, all of which some reflectance has: found, to 1e-6, within 0..1. */
static void
test_srgb_grid (void)
{
  int n = 0, n_found = 0;
  double worst = 0;
  gint64 start = g_get_monotonic_time ();

  for (int r = 0; r <= 255; r += 15)
    for (int g = 0; g <= 255; g += 15)
      for (int b = 0; b <= 255; b += 15)
        {
          SwXyz target = sw_xyz_from_srgb ((SwSrgb){ r / 255.0, g / 255.0, b / 255.0 });
          double reflectance[SW_BANDS];

          n++;
          if (!sw_recover_reflectance (target, reflectance, NULL))
            {
              g_test_message ("not found: %d %d %d", r, g, b);
              continue;
            }
          n_found++;
          worst = MAX (worst, distance (sw_xyz_from_reflectance (reflectance), target));
          for (int band = 0; band < SW_BANDS; band++)
            g_assert_true (reflectance[band] > 0 && reflectance[band] < 1);
        }
  g_test_message ("%d of %d found, largest error of colour %.2g, %.3f ms each", n_found, n, worst, (double) (g_get_monotonic_time () - start) / 1000 / n);
  g_assert_cmpint (n_found, ==, n);
  g_assert_cmpfloat (worst, <, 1e-6);
}

/* The darkest and the lightest vivid codes are the hardest ones. */
static void
test_srgb_corners (void)
{
  static const int codes[] = { 0, 1, 2, 4, 128, 253, 254, 255 };

  for (guint r = 0; r < G_N_ELEMENTS (codes); r++)
    for (guint g = 0; g < G_N_ELEMENTS (codes); g++)
      for (guint b = 0; b < G_N_ELEMENTS (codes); b++)
        {
          SwXyz target = sw_xyz_from_srgb ((SwSrgb){ codes[r] / 255.0, codes[g] / 255.0, codes[b] / 255.0 });
          double reflectance[SW_BANDS];
          g_autoptr (GError) error = NULL;

          g_assert_true (sw_recover_reflectance (target, reflectance, &error));
          g_assert_no_error (error);
          g_assert_cmpfloat (distance (sw_xyz_from_reflectance (reflectance), target), <, 1e-6);
        }
}

static void
test_grey_is_flat (void)
{
  for (int code = 0; code <= 255; code += 5)
    {
      double reflectance[SW_BANDS];

      g_assert_true (sw_recover_reflectance (sw_xyz_from_srgb ((SwSrgb){ code / 255.0, code / 255.0, code / 255.0 }), reflectance, NULL));
      for (int band = 1; band < SW_BANDS; band++)
        g_assert_cmpfloat_with_epsilon (reflectance[band], reflectance[0], 1e-7);
    }
}

/*
 * Schrödinger 1920: in any direction of XYZ no reflectance within 0..1 goes further than the one that is 1 where a band's weight points that way.
 * Returns: how far @xyz stays behind that, at the worst of many directions; below 0 it is out of reach for sure
 */
static double
room_left (SwXyz xyz)
{
  double least = G_MAXDOUBLE;
  double best[3] = { 0 };

  for (int i = 0; i < 1500; i++)
    {
      /* First anywhere, then ever closer about the worst so far. */
      double reach = i < 750 ? 1 : pow (0.99, i - 750);
      double d[3], most = 0, length;

      for (int axis = 0; axis < 3; axis++)
        d[axis] = (i < 750 ? 0 : best[axis]) + g_test_rand_double_range (-reach, reach);
      length = sqrt (d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
      for (int axis = 0; axis < 3; axis++)
        d[axis] /= length;
      for (int band = 0; band < SW_BANDS; band++)
        most += MAX (d[0] * sw_weight_x[band] + d[1] * sw_weight_y[band] + d[2] * sw_weight_z[band], 0);
      most -= d[0] * xyz.x + d[1] * xyz.y + d[2] * xyz.z;
      if (most < least)
        {
          least = most;
          memcpy (best, d, sizeof d);
        }
    }
  return least;
}

/* Refused are the colours no reflectance has (but for a hair's breadth inside the limit), found are only those one has. */
static void
test_unreachable (void)
{
  int n_refused = 0;
  double worst = 0;

  for (int i = 0; i < 400; i++)
    {
      SwXyz xyz = sw_xyz_from_lab ((SwLab){ g_test_rand_double_range (1, 99), g_test_rand_double_range (-120, 120), g_test_rand_double_range (-120, 120) });
      g_autoptr (GError) error = NULL;
      double reflectance[SW_BANDS];
      double room = room_left (xyz);

      if (sw_recover_reflectance (xyz, reflectance, &error))
        {
          g_assert_no_error (error);
          g_assert_cmpfloat (room, >, -1e-6);
          g_assert_cmpfloat (distance (sw_xyz_from_reflectance (reflectance), xyz), <, 1e-6);
        }
      else
        {
          g_assert_error (error, SW_COLOUR_ERROR, SW_COLOUR_ERROR_UNREACHABLE);
          n_refused++;
          worst = MAX (worst, room);
        }
    }
  g_test_message ("%d of 400 refused; the one with most room was %.2g of Y = 100 within the limit", n_refused, MAX (worst, 0));
  g_assert_cmpint (n_refused, >, 50);
  g_assert_cmpfloat (worst, <, 0.3);
}

/* Anything reflected by a real sample is within reach. */
static void
test_real_spectra (void)
{
  g_auto (PublishedTable) spectra = published_table_open ("spectra_reflectance.csv");
  g_auto (PublishedTable) names = published_table_open ("spectra_xyz_lab.csv");

  for (guint row = 0; row < published_table_n_rows (&names); row++)
    {
      double measured[SW_BANDS], reflectance[SW_BANDS];
      g_autoptr (GError) error = NULL;

      published_table_column (&spectra, published_table_text (&names, row, "sample"), measured, SW_BANDS);
      g_assert_true (sw_recover_reflectance (sw_xyz_from_reflectance (measured), reflectance, &error));
      g_assert_no_error (error);
      g_assert_cmpfloat (distance (sw_xyz_from_reflectance (reflectance), sw_xyz_from_reflectance (measured)), <, 1e-6);
      g_assert_cmpfloat (slope_squared (reflectance), <=, slope_squared (measured));
    }
}

static void
test_nonsense (void)
{
  static const SwXyz nonsense[] = { { NAN, 50, 50 }, { 50, NAN, 50 }, { 50, 50, NAN }, { INFINITY, 50, 50 }, { -1, 50, 50 }, { 50, 0, 50 }, { 120, 120, 130 }, { 1, 1e-12, 1 } };

  for (guint i = 0; i < G_N_ELEMENTS (nonsense); i++)
    {
      g_autoptr (GError) error = NULL;
      double reflectance[SW_BANDS];

      g_assert_false (sw_recover_reflectance (nonsense[i], reflectance, &error));
      g_assert_error (error, SW_COLOUR_ERROR, SW_COLOUR_ERROR_UNREACHABLE);
    }
}

/* The three forms of a sample agree where they name the same colour. */
static void
test_samples (void)
{
  SwSample srgb = { SW_SAMPLE_SRGB, { 188, 64, 92 } };
  SwSample lab = { SW_SAMPLE_LAB };
  SwSample measured = { SW_SAMPLE_REFLECTANCE };
  double from_srgb[SW_BANDS], from_lab[SW_BANDS], from_measured[SW_BANDS];
  SwLab colour = sw_lab_from_xyz (sw_xyz_from_srgb ((SwSrgb){ 188 / 255.0, 64 / 255.0, 92 / 255.0 }));

  lab.numbers[0] = colour.l;
  lab.numbers[1] = colour.a;
  lab.numbers[2] = colour.b;
  g_assert_true (sw_sample_reflectance (&srgb, from_srgb, NULL));
  g_assert_true (sw_sample_reflectance (&lab, from_lab, NULL));
  memcpy (measured.numbers, from_srgb, sizeof from_srgb);
  g_assert_true (sw_sample_reflectance (&measured, from_measured, NULL));
  for (int band = 0; band < SW_BANDS; band++)
    {
      g_assert_cmpfloat_with_epsilon (from_lab[band], from_srgb[band], 1e-7);
      g_assert_cmpfloat (from_measured[band], ==, from_srgb[band]);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/colour/recover/tabled", test_tabled);
  g_test_add_func ("/colour/recover/least", test_least);
  g_test_add_func ("/colour/recover/srgb-grid", test_srgb_grid);
  g_test_add_func ("/colour/recover/srgb-corners", test_srgb_corners);
  g_test_add_func ("/colour/recover/grey-is-flat", test_grey_is_flat);
  g_test_add_func ("/colour/recover/unreachable", test_unreachable);
  g_test_add_func ("/colour/recover/real-spectra", test_real_spectra);
  g_test_add_func ("/colour/recover/nonsense", test_nonsense);
  g_test_add_func ("/colour/recover/samples", test_samples);
  return g_test_run ();
}
