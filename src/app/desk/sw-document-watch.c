/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-document-private.h"

/* Another program's save is several events; look once they have settled. */
#define SETTLE_MS 300

static void
looked_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SwDocument) self = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GFileInfo) info = g_file_query_info_finish (G_FILE (source), result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  g_clear_object (&self->looking);

  /* Loading or saving ends with a tag of its own, and a look of its own if there were events meanwhile. */
  if (self->busy)
    return;

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND))
    sw_document_set_disk (self, SW_DISK_GONE);
  else if (info != NULL && self->etag != NULL)
    sw_document_set_disk (self, g_strcmp0 (g_file_info_get_etag (info), self->etag) == 0 ? SW_DISK_SAME : SW_DISK_CHANGED);
}

static gboolean
look_cb (gpointer user_data)
{
  SwDocument *self = user_data;

  if (self->busy)
    return G_SOURCE_CONTINUE;

  self->look_id = 0;
  g_clear_object (&self->looking);
  self->looking = g_cancellable_new ();
  g_file_query_info_async (self->file, G_FILE_ATTRIBUTE_ETAG_VALUE, G_FILE_QUERY_INFO_NONE, G_PRIORITY_DEFAULT,
                           self->looking, looked_cb, g_object_ref (self));
  return G_SOURCE_REMOVE;
}

static void
monitor_changed_cb (GFileMonitor *monitor, GFile *file, GFile *other, GFileMonitorEvent event, gpointer user_data)
{
  SwDocument *self = user_data;

  if (self->look_id == 0)
    self->look_id = g_timeout_add (SETTLE_MS, look_cb, self);
}

void
sw_document_unwatch (SwDocument *self)
{
  g_clear_handle_id (&self->look_id, g_source_remove);
  if (self->looking != NULL)
    g_cancellable_cancel (self->looking);
  g_clear_object (&self->looking);
  if (self->monitor != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->monitor, self);
      g_file_monitor_cancel (self->monitor);
    }
  g_clear_object (&self->monitor);
}

void
sw_document_watch (SwDocument *self)
{
  sw_document_unwatch (self);
  if (self->file == NULL)
    return;

  /* A place that cannot be followed is none the worse: saving still compares the tags. */
  self->monitor = g_file_monitor_file (self->file, G_FILE_MONITOR_WATCH_MOVES, NULL, NULL);
  if (self->monitor != NULL)
    g_signal_connect (self->monitor, "changed", G_CALLBACK (monitor_changed_cb), self);

  /* A recovered draft's file may have changed while nobody looked. */
  self->look_id = g_timeout_add (SETTLE_MS, look_cb, self);
}
