/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-deposit.h"

#include "tests/bath/bath-checks.h"

static const SwGrid pan = { 60, 20, 8, 30.0, 10.0, 4.0 };

#define N_CELLS (60 * 20)

static double plane[N_CELLS], other[N_CELLS];

static double
sum_of (const double *cells)
{
  double sum = 0.0;

  for (int i = 0; i < N_CELLS; i++)
    sum += cells[i];
  return sum;
}

/* Mean of @along x + @across y over the dye. */
static double
mean_place (const double *cells, double along, double across)
{
  double sum = 0.0;

  for (int i = 0; i < N_CELLS; i++)
    sum += cells[i] * (along * (i % 60 + 0.5) * 0.5 + across * (i / 60 + 0.5) * 0.5);
  return sum / sum_of (cells);
}

/* Cells that lie whole under a straight band hold their even share, those cut by its edge the covered part of it. */
static void
test_straight_band (void)
{
  const SwOutline band = { FALSE, 10.1, 5.0, 3.0, 0.0, 0.0 }; /* 8.6 to 11.6 */
  double whole = 6.0 / (3.0 / 0.5 * 20.0);

  g_assert_true (sw_deposit_plane (&pan, &band, 6.0, plane));
  for (int iy = 0; iy < 20; iy++)
    for (int ix = 0; ix < 60; ix++)
      {
        double covered = CLAMP ((MIN (11.6, (ix + 1) * 0.5) - MAX (8.6, ix * 0.5)) / 0.5, 0.0, 1.0);

        assert_near (plane[iy * 60 + ix], covered * whole, 1e-12);
      }
}

static void
test_band_of_some_length (void)
{
  const SwOutline band = { FALSE, 10.0, 4.0, 3.0, 2.2, 0.0 }; /* y 2.9 to 5.1 */

  g_assert_true (sw_deposit_plane (&pan, &band, 1.0, plane));
  assert_near (plane[6 * 60 + 20], 1.0 / (3.0 * 2.2) * 0.25, 1e-12);
  assert_near (plane[5 * 60 + 20], 1.0 / (3.0 * 2.2) * 0.25 * 0.2, 1e-12);
  assert_near (plane[10 * 60 + 20], 1.0 / (3.0 * 2.2) * 0.25 * 0.2, 1e-12);
  g_assert_cmpfloat (plane[11 * 60 + 20], ==, 0.0);
}

/* A slanted band is shifted by (y - yc) tan (slant), row by row. */
static void
test_slant (void)
{
  const SwOutline band = { FALSE, 15.0, 4.0, 2.0, 0.0, 30.0 };

  g_assert_true (sw_deposit_plane (&pan, &band, 1.0, plane));
  for (int iy = 0; iy < 20; iy++)
    {
      double mass = 0.0, moment = 0.0, y = (iy + 0.5) * 0.5;

      for (int ix = 0; ix < 60; ix++)
        {
          mass += plane[iy * 60 + ix];
          moment += plane[iy * 60 + ix] * (ix + 0.5) * 0.5;
        }
      assert_near (mass, 1.0 / 20.0, 1e-12);
      /* Cell centres stand for what lies in them: up to a hundredth of a cell. */
      assert_near (moment / mass, 15.0 + (y - 4.0) * tan (G_PI / 6.0), 0.01);
    }
}

/* Half a turn lays a band where it was; along the skein it is not defined, and does no harm. */
static void
test_slant_folds (void)
{
  const double turns[][2] = { { 20.0, -160.0 }, { -20.0, 160.0 }, { 0.0, 180.0 }, { 0.0, -180.0 } };

  for (guint i = 0; i < G_N_ELEMENTS (turns); i++)
    {
      const SwOutline a = { FALSE, 15.0, 4.0, 2.0, 0.0, turns[i][0] }, b = { FALSE, 15.0, 4.0, 2.0, 0.0, turns[i][1] };

      sw_deposit_plane (&pan, &a, 1.0, plane);
      sw_deposit_plane (&pan, &b, 1.0, other);
      for (int j = 0; j < N_CELLS; j++)
        assert_near (plane[j], other[j], 1e-12);
    }

  const SwOutline along = { FALSE, 15.0, 5.0, 2.0, 0.0, 90.0 };

  g_assert_true (sw_deposit_plane (&pan, &along, 1.0, plane));
  assert_near (sum_of (plane), 1.0, 1e-12);
}

