/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-cloth-raster.h"

#include "colour/sw-mix.h"
#include "draw/sw-cloth-average.h"
#include "draw/sw-cloth-legs.h"
#include "draw/sw-linear.h"
#include "draw/sw-stitch-mask.h"
#include "sketch/sw-chance.h"

#include <math.h>
#include <string.h>

/* Red, green, blue in linear light and cover: one pixel gathered from the legs that share it. */
typedef float Gather __attribute__ ((vector_size (16)));

/* Rows below the lowest that may still show a head in the picture. */
#define REACH_ROWS 3

/* Lines gathered at once, so that they stay in the processor's near memory. */
#define BAND_LINES 24

typedef struct
{
  const SwForecast *forecast;
  const SwClothGeometry *geometry;
  double scale;
  int x, width;
  int y, lines; /* of the band */
  Gather *gather;
  SwLinear linear;
  SwStitchMask *mask;
  float peak;       /* of the mask's light */
  float *xyz;       /* 6 floats a column */
  guint32 *colours; /* 2 a column */
} Band;

/*
 * How much of the light and shade a colour takes, so that its highlights stay
 * within the white. Pale yarn is softer in life too: it lights its own hollows.
 */
static float
contrast_for (const float *rgb, float peak)
{
  const float room = 1 / MAX (MAX (rgb[0], rgb[1]), MAX (rgb[2], 0.01f));

  return CLAMP ((room - 1) / (peak - 1), 0.35f, 1);
}

/*
 * Adds one leg's patch in @colour, with its upper left at @left, @top of the
 * band. A stitch's light sums to its cover, so any mix of the two keeps the
 * colour's mean.
 */
static void
lay_patch (const Band *band, const SwStitchPatch *patch, int left, int top, Gather colour, float contrast)
{
  const Gather lit = colour * (Gather){ contrast, contrast, contrast, 0 };
  const Gather flat = colour * (Gather){ 1 - contrast, 1 - contrast, 1 - contrast, 1 };
  const int from_i = MAX (0, -left), to_i = MIN (patch->width, band->width - left);
  const int from_j = MAX (0, -top), to_j = MIN (patch->height, band->lines - top);

  for (int j = from_j; j < to_j; j++)
    {
      const float *light = patch->light + j * patch->width, *cover = patch->cover + j * patch->width;
      Gather *to = band->gather + (gsize) (top + j) * (gsize) band->width + left;

      for (int i = from_i; i < to_i; i++)
        to[i] += lit * light[i] + flat * cover[i];
    }
}

/* One part of the stitch at @row, @column in the colour of @pixel. */
static void
lay_part (const Band *band, SwStitchPart part, gsize row, gsize column, guint32 pixel)
{
  const guint64 chance = sw_chance_mix (sw_chance_mix (0x636c6f7468, row), column);
  const float tone = 1 + 0.05f * ((float) (chance >> 40 & 0xff) / 255.0f - 0.5f);
  const SwStitchPatch *patch;
  SwBox cell;
  float rgb[3];
  int x, y;

  sw_cloth_stitch_box (band->geometry, row, column, &cell);
  patch = sw_stitch_mask_patch (band->mask, part, cell.x * band->scale, cell.y * band->scale, chance >> (8 * part), &x, &y);
  sw_linear_decode (&band->linear, pixel, rgb);
  lay_patch (band, patch, x + patch->x - band->x, y + patch->y - band->y, (Gather){ rgb[0] * tone, rgb[1] * tone, rgb[2] * tone, 1 }, contrast_for (rgb, band->peak));
}

static void
lay_row (const Band *band, gsize row)
{
  const gsize n = band->geometry->columns, first = band->geometry->first_column;
  const SwStitchPart left = row == 0 ? SW_PART_FIRST_LEFT : SW_PART_LEFT;
  float *x = band->xyz, *y = x + 2 * n, *z = y + 2 * n;

  sw_cloth_legs (band->forecast, row, first, n, x, y, z);
  sw_pixels_from_xyz (x, y, z, 1, 2 * n, band->colours);
  for (gsize i = 0; i < 2 * n; i++)
    lay_part (band, left + i % 2, row, first + i / 2, band->colours[i]);
  if (row > 0)
    return;
  sw_cloth_cast_on (band->forecast, first, n, x, y, z);
  sw_pixels_from_xyz (x, y, z, 1, n, band->colours);
  for (gsize c = 0; c < n; c++)
    lay_part (band, SW_PART_BEAD, row, first + c, band->colours[c]);
}

