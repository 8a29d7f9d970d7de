/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "../sw-test-sketch.h"

#include "forecast/sw-listing-words.h"

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
  g_test_add_func ("/listing-words/written", test_written);
  g_test_add_func ("/listing-words/own", test_own_words);
  return g_test_run ();
}
