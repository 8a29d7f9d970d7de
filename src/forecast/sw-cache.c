/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "forecast/sw-cache.h"

#include "sketch/sw-chance.h"

#include <string.h>

SwKey
sw_key_whole (SwKey key, guint64 whole)
{
  return sw_chance_mix (key, whole);
}

SwKey
sw_key_number (SwKey key, double number)
{
  guint64 bits;

  /* Minus nought and nought are one input. */
  number += 0.0;
  memcpy (&bits, &number, sizeof bits);
  return sw_chance_mix (key, bits);
}

SwKey
sw_key_numbers (SwKey key, const double *numbers, gsize n)
{
  key = sw_key_whole (key, n);
  for (gsize i = 0; i < n; i++)
    key = sw_key_number (key, numbers[i]);
  return key;
}

gpointer
sw_part_new (gsize size, void (*free_contents) (gpointer part))
{
  SwPart *part = g_malloc0 (size);

  g_atomic_ref_count_init (&part->ref_count);
  part->free_contents = free_contents;
  return part;
}

gpointer
sw_part_ref (gpointer part)
{
  g_atomic_ref_count_inc (&((SwPart *) part)->ref_count);
  return part;
}

void
sw_part_unref (gpointer part)
{
  if (!g_atomic_ref_count_dec (&((SwPart *) part)->ref_count))
    return;

  ((SwPart *) part)->free_contents (part);
  g_free (part);
}

typedef struct
{
  SwKey key; /* first, so that an entry is its own key for g_int64_hash() */
  gpointer part;
  gboolean wanted;
} Entry;

struct _SwCache
{
  GHashTable *entries;
};

static void
entry_free (gpointer data)
{
  Entry *entry = data;

  sw_part_unref (entry->part);
  g_free (entry);
}

SwCache *
sw_cache_new (void)
{
  SwCache *cache = g_new0 (SwCache, 1);

  cache->entries = g_hash_table_new_full (g_int64_hash, g_int64_equal, NULL, entry_free);
  return cache;
}

void
sw_cache_free (SwCache *cache)
{
  g_hash_table_unref (cache->entries);
  g_free (cache);
}

gpointer
sw_cache_get (SwCache *cache, SwKey key)
{
  Entry *entry = g_hash_table_lookup (cache->entries, &key);

  if (entry == NULL)
    return NULL;

  entry->wanted = TRUE;
  return entry->part;
}

gpointer
sw_cache_put (SwCache *cache, SwKey key, gpointer part)
{
  Entry *entry = g_new (Entry, 1);

  entry->key = key;
  entry->part = part;
  entry->wanted = TRUE;
  g_hash_table_replace (cache->entries, entry, entry);
  return part;
}

GPtrArray *
sw_cache_sweep (SwCache *cache)
{
  GPtrArray *parts = g_ptr_array_new_with_free_func (sw_part_unref);
  GHashTableIter iter;
  Entry *entry;

  g_hash_table_iter_init (&iter, cache->entries);
  while (g_hash_table_iter_next (&iter, (gpointer *) &entry, NULL))
    {
      if (!entry->wanted)
        {
          g_hash_table_iter_remove (&iter);
          continue;
        }
      entry->wanted = FALSE;
      g_ptr_array_add (parts, sw_part_ref (entry->part));
    }
  return parts;
}
