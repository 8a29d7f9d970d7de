/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-pan-view-private.h"

#include <math.h>

/* The pointer, or a finger, over the pan: what is under it, how it looks, and when a press becomes a deed. */

#define MOUSE_THRESHOLD_PX 3.0
#define FINGER_THRESHOLD_PX 10.0

/* What is under the hand */

typedef struct
{
  SwHandle handle;
  guint pour;  /* of the face that is up, a selected one first; 0 none */
  guint under; /* of the other face, where there is none on this */
} Hit;

static SwHandle
handle_at (SwPanView *self, double x_cm, double y_cm)
{
  const guint lone = sw_pan_view_lone_pour (self);
  const SwGrips grips = sw_pan_overlay_grips (&self->geometry);
  SwPourPlace place;

  if (lone == 0)
    return SW_HANDLE_NONE;
  place = sw_pour_place (sw_sketch_find_step (sw_pan_view_sketch (self), lone));
  return sw_handle_at (sw_pan_view_sketch (self), &place, &grips, x_cm, y_cm);
}

static guint
pour_below (SwPanView *self, gboolean second_face, double x, double y, guint above)
{
  return sw_pan_pour_below (&self->geometry, sw_pan_view_sketch (self), second_face, x, y, above);
}

/* What is selected is taken even if another pour lies over it. */
static guint
pour_at (SwPanView *self, double x, double y)
{
  const gboolean second_face = sw_selection_get_second_face (self->selection);
  const guint top = pour_below (self, second_face, x, y, 0);

  for (guint pour = top; pour != 0; pour = pour_below (self, second_face, x, y, pour))
    if (sw_selection_contains (self->selection, pour))
      return pour;
  return top;
}

static Hit
hit_at (SwPanView *self, double x, double y)
{
  Hit hit = { SW_HANDLE_NONE, 0, 0 };
  double x_cm, y_cm;

  if (sw_pan_view_sketch (self) == NULL || self->selection == NULL || self->geometry.scale <= 0)
    return hit;
  sw_pan_to_cm (&self->geometry, x, y, &x_cm, &y_cm);
  hit.handle = handle_at (self, x_cm, y_cm);
  if (hit.handle != SW_HANDLE_NONE)
    hit.pour = sw_pan_view_lone_pour (self);
  else
    hit.pour = pour_at (self, x, y);
  if (hit.pour == 0)
    hit.under = pour_below (self, !sw_selection_get_second_face (self->selection), x, y, 0);
  return hit;
}

/* How the pointer looks */

static const char *
resize_cursor (double direction)
{
  static const char *const names[] = { "ew-resize", "nesw-resize", "ns-resize", "nwse-resize" };

  return names[lround (direction / 45) % 4];
}

static const char *
handle_cursor (SwPanView *self, guint pour, SwHandle handle, gboolean held)
{
  const SwStep *step = sw_sketch_find_step (sw_pan_view_sketch (self), pour);
  SwPourPlace place;

  if (step == NULL)
    return NULL;
  place = sw_pour_place (step);
  if (handle == SW_HANDLE_TURN && place.kind != SW_STEP_BAND)
    return held ? "grabbing" : "grab";
  return resize_cursor (sw_handle_direction (&place, handle));
}

static const char *
cursor_name (SwPanView *self)
{
  const SwHand *hand = &self->hand;
  const gboolean copies = hand->state == SW_HAND_MOVES && hand->deed == SW_DEED_DUPLICATE;

  switch (hand->state)
    {
    case SW_HAND_SCROLLS:
      return "grabbing";
    case SW_HAND_MOVES:
      return copies ? "copy" : "move";
    case SW_HAND_STRETCHES:
      return handle_cursor (self, hand->pour, hand->handle, TRUE);
    case SW_HAND_DRAWS:
    case SW_HAND_MARKS:
      return "crosshair";
    case SW_HAND_FREE:
    case SW_HAND_PRESSED:
    default:
      break;
    }
  if (self->space_held)
    return "grab";
  if (self->hovered_handle != SW_HANDLE_NONE)
    return handle_cursor (self, sw_pan_view_lone_pour (self), self->hovered_handle, FALSE);
  if (self->selection != NULL && sw_selection_get_tool (self->selection) != SW_TOOL_SELECT)
    return "crosshair";
  if (self->hovered == 0)
    return NULL;
  return sw_pan_view_is_up (self, self->hovered) ? "move" : "pointer";
}

/* Set anew, a cursor is read from its file again. */
static void
show_cursor (SwPanView *self)
{
  const char *name = cursor_name (self);

  if (self->cursor == name)
    return;
  self->cursor = name;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), name);
}

