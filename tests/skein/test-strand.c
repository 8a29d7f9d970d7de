/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "skein/sw-strand.h"

#include "tests/colour/published-table.h"

#include <math.h>

/* A sock skein: 100 g at 400 m, on a 1.5 m reel. */
static const SwReel sock_reel = {
  .length_cm = 40000,
  .circumference_cm = 150,
  .winding = SW_WINDING_TRAVERSED,
  .wraps_per_sweep = 12,
  .wander = 0.06,
  .seed = 7,
};

static SwReel
reel_with (double growth, SwWinding winding, double wander)
{
  SwReel reel = sock_reel;

  reel.growth = growth;
  reel.winding = winding;
  reel.wander = wander;
  return reel;
}

/* tex by its definition, ISO 1144, in the rows of units.csv that give one for a put-up. */
static void
test_tex_units (void)
{
  g_auto (PublishedTable) units = published_table_open ("units.csv");
  int found = 0;

  for (guint i = 0; i < published_table_n_rows (&units); i++)
    {
      const char *unit = published_table_text (&units, i, "unit");

      if (g_str_has_suffix (unit, " m per 100 g"))
        {
          g_assert_cmpfloat_with_epsilon (sw_tex (g_ascii_strtod (unit, NULL)), published_table_number (&units, i, "value"), 1e-4);
          found++;
        }
    }

  g_assert_cmpint (found, >=, 3);
}

/* The usual yarn weights: printed put-ups and tex are rounded to whole numbers. */
static void
test_tex_yarn_weights (void)
{
  g_auto (PublishedTable) weights = published_table_open ("yarn_weights.csv");
  int found = 0;

  for (guint i = 0; i < published_table_n_rows (&weights); i++)
    {
      double put_up = published_table_number (&weights, i, "m_per_100g_min");
      double tex = published_table_number (&weights, i, "tex_max");

      if (put_up == 0 || tex == 0)
        continue;
      g_assert_cmpfloat (sw_tex (put_up + 0.5) - 0.5, <=, tex);
      g_assert_cmpfloat (sw_tex (put_up - 0.5) + 0.5, >=, tex);
      found++;
    }

  g_assert_cmpint (found, >=, 6);
}

static void
test_length (void)
{
  g_assert_cmpfloat_with_epsilon (sw_strand_length (100, 400), 40000, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_strand_length (20, 425), 8500, 1e-9);

  /* A strand weighs its length times its tex: the two functions agree about that. */
  g_assert_cmpfloat_with_epsilon (sw_strand_length (63, 231) / 1e5 * sw_tex (231), 63, 1e-9);
}

/* Without growth it is plain division. */
static void
test_wraps_plain (void)
{
  SwReel reel = reel_with (0, SW_WINDING_TRAVERSED, 0);

  g_assert_cmpfloat_with_epsilon (sw_reel_wraps (&reel), 40000.0 / 150.0, 1e-9);

  for (double t = 0; t < reel.length_cm; t += 13.7)
    {
      gsize wrap;
      double loop, u, v;

      sw_reel_place (&reel, t, &wrap, &loop, &u, &v);
      g_assert_cmpuint (wrap, ==, (gsize) (t / 150));
      g_assert_cmpfloat_with_epsilon (loop, t / 150 - (double) wrap, 1e-9);
    }
}

/* With growth: against wraps laid end to end one by one. */
static void
test_wraps_grown (void)
{
  static const double growths[] = { 1e-12, 0.01, 0.1, 0.5 };

  for (gsize i = 0; i < G_N_ELEMENTS (growths); i++)
    {
      SwReel reel = reel_with (growths[i], SW_WINDING_TRAVERSED, 0);
      double wraps = sw_reel_wraps (&reel);
      double mean_wraps = reel.length_cm / (150 * (1 + growths[i] / 2));
      double start = 0;
      gsize n = 0;

      while (start < reel.length_cm)
        {
          double length = 150 * (1 + growths[i] * (double) n / mean_wraps);
          gsize wrap;
          double loop, u, v;

          sw_reel_place (&reel, start + 1e-6, &wrap, &loop, &u, &v);
          g_assert_cmpuint (wrap, ==, n);
          g_assert_cmpfloat_with_epsilon (loop, 1e-6 / length, 1e-9);
          sw_reel_place (&reel, start + 0.25 * length, &wrap, &loop, &u, &v);
          g_assert_cmpuint (wrap, ==, n);
          g_assert_cmpfloat_with_epsilon (loop, 0.25, 1e-9);
          if (start + length >= reel.length_cm)
            g_assert_cmpfloat_with_epsilon (wraps, (double) n + (reel.length_cm - start) / length, 1e-9);
          start += length;
          n++;
        }

      /* The last wrap is longer than the first by the growth, to within a wrap's share of it. */
      g_assert_cmpfloat (fabs (wraps - mean_wraps), <, 1);
    }
}

