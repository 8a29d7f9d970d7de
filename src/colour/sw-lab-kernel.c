/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-kernel-private.h"
#include "colour/sw-mix.h"

/* @count places from @at on, at most a block; read before written, so it may work in place. */
SW_INLINE void
lab_block (const float *x, const float *y, const float *z, gsize at, gsize count, float *l, float *a, float *b)
{
  const float over_x = (float) (1 / sw_white.x), over_y = (float) (1 / sw_white.y), over_z = (float) (1 / sw_white.z);
  float block[3][SW_BLOCK] = { 0 };

  memcpy (block[0], x + at, count * sizeof (float));
  memcpy (block[1], y + at, count * sizeof (float));
  memcpy (block[2], z + at, count * sizeof (float));
  for (int i = 0; i < SW_BLOCK; i++)
    {
      float fx = sw_lab_f (block[0][i] * over_x);
      float fy = sw_lab_f (block[1][i] * over_y);
      float fz = sw_lab_f (block[2][i] * over_z);

      block[0][i] = 116 * fy - 16;
      block[1][i] = 500 * (fx - fy);
      block[2][i] = 200 * (fy - fz);
    }
  memcpy (l + at, block[0], count * sizeof (float));
  memcpy (a + at, block[1], count * sizeof (float));
  memcpy (b + at, block[2], count * sizeof (float));
}

SW_CLONES void
sw_lab_from_xyz_many (const float *x, const float *y, const float *z, gsize n, float *l, float *a, float *b)
{
  gsize at = 0;

  for (; n - at >= SW_BLOCK; at += SW_BLOCK)
    lab_block (x, y, z, at, SW_BLOCK, l, a, b);
  if (at < n)
    lab_block (x, y, z, at, n - at, l, a, b);
}
