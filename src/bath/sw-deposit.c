/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-deposit.h"

#include <math.h>

#define SURFACE_DEPTH 0.12 /* e-folding of a pour left alone, share of the depth; ours */
#define MOST_BLUR_CM 0.6   /* of a pour pushed right through; ours */
#define STRIPS_PER_CELL 8  /* strips along x that a row of cells is cut into */
#define LEAST_EXTENT_CM 0.01
#define MOST_SLANT_DEG 85.0

/*
 * Shares of cells come from strips, not from points: both outlines are convex,
 * so at any y they cover one stretch of x, and its overlap with a cell is
 * exact. A pour dragged by a hair then changes the plane by a hair.
 */
typedef struct
{
  double from, to;
} Stretch;

static double
radians (double degrees)
{
  return degrees * G_PI / 180.0;
}

static Stretch
ellipse_height (const SwOutline *outline)
{
  double a = 0.5 * MAX (outline->width, LEAST_EXTENT_CM), b = 0.5 * MAX (outline->length, LEAST_EXTENT_CM);
  double angle = radians (outline->angle_deg);
  double half = hypot (a * sin (angle), b * cos (angle));

  return (Stretch){ outline->y - half, outline->y + half };
}

/* Both roots of |(u / a, v / b)| = 1 along the line at @y, (u, v) turned by the angle. */
static Stretch
ellipse_stretch (const SwOutline *outline, double y)
{
  double a = 0.5 * MAX (outline->width, LEAST_EXTENT_CM), b = 0.5 * MAX (outline->length, LEAST_EXTENT_CM);
  double c = cos (radians (outline->angle_deg)), s = sin (radians (outline->angle_deg)), dy = y - outline->y;
  double p = c * c / (a * a) + s * s / (b * b);
  double q = dy * c * s * (1.0 / (a * a) - 1.0 / (b * b));
  double r = dy * dy * (s * s / (a * a) + c * c / (b * b)) - 1.0;
  double half = sqrt (MAX (0.0, q * q - p * r)) / p;

  return (Stretch){ outline->x - q / p - half, outline->x - q / p + half };
}

static Stretch
band_height (const SwOutline *outline, double ly)
{
  if (outline->length <= 0.0)
    return (Stretch){ 0.0, ly };

  return (Stretch){ outline->y - 0.5 * outline->length, outline->y + 0.5 * outline->length };
}

/* Straight across again after half a turn; short of lying along the skein, where a band would have no sides. */
static double
slant_of (const SwOutline *outline)
{
  double folded = outline->angle_deg - 180.0 * round (outline->angle_deg / 180.0);

  return tan (radians (CLAMP (folded, -MOST_SLANT_DEG, MOST_SLANT_DEG)));
}

static Stretch
band_stretch (const SwOutline *outline, double y)
{
  double centre = outline->x + (y - outline->y) * slant_of (outline);
  double half = 0.5 * MAX (outline->width, LEAST_EXTENT_CM);

  return (Stretch){ centre - half, centre + half };
}

/* Adds the area that a strip covers of each cell in a row. */
static void
cover_strip (const SwGrid *grid, Stretch stretch, double height, double *row)
{
  double h = grid->lx / grid->nx;
  double from = CLAMP (stretch.from / h, 0.0, grid->nx), to = CLAMP (stretch.to / h, 0.0, grid->nx);
  int first = (int) from, last = MIN ((int) to, grid->nx - 1);

  for (int ix = first; ix <= last; ix++)
    row[ix] += height * h * MAX (0.0, MIN (to, ix + 1.0) - MAX (from, ix));
}

/* Area of each cell that lies under the outline. Returns their sum. */
static double
cover_cells (const SwGrid *grid, const SwOutline *outline, double *plane)
{
  Stretch height = outline->ellipse ? ellipse_height (outline) : band_height (outline, grid->ly);
  double h = grid->ly / grid->ny, area = 0.0;

  for (int iy = 0; iy < grid->ny; iy++)
    {
      double *row = plane + (gsize) iy * (gsize) grid->nx;
      double from = MAX (height.from, iy * h), to = MIN (height.to, (iy + 1) * h);

      for (int ix = 0; ix < grid->nx; ix++)
        row[ix] = 0.0;

      for (int strip = 0; strip < STRIPS_PER_CELL && to > from; strip++)
        {
          double y = from + (strip + 0.5) / STRIPS_PER_CELL * (to - from);

          cover_strip (grid, outline->ellipse ? ellipse_stretch (outline, y) : band_stretch (outline, y),
                       (to - from) / STRIPS_PER_CELL, row);
        }

      for (int ix = 0; ix < grid->nx; ix++)
        area += row[ix];
    }

  return area;
}

gboolean
sw_deposit_plane (const SwGrid *grid, const SwOutline *outline, double mass, double *plane)
{
  gsize n = (gsize) grid->nx * (gsize) grid->ny;
  double area = cover_cells (grid, outline, plane);
  gboolean hit = area > 1e-9 * grid->lx * grid->ly;

  for (gsize i = 0; i < n; i++)
    plane[i] = hit ? plane[i] * (mass / area) : mass / (double) n;

  return hit;
}

void
sw_deposit_blur (const SwGrid *grid, double sigma_cm, double *plane_modes)
{
  double *along = g_new (double, grid->nx);
  double sx = MAX (sigma_cm, SW_DEPOSIT_LEAST_BLUR * grid->lx / grid->nx);
  double sy = MAX (sigma_cm, SW_DEPOSIT_LEAST_BLUR * grid->ly / grid->ny);

  for (int ix = 0; ix < grid->nx; ix++)
    along[ix] = exp (-0.5 * pow (sx * ix * G_PI / grid->lx, 2.0));

  for (int iy = 0; iy < grid->ny; iy++)
    {
      double across = exp (-0.5 * pow (sy * iy * G_PI / grid->ly, 2.0));

      for (int ix = 0; ix < grid->nx; ix++)
        *plane_modes++ *= across * along[ix];
    }

  g_free (along);
}

double
sw_deposit_blur_for (double worked_in)
{
  return MOST_BLUR_CM * worked_in;
}

/* Dye above the share @depth of a profile that falls by e in @folding. */
static double
profile_above (double depth, double folding)
{
  return expm1 (-depth / folding) / expm1 (-1.0 / folding);
}

void
sw_deposit_depth (int nz, double worked_in, gboolean from_below, double *weights)
{
  /* Working in carries the surface layer deeper; pushed right through, it is everywhere. */
  double folding = SURFACE_DEPTH / MAX (1.0 - worked_in, 1e-9);

  for (int iz = 0; iz < nz; iz++)
    weights[from_below ? nz - 1 - iz : iz] = profile_above ((iz + 1.0) / nz, folding) - profile_above ((double) iz / nz, folding);
}

void
sw_deposit_depth_modes (int nz, double worked_in, gboolean from_below, double *modes)
{
  double *weights = g_new (double, nz);

  sw_deposit_depth (nz, worked_in, from_below, weights);
  for (int n = 0; n < nz; n++)
    {
      modes[n] = 0.0;
      for (int iz = 0; iz < nz; iz++)
        modes[n] += weights[iz] * cos (G_PI * n * (iz + 0.5) / nz);
    }

  g_free (weights);
}
