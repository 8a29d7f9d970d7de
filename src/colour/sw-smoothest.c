/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-smoothest-private.h"

#include <math.h>
#include <string.h>

#define N_UNKNOWNS (SW_BANDS + SW_N_COLOURS)

/* Length of the residual: slopes of the Lagrangian, and the logarithms of the colour over its target. */
#define TOLERANCE 1e-10
#define MAX_STEPS 40
#define MAX_HALVINGS 8

/* One row an unknown, z before the multipliers; the last column is the right hand side. */
typedef double System[N_UNKNOWNS][N_UNKNOWNS + 1];

static const double *const weights[SW_N_COLOURS] = { sw_weight_x, sw_weight_y, sw_weight_z };

static double
reflectance_from_z (double z)
{
  return 1 / (1 + exp (-2 * z));
}

/* Minus the slope of the Lagrangian along each z. */
static void
set_slopes (const SwSmoothest *at, const double *reflectance, System system)
{
  for (int band = 0; band < SW_BANDS; band++)
    {
      double rise = 2 * reflectance[band] * (1 - reflectance[band]);
      double slope = 0;

      if (band > 0)
        slope += 2 * (at->z[band] - at->z[band - 1]);
      if (band < SW_BANDS - 1)
        slope += 2 * (at->z[band] - at->z[band + 1]);
      for (int colour = 0; colour < SW_N_COLOURS; colour++)
        slope += at->multiplier[colour] * weights[colour][band] * rise;
      system[band][N_UNKNOWNS] = -slope;
    }
}

/*
 * The right hand side. The colour enters as X log (target / X) and not as target - X: the two agree near the answer, but a dark
 * colour is nearly an exponential in z, and with the difference (0, 1, 0) took a thousand times as long as (128, 128, 128).
 * Returns: the squared length of the residual
 */
static double
set_residual (const SwSmoothest *at, SwXyz target, System system)
{
  double reflectance[SW_BANDS];
  double squares = 0;
  SwXyz xyz;

  for (int band = 0; band < SW_BANDS; band++)
    reflectance[band] = reflectance_from_z (at->z[band]);
  xyz = sw_xyz_from_reflectance (reflectance);
  set_slopes (at, reflectance, system);

  const double now[SW_N_COLOURS] = { xyz.x, xyz.y, xyz.z };
  const double wanted[SW_N_COLOURS] = { target.x, target.y, target.z };

  for (int band = 0; band < SW_BANDS; band++)
    squares += system[band][N_UNKNOWNS] * system[band][N_UNKNOWNS];
  for (int colour = 0; colour < SW_N_COLOURS; colour++)
    {
      double short_by = log (wanted[colour] / now[colour]);

      system[SW_BANDS + colour][N_UNKNOWNS] = now[colour] * short_by;
      squares += short_by * short_by;
    }
  return squares;
}

/* The second derivatives of the Lagrangian: tridiagonal in z, bordered by how each band moves the colour. */
static void
set_matrix (const SwSmoothest *at, System system)
{
  for (int row = 0; row < N_UNKNOWNS; row++)
    memset (system[row], 0, N_UNKNOWNS * sizeof (double));

  for (int band = 0; band < SW_BANDS; band++)
    {
      double reflectance = reflectance_from_z (at->z[band]);
      double rise = 2 * reflectance * (1 - reflectance);
      double bend = 2 * rise * (1 - 2 * reflectance);

      system[band][band] = band == 0 || band == SW_BANDS - 1 ? 2 : 4;
      if (band > 0)
        system[band][band - 1] = -2;
      if (band < SW_BANDS - 1)
        system[band][band + 1] = -2;
      for (int colour = 0; colour < SW_N_COLOURS; colour++)
        {
          double weight = weights[colour][band];

          system[band][band] += at->multiplier[colour] * weight * bend;
          system[band][SW_BANDS + colour] = weight * rise;
          system[SW_BANDS + colour][band] = weight * rise;
        }
    }
}

static void
swap_rows (System system, int a, int b)
{
  double kept[N_UNKNOWNS + 1];

  memcpy (kept, system[a], sizeof kept);
  memcpy (system[a], system[b], sizeof kept);
  memcpy (system[b], kept, sizeof kept);
}

/*
 * Gauss's elimination with row pivoting; the answer replaces the right hand side. Dense: the tridiagonal part is singular
 * by itself (a constant z has no slope), so eliminating it first would divide by nothing. Zeros are skipped, which is most of the gain.
 * Returns: FALSE if singular
 */
static gboolean
solve (System system)
{
  for (int column = 0; column < N_UNKNOWNS; column++)
    {
      int pivot = column;

      for (int row = column + 1; row < N_UNKNOWNS; row++)
        if (fabs (system[row][column]) > fabs (system[pivot][column]))
          pivot = row;
      if (!(fabs (system[pivot][column]) > 1e-300))
        return FALSE;
      if (pivot != column)
        swap_rows (system, pivot, column);
      for (int row = column + 1; row < N_UNKNOWNS; row++)
        if (system[row][column] != 0)
          {
            double factor = system[row][column] / system[column][column];

            for (int i = column + 1; i <= N_UNKNOWNS; i++)
              system[row][i] -= factor * system[column][i];
          }
    }
  for (int row = N_UNKNOWNS - 1; row >= 0; row--)
    {
      for (int i = row + 1; i < N_UNKNOWNS; i++)
        system[row][N_UNKNOWNS] -= system[row][i] * system[i][N_UNKNOWNS];
      system[row][N_UNKNOWNS] /= system[row][row];
    }
  return TRUE;
}

static void
step_along (const SwSmoothest *from, const double *step, double share, SwSmoothest *to)
{
  for (int band = 0; band < SW_BANDS; band++)
    to->z[band] = from->z[band] + share * step[band];
  for (int colour = 0; colour < SW_N_COLOURS; colour++)
    to->multiplier[colour] = from->multiplier[colour] + share * step[SW_BANDS + colour];
}

gboolean
sw_smoothest_seek (SwSmoothest *at, SwXyz target)
{
  System system;
  double residual = set_residual (at, target, system);

  for (int steps = 0; steps < MAX_STEPS && residual > TOLERANCE * TOLERANCE; steps++)
    {
      double step[N_UNKNOWNS];
      double share = 1, shorter = residual;
      SwSmoothest next = *at;

      set_matrix (at, system);
      if (!solve (system))
        return FALSE;
      for (int i = 0; i < N_UNKNOWNS; i++)
        step[i] = system[i][N_UNKNOWNS];

      /* A full step may overshoot; halve it until it brings the residual down. */
      for (int halvings = 0; halvings < MAX_HALVINGS && !(shorter < residual); halvings++, share /= 2)
        {
          step_along (at, step, share, &next);
          shorter = set_residual (&next, target, system);
        }
      if (!(shorter < residual))
        return FALSE;
      *at = next;
      residual = shorter;
    }
  return residual <= TOLERANCE * TOLERANCE;
}

gboolean
sw_smoothest_proves_unreachable (const SwSmoothest *at, SwXyz target)
{
  const double *m = at->multiplier;
  double wanted = -(m[0] * target.x + m[1] * target.y + m[2] * target.z);
  double most = 0, rounding = 0;

  for (int band = 0; band < SW_BANDS; band++)
    {
      double along = -(m[0] * sw_weight_x[band] + m[1] * sw_weight_y[band] + m[2] * sw_weight_z[band]);

      most += MAX (along, 0);
      rounding += 1e-9 * fabs (along);
    }
  return wanted > most + rounding;
}
