/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-speck.h"

#include "bath/sw-deposit.h"

#include <math.h>

#define NODES 48           /* moments of a span at which its struck dye is summed */
#define BEYOND_REACH 0.001 /* share of the mark that the table leaves out and scales back in */

/*
 * Struck dye as a sum of round Gaussians, one for each moment: what struck
 * then (@share) lies as the mobile spot lay then (@variance along each axis).
 */
typedef struct
{
  double variance;
  double share;
} Spot;

/*
 * A span's struck share P = 1 - e^(-k t) is cut up evenly in the square root
 * of what has struck: close to the start, where a small spot grows quickly,
 * the moments lie close.
 */
static gsize
spots_of_span (const SwSpan *span, double variance, double mobile, Spot *spots)
{
  double strikes = -expm1 (-span->rate * span->minutes);

  if (strikes <= 0.0)
    return 0;

  for (int i = 0; i < NODES; i++)
    {
      double s = (i + 0.5) / NODES;
      double minutes = -log1p (-strikes * s * s) / span->rate;

      spots[i] = (Spot){ variance + 2.0 * span->spread_xy * minutes, mobile * strikes * 2.0 * s / NODES };
    }

  return NODES;
}

static gsize
spots_of_spans (double radius_cm, const SwSpan *spans, gsize n_spans, Spot *spots)
{
  double variance = 0.25 * radius_cm * radius_cm, mobile = 1.0;
  gsize n = 0;

  for (gsize i = 0; i < n_spans; i++)
    {
      n += spots_of_span (&spans[i], variance, mobile, spots + n);
      variance += 2.0 * spans[i].spread_xy * spans[i].minutes;
      mobile *= exp (-spans[i].rate * spans[i].minutes);
    }

  return n;
}

/* Struck dye farther from the centre than sqrt (r2). */
static double
outside (const Spot *spots, gsize n, double r2)
{
  double sum = 0.0;

  for (gsize i = 0; i < n; i++)
    sum += spots[i].share * exp (-r2 / (2.0 * spots[i].variance));

  return sum;
}

/* Squared distance within which all but BEYOND_REACH of the struck dye lies. */
static double
find_reach2 (const Spot *spots, gsize n, double share)
{
  double low = 0.0, high = 0.0;

  for (gsize i = 0; i < n; i++)
    high = MAX (high, spots[i].variance);
  high *= 2.0 * log (1.0 / BEYOND_REACH);

  for (int i = 0; i < 25; i++)
    {
      double middle = 0.5 * (low + high);

      if (outside (spots, n, middle) > BEYOND_REACH * share)
        low = middle;
      else
        high = middle;
    }

  return high;
}

/*
 * Integrals of outside() over r2 from each of the table's distances on, and
 * from one more: what a mean of densities needs. Even steps in r2 make every
 * Gaussian a geometric row.
 */
static void
outside_integrals (const Spot *spots, gsize n, double h, double integrals[SW_MARK_STEPS + 1])
{
  for (int step = 0; step <= SW_MARK_STEPS; step++)
    integrals[step] = 0.0;

  for (gsize i = 0; i < n; i++)
    {
      double integral = 2.0 * spots[i].variance * spots[i].share, ratio = exp (-h / (2.0 * spots[i].variance));

      for (int step = 0; step <= SW_MARK_STEPS; step++)
        {
          integrals[step] += integral;
          integral *= ratio;
        }
    }
}

/*
 * Each entry is the mean of the density under its own tent of the linear
 * interpolation, not its value at one point: the centre of a mark is a narrow
 * peak, and reading the table back must give all of its dye and not more.
 * With F = outside (), density -F'/pi over r2, the mean under a tent of half
 * width h is the second difference of F's integral over pi h^2.
 *
 * The entry at the reach is taken off all, since colour shows the faintest
 * dye best: a mark that stopped short would be seen as a disc.
 */
static void
table_density (const Spot *spots, gsize n, double share, SwMark *mark)
{
  double h = mark->reach_cm * mark->reach_cm / (SW_MARK_STEPS - 1);
  double density[SW_MARK_STEPS], integrals[SW_MARK_STEPS + 1], sum = 0.0;

  outside_integrals (spots, n, h, integrals);
  for (int i = 0; i < SW_MARK_STEPS; i++)
    {
      /* At the centre half a tent: F (0) h stands in for its other side. */
      double before = i == 0 ? integrals[0] + share * h : integrals[i - 1];

      density[i] = (i == 0 ? 2.0 : 1.0) * (integrals[i + 1] - 2.0 * integrals[i] + before);
    }

  for (int i = 0; i < SW_MARK_STEPS; i++)
    {
      density[i] -= density[SW_MARK_STEPS - 1];
      sum += i == 0 ? 0.5 * density[i] : density[i];
    }
  for (int i = 0; i < SW_MARK_STEPS; i++)
    mark->density[i] = (float) (density[i] * share / (G_PI * h * sum));
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
  Spot *spots;
  gsize n;

  g_return_if_fail (nz > 0 && nz <= (int) G_N_ELEMENTS (mark->depth));

  spots = g_new (Spot, n_spans * NODES);
  n = spots_of_spans (radius_cm, spans, n_spans, spots);
  *mark = (SwMark){ .share = sw_transfer_share (spans, n_spans) };
  table_depth (spans, n_spans, nz, lz, worked_in, from_below, mark);
  if (mark->share > 0.0)
    {
      mark->reach_cm = sqrt (find_reach2 (spots, n, mark->share));
      mark->steps_per_cm2 = (SW_MARK_STEPS - 1) / (mark->reach_cm * mark->reach_cm);
      table_density (spots, n, mark->share, mark);
    }

  g_free (spots);
}
