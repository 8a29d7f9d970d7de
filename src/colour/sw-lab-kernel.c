/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-kernel-private.h"
#include "colour/sw-mix.h"

SW_CLONES void
sw_lab_from_xyz_many (const float *x, const float *y, const float *z, gsize n, float *l, float *a, float *b)
{
  const float over_x = (float) (1 / sw_white.x), over_y = (float) (1 / sw_white.y), over_z = (float) (1 / sw_white.z);

  for (gsize at = 0; at < n; at += SW_BLOCK)
    {
      gsize count = MIN (SW_BLOCK, n - at);
      float f[3][SW_BLOCK] = { 0 };

      memcpy (f[0], x + at, count * sizeof (float));
      memcpy (f[1], y + at, count * sizeof (float));
      memcpy (f[2], z + at, count * sizeof (float));
      for (int i = 0; i < SW_BLOCK; i++)
        {
          float fx = sw_lab_f (f[0][i] * over_x);
          float fy = sw_lab_f (f[1][i] * over_y);
          float fz = sw_lab_f (f[2][i] * over_z);

          f[0][i] = 116 * fy - 16;
          f[1][i] = 500 * (fx - fy);
          f[2][i] = 200 * (fy - fz);
        }
      memcpy (l + at, f[0], count * sizeof (float));
      memcpy (a + at, f[1], count * sizeof (float));
      memcpy (b + at, f[2], count * sizeof (float));
    }
}
