/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-sketch-private.h"

/* The records of which a sketch has one, in the order of the file. */
static const SwRecord single_records[] = {
  SW_RECORD_SKETCH, SW_RECORD_YARN, SW_RECORD_REEL, SW_RECORD_LAY, SW_RECORD_BATH, SW_RECORD_CLOTH, SW_RECORD_SHEET, SW_RECORD_LISTING
};

static gconstpointer
record_of (const SwSketch *sketch, SwRecord record)
{
  return G_STRUCT_MEMBER_P (sketch, sw_record_table (record)->place);
}

static SwSketch *
sketch_new_blank (void)
{
  SwSketch *sketch = g_new0 (SwSketch, 1);

  sketch->dyes = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_dye_free);
  sketch->steps = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_step_free);
  sketch->batches = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_batch_free);
  sketch->next_id = 1;
  return sketch;
}

SwSketch *
sw_sketch_new (void)
{
  SwSketch *sketch = sketch_new_blank ();

  for (gsize i = 0; i < G_N_ELEMENTS (single_records); i++)
    sw_record_init (single_records[i], (gpointer) record_of (sketch, single_records[i]), SW_STEP_BAND);
  return sketch;
}

SwSketch *
sw_sketch_copy (const SwSketch *sketch)
{
  SwSketch *copy;

  g_return_val_if_fail (sketch != NULL, NULL);

  copy = sketch_new_blank ();
  for (gsize i = 0; i < G_N_ELEMENTS (single_records); i++)
    sw_record_copy (single_records[i], record_of (sketch, single_records[i]), (gpointer) record_of (copy, single_records[i]));
  for (guint i = 0; i < sketch->dyes->len; i++)
    g_ptr_array_add (copy->dyes, sw_dye_copy (sketch->dyes->pdata[i]));
  for (guint i = 0; i < sketch->steps->len; i++)
    g_ptr_array_add (copy->steps, sw_step_copy (sketch->steps->pdata[i]));
  for (guint i = 0; i < sketch->batches->len; i++)
    g_ptr_array_add (copy->batches, sw_batch_copy (sketch->batches->pdata[i]));
  copy->next_id = sketch->next_id;
  return copy;
}

void
sw_sketch_free (SwSketch *sketch)
{
  if (sketch == NULL)
    return;

  for (gsize i = 0; i < G_N_ELEMENTS (single_records); i++)
    sw_record_clear (single_records[i], (gpointer) record_of (sketch, single_records[i]));
  g_ptr_array_unref (sketch->dyes);
  g_ptr_array_unref (sketch->steps);
  g_ptr_array_unref (sketch->batches);
  g_free (sketch);
}

static gboolean
dyes_equal (const GPtrArray *a, const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;

  for (guint i = 0; i < a->len; i++)
    {
      const SwDye *dye_a = a->pdata[i];
      const SwDye *dye_b = b->pdata[i];

      if (dye_a->id != dye_b->id || !sw_record_equal (SW_RECORD_DYE, dye_a, dye_b))
        return FALSE;
    }
  return TRUE;
}

static gboolean
steps_equal (const GPtrArray *a, const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;

  for (guint i = 0; i < a->len; i++)
    {
      const SwStep *step_a = a->pdata[i];
      const SwStep *step_b = b->pdata[i];

      if (step_a->id != step_b->id || step_a->kind != step_b->kind || !sw_record_equal (SW_RECORD_STEP, step_a, step_b))
        return FALSE;
    }
  return TRUE;
}

static gboolean
batches_equal (const GPtrArray *a, const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;

  for (guint i = 0; i < a->len; i++)
    {
      const SwBatch *batch_a = a->pdata[i];
      const SwBatch *batch_b = b->pdata[i];

      if (batch_a->id != batch_b->id || !sw_record_equal (SW_RECORD_BATCH, batch_a, batch_b))
        return FALSE;
    }
  return TRUE;
}

gboolean
sw_sketch_equal (const SwSketch *a, const SwSketch *b)
{
  g_return_val_if_fail (a != NULL && b != NULL, FALSE);

  for (gsize i = 0; i < G_N_ELEMENTS (single_records); i++)
    if (!sw_record_equal (single_records[i], record_of (a, single_records[i]), record_of (b, single_records[i])))
      return FALSE;
  return dyes_equal (a->dyes, b->dyes) && steps_equal (a->steps, b->steps) && batches_equal (a->batches, b->batches);
}

SwDye *
sw_dye_new (guint id)
{
  SwDye *dye = g_new0 (SwDye, 1);

  dye->id = id;
  sw_record_init (SW_RECORD_DYE, dye, SW_STEP_BAND);
  return dye;
}

SwDye *
sw_dye_copy (const SwDye *dye)
{
  SwDye *copy;

  g_return_val_if_fail (dye != NULL, NULL);

  copy = g_new0 (SwDye, 1);
  copy->id = dye->id;
  sw_record_copy (SW_RECORD_DYE, dye, copy);
  return copy;
}

void
sw_dye_free (SwDye *dye)
{
  if (dye == NULL)
    return;

  sw_record_clear (SW_RECORD_DYE, dye);
  g_free (dye);
}

