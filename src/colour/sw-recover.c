/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "colour/sw-recover.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define N_COLOURS 3
#define N_UNKNOWNS (SW_BANDS + N_COLOURS)

/* Residuals, with the colour's as shares of white: the colour comes out to 1e-8 of Y = 100. */
#define TOLERANCE 1e-10
#define MAX_NEWTON_STEPS 60
#define MAX_HALVINGS 12

/* This near to a perfect white or black the artanh runs off; a colour within 1e-6 is given instead. */
#define LIMIT_REFLECTANCE 5e-9
#define LIMIT_XYZ 1e-6

/* The way from grey to the colour, when Newton does not get there at once. */
#define FIRST_STRIDE 0.25
#define LEAST_STRIDE 1e-5

/* The unknowns: z = artanh (2 R - 1) per band, and one multiplier per equation of the colour. */
typedef struct
{
  double z[SW_BANDS];
  double multiplier[N_COLOURS];
} Unknowns;

/* One row an unknown; the last column is the right hand side. */
typedef double System[N_UNKNOWNS][N_UNKNOWNS + 1];

static double
weight (int colour, int band)
{
  switch (colour)
    {
    case 0:
      return sw_weight_x[band] / 100;
    case 1:
      return sw_weight_y[band] / 100;
    default:
      return sw_weight_z[band] / 100;
    }
}

static void
reflectance_from_z (const double *z, double *reflectance)
{
  for (int band = 0; band < SW_BANDS; band++)
    reflectance[band] = 1 / (1 + exp (-2 * z[band]));
}

/* Minus the gradient of the Lagrangian, in the last column. Returns: its squared length */
static double
set_residual (const Unknowns *u, SwXyz target, System system)
{
  double reflectance[SW_BANDS];
  double sum = 0;
  SwXyz xyz;

  reflectance_from_z (u->z, reflectance);
  xyz = sw_xyz_from_reflectance (reflectance);

  for (int band = 0; band < SW_BANDS; band++)
    {
      double slope = 2 * reflectance[band] * (1 - reflectance[band]);
      double gradient = 0;

      if (band > 0)
        gradient += 2 * (u->z[band] - u->z[band - 1]);
      if (band < SW_BANDS - 1)
        gradient += 2 * (u->z[band] - u->z[band + 1]);
      for (int colour = 0; colour < N_COLOURS; colour++)
        gradient += u->multiplier[colour] * weight (colour, band) * slope;
      system[band][N_UNKNOWNS] = -gradient;
    }
  system[SW_BANDS][N_UNKNOWNS] = (target.x - xyz.x) / 100;
  system[SW_BANDS + 1][N_UNKNOWNS] = (target.y - xyz.y) / 100;
  system[SW_BANDS + 2][N_UNKNOWNS] = (target.z - xyz.z) / 100;

  for (int row = 0; row < N_UNKNOWNS; row++)
    sum += system[row][N_UNKNOWNS] * system[row][N_UNKNOWNS];
  return sum;
}

/* The second derivatives of the Lagrangian: tridiagonal in z, bordered by the slopes of the colour. */
static void
set_matrix (const Unknowns *u, System system)
{
  for (int row = 0; row < N_UNKNOWNS; row++)
    memset (system[row], 0, N_UNKNOWNS * sizeof (double));

  for (int band = 0; band < SW_BANDS; band++)
    {
      double tanh_z = tanh (u->z[band]);
      double slope = (1 - tanh_z * tanh_z) / 2;
      double bend = -2 * slope * tanh_z;

      system[band][band] = band == 0 || band == SW_BANDS - 1 ? 2 : 4;
      if (band > 0)
        system[band][band - 1] = -2;
      if (band < SW_BANDS - 1)
        system[band][band + 1] = -2;
      for (int colour = 0; colour < N_COLOURS; colour++)
        {
          system[band][band] += u->multiplier[colour] * weight (colour, band) * bend;
          system[band][SW_BANDS + colour] = weight (colour, band) * slope;
          system[SW_BANDS + colour][band] = weight (colour, band) * slope;
        }
    }
}

