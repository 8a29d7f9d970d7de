/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-edit-private.h"

#include "sketch/sw-sketch-private.h"

/* Edits as values: made, copied, freed. What they do is in sw-edit-apply.c. */

G_STATIC_ASSERT (G_STRUCT_OFFSET (SwDye, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (SwStep, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (SwBatch, id) == 0);

gpointer
sw_item_copy (SwRecord record, gconstpointer item)
{
  if (record == SW_RECORD_DYE)
    return sw_dye_copy (item);
  return record == SW_RECORD_STEP ? (gpointer) sw_step_copy (item) : (gpointer) sw_batch_copy (item);
}

static void
item_free (SwRecord record, gpointer item)
{
  if (record == SW_RECORD_DYE)
    sw_dye_free (item);
  else if (record == SW_RECORD_STEP)
    sw_step_free (item);
  else
    sw_batch_free (item);
}

SwEdit *
sw_edit_new (SwAct act, SwRecord record, guint id)
{
  SwEdit *edit = g_new0 (SwEdit, 1);

  edit->act = act;
  edit->record = record;
  edit->id = id;
  return edit;
}

SwEdit *
sw_edit_set (SwRecord record, guint id, const char *member, const SwValue *value)
{
  SwEdit *edit;

  g_return_val_if_fail ((guint) record < SW_N_RECORDS, NULL);
  g_return_val_if_fail (member != NULL && value != NULL, NULL);

  edit = sw_edit_new (SW_ACT_SET, record, id);
  edit->member = g_strdup (member);
  sw_value_copy (value, &edit->value);
  return edit;
}

SwEdit *
sw_edit_insert (SwRecord record, int index, gpointer item)
{
  SwEdit *edit = sw_edit_new (SW_ACT_INSERT, record, *sw_item_id (item));

  edit->index = index;
  edit->item = item;
  return edit;
}

SwEdit *
sw_edit_insert_dye (int index, const SwDye *dye)
{
  g_return_val_if_fail (dye != NULL, NULL);

  return sw_edit_insert (SW_RECORD_DYE, index, sw_dye_copy (dye));
}

SwEdit *
sw_edit_insert_step (int index, const SwStep *step)
{
  g_return_val_if_fail (step != NULL && (guint) step->kind < SW_N_STEP_KINDS, NULL);

  return sw_edit_insert (SW_RECORD_STEP, index, sw_step_copy_used (step));
}

SwEdit *
sw_edit_insert_batch (int index, const SwBatch *batch)
{
  g_return_val_if_fail (batch != NULL, NULL);

  return sw_edit_insert (SW_RECORD_BATCH, index, sw_batch_copy (batch));
}

SwEdit *
sw_edit_remove (SwRecord record, guint id)
{
  g_return_val_if_fail (sw_record_is_list (record), NULL);

  return sw_edit_new (SW_ACT_REMOVE, record, id);
}

SwEdit *
sw_edit_move (SwRecord record, guint id, int index)
{
  SwEdit *edit;

  g_return_val_if_fail (sw_record_is_list (record), NULL);

  edit = sw_edit_new (SW_ACT_MOVE, record, id);
  edit->index = index;
  return edit;
}

SwEdit *
sw_edit_group (SwEdit **edits, gsize n)
{
  SwEdit *edit;

  g_return_val_if_fail (edits != NULL || n == 0, NULL);

  edit = sw_edit_new (SW_ACT_GROUP, SW_RECORD_SKETCH, 0);
  edit->edits = g_new (SwEdit *, n);
  edit->n = n;
  for (gsize i = 0; i < n; i++)
    edit->edits[i] = edits[i];
  return edit;
}

SwEdit *
sw_edit_copy (const SwEdit *edit)
{
  SwEdit *copy;

  g_return_val_if_fail (edit != NULL, NULL);

  copy = sw_edit_new (edit->act, edit->record, edit->id);
  copy->index = edit->index;
  copy->member = g_strdup (edit->member);
  sw_value_copy (&edit->value, &copy->value);
  if (edit->item != NULL)
    copy->item = sw_item_copy (edit->record, edit->item);
  copy->edits = g_new (SwEdit *, edit->n);
  copy->n = edit->n;
  for (gsize i = 0; i < edit->n; i++)
    copy->edits[i] = sw_edit_copy (edit->edits[i]);
  return copy;
}

void
sw_edit_free (SwEdit *edit)
{
  if (edit == NULL)
    return;

  for (gsize i = 0; i < edit->n; i++)
    sw_edit_free (edit->edits[i]);
  g_free (edit->edits);
  if (edit->item != NULL)
    item_free (edit->record, edit->item);
  sw_value_clear (&edit->value);
  g_free (edit->member);
  g_free (edit);
}
