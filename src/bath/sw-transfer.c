/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-transfer.h"

#include "bath/sw-clones-private.h"

#include <math.h>

/*
 * e^(-(k + D|q|^2) t) is a product of one factor for each axis, so a span
 * needs nx + ny + nz exponentials and not one a mode. What is left in the
 * inner loop, along x, is a multiplication or two and a division.
 */
typedef struct
{
  double *decay; /* D q^2, per minute */
  double *keep;  /* e^(-D q^2 t) */
} Axis;

static Axis
axis_new (int n, double length, double spread, double minutes)
{
  Axis axis = { g_new (double, n), g_new (double, n) };

  for (int i = 0; i < n; i++)
    {
      double q = i * G_PI / length;

      axis.decay[i] = spread * q * q;
      axis.keep[i] = exp (-axis.decay[i] * minutes);
    }

  return axis;
}

static void
axis_clear (Axis *axis)
{
  g_free (axis->decay);
  g_free (axis->keep);
}

typedef struct
{
  Axis x, y, z;
  double rate;
  double keep; /* e^(-k t) */
} Span;

static Span
span_new (const SwGrid *grid, const SwSpan *span)
{
  return (Span){
    axis_new (grid->nx, grid->lx, span->spread_xy, span->minutes),
    axis_new (grid->ny, grid->ly, span->spread_xy, span->minutes),
    axis_new (grid->nz, grid->lz, span->spread_z, span->minutes),
    span->rate,
    exp (-span->rate * span->minutes),
  };
}

static void
span_clear (Span *span)
{
  axis_clear (&span->x);
  axis_clear (&span->y);
  axis_clear (&span->z);
}

/* T <- k / (k + D|q|^2) (1 - keep) + keep T along x; @decay and @keep_here are those of y, z and the strike. */
SW_CLONES static void
prepend_row (gsize nx, const double *restrict decay_x, const double *restrict keep_x, double rate, double decay, double keep_here, double *restrict transfer)
{
  for (gsize i = 0; i < nx; i++)
    {
      double keep = keep_x[i] * keep_here;

      transfer[i] = rate / (decay + decay_x[i]) * (1.0 - keep) + keep * transfer[i];
    }
}

SW_CLONES static void
evolve_row (gsize nx, const double *restrict decay_x, const double *restrict keep_x, double rate, double decay, double keep_here, double *restrict mobile, double *restrict struck)
{
  for (gsize i = 0; i < nx; i++)
    {
      double keep = keep_x[i] * keep_here;

      struck[i] += rate / (decay + decay_x[i]) * (1.0 - keep) * mobile[i];
      mobile[i] *= keep;
    }
}

SW_CLONES static void
add_row (gsize nx, const double *restrict transfer, const double *restrict plane, double depth, double *restrict struck)
{
  for (gsize i = 0; i < nx; i++)
    struck[i] += transfer[i] * plane[i] * depth;
}

/* Without strike, mode 0 neither strikes nor spreads, and k / (k + D|q|^2) would be 0 / 0. */
static double
decay_floor (double rate)
{
  return MAX (rate, G_MINDOUBLE);
}

void
sw_transfer_prepend (const SwGrid *grid, const SwSpan *span, double *transfer)
{
  gsize nx = (gsize) grid->nx;

  if (span->minutes <= 0.0)
    return;

  Span s = span_new (grid, span);

  for (int iz = 0; iz < grid->nz; iz++)
    for (int iy = 0; iy < grid->ny; iy++, transfer += nx)
      prepend_row (nx, s.x.decay, s.x.keep,
                   s.rate, decay_floor (s.rate) + s.y.decay[iy] + s.z.decay[iz],
                   s.keep * s.y.keep[iy] * s.z.keep[iz], transfer);

  span_clear (&s);
}

void
sw_transfer_evolve (const SwGrid *grid, const SwSpan *span, double *mobile, double *struck)
{
  gsize nx = (gsize) grid->nx;

  if (span->minutes <= 0.0)
    return;

  Span s = span_new (grid, span);

  for (int iz = 0; iz < grid->nz; iz++)
    for (int iy = 0; iy < grid->ny; iy++, mobile += nx, struck += nx)
      evolve_row (nx, s.x.decay, s.x.keep,
                  s.rate, decay_floor (s.rate) + s.y.decay[iy] + s.z.decay[iz],
                  s.keep * s.y.keep[iy] * s.z.keep[iz], mobile, struck);

  span_clear (&s);
}

double
sw_transfer_share (const SwSpan *spans, gsize n)
{
  double strikes = 0.0;

  for (gsize i = 0; i < n; i++)
    strikes += spans[i].rate * spans[i].minutes;

  return -expm1 (-strikes);
}

void
sw_transfer_follow (const SwSpan *spans, const double *poured, gsize n, double *struck, double *left)
{
  double on_fibre = 0.0, in_liquor = 0.0;

  for (gsize i = 0; i < n; i++)
    {
      double strikes = spans[i].rate * spans[i].minutes;

      in_liquor += poured[i];
      on_fibre -= in_liquor * expm1 (-strikes);
      in_liquor *= exp (-strikes);
      struck[i] = on_fibre;
      left[i] = in_liquor;
    }
}

void
sw_transfer_add_pour (const SwGrid *grid, const double *transfer, const double *plane, const double *depth, double *struck)
{
  gsize nx = (gsize) grid->nx;

  for (int iz = 0; iz < grid->nz; iz++)
    for (int iy = 0; iy < grid->ny; iy++, transfer += nx, struck += nx)
      add_row (nx, transfer, plane + (gsize) iy * nx, depth[iz], struck);
}
