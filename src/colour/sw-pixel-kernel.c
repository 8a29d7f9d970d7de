/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-kernel-private.h"
#include "colour/sw-mix.h"
#include "colour/sw-srgb-private.h"

#include <math.h>

/* Halvings of the chroma. The last moves a colour by a hundredth of a unit of chroma at most, far below half a code. */
#define FIT_STEPS 16

/* A single-precision colour on the cube's face is off it by about this; clamping so little is not seen. */
#define GAMUT_TOLERANCE 2e-6f

/* Three numbers for each place of a block. */
typedef struct
{
  float v[3][SW_BLOCK];
} Block;

SW_INLINE float
lab_f_inverse (float f)
{
  return f > 6.0f / 29.0f ? f * f * f : (f - 4.0f / 29.0f) * (108.0f / 841.0f);
}

SW_INLINE float
channel (int row, float x, float y, float z)
{
  const double *m = sw_srgb_from_white[row];

  return (float) m[0] * x + (float) m[1] * y + (float) m[2] * z;
}

SW_INLINE int
channel_fits (float value)
{
  return (value >= -GAMUT_TOLERANCE) & (value <= 1 + GAMUT_TOLERANCE);
}

SW_INLINE int
place_fits (const Block *linear, int i)
{
  return channel_fits (linear->v[0][i]) & channel_fits (linear->v[1][i]) & channel_fits (linear->v[2][i]);
}

/* Linear RGB of the colours with @share of their chroma, hue and lightness kept. */
SW_INLINE void
linear_at_share (const Block *f, const float *share, Block *linear)
{
  for (int i = 0; i < SW_BLOCK; i++)
    {
      float fy = f->v[1][i];
      float x = lab_f_inverse (fy + share[i] * (f->v[0][i] - fy));
      float y = lab_f_inverse (fy);
      float z = lab_f_inverse (fy + share[i] * (f->v[2][i] - fy));

      for (int row = 0; row < 3; row++)
        linear->v[row][i] = channel (row, x, y, z);
    }
}

/* The bisection of sw_srgb_from_xyz(), all places of a block at once; those that fit already stay as they are. */
SW_INLINE void
fit_chroma (const Block *ratio, Block *linear)
{
  float inside[SW_BLOCK], outside[SW_BLOCK], share[SW_BLOCK];
  Block f;

  for (int row = 0; row < 3; row++)
    for (int i = 0; i < SW_BLOCK; i++)
      f.v[row][i] = sw_lab_f (ratio->v[row][i]);
  for (int i = 0; i < SW_BLOCK; i++)
    {
      inside[i] = place_fits (linear, i) ? 1.0f : 0.0f;
      outside[i] = 1;
    }
  for (int step = 0; step < FIT_STEPS; step++)
    {
      for (int i = 0; i < SW_BLOCK; i++)
        share[i] = (inside[i] + outside[i]) / 2;
      linear_at_share (&f, share, linear);
      for (int i = 0; i < SW_BLOCK; i++)
        {
          int fits = place_fits (linear, i);

          inside[i] = fits ? share[i] : inside[i];
          outside[i] = fits ? outside[i] : share[i];
        }
    }
  linear_at_share (&f, inside, linear);
}

/* Two loops on purpose: in one, compilers see branches and give up on registers. Not a number becomes 0. */
SW_INLINE void
hold (float *values)
{
  for (int i = 0; i < SW_BLOCK; i++)
    values[i] = values[i] > 0 ? values[i] : 0;
  for (int i = 0; i < SW_BLOCK; i++)
    values[i] = values[i] < 1 ? values[i] : 1;
}

/*
 * Of a value from 0 to 1. value^(1/2.4) = c c^(1/4) with c the cube root: exact to single precision, and no table to miss a cache.
 * Below the threshold the straight line is the smaller, since the curve is held at the threshold.
 */
SW_INLINE guint32
code (float linear)
{
  float root = sw_cube_root (MAX (linear, (float) SW_SRGB_THRESHOLD));
  float curve = (float) SW_SRGB_GAIN * root * sqrtf (sqrtf (root)) - (float) SW_SRGB_OFFSET;
  float line = (float) SW_SRGB_SLOPE * linear;

  return (guint32) (gint32) (MIN (curve, line) * 255 + 0.5f);
}

/* @count places from @at on, at most a block. */
SW_INLINE void
pixel_block (const float *x, const float *y, const float *z, gsize stride, gsize at, gsize count, guint32 *pixels)
{
  const float over_x = (float) (1 / sw_white.x), over_y = (float) (1 / sw_white.y), over_z = (float) (1 / sw_white.z);
  Block ratio = { 0 }, linear;
  guint32 block[SW_BLOCK];
  int all_fit = 1;

  for (gsize i = 0; i < count; i++)
    {
      ratio.v[0][i] = x[(at + i) * stride] * over_x;
      ratio.v[1][i] = y[(at + i) * stride] * over_y;
      ratio.v[2][i] = z[(at + i) * stride] * over_z;
    }
  for (int i = 0; i < SW_BLOCK; i++)
    for (int row = 0; row < 3; row++)
      linear.v[row][i] = channel (row, ratio.v[0][i], ratio.v[1][i], ratio.v[2][i]);
  for (int i = 0; i < SW_BLOCK; i++)
    all_fit &= place_fits (&linear, i);
  if (!all_fit)
    fit_chroma (&ratio, &linear);
  for (int row = 0; row < 3; row++)
    hold (linear.v[row]);
  for (int i = 0; i < SW_BLOCK; i++)
    block[i] = 0xff000000u | code (linear.v[0][i]) << 16 | code (linear.v[1][i]) << 8 | code (linear.v[2][i]);
  memcpy (pixels + at, block, count * sizeof *block);
}

SW_CLONES void
sw_pixels_from_xyz (const float *x, const float *y, const float *z, gsize stride, gsize n, guint32 *pixels)
{
  for (gsize at = 0; at < n; at += SW_BLOCK)
    pixel_block (x, y, z, stride, at, MIN (SW_BLOCK, n - at), pixels);
}
