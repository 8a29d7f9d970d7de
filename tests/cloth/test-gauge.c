/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cloth/sw-gauge.h"

#include "tests/colour/published-table.h"

#include <math.h>
#include <string.h>

static guint
row_of (const PublishedTable *table, const char *column, const char *text)
{
  for (guint i = 0; i < published_table_n_rows (table); i++)
    if (strstr (published_table_text (table, i, column), text) != NULL)
      return i;

  g_error ("no row with %s", text);
}

/* The constants are the printed ones, and the product of the two linear ones is the areal one as far as it is printed. */
static void
test_constants (void)
{
  static const struct
  {
    SwFabricState state;
    const char *name;
  } states[] = { { SW_STATE_DRY, "dry_relaxed" }, { SW_STATE_WET, "wet_relaxed" } };
  g_auto (PublishedTable) table = published_table_open ("munden_constants.csv");

  for (gsize i = 0; i < G_N_ELEMENTS (states); i++)
    {
      const SwMunden *munden = sw_munden (states[i].state);
      guint row = row_of (&table, "state", states[i].name);

      g_assert_cmpfloat (munden->k_s, ==, published_table_number (&table, row, "k_s"));
      g_assert_cmpfloat (munden->k_c, ==, published_table_number (&table, row, "k_c"));
      g_assert_cmpfloat (munden->k_w, ==, published_table_number (&table, row, "k_w"));
      g_assert_cmpfloat_with_epsilon (munden->k_c * munden->k_w, munden->k_s, 0.01 * munden->k_s);
    }
}

/* Stitch lengths of the worked examples, six decimals. */
static void
test_worked_examples (void)
{
  g_auto (PublishedTable) table = published_table_open ("knit_worked_examples.csv");
  int found = 0;

  for (guint i = 0; i < published_table_n_rows (&table); i++)
    {
      const char *inputs = published_table_text (&table, i, "inputs");
      const char *courses = strstr (inputs, "courses_per_cm=");
      SwFabricState state = strstr (inputs, "wet k_s") != NULL ? SW_STATE_WET : SW_STATE_DRY;

      if (!g_str_has_prefix (inputs, "wales_per_cm=") || courses == NULL)
        continue;
      g_assert_cmpfloat_with_epsilon (sw_stitch_length (g_ascii_strtod (inputs + strlen ("wales_per_cm="), NULL),
                                                        g_ascii_strtod (courses + strlen ("courses_per_cm="), NULL), state),
                                      published_table_number (&table, i, "value"), 5e-7);
      found++;
    }

  g_assert_cmpint (found, ==, 3);
}

/* An examination's fabric: 92 loops in a square centimetre of 0.5 cm loops, fully relaxed (k_c k_w = 5.5 x 4.2), a state with its own constant in the same law. */
static void
test_examination (void)
{
  g_auto (PublishedTable) table = published_table_open ("knit_worked_examples.csv");
  double loops = published_table_number (&table, row_of (&table, "case", "exam_gate_2015"), "value");
  double dry = sw_stitch_length (1, loops, SW_STATE_DRY);

  g_assert_cmpfloat_with_epsilon (dry * sqrt (5.5 * 4.2 / sw_munden (SW_STATE_DRY)->k_s), 0.5, 1e-3);
}

/* A gauge made from a loop length by the linear constants gives that loop length back, as far as k_c k_w = k_s. */
static void
test_round_trip (void)
{
  for (int state = SW_STATE_DRY; state <= SW_STATE_WET; state++)
    for (double length = 0.3; length < 4; length += 0.1)
      {
        const SwMunden *munden = sw_munden ((SwFabricState) state);
        double back = sw_stitch_length (munden->k_w / length, munden->k_c / length, (SwFabricState) state);

        g_assert_cmpfloat_with_epsilon (back, length, 0.005 * length);
      }
}

/* Only the stitch gauge known: 10 mm loops have 3.8 wales and 5 courses to the centimetre. */
static void
test_courses_from_wales (void)
{
  g_auto (PublishedTable) table = published_table_open ("knit_worked_examples.csv");
  double wales = 0, courses = 0;

  for (guint i = 0; i < published_table_n_rows (&table); i++)
    if (strcmp (published_table_text (&table, i, "case"), "arith_dry_10mm") == 0)
      *(strcmp (published_table_text (&table, i, "quantity"), "wales_per_cm") == 0 ? &wales : &courses) = published_table_number (&table, i, "value");

  g_assert_cmpfloat (wales, >, 0);
  g_assert_cmpfloat_with_epsilon (sw_courses_from_wales (wales), courses, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_stitch_length (wales, sw_courses_from_wales (wales), SW_STATE_DRY), 1.0, 1e-9);
}

/*
 * Finished cotton jersey by trade charts: from mass, count and loop length
 * follow the loops in an area, and from those our loop length. The printed
 * one lies between dry and wet relaxed, give or take 2.5 % (5 % of k_s).
 */
static void
test_jersey (void)
{
  g_auto (PublishedTable) table = published_table_open ("jersey_area_density.csv");

  for (guint i = 0; i < published_table_n_rows (&table); i++)
    {
      double tex = published_table_number (&table, i, "tex");
      double length = 0.1 * published_table_number (&table, i, "loop_length_mm");
      double grams_per_cm2 = 1e-4 * published_table_number (&table, i, "finished_g_per_m2");
      double loops = grams_per_cm2 / (1e-5 * tex * length);
      double dry = sw_stitch_length (sqrt (loops), sqrt (loops), SW_STATE_DRY);
      double wet = sw_stitch_length (sqrt (loops), sqrt (loops), SW_STATE_WET);

      g_test_message ("%s: printed %.3f cm, dry %.3f, wet %.3f", published_table_text (&table, i, "fabric"), length, dry, wet);
      g_assert_cmpfloat (length, >, 0.975 * dry);
      g_assert_cmpfloat (length, <, 1.025 * wet);
    }
}

/* The knitting industry's constant g/m2 x Ne x mm, for which k_s x 590.54 stands, lies between the two states. */
static void
test_industry_constant (void)
{
  g_auto (PublishedTable) table = published_table_open ("knit_worked_examples.csv");
  double constant = published_table_number (&table, row_of (&table, "case", "industry_constant"), "value");

  g_assert_cmpfloat (constant, >, 590.54 * sw_munden (SW_STATE_DRY)->k_s);
  g_assert_cmpfloat (constant, <, 590.54 * sw_munden (SW_STATE_WET)->k_s);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cloth/gauge/constants", test_constants);
  g_test_add_func ("/cloth/gauge/worked-examples", test_worked_examples);
  g_test_add_func ("/cloth/gauge/examination", test_examination);
  g_test_add_func ("/cloth/gauge/round-trip", test_round_trip);
  g_test_add_func ("/cloth/gauge/courses-from-wales", test_courses_from_wales);
  g_test_add_func ("/cloth/gauge/jersey", test_jersey);
  g_test_add_func ("/cloth/gauge/industry-constant", test_industry_constant);
  return g_test_run ();
}