/* Centre and spread of a turned ellipse: variances a^2/4 and b^2/4 along its own axes. */
static void
test_ellipse (void)
{
  for (double angle = -180.0; angle <= 180.0; angle += 15.0)
    {
      const SwOutline splotch = { TRUE, 14.3, 5.1, 8.0, 3.0, angle };
      double c = cos (angle * G_PI / 180.0), s = sin (angle * G_PI / 180.0), along = 0.0;

      g_assert_true (sw_deposit_plane (&pan, &splotch, 2.5, plane));
      assert_near (sum_of (plane), 2.5, 1e-12);
      assert_near (mean_place (plane, 1.0, 0.0), 14.3, 0.01);
      assert_near (mean_place (plane, 0.0, 1.0), 5.1, 0.01);
      for (int i = 0; i < N_CELLS; i++)
        along += plane[i] / 2.5 * pow (((i % 60 + 0.5) * 0.5 - 14.3) * c + ((i / 60 + 0.5) * 0.5 - 5.1) * s, 2.0);
      /* A cell adds h^2 / 12 of its own. */
      assert_near (along, 4.0 * 4.0 / 4.0 + 0.25 / 12.0, 0.02);
    }
}

/* Area by another way: many random points. */
static void
test_ellipse_by_points (void)
{
  const SwOutline splotch = { TRUE, 6.2, 3.3, 5.0, 2.0, 35.0 };
  double c = cos (35.0 * G_PI / 180.0), s = sin (35.0 * G_PI / 180.0), worst = 0.0;
  int points = 40;

  sw_deposit_plane (&pan, &splotch, G_PI * 2.5 * 1.0, plane);
  for (int i = 0; i < N_CELLS; i++)
    {
      int inside = 0;

      for (int p = 0; p < points * points; p++)
        {
          double dx = (i % 60 + (p % points + 0.5) / points) * 0.5 - 6.2, dy = (i / 60 + (p / points + 0.5) / points) * 0.5 - 3.3;

          inside += hypot ((dx * c + dy * s) / 2.5, dy * c - dx * s) <= 1.0;
        }
      worst = MAX (worst, fabs (plane[i] / 0.25 - (double) inside / (points * points)));
    }

  g_test_message ("largest error of a cell's share %.2g", worst);
  g_assert_cmpfloat (worst, <, 0.01);
}

/* A hair's move of the outline moves the plane by a hair. */
static void
test_continuous (void)
{
  const SwOutline shapes[] = { { FALSE, 10.0, 4.0, 3.0, 2.0, 25.0 }, { TRUE, 10.0, 4.0, 3.0, 2.0, 25.0 } };

  for (guint i = 0; i < G_N_ELEMENTS (shapes); i++)
    for (int step = 0; step < 50; step++)
      {
        SwOutline from = shapes[i], to;

        from.x += 0.02 * step;
        from.y += 0.013 * step;
        to = from;
        to.x += 1e-5;
        to.y += 1e-5;
        sw_deposit_plane (&pan, &from, 1.0, plane);
        sw_deposit_plane (&pan, &to, 1.0, other);
        for (int j = 0; j < N_CELLS; j++)
          assert_near (plane[j], other[j], 1e-5);
      }
}

static void
test_over_the_edge (void)
{
  const SwOutline half = { TRUE, 0.0, 5.0, 4.0, 4.0, 0.0 }, beside = { FALSE, 40.0, 5.0, 4.0, 0.0, 0.0 };

  g_assert_true (sw_deposit_plane (&pan, &half, 1.0, plane));
  assert_near (sum_of (plane), 1.0, 1e-12);
  g_assert_cmpfloat (plane[10 * 60 + 5], ==, 0.0);

  g_assert_false (sw_deposit_plane (&pan, &beside, 1.0, plane));
  for (int i = 0; i < N_CELLS; i++)
    assert_near (plane[i], 1.0 / N_CELLS, 1e-15);
}