/* Gauss with row pivoting; the answer replaces the last column. Returns: FALSE if singular */
static gboolean
solve (System system)
{
  double row_copy[N_UNKNOWNS + 1];

  for (int column = 0; column < N_UNKNOWNS; column++)
    {
      int pivot = column;

      for (int row = column + 1; row < N_UNKNOWNS; row++)
        if (fabs (system[row][column]) > fabs (system[pivot][column]))
          pivot = row;
      if (!(fabs (system[pivot][column]) > 1e-300))
        return FALSE;
      if (pivot != column)
        {
          memcpy (row_copy, system[pivot], sizeof row_copy);
          memcpy (system[pivot], system[column], sizeof row_copy);
          memcpy (system[column], row_copy, sizeof row_copy);
        }
      for (int row = column + 1; row < N_UNKNOWNS; row++)
        {
          double factor = system[row][column] / system[column][column];

          if (factor != 0)
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
step_along (const Unknowns *from, const double *step, double share, Unknowns *to)
{
  for (int band = 0; band < SW_BANDS; band++)
    to->z[band] = from->z[band] + share * step[band];
  for (int colour = 0; colour < N_COLOURS; colour++)
    to->multiplier[colour] = from->multiplier[colour] + share * step[SW_BANDS + colour];
}

/* Newton's method, each step halved until it brings the residual down. @u is the start and, on success, the answer. */
static gboolean
newton (Unknowns *u, SwXyz target)
{
  System system;
  Unknowns now = *u;
  double residual = set_residual (&now, target, system);

  for (int steps = 0; steps < MAX_NEWTON_STEPS && residual > TOLERANCE * TOLERANCE; steps++)
    {
      double step[N_UNKNOWNS];
      double share = 1, shorter = residual;
      Unknowns next = now;

      set_matrix (&now, system);
      if (!solve (system))
        return FALSE;
      for (int i = 0; i < N_UNKNOWNS; i++)
        step[i] = system[i][N_UNKNOWNS];
      for (int halvings = 0; halvings < MAX_HALVINGS; halvings++, share /= 2)
        {
          step_along (&now, step, share, &next);
          shorter = set_residual (&next, target, system);
          if (shorter < residual)
            break;
        }
      if (!(shorter < residual))
        return FALSE;
      now = next;
      residual = shorter;
    }
  if (!(residual <= TOLERANCE * TOLERANCE))
    return FALSE;
  *u = now;
  return TRUE;
}

/* From the grey of the same luminance towards the colour, in strides short enough for Newton to follow. */
static gboolean
continuation (Unknowns *u, SwXyz grey, SwXyz target)
{
  double reached = 0, stride = FIRST_STRIDE;

  while (reached < 1)
    {
      double aim = MIN (reached + stride, 1);
      SwXyz waypoint = {
        grey.x + aim * (target.x - grey.x),
        grey.y + aim * (target.y - grey.y),
        grey.z + aim * (target.z - grey.z),
      };

      if (newton (u, waypoint))
        {
          reached = aim;
          stride *= 2;
        }
      else
        stride /= 2;
      if (stride < LEAST_STRIDE)
        return FALSE;
    }
  return TRUE;
}

static gboolean
is_near (SwXyz a, SwXyz b)
{
  return fabs (a.x - b.x) < LIMIT_XYZ && fabs (a.y - b.y) < LIMIT_XYZ && fabs (a.z - b.z) < LIMIT_XYZ;
}

static void
fill (double *reflectance, double value)
{
  for (int band = 0; band < SW_BANDS; band++)
    reflectance[band] = value;
}

static gboolean
refuse (GError **error)
{
  g_set_error_literal (error, SW_COLOUR_ERROR, SW_COLOUR_ERROR_UNREACHABLE,
                       _ ("No dyed yarn can have this colour: it is too vivid for its lightness. Choose a duller or a less extreme colour, or give a measured spectrum."));
  return FALSE;
}

gboolean
sw_recover_reflectance (SwXyz target, double *reflectance, GError **error)
{
  double share = target.y / sw_white.y;
  SwXyz grey = { share * sw_white.x, target.y, share * sw_white.z };
  Unknowns start = { 0 }, u;

  g_return_val_if_fail (reflectance != NULL, FALSE);

  if (is_near (target, sw_white))
    {
      fill (reflectance, 1 - LIMIT_REFLECTANCE);
      return TRUE;
    }
  if (is_near (target, (SwXyz){ 0, 0, 0 }))
    {
      fill (reflectance, LIMIT_REFLECTANCE);
      return TRUE;
    }
  if (!(target.x > 0 && target.y > 0 && target.z > 0 && target.x < sw_white.x && target.y < sw_white.y && target.z < sw_white.z))
    return refuse (error);

  fill (start.z, atanh (2 * share - 1));
  u = start;
  if (!newton (&u, target))
    {
      u = start;
      if (!continuation (&u, grey, target))
        return refuse (error);
    }
  reflectance_from_z (u.z, reflectance);
  return TRUE;
}

gboolean
sw_sample_reflectance (const SwSample *sample, double *reflectance, GError **error)
{
  const double *n;

  g_return_val_if_fail (sample != NULL, FALSE);
  g_return_val_if_fail (reflectance != NULL, FALSE);

  n = sample->numbers;
  switch (sample->kind)
    {
    case SW_SAMPLE_SRGB:
      return sw_recover_reflectance (sw_xyz_from_srgb ((SwSrgb){ n[0] / 255, n[1] / 255, n[2] / 255 }), reflectance, error);
    case SW_SAMPLE_LAB:
      return sw_recover_reflectance (sw_xyz_from_lab ((SwLab){ n[0], n[1], n[2] }), reflectance, error);
    case SW_SAMPLE_REFLECTANCE:
      memcpy (reflectance, n, SW_BANDS * sizeof (double));
      return TRUE;
    default:
      g_return_val_if_reached (FALSE);
    }
}
