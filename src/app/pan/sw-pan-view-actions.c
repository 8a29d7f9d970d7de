/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-pan-view-private.h"

#include <glib/gi18n-lib.h>

/* Everything the canvas does, as actions: keys, menus, tool bar and tests share them. */

#define ZOOM_STEP 1.5

/* Copies lie beside what they were made from. */
#define COPY_ALONG_CM 2.0
#define COPY_ACROSS_CM -1.0

static void
tell_face (SwPanView *self)
{
  GAction *face = g_action_map_lookup_action (G_ACTION_MAP (self->actions), "face");

  g_simple_action_set_state (G_SIMPLE_ACTION (face), g_variant_new_string (sw_selection_get_second_face (self->selection) ? "second" : "first"));
}

static void
change_face_cb (GSimpleAction *action, GVariant *state, gpointer user_data)
{
  SwPanView *self = user_data;

  sw_selection_set_second_face (self->selection, g_strcmp0 (g_variant_get_string (state, NULL), "second") == 0);
}

static void
flip_view_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwPanView *self = user_data;

  sw_selection_set_second_face (self->selection, !sw_selection_get_second_face (self->selection));
}

/* About the pointer if it is there, else about the middle. */
static void
zoom (SwPanView *self, double factor)
{
  const double x = gtk_widget_get_width (GTK_WIDGET (self)) / 2.0, y = gtk_widget_get_height (GTK_WIDGET (self)) / 2.0;

  sw_pan_view_zoom_at (self, factor, self->hover_in ? self->hover_x : x, self->hover_in ? self->hover_y : y);
}

static void
zoom_in_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  zoom (user_data, ZOOM_STEP);
}

static void
zoom_out_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  zoom (user_data, 1 / ZOOM_STEP);
}

static void
zoom_fit_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  sw_pan_view_zoom_fit (user_data);
}

static void
duplicate_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwPanView *self = user_data;
  const guint *steps;
  gsize n;

  steps = sw_selection_get_steps (self->selection, &n);
  sw_pan_view_duplicate (self, steps, n, COPY_ALONG_CM, COPY_ACROSS_CM);
}

static void
delete_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  sw_pan_view_delete (user_data);
}

static void
select_all_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwPanView *self = user_data;
  const SwSketch *sketch = sw_pan_view_sketch (self);
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];

      if (sw_step_is_pour (step) && sw_pan_view_is_up (self, step->id))
        g_array_append_val (all, step->id);
    }
  sw_selection_set_steps (self->selection, (const guint *) (gpointer) all->data, all->len);
}

static void
deselect_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwPanView *self = user_data;

  sw_selection_set_step (self->selection, 0);
}

static void
nudge_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  static const struct
  {
    const char *name;
    int along, across;
  } directions[] = { { "left", -1, 0 }, { "right", 1, 0 }, { "up", 0, 1 }, { "down", 0, -1 } };
  static const struct
  {
    const char *ending;
    double cm, inches;
  } strides[] = { { "", 0.5, 0.25 }, { "-little", 0.1, 0.0625 }, { "-far", 5, 2 } };
  SwPanView *self = user_data;
  const char *target = g_variant_get_string (parameter, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (directions); i++)
    for (gsize k = 0; k < G_N_ELEMENTS (strides); k++)
      if (g_str_has_prefix (target, directions[i].name) && g_strcmp0 (target + strlen (directions[i].name), strides[k].ending) == 0)
        {
          const double by = self->inches ? strides[k].inches * 2.54 : strides[k].cm;

          sw_pan_view_nudge (self, by * directions[i].along, by * directions[i].across);
        }
}

static void
align_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  const SwAlign align = sw_align_from_name (g_variant_get_string (parameter, NULL));

  if (align < SW_N_ALIGNS)
    sw_pan_view_align (user_data, align);
}