void
sw_pan_view_update_hover (SwPanView *self)
{
  const Hit hit = self->hover_in ? hit_at (self, self->hover_x, self->hover_y) : (Hit){ SW_HANDLE_NONE, 0, 0 };
  const guint hovered = hit.pour != 0 ? hit.pour : hit.under;

  if (self->hand.state == SW_HAND_FREE && (hovered != self->hovered || hit.handle != self->hovered_handle))
    {
      self->hovered = hovered;
      self->hovered_handle = hit.handle;
      gtk_widget_trigger_tooltip_query (GTK_WIDGET (self));
    }
  show_cursor (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
motion_cb (GtkEventControllerMotion *controller, double x, double y, SwPanView *self)
{
  self->hover_x = x;
  self->hover_y = y;
  self->hover_in = TRUE;
  sw_pan_view_update_hover (self);
}

static void
leave_cb (SwPanView *self)
{
  self->hover_in = FALSE;
  sw_pan_view_update_hover (self);
}

/* A popover has the word: a tooltip would lie over it. */
static gboolean
is_open (GtkWidget *popover)
{
  return popover != NULL && gtk_widget_get_visible (popover);
}

static gboolean
query_tooltip_cb (SwPanView *self, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  const SwSketch *sketch = sw_pan_view_sketch (self);
  const guint about = self->hovered_handle != SW_HANDLE_NONE ? sw_pan_view_lone_pour (self) : self->hovered;
  const SwStep *step = sketch != NULL ? sw_sketch_find_step (sketch, about) : NULL;
  g_autofree char *words = NULL;

  if (keyboard || step == NULL || self->hand.state != SW_HAND_FREE || is_open (self->menu) || is_open (self->offer))
    return FALSE;
  /* What is selected is told beside the pan, and was perhaps just put where it is: words must not lie over it. */
  if (self->hovered_handle == SW_HANDLE_NONE && about == sw_pan_view_lone_pour (self))
    return FALSE;
  if (self->hovered_handle != SW_HANDLE_NONE)
    {
      const SwPourPlace place = sw_pour_place (step);

      words = g_strdup (sw_handle_tip (self->hovered_handle, &place));
    }
  else
    words = sw_pan_pour_tip (sketch, step, sw_selection_get_second_face (self->selection), sw_pan_view_system (self));
  gtk_tooltip_set_text (tooltip, words);
  return TRUE;
}

/* Clicks */

/* A click again at the same place, later than a double click would be, picks what lies beneath. */
static guint
picked (SwPanView *self)
{
  const SwHand *hand = &self->hand;
  const gboolean second_face = sw_selection_get_second_face (self->selection);
  const guint top = pour_below (self, second_face, hand->press_x, hand->press_y, 0);
  const gint64 now = g_get_monotonic_time ();
  int double_click_ms = 400;
  guint pick = top;

  g_object_get (gtk_widget_get_settings (GTK_WIDGET (self)), "gtk-double-click-time", &double_click_ms, NULL);
  if (self->last_clicked != 0 && sw_selection_contains (self->selection, self->last_clicked))
    for (guint pour = top; pour != 0; pour = pour_below (self, second_face, hand->press_x, hand->press_y, pour))
      if (pour == self->last_clicked)
        {
          const guint below = pour_below (self, second_face, hand->press_x, hand->press_y, pour);

          pick = now - self->clicked_at < 1000 * (gint64) double_click_ms ? pour : below != 0 ? below
                                                                                              : top;
        }
  self->last_clicked = pick;
  self->clicked_at = now;
  return pick;
}

void
sw_pan_view_click (SwPanView *self)
{
  const SwHand *hand = &self->hand;
  const SwTool tool = sw_selection_get_tool (self->selection);
  const gboolean adds = hand->at_press & (GDK_SHIFT_MASK | GDK_CONTROL_MASK);
  guint pick;

  if (hand->handle != SW_HANDLE_NONE || self->space_held)
    return;
  if (tool != SW_TOOL_SELECT)
    {
      sw_pan_view_pour_at (self, sw_tool_kind (tool), hand->press_x, hand->press_y);
      return;
    }
  pick = picked (self);
  if (pick != 0 && adds)
    sw_selection_toggle (self->selection, pick);
  else if (pick != 0 || !adds)
    sw_selection_set_step (self->selection, pick);
  if (pick == 0 && hand->under != 0)
    sw_pan_view_offer_turn (self, hand->under, hand->press_x, hand->press_y);
}

/* Presses */

static double
threshold (SwPanView *self)
{
  GdkEvent *event = gtk_event_controller_get_current_event (GTK_EVENT_CONTROLLER (self->drag));
  GdkDevice *device = event != NULL ? gdk_event_get_device (event) : NULL;

  return device != NULL && gdk_device_get_source (device) == GDK_SOURCE_TOUCHSCREEN ? FINGER_THRESHOLD_PX : MOUSE_THRESHOLD_PX;
}

static void
drag_begin_cb (GtkGestureDrag *gesture, double x, double y, SwPanView *self)
{
  SwHand *hand = &self->hand;
  const Hit hit = hit_at (self, x, y);

  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (sw_pan_view_sketch (self) == NULL || self->selection == NULL || sw_pan_picture_is_turning (self->picture))
    return;
  sw_pan_view_drop_hand (self);
  hand->state = SW_HAND_PRESSED;
  hand->press_x = x;
  hand->press_y = y;
  sw_pan_to_cm (&self->geometry, x, y, &hand->press_x_cm, &hand->press_y_cm);
  hand->at_press = hand->now = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (gesture));
  hand->handle = hit.handle;
  hand->pour = hit.pour;
  hand->under = hit.under;
  self->hover_x = x;
  self->hover_y = y;
}

static void
drag_update_cb (GtkGestureDrag *gesture, double by_x, double by_y, SwPanView *self)
{
  SwHand *hand = &self->hand;

  if (hand->state == SW_HAND_FREE)
    return;
  hand->by_x = by_x;
  hand->by_y = by_y;
  hand->now = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (gesture));
  self->hover_x = hand->press_x + by_x;
  self->hover_y = hand->press_y + by_y;
  if (hand->state == SW_HAND_PRESSED)
    {
      if (hypot (by_x, by_y) < threshold (self))
        return;
      gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
      sw_pan_view_begin_deed (self);
    }
  sw_pan_view_continue_deed (self);
  sw_pan_view_update_hover (self);
}

