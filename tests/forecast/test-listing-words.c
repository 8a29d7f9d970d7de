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

/* Known colours in known shares, a little scattered, are found again. */
static void
test_colours (void)
{
  static const double labs[][4] = { { 40, 50, 30, 0.55 }, { 70, -40, 10, 0.30 }, { 90, 0, 5, 0.15 } };
  enum
  {
    N = 9000
  };
  g_autofree float *lab = g_new (float, 3 * N);
  SwForecast forecast = { .n_stitches = N, .lab_l = lab, .lab_a = lab + N, .lab_b = lab + 2 * N };
  SwMainColour colours[SW_MOST_COLOURS];
  double sum = 0;
  int n;

  for (int i = 0; i < N; i++)
    {
      const double at = (i * 7 % N) / (double) N, off = (i % 5) - 2.0;
      const double *from = at < 0.55 ? labs[0] : at < 0.85 ? labs[1]
                                                           : labs[2];

      for (int k = 0; k < 3; k++)
        lab[k * N + i] = (float) (from[k] + off);
    }
  n = sw_main_colours (&forecast, colours);
  g_assert_cmpint (n, ==, 3);
  for (int i = 0; i < n; i++)
    {
      g_assert_cmpfloat_with_epsilon (colours[i].share, labs[i][3], 0.01);
      g_assert_cmpfloat (sw_ciede2000 (colours[i].lab, (SwLab){ labs[i][0], labs[i][1], labs[i][2] }), <, 1);
      sum += colours[i].share;
    }
  g_assert_cmpfloat_with_epsilon (sum, 1, 1e-9);
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
  g_test_add_func ("/listing-words/one-colour", test_one_colour);
  g_test_add_func ("/listing-words/written", test_written);
  g_test_add_func ("/listing-words/own", test_own_words);
  return g_test_run ();
}
