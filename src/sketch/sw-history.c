/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-history.h"

/* One undoable step. Its edits take it back when applied from the last to the first. */
typedef struct
{
  char *name;
  GPtrArray *edits;
} Step;

#define NOT_SAVED (-1)

struct _SwHistory
{
  SwHistoryFuncs funcs;
  gpointer document;
  GPtrArray *undo; /* of Step, the newest last */
  GPtrArray *redo;
  int saved;     /* length of `undo` at the saved step, or NOT_SAVED */
  Step *open;    /* the step that the outermost open group collects */
  GArray *marks; /* of guint: length of `open` at the start of each open group */
};

static Step *
step_new (SwHistory *self, const char *name)
{
  Step *step = g_new (Step, 1);

  step->name = g_strdup (name);
  step->edits = g_ptr_array_new_with_free_func (self->funcs.free_edit);
  return step;
}

static void
step_free (gpointer data)
{
  Step *step = data;

  g_free (step->name);
  g_ptr_array_unref (step->edits);
  g_free (step);
}

SwHistory *
sw_history_new (const SwHistoryFuncs *funcs, gpointer document)
{
  SwHistory *self;

  g_return_val_if_fail (funcs != NULL && funcs->apply != NULL && funcs->free_edit != NULL, NULL);

  self = g_new0 (SwHistory, 1);
  self->funcs = *funcs;
  self->document = document;
  self->undo = g_ptr_array_new_with_free_func (step_free);
  self->redo = g_ptr_array_new_with_free_func (step_free);
  self->marks = g_array_new (FALSE, FALSE, sizeof (guint));
  return self;
}

void
sw_history_free (SwHistory *self)
{
  if (self == NULL)
    return;

  g_clear_pointer (&self->open, step_free);
  g_array_unref (self->marks);
  g_ptr_array_unref (self->undo);
  g_ptr_array_unref (self->redo);
  g_free (self);
}

/*
 * Applies the edits from the last down to @from and collects their inverses,
 * which then take that back in turn. All or none.
 */
static GPtrArray *
apply_backwards (SwHistory *self, const GPtrArray *edits, guint from, GError **error)
{
  g_autoptr (GPtrArray) inverses = g_ptr_array_new_with_free_func (self->funcs.free_edit);

  for (guint i = edits->len; i-- > from;)
    {
      gpointer inverse = self->funcs.apply (edits->pdata[i], self->document, error);

      if (inverse == NULL)
        {
          g_autoptr (GPtrArray) restored = NULL;

          if (inverses->len > 0)
            restored = apply_backwards (self, inverses, 0, NULL);
          if (inverses->len > 0 && restored == NULL)
            g_critical ("The document could not be brought back to where it was");
          return NULL;
        }
      g_ptr_array_add (inverses, inverse);
    }
  return g_steal_pointer (&inverses);
}

/* A new step: what was undone can no longer be redone, and a saved step among it is lost. */
static void
push (SwHistory *self, Step *step)
{
  if (self->saved > (int) self->undo->len)
    self->saved = NOT_SAVED;
  g_ptr_array_set_size (self->redo, 0);
  g_ptr_array_add (self->undo, step);
}

gboolean
sw_history_do (SwHistory *self, gpointer edit, const char *name, GError **error)
{
  gpointer inverse;

  g_return_val_if_fail (self != NULL && edit != NULL, FALSE);

  inverse = self->funcs.apply (edit, self->document, error);
  self->funcs.free_edit (edit);
  if (inverse == NULL)
    return FALSE;

  if (self->open != NULL)
    {
      if (self->open->name == NULL)
        self->open->name = g_strdup (name);
      g_ptr_array_add (self->open->edits, inverse);
    }
  else
    {
      Step *step = step_new (self, name);

      g_ptr_array_add (step->edits, inverse);
      push (self, step);
    }
  return TRUE;
}

void
sw_history_begin_group (SwHistory *self, const char *name)
{
  g_return_if_fail (self != NULL);

  if (self->open == NULL)
    self->open = step_new (self, name);
  g_array_append_val (self->marks, self->open->edits->len);
}

/* Closes the innermost group; with the outermost one the step is done. */
static void
close_group (SwHistory *self)
{
  g_array_set_size (self->marks, self->marks->len - 1);
  if (self->marks->len > 0)
    return;

  if (self->open->edits->len > 0)
    push (self, g_steal_pointer (&self->open));
  else
    g_clear_pointer (&self->open, step_free);
}

void
sw_history_end_group (SwHistory *self)
{
  g_return_if_fail (self != NULL && self->marks->len > 0);

  close_group (self);
}

gboolean
sw_history_cancel_group (SwHistory *self, GError **error)
{
  g_autoptr (GPtrArray) inverses = NULL;
  guint mark;

  g_return_val_if_fail (self != NULL && self->marks->len > 0, FALSE);

  mark = g_array_index (self->marks, guint, self->marks->len - 1);
  inverses = apply_backwards (self, self->open->edits, mark, error);
  if (inverses != NULL)
    g_ptr_array_set_size (self->open->edits, (int) mark);
  close_group (self);
  return inverses != NULL;
}

/* Takes the newest step of @from back and puts it on @to. */
static gboolean
travel (SwHistory *self, GPtrArray *from, GPtrArray *to, GError **error)
{
  Step *step;
  GPtrArray *inverses;

  if (self->open != NULL || from->len == 0)
    return TRUE;

  step = from->pdata[from->len - 1];
  inverses = apply_backwards (self, step->edits, 0, error);
  if (inverses == NULL)
    return FALSE;

  g_ptr_array_unref (step->edits);
  step->edits = inverses;
  g_ptr_array_add (to, g_ptr_array_steal_index (from, from->len - 1));
  return TRUE;
}

gboolean
sw_history_undo (SwHistory *self, GError **error)
{
  g_return_val_if_fail (self != NULL, FALSE);

  return travel (self, self->undo, self->redo, error);
}

gboolean
sw_history_redo (SwHistory *self, GError **error)
{
  g_return_val_if_fail (self != NULL, FALSE);

  return travel (self, self->redo, self->undo, error);
}

static const char *
newest_name (const SwHistory *self, const GPtrArray *steps)
{
  const Step *step;

  if (self->open != NULL || steps->len == 0)
    return NULL;

  step = steps->pdata[steps->len - 1];
  return step->name != NULL ? step->name : "";
}

const char *
sw_history_get_undo_name (SwHistory *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  return newest_name (self, self->undo);
}

const char *
sw_history_get_redo_name (SwHistory *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  return newest_name (self, self->redo);
}

void
sw_history_mark_saved (SwHistory *self)
{
  g_return_if_fail (self != NULL);

  /* In the middle of a drag the document stands between two steps, where no undo will bring it. */
  if (self->open != NULL && self->open->edits->len > 0)
    self->saved = NOT_SAVED;
  else
    self->saved = (int) self->undo->len;
}

gboolean
sw_history_get_modified (SwHistory *self)
{
  g_return_val_if_fail (self != NULL, FALSE);

  if (self->open != NULL && self->open->edits->len > 0)
    return TRUE;
  return self->saved != (int) self->undo->len;
}
