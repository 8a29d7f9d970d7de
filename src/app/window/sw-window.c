/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/window/sw-window-private.h"

#include "app/desk/sw-file-words.h"
#include "app/desk/sw-templates.h"
#include "app/parts/sw-toast.h"

#include <glib/gi18n-lib.h>

G_DEFINE_FINAL_TYPE (SwWindow, sw_window, ADW_TYPE_APPLICATION_WINDOW)

static gboolean
units_to_inches (GValue *value, GVariant *variant, gpointer user_data)
{
  g_value_set_boolean (value, g_str_equal (g_variant_get_string (variant, NULL), "us"));
  return TRUE;
}

/* What is shown of the document outside its pages */

static void
show_title (SwWindow *self)
{
  const char *title = sw_document_get_title (self->document);

  gtk_window_set_title (GTK_WINDOW (self), title);
  gtk_label_set_text (self->title_label, title);
}

/* The home folder is "~", as everywhere. */
static char *
short_path (GFile *folder)
{
  g_autoptr (GFile) home = g_file_new_for_path (g_get_home_dir ());
  g_autofree char *below = g_file_get_relative_path (home, folder);
  g_autofree char *shown = below != NULL ? g_filename_display_name (below) : NULL;

  if (g_file_equal (home, folder))
    return g_strdup ("~");
  return shown != NULL ? g_strconcat ("~/", shown, NULL) : g_file_get_parse_name (folder);
}

static char *
describe_state (SwWindow *self)
{
  GFile *file = sw_document_get_file (self->document);
  g_autoptr (GFile) folder = file != NULL ? g_file_get_parent (file) : NULL;

  if (sw_document_get_modified (self->document))
    /* Translators: under the drawing's title: it has changes that are not in its file */
    return g_strdup (_ ("Edited"));
  if (file == NULL)
    /* Translators: under the drawing's title: there is no file of it */
    return g_strdup (_ ("Not saved yet"));
  return folder != NULL ? short_path (folder) : sw_file_display_name (file);
}

static void
show_state (SwWindow *self)
{
  g_autofree char *state = describe_state (self);
  gboolean busy = sw_document_get_busy (self->document);
  gboolean has_file = sw_document_get_file (self->document) != NULL;

  gtk_label_set_text (self->state_label, state);
  sw_window_set_action_enabled (self, "save", !busy && (!has_file || sw_document_get_modified (self->document)));
  sw_window_set_action_enabled (self, "save-as", !busy);
  sw_window_set_action_enabled (self, "reload", !busy && has_file);
  if (!sw_document_get_modified (self->document))
    sw_notice_set (self->notice, SW_NOTICE_RECOVERED, NULL);
}

static void
show_step (SwWindow *self, GtkButton *button, const char *action, const char *name, const char *plain, char *words)
{
  gtk_widget_set_tooltip_text (GTK_WIDGET (button), name != NULL ? words : plain);
  sw_window_set_action_enabled (self, action, name != NULL);
  g_free (words);
}

static void
show_history (SwWindow *self)
{
  const char *undo = sw_document_get_undo_name (self->document);
  const char *redo = sw_document_get_redo_name (self->document);

  /* Translators: %s is the name of an edit: "Undo: Move Band" */
  show_step (self, self->undo_button, "undo", undo, _ ("Undo"), g_strdup_printf (_ ("Undo: %s"), undo != NULL ? undo : ""));
  /* Translators: %s is the name of an edit: "Redo: Move Band" */
  show_step (self, self->redo_button, "redo", redo, _ ("Redo"), g_strdup_printf (_ ("Redo: %s"), redo != NULL ? redo : ""));
}

static void
show_file (SwWindow *self)
{
  GFile *file = sw_document_get_file (self->document);
  SwDisk disk = sw_document_get_disk (self->document);
  g_autofree char *name = file != NULL ? sw_file_display_name (file) : NULL;
  g_autofree char *changed = NULL;
  g_autofree char *gone = NULL;
  g_autofree char *locked = NULL;

  if (disk == SW_DISK_CHANGED)
    changed = g_strdup_printf (_ ("Another program has changed “%s” since it was opened here."), name);
  if (disk == SW_DISK_GONE)
    gone = g_strdup_printf (_ ("“%s” has been moved or deleted. What you see is still here: save it to keep it."), name);
  if (sw_document_get_read_only (self->document))
    locked = g_strdup_printf (_ ("“%s” can only be read. Draw on, and save it under another name."), name);
  sw_notice_set (self->notice, SW_NOTICE_DISK_CHANGED, changed);
  sw_notice_set (self->notice, SW_NOTICE_DISK_GONE, gone);
  sw_notice_set (self->notice, SW_NOTICE_READ_ONLY, locked);
  show_state (self);
}

