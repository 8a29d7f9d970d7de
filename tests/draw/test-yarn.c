/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cloth/sw-gauge.h"
#include "draw/sw-loop.h"
#include "draw/sw-yarn-light.h"

/* The strand's light, and the loops it lies in. */

/* The mean over the visible half of a strand with this course. @from, @to: part of it across. */
static SwYarnShade
mean_shade (const SwYarnLight *yarn, float x, float y, float from, float to)
{
  SwYarnShade sum = { 0, 0 };

  for (int i = 0; i < 400; i++)
    for (int j = 0; j < 40; j++)
      {
        const SwYarnPoint point = { (float) i * 0.05f, from + (to - from) * ((float) j + 0.5f) / 40, { x, y, 0 }, 7 };
        const SwYarnShade shade = sw_yarn_light_at (yarn, &point);

        sum.light += shade.light / 16000;
        sum.dye += shade.dye / 16000;
      }
  return sum;
}

static const SwFibre fibres[] = { SW_FIBRE_SUPERWASH_WOOL, SW_FIBRE_WOOL, SW_FIBRE_SUPERWASH_NYLON, SW_FIBRE_NYLON, SW_FIBRE_SILK };

/* Whichever way a strand runs, it is lighter towards the upper left; light and dye are near the colour's own in the mean. */
static void
test_light_side (void)
{
  for (gsize f = 0; f < G_N_ELEMENTS (fibres); f++)
    for (int plies = 1; plies < 7; plies++)
      {
        SwYarnLight yarn;

        sw_yarn_light_init (&yarn, fibres[f], plies, 30);
        for (int degrees = 0; degrees < 360; degrees += 15)
          {
            const float x = cosf ((float) degrees * 0.017453f), y = sinf ((float) degrees * 0.017453f);
            const SwYarnShade all = mean_shade (&yarn, x, y, -0.98f, 0.98f);
            const SwYarnShade right = mean_shade (&yarn, x, y, -0.95f, -0.5f), left = mean_shade (&yarn, x, y, 0.5f, 0.95f);
            /* To the left of the course: how much of it looks up and to the left. */
            const float towards = -y * -0.637f + x * 0.771f;

            g_assert_cmpfloat (all.light, >, 0.5);
            g_assert_cmpfloat (all.light, <, 1.3);
            g_assert_cmpfloat_with_epsilon (all.dye, 0, 0.03);
            if (towards > 0.3f)
              g_assert_cmpfloat (left.light, >, right.light);
            if (towards < -0.3f)
              g_assert_cmpfloat (left.light, <, right.light);
          }
      }
}

/* A strand in a drawing that is turned afterwards is lit as the turned strand. */
static void
test_turned (void)
{
  static const float courses[4][2] = { { 0.6f, 0.8f }, { -0.8f, 0.6f }, { -0.6f, -0.8f }, { 0.8f, -0.6f } };

  for (int quarters = 0; quarters < 4; quarters++)
    {
      SwYarnLight yarn, turned;
      /* Before so many quarter turns clockwise the course was as many the other way round. */
      const SwYarnPoint seen = { 1.3f, 0.4f, { 0.6f, 0.8f, 0 }, 3 };
      const SwYarnPoint drawn = { 1.3f, 0.4f, { courses[quarters][0], courses[quarters][1], 0 }, 3 };

      sw_yarn_light_init (&yarn, SW_FIBRE_WOOL, 4, 30);
      turned = yarn;
      sw_yarn_light_turn (&turned, quarters);
      g_assert_cmpfloat_with_epsilon (sw_yarn_light_at (&turned, &drawn).light, sw_yarn_light_at (&yarn, &seen).light, 1e-5);
    }
}

/* The brightest twentieth over the mean. */
static float
gloss (SwFibre fibre)
{
  SwYarnLight yarn;
  float most = 0;

  sw_yarn_light_init (&yarn, fibre, 1, 30);
  yarn.grain = 0;
  for (int j = 0; j < 40; j++)
    most = MAX (most, mean_shade (&yarn, 1, 0, -0.95f + (float) j * 0.0475f, -0.9475f + (float) j * 0.0475f).light);
  return most / mean_shade (&yarn, 1, 0, -0.98f, 0.98f).light;
}

