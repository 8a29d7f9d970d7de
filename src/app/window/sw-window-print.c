/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/window/sw-window-private.h"

#include "app/desk/sw-file-words.h"
#include "app/sheet/sw-sheet-printing.h"
#include "draw/sw-draw-sheet.h"
#include "files/sw-print.h"
#include "files/sw-sheet-text.h"
#include "files/sw-svg.h"
#include "forecast/sw-repeat.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* The dye sheet and the full-size template: to a printer, and into files. */

static gboolean
in_us_units (SwWindow *self)
{
  g_autofree char *units = g_settings_get_string (self->settings, "units");

  return g_str_equal (units, "us");
}

static SwPaper
usual_paper (void)
{
  return g_str_has_prefix (gtk_paper_size_get_default (), GTK_PAPER_NAME_LETTER) ? SW_PAPER_LETTER : SW_PAPER_A4;
}

/* (transfer full): what is shown now; NULL, and said, if there is nothing yet */
static SwForecast *
take_forecast (SwWindow *self)
{
  SwForecast *forecast = sw_live_get_forecast (self->live);

  if (forecast == NULL)
    sw_window_toast (self, _ ("There is no forecast yet. Try again in a moment."));
  return forecast != NULL ? sw_forecast_ref (forecast) : NULL;
}

/* To a printer */

static void
printed_cb (GtkPrintOperation *operation, GtkPrintOperationResult result, SwWindow *self)
{
  g_autoptr (GError) error = NULL;

  if (result == GTK_PRINT_OPERATION_RESULT_ERROR)
    {
      g_autofree char *words = NULL;

      gtk_print_operation_get_error (operation, &error);
      /* Translators: %s says what went wrong */
      words = g_strdup_printf (_ ("The dye sheet could not be printed: %s"), error->message);
      sw_window_toast (self, words);
    }
  else if (result == GTK_PRINT_OPERATION_RESULT_APPLY)
    /* The next time begins with the same printer and paper. */
    g_object_set_data_full (G_OBJECT (self), "print-settings", g_object_ref (gtk_print_operation_get_print_settings (operation)), g_object_unref);
}

static void
print_sheet_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwWindow *self = user_data;
  g_autoptr (SwForecast) forecast = take_forecast (self);
  g_autoptr (GtkPrintOperation) operation = NULL;
  g_autoptr (GError) error = NULL;

  if (forecast == NULL)
    return;
  operation = sw_sheet_printing_new (forecast, usual_paper (), in_us_units (self));
  gtk_print_operation_set_print_settings (operation, g_object_get_data (G_OBJECT (self), "print-settings"));
  gtk_print_operation_set_job_name (operation, sw_document_get_title (self->document));
  gtk_print_operation_set_allow_async (operation, TRUE);
  g_signal_connect_object (operation, "done", G_CALLBACK (printed_cb), self, G_CONNECT_DEFAULT);
  if (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, GTK_WINDOW (self), &error) == GTK_PRINT_OPERATION_RESULT_ERROR && error != NULL)
    sw_window_toast (self, error->message);
}

/* Into files */

typedef struct _Order Order;

/* A kind of file: who makes it. */
typedef struct
{
  const char *name; /* marked with N_() */
  const char *ending;
  GBytes *(*make) (const Order *order, GError **error);
} Kind;

/* What can be exported: its words, and the kinds of file it can be. */
typedef struct
{
  const char *title;  /* of the dialog; marked with N_() */
  const char *suffix; /* of the suggested name; marked with N_() */
  const char *wrong;  /* said of a name that ends otherwise; marked with N_() */
  const Kind *kinds;  /* the usual one first */
  gsize n_kinds;
} Leaflet;

struct _Order
{
  const Kind *kind;
  SwForecast *forecast;
  SwSheetOptions options;
  GFile *file;
};

static void
order_free (gpointer data)
{
  Order *order = data;

  sw_forecast_unref (order->forecast);
  g_object_unref (order->file);
  g_free (order);
}

static GBytes *
make_sheet_pdf (const Order *order, GError **error)
{
  g_autoptr (SwSheet) sheet = sw_forecast_sheet (order->forecast);

  return sw_print_sheet_pdf (order->forecast, sheet, &order->options, error);
}

static GBytes *
make_template_pdf (const Order *order, GError **error)
{
  return sw_print_template_pdf (order->forecast->sketch, order->options.paper, error);
}

static GBytes *
make_svg (const Order *order, GError **error)
{
  g_autoptr (SwSheet) sheet = sw_forecast_sheet (order->forecast);
  char *text = sw_svg_write (order->forecast->sketch, sheet, order->options.us);

  return g_bytes_new_take (text, strlen (text));
}

/* Skeins that are tried to say how alike a batch comes out. */
#define SKEINS_TRIED 8

static GBytes *
make_account (const Order *order, gboolean json, GError **error)
{
  g_autoptr (SwSheet) sheet = sw_forecast_sheet (order->forecast);
  g_autoptr (SwRepeat) repeat = sw_repeat_new (order->forecast->sketch, SKEINS_TRIED, NULL, error);
  g_autoptr (GArray) slips = repeat != NULL ? sw_slips_new (order->forecast->sketch, NULL, error) : NULL;
  const SwSheetAccount account = { sheet, repeat, slips };
  char *text;

  if (slips == NULL)
    return NULL;
  text = json ? sw_sheet_json (&account) : sw_sheet_text (&account, order->options.us ? SW_MEASURE_US : SW_MEASURE_METRIC);
  return g_bytes_new_take (text, strlen (text));
}

