/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-step-list-private.h"

#include "app/pan/sw-step-selection.h"

G_DEFINE_FINAL_TYPE (SwStepList, sw_step_list, ADW_TYPE_BIN)

enum
{
  PROP_0,
  PROP_LIVE,
  PROP_SELECTION,
  PROP_INCHES,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

SwDocument *
sw_step_list_document (SwStepList *self)
{
  return self->selection != NULL ? sw_selection_get_document (self->selection) : NULL;
}

/* Rows */

static SwStepRow *
row_of (GtkWidget *widget)
{
  GtkWidget *row = widget;

  while (row != NULL && !SW_IS_STEP_ROW (row))
    row = gtk_widget_get_first_child (row);
  if (row == NULL && widget != NULL)
    row = gtk_widget_get_ancestor (widget, SW_TYPE_STEP_ROW);
  return row != NULL ? SW_STEP_ROW (row) : NULL;
}

SwStepRow *
sw_step_list_row_at (SwStepList *self, double x, double y)
{
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->list)); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      graphene_rect_t bounds;

      if (gtk_widget_get_mapped (child) && gtk_widget_compute_bounds (child, GTK_WIDGET (self->list), &bounds) &&
          y >= (double) bounds.origin.y && y < (double) (bounds.origin.y + bounds.size.height))
        return row_of (child);
    }
  return NULL;
}

static GtkWidget *
find_row (SwStepList *self, guint step)
{
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->list)); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      SwStepRow *row = row_of (child);
      SwEntry *entry = row != NULL ? sw_step_row_get_entry (row) : NULL;

      if (entry != NULL && sw_entry_get_id (entry) == step)
        return child;
    }
  return NULL;
}

typedef struct
{
  SwStepList *self;
  guint step;
} Focus;

static gboolean
focus_cb (gpointer user_data)
{
  Focus *focus = user_data;
  GtkWidget *row = focus->self->selection != NULL ? find_row (focus->self, focus->step) : NULL;

  SwEntryList *steps;
  guint position;
  gsize n;

  if (row == NULL)
    return G_SOURCE_REMOVE;
  steps = sw_document_get_steps (sw_step_list_document (focus->self));
  gtk_widget_grab_focus (row);
  sw_selection_get_steps (focus->self->selection, &n);
  /* A range that is selected next starts here. */
  if (n == 1 && sw_selection_contains (focus->self->selection, focus->step) && sw_entry_list_find (steps, focus->step, &position))
    gtk_widget_activate_action (GTK_WIDGET (focus->self->list), "list.select-item", "(ubb)", position, FALSE, FALSE);
  return G_SOURCE_REMOVE;
}

static void
focus_free (gpointer user_data)
{
  Focus *focus = user_data;

  g_object_unref (focus->self);
  g_free (focus);
}

void
sw_step_list_focus (SwStepList *self, guint step)
{
  SwEntryList *steps = sw_document_get_steps (sw_step_list_document (self));
  Focus *focus;
  guint position;

  if (!sw_entry_list_find (steps, step, &position))
    return;
  gtk_widget_activate_action (GTK_WIDGET (self->list), "list.scroll-to-item", "u", position);
  focus = g_new (Focus, 1);
  *focus = (Focus){ g_object_ref (self), step };
  g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, focus_cb, focus, focus_free);
}

static void
touched_cb (SwStepList *self, SwStepRow *row)
{
  SwEntry *entry = sw_step_row_get_entry (row);

  if (entry != NULL && !sw_selection_contains (self->selection, sw_entry_get_id (entry)))
    sw_selection_set_step (self->selection, sw_entry_get_id (entry));
}

/* Rows are made in code, since a factory's template cannot see the list whose units they follow. */
static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, SwStepList *self)
{
  GtkWidget *row = g_object_new (SW_TYPE_STEP_ROW, NULL);

  gtk_list_item_set_child (item, row);
  g_object_bind_property (self, "inches", row, "inches", G_BINDING_SYNC_CREATE);
  g_object_bind_property (self, "live", row, "live", G_BINDING_SYNC_CREATE);
  g_object_bind_property (item, "item", row, "entry", G_BINDING_SYNC_CREATE);
  g_signal_connect_object (row, "touched", G_CALLBACK (touched_cb), self, G_CONNECT_SWAPPED);
}

/* The menu of a row */

static void
popup_at (SwStepList *self, double x, double y)
{
  graphene_point_t at;

  if (!gtk_widget_compute_point (GTK_WIDGET (self->list), GTK_WIDGET (self), &GRAPHENE_POINT_INIT ((float) x, (float) y), &at))
    return;
  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu), &(GdkRectangle){ (int) at.x, (int) at.y, 1, 1 });
  gtk_popover_popup (GTK_POPOVER (self->menu));
}

static void
pressed_cb (GtkGestureClick *gesture, int n_press, double x, double y, SwStepList *self)
{
  SwStepRow *row = sw_step_list_row_at (self, x, y);

  if (row == NULL)
    return;
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  touched_cb (self, row);
  popup_at (self, x, y);
}

