/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sheet/sw-sheet-batch-row.h"

#include "app/desk/sw-batch-edits.h"
#include "app/parts/sw-expander-name.h"
#include "app/parts/sw-field-row.h"
#include "app/parts/sw-toast.h"
#include "sheet/sw-money.h"
#include "sheet/sw-recipe.h"

#include <glib/gi18n-lib.h>
#include <string.h>

struct _SwSheetBatchRow
{
  AdwExpanderRow parent_instance;

  SwDocument *document;
  SwSubject *subject;
  guint batch;
  gboolean showing;
  char *photos_shown;

  GtkWidget *changes_box;
  GtkLabel *changes;
  GtkLabel *recipe;
  GtkWidget *log_box;
  GtkLabel *log;
  GtkTextBuffer *notes;
  GtkWidget *notes_row;
  GtkWidget *texts_row;
  GtkWidget *photos_row;
  GtkBox *photos;
  GtkWidget *buttons_row;
};

G_DEFINE_FINAL_TYPE (SwSheetBatchRow, sw_sheet_batch_row, ADW_TYPE_EXPANDER_ROW)

static const SwBatch *
batch_of (SwSheetBatchRow *self)
{
  return sw_sketch_find_batch (sw_document_get_sketch (self->document), self->batch);
}

static void
tell (SwSheetBatchRow *self, gboolean done, GError *error)
{
  if (!done)
    sw_toast (GTK_WIDGET (self), error->message);
  g_clear_error (&error);
}

/* Notes: several lines, taken over while they are typed */

static void
notes_cb (SwSheetBatchRow *self)
{
  GtkTextIter from, to;
  g_autofree char *text = NULL;
  g_autofree char *series = g_strdup_printf ("batch %u notes", self->batch);
  GError *error = NULL;
  gboolean done;
  SwValue value;

  if (self->showing)
    return;
  gtk_text_buffer_get_bounds (self->notes, &from, &to);
  text = gtk_text_buffer_get_text (self->notes, &from, &to, FALSE);
  value = sw_value_text (text);
  /* Translators: an edit, shown beside Undo: how a batch came out was written down */
  done = sw_document_edit_series (self->document, sw_edit_set (SW_RECORD_BATCH, self->batch, "notes", &value), _ ("Write Notes"), series, &error);
  sw_value_clear (&value);
  tell (self, done, error);
}

static void
show_notes (SwSheetBatchRow *self, const SwBatch *batch)
{
  GtkTextIter from, to;
  g_autofree char *text = NULL;

  gtk_text_buffer_get_bounds (self->notes, &from, &to);
  text = gtk_text_buffer_get_text (self->notes, &from, &to, FALSE);
  if (g_str_equal (text, batch->notes))
    return;
  self->showing = TRUE;
  gtk_text_buffer_set_text (self->notes, batch->notes, -1);
  self->showing = FALSE;
}

/* Photographs: links only, shown by the desktop */

static GFile *
photo_file (const char *photo)
{
  return g_file_new_for_commandline_arg (photo);
}

static void
open_photo_cb (GtkButton *button, SwSheetBatchRow *self)
{
  g_autoptr (GFile) file = photo_file (g_object_get_data (G_OBJECT (button), "photo"));
  g_autofree char *uri = g_file_get_uri (file);
  g_autofree char *sentence = NULL;

  if (g_file_query_exists (file, NULL))
    {
      gtk_show_uri (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), uri, GDK_CURRENT_TIME);
      return;
    }
  /* Translators: %s is the address of a photograph */
  sentence = g_strdup_printf (_ ("“%s” is not there any more."), uri);
  sw_toast (GTK_WIDGET (self), sentence);
}

static void
remove_photo_cb (GtkButton *button, SwSheetBatchRow *self)
{
  GError *error = NULL;
  gboolean done = sw_batch_remove_photo (self->document, self->batch, g_object_get_data (G_OBJECT (button), "photo"), &error);

  tell (self, done, error);
}

static GtkWidget *
photo_button (SwSheetBatchRow *self, const char *photo, GtkWidget *button, GCallback clicked)
{
  g_object_set_data_full (G_OBJECT (button), "photo", g_strdup (photo), g_free);
  gtk_widget_add_css_class (button, "flat");
  g_signal_connect (button, "clicked", clicked, self);
  return button;
}