/* The traversing guide crosses the bundle once in a sweep, at an even pace, and turns at the edge. */
static void
test_traverse (void)
{
  SwReel reel = reel_with (0, SW_WINDING_TRAVERSED, 0);

  for (double sweeps = 0; sweeps < 6; sweeps += 0.13)
    {
      double expected = fmod (sweeps, 2) < 1 ? fmod (sweeps, 2) : 2 - fmod (sweeps, 2);
      gsize wrap;
      double loop, u, v;

      sw_reel_place (&reel, sweeps * 12 * 150, &wrap, &loop, &u, &v);
      g_assert_cmpfloat_with_epsilon (u, expected, 1e-9);
    }
}

/* Whatever the winding, the bundle's cross-section is covered evenly: 6 x 6 cells, chi square under what chance itself would give. */
static void
test_even_cover (gconstpointer data)
{
  SwWinding winding = (SwWinding) GPOINTER_TO_INT (data);
  static const double wanders[] = { 0, 0.06, 0.3 };

  for (gsize w = 0; w < G_N_ELEMENTS (wanders); w++)
    {
      SwReel reel = reel_with (0, winding, wanders[w]);
      double cells[6][6] = { { 0 } };
      double chi_square = 0, expected;
      gsize n = 0;

      /* A place in every wrap, each time at another part of the loop. */
      for (double t = 40; t < reel.length_cm; t += 150 * 1.01)
        {
          gsize wrap;
          double loop, u, v;

          sw_reel_place (&reel, t, &wrap, &loop, &u, &v);
          g_assert_cmpfloat (u, >=, 0);
          g_assert_cmpfloat (u, <=, 1);
          g_assert_cmpfloat (v, >=, 0);
          g_assert_cmpfloat (v, <=, 1);
          cells[MIN ((int) (6 * u), 5)][MIN ((int) (6 * v), 5)]++;
          n++;
        }

      expected = (double) n / 36;
      for (int i = 0; i < 6; i++)
        for (int j = 0; j < 6; j++)
          chi_square += (cells[i][j] - expected) * (cells[i][j] - expected) / expected;
      g_test_message ("wander %g: %zu wraps, chi square %.1f of 35 by chance", wanders[w], n, chi_square);
      /*
       * With no wander u and v are each cut evenly, which leaves 5 x 5 degrees of freedom (1 in 100 chances lie over
       * 44.3); with much of it hardly less even than chance itself (35, over 57.3).
       */
      g_assert_cmpfloat (chi_square, <, wanders[w] == 0 ? 44.3 : 57.3);
    }
}

/* Scattered places have no rhythm: how a wrap lies says nothing of how the second, eighth or fortieth after it lies. Chance gives 0.04. */
static void
test_no_rhythm (void)
{
  enum
  {
    WRAPS = 640,
    FAR = 40
  };
  SwReel reel = { .length_cm = 150 * WRAPS, .circumference_cm = 150, .winding = SW_WINDING_BY_HAND, .seed = 11 };
  double u[WRAPS], v[WRAPS], worst = 0;

  for (int i = 0; i < WRAPS; i++)
    {
      gsize wrap;
      double loop;

      sw_reel_place (&reel, 150 * (i + 0.5), &wrap, &loop, &u[i], &v[i]);
    }

  for (int far = 1; far <= FAR; far++)
    {
      double along_u = 0, along_v = 0;

      for (int i = 0; i + far < WRAPS; i++)
        {
          along_u += 12 * (u[i] - 0.5) * (u[i + far] - 0.5) / (WRAPS - far);
          along_v += 12 * (v[i] - 0.5) * (v[i + far] - 0.5) / (WRAPS - far);
        }
      worst = MAX (worst, MAX (fabs (along_u), fabs (along_v)));
    }

  g_test_message ("largest correlation of 1 .. 40 wraps: %.3f", worst);
  g_assert_cmpfloat (worst, <, 0.16);
}