/* What is in the middle of the picture, or under the pointer. */
static void
pour_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwPanView *self = user_data;
  const int kind = sw_step_kind_from_name (g_variant_get_string (parameter, NULL));
  const SwTool tool = sw_selection_get_tool (self->selection);
  const gboolean pointed = self->hover_in || (self->menu != NULL && gtk_widget_get_visible (self->menu));
  const double x = pointed ? self->hover_x : gtk_widget_get_width (GTK_WIDGET (self)) / 2.0;
  const double y = pointed ? self->hover_y : gtk_widget_get_height (GTK_WIDGET (self)) / 2.0;

  if (kind >= 0)
    sw_pan_view_pour_at (self, (SwStepKind) kind, x, y);
  else
    sw_pan_view_pour_at (self, tool != SW_TOOL_SELECT ? sw_tool_kind (tool) : SW_STEP_BAND, x, y);
}

static void
edit_properties_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwPanView *self = user_data;

  g_signal_emit_by_name (self, "edit-properties", sw_selection_get_lead (self->selection));
}

static void
menu_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwPanView *self = user_data;
  const guint lone = sw_pan_view_lone_pour (self);
  double x = gtk_widget_get_width (GTK_WIDGET (self)) / 2.0, y = gtk_widget_get_height (GTK_WIDGET (self)) / 2.0;

  if (lone != 0)
    {
      const SwStep *step = sw_sketch_find_step (sw_pan_view_sketch (self), lone);

      sw_pan_to_px (&self->geometry, step->x_cm, step->y_cm, &x, &y);
    }
  sw_pan_view_show_menu (self, x, y);
}

void
sw_pan_view_add_actions (SwPanView *self)
{
  const GActionEntry entries[] = {
    { "face", NULL, "s", "'first'", change_face_cb },
    { "flip-view", flip_view_cb },
    { "zoom-in", zoom_in_cb },
    { "zoom-out", zoom_out_cb },
    { "zoom-fit", zoom_fit_cb },
    { "duplicate", duplicate_cb },
    { "delete", delete_cb },
    { "select-all", select_all_cb },
    { "deselect", deselect_cb },
    { "nudge", nudge_cb, "s" },
    { "align", align_cb, "s" },
    { "spread", align_cb, "s" },
    { "pour", pour_cb, "s" },
    { "edit-properties", edit_properties_cb },
    { "menu", menu_cb },
  };

  self->actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (self->actions), entries, G_N_ELEMENTS (entries), self);
  for (gsize i = 0; i < G_N_ELEMENTS (entries); i++)
    {
      GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self->actions), entries[i].name);

      g_simple_action_set_enabled (G_SIMPLE_ACTION (action), FALSE);
    }
}

void
sw_pan_view_connect_actions (SwPanView *self)
{
  static const char *const properties[] = { "tool", "snap" };

  for (gsize i = 0; i < G_N_ELEMENTS (properties); i++)
    {
      g_autoptr (GPropertyAction) action = g_property_action_new (properties[i], self->selection, properties[i]);

      g_action_map_add_action (G_ACTION_MAP (self->actions), G_ACTION (action));
    }
}

void
sw_pan_view_update_actions (SwPanView *self)
{
  const gboolean ready = self->selection != NULL && sw_pan_view_sketch (self) != NULL;
  g_autoptr (GArray) pours = NULL;
  gboolean selected, has_dye;

  if (!ready || self->actions == NULL)
    return;
  pours = sw_pan_view_selected_pours (self);
  selected = sw_selection_get_lead (self->selection) != 0;
  has_dye = sw_selection_get_dye (self->selection) != 0;
  const struct
  {
    const char *name;
    gboolean enabled;
  } states[] = {
    { "face", TRUE },
    { "flip-view", TRUE },
    { "zoom-in", sw_pan_view_can_zoom (self, TRUE) },
    { "zoom-out", sw_pan_view_can_zoom (self, FALSE) },
    { "zoom-fit", sw_pan_view_can_zoom (self, FALSE) },
    { "duplicate", selected },
    { "delete", selected },
    { "select-all", TRUE },
    { "deselect", selected },
    { "nudge", pours->len > 0 },
    { "align", pours->len > 0 },
    { "spread", pours->len > 2 },
    { "pour", has_dye },
    { "edit-properties", TRUE }, /* of the colourway when nothing is selected */
    { "menu", TRUE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (states); i++)
    {
      GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self->actions), states[i].name);

      g_simple_action_set_enabled (G_SIMPLE_ACTION (action), states[i].enabled);
    }
  tell_face (self);
}

