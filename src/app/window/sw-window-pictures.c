/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/window/sw-window-private.h"

#include "app/desk/sw-file-words.h"
#include "files/sw-colourway.h"
#include "files/sw-picture.h"

#include <glib/gi18n-lib.h>

/* A picture to be rendered off the main thread, and where it goes. */
typedef struct
{
  SwPicture picture;
  SwFormat format;
  SwForecast *forecast;
  SwLook look;
  GFile *file; /* NULL: the clipboard */
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  sw_forecast_unref (order->forecast);
  g_clear_object (&order->file);
  g_free (order);
}

static GBytes *
render (const Order *order, GError **error)
{
  int width, height;

  sw_picture_usual_size (order->picture, order->forecast, &width, &height);
  return sw_picture_render (order->picture, order->format, order->forecast, width, height, &order->look, error);
}

static void
render_worker (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  const Order *order = task_data;
  GError *error = NULL;
  GBytes *bytes = render (order, &error);

  if (bytes != NULL && order->file != NULL &&
      !g_file_replace_contents (order->file, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), NULL, FALSE,
                                G_FILE_CREATE_NONE, NULL, cancellable, &error))
    {
      sw_file_error_in_words (&error, SW_FILE_DEED_WRITE, order->file);
      g_clear_pointer (&bytes, g_bytes_unref);
    }
  if (bytes != NULL)
    g_task_return_pointer (task, bytes, (GDestroyNotify) g_bytes_unref);
  else
    g_task_return_error (task, error);
}

static void
copy_to_clipboard (SwWindow *self, GBytes *bytes)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GdkTexture) texture = gdk_texture_new_from_bytes (bytes, &error);

  if (texture == NULL)
    {
      sw_window_toast (self, error->message);
      return;
    }
  gdk_clipboard_set_texture (gtk_widget_get_clipboard (GTK_WIDGET (self)), texture);
  sw_window_toast (self, _ ("Picture copied"));
}

static void
start (SwWindow *self, Order *order);

static void
mark_answered_cb (AdwMessageDialog *dialog, const char *response, SwWindow *self)
{
  const Order *asked = g_object_get_data (G_OBJECT (dialog), "order");
  Order *order;

  if (!g_str_equal (response, "without"))
    return;
  order = g_memdup2 (asked, sizeof *asked);
  order->forecast = sw_forecast_ref (asked->forecast);
  order->file = asked->file != NULL ? g_object_ref (asked->file) : NULL;
  order->look.no_mark = TRUE;
  start (self, order);
}

/* A picture without the mark is better than none, but not unasked. */
static void
ask_without_mark (SwWindow *self, GTask *task, const char *problem)
{
  GtkWidget *dialog = adw_message_dialog_new (GTK_WINDOW (self), _ ("Go On Without the Mark?"), problem);

  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "cancel", _ ("_Cancel"), "without", _ ("_Without the Mark"), NULL);
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  g_object_set_data (G_OBJECT (dialog), "order", g_task_get_task_data (task));
  g_object_set_data_full (G_OBJECT (dialog), "task", g_object_ref (task), g_object_unref); /* keeps the order */
  g_signal_connect_object (dialog, "response", G_CALLBACK (mark_answered_cb), self, G_CONNECT_DEFAULT);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
rendered_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  SwWindow *self = SW_WINDOW (source);
  const Order *order = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = g_task_propagate_pointer (G_TASK (result), &error);
  g_autofree char *name = NULL;
  g_autofree char *words = NULL;

  if (g_error_matches (error, SW_FILE_ERROR, SW_FILE_ERROR_MARK))
    ask_without_mark (self, G_TASK (result), error->message);
  else if (bytes == NULL)
    sw_window_toast (self, error->message);
  else if (order->file == NULL)
    copy_to_clipboard (self, bytes);
  else
    {
      name = sw_file_display_name (order->file);
      /* Translators: %s is a file's name */
      words = g_strdup_printf (_ ("“%s” saved"), name);
      sw_window_toast (self, words);
    }
}

/* @order: (transfer full) */
static void
start (SwWindow *self, Order *order)
{
  g_autoptr (GTask) task = g_task_new (self, NULL, rendered_cb, NULL);

  g_task_set_source_tag (task, start);
  g_task_set_name (task, "render picture");
  g_task_set_task_data (task, order, order_free);
  g_task_run_in_thread (task, render_worker);
}