/* The wander has the sd that it says and is correlated over an eighth of the loop. */
static void
test_wander_size (void)
{
  /* A guide that never gets anywhere, in the middle: what is left of u is the wander. */
  SwReel reel = { .length_cm = 4e6, .circumference_cm = 150, .winding = SW_WINDING_TRAVERSED, .wraps_per_sweep = 2.0 * 4e6 / 150, .wander = 0.05, .seed = 3 };
  double sum = 0, squares = 0, products = 0;
  gsize n = 0;

  for (double t = 4e5; t < 3.6e6; t += 61.7)
    {
      double steady = t / 150 / reel.wraps_per_sweep, later = (t + 150 / 8.0) / 150 / reel.wraps_per_sweep;
      gsize wrap;
      double loop, u1, u2, v;

      sw_reel_place (&reel, t, &wrap, &loop, &u1, &v);
      sw_reel_place (&reel, t + 150 / 8.0, &wrap, &loop, &u2, &v);
      u1 -= steady;
      u2 -= later;
      if (steady > 0.25 && steady < 0.4)
        {
          sum += u1;
          squares += u1 * u1;
          products += u1 * u2;
          n++;
        }
    }

  g_test_message ("%zu places: mean %.4f, sd %.4f, correlation after C/8 %.3f", n, sum / (double) n, sqrt (squares / (double) n), products / squares);
  g_assert_cmpfloat (fabs (sum / (double) n), <, 0.002);
  g_assert_cmpfloat_with_epsilon (sqrt (squares / (double) n), 0.05, 0.0015);
  g_assert_cmpfloat_with_epsilon (products / squares, exp (-1), 0.05);
}

/* Within a wrap the strand does not jump: neighbouring places are near each other. */
static void
test_continuous (void)
{
  static const SwWinding windings[] = { SW_WINDING_TRAVERSED, SW_WINDING_BY_HAND };

  for (gsize i = 0; i < G_N_ELEMENTS (windings); i++)
    {
      SwReel reel = reel_with (0.05, windings[i], 0.06);
      gsize last_wrap = 0;
      double last_u = 0, last_v = 0, worst = 0;

      for (double t = 0; t < reel.length_cm; t += 0.1)
        {
          gsize wrap;
          double loop, u, v;

          sw_reel_place (&reel, t, &wrap, &loop, &u, &v);
          if (t > 0 && wrap == last_wrap)
            worst = MAX (worst, MAX (fabs (u - last_u), fabs (v - last_v)));
          last_wrap = wrap;
          last_u = u;
          last_v = v;
        }

      g_test_message ("largest step in a millimetre of strand: %.5f of the bundle", worst);
      g_assert_cmpfloat (worst, <, 0.004);
    }
}

/* Seeds matter, order does not: many at once, forwards or shuffled, are the places asked for one by one. */
static void
test_many_at_once (void)
{
  SwReel reel = reel_with (0.03, SW_WINDING_BY_HAND, 0.06), other = reel;
  SwLay lay = { .runs = 4, .folding = SW_FOLDING_STACKED, .lanes = 3, .lane = 1 };
  enum
  {
    N = 2000
  };
  double t[N];
  float x[N], y[N], z[N];
  gsize differing = 0;

  for (int i = 0; i < N; i++)
    t[i] = reel.length_cm * (i < N / 2 ? i / (N / 2.0) : g_test_rand_double ());
  sw_strand_places (&reel, &lay, t, N, x, y, z);

  other.seed++;
  for (int i = 0; i < N; i++)
    {
      gsize wrap;
      double loop, u, v, px, py, pz;

      sw_reel_place (&reel, t[i], &wrap, &loop, &u, &v);
      sw_lay_place (&lay, loop, u, v, &px, &py, &pz);
      g_assert_cmpfloat (x[i], ==, (float) px);
      g_assert_cmpfloat (y[i], ==, (float) py);
      g_assert_cmpfloat (z[i], ==, (float) pz);

      sw_reel_place (&other, t[i], &wrap, &loop, &u, &v);
      sw_lay_place (&lay, loop, u, v, &px, &py, &pz);
      differing += y[i] != (float) py;
    }

  g_assert_cmpuint (differing, >, N * 9 / 10);
}