static void
show_problem (SwWindow *self)
{
  sw_notice_set (self->notice, SW_NOTICE_FORECAST, sw_live_get_problem (self->live));
}

/* What is told of the last deed is no news after the next. */
static void
forget_deed (SwWindow *self)
{
  sw_notice_set (self->notice, SW_NOTICE_BROUGHT_IN, NULL);
}

static void
follow_document (SwWindow *self)
{
  g_signal_connect_object (self->document, "changed", G_CALLBACK (forget_deed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "notify::title", G_CALLBACK (show_title), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "notify::modified", G_CALLBACK (show_state), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "notify::busy", G_CALLBACK (show_state), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "notify::undo-name", G_CALLBACK (show_history), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "notify::redo-name", G_CALLBACK (show_history), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "notify::file", G_CALLBACK (show_file), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "notify::disk", G_CALLBACK (show_file), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "notify::read-only", G_CALLBACK (show_file), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->live, "notify::problem", G_CALLBACK (show_problem), self, G_CONNECT_SWAPPED);
  show_title (self);
  show_history (self);
  show_file (self);
}

/* Lifecycle */

static void
remember_view (SwWindow *self)
{
  int width, height;

  gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
  g_settings_set (self->settings, "window-size", "(ii)", width, height);
  g_settings_set_boolean (self->settings, "window-maximized", gtk_window_is_maximized (GTK_WINDOW (self)));
  g_settings_set_string (self->settings, "place", adw_view_stack_get_visible_child_name (self->stack));
}

static void
restore_view (SwWindow *self)
{
  g_autofree char *place = g_settings_get_string (self->settings, "place");
  int width, height;

  g_settings_get (self->settings, "window-size", "(ii)", &width, &height);
  gtk_window_set_default_size (GTK_WINDOW (self), MAX (width, 360), MAX (height, 294));
  if (g_settings_get_boolean (self->settings, "window-maximized"))
    gtk_window_maximize (GTK_WINDOW (self));
  adw_view_stack_set_visible_child_name (self->stack, place);
}

static gboolean
sw_window_close_request (GtkWindow *window)
{
  SwWindow *self = SW_WINDOW (window);

  if (!self->day_may_rest && sw_window_asks_about_day (self))
    return TRUE;
  if (!self->may_close && sw_document_get_modified (self->document))
    {
      sw_window_ask_before_closing (self);
      return TRUE;
    }
  remember_view (self);
  return GTK_WINDOW_CLASS (sw_window_parent_class)->close_request (window);
}

/* Keys go to the drawing at first, not to the header's buttons. */
static void
sw_window_map (GtkWidget *widget)
{
  SwWindow *self = SW_WINDOW (widget);

  GTK_WIDGET_CLASS (sw_window_parent_class)->map (widget);
  if (gtk_window_get_focus (GTK_WINDOW (self)) == NULL)
    gtk_widget_grab_focus (GTK_WIDGET (self->pan_page));
}

static void
sw_window_dispose (GObject *object)
{
  SwWindow *self = SW_WINDOW (object);

  if (self->guide != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->guide));
  self->guide = NULL;
  g_clear_object (&self->autosave);
  g_clear_pointer (&self->alarm, sw_day_alarm_free);

  G_OBJECT_CLASS (sw_window_parent_class)->dispose (object);
}

static void
sw_window_finalize (GObject *object)
{
  SwWindow *self = SW_WINDOW (object);

  g_clear_object (&self->day);
  g_clear_object (&self->live);
  g_clear_object (&self->document);
  g_clear_object (&self->settings);

  G_OBJECT_CLASS (sw_window_parent_class)->finalize (object);
}

static void
sw_window_class_init (SwWindowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = sw_window_dispose;
  object_class->finalize = sw_window_finalize;
  widget_class->map = sw_window_map;
  GTK_WINDOW_CLASS (klass)->close_request = sw_window_close_request;

  g_type_ensure (SW_TYPE_CLOTH_PAGE);
  g_type_ensure (SW_TYPE_DAY_PAGE);
  g_type_ensure (SW_TYPE_LISTING_PAGE);
  g_type_ensure (SW_TYPE_NOTICE);
  g_type_ensure (SW_TYPE_PAN_PAGE);
  g_type_ensure (SW_TYPE_SHEET_PAGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-window.ui");
  gtk_widget_class_bind_template_child (widget_class, SwWindow, views);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, content);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, undo_button);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, redo_button);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, title_label);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, state_label);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, switcher_title);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, toasts);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, notice);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, pan_page);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, cloth_page);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, sheet_page);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, listing_page);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, day_page);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, recent_section);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, template_section);
}