static void
test_fibres (void)
{
  SwYarnLight wool, silk, single, small;

  g_assert_cmpfloat (gloss (SW_FIBRE_SILK), >, gloss (SW_FIBRE_NYLON));
  g_assert_cmpfloat (gloss (SW_FIBRE_NYLON), >, gloss (SW_FIBRE_SUPERWASH_WOOL));
  g_assert_cmpfloat (gloss (SW_FIBRE_SUPERWASH_WOOL), >, gloss (SW_FIBRE_WOOL));
  sw_yarn_light_init (&wool, SW_FIBRE_WOOL, 3, 30);
  sw_yarn_light_init (&silk, SW_FIBRE_SILK, 3, 30);
  sw_yarn_light_init (&single, SW_FIBRE_WOOL, 1, 30);
  sw_yarn_light_init (&small, SW_FIBRE_WOOL, 3, 2);
  g_assert_cmpint (sw_yarn_hairs (&wool, 10), >, sw_yarn_hairs (&silk, 10));
  g_assert_cmpint (sw_yarn_hairs (&single, 10), >, sw_yarn_hairs (&wool, 10));
  g_assert_cmpint (sw_yarn_hairs (&small, 10), ==, 0);
  g_assert_cmpfloat (small.relief, ==, 0);
  for (int i = 0; i < 100; i++)
    {
      const SwYarnHair hair = sw_yarn_hair (&wool, 5, i), again = sw_yarn_hair (&wool, 5, i);

      g_assert_cmpmem (&hair, sizeof hair, &again, sizeof again);
      g_assert_true (hair.along >= 0 && hair.along < 1 && (hair.side == 1 || hair.side == -1) && hair.length <= wool.hair);
    }
}

/* Wraps to the inch that yarn is sold by: 12 to 20 for sock yarn of 400 m to 100 g, 7 to 11 for 170 m. Common practice, no source. */
static void
test_diameter (void)
{
  g_assert_cmpfloat (2.54 / sw_yarn_diameter_cm (400), >, 12);
  g_assert_cmpfloat (2.54 / sw_yarn_diameter_cm (400), <, 20);
  g_assert_cmpfloat (2.54 / sw_yarn_diameter_cm (170), >, 7);
  g_assert_cmpfloat (2.54 / sw_yarn_diameter_cm (170), <, 13);
}

static const SwLoopWander plain = { 0 };

/* The loop holds the yarn that Munden's relation gives the stitch, and is as wide as one. */
static void
test_length (void)
{
  for (int state = SW_STATE_DRY; state <= SW_STATE_WET; state++)
    {
      const SwMunden *munden = sw_munden ((SwFabricState) state);
      const double length = munden->k_w, row = munden->k_w / munden->k_c; /* in stitch widths */

      for (double diameter = 0.3; diameter < 0.5; diameter += 0.04)
        {
          const SwLoopSides sides = { 1, 1, 1, 1 };
          SwTubePoint points[SW_LOOP_POINTS];
          SwLoop loop;

          sw_loop_init (&loop, row, length, diameter);
          g_assert_cmpfloat_with_epsilon (sw_loop_length (&loop), length, 0.01 * length);
          sw_loop_trace (&loop, &sides, &plain, 0, 0, points);
          g_assert_cmpfloat_with_epsilon (points[0].x, -0.5, 1e-5);
          g_assert_cmpfloat_with_epsilon (points[SW_LOOP_POINTS - 1].x, 0.5, 1e-5);
          for (int i = 0; i < SW_LOOP_POINTS; i++)
            {
              const SwTubePoint *mirror = &points[SW_LOOP_POINTS - 1 - i];

              g_assert_cmpfloat_with_epsilon (points[i].x, -mirror->x, 1e-5);
              g_assert_cmpfloat_with_epsilon (points[i].y, mirror->y, 1e-5);
              g_assert_cmpfloat_with_epsilon (points[i].z, mirror->z, 1e-5);
              g_assert_cmpfloat_with_epsilon (points[i].place, 1 - mirror->place, 1e-4);
            }
        }
    }
}

