/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-ph.h"

#include "tests/colour/published-table.h"
#include "tests/bath/bath-checks.h"

#define CUP_ML 236.588
#define TABLESPOON_ML 14.787

static const SwAcidSystem *
system_named (const char *name)
{
  return g_str_has_prefix (name, "citric") ? &sw_citric_acid : &sw_acetic_acid;
}

/* Roots of the charge balance found elsewhere, as a polynomial's. */
static void
test_examples (void)
{
  g_auto (PublishedTable) table = published_table_open ("ph_examples.csv");
  double largest = 0.0;

  for (guint i = 0; i < published_table_n_rows (&table); i++)
    {
      const SwAcidSystem *acid = system_named (published_table_text (&table, i, "acid"));
      double molar = published_table_number (&table, i, "molar"), alkalinity = published_table_number (&table, i, "alkalinity_eq_per_l");
      double expected = published_table_number (&table, i, "ph"), expected_kept = published_table_number (&table, i, "ph_if_carbonate_kept");
      double open = sw_ph (acid, molar, alkalinity, 0.0);
      double kept = sw_ph (acid, molar, alkalinity, sw_carbonate_of_water (alkalinity, 8.0));

      assert_near (open, expected, 1e-4);
      assert_near (kept, expected_kept, 1e-4);
      largest = MAX (largest, MAX (fabs (open - expected), fabs (kept - expected_kept)));
    }

  g_test_message ("largest error %.2g pH over %u rows", largest, published_table_n_rows (&table));
}

/* Measured, so with activity, which we leave out: 0.15. */
static void
test_published (void)
{
  g_auto (PublishedTable) table = published_table_open ("ph_published.csv");

  for (guint i = 0; i < published_table_n_rows (&table); i++)
    {
      double ph = sw_ph (system_named (published_table_text (&table, i, "solution")), published_table_number (&table, i, "molar"), 0.0, 0.0);

      assert_near (ph, published_table_number (&table, i, "ph_published"), 0.15);
      assert_near (ph, published_table_number (&table, i, "exact_ph_from_this_table_constants"), 1e-3);
    }
}

/* pH = (pKa - log C) / 2 is a limit, good to 0.01 where acid is neither strong nor thin. */
static void
test_weak_acid_limit (void)
{
  for (double molar = 0.02; molar < 2.0; molar *= 1.5)
    assert_near (sw_ph (&sw_acetic_acid, molar, 0.0, 0.0), 0.5 * (sw_acetic_acid.pka[0] - log10 (molar)), 0.01);
}

static void
test_water (void)
{
  assert_near (sw_ph (&sw_acetic_acid, 0.0, 0.0, 0.0), 6.9975, 1e-9);
  /* Strong base alone: pKw + log. */
  assert_near (sw_ph (&sw_acetic_acid, 0.0, 0.001, 0.0), 10.995, 1e-6);
  /* Tap water with its carbonate comes back to the pH it was taken at. */
  assert_near (sw_ph (&sw_citric_acid, 0.0, 0.003, sw_carbonate_of_water (0.003, 8.0)), 8.0, 1e-9);
  g_assert_cmpfloat (sw_carbonate_of_water (0.0, 8.0), ==, 0.0);
}

/* 8 US cups with 3 tablespoons of 5 % vinegar on 300 g of yarn: common practice, no source. */
static void
test_kitchen (void)
{
  double litres = (8.0 * CUP_ML + 3.0 * TABLESPOON_ML) / 1000.0;
  double molar = 3.0 * TABLESPOON_ML * 0.05 / sw_acetic_acid.molar_mass / litres;
  double ph = sw_ph (&sw_acetic_acid, molar, 0.0, 0.0);

  g_assert_cmpfloat (ph, >, 3.1);
  g_assert_cmpfloat (ph, <, 3.4);
  assert_near (ph, 3.244, 1e-3);
}

static void
test_acid_for_ph (void)
{
  const SwAcidSystem *systems[] = { &sw_acetic_acid, &sw_citric_acid };

  for (guint i = 0; i < 200; i++)
    {
      const SwAcidSystem *acid = systems[i % 2];
      double alkalinity = g_test_rand_double_range (0.0, 0.006);
      double carbonate = i % 3 == 0 ? 0.0 : sw_carbonate_of_water (alkalinity, 8.0);
      double ph = g_test_rand_double_range (2.6, 6.0);

      assert_near (sw_ph (acid, sw_acid_for_ph (acid, ph, alkalinity, carbonate), alkalinity, carbonate), ph, 1e-9);
    }

  g_assert_cmpfloat (sw_acid_for_ph (&sw_acetic_acid, 9.0, 0.0, 0.0), ==, 0.0);
}

static void
test_monotone (void)
{
  double before = 15.0;

  for (double molar = 1e-7; molar < 10.0; molar *= 1.3)
    {
      double ph = sw_ph (&sw_citric_acid, molar, 0.003, 0.0);

      g_assert_cmpfloat (ph, <, before);
      before = ph;
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bath/ph/examples", test_examples);
  g_test_add_func ("/bath/ph/published", test_published);
  g_test_add_func ("/bath/ph/weak-acid-limit", test_weak_acid_limit);
  g_test_add_func ("/bath/ph/water", test_water);
  g_test_add_func ("/bath/ph/kitchen", test_kitchen);
  g_test_add_func ("/bath/ph/acid-for-ph", test_acid_for_ph);
  g_test_add_func ("/bath/ph/more-acid-lowers", test_monotone);
  return g_test_run ();
}