static void
sw_window_init (SwWindow *self)
{
  self->document = sw_document_new ();
  self->live = sw_live_new (self->document);

  gtk_widget_init_template (GTK_WIDGET (self));
  sw_window_add_actions (self);
  sw_window_add_open_actions (self);
  sw_window_add_save_actions (self);
  sw_window_add_picture_actions (self);
  sw_window_add_print_actions (self);
  sw_window_add_trace_actions (self);
  sw_window_add_day (self);
  sw_window_fill_menus (self);
  sw_window_accept_drops (self);
  follow_document (self);
  g_object_set (self->pan_page, "live", self->live, NULL);
  g_object_set (self->cloth_page, "live", self->live, NULL);
  g_object_set (self->sheet_page, "live", self->live, NULL);
  g_object_set (self->listing_page, "live", self->live, NULL);
}

SwWindow *
sw_window_new (GtkApplication *application, GSettings *settings, SwDrafts *drafts)
{
  SwWindow *self = g_object_new (SW_TYPE_WINDOW, "application", application, NULL);

  self->settings = g_object_ref (settings);
  g_settings_bind_with_mapping (settings, "units", self->pan_page, "inches", G_SETTINGS_BIND_GET, units_to_inches, NULL, NULL, NULL);
  g_settings_bind_with_mapping (settings, "units", self->cloth_page, "inches", G_SETTINGS_BIND_GET, units_to_inches, NULL, NULL, NULL);
  g_settings_bind_with_mapping (settings, "units", self->sheet_page, "inches", G_SETTINGS_BIND_GET, units_to_inches, NULL, NULL, NULL);
  g_settings_bind_with_mapping (settings, "units", self->listing_page, "inches", G_SETTINGS_BIND_GET, units_to_inches, NULL, NULL, NULL);
  g_settings_bind_with_mapping (settings, "units", self->day_page, "inches", G_SETTINGS_BIND_GET, units_to_inches, NULL, NULL, NULL);
  restore_view (self);
  if (drafts != NULL)
    {
      g_autofree char *path = sw_drafts_new_path (drafts);

      self->autosave = sw_autosave_new (self->document, path);
      g_signal_connect_object (self->autosave, "failed", G_CALLBACK (sw_window_warn_drafts), self, G_CONNECT_SWAPPED);
    }
  return self;
}

SwDocument *
sw_window_get_document (SwWindow *self)
{
  g_return_val_if_fail (SW_IS_WINDOW (self), NULL);
  return self->document;
}

SwLive *
sw_window_get_live (SwWindow *self)
{
  g_return_val_if_fail (SW_IS_WINDOW (self), NULL);
  return self->live;
}

gboolean
sw_window_is_pristine (SwWindow *self)
{
  g_return_val_if_fail (SW_IS_WINDOW (self), FALSE);

  return sw_document_get_file (self->document) == NULL && !sw_document_get_modified (self->document) &&
         !sw_document_get_busy (self->document);
}

static void
show_sketch (SwWindow *self, SwSketch *sketch, GError *error)
{
  if (sketch != NULL)
    sw_document_set_template (self->document, sketch);
  else
    sw_window_toast (self, error->message);
  g_clear_error (&error);
}

void
sw_window_show_demo (SwWindow *self)
{
  GError *error = NULL;
  SwSketch *sketch;

  g_return_if_fail (SW_IS_WINDOW (self));

  sketch = sw_template_demo (&error);
  show_sketch (self, sketch, error);
}

void
sw_window_show_template (SwWindow *self, const char *id)
{
  const SwTemplate *template = sw_template_find (id);
  GError *error = NULL;
  SwSketch *sketch;

  g_return_if_fail (SW_IS_WINDOW (self));

  if (template == NULL)
    return;
  sketch = sw_template_new_sketch (template, &error);
  show_sketch (self, sketch, error);
}

void
sw_window_recover (SwWindow *self, SwDraft *draft)
{
  g_return_if_fail (SW_IS_WINDOW (self));
  g_return_if_fail (draft->sketch != NULL);

  sw_document_recover (self->document, sw_sketch_copy (draft->sketch), draft->file, draft->etag);
  if (self->autosave != NULL)
    sw_autosave_set_path (self->autosave, draft->path);
  sw_notice_set (self->notice, SW_NOTICE_RECOVERED,
                 _ ("This drawing was brought back as it was before Strandwise stopped. It is not in a file yet."));
}

void
sw_window_warn_drafts (SwWindow *self, const char *sentence)
{
  g_return_if_fail (SW_IS_WINDOW (self));
  sw_notice_set (self->notice, SW_NOTICE_DRAFTS, sentence);
}

void
sw_window_flush_draft (SwWindow *self)
{
  g_return_if_fail (SW_IS_WINDOW (self));

  if (self->autosave != NULL)
    sw_autosave_flush (self->autosave);
}

void
sw_window_toast (SwWindow *self, const char *sentence)
{
  g_return_if_fail (SW_IS_WINDOW (self));

  sw_toast_over (self->toasts, sentence);
}