/* Where pieces a-b and c-d cross in the picture; @high: how much higher the first lies there. */
static gboolean
cross (const SwTubePoint *a, const SwTubePoint *c, double *on_first, double *high)
{
  const double ax = a[1].x - a[0].x, ay = a[1].y - a[0].y, cx = c[1].x - c[0].x, cy = c[1].y - c[0].y;
  const double det = ax * cy - ay * cx, dx = c[0].x - a[0].x, dy = c[0].y - a[0].y;
  double u, v;

  if (fabs (det) < 1e-12)
    return FALSE;
  u = (dx * cy - dy * cx) / det;
  v = (dx * ay - dy * ax) / det;
  if (u < 0 || u >= 1 || v < 0 || v >= 1)
    return FALSE;
  *on_first = a[0].place + u * (a[1].place - a[0].place);
  *high = a[0].z + u * (a[1].z - a[0].z) - (c[0].z + v * (c[1].z - c[0].z));
  return TRUE;
}

/*
 * A stitch hangs in the one below: it crosses it four times. Pulled through
 * to the front, its legs lie over the head of the one below and its feet
 * beneath that one's legs; a purl stitch the other way round. So it goes
 * under, over, over, under, whatever hangs in its own head.
 */
static void
test_over_and_under (void)
{
  SwLoop loop;

  sw_loop_init (&loop, 0.76, 3.8, 0.4);
  for (int kinds = 0; kinds < 8; kinds++)
    {
      const float below = (kinds & 1) != 0 ? 1 : -1, own = (kinds & 2) != 0 ? 1 : -1, above = (kinds & 4) != 0 ? 1 : -1;
      const SwLoopSides upper_sides = { own, above, own, own }, lower_sides = { below, own, below, below };
      SwTubePoint upper[SW_LOOP_POINTS], lower[SW_LOOP_POINTS];
      double places[8], highs[8];
      int n = 0;

      sw_loop_trace (&loop, &upper_sides, &plain, 0, 1, upper);
      sw_loop_trace (&loop, &lower_sides, &plain, 0, 0, lower);
      for (int i = 0; i + 1 < SW_LOOP_POINTS; i++)
        for (int j = 0; j + 1 < SW_LOOP_POINTS; j++)
          if (n < 8 && cross (&upper[i], &lower[j], &places[n], &highs[n]))
            n++;
      g_assert_cmpint (n, ==, 4);
      for (int i = 0; i < 4; i++)
        {
          const double over = (i == 1 || i == 2 ? 1 : -1) * (double) own;

          if (i > 0)
            g_assert_cmpfloat (places[i], >, places[i - 1]);
          g_assert_cmpfloat (highs[i] * over, >, 0);
        }
    }
}

/* What lies higher wins, wherever it is drawn first, and a strand is as wide as it should be. */
static void
test_tube (void)
{
  const SwTubeGrid grid = { 60, 60, -1, 1, 2.0f / 59 };
  const SwTubePoint flat[] = { { -2, 0, 0, 0.3f, 0 }, { 2, 0, 0, 0.3f, 1 } }, high[] = { { 0, -2, 0.5f, 0.2f, 0 }, { 0, 2, 0.5f, 0.2f, 1 } };
  float z[2][3600], place[3600], across[3600];
  int covered = 0;

  for (int order = 0; order < 2; order++)
    {
      for (int i = 0; i < 3600; i++)
        z[order][i] = SW_TUBE_NOTHING;
      sw_tube_raster (order == 0 ? flat : high, 2, &grid, z[order], place, across);
      sw_tube_raster (order == 0 ? high : flat, 2, &grid, z[order], place, across);
    }
  g_assert_cmpmem (z[0], sizeof z[0], z[1], sizeof z[1]);
  for (int i = 0; i < 3600; i++)
    covered += z[0][i] > SW_TUBE_NOTHING;
  g_assert_cmpfloat_with_epsilon (covered / 3600.0, 0.3 + 0.2 - 0.06, 0.02);
  g_assert_cmpfloat_with_epsilon (z[0][30 * 60 + 30], 0.7, 0.01);
  /* Above the middle is to the left of a strand that runs to the right. */
  g_assert_cmpfloat (across[25 * 60 + 5], >, 0);
}

