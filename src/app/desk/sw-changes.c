/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-changes.h"

/* Dyes and steps both begin with their id, which is all that a list needs to know of them. */
G_STATIC_ASSERT (G_STRUCT_OFFSET (SwDye, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (SwStep, id) == 0);

static guint
id_of (gconstpointer item)
{
  return *(const guint *) item;
}

static gboolean
record_equal (SwRecord record, gconstpointer a, gconstpointer b)
{
  const SwMember *members;
  gsize n;

  /* A step's kind is no member: it is never edited, but another file's step may have the same id. */
  if (record == SW_RECORD_STEP && ((const SwStep *) a)->kind != ((const SwStep *) b)->kind)
    return FALSE;

  members = sw_record_members (record, &n);
  for (gsize i = 0; i < n; i++)
    {
      SwValue value_a, value_b;
      gboolean equal;

      sw_member_get (&members[i], a, &value_a);
      sw_member_get (&members[i], b, &value_b);
      equal = sw_value_equal (&value_a, &value_b);
      sw_value_clear (&value_a);
      sw_value_clear (&value_b);
      if (!equal)
        return FALSE;
    }
  return TRUE;
}

static gconstpointer
find_by_id (const GPtrArray *list, guint id, guint near)
{
  /* Most edits leave the order alone, so look first where it was. */
  if (near < list->len && id_of (list->pdata[near]) == id)
    return list->pdata[near];

  for (guint i = 0; i < list->len; i++)
    if (id_of (list->pdata[i]) == id)
      return list->pdata[i];
  return NULL;
}

static gboolean
same_order (const GPtrArray *before, const GPtrArray *after)
{
  if (before->len != after->len)
    return FALSE;

  for (guint i = 0; i < before->len; i++)
    if (id_of (before->pdata[i]) != id_of (after->pdata[i]))
      return FALSE;
  return TRUE;
}

static GArray *
list_differences (SwRecord record, const GPtrArray *before, const GPtrArray *after)
{
  GArray *ids = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < before->len; i++)
    {
      guint id = id_of (before->pdata[i]);
      gconstpointer now = find_by_id (after, id, i);

      if (now == NULL || !record_equal (record, before->pdata[i], now))
        g_array_append_val (ids, id);
    }
  for (guint i = 0; i < after->len; i++)
    {
      guint id = id_of (after->pdata[i]);

      if (find_by_id (before, id, i) == NULL)
        g_array_append_val (ids, id);
    }
  return ids;
}

/* Batches are shown as a whole: which of them differs is of no account. */
static gboolean
lists_differ (SwRecord record, const GPtrArray *before, const GPtrArray *after)
{
  g_autoptr (GArray) ids = list_differences (record, before, after);

  return ids->len > 0 || !same_order (before, after);
}

void
sw_changes_find (const SwSketch *before, const SwSketch *after, SwChanges *changes)
{
  const struct
  {
    SwRecord record;
    gconstpointer before, after;
  } singles[] = {
    { SW_RECORD_SKETCH, before, after },
    { SW_RECORD_YARN, &before->yarn, &after->yarn },
    { SW_RECORD_REEL, &before->reel, &after->reel },
    { SW_RECORD_LAY, &before->lay, &after->lay },
    { SW_RECORD_BATH, &before->bath, &after->bath },
    { SW_RECORD_CLOTH, &before->cloth, &after->cloth },
    { SW_RECORD_SHEET, &before->sheet, &after->sheet },
    { SW_RECORD_LISTING, &before->listing, &after->listing },
  };

  g_return_if_fail (before != NULL && after != NULL && changes != NULL);

  changes->what = 0;
  for (gsize i = 0; i < G_N_ELEMENTS (singles); i++)
    if (!record_equal (singles[i].record, singles[i].before, singles[i].after))
      changes->what |= SW_CHANGED (singles[i].record);

  changes->dyes = list_differences (SW_RECORD_DYE, before->dyes, after->dyes);
  changes->steps = list_differences (SW_RECORD_STEP, before->steps, after->steps);
  if (changes->dyes->len > 0)
    changes->what |= SW_CHANGED (SW_RECORD_DYE);
  if (changes->steps->len > 0)
    changes->what |= SW_CHANGED (SW_RECORD_STEP);
  if (lists_differ (SW_RECORD_BATCH, before->batches, after->batches))
    changes->what |= SW_CHANGED (SW_RECORD_BATCH);
  if (!same_order (before->dyes, after->dyes))
    changes->what |= SW_CHANGED (SW_RECORD_DYE) | SW_CHANGED_ORDER;
  if (!same_order (before->steps, after->steps))
    changes->what |= SW_CHANGED (SW_RECORD_STEP) | SW_CHANGED_ORDER;
}

void
sw_changes_clear (SwChanges *changes)
{
  g_clear_pointer (&changes->dyes, g_array_unref);
  g_clear_pointer (&changes->steps, g_array_unref);
}

guint
sw_changes_only_id (const SwChanges *changes)
{
  if (changes->dyes->len + changes->steps->len != 1)
    return 0;
  return g_array_index (changes->dyes->len == 1 ? changes->dyes : changes->steps, guint, 0);
}
