/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-speck.h"

#include "bath/sw-deposit.h"

#include <math.h>

#define BEYOND_REACH 1e-5 /* share of the mark that is left out and scaled back in */

/* Gauss-Legendre of 16 points on -1 .. 1. Abramowitz & Stegun 1964, table 25.4. */
static const double nodes[SW_MARK_SPOTS / 2] = {
  0.095012509837637440185, 0.281603550779258913230, 0.458016777657227386342, 0.617876244402643748447,
  0.755404408355003033895, 0.865631202387831743880, 0.944575023073232576078, 0.989400934991649932596
};
static const double weights[SW_MARK_SPOTS / 2] = {
  0.189450610455068496285, 0.182603415044923588867, 0.169156519395002538189, 0.149595988816576732081,
  0.124628971255533872052, 0.095158511682492784810, 0.062253523938647892863, 0.027152459411754094852
};

/* Where a walk through the spans is: what has struck by its start, as -ln of what is left, and how far the spot has spread. */
typedef struct
{
  const SwSpan *span, *end;
  double strike, variance;
} Walk;

/* Variance of the mobile spot when so much has struck; the walk goes only forward. */
static double
variance_at (Walk *walk, double strike)
{
  double minutes;

  while (walk->span + 1 < walk->end && walk->strike + walk->span->rate * walk->span->minutes < strike)
    {
      walk->strike += walk->span->rate * walk->span->minutes;
      walk->variance += 2.0 * walk->span->spread_xy * walk->span->minutes;
      walk->span++;
    }

  /* A last span that strikes nothing adds nothing either. */
  minutes = walk->span->rate > 0.0 ? (strike - walk->strike) / walk->span->rate : 0.0;
  return walk->variance + 2.0 * walk->span->spread_xy * CLAMP (minutes, 0.0, walk->span->minutes);
}

/*
 * Struck dye as a sum of round Gaussians, one for each of a few moments: what
 * struck then lies as the mobile spot lay then. The moments are laid out in
 * the square root of what has struck: at the start, when a small spot grows
 * quickly, they lie close.
 */
static void
fill_spots (double radius_cm, const SwSpan *spans, gsize n_spans, SwMark *mark)
{
  Walk walk = { spans, spans + n_spans, 0.0, 0.25 * radius_cm * radius_cm };

  for (int i = 0; i < SW_MARK_SPOTS; i++)
    {
      int pair = i < SW_MARK_SPOTS / 2 ? SW_MARK_SPOTS / 2 - 1 - i : i - SW_MARK_SPOTS / 2;
      double s = 0.5 * (1.0 + (i < SW_MARK_SPOTS / 2 ? -nodes[pair] : nodes[pair]));

      mark->spot_share[i] = (float) (mark->share * weights[pair] * s);
      mark->spot_variance[i] = (float) variance_at (&walk, -log1p (-mark->share * s * s));
    }
}

/* Struck dye farther from the centre than sqrt (r2). */
static double
outside (const SwMark *mark, double r2)
{
  double sum = 0.0;

  for (int i = 0; i < SW_MARK_SPOTS; i++)
    sum += (double) mark->spot_share[i] * exp (-r2 / (2.0 * (double) mark->spot_variance[i]));

  return sum;
}

/* Distance within which all but BEYOND_REACH of the struck dye lies. */
static double
find_reach (const SwMark *mark)
{
  double low = 0.0, high = 0.0;

  for (int i = 0; i < SW_MARK_SPOTS; i++)
    high = MAX (high, (double) mark->spot_variance[i]);
  high *= 2.0 * log (1.0 / BEYOND_REACH);

  for (int i = 0; i < 25; i++)
    {
      double middle = 0.5 * (low + high);

      if (outside (mark, middle) > BEYOND_REACH * mark->share)
        low = middle;
      else
        high = middle;
    }

  return sqrt (high);
}

