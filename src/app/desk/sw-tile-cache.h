/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Tiles of pictures, up to so many bytes: those used longest ago go first.
 * What a tile is, only the owner knows.
 */
typedef struct _SwTileCache SwTileCache;

typedef struct
{
  guint picture; /* of which it is a part */
  int column, line;
} SwTileKey;

SwTileCache *sw_tile_cache_new (gsize most_bytes, GDestroyNotify free_tile) G_GNUC_WARN_UNUSED_RESULT;
void sw_tile_cache_free (SwTileCache *self);

/* Less lets go of tiles at once. */
void sw_tile_cache_set_most_bytes (SwTileCache *self, gsize most_bytes);

/**
 * sw_tile_cache_put:
 * @tile: (transfer full): takes the place of one with that key; @bytes of memory
 * Others go until it fits; it goes itself if it is larger than all there may be.
 */
void sw_tile_cache_put (SwTileCache *self, const SwTileKey *key, gpointer tile, gsize bytes);

/* Returns: (transfer none) (nullable): and it counts as used just now */
gpointer sw_tile_cache_get (SwTileCache *self, const SwTileKey *key);

/* Lets go of all tiles of a picture. */
void sw_tile_cache_drop (SwTileCache *self, guint picture);

gsize sw_tile_cache_get_bytes (const SwTileCache *self);
guint sw_tile_cache_get_n_tiles (const SwTileCache *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwTileCache, sw_tile_cache_free)

G_END_DECLS
