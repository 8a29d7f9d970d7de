/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/window/sw-application-private.h"

#include "app/desk/sw-file-words.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

void
sw_application_find_drafts (SwApplication *self)
{
  g_autofree char *folder = g_build_filename (g_get_user_data_dir (), "strandwise", "drafts", NULL);
  g_autoptr (GError) error = NULL;

  self->drafts = sw_drafts_open (folder, &error);
  if (self->drafts != NULL)
    self->recovered = sw_drafts_adopt (self->drafts);
  else
    self->drafts_problem = g_strdup (error->message);
}

static char *
draft_name (const SwDraft *draft)
{
  if (draft->sketch->title != NULL && *draft->sketch->title != '\0')
    return g_strdup (draft->sketch->title);
  if (draft->file != NULL)
    return sw_file_display_name (draft->file);
  return g_strdup (_ ("Untitled colourway"));
}

/* One line for each drawing. */
static char *
list_drafts (const GPtrArray *drafts)
{
  GString *list = g_string_new (NULL);

  for (guint i = 0; i < drafts->len; i++)
    {
      const SwDraft *draft = drafts->pdata[i];
      g_autofree char *name = NULL;
      g_autofree char *when = NULL;

      if (list->len > 0)
        g_string_append_c (list, '\n');
      if (draft->sketch == NULL)
        {
          /* Translators: %s is a path */
          g_string_append_printf (list, _ ("One that cannot be read; it is kept in %s"), draft->path);
          continue;
        }
      name = draft_name (draft);
      when = draft->written != NULL ? g_date_time_format (draft->written, "%x %X") : g_strdup ("–");
      /* Translators: a drawing's name, then the date and time of its last change */
      g_string_append_printf (list, _ ("“%s”, last changed %s"), name, when);
    }
  return g_string_free (list, FALSE);
}

/* The window that shows the demo to no purpose, or a new one. */
static SwWindow *
window_for_draft (SwApplication *self)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next)
    if (SW_IS_WINDOW (l->data) && sw_window_is_pristine (l->data))
      return l->data;
  return sw_application_new_window (self);
}

static void
bring_back (SwApplication *self, GPtrArray *drafts)
{
  for (guint i = 0; i < drafts->len; i++)
    {
      SwDraft *draft = drafts->pdata[i];
      SwWindow *window;

      if (draft->sketch == NULL)
        continue;
      window = window_for_draft (self);
      sw_window_recover (window, draft);
      gtk_window_present (GTK_WINDOW (window));
    }
}

static void
throw_away (GPtrArray *drafts)
{
  for (guint i = 0; i < drafts->len; i++)
    {
      const SwDraft *draft = drafts->pdata[i];

      /* What cannot be read stays where it was put aside. */
      if (draft->sketch != NULL)
        g_unlink (draft->path);
    }
}

static void
offered_cb (SwApplication *self, const char *response, AdwMessageDialog *dialog)
{
  GPtrArray *drafts = g_object_get_data (G_OBJECT (dialog), "drafts");

  if (g_str_equal (response, "bring-back"))
    bring_back (self, drafts);
  else if (g_str_equal (response, "throw-away"))
    throw_away (drafts);
}

void
sw_application_offer_drafts (SwApplication *self)
{
  g_autoptr (GPtrArray) drafts = g_steal_pointer (&self->recovered);
  g_autofree char *list = NULL;
  g_autofree char *heading = NULL;
  GtkWidget *dialog;

  if (drafts == NULL || drafts->len == 0)
    return;

  list = list_drafts (drafts);
  heading = g_strdup_printf (ngettext ("Bring Back an Unsaved Drawing?", "Bring Back %u Unsaved Drawings?", drafts->len), drafts->len);
  dialog = adw_message_dialog_new (gtk_application_get_active_window (GTK_APPLICATION (self)), heading, NULL);
  adw_message_dialog_format_body (ADW_MESSAGE_DIALOG (dialog), _ ("Strandwise stopped before this was saved:\n\n%s"), list);
  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "later", _ ("Ask _Later"), "throw-away", _ ("_Throw Away"),
                                    "bring-back", _ ("_Bring Back"), NULL);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog), "throw-away", ADW_RESPONSE_DESTRUCTIVE);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog), "bring-back", ADW_RESPONSE_SUGGESTED);
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "bring-back");
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "later");
  g_object_set_data_full (G_OBJECT (dialog), "drafts", g_steal_pointer (&drafts), (GDestroyNotify) g_ptr_array_unref);
  g_signal_connect_object (dialog, "response", G_CALLBACK (offered_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}
