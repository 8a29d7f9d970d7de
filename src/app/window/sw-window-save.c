/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/window/sw-window-private.h"

#include <glib/gi18n-lib.h>

#define ENDING ".colourway"

typedef struct
{
  SwWindow *self;
  GFile *file;
  SwWindowThen then;
} Saving;

static Saving *
saving_new (SwWindow *self, GFile *file, SwWindowThen then)
{
  Saving *saving = g_new0 (Saving, 1);

  saving->self = g_object_ref (self);
  saving->file = file != NULL ? g_object_ref (file) : NULL;
  saving->then = then;
  return saving;
}

static void
saving_free (Saving *saving)
{
  g_object_unref (saving->self);
  g_clear_object (&saving->file);
  g_free (saving);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Saving, saving_free)

static void
overwrite_answered_cb (AdwMessageDialog *dialog, const char *response, Saving *saving)
{
  if (g_str_equal (response, "overwrite"))
    sw_window_save (saving->self, saving->file, TRUE, saving->then);
  else if (g_str_equal (response, "save-as"))
    g_action_group_activate_action (G_ACTION_GROUP (saving->self), "save-as", NULL);
  saving_free (saving);
}

static void
ask_overwrite (Saving *saving, const char *sentence)
{
  GtkWidget *dialog = adw_message_dialog_new (GTK_WINDOW (saving->self), _ ("Replace the File?"), sentence);

  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "cancel", _ ("_Cancel"), "save-as", _ ("Save _As…"),
                                    "overwrite", _ ("_Replace"), NULL);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog), "overwrite", ADW_RESPONSE_DESTRUCTIVE);
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  g_signal_connect (dialog, "response", G_CALLBACK (overwrite_answered_cb), saving_new (saving->self, saving->file, saving->then));
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
saved_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (Saving) saving = user_data;
  SwWindow *self = saving->self;
  g_autoptr (GError) error = NULL;

  if (sw_document_save_finish (SW_DOCUMENT (source), result, &error))
    {
      sw_notice_set (self->notice, SW_NOTICE_SAVE_FAILED, NULL);
      sw_window_remember_recent (sw_document_get_file (self->document));
      if (saving->then != NULL)
        saving->then (self);
    }
  else if (g_error_matches (error, SW_DOCUMENT_ERROR, SW_DOCUMENT_ERROR_CHANGED))
    ask_overwrite (saving, error->message);
  else
    sw_notice_set (self->notice, SW_NOTICE_SAVE_FAILED, error->message);
}

/* A name without the ending gets it; then the file chooser has not asked about the file that is meant. */
static GFile *
with_ending (GFile *file)
{
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *whole = g_strconcat (name, ENDING, NULL);
  g_autoptr (GFile) folder = g_file_get_parent (file);

  return g_str_has_suffix (name, ENDING) || folder == NULL ? g_object_ref (file) : g_file_get_child (folder, whole);
}

static void
save_chosen_cb (GtkNativeDialog *dialog, int response, gpointer user_data)
{
  g_autoptr (Saving) saving = user_data;
  g_autoptr (GFile) chosen = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    {
      chosen = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
      saving->file = with_ending (chosen);
      if (!g_file_equal (saving->file, chosen) && g_file_query_exists (saving->file, NULL))
        ask_overwrite (saving, _ ("There is a file of that name already."));
      else
        sw_window_save (saving->self, saving->file, TRUE, saving->then);
    }
  g_object_unref (dialog);
}

static void
ask_where (SwWindow *self, SwWindowThen then)
{
  g_autoptr (GtkFileFilter) filter = sw_window_colourway_filter ();
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (_ ("Save the Colourway"), GTK_WINDOW (self), GTK_FILE_CHOOSER_ACTION_SAVE,
                                                              _ ("_Save"), _ ("_Cancel"));
  GFile *file = sw_document_get_file (self->document);

  if (file != NULL && !sw_document_get_read_only (self->document))
    gtk_file_chooser_set_file (GTK_FILE_CHOOSER (dialog), file, NULL);
  else
    {
      g_autofree char *name = g_strconcat (sw_document_get_title (self->document), ENDING, NULL);

      g_strdelimit (name, "/\\", '-');
      sw_window_suggest_folder (self, GTK_FILE_CHOOSER (dialog), G_USER_DIRECTORY_DOCUMENTS);
      gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), name);
    }
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), filter);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_signal_connect (dialog, "response", G_CALLBACK (save_chosen_cb), saving_new (self, NULL, then));
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

void
sw_window_save (SwWindow *self, GFile *file, gboolean overwrite, SwWindowThen then)
{
  if (file == NULL && (sw_document_get_file (self->document) == NULL || sw_document_get_read_only (self->document)))
    {
      ask_where (self, then);
      return;
    }
  sw_document_save_async (self->document, file, overwrite, NULL, saved_cb, saving_new (self, file, then));
}

static void
save_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  sw_window_save (user_data, NULL, FALSE, NULL);
}

static void
save_as_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  ask_where (user_data, NULL);
}

static void
save_anew_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  sw_window_save (user_data, NULL, TRUE, NULL);
}

/* Closing */

static void
close_now (SwWindow *self)
{
  self->may_close = TRUE;
  gtk_window_close (GTK_WINDOW (self));
}

static void
closing_answered_cb (SwWindow *self, const char *response)
{
  if (g_str_equal (response, "save"))
    sw_window_save (self, NULL, FALSE, close_now);
  else if (g_str_equal (response, "discard"))
    {
      if (self->autosave != NULL)
        sw_autosave_give_up (self->autosave);
      close_now (self);
    }
}

void
sw_window_ask_before_closing (SwWindow *self)
{
  GtkWidget *dialog = adw_message_dialog_new (GTK_WINDOW (self), _ ("Save the Drawing?"), NULL);

  adw_message_dialog_format_body (ADW_MESSAGE_DIALOG (dialog), _ ("“%s” has changes that are not in a file yet. Without saving they will be lost."),
                                  sw_document_get_title (self->document));
  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "cancel", _ ("_Cancel"), "discard", _ ("_Discard"), "save", _ ("_Save"), NULL);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog), "discard", ADW_RESPONSE_DESTRUCTIVE);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog), "save", ADW_RESPONSE_SUGGESTED);
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "save");
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  g_signal_connect_object (dialog, "response", G_CALLBACK (closing_answered_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

void
sw_window_add_save_actions (SwWindow *self)
{
  const GActionEntry entries[] = {
    { "save", save_cb },
    { "save-as", save_as_cb },
    { "save-anew", save_anew_cb },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
