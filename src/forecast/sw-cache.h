/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Results by what they depend on. A stage's key is a hash of all its inputs;
 * whatever a run does not ask for again is dropped at its end.
 */

/* Keys are built by folding inputs into a hash, one after the other. */
typedef guint64 SwKey;

SwKey sw_key_whole (SwKey key, guint64 whole);
SwKey sw_key_number (SwKey key, double number);
SwKey sw_key_numbers (SwKey key, const double *numbers, gsize n);

/* Immutable once in the cache; reference-counted, so that a forecast may outlive it. */
typedef struct _SwPart SwPart;
struct _SwPart
{
  gatomicrefcount ref_count;
  void (*free_contents) (gpointer part);
};

/* Makes a zeroed part of @size bytes, whose first member is a SwPart. */
gpointer sw_part_new (gsize size, void (*free_contents) (gpointer part)) G_GNUC_WARN_UNUSED_RESULT;
gpointer sw_part_ref (gpointer part);
void sw_part_unref (gpointer part);

typedef struct _SwCache SwCache;

SwCache *sw_cache_new (void) G_GNUC_WARN_UNUSED_RESULT;
void sw_cache_free (SwCache *cache);

/* Returns: (transfer none) (nullable): the part, which is then kept by the next sw_cache_sweep() */
gpointer sw_cache_get (SwCache *cache, SwKey key);

/* @part: (transfer full). Returns: (transfer none): the same */
gpointer sw_cache_put (SwCache *cache, SwKey key, gpointer part);

/* Takes a reference on all parts that were asked for or put since the last sweep, and drops the others. */
GPtrArray *sw_cache_sweep (SwCache *cache) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