SwStep *
sw_step_new (guint id, SwStepKind kind)
{
  SwStep *step;

  g_return_val_if_fail ((guint) kind < SW_N_STEP_KINDS, NULL);

  step = g_new0 (SwStep, 1);
  step->id = id;
  step->kind = kind;
  sw_record_init (SW_RECORD_STEP, step, kind);
  return step;
}

SwStep *
sw_step_copy (const SwStep *step)
{
  SwStep *copy;

  g_return_val_if_fail (step != NULL, NULL);

  copy = g_new0 (SwStep, 1);
  copy->id = step->id;
  copy->kind = step->kind;
  sw_record_copy (SW_RECORD_STEP, step, copy);
  return copy;
}

SwStep *
sw_step_copy_used (const SwStep *step)
{
  gsize n;
  const SwMember *members = sw_record_members (SW_RECORD_STEP, &n);
  SwStep *copy = sw_step_new (step->id, step->kind);

  for (gsize i = 0; i < n; i++)
    if (sw_member_applies (&members[i], step->kind))
      {
        SwValue value;

        sw_member_get (&members[i], step, &value);
        sw_member_put (&members[i], copy, &value);
        sw_value_clear (&value);
      }
  copy->extras = sw_extras_copy (step->extras);
  return copy;
}

void
sw_step_free (SwStep *step)
{
  if (step == NULL)
    return;

  sw_record_clear (SW_RECORD_STEP, step);
  g_free (step);
}

SwBatch *
sw_batch_new (guint id)
{
  SwBatch *batch = g_new0 (SwBatch, 1);

  batch->id = id;
  sw_record_init (SW_RECORD_BATCH, batch, SW_STEP_BAND);
  return batch;
}

SwBatch *
sw_batch_copy (const SwBatch *batch)
{
  SwBatch *copy;

  g_return_val_if_fail (batch != NULL, NULL);

  copy = g_new0 (SwBatch, 1);
  copy->id = batch->id;
  sw_record_copy (SW_RECORD_BATCH, batch, copy);
  return copy;
}

void
sw_batch_free (SwBatch *batch)
{
  if (batch == NULL)
    return;

  sw_record_clear (SW_RECORD_BATCH, batch);
  g_free (batch);
}

gboolean
sw_step_is_pour (const SwStep *step)
{
  g_return_val_if_fail (step != NULL, FALSE);

  return (SW_STEP_POURS & SW_STEP_BIT (step->kind)) != 0;
}

const SwDye *
sw_sketch_find_dye (const SwSketch *sketch, guint id)
{
  g_return_val_if_fail (sketch != NULL, NULL);

  for (guint i = 0; i < sketch->dyes->len; i++)
    if (((const SwDye *) sketch->dyes->pdata[i])->id == id)
      return sketch->dyes->pdata[i];
  return NULL;
}

const SwStep *
sw_sketch_find_step (const SwSketch *sketch, guint id)
{
  g_return_val_if_fail (sketch != NULL, NULL);

  for (guint i = 0; i < sketch->steps->len; i++)
    if (((const SwStep *) sketch->steps->pdata[i])->id == id)
      return sketch->steps->pdata[i];
  return NULL;
}

const SwBatch *
sw_sketch_find_batch (const SwSketch *sketch, guint id)
{
  g_return_val_if_fail (sketch != NULL, NULL);

  for (guint i = 0; i < sketch->batches->len; i++)
    if (((const SwBatch *) sketch->batches->pdata[i])->id == id)
      return sketch->batches->pdata[i];
  return NULL;
}

gboolean
sw_sketch_has_id (const SwSketch *sketch, guint id)
{
  return sw_sketch_find_dye (sketch, id) != NULL || sw_sketch_find_step (sketch, id) != NULL || sw_sketch_find_batch (sketch, id) != NULL;
}

guint
sw_sketch_fresh_id (const SwSketch *sketch)
{
  guint id;

  g_return_val_if_fail (sketch != NULL, 0);

  id = sketch->next_id;
  while (id < 1 || id > SW_ID_MAX || sw_sketch_has_id (sketch, id))
    id = id < 1 || id > SW_ID_MAX ? 1 : id + 1;
  return id;
}

gconstpointer
sw_sketch_record (const SwSketch *sketch, SwRecord record, guint id)
{
  g_return_val_if_fail (sketch != NULL && (guint) record < SW_N_RECORDS, NULL);

  if (record == SW_RECORD_DYE)
    return sw_sketch_find_dye (sketch, id);
  if (record == SW_RECORD_STEP)
    return sw_sketch_find_step (sketch, id);
  if (record == SW_RECORD_BATCH)
    return sw_sketch_find_batch (sketch, id);
  return record_of (sketch, record);
}

double
sw_sketch_lay_length (const SwSketch *sketch)
{
  g_return_val_if_fail (sketch != NULL && sketch->lay.runs > 0, 0);

  return sketch->reel.circumference_cm / (double) sketch->lay.runs;
}

double
sw_sketch_lay_width (const SwSketch *sketch)
{
  g_return_val_if_fail (sketch != NULL, 0);

  return sketch->lay.width_cm * (double) sketch->lay.skeins;
}
