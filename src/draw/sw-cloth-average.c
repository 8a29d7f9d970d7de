/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-cloth-average.h"

#include "colour/sw-mix.h"
#include "draw/sw-cloth-legs.h"
#include "draw/sw-linear.h"

#include <math.h>
#include <string.h>

/* One line: sums of x, y, z and the share that is cloth. */
typedef struct
{
  float *x, *y, *z, *share;
} Line;

/* Where a pixel begins and the one before it ends: so much into that leg. */
typedef struct
{
  gsize leg;
  double share;
} Place;

typedef struct
{
  const SwForecast *forecast;
  const SwClothGeometry *geometry;
  double leg_px, left; /* device px of half a stitch; of the cloth's left edge in the picture */
  gsize legs;
  float *xyz;  /* 6 a column */
  Place *ends; /* of the pixels, width + 1 */
  gsize row;   /* that `resampled` holds; G_MAXSIZE none */
  Line resampled, line;
  int width;
} Average;

static Line
line_new (int width)
{
  float *numbers = g_new0 (float, 4 * (gsize) width);

  return (Line){ numbers, numbers + width, numbers + 2 * width, numbers + 3 * width };
}

/*
 * The remainder is exact, so a pixel's ends are the same however far to the
 * left the cloth begins: parts of a cloth that are averaged one by one fit.
 */
static Place
place_of (const Average *average, int x)
{
  const double from_edge = x - average->left;
  double rest;

  if (from_edge <= 0)
    return (Place){ 0, 0 };
  if (from_edge >= average->leg_px * (double) average->legs)
    return (Place){ average->legs, 0 };
  rest = fmod (from_edge, average->leg_px);
  return (Place){ MIN ((gsize) llround ((from_edge - rest) / average->leg_px), average->legs - 1), rest / average->leg_px };
}

/* The sum of legs from one place to another. */
static double
sum_between (const float *legs, Place from, Place to)
{
  double sum;

  if (from.leg == to.leg)
    return to.share > from.share ? (double) legs[from.leg] * (to.share - from.share) : 0;
  sum = (double) legs[from.leg] * (1 - from.share);
  for (gsize leg = from.leg + 1; leg < to.leg; leg++)
    sum += (double) legs[leg];
  if (to.share > 0)
    sum += (double) legs[to.leg] * to.share;
  return sum;
}

static void
resample_row (Average *average, gsize row)
{
  const gsize n = average->legs;
  const float *xyz = average->xyz;
  float *to[] = { average->resampled.x, average->resampled.y, average->resampled.z };

  if (average->row == row)
    return;
  average->row = row;
  sw_cloth_legs (average->forecast, average->geometry->purl_side, row, average->geometry->first_column, n / 2, average->xyz, average->xyz + n, average->xyz + 2 * n);
  for (gsize channel = 0; channel < 3; channel++)
    for (int i = 0; i < average->width; i++)
      to[channel][i] = (float) (sum_between (xyz + channel * n, average->ends[i], average->ends[i + 1]) * average->leg_px);
}

/* Adds @weight of a row to the line. */
static void
add_row (Average *average, gsize row, double weight)
{
  const Line *from = &average->resampled, *to = &average->line;
  const float w = (float) weight;

  resample_row (average, row);
  for (int i = 0; i < average->width; i++)
    {
      to->x[i] += w * from->x[i];
      to->y[i] += w * from->y[i];
      to->z[i] += w * from->z[i];
      to->share[i] += w * from->share[i];
    }
}

static void
write_line (Average *average, guint32 *pixels)
{
  Line *line = &average->line;

  for (int i = 0; i < average->width; i++)
    {
      const float inverse = line->share[i] > 1e-4f ? 1 / line->share[i] : 0;

      line->x[i] *= inverse;
      line->y[i] *= inverse;
      line->z[i] *= inverse;
    }
  sw_pixels_from_xyz (line->x, line->y, line->z, 1, (gsize) average->width, pixels);
  for (int i = 0; i < average->width; i++)
    if (line->share[i] < 0.998f)
      pixels[i] = sw_linear_premultiply (pixels[i], line->share[i]);
}

static void
average_init (Average *average, double scale, int x, int width)
{
  const gsize n = 2 * average->geometry->columns;

  average->leg_px = average->geometry->stitch * scale / 2;
  average->left = average->geometry->cloth.x * scale - x;
  average->legs = n;
  average->xyz = g_new (float, 3 * n);
  average->ends = g_new (Place, (gsize) width + 1);
  for (int i = 0; i <= width; i++)
    average->ends[i] = place_of (average, i);
  average->row = G_MAXSIZE;
  average->resampled = line_new (width);
  average->line = line_new (width);
  average->width = width;
  /* How much of each pixel's width is cloth is the same in every row. */
  for (int i = 0; i < width; i++)
    average->resampled.share[i] = (float) MAX (MIN (i + 1, average->left + average->leg_px * (double) n) - MAX (i, average->left), 0);
}

void
sw_cloth_average (const SwForecast *forecast, const SwClothGeometry *geometry, double scale, int x, int y, int width, int height, int stride, guint32 *pixels)
{
  Average average = { forecast, geometry };
  const double bottom = (geometry->cloth.y + geometry->cloth.height) * scale - y, row = geometry->row * scale;
  const double rows = (double) geometry->rows;

  if (geometry->columns == 0)
    {
      for (int j = 0; j < height; j++)
        memset (pixels + (gsize) j * (gsize) stride, 0, 4 * (gsize) width);
      return;
    }
  average_init (&average, scale, x, width);
  for (int j = 0; j < height; j++)
    {
      const double high = CLAMP ((bottom - j) / row, 0, rows), low = CLAMP ((bottom - j - 1) / row, 0, rows);

      memset (average.line.x, 0, 4 * sizeof (float) * (gsize) width);
      for (double up = floor (low); up < high; up++)
        add_row (&average, geometry->first_row + (gsize) up, (MIN (up + 1, high) - MAX (up, low)) * row);
      write_line (&average, pixels + (gsize) j * (gsize) stride);
    }
  g_free (average.xyz);
  g_free (average.ends);
  g_free (average.resampled.x);
  g_free (average.line.x);
}
