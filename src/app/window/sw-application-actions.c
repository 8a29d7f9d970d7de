/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/window/sw-application-private.h"

#include <glib/gi18n-lib.h>

static void
new_window_from (SwApplication *self, const char *template)
{
  SwWindow *window = sw_application_new_window (self);

  sw_window_show_template (window, template);
  gtk_window_present (GTK_WINDOW (window));
}

static void
new_window_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  new_window_from (user_data, "empty");
}

static void
new_window_from_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  new_window_from (user_data, g_variant_get_string (parameter, NULL));
}

/* Each window asks for itself; the program ends with the last of them. */
static void
quit_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  g_autoptr (GList) windows = g_list_copy (gtk_application_get_windows (GTK_APPLICATION (user_data)));

  for (GList *l = windows; l != NULL; l = l->next)
    gtk_window_close (l->data);
}

static void
about_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  /* Translators: a heading in About, over the credit for the usual yarn weights */
  const char *const weights[] = { _ ("Source: Craft Yarn Council's www.YarnStandards.com"), NULL };
  GtkWidget *about = g_object_new (ADW_TYPE_ABOUT_WINDOW,
                                   "transient-for", gtk_application_get_active_window (GTK_APPLICATION (user_data)),
                                   "application-name", g_get_application_name (),
                                   "application-icon", SW_APP_ID,
                                   "version", SW_VERSION,
                                   "developer-name", _ ("The Strandwise contributors"),
                                   "comments", _ ("Draw a colourway on the skein, and see how it will knit before the water is hot.\n\n"
                                                  "What Strandwise shows is a forecast from a model, not a promise: dye a test skein first."),
                                   "license-type", GTK_LICENSE_GPL_3_0,
                                   /* Translators: your names, one a line */
                                   "translator-credits", _ ("translator-credits"),
                                   NULL);

  adw_about_window_add_credit_section (ADW_ABOUT_WINDOW (about), _ ("Yarn Weights"), (const char **) weights);
  gtk_window_present (GTK_WINDOW (about));
}

static const struct
{
  const char *action;
  const char *keys[3];
} accels[] = {
  { "app.new-window", { "<Control>n" } },
  { "app.quit", { "<Control>q" } },
  { "window.close", { "<Control>w" } },
  { "win.open", { "<Control>o" } },
  { "win.save", { "<Control>s" } },
  { "win.save-as", { "<Control><Shift>s" } },
  { "win.print-sheet", { "<Control>p" } },
  { "win.undo", { "<Control>z" } },
  { "win.redo", { "<Control><Shift>z", "<Control>y" } },
  { "win.export-picture::", { "<Control>e" } },
  { "win.copy-picture::", { "<Control><Shift>c" } },
  { "win.copy-words", { "<Control><Shift>t" } },
  { "pan.zoom-in", { "<Control>plus", "<Control>equal" } },
  { "pan.zoom-out", { "<Control>minus" } },
  { "pan.zoom-fit", { "<Control>0" } },
  { "win.place::pan", { "<Alt>1" } },
  { "win.place::cloth", { "<Alt>2" } },
  { "win.place::sheet", { "<Alt>3" } },
  { "win.place::listing", { "<Alt>4" } },
  { "win.dye-day", { "<Control><Shift>d" } },
  { "win.guide", { "F1" } },
};

void
sw_application_add_actions (SwApplication *self)
{
  const GActionEntry entries[] = {
    { "new-window", new_window_cb },
    { "new-window-from", new_window_from_cb, "s" },
    { "quit", quit_cb },
    { "about", about_cb },
  };
  g_autoptr (GAction) units = g_settings_create_action (self->settings, "units");
  g_autoptr (GAction) appearance = g_settings_create_action (self->settings, "appearance");

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_action_map_add_action (G_ACTION_MAP (self), units);
  g_action_map_add_action (G_ACTION_MAP (self), appearance);
  for (gsize i = 0; i < G_N_ELEMENTS (accels); i++)
    gtk_application_set_accels_for_action (GTK_APPLICATION (self), accels[i].action, (const char *const *) accels[i].keys);
}
