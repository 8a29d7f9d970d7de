/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-kernel-private.h"
#include "colour/sw-mix.h"

#include <math.h>

/* K/S of the mix, its reflectance and the three sums, for one band of a block. */
SW_INLINE void
add_band (const SwPalette *palette, int band, float depths[SW_MAX_DYES][SW_BLOCK], float xyz[3][SW_BLOCK])
{
  float wx = (float) sw_weight_x[band];
  float wy = (float) sw_weight_y[band];
  float wz = (float) sw_weight_z[band];
  float ks[SW_BLOCK];

  for (int i = 0; i < SW_BLOCK; i++)
    ks[i] = palette->yarn[band];
  for (int dye = 0; dye < palette->n_dyes; dye++)
    for (int i = 0; i < SW_BLOCK; i++)
      ks[i] += palette->slope[dye][band] * depths[dye][i];
  for (int i = 0; i < SW_BLOCK; i++)
    {
      /* The quotient and not 1 + ks - sqrt (...): in single precision that difference is noise from ks = 1000 on. */
      float reflectance = 1 / (1 + ks[i] + sqrtf (ks[i] * (ks[i] + 2)));

      xyz[0][i] += wx * reflectance;
      xyz[1][i] += wy * reflectance;
      xyz[2][i] += wz * reflectance;
    }
}

/* @count places from @at on, at most a block. The full block's count is a literal, so that its copies become plain moves. */
SW_INLINE void
mix_block (const SwPalette *palette, const float *const *depths, gsize at, gsize count, float *x, float *y, float *z)
{
  float block[SW_MAX_DYES][SW_BLOCK];
  float xyz[3][SW_BLOCK] = { 0 };

  for (int dye = 0; dye < palette->n_dyes; dye++)
    {
      memset (block[dye], 0, sizeof block[dye]);
      for (gsize i = 0; i < count; i++)
        block[dye][i] = MAX (depths[dye][at + i], 0);
    }
  for (int band = 0; band < SW_BANDS; band++)
    add_band (palette, band, block, xyz);
  memcpy (x + at, xyz[0], count * sizeof (float));
  memcpy (y + at, xyz[1], count * sizeof (float));
  memcpy (z + at, xyz[2], count * sizeof (float));
}

SW_CLONES void
sw_mix_xyz (const SwPalette *palette, const float *const *depths, gsize n, float *x, float *y, float *z)
{
  gsize at = 0;

  for (; n - at >= SW_BLOCK; at += SW_BLOCK)
    mix_block (palette, depths, at, SW_BLOCK, x, y, z);
  if (at < n)
    mix_block (palette, depths, at, n - at, x, y, z);
}