/* The lay as the model draws it: run by run, forward and back. */
static void
test_lay_runs (void)
{
  static const struct
  {
    int runs;
    SwFolding folding;
    double loop, u, v, x, y, z;
  } rows[] = {
    { 1, SW_FOLDING_STACKED, 0.25, 0.3, 0.8, 0.25, 0.3, 0.8 },
    { 2, SW_FOLDING_STACKED, 0.25, 0.3, 0.8, 0.5, 0.3, 0.4 },
    { 2, SW_FOLDING_STACKED, 0.75, 0.3, 0.8, 0.5, 0.3, 0.9 },
    { 2, SW_FOLDING_STACKED, 0.60, 0.3, 0.8, 0.8, 0.3, 0.9 },
    { 2, SW_FOLDING_SIDE_BY_SIDE, 0.60, 0.3, 0.8, 0.8, 0.65, 0.8 },
    { 4, SW_FOLDING_SIDE_BY_SIDE, 0.80, 0.5, 0.1, 0.8, 0.875, 0.1 },
    { 4, SW_FOLDING_STACKED, 1.00, 0.5, 0.1, 0.0, 0.5, 0.775 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      SwLay lay = { .runs = rows[i].runs, .folding = rows[i].folding, .lanes = 1 };
      double x, y, z;

      sw_lay_place (&lay, rows[i].loop, rows[i].u, rows[i].v, &x, &y, &z);
      g_assert_cmpfloat_with_epsilon (x, rows[i].x, 1e-12);
      g_assert_cmpfloat_with_epsilon (y, rows[i].y, 1e-12);
      g_assert_cmpfloat_with_epsilon (z, rows[i].z, 1e-12);
    }
}

/* A doubled skein is met by a straight line twice a loop, mirrored: x is the same a quarter before and after the fold. */
static void
test_lay_palindrome (void)
{
  static const int runs[] = { 2, 4, 6 };

  for (gsize i = 0; i < G_N_ELEMENTS (runs); i++)
    for (double loop = 0.001; loop < 1; loop += 0.01)
      {
        SwLay lay = { .runs = runs[i], .folding = SW_FOLDING_STACKED, .lanes = 1 };
        double x, mirrored, y, z;

        sw_lay_place (&lay, loop, 0.5, 0.5, &x, &y, &z);
        sw_lay_place (&lay, 1 - loop, 0.5, 0.5, &mirrored, &y, &z);
        g_assert_cmpfloat_with_epsilon (x, mirrored, 1e-9);
      }
}

/* Lanes and runs share the width without overlap and without a gap; runs stacked share the depth so. */
static void
test_lay_lanes (void)
{
  for (int lanes = 1; lanes <= 4; lanes++)
    for (int runs = 1; runs <= 4; runs *= 2)
      for (int lane = 0; lane < lanes; lane++)
        for (int run = 0; run < runs; run++)
          for (int edge = 0; edge <= 1; edge++)
            {
              SwLay beside = { .runs = runs, .folding = SW_FOLDING_SIDE_BY_SIDE, .lanes = lanes, .lane = lane };
              SwLay stacked = { .runs = runs, .folding = SW_FOLDING_STACKED, .lanes = lanes, .lane = lane };
              double loop = (run + 0.5) / runs, x, y, z;

              sw_lay_place (&beside, loop, edge, 0.25, &x, &y, &z);
              g_assert_cmpfloat_with_epsilon (y, (lane * runs + run + edge) / (double) (lanes * runs), 1e-12);
              g_assert_cmpfloat (z, ==, 0.25);

              sw_lay_place (&stacked, loop, 0.25, edge, &x, &y, &z);
              g_assert_cmpfloat_with_epsilon (z, (run + edge) / (double) runs, 1e-12);
              g_assert_cmpfloat_with_epsilon (y, (lane + 0.25) / lanes, 1e-12);
            }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/skein/tex/units", test_tex_units);
  g_test_add_func ("/skein/tex/yarn-weights", test_tex_yarn_weights);
  g_test_add_func ("/skein/length", test_length);
  g_test_add_func ("/skein/reel/wraps-plain", test_wraps_plain);
  g_test_add_func ("/skein/reel/wraps-grown", test_wraps_grown);
  g_test_add_func ("/skein/reel/traverse", test_traverse);
  g_test_add_data_func ("/skein/reel/even-cover/traversed", GINT_TO_POINTER (SW_WINDING_TRAVERSED), test_even_cover);
  g_test_add_data_func ("/skein/reel/even-cover/by-hand", GINT_TO_POINTER (SW_WINDING_BY_HAND), test_even_cover);
  g_test_add_func ("/skein/reel/no-rhythm", test_no_rhythm);
  g_test_add_func ("/skein/reel/wander-size", test_wander_size);
  g_test_add_func ("/skein/reel/continuous", test_continuous);
  g_test_add_func ("/skein/many-at-once", test_many_at_once);
  g_test_add_func ("/skein/lay/runs", test_lay_runs);
  g_test_add_func ("/skein/lay/palindrome", test_lay_palindrome);
  g_test_add_func ("/skein/lay/lanes", test_lay_lanes);
  return g_test_run ();
}