/* Menus */

static void
append (GMenu *menu, const char *label, const char *action, const char *target)
{
  g_autoptr (GMenuItem) item = g_menu_item_new (label, NULL);

  if (target != NULL)
    g_menu_item_set_action_and_target (item, action, "s", target);
  else
    g_menu_item_set_detailed_action (item, action);
  g_menu_append_item (menu, item);
}

static GMenuModel *
pan_menu (void)
{
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenu) this_one = g_menu_new ();
  g_autoptr (GMenu) here = g_menu_new ();
  g_autoptr (GMenu) all = g_menu_new ();
  g_autoptr (GMenu) align = g_menu_new ();

  sw_pan_fill_align_menu (align);
  append (this_one, _ ("_Properties"), "pan.edit-properties", NULL);
  append (this_one, _ ("D_uplicate"), "pan.duplicate", NULL);
  append (this_one, _ ("_Delete"), "pan.delete", NULL);
  g_menu_append_submenu (this_one, _ ("_Align"), G_MENU_MODEL (align));
  append (here, _ ("Pour a _Band Here"), "pan.pour", "band");
  append (here, _ ("Pour a _Splotch Here"), "pan.pour", "splotch");
  append (here, _ ("Scatter Spec_kles Here"), "pan.pour", "speckle");
  append (all, _ ("Select A_ll"), "pan.select-all", NULL);
  append (all, _ ("_Turn the Skein Over"), "pan.flip-view", NULL);
  g_menu_append_section (menu, NULL, G_MENU_MODEL (this_one));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (here));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (all));
  return G_MENU_MODEL (menu);
}

static void
point_at (GtkWidget *popover, double x, double y)
{
  gtk_popover_set_pointing_to (GTK_POPOVER (popover), &(GdkRectangle){ (int) x, (int) y, 1, 1 });
  gtk_popover_popup (GTK_POPOVER (popover));
  gtk_widget_trigger_tooltip_query (gtk_widget_get_parent (popover));
}

void
sw_pan_view_show_menu (SwPanView *self, double x, double y)
{
  if (self->menu == NULL)
    {
      g_autoptr (GMenuModel) model = pan_menu ();

      self->menu = gtk_popover_menu_new_from_model (model);
      gtk_popover_set_has_arrow (GTK_POPOVER (self->menu), FALSE);
      gtk_widget_set_halign (self->menu, GTK_ALIGN_START);
      gtk_widget_set_parent (self->menu, GTK_WIDGET (self));
    }
  self->hover_x = x;
  self->hover_y = y;
  point_at (self->menu, x, y);
}

/* A pour of the other face cannot be worked on: it offers to turn the skein over. */

static void
turn_over_cb (SwPanView *self)
{
  gtk_popover_popdown (GTK_POPOVER (self->offer));
  if (sw_sketch_find_step (sw_pan_view_sketch (self), self->offered) != NULL)
    sw_pan_view_go_to (self, self->offered);
}

static GtkWidget *
new_offer (SwPanView *self)
{
  GtkWidget *popover = gtk_popover_new (), *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label = gtk_label_new (_ ("This pour is on the other face.")), *button = gtk_button_new_with_mnemonic (_ ("_Turn Over"));

  g_signal_connect_swapped (button, "clicked", G_CALLBACK (turn_over_cb), self);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), button);
  gtk_widget_set_margin_start (label, 6);
  gtk_popover_set_child (GTK_POPOVER (popover), box);
  gtk_popover_set_default_widget (GTK_POPOVER (popover), button);
  gtk_widget_set_parent (popover, GTK_WIDGET (self));
  return popover;
}

void
sw_pan_view_offer_turn (SwPanView *self, guint step, double x, double y)
{
  if (self->offer == NULL)
    self->offer = new_offer (self);
  self->offered = step;
  point_at (self->offer, x, y);
}

void
sw_pan_view_drop_popovers (SwPanView *self)
{
  g_clear_pointer (&self->menu, gtk_widget_unparent);
  g_clear_pointer (&self->offer, gtk_widget_unparent);
}