static void
drag_end_cb (GtkGestureDrag *gesture, double by_x, double by_y, SwPanView *self)
{
  SwHand *hand = &self->hand;

  if (hand->state == SW_HAND_PRESSED)
    sw_pan_view_click (self);
  else if (hand->state != SW_HAND_FREE)
    sw_pan_view_end_deed (self);
  sw_pan_view_drop_hand (self);
  sw_pan_view_update_hover (self);
}

static void
drag_cancel_cb (SwPanView *self)
{
  sw_pan_view_cancel_hand (self);
}

static void
double_click_cb (GtkGestureClick *gesture, int n_press, double x, double y, SwPanView *self)
{
  if (n_press == 2 && self->selection != NULL && sw_selection_get_tool (self->selection) == SW_TOOL_SELECT && sw_pan_view_lone_pour (self) != 0 && hit_at (self, x, y).pour == sw_pan_view_lone_pour (self))
    g_signal_emit_by_name (self, "edit-properties", sw_pan_view_lone_pour (self));
}

/* The menu is about what is under it. */
static void
menu_at (SwPanView *self, double x, double y)
{
  const Hit hit = hit_at (self, x, y);

  if (self->selection == NULL)
    return;
  gtk_widget_grab_focus (GTK_WIDGET (self));
  self->hover_x = x;
  self->hover_y = y;
  if (!sw_selection_contains (self->selection, hit.pour))
    sw_selection_set_step (self->selection, hit.pour);
  sw_pan_view_show_menu (self, x, y);
}

static void
secondary_cb (GtkGestureClick *gesture, int n_press, double x, double y, SwPanView *self)
{
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  sw_pan_view_cancel_hand (self);
  menu_at (self, x, y);
}

static void
long_press_cb (GtkGestureLongPress *gesture, double x, double y, SwPanView *self)
{
  if (self->hand.state != SW_HAND_PRESSED)
    return;
  sw_pan_view_drop_hand (self);
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  menu_at (self, x, y);
}

void
sw_pan_view_add_hand (SwPanView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkGesture *click = gtk_gesture_click_new (), *secondary = gtk_gesture_click_new (), *long_press = gtk_gesture_long_press_new ();

  g_signal_connect (motion, "enter", G_CALLBACK (motion_cb), self);
  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (widget, motion);

  self->drag = gtk_gesture_drag_new ();
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (self->drag), GDK_BUTTON_PRIMARY);
  g_signal_connect (self->drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect (self->drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect (self->drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect_swapped (self->drag, "cancel", G_CALLBACK (drag_cancel_cb), self);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (self->drag));

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_PRIMARY);
  g_signal_connect (click, "released", G_CALLBACK (double_click_cb), self);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (click));

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (secondary), GDK_BUTTON_SECONDARY);
  g_signal_connect (secondary, "pressed", G_CALLBACK (secondary_cb), self);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (secondary));

  gtk_gesture_single_set_touch_only (GTK_GESTURE_SINGLE (long_press), TRUE);
  g_signal_connect (long_press, "pressed", G_CALLBACK (long_press_cb), self);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (long_press));

  gtk_widget_set_has_tooltip (widget, TRUE);
  g_signal_connect (self, "query-tooltip", G_CALLBACK (query_tooltip_cb), NULL);
}
