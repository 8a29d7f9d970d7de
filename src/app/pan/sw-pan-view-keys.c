/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-pan-view-private.h"

/* The keyboard, while the pan has the focus: so that no key is taken from one who types elsewhere. */

/* Of several keys for one action, menus show the last. */
static const struct
{
  guint key;
  GdkModifierType modifiers;
  const char *action, *target; /* NULL: none */
} bindings[] = {
  { GDK_KEY_s, 0, "pan.tool", "select" },
  { GDK_KEY_b, 0, "pan.tool", "band" },
  { GDK_KEY_o, 0, "pan.tool", "splotch" },
  { GDK_KEY_k, 0, "pan.tool", "speckle" },
  { GDK_KEY_f, 0, "pan.flip-view", NULL },
  { GDK_KEY_plus, 0, "pan.zoom-in", NULL },
  { GDK_KEY_plus, GDK_SHIFT_MASK, "pan.zoom-in", NULL },
  { GDK_KEY_equal, 0, "pan.zoom-in", NULL },
  { GDK_KEY_KP_Add, 0, "pan.zoom-in", NULL },
  { GDK_KEY_minus, 0, "pan.zoom-out", NULL },
  { GDK_KEY_KP_Subtract, 0, "pan.zoom-out", NULL },
  { GDK_KEY_0, 0, "pan.zoom-fit", NULL },
  { GDK_KEY_KP_0, 0, "pan.zoom-fit", NULL },
  { GDK_KEY_a, GDK_CONTROL_MASK, "pan.select-all", NULL },
  { GDK_KEY_a, GDK_CONTROL_MASK | GDK_SHIFT_MASK, "pan.deselect", NULL },
  { GDK_KEY_d, GDK_CONTROL_MASK, "pan.duplicate", NULL },
  { GDK_KEY_BackSpace, 0, "pan.delete", NULL },
  { GDK_KEY_KP_Delete, 0, "pan.delete", NULL },
  { GDK_KEY_Delete, 0, "pan.delete", NULL },
  { GDK_KEY_KP_Enter, 0, "pan.edit-properties", NULL },
  { GDK_KEY_Return, 0, "pan.edit-properties", NULL },
  { GDK_KEY_Insert, 0, "pan.pour", "" },
  { GDK_KEY_Menu, 0, "pan.menu", NULL },
  { GDK_KEY_F10, GDK_SHIFT_MASK, "pan.menu", NULL },
};

static const struct
{
  guint key, keypad;
  const char *direction;
} arrows[] = {
  { GDK_KEY_Left, GDK_KEY_KP_Left, "left" },
  { GDK_KEY_Right, GDK_KEY_KP_Right, "right" },
  { GDK_KEY_Up, GDK_KEY_KP_Up, "up" },
  { GDK_KEY_Down, GDK_KEY_KP_Down, "down" },
};

static const struct
{
  GdkModifierType modifiers;
  const char *ending; /* of the action's target */
} strides[] = {
  { 0, "" },
  { GDK_SHIFT_MASK, "-little" },
  { GDK_CONTROL_MASK, "-far" },
};

void
sw_pan_view_class_add_keys (GtkWidgetClass *widget_class)
{
  for (gsize i = 0; i < G_N_ELEMENTS (bindings); i++)
    if (bindings[i].target != NULL)
      gtk_widget_class_add_binding_action (widget_class, bindings[i].key, bindings[i].modifiers, bindings[i].action, "s", bindings[i].target);
    else
      gtk_widget_class_add_binding_action (widget_class, bindings[i].key, bindings[i].modifiers, bindings[i].action, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (arrows); i++)
    for (gsize k = 0; k < G_N_ELEMENTS (strides); k++)
      {
        g_autofree char *target = g_strconcat (arrows[i].direction, strides[k].ending, NULL);

        gtk_widget_class_add_binding_action (widget_class, arrows[i].key, strides[k].modifiers, "pan.nudge", "s", target);
        gtk_widget_class_add_binding_action (widget_class, arrows[i].keypad, strides[k].modifiers, "pan.nudge", "s", target);
      }
}