/* Stitches overlap a little, since each has a shape of its own: what they cover is made one. */
static guint32
inner_pixel (const Band *band, const float *gather)
{
  const float whole = 1 / MAX (gather[3], 0.1f);
  const float rgb[] = { gather[0] * whole, gather[1] * whole, gather[2] * whole };

  return sw_linear_pixel (&band->linear, rgb);
}

/* At the cloth's edge a stitch may cover part of the pixel. */
static guint32
edge_pixel (const Band *band, const float *gather)
{
  return gather[3] < 0.002f ? 0 : sw_linear_premultiply (inner_pixel (band, gather), gather[3]);
}

static void
write_band (const Band *band, int stride, guint32 *pixels)
{
  const SwBox *cloth = &band->geometry->cloth;
  const double left = cloth->x * band->scale - band->x, right = left + cloth->width * band->scale;
  const double top = cloth->y * band->scale - band->y, bottom = top + cloth->height * band->scale;
  const int from = (int) CLAMP (ceil (left), 0, band->width), to = (int) CLAMP (floor (right), from, band->width);

  for (int j = 0; j < band->lines; j++)
    {
      const float *gather = (const float *) (band->gather + (gsize) j * (gsize) band->width);
      guint32 *line = pixels + (gsize) j * (gsize) stride;
      const gboolean inside = j >= top && j + 1 <= bottom;

      for (int i = 0; i < band->width; i++, gather += 4)
        line[i] = inside && i >= from && i < to ? inner_pixel (band, gather) : edge_pixel (band, gather);
    }
}

/*
 * Rows that reach into the band, upwards: also those just outside the
 * geometry's box, whose heads and feet show at its edges.
 */
static void
lay_band (const Band *band)
{
  const SwClothGeometry *geometry = band->geometry;
  const double bottom = (geometry->cloth.y + geometry->cloth.height) * band->scale, row = geometry->row * band->scale;
  const double up_from = floor ((bottom - band->y - band->lines) / row - SW_STITCH_ABOVE - 1), up_to = (bottom - band->y) / row + SW_STITCH_BELOW + 1;
  const double first = (double) geometry->first_row, all = (double) sw_layout_rows (&band->forecast->layout);

  memset (band->gather, 0, sizeof (Gather) * (gsize) band->width * (gsize) band->lines);
  for (double r = MAX (first + up_from, 0); r < MIN (first + up_to, all); r++)
    lay_row (band, (gsize) r);
}

void
sw_cloth_raster (const SwForecast *forecast, const SwClothGeometry *geometry, double scale, int x, int y, int width, int height, int stride, guint32 *pixels)
{
  Band band = { forecast, geometry, scale, x, width };

  if (geometry->stitch * scale < SW_CLOTH_AVERAGE_BELOW || geometry->columns == 0)
    {
      sw_cloth_average (forecast, geometry, scale, x, y, width, height, stride, pixels);
      return;
    }
  sw_linear_init (&band.linear);
  band.mask = sw_stitch_mask_new (geometry->stitch * scale, geometry->row * scale, (int) forecast->sketch->yarn.plies, geometry->first_row < REACH_ROWS);
  band.peak = sw_stitch_mask_get_peak (band.mask);
  band.gather = g_aligned_alloc ((gsize) width * BAND_LINES, sizeof (Gather), sizeof (Gather));
  band.xyz = g_new (float, 6 * geometry->columns);
  band.colours = g_new (guint32, 2 * geometry->columns);
  for (int line = 0; line < height; line += BAND_LINES)
    {
      band.y = y + line;
      band.lines = MIN (BAND_LINES, height - line);
      lay_band (&band);
      write_band (&band, stride, pixels + (gsize) line * (gsize) stride);
    }
  sw_stitch_mask_free (band.mask);
  g_aligned_free (band.gather);
  g_free (band.xyz);
  g_free (band.colours);
}
