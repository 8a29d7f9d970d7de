/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/window/sw-window-private.h"

#include "app/desk/sw-file-words.h"
#include "files/sw-svg.h"

#include <glib/gi18n-lib.h>

/* A layout traced in a vector editor comes into the drawing as pours: one step to undo. */

static void
load_worker (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  GError *error = NULL;
  GBytes *bytes = sw_svg_load (task_data, cancellable, &error);

  if (bytes != NULL)
    g_task_return_pointer (task, bytes, (GDestroyNotify) g_bytes_unref);
  else
    g_task_return_error (task, error);
}

#define MOST_NAMES 6 /* in a line of the window */

/* A single line passes by; more stay above the drawing until they are hidden, or something else is done. */
static void
say_what_came (SwWindow *self, const SwTraced *traced, const SwSketch *before)
{
  g_autoptr (GPtrArray) lines = sw_traced_words (traced, before, sw_document_get_sketch (self->document), MOST_NAMES);
  g_autofree char *words = NULL;

  g_ptr_array_add (lines, NULL);
  words = g_strjoinv ("\n", (char **) lines->pdata);
  if (lines->len == 2)
    sw_window_toast (self, words);
  sw_notice_set (self->notice, SW_NOTICE_BROUGHT_IN, lines->len > 2 ? words : NULL);
}

/* The sketch as it is now counts, whatever was changed while the file was read. */
static gboolean
bring_in (SwWindow *self, GBytes *bytes, GError **error)
{
  const SwSketch *sketch = sw_document_get_sketch (self->document);
  gsize n;
  const char *data = g_bytes_get_data (bytes, &n);
  g_autoptr (SwTraced) traced = sw_svg_read (data, n, sketch, error);
  g_autoptr (SwSketch) before = NULL;
  SwEdit *edit;

  if (traced == NULL)
    return FALSE;
  before = sw_sketch_copy (sketch);
  edit = sw_traced_edit (traced, sketch);
  if (edit != NULL && !sw_document_edit (self->document, edit, _ ("Bring In Layout"), error))
    return FALSE;
  adw_view_stack_set_visible_child_name (self->stack, "pan");
  say_what_came (self, traced, before);
  return TRUE;
}

static void
loaded_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  SwWindow *self = SW_WINDOW (source);
  GFile *file = g_task_get_task_data (G_TASK (result));
  GError *error = NULL;
  g_autoptr (GBytes) bytes = g_task_propagate_pointer (G_TASK (result), &error);

  if (bytes != NULL && bring_in (self, bytes, &error))
    {
      sw_notice_set (self->notice, SW_NOTICE_OPEN_FAILED, NULL);
      return;
    }
  sw_file_error_in_words (&error, SW_FILE_DEED_READ, file);
  sw_notice_set (self->notice, SW_NOTICE_OPEN_FAILED, error->message);
  g_error_free (error);
}

void
sw_window_bring_in_layout (SwWindow *self, GFile *file)
{
  g_autoptr (GTask) task = g_task_new (self, NULL, loaded_cb, NULL);

  g_task_set_source_tag (task, sw_window_bring_in_layout);
  g_task_set_name (task, "load layout");
  g_task_set_task_data (task, g_object_ref (file), g_object_unref);
  g_task_run_in_thread (task, load_worker);
}

gboolean
sw_window_is_layout (GFile *file)
{
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *lower = name != NULL ? g_ascii_strdown (name, -1) : NULL;

  return lower != NULL && g_str_has_suffix (lower, ".svg");
}

static void
chosen_cb (GtkNativeDialog *dialog, int response, SwWindow *self)
{
  g_autoptr (GFile) file = response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog)) : NULL;

  if (file != NULL)
    sw_window_bring_in_layout (self, file);
  g_object_unref (dialog);
}

static void
bring_in_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwWindow *self = user_data;
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (_ ("Bring In a Traced Layout"), GTK_WINDOW (self), GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Bring In"), _ ("_Cancel"));
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ ("SVG Drawing"));
  gtk_file_filter_add_suffix (filter, "svg");
  sw_window_suggest_folder (self, GTK_FILE_CHOOSER (dialog), G_USER_DIRECTORY_DOCUMENTS);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), filter);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_signal_connect_object (dialog, "response", G_CALLBACK (chosen_cb), self, G_CONNECT_DEFAULT);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static void
bring_in_uri_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  g_autoptr (GFile) file = g_file_new_for_uri (g_variant_get_string (parameter, NULL));

  sw_window_bring_in_layout (user_data, file);
}

void
sw_window_add_trace_actions (SwWindow *self)
{
  const GActionEntry entries[] = {
    { "bring-in-layout", bring_in_cb },
    { "bring-in-layout-uri", bring_in_uri_cb, "s" },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
