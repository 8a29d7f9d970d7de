/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-grain.h"

SwGrain *
sw_grain_new (guint64 seed)
{
  SwGrain *grain = g_new (SwGrain, 1);

  for (guint i = 0; i < SW_GRAIN_ROWS; i++)
    for (guint j = 0; j < SW_GRAIN_KNOTS; j++)
      grain->tones[i][j] = (float) (2 * sw_chance_even (sw_chance_mix (sw_chance_mix (seed, i), j)) - 1);
  return grain;
}