/* Blur spreads a point to that sd and keeps its mass. */
static void
test_blur (void)
{
  g_autoptr (SwBasis) basis = sw_basis_new (&pan);
  double *cells = sw_field_new (sw_grid_cells (&pan)), *modes = sw_field_new (sw_grid_cells (&pan));
  const double sigmas[] = { 0.0, 0.6 };

  for (guint i = 0; i < G_N_ELEMENTS (sigmas); i++)
    {
      double variance = 0.0, sd = MAX (sigmas[i], SW_DEPOSIT_LEAST_BLUR * 0.5);

      memset (cells, 0, N_CELLS * sizeof (double));
      cells[10 * 60 + 30] = 1.0;
      sw_basis_forward_plane (basis, cells, modes);
      sw_deposit_blur (&pan, sigmas[i], modes);
      assert_near (modes[0], 1.0, 1e-12);
      /* Second moment along x from its modes: that of y = 0 alone. */
      for (int ix = 0; ix < 60; ix++)
        {
          double density = modes[0];

          for (int a = 1; a < 60; a++)
            density += 2.0 * modes[a] * cos (G_PI * a * (ix + 0.5) / 60.0);
          variance += density / 60.0 * pow ((ix - 30) * 0.5, 2.0);
        }
      assert_near (sqrt (variance), sd, 0.01 * sd);
    }

  g_assert_cmpfloat (sw_deposit_blur_for (0.0), ==, 0.0);
  assert_near (sw_deposit_blur_for (1.0), 0.6, 1e-12);

  sw_field_free (cells);
  sw_field_free (modes);
}

static void
test_depth (void)
{
  double weights[8], below[8], modes[8], modes_below[8];

  /* Left alone: e-folding 0.12 of the depth. */
  sw_deposit_depth (8, 0.0, FALSE, weights);
  for (int i = 0; i + 1 < 8; i++)
    assert_near (weights[i] / weights[i + 1], exp (0.125 / 0.12), 1e-9);
  /* Pushed through: even. */
  sw_deposit_depth (8, 1.0, FALSE, weights);
  for (int i = 0; i < 8; i++)
    assert_near (weights[i], 0.125, 1e-6);

  for (double worked_in = 0.0, lower = 0.0; worked_in <= 1.0; worked_in += 0.1)
    {
      double sum = 0.0, lower_half = 0.0;

      sw_deposit_depth (8, worked_in, FALSE, weights);
      sw_deposit_depth (8, worked_in, TRUE, below);
      for (int i = 0; i < 8; i++)
        {
          sum += weights[i];
          lower_half += i < 4 ? 0.0 : weights[i];
          g_assert_cmpfloat (weights[i], ==, below[7 - i]);
        }
      assert_near (sum, 1.0, 1e-12);
      g_assert_cmpfloat (lower_half, >, lower);
      lower = lower_half;

      /* A mirrored profile is a sign on every odd mode. */
      sw_deposit_depth_modes (8, worked_in, FALSE, modes);
      sw_deposit_depth_modes (8, worked_in, TRUE, modes_below);
      assert_near (modes[0], 1.0, 1e-12);
      for (int i = 0; i < 8; i++)
        assert_near (modes_below[i], i % 2 == 0 ? modes[i] : -modes[i], 1e-12);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bath/deposit/straight-band", test_straight_band);
  g_test_add_func ("/bath/deposit/band-of-some-length", test_band_of_some_length);
  g_test_add_func ("/bath/deposit/slant", test_slant);
  g_test_add_func ("/bath/deposit/slant-folds", test_slant_folds);
  g_test_add_func ("/bath/deposit/ellipse", test_ellipse);
  g_test_add_func ("/bath/deposit/ellipse-by-points", test_ellipse_by_points);
  g_test_add_func ("/bath/deposit/continuous", test_continuous);
  g_test_add_func ("/bath/deposit/over-the-edge", test_over_the_edge);
  g_test_add_func ("/bath/deposit/blur", test_blur);
  g_test_add_func ("/bath/deposit/depth", test_depth);
  return g_test_run ();
}