static GBytes *
make_text (const Order *order, GError **error)
{
  return make_account (order, FALSE, error);
}

static GBytes *
make_json (const Order *order, GError **error)
{
  return make_account (order, TRUE, error);
}

static const Kind sheet_kinds[] = {
  { N_ ("PDF Pages"), "pdf", make_sheet_pdf },
  { N_ ("Plain Text"), "txt", make_text },
  { N_ ("JSON for Programs"), "json", make_json },
  { N_ ("SVG Drawing"), "svg", make_svg },
};

static const Kind template_kinds[] = {
  { N_ ("PDF Pages"), "pdf", make_template_pdf },
  { N_ ("SVG Drawing"), "svg", make_svg },
};

/* By the ending of a file's name; NULL if it is none of them. */
static const Kind *
find_kind (const Leaflet *leaflet, const char *name)
{
  const char *dot = strrchr (name, '.');

  for (gsize i = 0; dot != NULL && i < leaflet->n_kinds; i++)
    if (g_ascii_strcasecmp (dot + 1, leaflet->kinds[i].ending) == 0)
      return &leaflet->kinds[i];
  return NULL;
}

static void
export_worker (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  const Order *order = task_data;
  GError *error = NULL;
  g_autoptr (GBytes) bytes = order->kind->make (order, &error);

  if (bytes != NULL && g_file_replace_contents (order->file, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), NULL, FALSE, G_FILE_CREATE_NONE, NULL, cancellable, &error))
    {
      g_task_return_boolean (task, TRUE);
      return;
    }
  sw_file_error_in_words (&error, SW_FILE_DEED_WRITE, order->file);
  g_task_return_error (task, error);
}

static void
exported_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  const Order *order = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;
  g_autofree char *name = sw_file_display_name (order->file);
  g_autofree char *words = g_strdup_printf (_ ("“%s” saved"), name);

  sw_window_toast (SW_WINDOW (source), g_task_propagate_boolean (G_TASK (result), &error) ? words : error->message);
}

static void
export_to (SwWindow *self, const Kind *kind, GFile *file)
{
  SwForecast *forecast = take_forecast (self);
  g_autoptr (GTask) task = NULL;
  Order *order;

  if (forecast == NULL)
    return;
  order = g_new0 (Order, 1);
  *order = (Order){ kind, forecast, { usual_paper (), in_us_units (self) }, g_object_ref (file) };
  task = g_task_new (self, NULL, exported_cb, NULL);
  g_task_set_source_tag (task, export_to);
  g_task_set_name (task, "export pages");
  g_task_set_task_data (task, order, order_free);
  g_task_run_in_thread (task, export_worker);
}

static void
export_chosen_cb (GtkNativeDialog *dialog, int response, SwWindow *self)
{
  const Leaflet *leaflet = g_object_get_data (G_OBJECT (dialog), "leaflet");
  g_autoptr (GFile) file = response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog)) : NULL;
  g_autofree char *name = file != NULL ? g_file_get_basename (file) : NULL;
  const Kind *kind = name != NULL ? find_kind (leaflet, name) : NULL;

  if (file != NULL)
    {
      if (kind != NULL)
        export_to (self, kind, file);
      else
        sw_window_toast (self, _ (leaflet->wrong));
    }
  g_object_unref (dialog);
}

static void
ask_where (SwWindow *self, const Leaflet *leaflet)
{
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (_ (leaflet->title), GTK_WINDOW (self), GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), _ ("_Cancel"));
  g_autofree char *name = g_strdup_printf ("%s-%s.pdf", sw_document_get_title (self->document), _ (leaflet->suffix));

  g_strdelimit (name, "/\\", '-');
  sw_window_suggest_folder (self, GTK_FILE_CHOOSER (dialog), G_USER_DIRECTORY_DOCUMENTS);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), name);
  for (gsize i = 0; i < leaflet->n_kinds; i++)
    {
      g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

      gtk_file_filter_set_name (filter, _ (leaflet->kinds[i].name));
      gtk_file_filter_add_suffix (filter, leaflet->kinds[i].ending);
      gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), filter);
    }
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_object_set_data (G_OBJECT (dialog), "leaflet", (gpointer) leaflet);
  g_signal_connect_object (dialog, "response", G_CALLBACK (export_chosen_cb), self, G_CONNECT_DEFAULT);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static void
export_sheet_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  /* Translators: the suffix ends the suggested name of a file */
  static const Leaflet sheet = { N_ ("Export the Dye Sheet"), N_ ("dye-sheet"),
                                 N_ ("The name must end in .pdf for pages, in .txt or .json for words and figures, or in .svg for a drawing. Save it again with one of these."),
                                 sheet_kinds, G_N_ELEMENTS (sheet_kinds) };

  ask_where (user_data, &sheet);
}

static void
export_template_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  /* Translators: the suffix ends the suggested name of a file */
  static const Leaflet template = { N_ ("Export the Pan Template"), N_ ("pan-template"),
                                    N_ ("The name must end in .pdf for pages or in .svg for a drawing. Save it again with one of these."),
                                    template_kinds, G_N_ELEMENTS (template_kinds) };

  ask_where (user_data, &template);
}

void
sw_window_add_print_actions (SwWindow *self)
{
  const GActionEntry entries[] = {
    { "print-sheet", print_sheet_cb },
    { "export-sheet", export_sheet_cb },
    { "export-template", export_template_cb },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