static void
popup_action_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  SwStepList *self = SW_STEP_LIST (widget);
  guint lead = sw_selection_get_lead (self->selection);
  GtkWidget *row = lead != 0 ? find_row (self, lead) : NULL;
  graphene_rect_t bounds;

  if (row != NULL && gtk_widget_compute_bounds (row, GTK_WIDGET (self->list), &bounds))
    popup_at (self, (double) bounds.origin.x + 24, (double) (bounds.origin.y + bounds.size.height));
}

/* Following */

static void
show_empty (SwStepList *self)
{
  SwDocument *document = sw_step_list_document (self);
  guint n = document != NULL ? g_list_model_get_n_items (G_LIST_MODEL (sw_document_get_steps (document))) : 0;

  gtk_stack_set_visible_child_name (self->stack, n > 0 ? "steps" : "empty");
  sw_step_list_update_actions (self);
}

/* What was selected in the picture comes into view here. */
static void
lead_changed_cb (SwStepList *self)
{
  guint lead = sw_selection_get_lead (self->selection), position;

  if (lead != 0 && sw_entry_list_find (sw_document_get_steps (sw_step_list_document (self)), lead, &position))
    gtk_widget_activate_action (GTK_WIDGET (self->list), "list.scroll-to-item", "u", position);
}

static void
set_selection (SwStepList *self, SwSelection *selection)
{
  g_autoptr (SwStepSelection) model = NULL;

  if (self->selection == selection)
    return;
  if (self->selection != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->selection, self);
      g_signal_handlers_disconnect_by_data (sw_selection_get_document (self->selection), self);
    }
  g_set_object (&self->selection, selection);
  if (selection != NULL)
    {
      model = sw_step_selection_new (selection);
      g_signal_connect_swapped (selection, "changed", G_CALLBACK (sw_step_list_update_actions), self);
      g_signal_connect_swapped (selection, "notify::lead", G_CALLBACK (lead_changed_cb), self);
      g_signal_connect_swapped (sw_selection_get_document (selection), "changed", G_CALLBACK (show_empty), self);
    }
  gtk_list_view_set_model (self->list, model != NULL ? GTK_SELECTION_MODEL (model) : NULL);
  show_empty (self);
}

/* Lifecycle */

static void
sw_step_list_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwStepList *self = SW_STEP_LIST (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      g_value_set_object (value, self->live);
      break;
    case PROP_SELECTION:
      g_value_set_object (value, self->selection);
      break;
    case PROP_INCHES:
      g_value_set_boolean (value, self->inches);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_step_list_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwStepList *self = SW_STEP_LIST (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      g_set_object (&self->live, g_value_get_object (value));
      break;
    case PROP_SELECTION:
      set_selection (self, g_value_get_object (value));
      break;
    case PROP_INCHES:
      self->inches = g_value_get_boolean (value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_step_list_dispose (GObject *object)
{
  SwStepList *self = SW_STEP_LIST (object);

  set_selection (self, NULL);
  g_clear_weak_pointer (&self->drop_row);
  g_clear_object (&self->live);
  g_clear_pointer (&self->menu, gtk_widget_unparent);

  G_OBJECT_CLASS (sw_step_list_parent_class)->dispose (object);
}

static void
sw_step_list_class_init (SwStepListClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_step_list_get_property;
  object_class->set_property = sw_step_list_set_property;
  object_class->dispose = sw_step_list_dispose;

  props[PROP_LIVE] = g_param_spec_object ("live", NULL, NULL, SW_TYPE_LIVE, flags);
  props[PROP_SELECTION] = g_param_spec_object ("selection", NULL, NULL, SW_TYPE_SELECTION, flags);
  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  sw_step_list_install_actions (widget_class);
  gtk_widget_class_install_action (widget_class, "menu.popup", NULL, popup_action_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F10, GDK_SHIFT_MASK, "menu.popup", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Menu, 0, "menu.popup", NULL);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-step-list.ui");
  gtk_widget_class_bind_template_child (widget_class, SwStepList, list);
  gtk_widget_class_bind_template_child (widget_class, SwStepList, stack);
  gtk_widget_class_bind_template_child (widget_class, SwStepList, row_menu);
}

static void
sw_step_list_init (SwStepList *self)
{
  GtkListItemFactory *factory;
  GtkGesture *click = gtk_gesture_click_new ();

  gtk_widget_init_template (GTK_WIDGET (self));

  factory = gtk_signal_list_item_factory_new ();
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), self);
  gtk_list_view_set_factory (self->list, factory);
  g_object_unref (factory);

  self->menu = gtk_popover_menu_new_from_model (self->row_menu);
  gtk_popover_set_has_arrow (GTK_POPOVER (self->menu), FALSE);
  gtk_widget_set_halign (self->menu, GTK_ALIGN_START);
  gtk_widget_set_parent (self->menu, GTK_WIDGET (self));

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->list), GTK_EVENT_CONTROLLER (click));
  sw_step_list_accept_drops (self);
  show_empty (self);
}
