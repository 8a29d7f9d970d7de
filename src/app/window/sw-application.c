/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/window/sw-application-private.h"

#include "app/parts/sw-frame-times.h"

#include <glib-unix.h>
#include <glib/gi18n-lib.h>

G_DEFINE_FINAL_TYPE (SwApplication, sw_application, ADW_TYPE_APPLICATION)

SwWindow *
sw_application_new_window (SwApplication *self)
{
  SwWindow *window = sw_window_new (GTK_APPLICATION (self), self->settings, self->drafts);

  if (self->drafts_problem != NULL)
    sw_window_warn_drafts (window, self->drafts_problem);
  return window;
}

static void
sw_application_activate (GApplication *application)
{
  SwApplication *self = SW_APPLICATION (application);
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));
  SwWindow *window;

  if (active != NULL)
    {
      gtk_window_present (active);
      return;
    }
  window = sw_application_new_window (self);
  sw_window_show_demo (window);
  /* Asked now instead of when the main loop is idle, it is forecast while the window is put up. */
  sw_live_catch_up (sw_window_get_live (window), 0);
  gtk_window_present (GTK_WINDOW (window));
  if (self->recovered != NULL && self->recovered->len > 0)
    sw_application_offer_drafts (self);
  else
    sw_window_welcome (window);
}

/* The window that shows the file already, else the latest in use that nobody would miss; the caller makes one if there is neither. */
static SwWindow *
window_for_file (SwApplication *self, GFile *file)
{
  GList *windows = gtk_application_get_windows (GTK_APPLICATION (self));
  SwWindow *pristine = NULL;

  for (GList *l = windows; l != NULL; l = l->next)
    {
      GFile *shown = SW_IS_WINDOW (l->data) ? sw_document_get_file (sw_window_get_document (l->data)) : NULL;

      if (shown != NULL && g_file_equal (shown, file))
        return l->data;
      if (pristine == NULL && SW_IS_WINDOW (l->data) && sw_window_is_pristine (l->data))
        pristine = l->data;
    }
  return pristine;
}

static void
sw_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  SwApplication *self = SW_APPLICATION (application);

  for (int i = 0; i < n_files; i++)
    {
      SwWindow *window = window_for_file (self, files[i]);

      if (window == NULL)
        window = sw_application_new_window (self);
      if (sw_document_get_file (sw_window_get_document (window)) == NULL)
        sw_window_load (window, files[i]);
      gtk_window_present (GTK_WINDOW (window));
    }
  sw_application_offer_drafts (self);
}

static void
apply_appearance (SwApplication *self)
{
  static const struct
  {
    const char *name;
    AdwColorScheme scheme;
  } schemes[] = {
    { "follow", ADW_COLOR_SCHEME_DEFAULT },
    { "light", ADW_COLOR_SCHEME_FORCE_LIGHT },
    { "dark", ADW_COLOR_SCHEME_FORCE_DARK },
  };
  g_autofree char *appearance = g_settings_get_string (self->settings, "appearance");

  for (gsize i = 0; i < G_N_ELEMENTS (schemes); i++)
    if (g_str_equal (appearance, schemes[i].name))
      adw_style_manager_set_color_scheme (adw_style_manager_get_default (), schemes[i].scheme);
}

/* The session ends, or someone asks politely: keep what is not in a file, and go. */
static gboolean
terminated_cb (gpointer user_data)
{
  SwApplication *self = user_data;

  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next)
    if (SW_IS_WINDOW (l->data))
      sw_window_flush_draft (l->data);
  g_application_quit (G_APPLICATION (self));
  return G_SOURCE_CONTINUE;
}

static void
sw_application_startup (GApplication *application)
{
  SwApplication *self = SW_APPLICATION (application);

  G_APPLICATION_CLASS (sw_application_parent_class)->startup (application);

  gtk_window_set_default_icon_name (SW_APP_ID);
  self->settings = g_settings_new (SW_APP_ID);
  g_signal_connect_object (self->settings, "changed::appearance", G_CALLBACK (apply_appearance), self, G_CONNECT_SWAPPED);
  apply_appearance (self);
  sw_application_add_actions (self);
  sw_application_find_drafts (self);
  g_unix_signal_add (SIGTERM, terminated_cb, self);
  g_unix_signal_add (SIGINT, terminated_cb, self);
  g_unix_signal_add (SIGHUP, terminated_cb, self);
}

static void
sw_application_shutdown (GApplication *application)
{
  SwApplication *self = SW_APPLICATION (application);

  G_APPLICATION_CLASS (sw_application_parent_class)->shutdown (application);

  sw_frame_times_report ();
  g_clear_pointer (&self->recovered, g_ptr_array_unref);
  g_clear_pointer (&self->drafts, sw_drafts_close);
  g_clear_pointer (&self->drafts_problem, g_free);
  g_clear_object (&self->settings);
}

/* Without its schema GSettings would end the program with a message for programmers. */
static gboolean
schema_is_there (void)
{
  g_autoptr (GSettingsSchema) schema = g_settings_schema_source_lookup (g_settings_schema_source_get_default (), SW_APP_ID, TRUE);

  return schema != NULL;
}

static int
sw_application_handle_local_options (GApplication *application, GVariantDict *options)
{
  if (g_variant_dict_contains (options, "version"))
    {
      g_print ("%s %s\n", g_get_application_name (), SW_VERSION);
      return 0;
    }
  if (!schema_is_there ())
    {
      g_printerr ("%s\n", _ ("Strandwise cannot find the description of its settings. Install it completely, or start it with src/run."));
      return 1;
    }
  if (g_variant_dict_contains (options, "new-window") && g_application_register (application, NULL, NULL))
    {
      g_action_group_activate_action (G_ACTION_GROUP (application), "new-window", NULL);
      return g_application_get_is_remote (application) ? 0 : -1;
    }
  return -1;
}

static void
sw_application_class_init (SwApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  application_class->activate = sw_application_activate;
  application_class->open = sw_application_open;
  application_class->startup = sw_application_startup;
  application_class->shutdown = sw_application_shutdown;
  application_class->handle_local_options = sw_application_handle_local_options;
}

static void
sw_application_init (SwApplication *self)
{
  const GOptionEntry options[] = {
    { "new-window", 'n', 0, G_OPTION_ARG_NONE, NULL, N_ ("Open a new window with an empty pan"), NULL },
    { "version", 'V', 0, G_OPTION_ARG_NONE, NULL, N_ ("Print the version and exit"), NULL },
    { NULL },
  };

  g_application_add_main_option_entries (G_APPLICATION (self), options);
  g_application_set_option_context_parameter_string (G_APPLICATION (self), _ ("[COLOURWAY…]"));
}

SwApplication *
sw_application_new (void)
{
  return g_object_new (SW_TYPE_APPLICATION,
                       "application-id", SW_APP_ID,
                       "flags", G_APPLICATION_HANDLES_OPEN,
                       "resource-base-path", "/io/strandwise/Strandwise",
                       NULL);
}
