/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The demo colourways are whole, tell their scenario and could be dyed. */
#include "config.h"

#include "files/sw-colourway.h"
#include "forecast/sw-colour-words.h"

#include <string.h>

static double
poured_grams (const SwSketch *sketch, guint dye)
{
  double grams = 0;

  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = g_ptr_array_index (sketch->steps, i);
      const SwDye *used = sw_sketch_find_dye (sketch, step->dye);

      if (!sw_step_is_pour (step) || (dye != 0 && step->dye != dye))
        continue;
      grams += step->dry ? step->grams : step->amount_ml * used->stock_percent / 100;
    }
  return grams;
}

/* Depths of shade from a few specks on bare wool to a full dark: common practice, no source. */
static void
check_depth (const SwSketch *sketch)
{
  double fibre = sketch->yarn.mass_g * (double) sketch->lay.skeins;
  double depth = 100 * poured_grams (sketch, 0) / fibre;

  g_assert_cmpfloat (depth, >=, 0.1);
  g_assert_cmpfloat (depth, <=, 2.0);
  for (guint i = 0; i < sketch->dyes->len; i++)
    {
      const SwDye *dye = g_ptr_array_index (sketch->dyes, i);

      g_assert_cmpfloat (poured_grams (sketch, dye->id), >, 0);
      g_assert_cmpuint (strlen (dye->name), >, 0);
    }
}

/* Every pour lies on the skein and the skein in the pan. */
static void
check_places (const SwSketch *sketch)
{
  double length = sw_sketch_lay_length (sketch);
  double width = sw_sketch_lay_width (sketch);

  g_assert_cmpfloat (length, <=, sketch->lay.pan_length_cm);
  g_assert_cmpfloat (width, <=, sketch->lay.pan_width_cm);
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = g_ptr_array_index (sketch->steps, i);

      if (!sw_step_is_pour (step))
        continue;
      g_assert_cmpfloat (step->x_cm, >=, 0);
      g_assert_cmpfloat (step->x_cm, <=, length);
      g_assert_cmpfloat (step->y_cm, >=, 0);
      g_assert_cmpfloat (step->y_cm, <=, width);
    }
}

static void
test_demo (gconstpointer data)
{
  const char *path = data;
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwSketch) sketch = sw_colourway_load (file, NULL, NULL, &error);
  g_autofree char *text = NULL;
  g_autofree char *printed = NULL;
  const SwStep *last;

  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  printed = sw_colourway_print (sketch);
  g_assert_cmpstr (text, ==, printed); /* as the program itself would save it */
  g_assert_cmpuint (strlen (sketch->title), >, 0);
  g_assert_cmpuint (strlen (sketch->notes), >, 200);
  check_depth (sketch);
  check_places (sketch);
  last = g_ptr_array_index (sketch->steps, sketch->steps->len - 1);
  g_assert_cmpint (last->kind, ==, SW_STEP_SET);
  g_assert_null (sketch->extras);
}

/* What a demo's notes promise of its cloth. */
static const struct
{
  const char *name;
  gint64 width; /* 0 as it is */
  SwVerdict verdict;
} promises[] = {
  { "deckchair", 0, SW_VERDICT_STRIPES },
  { "first-light", 0, SW_VERDICT_STRIPES }, /* a gradient: one colour lasts for many rows */
  { "lamplighters-walk", 64, SW_VERDICT_DRIFTS },
  { "lamplighters-walk", 61, SW_VERDICT_COLUMNS },
  { "plumb-line", 100, SW_VERDICT_COLUMNS },
  { "plumb-line", 102, SW_VERDICT_DRIFTS },
  { "rock-pool", 0, SW_VERDICT_SCATTERS },
  { "sweet-shop-window", 0, SW_VERDICT_SCATTERS },
};

static SwSketch *
load_demo (const char *name)
{
  g_autofree char *file_name = g_strconcat (name, ".colourway", NULL);
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", "demos", file_name, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  SwSketch *sketch = sw_colourway_load (file, NULL, NULL, &error);

  g_assert_no_error (error);
  return sketch;
}

static void
test_promises (void)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();

  g_test_summary ("The forecast keeps what the notes promise, and the bath is clear in the end (common practice: under 2 % left)");

  for (gsize i = 0; i < G_N_ELEMENTS (promises); i++)
    {
      g_autoptr (SwSketch) sketch = load_demo (promises[i].name);
      g_autoptr (SwForecast) forecast = NULL;
      g_autoptr (GError) error = NULL;

      if (promises[i].width > 0)
        sketch->cloth.width_stitches = promises[i].width;
      forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);
      g_assert_no_error (error);
      g_assert_cmpfloat (forecast->clear_percent, >, 98);
      if (forecast->pooling.verdict != promises[i].verdict)
        g_error ("%s at %d stitches: %s", promises[i].name, (int) forecast->pooling.width, sw_verdict_name (forecast->pooling.verdict));
    }
}

static void
test_main_colours (void)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  static const char *const names_of[] = { "bramble-jam", "deckchair", "first-light", "lamplighters-walk", "plumb-line", "rock-pool", "sweet-shop-window" };

  g_test_summary ("A palette's colours differ, and so do their names; specks of another hue have a place in it");

  for (gsize i = 0; i < G_N_ELEMENTS (names_of); i++)
    {
      g_autoptr (SwSketch) sketch = load_demo (names_of[i]);
      g_autoptr (GError) error = NULL;
      g_autoptr (SwForecast) forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);
      SwMainColour colours[SW_MOST_COLOURS];
      const int n = sw_main_colours (forecast, colours);
      g_auto (GStrv) names = sw_main_colour_names (forecast, colours, n);

      g_assert_no_error (error);
      for (int j = 0; j < n; j++)
        for (int k = 0; k < j; k++)
          {
            g_assert_cmpfloat (sw_ciede2000 (colours[j].lab, colours[k].lab), >, (n == 2 ? SW_TONES_APART : SW_COLOURS_APART) - 1e-9);
            g_assert_cmpstr (names[j], !=, names[k]);
          }
      if (g_str_equal (names_of[i], "lamplighters-walk"))
        g_assert_true (g_strv_contains ((const char *const *) names, "orange"));
    }
}

static void
test_pools (void)
{
  g_autoptr (SwSketch) sketch = load_demo ("plumb-line");

  g_test_summary ("The hat that pools on purpose takes one loop of the skein for each round");

  g_assert_cmpint (sketch->cloth.worked, ==, SW_WORKED_ROUND);
  g_assert_cmpint (sketch->cloth.width_stitches, ==, 100);
  g_assert_cmpfloat_with_epsilon (sketch->reel.circumference_cm / sketch->cloth.stitch_length_cm, 100.0, 1e-9);
}

int
main (int argc, char *argv[])
{
  g_autofree char *folder = NULL;
  g_autoptr (GDir) dir = NULL;
  const char *name;
  guint n = 0;

  g_test_init (&argc, &argv, NULL);
  folder = g_test_build_filename (G_TEST_DIST, "..", "data", "demos", NULL);
  dir = g_dir_open (folder, 0, NULL);
  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *test_path = g_strconcat ("/files/demos/", name, NULL);

      g_test_add_data_func_full (test_path, g_build_filename (folder, name, NULL), test_demo, g_free);
      n++;
    }
  g_assert_cmpuint (n, >=, 6);
  g_test_add_func ("/files/demos/main-colours", test_main_colours);
  g_test_add_func ("/files/demos/pools-on-purpose", test_pools);
  g_test_add_func ("/files/demos/promises", test_promises);
  return g_test_run ();
}