static void
add_photo (SwSheetBatchRow *self, const char *photo)
{
  g_autoptr (GFile) file = photo_file (photo);
  g_autofree char *base = g_file_get_basename (file);
  g_autofree char *name = g_filename_display_name (base);
  /* Translators: takes the link to a photograph away; %s is its name */
  g_autofree char *words = g_strdup_printf (_ ("Remove “%s”"), name);
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *open = photo_button (self, photo, gtk_button_new_with_label (name), G_CALLBACK (open_photo_cb));
  GtkWidget *away = photo_button (self, photo, gtk_button_new_from_icon_name ("edit-delete-symbolic"), G_CALLBACK (remove_photo_cb));

  gtk_widget_set_hexpand (open, TRUE);
  gtk_widget_set_halign (open, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (open, photo);
  gtk_widget_set_tooltip_text (away, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (away), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  gtk_box_append (GTK_BOX (line), open);
  gtk_box_append (GTK_BOX (line), away);
  gtk_box_append (self->photos, line);
}

static void
show_photos (SwSheetBatchRow *self, const SwBatch *batch)
{
  g_auto (GStrv) photos = sw_batch_photos (batch);
  GtkWidget *child;

  if (g_strcmp0 (self->photos_shown, batch->photos) == 0)
    return;
  g_free (self->photos_shown);
  self->photos_shown = g_strdup (batch->photos);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->photos))) != NULL)
    gtk_box_remove (self->photos, child);
  for (guint i = 0; photos[i] != NULL; i++)
    add_photo (self, photos[i]);
}

static void
add_files (SwSheetBatchRow *self, GListModel *files)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) uris = NULL;
  GError *error = NULL;
  gboolean done;

  for (guint i = 0; i < g_list_model_get_n_items (files); i++)
    {
      g_autoptr (GFile) file = g_list_model_get_item (files, i);
      g_autofree char *uri = g_file_get_uri (file);

      g_strv_builder_add (builder, uri);
    }
  uris = g_strv_builder_end (builder);
  done = sw_batch_add_photos (self->document, self->batch, (const char *const *) uris, &error);
  tell (self, done, error);
}

static void
chosen_cb (GtkNativeDialog *dialog, int response, SwSheetBatchRow *self)
{
  g_autoptr (GListModel) files = response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_files (GTK_FILE_CHOOSER (dialog)) : NULL;

  if (files != NULL)
    add_files (self, files);
  g_object_unref (dialog);
}

static void
add_photos_cb (SwSheetBatchRow *self)
{
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (_ ("Add Photographs"), GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))),
                                                              GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Add"), NULL);
  g_autoptr (GtkFileFilter) pictures = gtk_file_filter_new ();

  gtk_file_filter_set_name (pictures, _ ("Pictures"));
  gtk_file_filter_add_mime_type (pictures, "image/*");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), pictures);
  gtk_file_chooser_set_select_multiple (GTK_FILE_CHOOSER (dialog), TRUE);
  g_signal_connect_object (dialog, "response", G_CALLBACK (chosen_cb), self, G_CONNECT_DEFAULT);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static gboolean
drop_cb (GtkDropTarget *target, const GValue *value, double x, double y, SwSheetBatchRow *self)
{
  g_autoptr (GListStore) files = g_list_store_new (G_TYPE_FILE);
  g_autoptr (GSList) list = gdk_file_list_get_files (g_value_get_boxed (value));

  for (GSList *l = list; l != NULL; l = l->next)
    g_list_store_append (files, l->data);
  add_files (self, G_LIST_MODEL (files));
  return TRUE;
}

/* The batch as a whole */

static void
delete_cb (SwSheetBatchRow *self)
{
  GtkWidget *window = GTK_WIDGET (gtk_widget_get_root (GTK_WIDGET (self)));
  GError *error = NULL;
  gboolean done = sw_batch_delete (self->document, self->batch, &error);

  /* The row may be gone by now. */
  if (!done)
    sw_toast (window, error->message);
  g_clear_error (&error);
}

static void
start_from_cb (SwSheetBatchRow *self)
{
  GError *error = NULL;
  gboolean done = sw_batch_start_from (self->document, self->batch, &error);

  tell (self, done, error);
}

static void
set_block (GtkWidget *box, GtkLabel *label, const char *text)
{
  gtk_label_set_text (label, text);
  gtk_widget_set_visible (box, *text != '\0');
}

static void
show_head (SwSheetBatchRow *self, const SwBatch *batch)
{
  const SwSketch *sketch = sw_document_get_sketch (self->document);
  g_autofree char *skeins = g_strdup_printf (ngettext ("%d skein", "%d skeins", (gulong) batch->skeins), (int) batch->skeins);
  g_autofree char *cost = batch->cost > 0 ? sw_money_text (batch->cost, sketch->sheet.currency) : NULL;
  /* Translators: the day of a batch, and how many skeins: "2026-03-04, 4 skeins" */
  g_autofree char *title = g_strdup_printf (_ ("%1$s, %2$s"), batch->date, skeins);
  g_autofree char *first = g_strndup (batch->changes, strcspn (batch->changes, "\n"));
  g_autofree char *detail = cost != NULL && *first != '\0' ? g_strdup_printf ("%s · %s", cost, first) : g_strdup (cost != NULL ? cost : first);
  g_autofree char *escaped = g_markup_escape_text (title, -1);
  g_autofree char *subtitle = g_markup_escape_text (detail, -1);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self), escaped);
  adw_expander_row_set_subtitle (ADW_EXPANDER_ROW (self), subtitle);
}

