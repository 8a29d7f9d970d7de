/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-tile-cache.h"

typedef struct
{
  SwTileKey key;
  gpointer tile;
  gsize bytes;
  GList link; /* in the order of use */
} Entry;

struct _SwTileCache
{
  GHashTable *entries; /* a set: an entry is found by its key, which it begins with */
  GQueue used;         /* newest first */
  gsize bytes, most_bytes;
  GDestroyNotify free_tile;
};

static guint
key_hash (gconstpointer data)
{
  const SwTileKey *key = data;

  return (key->picture * 31 + (guint) key->column) * 8191 + (guint) key->line;
}

static gboolean
key_equal (gconstpointer a, gconstpointer b)
{
  const SwTileKey *x = a, *y = b;

  return x->picture == y->picture && x->column == y->column && x->line == y->line;
}

SwTileCache *
sw_tile_cache_new (gsize most_bytes, GDestroyNotify free_tile)
{
  SwTileCache *self = g_new0 (SwTileCache, 1);

  self->entries = g_hash_table_new (key_hash, key_equal);
  self->most_bytes = most_bytes;
  self->free_tile = free_tile;
  return self;
}

static void
let_go (SwTileCache *self, Entry *entry)
{
  g_hash_table_remove (self->entries, entry);
  g_queue_unlink (&self->used, &entry->link);
  self->bytes -= entry->bytes;
  self->free_tile (entry->tile);
  g_free (entry);
}

static void
make_fit (SwTileCache *self)
{
  while (self->bytes > self->most_bytes)
    let_go (self, self->used.tail->data);
}

void
sw_tile_cache_free (SwTileCache *self)
{
  sw_tile_cache_set_most_bytes (self, 0);
  g_hash_table_unref (self->entries);
  g_free (self);
}

void
sw_tile_cache_set_most_bytes (SwTileCache *self, gsize most_bytes)
{
  self->most_bytes = most_bytes;
  make_fit (self);
}

void
sw_tile_cache_put (SwTileCache *self, const SwTileKey *key, gpointer tile, gsize bytes)
{
  Entry *before = g_hash_table_lookup (self->entries, key), *entry;

  g_return_if_fail (bytes > 0);

  if (before != NULL)
    let_go (self, before);
  entry = g_new (Entry, 1);
  *entry = (Entry){ .key = *key, .tile = tile, .bytes = bytes, .link.data = entry };
  g_hash_table_add (self->entries, entry);
  g_queue_push_head_link (&self->used, &entry->link);
  self->bytes += bytes;
  make_fit (self);
}

gpointer
sw_tile_cache_get (SwTileCache *self, const SwTileKey *key)
{
  Entry *entry = g_hash_table_lookup (self->entries, key);

  if (entry == NULL)
    return NULL;
  g_queue_unlink (&self->used, &entry->link);
  g_queue_push_head_link (&self->used, &entry->link);
  return entry->tile;
}

void
sw_tile_cache_drop (SwTileCache *self, guint picture)
{
  for (GList *link = self->used.head, *next; link != NULL; link = next)
    {
      Entry *entry = link->data;

      next = link->next;
      if (entry->key.picture == picture)
        let_go (self, entry);
    }
}

gsize
sw_tile_cache_get_bytes (const SwTileCache *self)
{
  return self->bytes;
}

guint
sw_tile_cache_get_n_tiles (const SwTileCache *self)
{
  return g_hash_table_size (self->entries);
}