/* The pour before or after the one selected last, in the order of pouring; 0 beyond the ends. */
static guint
next_pour (SwPanView *self, gboolean forward)
{
  const SwSketch *sketch = sw_pan_view_sketch (self);
  const guint lead = sw_selection_get_lead (self->selection);
  gboolean past = lead == 0;

  for (guint k = 0; k < sketch->steps->len; k++)
    {
      const SwStep *step = sketch->steps->pdata[forward ? k : sketch->steps->len - 1 - k];

      if (past && sw_step_is_pour (step))
        return step->id;
      if (step->id == lead)
        past = TRUE;
    }
  return 0;
}

/* Tab walks through the pours, and on to the next widget after the last: nobody is trapped. */
gboolean
sw_pan_view_focus (GtkWidget *widget, GtkDirectionType direction)
{
  SwPanView *self = SW_PAN_VIEW (widget);
  guint next;

  if (!gtk_widget_is_focus (widget))
    return gtk_widget_grab_focus (widget);
  if ((direction != GTK_DIR_TAB_FORWARD && direction != GTK_DIR_TAB_BACKWARD) || sw_pan_view_sketch (self) == NULL || self->selection == NULL)
    return FALSE;
  next = next_pour (self, direction == GTK_DIR_TAB_FORWARD);
  if (next == 0)
    return FALSE;
  sw_pan_view_go_to (self, next);
  return TRUE;
}

/* One thing at a time: what is in hand, then the tool, then the selection. */
static gboolean
escape (SwPanView *self)
{
  const guint *steps;
  gsize n;

  if (sw_pan_view_cancel_hand (self))
    return GDK_EVENT_STOP;
  if (self->selection == NULL)
    return GDK_EVENT_PROPAGATE;
  if (sw_selection_get_tool (self->selection) != SW_TOOL_SELECT)
    {
      sw_selection_set_tool (self->selection, SW_TOOL_SELECT);
      return GDK_EVENT_STOP;
    }
  steps = sw_selection_get_steps (self->selection, &n);
  if (n == 0 || steps == NULL)
    return GDK_EVENT_PROPAGATE;
  sw_selection_set_step (self->selection, 0);
  return GDK_EVENT_STOP;
}

static void
hold_space (SwPanView *self, gboolean held)
{
  self->space_held = held;
  sw_pan_view_update_hover (self);
}

static gboolean
key_pressed_cb (GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state, SwPanView *self)
{
  if (keyval == GDK_KEY_Escape)
    return escape (self);
  if (keyval != GDK_KEY_space)
    return GDK_EVENT_PROPAGATE;
  if (!self->space_held)
    hold_space (self, TRUE);
  return GDK_EVENT_STOP;
}

static void
key_released_cb (GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state, SwPanView *self)
{
  if (keyval == GDK_KEY_space)
    hold_space (self, FALSE);
}

/* Shift, Ctrl and Alt count while they are held, not only when the hand moves on. */
static gboolean
modifiers_cb (GtkEventControllerKey *controller, GdkModifierType state, SwPanView *self)
{
  self->hand.now = state;
  if (self->hand.state > SW_HAND_PRESSED)
    {
      sw_pan_view_continue_deed (self);
      sw_pan_view_update_hover (self);
    }
  return GDK_EVENT_PROPAGATE;
}

static void
focus_left_cb (SwPanView *self)
{
  if (self->space_held)
    hold_space (self, FALSE);
}

void
sw_pan_view_add_keys (SwPanView *self)
{
  GtkEventController *key = gtk_event_controller_key_new (), *focus = gtk_event_controller_focus_new ();

  g_signal_connect (key, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  g_signal_connect (key, "key-released", G_CALLBACK (key_released_cb), self);
  g_signal_connect (key, "modifiers", G_CALLBACK (modifiers_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), key);

  g_signal_connect_swapped (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}
