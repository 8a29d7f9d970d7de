/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/window/sw-window-private.h"

#include <glib/gi18n-lib.h>

GtkFileFilter *
sw_window_colourway_filter (void)
{
  GtkFileFilter *filter = gtk_file_filter_new ();

  /* Translators: a kind of file */
  gtk_file_filter_set_name (filter, _ ("Colourways"));
  gtk_file_filter_add_suffix (filter, "colourway");
  return filter;
}

/* Whether the user may keep something there: not among the program's own files, such as the demos. */
static gboolean
is_for_keeping (GFile *folder)
{
  g_autoptr (GFileInfo) info = g_file_query_info (folder, G_FILE_ATTRIBUTE_ACCESS_CAN_WRITE, G_FILE_QUERY_INFO_NONE, NULL, NULL);

  return info != NULL && g_file_info_get_attribute_boolean (info, G_FILE_ATTRIBUTE_ACCESS_CAN_WRITE) && !g_file_has_uri_scheme (folder, "resource");
}

void
sw_window_suggest_folder (SwWindow *self, GtkFileChooser *chooser, GUserDirectory otherwise)
{
  GFile *file = sw_document_get_file (self->document);
  const char *special = g_get_user_special_dir (otherwise);
  g_autoptr (GFile) folder = file != NULL ? g_file_get_parent (file) : NULL;

  if (folder != NULL && !is_for_keeping (folder))
    g_clear_object (&folder);
  if (folder == NULL && special != NULL && g_file_test (special, G_FILE_TEST_IS_DIR))
    folder = g_file_new_for_path (special);
  if (folder == NULL)
    folder = g_file_new_for_path (g_get_home_dir ());
  gtk_file_chooser_set_current_folder (chooser, folder, NULL);
}

static void
loaded_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SwWindow) self = user_data;
  g_autoptr (GError) error = NULL;

  if (!sw_document_load_finish (SW_DOCUMENT (source), result, &error))
    {
      sw_notice_set (self->notice, SW_NOTICE_OPEN_FAILED, error->message);
      return;
    }
  sw_notice_set (self->notice, SW_NOTICE_OPEN_FAILED, NULL);
  sw_notice_set (self->notice, SW_NOTICE_SAVE_FAILED, NULL);
  sw_window_remember_recent (sw_document_get_file (self->document));
}

void
sw_window_load (SwWindow *self, GFile *file)
{
  g_return_if_fail (SW_IS_WINDOW (self));
  g_return_if_fail (G_IS_FILE (file));

  sw_document_load_async (self->document, file, NULL, loaded_cb, g_object_ref (self));
}

void
sw_window_open (SwWindow *self, GFile *file)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));

  g_application_open (G_APPLICATION (application), &file, 1, "");
}

static void
open_chosen_cb (GtkNativeDialog *dialog, int response, SwWindow *self)
{
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    {
      file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
      sw_window_open (self, file);
    }
  g_object_unref (dialog);
}

static void
open_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwWindow *self = user_data;
  g_autoptr (GtkFileFilter) filter = sw_window_colourway_filter ();
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (_ ("Open a Colourway"), GTK_WINDOW (self), GTK_FILE_CHOOSER_ACTION_OPEN,
                                                              _ ("_Open"), _ ("_Cancel"));

  sw_window_suggest_folder (self, GTK_FILE_CHOOSER (dialog), G_USER_DIRECTORY_DOCUMENTS);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), filter);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_signal_connect_object (dialog, "response", G_CALLBACK (open_chosen_cb), self, G_CONNECT_DEFAULT);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static void
open_uri_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  g_autoptr (GFile) file = g_file_new_for_uri (g_variant_get_string (parameter, NULL));

  sw_window_open (user_data, file);
}

/* Changed on disk */

static void
load_again (SwWindow *self)
{
  g_autoptr (GFile) file = g_object_ref (sw_document_get_file (self->document));

  sw_window_load (self, file);
}

static void
reload_answered_cb (SwWindow *self, const char *response)
{
  if (g_str_equal (response, "reload"))
    load_again (self);
}

static void
reload_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwWindow *self = user_data;
  GtkWidget *dialog;

  if (!sw_document_get_modified (self->document))
    {
      load_again (self);
      return;
    }
  dialog = adw_message_dialog_new (GTK_WINDOW (self), _ ("Load Again From Disk?"),
                                   _ ("What you have changed since you last saved will be lost, and cannot be undone."));
  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "cancel", _ ("_Cancel"), "reload", _ ("_Load Again"), NULL);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog), "reload", ADW_RESPONSE_DESTRUCTIVE);
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  g_signal_connect_object (dialog, "response", G_CALLBACK (reload_answered_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
keep_mine_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  sw_document_keep_mine (SW_WINDOW (user_data)->document);
}

/* Drag and drop */

static gboolean
drop_cb (GtkDropTarget *target, const GValue *value, double x, double y, SwWindow *self)
{
  g_autoptr (GSList) files = gdk_file_list_get_files (g_value_get_boxed (value));

  for (GSList *l = files; l != NULL; l = l->next)
    if (sw_window_is_layout (l->data))
      sw_window_bring_in_layout (self, l->data);
    else
      sw_window_open (self, l->data);
  return files != NULL;
}

void
sw_window_accept_drops (SwWindow *self)
{
  GtkDropTarget *target = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);

  g_signal_connect (target, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
}

void
sw_window_add_open_actions (SwWindow *self)
{
  const GActionEntry entries[] = {
    { "open", open_cb },
    { "open-uri", open_uri_cb, "s" },
    { "reload", reload_cb },
    { "keep-mine", keep_mine_cb },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
