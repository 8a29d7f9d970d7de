/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-edit-private.h"

#include "sketch/sw-sketch-private.h"

#include <glib/gi18n-lib.h>

/*
 * Each act checks first and changes then, so that a refusal leaves the sketch
 * as it was. A sketch that was valid stays valid, which is why an inverse can
 * never be refused.
 */

static GPtrArray *
list_of (SwSketch *sketch, SwRecord record)
{
  if (record == SW_RECORD_DYE)
    return sketch->dyes;
  return record == SW_RECORD_STEP ? sketch->steps : sketch->batches;
}

/* -1 if none has it. */
static int
index_of (const GPtrArray *list, guint id)
{
  for (guint i = 0; i < list->len; i++)
    if (*sw_item_id (list->pdata[i]) == id)
      return (int) i;
  return -1;
}

static void
refuse_unknown (SwRecord record, guint id, GError **error)
{
  if (record == SW_RECORD_DYE)
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_TARGET, _ ("The dye with the id %u is not in the sketch any more."), id);
  else if (record == SW_RECORD_STEP)
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_TARGET, _ ("The step with the id %u is not in the sketch any more."), id);
  else
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_TARGET, _ ("The batch with the id %u is not in the sketch any more."), id);
}

/* The sketch as a whole after a change; says no without the path, which is for files. */
static gboolean
makes_sense (const SwSketch *sketch, const SwStep *step, GError **error)
{
  g_autofree char *path = NULL;
  const char *member;

  if (step != NULL && !sw_step_check_sense (sketch, step, &member, error))
    return FALSE;
  return sw_sketch_check_bounds (sketch, &path, error);
}

static const SwMember *
find_target (const SwEdit *edit, const SwSketch *sketch, gpointer *data, GError **error)
{
  const SwMember *member = sw_record_find_member (edit->record, edit->member);

  *data = (gpointer) sw_sketch_record (sketch, edit->record, edit->id);
  if (*data == NULL)
    refuse_unknown (edit->record, edit->id, error);
  else if (member == NULL)
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_TARGET, _ ("There is no member “%s” there to change."), edit->member);
  else if (edit->record == SW_RECORD_STEP && !sw_member_applies (member, ((SwStep *) *data)->kind))
    /* Translators: 1 a member such as "Size of the specks", 2 a kind of step such as "Rest" */
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_TARGET, _ ("“%1$s” does not belong to a step of the kind “%2$s”."),
                 _ (member->label), sw_step_kind_label (((SwStep *) *data)->kind));
  else
    return member;
  return NULL;
}

static SwEdit *
apply_set (const SwEdit *edit, SwSketch *sketch, guint *touched, GError **error)
{
  gpointer data;
  const SwMember *member = find_target (edit, sketch, &data, error);
  SwValue old;
  SwEdit *inverse = NULL;

  if (member == NULL)
    return NULL;

  sw_member_get (member, data, &old);
  if (sw_member_set (member, data, &edit->value, error))
    {
      if (makes_sense (sketch, edit->record == SW_RECORD_STEP ? data : NULL, error))
        inverse = sw_edit_set (edit->record, edit->id, edit->member, &old);
      else
        sw_member_put (member, data, &old);
    }
  sw_value_clear (&old);
  *touched = sw_record_is_list (edit->record) ? edit->id : 0;
  return inverse;
}

/* Whether a dye or step with that id, 0 for a fresh one, could come in at that place. */
static gboolean
may_insert (const SwEdit *edit, const SwSketch *sketch, guint len, GError **error)
{
  const char *member;

  if (edit->index < -1 || edit->index > (int) len)
    /* Translators: 1 a place in a list, 2 how many things are in the list */
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_TARGET, _ ("Nothing can go to place %1$d of a list of %2$u."), edit->index, len);
  else if (edit->id > SW_ID_MAX)
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("An id must be between 1 and %1$d, but is %2$u."), SW_ID_MAX, edit->id);
  else if (edit->id != 0 && sw_sketch_has_id (sketch, edit->id))
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_REFERENCE, _ ("The id %u is used twice. Give each dye and step its own."), edit->id);
  else if (edit->record == SW_RECORD_DYE)
    return sw_dye_check_members (edit->item, &member, error);
  else if (edit->record == SW_RECORD_STEP)
    return sw_step_check_members (edit->item, &member, error);
  else
    return sw_batch_check_members (edit->item, &member, error);
  return FALSE;
}

