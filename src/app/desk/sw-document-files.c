/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-document-private.h"

#include "app/desk/sw-file-words.h"
#include "files/sw-colourway.h"

#include <glib/gi18n-lib.h>

/* What the worker brings back from reading or writing. */
typedef struct
{
  GFile *file;
  SwSketch *sketch;
  char *etag;
  gboolean read_only;
  guint64 serial; /* saving: of the document when @sketch was copied */
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;

  g_clear_object (&job->file);
  g_clear_pointer (&job->sketch, sw_sketch_free);
  g_free (job->etag);
  g_free (job);
}

/* A place that does not say whether it can be written to is tried when the time comes. */
static gboolean
is_read_only (GFile *file, GCancellable *cancellable)
{
  g_autoptr (GFileInfo) info = g_file_query_info (file, G_FILE_ATTRIBUTE_ACCESS_CAN_WRITE, G_FILE_QUERY_INFO_NONE, cancellable, NULL);

  return info != NULL && g_file_info_has_attribute (info, G_FILE_ATTRIBUTE_ACCESS_CAN_WRITE) &&
         !g_file_info_get_attribute_boolean (info, G_FILE_ATTRIBUTE_ACCESS_CAN_WRITE);
}

static void
load_worker (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  Job *job = task_data;
  GError *error = NULL;

  job->sketch = sw_colourway_load (job->file, &job->etag, cancellable, &error);
  if (job->sketch == NULL)
    {
      sw_file_error_in_words (&error, SW_FILE_DEED_READ, job->file);
      g_task_return_error (task, error);
      return;
    }
  job->read_only = is_read_only (job->file, cancellable);
  g_task_return_boolean (task, TRUE);
}

static void
refuse_busy (GTask *task)
{
  g_task_return_new_error (task, SW_DOCUMENT_ERROR, SW_DOCUMENT_ERROR_BUSY, "%s",
                           _ ("This drawing is still being loaded or saved. Try again in a moment."));
}

void
sw_document_load_async (SwDocument *self, GFile *file, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer user_data)
{
  g_autoptr (GTask) task = NULL;
  Job *job;

  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (G_IS_FILE (file));

  task = g_task_new (self, cancellable, callback, user_data);
  g_task_set_source_tag (task, sw_document_load_async);
  g_task_set_name (task, "load colourway");
  if (self->busy)
    {
      refuse_busy (task);
      return;
    }

  job = g_new0 (Job, 1);
  job->file = g_object_ref (file);
  g_task_set_task_data (task, job, job_free);
  sw_document_set_busy (self, TRUE);
  g_task_run_in_thread (task, load_worker);
}

gboolean
sw_document_load_finish (SwDocument *self, GAsyncResult *result, GError **error)
{
  Job *job;

  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (g_async_result_is_tagged (result, sw_document_load_async), FALSE);

  job = g_task_get_task_data (G_TASK (result));
  if (job != NULL)
    sw_document_set_busy (self, FALSE);
  if (!g_task_propagate_boolean (G_TASK (result), error))
    return FALSE;

  sw_document_replace (self, g_steal_pointer (&job->sketch), job->file, job->etag, job->read_only, FALSE);
  return TRUE;
}

static void
save_worker (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  Job *job = task_data;
  GError *error = NULL;

  if (!sw_colourway_save (job->sketch, job->file, &job->etag, cancellable, &error))
    {
      sw_file_error_in_words (&error, SW_FILE_DEED_WRITE, job->file);
      g_task_return_error (task, error);
      return;
    }
  g_task_return_boolean (task, TRUE);
}

void
sw_document_save_async (SwDocument *self, GFile *file, gboolean overwrite, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer user_data)
{
  g_autoptr (GTask) task = NULL;
  gboolean own;
  Job *job;

  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (file != NULL || self->file != NULL);

  task = g_task_new (self, cancellable, callback, user_data);
  g_task_set_source_tag (task, sw_document_save_async);
  g_task_set_name (task, "save colourway");
  if (self->busy)
    {
      refuse_busy (task);
      return;
    }

  sw_document_end_series (self);
  own = file == NULL || (self->file != NULL && g_file_equal (file, self->file));
  job = g_new0 (Job, 1);
  job->file = g_object_ref (own ? self->file : file);
  job->sketch = sw_sketch_copy (self->sketch);
  /* A file that is gone has no tag to compare with; saving makes it anew. */
  job->etag = own && !overwrite && self->disk != SW_DISK_GONE ? g_strdup (self->etag) : NULL;
  job->serial = self->serial;
  g_task_set_task_data (task, job, job_free);
  sw_document_set_busy (self, TRUE);
  g_task_run_in_thread (task, save_worker);
}

gboolean
sw_document_save_finish (SwDocument *self, GAsyncResult *result, GError **error)
{
  GError *failure = NULL;
  Job *job;

  g_return_val_if_fail (SW_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (g_async_result_is_tagged (result, sw_document_save_async), FALSE);

  job = g_task_get_task_data (G_TASK (result));
  if (job != NULL)
    sw_document_set_busy (self, FALSE);
  if (!g_task_propagate_boolean (G_TASK (result), &failure))
    {
      if (g_error_matches (failure, SW_DOCUMENT_ERROR, SW_DOCUMENT_ERROR_CHANGED))
        sw_document_set_disk (self, SW_DISK_CHANGED);
      g_propagate_error (error, failure);
      return FALSE;
    }

  /* What was drawn while the file was being written is not in it, and the
   * step that the history calls saved may be an older one. */
  self->unsaved = job->serial != self->serial || self->depth > 0;
  if (!self->unsaved)
    sw_history_mark_saved (self->history);
  sw_document_set_file (self, job->file, job->etag, FALSE);
  sw_document_tell (self);
  return TRUE;
}

void
sw_document_recover (SwDocument *self, SwSketch *sketch, GFile *file, const char *etag)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));
  g_return_if_fail (sketch != NULL);

  sw_document_replace (self, sketch, file, etag, file != NULL && is_read_only (file, NULL), TRUE);
}

void
sw_document_keep_mine (SwDocument *self)
{
  g_return_if_fail (SW_IS_DOCUMENT (self));

  self->unsaved = TRUE;
  g_clear_pointer (&self->etag, g_free);
  sw_document_set_disk (self, SW_DISK_SAME);
  sw_document_tell (self);
}