void
sw_sheet_batch_row_show (SwSheetBatchRow *self)
{
  const SwBatch *batch;
  g_autofree char *recipe = NULL;

  g_return_if_fail (SW_IS_SHEET_BATCH_ROW (self));

  batch = batch_of (self);
  if (batch == NULL)
    return;
  show_head (self, batch);
  set_block (self->changes_box, self->changes, batch->changes);
  recipe = *batch->amounts != '\0' ? sw_recipe_words (batch->amounts) : g_strdup (batch->recipe);
  gtk_label_set_text (self->recipe, recipe);
  set_block (self->log_box, self->log, batch->log);
  show_notes (self, batch);
  show_photos (self, batch);
}

static void
sw_sheet_batch_row_dispose (GObject *object)
{
  SwSheetBatchRow *self = SW_SHEET_BATCH_ROW (object);

  g_clear_object (&self->subject);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (sw_sheet_batch_row_parent_class)->dispose (object);
}

static void
sw_sheet_batch_row_finalize (GObject *object)
{
  g_free (SW_SHEET_BATCH_ROW (object)->photos_shown);

  G_OBJECT_CLASS (sw_sheet_batch_row_parent_class)->finalize (object);
}

static void
sw_sheet_batch_row_class_init (SwSheetBatchRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_sheet_batch_row_dispose;
  G_OBJECT_CLASS (klass)->finalize = sw_sheet_batch_row_finalize;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-sheet-batch-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSheetBatchRow, changes_box);
  gtk_widget_class_bind_template_child (widget_class, SwSheetBatchRow, changes);
  gtk_widget_class_bind_template_child (widget_class, SwSheetBatchRow, recipe);
  gtk_widget_class_bind_template_child (widget_class, SwSheetBatchRow, log_box);
  gtk_widget_class_bind_template_child (widget_class, SwSheetBatchRow, log);
  gtk_widget_class_bind_template_child (widget_class, SwSheetBatchRow, notes);
  gtk_widget_class_bind_template_child (widget_class, SwSheetBatchRow, notes_row);
  gtk_widget_class_bind_template_child (widget_class, SwSheetBatchRow, texts_row);
  gtk_widget_class_bind_template_child (widget_class, SwSheetBatchRow, photos_row);
  gtk_widget_class_bind_template_child (widget_class, SwSheetBatchRow, photos);
  gtk_widget_class_bind_template_child (widget_class, SwSheetBatchRow, buttons_row);
  gtk_widget_class_bind_template_callback (widget_class, notes_cb);
  gtk_widget_class_bind_template_callback (widget_class, add_photos_cb);
  gtk_widget_class_bind_template_callback (widget_class, delete_cb);
  gtk_widget_class_bind_template_callback (widget_class, start_from_cb);
}

static void
sw_sheet_batch_row_init (SwSheetBatchRow *self)
{
  GtkDropTarget *target = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);

  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect (target, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (self->photos_row, GTK_EVENT_CONTROLLER (target));
}

GtkWidget *
sw_sheet_batch_row_new (SwDocument *document, guint batch)
{
  static const char *const names[] = { "date", "skeins", "cost" };
  SwSheetBatchRow *self = g_object_new (SW_TYPE_SHEET_BATCH_ROW, NULL);
  AdwExpanderRow *expander = ADW_EXPANDER_ROW (self);

  self->document = g_object_ref (document);
  self->batch = batch;
  self->subject = sw_subject_new (document, SW_RECORD_BATCH);
  sw_subject_set_ids (self->subject, &batch, 1);
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    adw_expander_row_add_row (expander, sw_field_row_new (self->subject, sw_record_find_member (SW_RECORD_BATCH, names[i])));
  adw_expander_row_add_row (expander, self->notes_row);
  adw_expander_row_add_row (expander, self->photos_row);
  adw_expander_row_add_row (expander, self->texts_row);
  adw_expander_row_add_row (expander, self->buttons_row);
  sw_expander_tell_name (expander);
  sw_sheet_batch_row_show (self);
  return GTK_WIDGET (self);
}

guint
sw_sheet_batch_row_get_batch (SwSheetBatchRow *self)
{
  g_return_val_if_fail (SW_IS_SHEET_BATCH_ROW (self), 0);
  return self->batch;
}
