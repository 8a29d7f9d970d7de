/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-chance.h"

#include <math.h>
#include <stdlib.h>

#define N 100000

static void
test_published (void)
{
  /* First outputs of splitmix64 for the seed 1234567: Rosetta Code, "Pseudo-random numbers/Splitmix64". */
  static const guint64 outputs[] = {
    6457827717110365317u, 3203168211198807973u, 9817491932198370423u, 4593380528125082431u, 16408922859458223821u
  };

  g_test_summary ("Part n of an address is output n of the published generator");
  for (gsize i = 0; i < G_N_ELEMENTS (outputs); i++)
    g_assert_cmpuint (sw_chance_mix (1234567, i), ==, outputs[i]);
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a;
  double y = *(const double *) b;

  return (x > y) - (x < y);
}

/*
 * Largest distance between the sample's distribution and @cumulative's, times
 * sqrt n. Kolmogorov's limit: above 1.63 in one case of a hundred.
 */
static double
kolmogorov (double *sample, gsize n, double (*cumulative) (double))
{
  double distance = 0;

  qsort (sample, n, sizeof *sample, compare_doubles);
  for (gsize i = 0; i < n; i++)
    {
      double p = cumulative (sample[i]);

      distance = MAX (distance, fabs (p - (double) i / (double) n));
      distance = MAX (distance, fabs (p - (double) (i + 1) / (double) n));
    }
  return distance * sqrt ((double) n);
}

static double
cumulative_even (double x)
{
  return x;
}

static double
cumulative_normal (double x)
{
  return 0.5 * erfc (-x * G_SQRT2 / 2);
}

static void
test_distribution (void)
{
  g_autofree double *even = g_new (double, N);
  g_autofree double *normal = g_new (double, N);

  g_test_summary ("Neighbouring addresses give even and normal numbers by Kolmogorov's test; fixed addresses, so it never flickers");
  for (guint64 seed = 1; seed <= 3; seed++)
    {
      for (gsize i = 0; i < N; i++)
        {
          even[i] = sw_chance_even (sw_chance_mix (seed, i));
          normal[i] = sw_chance_normal (sw_chance_mix (seed, i));
          g_assert_true (even[i] >= 0 && even[i] < 1);
          g_assert_true (isfinite (normal[i]));
        }
      g_assert_cmpfloat (kolmogorov (even, N, cumulative_even), <, 1.63);
      g_assert_cmpfloat (kolmogorov (normal, N, cumulative_normal), <, 1.63);
    }
}

/* Correlation of the numbers at two addresses a step apart; its sd is 1 / sqrt N. */
static double
correlation (guint64 seed, guint64 other_seed, guint64 shift)
{
  double sum = 0;

  for (guint64 i = 0; i < N; i++)
    sum += sw_chance_normal (sw_chance_mix (seed, i)) * sw_chance_normal (sw_chance_mix (other_seed, i + shift));
  return sum / N;
}

static void
test_independence (void)
{
  const double four_sd = 4 / sqrt ((double) N);

  g_test_summary ("Neighbours in a row, and the same place under neighbouring seeds, have nothing to do with each other");
  g_assert_cmpfloat (fabs (correlation (1, 1, 1)), <, four_sd);
  g_assert_cmpfloat (fabs (correlation (1, 1, 2)), <, four_sd);
  g_assert_cmpfloat (fabs (correlation (1, 2, 0)), <, four_sd);
  g_assert_cmpfloat (fabs (correlation (sw_chance_mix (9, 1), sw_chance_mix (9, 2), 0)), <, four_sd);
  g_assert_cmpfloat (fabs (correlation (1, 1, 0) - 1), <, four_sd * G_SQRT2); /* and with itself it has */
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sketch/chance/published", test_published);
  g_test_add_func ("/sketch/chance/distribution", test_distribution);
  g_test_add_func ("/sketch/chance/independence", test_independence);
  return g_test_run ();
}
