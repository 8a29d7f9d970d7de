/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "../sw-test-sketch.h"

#include "forecast/sw-listing-cloth.h"
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
  assert_has (metric, "Hand-dyed yarn\n");
  assert_has (metric, "stocking stitch, 30 stitches to 10 cm");
  assert_has (us, "stockinette stitch, 30 stitches to 4 in"); /* 30.48 */
  g_assert_null (strstr (us, "10 cm"));
  assert_has (metric, "Care: Hand wash, lukewarm");
  assert_has (metric, "a drawn forecast, not a photograph");
  assert_has (metric, colours);
  assert_has (alt, "Two Tides");
  assert_has (alt, colours);
}

/* Of a pan with three skeins, all three are in the picture. */
static void
test_alt_skeins (void)
{
  for (int skeins = 1; skeins <= 3; skeins += 2)
    for (SwArrangement arrangement = SW_ARRANGEMENT_SKEIN_CLOTH; arrangement <= SW_ARRANGEMENT_WHOLE; arrangement++)
      {
        g_autoptr (SwSketch) sketch = test_sketch (2);
        g_autoptr (SwForecast) forecast = NULL;
        g_autofree char *alt = NULL;

        sketch->lay.skeins = skeins;
        sketch->listing.arrangement = arrangement;
        forecast = run (sketch);
        alt = sw_listing_alt (forecast);
        g_assert_cmpint (strstr (alt, "the laid skeins ") != NULL, ==, skeins > 1);
      }
}

/* The list of @words: from its heading to the next empty line. */
static char *
list_of (const char *words)
{
  const char *from = strstr (words, "How it is likely");
  const char *to = from != NULL ? strstr (from, "\n\n") : NULL;

  g_assert_nonnull (to);
  return g_strndup (from, (gsize) (to - from));
}

static guint
count (const char *text, const char *part)
{
  guint n = 0;

  for (const char *at = strstr (text, part); at != NULL; at = strstr (at + 1, part))
    n++;
  return n;
}

/* The colourway's own width comes first, as the cloth in the picture where there is one. */
static void
test_own_width (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);

  for (int arrangement = SW_ARRANGEMENT_HANK; arrangement <= SW_ARRANGEMENT_WHOLE; arrangement++)
    for (int worked = SW_WORKED_FLAT; worked <= SW_WORKED_ROUND; worked++)
      {
        g_autoptr (SwForecast) forecast = NULL;
        g_autofree char *words = NULL;
        g_autofree char *list = NULL;
        g_auto (GStrv) lines = NULL;
        const gboolean cloth = arrangement >= SW_ARRANGEMENT_HANK_CLOTH;

        sketch->cloth.width_stitches = 37;
        sketch->cloth.worked = (SwWorked) worked;
        sketch->listing.arrangement = (SwArrangement) arrangement;
        forecast = run (sketch);
        words = sw_listing_written (forecast, FALSE);
        list = list_of (words);
        lines = g_strsplit (list, "\n", -1);
        assert_has (lines[1], "37 stitches");
        g_assert_true ((strstr (lines[1], "The cloth in the picture") != NULL) == cloth);
        g_assert_true ((strstr (lines[1], "in the round") != NULL) == (worked == SW_WORKED_ROUND));
        g_assert_cmpuint (count (words, "37"), ==, 1);
      }
}

/* No sentence twice in the list, and pieces that suit the yarn's weight. */
static void
test_pieces (void)
{
  static const struct
  {
    double metres;
    gboolean socks, blanket;
  } yarns[] = { { 120, FALSE, TRUE }, { 225, FALSE, TRUE }, { 400, TRUE, FALSE }, { 800, FALSE, FALSE } };

  for (gsize i = 0; i < G_N_ELEMENTS (yarns); i++)
    {
      g_autoptr (SwSketch) sketch = test_sketch (2);
      g_autoptr (SwForecast) forecast = NULL;
      g_autofree char *words = NULL;
      g_autofree char *list = NULL;
      g_auto (GStrv) lines = NULL;

      sketch->yarn.metres_per_100_g = yarns[i].metres;
      sketch->cloth.stitches_per_10cm = 30;
      forecast = run (sketch);
      words = sw_listing_written (forecast, FALSE);
      list = list_of (words);
      lines = g_strsplit (list, "\n", -1);
      g_assert_true (strstr (list, "ocks (") != NULL || !yarns[i].socks);
      g_assert_true (yarns[i].socks || strstr (list, "ocks (") == NULL);
      g_assert_true (yarns[i].blanket || strstr (list, "lanket (") == NULL);
      for (guint j = 2; lines[j] != NULL; j++)
        {
          const char *manner = strstr (lines[j], "): ");

          g_assert_true (manner == NULL || count (list, manner) == 1);
        }
    }
}

