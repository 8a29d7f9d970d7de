/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-document-private.h"

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (sw_document_error, sw_document_error)
G_DEFINE_FINAL_TYPE (SwDocument, sw_document, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_TITLE,
  PROP_FILE,
  PROP_MODIFIED,
  PROP_UNDO_NAME,
  PROP_REDO_NAME,
  PROP_READ_ONLY,
  PROP_DISK,
  PROP_BUSY,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

enum
{
  SIGNAL_CHANGED,
  SIGNAL_REPLACED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
sw_document_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwDocument *self = SW_DOCUMENT (object);

  switch (prop_id)
    {
    case PROP_TITLE:
      g_value_set_string (value, self->title);
      break;
    case PROP_FILE:
      g_value_set_object (value, self->file);
      break;
    case PROP_MODIFIED:
      g_value_set_boolean (value, self->modified);
      break;
    case PROP_UNDO_NAME:
      g_value_set_string (value, self->undo_name);
      break;
    case PROP_REDO_NAME:
      g_value_set_string (value, self->redo_name);
      break;
    case PROP_READ_ONLY:
      g_value_set_boolean (value, self->read_only);
      break;
    case PROP_DISK:
      g_value_set_int (value, self->disk);
      break;
    case PROP_BUSY:
      g_value_set_boolean (value, self->busy);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_document_dispose (GObject *object)
{
  SwDocument *self = SW_DOCUMENT (object);

  sw_document_unwatch (self);
  g_clear_handle_id (&self->series_id, g_source_remove);
  if (self->dyes != NULL)
    sw_entry_list_detach (self->dyes);
  if (self->steps != NULL)
    sw_entry_list_detach (self->steps);

  G_OBJECT_CLASS (sw_document_parent_class)->dispose (object);
}

static void
sw_document_finalize (GObject *object)
{
  SwDocument *self = SW_DOCUMENT (object);

  g_clear_object (&self->dyes);
  g_clear_object (&self->steps);
  g_clear_object (&self->file);
  sw_history_free (self->history);
  sw_sketch_free (self->sketch);
  sw_sketch_free (self->seen);
  g_free (self->series);
  g_free (self->series_name);
  g_free (self->etag);
  g_free (self->title);
  g_free (self->undo_name);
  g_free (self->redo_name);

  G_OBJECT_CLASS (sw_document_parent_class)->finalize (object);
}

static void
sw_document_class_init (SwDocumentClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GParamFlags flags = G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->dispose = sw_document_dispose;
  object_class->finalize = sw_document_finalize;
  object_class->get_property = sw_document_get_property;

  props[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL, flags);
  props[PROP_FILE] = g_param_spec_object ("file", NULL, NULL, G_TYPE_FILE, flags);
  props[PROP_MODIFIED] = g_param_spec_boolean ("modified", NULL, NULL, FALSE, flags);
  props[PROP_UNDO_NAME] = g_param_spec_string ("undo-name", NULL, NULL, NULL, flags);
  props[PROP_REDO_NAME] = g_param_spec_string ("redo-name", NULL, NULL, NULL, flags);
  props[PROP_READ_ONLY] = g_param_spec_boolean ("read-only", NULL, NULL, FALSE, flags);
  props[PROP_DISK] = g_param_spec_int ("disk", NULL, NULL, SW_DISK_SAME, SW_DISK_GONE, SW_DISK_SAME, flags);
  props[PROP_BUSY] = g_param_spec_boolean ("busy", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  signals[SIGNAL_CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 2, G_TYPE_UINT, G_TYPE_UINT);
  signals[SIGNAL_REPLACED] = g_signal_new ("replaced", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                           G_TYPE_NONE, 0);
}

static void
sw_document_init (SwDocument *self)
{
  self->sketch = sw_sketch_new ();
  self->seen = sw_sketch_copy (self->sketch);
  self->history = sw_document_new_history (self);
  self->dyes = sw_entry_list_new (self, SW_RECORD_DYE);
  self->steps = sw_entry_list_new (self, SW_RECORD_STEP);
  self->changed_at = g_get_monotonic_time ();
  sw_document_tell (self);
}

SwDocument *
sw_document_new (void)
{
  return g_object_new (SW_TYPE_DOCUMENT, NULL);
}

/* Telling */

static char *
make_title (SwDocument *self)
{
  g_autofree char *name = NULL;
  char *ending;

  if (self->sketch->title != NULL && *self->sketch->title != '\0')
    return g_strdup (self->sketch->title);
  if (self->file == NULL)
    /* Translators: title of a drawing that has neither a name nor a file yet */
    return g_strdup (_ ("Untitled colourway"));

  name = g_file_get_basename (self->file);
  ending = g_strrstr (name, ".colourway");
  if (ending != NULL && ending != name)
    *ending = '\0';
  return g_filename_display_name (name);
}

static void
update_string (SwDocument *self, char **now, char *wanted, int prop)
{
  if (g_strcmp0 (*now, wanted) == 0)
    {
      g_free (wanted);
      return;
    }
  g_free (*now);
  *now = wanted;
  g_object_notify_by_pspec (G_OBJECT (self), props[prop]);
}

static void
tell_properties (SwDocument *self)
{
  const char *undo = sw_history_get_undo_name (self->history);
  const char *redo = sw_history_get_redo_name (self->history);
  gboolean modified = self->unsaved || sw_history_get_modified (self->history);

  /* Inside a drag there is nothing to undo yet; a series of edits ends when undone. */
  if (self->series != NULL)
    undo = self->series_name, redo = NULL;
  else if (self->depth > 0)
    undo = redo = NULL;

  g_object_freeze_notify (G_OBJECT (self));
  update_string (self, &self->title, make_title (self), PROP_TITLE);
  update_string (self, &self->undo_name, g_strdup (undo), PROP_UNDO_NAME);
  update_string (self, &self->redo_name, g_strdup (redo), PROP_REDO_NAME);
  if (self->modified != modified)
    {
      self->modified = modified;
      g_object_notify_by_pspec (G_OBJECT (self), props[PROP_MODIFIED]);
    }
  g_object_thaw_notify (G_OBJECT (self));
}

/* A step is shown with its dye's name and colour, so it changes with its dye. */
static void
touch_steps_of_dye (SwDocument *self, guint dye)
{
  for (guint i = 0; i < self->sketch->steps->len; i++)
    {
      const SwStep *step = self->sketch->steps->pdata[i];

      if (sw_step_is_pour (step) && step->dye == dye)
        sw_entry_list_touch (self->steps, step->id);
    }
}

static void
tell_lists (SwDocument *self, const SwChanges *changes)
{
  sw_entry_list_sync (self->dyes);
  sw_entry_list_sync (self->steps);

  for (guint i = 0; i < changes->dyes->len; i++)
    {
      guint id = g_array_index (changes->dyes, guint, i);

      sw_entry_list_touch (self->dyes, id);
      touch_steps_of_dye (self, id);
    }

  /* A step's number, and which face it falls on, hang on all that come before it. */
  if (changes->what & SW_CHANGED_ORDER)
    sw_entry_list_touch (self->steps, 0);
  else
    for (guint i = 0; i < changes->steps->len; i++)
      sw_entry_list_touch (self->steps, g_array_index (changes->steps, guint, i));
}

void
sw_document_tell (SwDocument *self)
{
  g_auto (SwChanges) changes = { 0 };

  sw_changes_find (self->seen, self->sketch, &changes);
  if (changes.what != 0)
    {
      self->serial++;
      self->changed_at = g_get_monotonic_time ();
      sw_sketch_free (self->seen);
      self->seen = sw_sketch_copy (self->sketch);
      tell_lists (self, &changes);
    }
  tell_properties (self);
  if (changes.what != 0)
    g_signal_emit (self, signals[SIGNAL_CHANGED], 0, changes.what, sw_changes_only_id (&changes));
}

/* Properties */

const SwSketch *
sw_document_get_sketch (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->sketch;
}

SwEntryList *
sw_document_get_dyes (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->dyes;
}

SwEntryList *
sw_document_get_steps (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->steps;
}

const char *
sw_document_get_undo_name (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->undo_name;
}

const char *
sw_document_get_redo_name (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->redo_name;
}

const char *
sw_document_get_title (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->title;
}

GFile *
sw_document_get_file (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->file;
}

const char *
sw_document_get_etag (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), NULL);
  return self->etag;
}

gboolean
sw_document_get_read_only (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);
  return self->read_only;
}

SwDisk
sw_document_get_disk (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), SW_DISK_SAME);
  return self->disk;
}

