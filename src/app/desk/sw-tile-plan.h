/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Which tiles of a large picture are wanted, and in which order. */

#define SW_TILE_PX 256

/* The first tile begins this far above and to the left of the picture's corner, so that what reaches a little beyond it needs no tiles of its own. */
#define SW_TILE_BEFORE 32

/* Pixels from the picture's upper left corner. */
typedef struct
{
  int x, y, width, height;
} SwTileBox;

typedef struct
{
  int column, line;
} SwTilePlace;

SwTileBox sw_tile_box (SwTilePlace place);

/**
 * sw_tile_plan:
 * @picture: what there is to see
 * @seen: the part of it that is seen; may reach beyond
 * @ahead: (nullable): the part that may soon be seen, holds @seen
 * @most: at most so many places are wanted beside those that are seen
 * @n_seen: (out): how many are seen
 * Returns: (transfer full): of SwTilePlace: those that are seen, from the middle outwards, then those ahead, the nearest first
 */
GArray *sw_tile_plan (const SwTileBox *picture, const SwTileBox *seen, const SwTileBox *ahead, guint most, guint *n_seen);

G_END_DECLS