static double
exact_density (const SwMark *mark, double r2)
{
  float sum = 0.0f;

  for (int i = 0; i < SW_MARK_SPOTS; i++)
    {
      float over = 0.5f / mark->spot_variance[i];

      sum += mark->spot_share[i] * over * expf (-(float) r2 * over);
    }

  return (double) sum / G_PI;
}

/*
 * Even steps in the square root t of the distance. The dye under the tent of
 * one step is the integral of 4 pi reach^2 t^3 under it, which is exact for
 * the table as it is read, so that reading it gives all of the dye.
 *
 * The last entry is nothing, and the one before it next to nothing: colour
 * shows the faintest dye best, and a mark that stopped short would be seen as a disc.
 */
static void
table_density (SwMark *mark)
{
  const double h = 1.0 / (SW_MARK_STEPS - 1);
  double density[SW_MARK_STEPS] = { 0.0 }, sum = 0.0;

  for (int i = 0; i < SW_MARK_STEPS - 1; i++)
    {
      double t = i * h, r = t * t * mark->reach_cm;
      double tent = i == 0 ? 0.05 * h * h * h * h : h * t * (t * t + 0.5 * h * h);

      density[i] = exact_density (mark, r * r);
      sum += density[i] * 4.0 * G_PI * mark->reach_cm * mark->reach_cm * tent;
    }

  for (int i = 0; i < SW_MARK_STEPS; i++)
    mark->density[i] = (float) (density[i] * mark->share / sum);
}

/* Depth modes, strike by strike, then back to shares. */
static void
table_depth (const SwSpan *spans, gsize n_spans, int nz, double lz, double worked_in, gboolean from_below, SwMark *mark)
{
  const SwGrid column = { 1, 1, nz, 1.0, 1.0, lz };
  double transfer[G_N_ELEMENTS (mark->depth)] = { 0.0 }, modes[G_N_ELEMENTS (mark->depth)], sum = 0.0;

  for (gsize i = n_spans; i > 0; i--)
    sw_transfer_prepend (&column, &spans[i - 1], transfer);
  sw_deposit_depth_modes (nz, worked_in, from_below, modes);

  for (int iz = 0; iz < nz; iz++)
    {
      double struck = transfer[0];

      for (int n = 1; n < nz; n++)
        struck += 2.0 * transfer[n] * modes[n] * cos (G_PI * n * (iz + 0.5) / nz);
      mark->depth[iz] = (float) MAX (0.0, struck);
      sum += mark->depth[iz];
    }

  for (int iz = 0; iz < nz; iz++)
    mark->depth[iz] = (float) (sum > 0.0 ? mark->depth[iz] / sum : 1.0 / nz);
}

void
sw_mark_for (double radius_cm, const SwSpan *spans, gsize n_spans, int nz, double lz, double worked_in, gboolean from_below, SwMark *mark)
{
  g_return_if_fail (nz > 0 && nz <= (int) G_N_ELEMENTS (mark->depth));

  *mark = (SwMark){ .share = sw_transfer_share (spans, n_spans) };
  table_depth (spans, n_spans, nz, lz, worked_in, from_below, mark);
  if (mark->share > 0.0)
    {
      fill_spots (radius_cm, spans, n_spans, mark);
      mark->reach_cm = find_reach (mark);
      table_density (mark);
    }
}

double
sw_mark_density (const SwMark *mark, double r2)
{
  double step = mark->reach_cm > 0.0 ? sqrt (sqrt (r2) / mark->reach_cm) * (SW_MARK_STEPS - 1) : SW_MARK_STEPS;
  int i = (int) MIN (step, SW_MARK_STEPS);

  if (i >= SW_MARK_STEPS - 1)
    return 0.0;

  return (double) mark->density[i] + (step - i) * (double) (mark->density[i + 1] - mark->density[i]);
}

double
sw_mark_extent (const SwMark *mark, double density)
{
  double step;
  int i = 0;

  while (i < SW_MARK_STEPS && (double) mark->density[i] > density)
    i++;
  step = MIN (i, SW_MARK_STEPS - 1) / (SW_MARK_STEPS - 1.0);

  return step * step * mark->reach_cm;
}