gboolean
sw_document_get_busy (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);
  return self->busy;
}

gboolean
sw_document_get_modified (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);
  return self->modified;
}

gint64
sw_document_get_changed_at (SwDocument *self)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (self), 0);
  return self->changed_at;
}

void
sw_document_set_file (SwDocument *self, GFile *file, const char *etag, gboolean read_only)
{
  gboolean other = file == NULL || self->file == NULL ? file != self->file : !g_file_equal (file, self->file);

  g_object_freeze_notify (G_OBJECT (self));
  if (self->etag != etag)
    {
      g_free (self->etag);
      self->etag = g_strdup (etag);
    }
  if (self->read_only != read_only)
    {
      self->read_only = read_only;
      g_object_notify_by_pspec (G_OBJECT (self), props[PROP_READ_ONLY]);
    }
  sw_document_set_disk (self, SW_DISK_SAME);
  if (other)
    {
      g_set_object (&self->file, file);
      g_object_notify_by_pspec (G_OBJECT (self), props[PROP_FILE]);
      sw_document_watch (self);
    }
  g_object_thaw_notify (G_OBJECT (self));
}

void
sw_document_set_busy (SwDocument *self, gboolean busy)
{
  if (self->busy == busy)
    return;
  self->busy = busy;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_BUSY]);
}

void
sw_document_set_disk (SwDocument *self, SwDisk disk)
{
  if (self->disk == disk)
    return;
  self->disk = disk;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_DISK]);
}
