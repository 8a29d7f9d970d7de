/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw-fixture.h"

#include "draw/sw-strip-geometry.h"
#include "draw/sw-strip-runs.h"

#include <math.h>
#include <string.h>

/* The strand strip: one loop's stretches of colour and its picture. */

/* Letters stand for colours far apart; a small letter for one that is just off its capital. */
static void
lab_of (char letter, float *l, float *a, float *b)
{
  static const struct
  {
    char letter;
    float l, a, b;
  } colours[] = { { 'R', 45, 55, 35 }, { 'W', 92, 0, 6 }, { 'B', 30, 5, -40 }, { 'G', 50, -40, 20 } };
  const gboolean off = g_ascii_islower (letter);

  for (gsize i = 0; i < G_N_ELEMENTS (colours); i++)
    if (colours[i].letter == g_ascii_toupper (letter))
      {
        *l = colours[i].l + (off ? 4 : 0);
        *a = colours[i].a + (off ? 3 : 0);
        *b = colours[i].b;
        return;
      }
  g_assert_not_reached ();
}

/* Each letter is ten places. Runs are told by their colours and lengths in letters. */
static const struct
{
  const char *name, *loop;
  gsize n;
  gsize ends[8]; /* in letters */
} rows[] = {
  { "one colour", "RRRRRRRRRR", 1, { 10 } },
  { "one colour with its shades", "RrRrRrRRrr", 1, { 10 } },
  { "two", "RRRRRBBBBB", 2, { 5, 10 } },
  { "palindrome", "RRBBBWWBBBRR", 5, { 2, 5, 7, 10, 12 } },
  { "shades do not part", "RrRBbBGGgg", 3, { 3, 6, 10 } },
};

static void
test_runs (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      float l[200], a[200], b[200];
      SwStripRun runs[200];
      const gsize n = 10 * strlen (rows[i].loop);
      gsize found;

      for (gsize k = 0; k < n; k++)
        lab_of (rows[i].loop[k / 10], &l[k], &a[k], &b[k]);
      l[n / 4] = 5; /* one odd place breaks no run */
      found = sw_strip_runs (l, a, b, n, runs);
      g_test_message ("%s", rows[i].name);
      g_assert_cmpuint (found, ==, rows[i].n);
      g_assert_cmpuint (runs[0].from, ==, 0);
      for (gsize k = 0; k < found; k++)
        {
          g_assert_cmpuint (runs[k].to, ==, 10 * rows[i].ends[k]);
          if (k > 0)
            g_assert_cmpuint (runs[k].from, ==, runs[k - 1].to);
        }
    }
}

/* The mean down the strand is the loop's own colour there. */
static void
test_colours (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = fixture_forecast (sketch);
  cairo_surface_t *surface = fixture_paint (sw_draw_strip, forecast, 1000, 120, &sw_look_plain);
  SwStripGeometry geometry;
  float x[120], y[120], z[120];

  sw_strip_geometry (forecast, 1000, 120, &geometry);
  sw_forecast_strip (forecast, 120, x, y, z);
  for (int cm = 4; cm < 118; cm += 3)
    {
      const int px = (int) sw_strip_to_px (&geometry, cm + 0.5);
      const SwLab want = sw_lab_from_xyz ((SwXyz){ (double) x[cm], (double) y[cm], (double) z[cm] });
      SwLab got;

      if (abs (cm - 60) < 2)
        continue; /* the fold's mark */
      got = fixture_mean (surface, px - 4, (int) ceil (geometry.strand.y), 9, (int) floor (geometry.strand.height));
      g_assert_cmpfloat (sw_ciede2000 (got, want), <, 4);
    }
  cairo_surface_destroy (surface);
}

/* A doubled skein's loop reads the same from both ends. */
static void
test_palindrome (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  SwDye *dye = test_add_dye (sketch, "Blue", 30, 80, 140);
  g_autoptr (SwForecast) forecast = NULL;
  cairo_surface_t *surface;
  SwStripGeometry geometry;

  test_add_band (sketch, dye, 20, 15, 40, 1);
  test_add_step (sketch, SW_STEP_SET)->minutes = 30;
  forecast = fixture_forecast (sketch);
  surface = fixture_paint (sw_draw_strip, forecast, 1000, 120, &sw_look_plain);
  sw_strip_geometry (forecast, 1000, 120, &geometry);
  for (int cm = 5; cm < 57; cm += 4)
    {
      const int left = (int) sw_strip_to_px (&geometry, cm), right = (int) sw_strip_to_px (&geometry, 120 - cm);
      const int top = (int) ceil (geometry.strand.y), height = (int) floor (geometry.strand.height);

      g_assert_cmpfloat (sw_ciede2000 (fixture_mean (surface, left - 6, top, 13, height), fixture_mean (surface, right - 6, top, 13, height)), <, 3);
    }
  cairo_surface_destroy (surface);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/strip/runs", test_runs);
  g_test_add_func ("/strip/colours", test_colours);
  g_test_add_func ("/strip/palindrome", test_palindrome);
  return g_test_run ();
}
