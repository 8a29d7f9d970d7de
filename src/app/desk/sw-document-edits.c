/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-document-private.h"

/* A pause this long between two edits of a series makes them two steps to undo. */
#define SERIES_PAUSE_MS 1000

static gpointer
history_apply (gpointer edit, gpointer document, GError **error)
{
  SwDocument *self = document;

  return sw_edit_apply (edit, self->sketch, NULL, error);
}

static void
history_free_edit (gpointer edit)
{
  sw_edit_free (edit);
}

static const SwHistoryFuncs history_funcs = { history_apply, history_free_edit };

SwHistory *
sw_document_new_history (SwDocument *self)
{
  return sw_history_new (&history_funcs, self);
}

gboolean
sw_document_edit (SwDocument *self, SwEdit *edit, const char *name, GError **error)
{
  gboolean done;

  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);

  sw_document_end_series (self);
  done = sw_history_do (self->history, edit, name, error);
  sw_document_tell (self);
  return done;
}

static gboolean
series_pause_cb (gpointer user_data)
{
  SwDocument *self = user_data;

  self->series_id = 0;
  sw_document_end_series (self);
  return G_SOURCE_REMOVE;
}

void
sw_document_end_series (SwDocument *self)
{
  g_clear_handle_id (&self->series_id, g_source_remove);
  if (self->series == NULL)
    return;

  g_clear_pointer (&self->series, g_free);
  g_clear_pointer (&self->series_name, g_free);
  sw_document_end_group (self);
}

gboolean
sw_document_edit_series (SwDocument *self, SwEdit *edit, const char *name, const char *series, GError **error)
{
  gboolean done;

  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);

  if (g_strcmp0 (self->series, series) != 0)
    {
      sw_document_begin_group (self, name);
      self->series = g_strdup (series);
      self->series_name = g_strdup (name);
    }
  g_clear_handle_id (&self->series_id, g_source_remove);
  self->series_id = g_timeout_add (SERIES_PAUSE_MS, series_pause_cb, self);

  done = sw_history_do (self->history, edit, name, error);
  sw_document_tell (self);
  return done;
}

void
sw_document_begin_group (SwDocument *self, const char *name)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));

  sw_document_end_series (self);
  sw_history_begin_group (self->history, name);
  self->depth++;
  sw_document_tell (self);
}

void
sw_document_end_group (SwDocument *self)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));

  sw_document_end_series (self);
  if (self->depth == 0)
    return; /* another file was loaded in the middle of a drag */

  sw_history_end_group (self->history);
  self->depth--;
  sw_document_tell (self);
}

gboolean
sw_document_cancel_group (SwDocument *self, GError **error)
{
  gboolean done;

  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);

  sw_document_end_series (self);
  if (self->depth == 0)
    return TRUE;

  done = sw_history_cancel_group (self->history, error);
  self->depth--;
  sw_document_tell (self);
  return done;
}

static gboolean
step_through_history (SwDocument *self, gboolean (*step) (SwHistory *, GError **), GError **error)
{
  gboolean done;

  sw_document_end_series (self);
  done = step (self->history, error);
  sw_document_tell (self);
  return done;
}

gboolean
sw_document_undo (SwDocument *self, GError **error)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);
  return step_through_history (self, sw_history_undo, error);
}

gboolean
sw_document_redo (SwDocument *self, GError **error)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);
  return step_through_history (self, sw_history_redo, error);
}

void
sw_document_replace (SwDocument *self, SwSketch *sketch, GFile *file, const char *etag, gboolean read_only, gboolean unsaved)
{
  g_clear_handle_id (&self->series_id, g_source_remove);
  g_clear_pointer (&self->series, g_free);
  g_clear_pointer (&self->series_name, g_free);
  self->depth = 0;

  sw_history_free (self->history);
  self->history = sw_document_new_history (self);
  sw_sketch_free (self->sketch);
  self->sketch = sketch;
  self->unsaved = unsaved;

  sw_document_set_file (self, file, etag, read_only);
  g_signal_emit_by_name (self, "replaced");
  sw_document_tell (self);
}

void
sw_document_set_template (SwDocument *self, SwSketch *sketch)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (sketch != NULL);

  sw_document_replace (self, sketch, NULL, NULL, FALSE, FALSE);
}