static gboolean
in_inches (SwWindow *self)
{
  g_autofree char *units = g_settings_get_string (self->settings, "units");

  return g_str_equal (units, "us");
}

static void
render_picture (SwWindow *self, SwPicture picture, SwFormat format, GFile *file)
{
  SwForecast *forecast = sw_live_get_forecast (self->live);
  Order *order;

  if (forecast == NULL)
    {
      sw_window_toast (self, _ ("There is no picture yet. Try again in a moment."));
      return;
    }
  order = g_new0 (Order, 1);
  order->picture = picture;
  order->format = format;
  order->forecast = sw_forecast_ref (forecast);
  order->look = sw_look_plain;
  order->look.inches = in_inches (self);
  order->file = file != NULL ? g_object_ref (file) : NULL;
  start (self, order);
}

/* An empty name means what the place shows. */
static SwPicture
picture_of (SwWindow *self, GVariant *parameter)
{
  const char *place = adw_view_stack_get_visible_child_name (self->stack);
  int picture = sw_picture_from_name (g_variant_get_string (parameter, NULL));

  if (picture < 0 && place != NULL)
    picture = sw_picture_from_name (place); /* places are named as their pictures are */
  return picture >= 0 ? (SwPicture) picture : SW_PICTURE_PAN;
}

static const struct
{
  const char *name; /* marked with N_() */
  const char *ending;
} formats[SW_N_FORMATS] = {
  [SW_FORMAT_PNG] = { N_ ("PNG Picture"), "png" },
  [SW_FORMAT_SVG] = { N_ ("SVG Drawing"), "svg" },
  [SW_FORMAT_PDF] = { N_ ("PDF Page"), "pdf" },
  [SW_FORMAT_JPEG] = { N_ ("JPEG Picture"), "jpg" },
};

static void
export_chosen_cb (GtkNativeDialog *dialog, int response, SwWindow *self)
{
  SwPicture picture = (SwPicture) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (dialog), "picture"));
  g_autoptr (GFile) file = NULL;
  g_autofree char *name = NULL;
  int format;

  if (response == GTK_RESPONSE_ACCEPT)
    {
      file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
      name = g_file_get_basename (file);
      format = sw_format_from_file_name (name);
      if (format >= 0)
        render_picture (self, picture, (SwFormat) format, file);
      else
        sw_window_toast (self, _ ("The name of a picture ends in .png, .jpg, .svg or .pdf. Save it again with one of these."));
    }
  g_object_unref (dialog);
}

static void
export_picture_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwWindow *self = user_data;
  SwPicture picture = picture_of (self, parameter);
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (_ ("Save a Picture"), GTK_WINDOW (self), GTK_FILE_CHOOSER_ACTION_SAVE,
                                                              _ ("_Save"), _ ("_Cancel"));
  g_autofree char *name = g_strdup_printf ("%s-%s.png", sw_document_get_title (self->document), sw_picture_name (picture));

  g_strdelimit (name, "/\\", '-');
  sw_window_suggest_folder (self, GTK_FILE_CHOOSER (dialog), G_USER_DIRECTORY_PICTURES);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), name);
  for (gsize i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

      gtk_file_filter_set_name (filter, _ (formats[i].name));
      gtk_file_filter_add_suffix (filter, formats[i].ending);
      gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), filter);
    }
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_object_set_data (G_OBJECT (dialog), "picture", GINT_TO_POINTER (picture));
  g_signal_connect_object (dialog, "response", G_CALLBACK (export_chosen_cb), self, G_CONNECT_DEFAULT);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static void
copy_picture_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwWindow *self = user_data;

  render_picture (self, picture_of (self, parameter), SW_FORMAT_PNG, NULL);
}

static void
copy_words_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwWindow *self = user_data;
  g_autofree char *words = sw_listing_page_get_words (self->listing_page);

  if (words == NULL)
    {
      sw_window_toast (self, _ ("There are no words yet. Try again in a moment."));
      return;
    }
  gdk_clipboard_set_text (gtk_widget_get_clipboard (GTK_WIDGET (self)), words);
  sw_window_toast (self, _ ("Text copied"));
}

void
sw_window_add_picture_actions (SwWindow *self)
{
  const GActionEntry entries[] = {
    { "export-picture", export_picture_cb, "s" },
    { "copy-picture", copy_picture_cb, "s" },
    { "copy-words", copy_words_cb },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
