/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/window/sw-window-private.h"

#include "app/desk/sw-templates.h"

#include <glib/gi18n-lib.h>

void
sw_window_set_action_enabled (SwWindow *self, const char *name, gboolean enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), name);

  g_assert (G_IS_SIMPLE_ACTION (action));
  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), enabled);
}

static void
undo_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwWindow *self = user_data;
  g_autoptr (GError) error = NULL;

  if (!sw_document_undo (self->document, &error))
    sw_window_toast (self, error->message);
}

static void
redo_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwWindow *self = user_data;
  g_autoptr (GError) error = NULL;

  if (!sw_document_redo (self->document, &error))
    sw_window_toast (self, error->message);
}

static void
new_from_template_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwWindow *self = user_data;
  const char *id = g_variant_get_string (parameter, NULL);

  if (sw_window_is_pristine (self))
    sw_window_show_template (self, id);
  else
    g_action_group_activate_action (G_ACTION_GROUP (gtk_window_get_application (GTK_WINDOW (self))), "new-window-from", g_variant_new_string (id));
}

/* The guide */

static void
guide_finished_cb (SwWindow *self)
{
  g_settings_set_boolean (self->settings, "guide-seen", TRUE);
}

static void
start_guide (SwWindow *self)
{
  adw_view_stack_set_visible_child_name (self->stack, "pan");
  if (self->guide == NULL)
    {
      self->guide = sw_guide_new (self->content);
      sw_pan_page_guide (self->pan_page, self->guide);
      sw_guide_add (self->guide, GTK_WIDGET (self->switcher_title), _ ("Four Places"),
                    _ ("The Pan is where you draw. Cloth shows the swatch large, with what every width would do."));
      g_signal_connect_object (self->guide, "finished", G_CALLBACK (guide_finished_cb), self, G_CONNECT_SWAPPED);
    }
  sw_guide_start (self->guide);
}

static void
guide_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  start_guide (user_data);
}

static gboolean
welcome_cb (gpointer user_data)
{
  start_guide (user_data);
  return G_SOURCE_REMOVE;
}

static void
forecast_shown_cb (SwLive *live, SwWindow *self)
{
  g_signal_handlers_disconnect_by_func (live, forecast_shown_cb, self);
  g_idle_add_full (G_PRIORITY_LOW, welcome_cb, g_object_ref (self), g_object_unref);
}

void
sw_window_welcome (SwWindow *self)
{
  g_return_if_fail (SW_IS_WINDOW (self));

  /* Nothing to point at before there is a picture. */
  if (!g_settings_get_boolean (self->settings, "guide-seen"))
    g_signal_connect_object (self->live, "updated", G_CALLBACK (forecast_shown_cb), self, G_CONNECT_DEFAULT);
}

void
sw_window_add_actions (SwWindow *self)
{
  const GActionEntry entries[] = {
    { "undo", undo_cb },
    { "redo", redo_cb },
    { "new-from-template", new_from_template_cb, "s" },
    { "guide", guide_cb },
  };
  g_autoptr (GPropertyAction) place = g_property_action_new ("place", self->stack, "visible-child-name");

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_action_map_add_action (G_ACTION_MAP (self), G_ACTION (place));
}

/* Menus */

static void
fill_templates (SwWindow *self)
{
  for (gsize i = 0; i < sw_n_templates; i++)
    {
      g_autoptr (GMenuItem) item = g_menu_item_new (_ (sw_templates[i].label), NULL);

      g_menu_item_set_action_and_target (item, "win.new-from-template", "s", sw_templates[i].id);
      g_menu_append_item (self->template_section, item);
    }
}

#define RECENT_SHOWN 8
#define MIME_TYPE "application/x-colourway+json"

static void
fill_recent (SwWindow *self)
{
  GList *infos = gtk_recent_manager_get_items (gtk_recent_manager_get_default ());
  int n = 0;

  g_menu_remove_all (self->recent_section);
  for (GList *l = infos; l != NULL && n < RECENT_SHOWN; l = l->next)
    {
      GtkRecentInfo *info = l->data;
      g_autoptr (GMenuItem) item = NULL;

      if (!gtk_recent_info_has_application (info, g_get_application_name ()) || !gtk_recent_info_exists (info))
        continue;
      item = g_menu_item_new (gtk_recent_info_get_display_name (info), NULL);
      g_menu_item_set_action_and_target (item, "win.open-uri", "s", gtk_recent_info_get_uri (info));
      g_menu_append_item (self->recent_section, item);
      n++;
    }
  if (n == 0)
    /* Translators: in the menu of recent files, when there are none */
    g_menu_append (self->recent_section, _ ("Nothing Opened Yet"), "win.nothing");
  g_list_free_full (infos, (GDestroyNotify) gtk_recent_info_unref);
}

void
sw_window_fill_menus (SwWindow *self)
{
  fill_templates (self);
  fill_recent (self);
  g_signal_connect_object (gtk_recent_manager_get_default (), "changed", G_CALLBACK (fill_recent), self, G_CONNECT_SWAPPED);
}

void
sw_window_remember_recent (GFile *file)
{
  g_autofree char *uri = g_file_get_uri (file);
  GtkRecentData data = {
    .mime_type = (char *) MIME_TYPE,
    .app_name = (char *) g_get_application_name (),
    .app_exec = (char *) "strandwise %u",
  };

  gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
}