static SwEdit *
apply_insert (const SwEdit *edit, SwSketch *sketch, guint *touched, GError **error)
{
  GPtrArray *list = list_of (sketch, edit->record);
  gpointer item;
  guint place;

  if (!may_insert (edit, sketch, list->len, error))
    return NULL;

  place = edit->index < 0 ? list->len : (guint) edit->index;
  item = sw_item_copy (edit->record, edit->item);
  if (edit->id == 0)
    *sw_item_id (item) = sw_sketch_fresh_id (sketch);
  g_ptr_array_insert (list, (int) place, item);
  if (!makes_sense (sketch, edit->record == SW_RECORD_STEP ? item : NULL, error))
    {
      g_ptr_array_remove_index (list, place);
      return NULL;
    }

  *touched = *sw_item_id (item);
  sketch->next_id = MAX (sketch->next_id, *touched + 1);
  return sw_edit_remove (edit->record, *touched);
}

/* A dye that is in use stays; the sentence names the first pour that uses it. */
static gboolean
may_remove_dye (const SwSketch *sketch, guint id, GError **error)
{
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];

      if (!sw_step_is_pour (step) || step->dye != id)
        continue;

      if (step->name != NULL && step->name[0] != '\0')
        /* Translators: 1 the number of a step, 2 its name, as the dyer gave it */
        g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_REFERENCE, _ ("Step %1$u, “%2$s”, still uses this dye. Give it another one, or remove it first."), i + 1, step->name);
      else
        /* Translators: 1 the number of a step, 2 its kind, such as "Band" */
        g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_REFERENCE, _ ("Step %1$u (%2$s) still uses this dye. Give it another one, or remove it first."), i + 1, sw_step_kind_label (step->kind));
      return FALSE;
    }
  return TRUE;
}

static SwEdit *
apply_remove (const SwEdit *edit, SwSketch *sketch, guint *touched, GError **error)
{
  GPtrArray *list = list_of (sketch, edit->record);
  int index = index_of (list, edit->id);

  if (index < 0)
    {
      refuse_unknown (edit->record, edit->id, error);
      return NULL;
    }
  if (edit->record == SW_RECORD_DYE && !may_remove_dye (sketch, edit->id, error))
    return NULL;

  *touched = edit->id;
  return sw_edit_insert (edit->record, index, g_ptr_array_steal_index (list, (guint) index));
}

static SwEdit *
apply_move (const SwEdit *edit, SwSketch *sketch, guint *touched, GError **error)
{
  GPtrArray *list = list_of (sketch, edit->record);
  int from = index_of (list, edit->id);
  int to = edit->index < 0 ? (int) list->len - 1 : edit->index;

  if (from < 0)
    {
      refuse_unknown (edit->record, edit->id, error);
      return NULL;
    }
  if (edit->index < -1 || to >= (int) list->len)
    {
      g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_TARGET, _ ("Nothing can go to place %1$d of a list of %2$u."), edit->index, list->len);
      return NULL;
    }

  g_ptr_array_insert (list, to, g_ptr_array_steal_index (list, (guint) from));
  *touched = edit->id;
  return sw_edit_move (edit->record, edit->id, from);
}

static void
take_back (SwEdit **inverses, gsize n, SwSketch *sketch)
{
  for (gsize i = 0; i < n; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (SwEdit) again = sw_edit_apply (inverses[i], sketch, NULL, &error);

      if (again == NULL)
        g_critical ("An edit could not be taken back: %s", error->message);
    }
}

/* The inverse is filled from its end, so that it undoes the last edit first. */
static SwEdit *
apply_group (const SwEdit *edit, SwSketch *sketch, guint *touched, GError **error)
{
  SwEdit *inverse = sw_edit_new (SW_ACT_GROUP, SW_RECORD_SKETCH, 0);

  inverse->edits = g_new0 (SwEdit *, edit->n);
  inverse->n = edit->n;
  for (gsize i = 0; i < edit->n; i++)
    {
      SwEdit *undone = sw_edit_apply (edit->edits[i], sketch, touched, error);

      if (undone == NULL)
        {
          take_back (inverse->edits + edit->n - i, i, sketch);
          sw_edit_free (inverse);
          return NULL;
        }
      inverse->edits[edit->n - 1 - i] = undone;
    }
  return inverse;
}

SwEdit *
sw_edit_apply (const SwEdit *edit, SwSketch *sketch, guint *touched, GError **error)
{
  static SwEdit *(*const acts[]) (const SwEdit *, SwSketch *, guint *, GError **) = {
    [SW_ACT_SET] = apply_set,
    [SW_ACT_INSERT] = apply_insert,
    [SW_ACT_REMOVE] = apply_remove,
    [SW_ACT_MOVE] = apply_move,
    [SW_ACT_GROUP] = apply_group,
  };
  guint id = 0;
  SwEdit *inverse;

  g_return_val_if_fail (edit != NULL && sketch != NULL, NULL);

  inverse = acts[edit->act](edit, sketch, &id, error);
  if (inverse != NULL && touched != NULL)
    *touched = id;
  return inverse;
}