/* Between two purl wales a knit wale hides the greater part of them and stands before them; sinkers still go on into each other. */
static void
test_rib (void)
{
  const SwLoopSides knit = { 1, 1, -1, -1 }, purl = { -1, -1, 1, 1 };
  SwTubePoint front[SW_LOOP_POINTS], back[SW_LOOP_POINTS];
  float wide[2] = { 0 }, lowest = HUGE_VALF, highest = -HUGE_VALF;
  SwLoop loop;

  sw_loop_init (&loop, 0.76, 3.8, 0.4);
  sw_loop_trace (&loop, &knit, &plain, 0, 0, front);
  sw_loop_trace (&loop, &purl, &plain, 1, 0, back);
  g_assert_cmpfloat_with_epsilon (front[SW_LOOP_POINTS - 1].x, back[0].x, 1e-4);
  g_assert_cmpfloat_with_epsilon (front[SW_LOOP_POINTS - 1].y, back[0].y, 1e-4);
  g_assert_cmpfloat_with_epsilon (front[SW_LOOP_POINTS - 1].z, back[0].z, 1e-4);
  g_assert_cmpfloat_with_epsilon (front[SW_LOOP_POINTS - 1].radius, back[0].radius, 1e-4);
  for (int i = SW_LOOP_POINTS / 5; i < SW_LOOP_POINTS - SW_LOOP_POINTS / 5; i++)
    {
      wide[0] = MAX (wide[0], 2 * (fabsf (front[i].x) + front[i].radius));
      wide[1] = MAX (wide[1], 2 * (fabsf (back[i].x - 1) + back[i].radius));
      lowest = MIN (lowest, front[i].z + front[i].radius);
      highest = MAX (highest, back[i].z + back[i].radius);
    }
  g_test_message ("knit %.2f wide of 2, purl %.2f; surfaces %.2f before %.2f", (double) wide[0], (double) wide[1], (double) lowest, (double) highest);
  g_assert_cmpfloat (wide[0], >, 1.5);
  g_assert_cmpfloat (wide[0], <, 2); /* the next knit wale is two wales on */
  g_assert_cmpfloat (lowest, >, highest);
}

/* Single fibres show from near only, keep the colour's mean, and do not come back after any stretch of the strand. */
static void
test_single_fibres (void)
{
  SwYarnLight small, large, without;
  float lights[600], likest = -1;

  sw_yarn_light_init (&small, SW_FIBRE_WOOL, 4, 17);
  g_assert_cmpfloat_with_epsilon (small.single, 0, 1e-9);
  sw_yarn_light_init (&large, SW_FIBRE_WOOL, 4, 34);
  g_assert_cmpfloat (large.single, >, 0.1);
  without = large;
  without.single = 0;
  g_assert_cmpfloat_with_epsilon (mean_shade (&large, 1, 0, -0.98f, 0.98f).light, mean_shade (&without, 1, 0, -0.98f, 0.98f).light, 0.01);
  for (int i = 0; i < 600; i++)
    {
      const SwYarnPoint point = { (float) i * 0.03f, 0.2f, { 1, 0, 0 }, 7 };

      lights[i] = sw_yarn_light_at (&large, &point).light / sw_yarn_light_at (&without, &point).light - 1;
    }
  for (int lag = 30; lag < 400; lag++)
    {
      float both = 0, one = 0, other = 0;

      for (int i = 0; i + lag < 600; i++)
        {
          both += lights[i] * lights[i + lag];
          one += lights[i] * lights[i];
          other += lights[i + lag] * lights[i + lag];
        }
      likest = MAX (likest, both / sqrtf (one * other));
    }
  g_test_message ("likest to itself further on: %.2f", (double) likest);
  g_assert_cmpfloat (likest, <, 0.6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/yarn/light-side", test_light_side);
  g_test_add_func ("/yarn/turned", test_turned);
  g_test_add_func ("/yarn/fibres", test_fibres);
  g_test_add_func ("/yarn/diameter", test_diameter);
  g_test_add_func ("/loop/length", test_length);
  g_test_add_func ("/loop/over-and-under", test_over_and_under);
  g_test_add_func ("/tube/over", test_tube);
  g_test_add_func ("/loop/rib", test_rib);
  g_test_add_func ("/yarn/single-fibres", test_single_fibres);
  return g_test_run ();
}
