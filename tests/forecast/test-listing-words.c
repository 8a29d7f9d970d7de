/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "../sw-test-sketch.h"

#include "forecast/sw-listing-words.h"
#include "forecast/sw-main-colours.h"

#include <string.h>

static SwForecast *
run (const SwSketch *sketch)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (GError) error = NULL;
  SwForecast *forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);

  g_assert_no_error (error);
  return forecast;
}

/* A strand of known colours, each with the share that comes after it, a little scattered. Frees with the arrays. */
typedef struct
{
  SwForecast forecast;
  float *legs;
} Strand;

#define N_STITCHES 9000

static Strand
strand_of (const double (*labs)[4], int n)
{
  const gsize legs = 2 * N_STITCHES;
  Strand strand = { .legs = g_new (float, 3 * legs) };

  strand.forecast = (SwForecast){ .n_stitches = N_STITCHES, .leg_x = strand.legs, .leg_y = strand.legs + legs, .leg_z = strand.legs + 2 * legs };
  for (gsize i = 0; i < legs; i++)
    {
      const double at = (double) (i * 7 % legs) / (double) legs, off = (double) (i % 5) - 2.0;
      double sum = labs[0][3];
      int k = 0;
      SwXyz xyz;

      while (at >= sum && k < n - 1)
        sum += labs[++k][3];
      xyz = sw_xyz_from_lab ((SwLab){ labs[k][0] + off, labs[k][1] + off, labs[k][2] + off });
      strand.legs[i] = (float) xyz.x;
      strand.legs[legs + i] = (float) xyz.y;
      strand.legs[2 * legs + i] = (float) xyz.z;
    }
  return strand;
}

/* Known colours in known shares are found again. */
static void
test_colours (void)
{
  static const double labs[][4] = { { 40, 50, 30, 0.55 }, { 70, -40, 10, 0.30 }, { 90, 0, 5, 0.15 } };
  Strand strand = strand_of (labs, 3);
  SwMainColour colours[SW_MOST_COLOURS];
  const int n = sw_main_colours (&strand.forecast, colours);
  double sum = 0;

  g_assert_cmpint (n, ==, 3);
  for (int i = 0; i < n; i++)
    {
      g_assert_cmpfloat_with_epsilon (colours[i].share, labs[i][3], 0.01);
      g_assert_cmpfloat (sw_ciede2000 (colours[i].lab, (SwLab){ labs[i][0], labs[i][1], labs[i][2] }), <, 1);
      sum += colours[i].share;
    }
  g_assert_cmpfloat_with_epsilon (sum, 1, 1e-9);
  g_free (strand.legs);
}

/* A few orange specks on lilac are a colour of their own; two shades of one dye are not, nor is a hundredth that is hardly another colour. */
static void
test_accents (void)
{
  static const double labs[][4] = { { 70, 12, -18, 0.52 }, { 66, 13, -20, 0.455 }, { 70, 30, 70, 0.015 }, { 60, 16, -26, 0.01 } };
  Strand strand = strand_of (labs, 4);
  SwMainColour colours[SW_MOST_COLOURS];
  const int n = sw_main_colours (&strand.forecast, colours);

  g_assert_cmpint (n, ==, 2);
  g_assert_cmpfloat_with_epsilon (colours[0].share, 0.985, 0.002);
  g_assert_cmpfloat_with_epsilon (colours[1].share, 0.015, 0.002);
  g_assert_cmpfloat (sw_ciede2000 (colours[1].lab, (SwLab){ 70, 30, 70 }), <, 1);
  g_free (strand.legs);
}

static void
test_one_colour (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  g_autoptr (SwForecast) forecast = run (sketch);
  SwMainColour colours[SW_MOST_COLOURS];

  g_assert_cmpint (sw_main_colours (forecast, colours), ==, 1);
  g_assert_cmpfloat_with_epsilon (colours[0].share, 1, 1e-9);
  g_assert_cmpfloat (sw_ciede2000 (colours[0].lab, (SwLab){ (double) forecast->lab_l[0], (double) forecast->lab_a[0], (double) forecast->lab_b[0] }), <, 0.1);
}

static void
assert_has (const char *text, const char *part)
{
  if (strstr (text, part) == NULL)
    g_error ("“%s” is not in: %s", part, text);
}

static void
test_written (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = NULL;
  g_autofree char *metric = NULL;
  g_autofree char *us = NULL;
  g_autofree char *alt = NULL;
  g_autofree char *colours = NULL;

  g_free (sketch->title);
  sketch->title = g_strdup ("Two Tides");
  sketch->yarn.plies = 1;
  sketch->listing.care = SW_CARE_HAND_WASH;
  forecast = run (sketch);
  metric = sw_listing_words (forecast, FALSE);
  us = sw_listing_words (forecast, TRUE);
  alt = sw_listing_alt (forecast);
  colours = sw_listing_colours (forecast);
  g_assert_true (g_str_has_prefix (metric, "Two Tides\n"));
  assert_has (metric, "Superwash wool");
  assert_has (metric, "100 g (300 m), 1 ply");
  assert_has (us, "3.53 oz (328 yd), 1 ply"); /* 100 / 28.3495, 300 / 0.9144 */
  assert_has (metric, "sock: At ");
  assert_has (metric, "scarf: Worked flat over ");
  assert_has (metric, "Care: Hand wash, lukewarm");
  assert_has (metric, "a drawn forecast, not a photograph");
  assert_has (metric, colours);
  assert_has (alt, "Two Tides");
  assert_has (alt, colours);
}

/* The dyer's own words go before what would be written. */
static void
test_own_words (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = NULL;
  g_autofree char *words = NULL;
  g_autofree char *written = NULL;

  g_free (sketch->listing.words);
  sketch->listing.words = g_strdup ("Only this.");
  g_free (sketch->listing.care_words);
  sketch->listing.care_words = g_strdup ("Ask me.");
  forecast = run (sketch);
  words = sw_listing_words (forecast, FALSE);
  written = sw_listing_written (forecast, FALSE);
  g_assert_cmpstr (words, ==, "Only this.");
  assert_has (written, "Care: Ask me.");
  g_assert_null (strstr (written, "Only this."));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/listing-words/colours", test_colours);
  g_test_add_func ("/listing-words/accents", test_accents);
  g_test_add_func ("/listing-words/one-colour", test_one_colour);
  g_test_add_func ("/listing-words/written", test_written);
  g_test_add_func ("/listing-words/own", test_own_words);
  return g_test_run ();
}
