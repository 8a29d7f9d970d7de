/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "skein/sw-scatter-private.h"

#include "sketch/sw-chance.h"

/* Parts of a wrap's address. */
enum
{
  PART_ORDER,
  PART_PLACE,
};

double
sw_scatter (guint64 seed, gsize n)
{
  guint64 order_seed = sw_chance_mix (seed, PART_ORDER);
  gsize first = n - n % SW_SCATTER_BLOCK;
  guint64 own = sw_chance_mix (order_seed, n);
  gsize slot = 0;
  double within = sw_chance_even (sw_chance_mix (sw_chance_mix (seed, PART_PLACE), n));

  /* A wrap's slot is its rank among the block's. */
  for (gsize i = first; i < first + SW_SCATTER_BLOCK; i++)
    slot += sw_chance_mix (order_seed, i) < own;

  return ((double) slot + within) / SW_SCATTER_BLOCK;
}
