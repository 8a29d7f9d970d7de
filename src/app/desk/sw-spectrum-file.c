/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-spectrum-file.h"

#include "app/desk/sw-file-words.h"
#include "files/sw-cxf.h"

#include <glib/gi18n-lib.h>

/* At most one byte more than a spectrum may have: enough to tell that it has too many. */
static GBytes *
read_start (GFile *file, GCancellable *cancellable, GError **error)
{
  g_autoptr (GFileInputStream) stream = g_file_read (file, cancellable, error);
  g_autofree char *bytes = NULL;
  gsize n;

  if (stream == NULL)
    return NULL;
  bytes = g_malloc (SW_SPECTRUM_FILE_MOST + 1);
  if (!g_input_stream_read_all (G_INPUT_STREAM (stream), bytes, SW_SPECTRUM_FILE_MOST + 1, &n, cancellable, error))
    return NULL;
  return g_bytes_new_take (g_steal_pointer (&bytes), n);
}

static gboolean
sample_from_bytes (GBytes *bytes, SwSample *sample, GError **error)
{
  gsize n;
  const char *data = g_bytes_get_data (bytes, &n);
  g_autofree char *text = NULL;

  if (n > SW_SPECTRUM_FILE_MOST || !g_utf8_validate (data, (gssize) n, NULL))
    {
      g_set_error_literal (error, SW_COLOUR_ERROR, SW_COLOUR_ERROR_TEXT, _ ("It is not a list of wavelengths and reflectances, with two numbers on each line."));
      return FALSE;
    }
  text = sw_cxf_is_likely (data, n) ? sw_cxf_spectrum (data, n, error) : g_strndup (data, n);
  return text != NULL && sw_sample_from_spectrum (text, sample, error);
}

static void
load_worker (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  g_autoptr (GBytes) bytes = NULL;
  SwSample *sample = g_new0 (SwSample, 1);
  GError *error = NULL;

  bytes = read_start (data, cancellable, &error);
  if (bytes != NULL && sample_from_bytes (bytes, sample, &error))
    {
      g_task_return_pointer (task, sample, g_free);
      return;
    }
  g_free (sample);
  sw_file_error_in_words (&error, SW_FILE_DEED_READ, data);
  g_task_return_error (task, error);
}

void
sw_spectrum_file_load_async (GFile *file, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer user_data)
{
  g_autoptr (GTask) task = NULL;

  g_return_if_fail (G_IS_FILE (file));

  task = g_task_new (NULL, cancellable, callback, user_data);
  g_task_set_source_tag (task, sw_spectrum_file_load_async);
  g_task_set_name (task, "Load a spectrum");
  g_task_set_task_data (task, g_object_ref (file), g_object_unref);
  g_task_run_in_thread (task, load_worker);
}

gboolean
sw_spectrum_file_load_finish (GAsyncResult *result, SwSample *sample, GError **error)
{
  g_autofree SwSample *loaded = NULL;

  g_return_val_if_fail (g_task_is_valid (result, NULL), FALSE);

  loaded = g_task_propagate_pointer (G_TASK (result), error);
  if (loaded == NULL)
    return FALSE;
  *sample = *loaded;
  return TRUE;
}