/* Who dyed it is said. */
static void
test_maker (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = NULL;
  g_autofree char *words = NULL;

  g_free (sketch->listing.maker);
  sketch->listing.maker = g_strdup ("Two Tides Studio");
  forecast = run (sketch);
  words = sw_listing_written (forecast, FALSE);
  assert_has (words, "Hand-dyed yarn by Two Tides Studio\n");
}

/* A forecast of a strand that goes once from one colour to another, in rows of @width. The arrays are the caller's. */
static SwForecast
gradient (float *labs, gsize n, gsize period, gsize width)
{
  SwForecast forecast = { .n_stitches = n, .n_skeins = 1, .row_height_cm = 0.33, .stitch_width_cm = 0.45, .lab_l = labs, .lab_a = labs + n, .lab_b = labs + 2 * n, .leg_x = labs + 3 * n, .leg_y = labs + 5 * n, .leg_z = labs + 7 * n };

  forecast.layout = (SwLayout){ .width = width, .n = n, .cast_on = 3 * width, .worked = SW_WORKED_ROUND };
  for (gsize i = 0; i < n; i++)
    {
      const double at = (double) (i % period) / (double) period;
      const SwLab lab = { 80 - 60 * at, 10 + 20 * at, 30 - 60 * at };
      const SwXyz xyz = sw_xyz_from_lab (lab);

      labs[i] = (float) lab.l;
      labs[n + i] = (float) lab.a;
      labs[2 * n + i] = (float) lab.b;
      for (gsize leg = 0; leg < 2; leg++)
        {
          labs[3 * n + 2 * i + leg] = (float) xyz.x;
          labs[5 * n + 2 * i + leg] = (float) xyz.y;
          labs[7 * n + 2 * i + leg] = (float) xyz.z;
        }
    }
  return forecast;
}

/* A skein that is one long gradient is knitted so wide that its end shows, too; one that comes round often is not. */
static void
test_wide (void)
{
  const gsize n = 13000;
  g_autofree float *labs = g_new (float, 9 * n);
  SwForecast once = gradient (labs, n, n, 90), wide;
  gsize rows;

  g_assert_true (sw_listing_cloth_is_wide (&once));
  sw_listing_cloth_widen (&once, 20, &wide);
  rows = (n - wide.layout.cast_on) / wide.layout.width;
  g_assert_cmpfloat ((double) rows * wide.row_height_cm, <=, 20);
  g_assert_cmpuint (rows * wide.layout.width, >, (n - wide.layout.cast_on) * 97 / 100);
  g_assert_cmpuint (sw_layout_rows (&wide.layout), ==, rows);

  once = gradient (labs, n, 500, 90);
  g_assert_false (sw_listing_cloth_is_wide (&once));
  once = gradient (labs, n, n, 200); /* 65 rows of 0.33 cm: all of it is in a swatch as it is */
  g_assert_false (sw_listing_cloth_is_wide (&once));
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
  g_test_add_func ("/listing-words/alt-skeins", test_alt_skeins);
  g_test_add_func ("/listing-words/own", test_own_words);
  g_test_add_func ("/listing-words/own-width", test_own_width);
  g_test_add_func ("/listing-words/pieces", test_pieces);
  g_test_add_func ("/listing-words/maker", test_maker);
  g_test_add_func ("/listing-words/wide", test_wide);
  return g_test_run ();
}
