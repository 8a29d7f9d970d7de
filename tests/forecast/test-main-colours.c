/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "../sw-test-sketch.h"

#include "forecast/sw-colour-words.h"

#include <math.h>
#include <string.h>

/* CIEDE2000 that a palette may move by while a pour is moved by a millimetre: on average, and where a colour comes or goes. */
#define MEAN_WAY 1.2
#define MOST_WAY 8.0

static SwForecast *
run (SwForecaster *forecaster, const SwSketch *sketch)
{
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
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwForecast) forecast = run (forecaster, sketch);
  SwMainColour colours[SW_MOST_COLOURS];

  g_assert_cmpint (sw_main_colours (forecast, colours), ==, 1);
  g_assert_cmpfloat_with_epsilon (colours[0].share, 1, 1e-9);
  g_assert_cmpfloat (sw_ciede2000 (colours[0].lab, (SwLab){ (double) forecast->lab_l[0], (double) forecast->lab_a[0], (double) forecast->lab_b[0] }), <, 0.1);
}

/* Tones of one dye are told where there is nothing else, and never beside other colours. */
static void
test_tones (void)
{
  static const double labs[][4] = { { 27, 42, -14, 0.5 }, { 20, 32, -18, 0.5 }, { 70, 30, 70, 0 } };
  static const double beside[][4] = { { 27, 42, -14, 0.4 }, { 20, 32, -18, 0.4 }, { 70, 30, 70, 0.2 } };
  Strand tonal = strand_of (labs, 2), mixed = strand_of (beside, 3);
  SwMainColour colours[SW_MOST_COLOURS];

  g_assert_cmpint (sw_main_colours (&tonal.forecast, colours), ==, 2);
  g_assert_cmpfloat_with_epsilon (colours[0].share, 0.5, 0.06);
  g_assert_cmpint (sw_main_colours (&mixed.forecast, colours), ==, 2);
  g_assert_cmpfloat_with_epsilon (colours[0].share, 0.8, 0.01);
  g_free (tonal.legs);
  g_free (mixed.legs);
}

/* Where a dye thins out into another, that is no colour of its own. */
static void
test_passages (void)
{
  static const double labs[][4] = { { 30, -24, 6, 0.46 }, { 88, 0, 10, 0.46 }, { 59, -12, 8, 0.04 }, { 45, -18, 7, 0.04 } };
  Strand strand = strand_of (labs, 4);
  SwMainColour colours[SW_MOST_COLOURS];

  g_assert_cmpint (sw_main_colours (&strand.forecast, colours), ==, 2);
  g_assert_cmpfloat (sw_ciede2000 (colours[0].lab, (SwLab){ 30, -24, 6 }), <, 1.5);
  g_free (strand.legs);
}

/* How far the one palette's colours are from the other's, each by its share, CIEDE2000. */
static double
way_between (const SwMainColour *from, int n, const SwMainColour *to, int m)
{
  double sum = 0;

  for (int i = 0; i < n; i++)
    {
      double least = 100;

      for (int j = 0; j < m; j++)
        least = MIN (least, sw_ciede2000 (from[i].lab, to[j].lab));
      sum += from[i].share * least;
    }
  return sum;
}

/* A pour that is moved by a tenth of a centimetre at a time changes the palette little by little. */
static void
test_drags (void)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  const struct
  {
    double r, g, b, x, width, ml;
  } pours[] = { { 25, 92, 107, 10, 20, 30 }, { 115, 97, 158, 32, 18, 20 }, { 199, 82, 107, 46, 12, 16 }, { 38, 102, 140, 54, 8, 8 } };
  SwMainColour before[SW_MOST_COLOURS], now[SW_MOST_COLOURS];
  double most = 0, sum = 0;
  int n = 0, drags = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (pours); i++)
    test_add_band (sketch, test_add_dye (sketch, "dye", pours[i].r, pours[i].g, pours[i].b), pours[i].x, pours[i].width, pours[i].ml, 0.7);
  test_add_step (sketch, SW_STEP_SET)->minutes = 30;
  for (gsize i = 0; i < G_N_ELEMENTS (pours); i++)
    {
      SwStep *step = g_ptr_array_index (sketch->steps, i);

      n = 0;
      for (int d = 0; d < 30; d++)
        {
          g_autoptr (SwForecast) forecast = NULL;
          int m;

          step->x_cm = pours[i].x + 0.1 * d;
          forecast = run (forecaster, sketch);
          m = sw_main_colours (forecast, now);
          if (d > 0)
            {
              const double way = way_between (before, n, now, m) + way_between (now, m, before, n);

              most = MAX (most, way);
              sum += way;
              drags++;
            }
          n = m;
          memcpy (before, now, sizeof now);
        }
      step->x_cm = pours[i].x;
    }
  g_test_message ("%d drags: %.2f CIEDE2000 on average, %.2f at most", drags, sum / drags, most);
  g_assert_cmpfloat (sum / drags, <, MEAN_WAY);
  g_assert_cmpfloat (most, <, MOST_WAY);
}

/* Whatever the shares, the whole numbers sum to a hundred, and none is one off, but where small ones are raised to 1. */
static void
test_percents (void)
{
  for (int round = 0; round < 500; round++)
    {
      SwMainColour colours[SW_MOST_COLOURS];
      const int n = g_test_rand_int_range (1, SW_MOST_COLOURS + 1);
      int percents[SW_MOST_COLOURS], sum = 0;
      double all = 0, raised = 0;

      for (int i = 0; i < n; i++)
        all += colours[i].share = pow (g_test_rand_double_range (0.15, 1), 3);
      for (int i = 0; i < n; i++)
        {
          colours[i].share /= all;
          raised += MAX (1 - 100 * colours[i].share, 0);
        }
      sw_main_colour_percents (colours, n, percents);
      for (int i = 0; i < n; i++)
        {
          g_assert_cmpint (percents[i], >=, 1);
          g_assert_cmpfloat (fabs (percents[i] - 100 * colours[i].share), <, 1.0 + raised);
          sum += percents[i];
        }
      g_assert_cmpint (sum, ==, 100);
    }
}

/* A table of stripes and a palette call one colour the same. */
static void
test_one_name (void)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = run (forecaster, sketch);
  SwMainColour colours[SW_MOST_COLOURS];
  const int n = sw_main_colours (forecast, colours);
  g_auto (GStrv) names = sw_main_colour_names (forecast, colours, n);
  g_auto (GStrv) stripes = sw_forecast_stripe_names (forecast);
  int same = 0;

  for (int k = 0; k < n; k++)
    for (gsize i = 0; i < forecast->n_stripes; i++)
      {
        const SwLab stripe = { (double) forecast->stripes[i].l, (double) forecast->stripes[i].a, (double) forecast->stripes[i].b };

        if (sw_ciede2000 (stripe, colours[k].lab) > 2)
          continue;
        g_assert_cmpstr (stripes[i], ==, names[k]);
        same++;
      }
  g_assert_cmpint (same, >, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/main-colours/colours", test_colours);
  g_test_add_func ("/main-colours/accents", test_accents);
  g_test_add_func ("/main-colours/one-colour", test_one_colour);
  g_test_add_func ("/main-colours/tones", test_tones);
  g_test_add_func ("/main-colours/passages", test_passages);
  g_test_add_func ("/main-colours/drags", test_drags);
  g_test_add_func ("/main-colours/percents", test_percents);
  g_test_add_func ("/main-colours/one-name", test_one_name);
  return g_test_run ();
}
