/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-entry-private.h"

#include "app/desk/sw-document.h"

struct _SwEntryList
{
  GObject parent_instance;

  SwDocument *document; /* weak */
  SwRecord record;
  GPtrArray *entries;
};

static GType
sw_entry_list_get_item_type (GListModel *model)
{
  return SW_TYPE_ENTRY;
}

static guint
sw_entry_list_get_n_items (GListModel *model)
{
  return SW_ENTRY_LIST (model)->entries->len;
}

static gpointer
sw_entry_list_get_item (GListModel *model, guint position)
{
  SwEntryList *self = SW_ENTRY_LIST (model);

  return position < self->entries->len ? g_object_ref (self->entries->pdata[position]) : NULL;
}

static void
sw_entry_list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = sw_entry_list_get_item_type;
  iface->get_n_items = sw_entry_list_get_n_items;
  iface->get_item = sw_entry_list_get_item;
}

G_DEFINE_FINAL_TYPE_WITH_CODE (SwEntryList, sw_entry_list, G_TYPE_OBJECT, G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, sw_entry_list_model_init))

static void
sw_entry_list_finalize (GObject *object)
{
  SwEntryList *self = SW_ENTRY_LIST (object);

  g_ptr_array_unref (self->entries);

  G_OBJECT_CLASS (sw_entry_list_parent_class)->finalize (object);
}

static void
sw_entry_list_class_init (SwEntryListClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sw_entry_list_finalize;
}

static void
sw_entry_list_init (SwEntryList *self)
{
  self->entries = g_ptr_array_new_with_free_func (g_object_unref);
}

SwEntryList *
sw_entry_list_new (SwDocument *document, SwRecord record)
{
  SwEntryList *self = g_object_new (SW_TYPE_ENTRY_LIST, NULL);

  self->document = document;
  self->record = record;
  return self;
}

void
sw_entry_list_detach (SwEntryList *self)
{
  self->document = NULL;
}

static guint
wanted_id (const GPtrArray *records, guint i)
{
  return *(const guint *) records->pdata[i]; /* dyes and steps begin with their id */
}

static guint
entry_id (const GPtrArray *entries, guint i)
{
  return sw_entry_get_id (entries->pdata[i]);
}

gboolean
sw_entry_list_find (SwEntryList *self, guint id, guint *position)
{
  g_return_val_if_fail (SW_IS_ENTRY_LIST (self), FALSE);

  for (guint i = 0; i < self->entries->len; i++)
    if (entry_id (self->entries, i) == id)
      {
        if (position != NULL)
          *position = i;
        return TRUE;
      }
  return FALSE;
}

static void
renumber (SwEntryList *self)
{
  for (guint i = 0; i < self->entries->len; i++)
    sw_entry_set_position (self->entries->pdata[i], i);
}

void
sw_entry_list_sync (SwEntryList *self)
{
  const SwSketch *sketch = sw_document_get_sketch (self->document);
  const GPtrArray *wanted = self->record == SW_RECORD_DYE ? sketch->dyes : sketch->steps;
  GPtrArray *old = self->entries;
  GPtrArray *entries;
  guint head = 0, tail = 0;

  while (head < old->len && head < wanted->len && entry_id (old, head) == wanted_id (wanted, head))
    head++;
  while (tail < old->len - head && tail < wanted->len - head &&
         entry_id (old, old->len - 1 - tail) == wanted_id (wanted, wanted->len - 1 - tail))
    tail++;
  if (old->len == wanted->len && head == old->len)
    return;

  entries = g_ptr_array_new_with_free_func (g_object_unref);
  for (guint i = 0; i < wanted->len; i++)
    {
      guint id = wanted_id (wanted, i), was;

      g_ptr_array_add (entries, sw_entry_list_find (self, id, &was) ? g_object_ref (old->pdata[was])
                                                                    : sw_entry_new (self->document, self->record, id));
    }
  self->entries = entries;
  renumber (self);
  g_list_model_items_changed (G_LIST_MODEL (self), head, old->len - head - tail, wanted->len - head - tail);
  g_ptr_array_unref (old);
}

void
sw_entry_list_touch (SwEntryList *self, guint id)
{
  for (guint i = 0; i < self->entries->len; i++)
    if (id == 0 || entry_id (self->entries, i) == id)
      sw_entry_touch (self->entries->pdata[i]);
}
