/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-autosave.h"

#include "app/desk/sw-drafts.h"

#include <glib/gstdio.h>

#define PAUSE_MS 2000

/*
 * The draft's place, shared with the workers. Every writing and removing has a
 * number; one that comes late, after a newer one, is dropped. So a slow disk
 * can neither bring back a draft that was removed nor an older state.
 */
typedef struct
{
  GMutex mutex;
  char *path;
  guint64 done; /* number of the newest deed */
} Place;

static Place *
place_new (const char *path)
{
  Place *place = g_atomic_rc_box_new0 (Place);

  g_mutex_init (&place->mutex);
  place->path = g_strdup (path);
  return place;
}

static void
place_clear (gpointer data)
{
  Place *place = data;

  g_mutex_clear (&place->mutex);
  g_free (place->path);
}

static void
place_unref (Place *place)
{
  g_atomic_rc_box_release_full (place, place_clear);
}

typedef struct
{
  Place *place;
  guint64 number;
  SwSketch *sketch;
  GFile *file;
  char *etag;
} Deed;

static gboolean
deed_write (const Deed *deed, GError **error)
{
  gboolean written = TRUE;

  g_mutex_lock (&deed->place->mutex);
  if (deed->number > deed->place->done)
    {
      deed->place->done = deed->number;
      written = sw_draft_write (deed->place->path, deed->sketch, deed->file, deed->etag, error);
    }
  g_mutex_unlock (&deed->place->mutex);
  return written;
}

static void
deed_free (gpointer data)
{
  Deed *deed = data;

  place_unref (deed->place);
  sw_sketch_free (deed->sketch);
  g_clear_object (&deed->file);
  g_free (deed->etag);
  g_free (deed);
}

struct _SwAutosave
{
  GObject parent_instance;

  SwDocument *document;
  Place *place;
  guint pause_ms;
  guint timer_id;
  guint64 number; /* of the newest deed */
  gboolean writing;
  gboolean behind; /* there are edits that no draft holds */
  gboolean failing;
  gboolean given_up;
};

G_DEFINE_FINAL_TYPE (SwAutosave, sw_autosave, G_TYPE_OBJECT)

enum
{
  SIGNAL_FAILED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void start_timer (SwAutosave *self);

static Deed *
new_deed (SwAutosave *self)
{
  Deed *deed = g_new0 (Deed, 1);
  GFile *file = sw_document_get_file (self->document);

  deed->place = g_atomic_rc_box_acquire (self->place);
  deed->number = ++self->number;
  deed->sketch = sw_sketch_copy (sw_document_get_sketch (self->document));
  deed->file = file != NULL ? g_object_ref (file) : NULL;
  deed->etag = g_strdup (sw_document_get_etag (self->document));
  self->behind = FALSE;
  return deed;
}

static void
report (SwAutosave *self, const GError *error)
{
  if (error != NULL)
    self->behind = TRUE;
  if (error != NULL && !self->failing)
    g_signal_emit (self, signals[SIGNAL_FAILED], 0, error->message);
  self->failing = error != NULL;
}

static void
remove_draft (SwAutosave *self)
{
  g_clear_handle_id (&self->timer_id, g_source_remove);
  self->behind = FALSE;

  g_mutex_lock (&self->place->mutex);
  self->place->done = ++self->number;
  g_unlink (self->place->path);
  g_mutex_unlock (&self->place->mutex);
}

static void
write_worker (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  GError *error = NULL;

  if (deed_write (task_data, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
written_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  SwAutosave *self = SW_AUTOSAVE (source);
  g_autoptr (GError) error = NULL;

  self->writing = FALSE;
  g_task_propagate_boolean (G_TASK (result), &error);
  report (self, error);
  if (self->behind)
    start_timer (self);
}

static gboolean
timer_cb (gpointer user_data)
{
  SwAutosave *self = user_data;
  g_autoptr (GTask) task = g_task_new (self, NULL, written_cb, NULL);

  self->timer_id = 0;
  self->writing = TRUE;
  g_task_set_source_tag (task, timer_cb);
  g_task_set_name (task, "write draft");
  g_task_set_task_data (task, new_deed (self), deed_free);
  g_task_run_in_thread (task, write_worker);
  return G_SOURCE_REMOVE;
}

/* Counts from the first edit, not from the last: a long drag is kept too. */
static void
start_timer (SwAutosave *self)
{
  if (self->timer_id == 0 && !self->writing && !self->given_up)
    self->timer_id = g_timeout_add (self->pause_ms, timer_cb, self);
}

static void
follow (SwAutosave *self)
{
  if (self->given_up)
    return;

  if (sw_document_get_modified (self->document))
    {
      self->behind = TRUE;
      start_timer (self);
    }
  else
    remove_draft (self);
}

static void
sw_autosave_dispose (GObject *object)
{
  SwAutosave *self = SW_AUTOSAVE (object);

  g_clear_handle_id (&self->timer_id, g_source_remove);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->place, place_unref);

  G_OBJECT_CLASS (sw_autosave_parent_class)->dispose (object);
}

static void
sw_autosave_class_init (SwAutosaveClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sw_autosave_dispose;

  signals[SIGNAL_FAILED] = g_signal_new ("failed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
sw_autosave_init (SwAutosave *self)
{
  self->pause_ms = PAUSE_MS;
}

SwAutosave *
sw_autosave_new (SwDocument *document, const char *path)
{
  SwAutosave *self;

  g_return_val_if_fail (SW_IS_DOCUMENT (document), NULL);
  g_return_val_if_fail (path != NULL, NULL);

  self = g_object_new (SW_TYPE_AUTOSAVE, NULL);
  self->document = g_object_ref (document);
  self->place = place_new (path);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (follow), self);
  g_signal_connect_swapped (document, "notify::modified", G_CALLBACK (follow), self);
  g_signal_connect_swapped (document, "notify::file", G_CALLBACK (follow), self);
  if (sw_document_get_modified (document))
    follow (self);
  return self;
}

void
sw_autosave_set_pause (SwAutosave *self, guint ms)
{
  g_return_if_fail (SW_IS_AUTOSAVE (self));
  self->pause_ms = ms;
}

void
sw_autosave_set_path (SwAutosave *self, const char *path)
{
  g_return_if_fail (SW_IS_AUTOSAVE (self));
  g_return_if_fail (path != NULL);

  if (g_str_equal (self->place->path, path))
    return;
  remove_draft (self);
  place_unref (self->place);
  self->place = place_new (path);
  if (sw_document_get_modified (self->document))
    follow (self);
}

void
sw_autosave_flush (SwAutosave *self)
{
  g_autoptr (GError) error = NULL;
  Deed *deed;

  g_return_if_fail (SW_IS_AUTOSAVE (self));

  /* Written even if a worker is at it: the number decides which of the two stays. */
  if (self->given_up || !sw_document_get_modified (self->document))
    return;
  g_clear_handle_id (&self->timer_id, g_source_remove);
  deed = new_deed (self);
  deed_write (deed, &error);
  deed_free (deed);
  report (self, error);
}

void
sw_autosave_give_up (SwAutosave *self)
{
  g_return_if_fail (SW_IS_AUTOSAVE (self));

  self->given_up = TRUE;
  remove_draft (self);
}
