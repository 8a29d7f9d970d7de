/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-strike.h"
#include "bath/sw-transfer.h"

#include "tests/colour/published-table.h"
#include "tests/bath/bath-checks.h"

#define ACTIVATION 75.0

static void
test_oracles (void)
{
  g_auto (PublishedTable) table = published_table_open ("reaction_diffusion_oracles.csv");
  guint seen = 0;

  for (guint i = 0; i < published_table_n_rows (&table); i++)
    {
      const char *name = published_table_text (&table, i, "case"), *inputs = published_table_text (&table, i, "inputs");
      double wanted = published_table_number (&table, i, "value");

      if (g_str_equal (name, "first_order_left_in_bath"))
        {
          SwSpan span = { input_of (inputs, "t"), 0.0, 0.15, 0.05 };

          /* At the reference conditions nothing but the half-time counts. */
          span.rate = sw_strike_rate (input_of (inputs, "half_time_min"), ACTIVATION, 4.0, 90.0, SW_FIBRE_SUPERWASH_WOOL);
          assert_near (1.0 - sw_transfer_share (&span, 1), wanted, 1e-11);
          seen++;
        }
      else if (g_str_equal (name, "arrhenius_factor_vs_90C"))
        {
          double factor = sw_strike_temperature_factor (input_of (inputs, "Ea_kJ_per_mol"), input_of (inputs, "T_C"));

          assert_near (factor / wanted, 1.0, 1e-9);
          seen++;
        }
    }

  g_assert_cmpuint (seen, ==, 10);
}

static void
test_ph_factor (void)
{
  double before = 10.0;

  g_assert_cmpfloat (sw_strike_ph_factor (4.0), ==, 1.0);
  /* Half of the carboxyls at their pKa: (1/2) (1 + 10^-0.2). */
  assert_near (sw_strike_ph_factor (4.2), 0.5 * (1.0 + pow (10.0, -0.2)), 1e-12);
  for (double ph = 1.0; ph < 9.0; ph += 0.25)
    {
      g_assert_cmpfloat (sw_strike_ph_factor (ph), <, before);
      before = sw_strike_ph_factor (ph);
    }
}

/* Untreated wool: about half as fast at 90 C, and the gap widens as the bath cools. */
static void
test_untreated_wool (void)
{
  double before = 1.0;

  for (double c = 95.0; c >= 40.0; c -= 5.0)
    {
      double ratio = sw_strike_rate (3.0, ACTIVATION, 4.0, c, SW_FIBRE_WOOL) / sw_strike_rate (3.0, ACTIVATION, 4.0, c, SW_FIBRE_SUPERWASH_WOOL);

      if (c == 90.0)
        assert_near (ratio, 0.5, 0.01);
      g_assert_cmpfloat (ratio, <, before);
      before = ratio;
    }
}

/* Common practice, no source: a hot acid bath for 10 min takes most of a fast dye, not of a slow one. */
static void
test_ten_minutes (void)
{
  double fast = sw_strike_rate (1.0, ACTIVATION, 4.0, 90.0, SW_FIBRE_SUPERWASH_WOOL);
  double slow = sw_strike_rate (8.0, ACTIVATION, 4.0, 90.0, SW_FIBRE_SUPERWASH_WOOL);

  g_assert_cmpfloat (exp (-10.0 * fast), <, 0.05);
  g_assert_cmpfloat (exp (-10.0 * slow), >, 0.35);
}

/* Common practice, no source: next to nothing strikes in a cold pan. Below 40 C the law is left as it is. */
static void
test_cold (void)
{
  double cold = sw_strike_rate (3.0, ACTIVATION, 4.0, 20.0, SW_FIBRE_SUPERWASH_WOOL);

  g_assert_cmpfloat (1.0 - exp (-30.0 * cold), <, 0.03);
}

static void
test_tables (void)
{
  for (SwFibre fibre = SW_FIBRE_SUPERWASH_WOOL; fibre <= SW_FIBRE_SILK; fibre++)
    {
      const SwFibreResponse *response = sw_fibre_response (fibre);

      g_assert_nonnull (response->name);
      g_assert_nonnull (response->source);
      g_assert_cmpfloat (response->factor, >, 0.0);
      assert_near (sw_strike_rate (3.0, ACTIVATION, 4.0, 80.0, fibre) / sw_strike_rate (3.0, ACTIVATION, 4.0, 80.0 - response->lag_c, SW_FIBRE_SUPERWASH_WOOL),
                   response->factor, 1e-12);
      g_assert_cmpfloat (response->most_depth_percent, >, 0.0);
    }
  for (SwDyeClass dye_class = SW_DYE_CLASS_UNKNOWN; dye_class <= SW_DYE_CLASS_METAL_COMPLEX_2_1; dye_class++)
    {
      const SwDyeClassFacts *facts = sw_dye_class_facts (dye_class);

      g_assert_nonnull (facts->source);
      g_assert_cmpfloat (facts->ph_low, <, facts->ph_high);
      g_assert_cmpfloat (facts->half_time_min, >=, 1.0);
      g_assert_cmpfloat (facts->half_time_min, <=, 8.0);
    }
}

/* The windows against Broadbent's table. */
static void
test_windows (void)
{
  static const struct
  {
    const char *item;
    SwDyeClass dye_class;
  } named[] = {
    { "levelling acid dyes, dyebath pH", SW_DYE_CLASS_LEVELLING },
    { "fast acid (half-milling) dyes, dyebath pH", SW_DYE_CLASS_FAST_ACID },
    { "milling acid dyes, dyebath pH", SW_DYE_CLASS_MILLING },
    { "super-milling acid dyes, dyebath pH", SW_DYE_CLASS_SUPER_MILLING },
  };
  g_auto (PublishedTable) table = published_table_open ("acid_dye_facts.csv");
  guint seen = 0;

  for (guint i = 0; i < published_table_n_rows (&table); i++)
    for (guint j = 0; j < G_N_ELEMENTS (named); j++)
      if (g_str_equal (published_table_text (&table, i, "item"), named[j].item))
        {
          const SwDyeClassFacts *facts = sw_dye_class_facts (named[j].dye_class);
          g_autofree char *window = g_strdup_printf ("%g-%g", facts->ph_low, facts->ph_high);

          g_assert_cmpstr (window, ==, published_table_text (&table, i, "value"));
          seen++;
        }

  g_assert_cmpuint (seen, ==, G_N_ELEMENTS (named));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bath/strike/oracles", test_oracles);
  g_test_add_func ("/bath/strike/ph-factor", test_ph_factor);
  g_test_add_func ("/bath/strike/untreated-wool", test_untreated_wool);
  g_test_add_func ("/bath/strike/ten-minutes", test_ten_minutes);
  g_test_add_func ("/bath/strike/cold", test_cold);
  g_test_add_func ("/bath/strike/tables", test_tables);
  g_test_add_func ("/bath/strike/windows", test_windows);
  return g_test_run ();
}
