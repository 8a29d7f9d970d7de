/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-pan-view-private.h"

#include <math.h>

/* Coming close to the pan, and moving about in it: wheel, fingers, middle button. */

#define MOST_ZOOM 24.0
#define WHEEL_ZOOM 1.25 /* a notch of the wheel */
#define WHEEL_PX 48.0
#define SURFACE_ZOOM 0.01 /* a touchpad's px */

gboolean
sw_pan_view_can_zoom (SwPanView *self, gboolean in)
{
  return in ? self->zoom.zoom < MOST_ZOOM : self->zoom.zoom > 1;
}

/* What is at @x, @y stays there, as far as the pan's edges let it. */
void
sw_pan_view_zoom_at (SwPanView *self, double factor, double x, double y)
{
  const double zoom = CLAMP (self->zoom.zoom * factor, 1, MOST_ZOOM), share = self->zoom.zoom / zoom;
  double x_cm, y_cm;

  if (self->geometry.scale <= 0)
    return;
  sw_pan_to_cm (&self->geometry, x, y, &x_cm, &y_cm);
  self->zoom = (SwPanZoom){ zoom, x_cm + (self->zoom.x_cm - x_cm) * share, y_cm + (self->zoom.y_cm - y_cm) * share };
  sw_pan_view_relayout (self);
}

void
sw_pan_view_zoom_fit (SwPanView *self)
{
  self->zoom.zoom = 1;
  sw_pan_view_relayout (self);
}

void
sw_pan_view_scroll (SwPanView *self, double by_x, double by_y)
{
  if (self->geometry.scale <= 0)
    return;
  self->zoom.x_cm += by_x / self->geometry.scale;
  self->zoom.y_cm -= by_y / self->geometry.scale;
  sw_pan_view_relayout (self);
}

static gboolean
scroll_cb (GtkEventControllerScroll *controller, double dx, double dy, SwPanView *self)
{
  const GdkModifierType state = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (controller));
  const gboolean wheel = gtk_event_controller_scroll_get_unit (controller) == GDK_SCROLL_UNIT_WHEEL;

  if (state & GDK_CONTROL_MASK)
    {
      sw_pan_view_zoom_at (self, wheel ? pow (WHEEL_ZOOM, -dy) : exp (-SURFACE_ZOOM * dy), self->hover_x, self->hover_y);
      return GDK_EVENT_STOP;
    }
  if (!sw_pan_view_can_zoom (self, FALSE))
    return GDK_EVENT_PROPAGATE;
  if (state & GDK_SHIFT_MASK && dx >= 0 && dx <= 0)
    {
      dx = dy;
      dy = 0;
    }
  sw_pan_view_scroll (self, dx * (wheel ? WHEEL_PX : 1), dy * (wheel ? WHEEL_PX : 1));
  return GDK_EVENT_STOP;
}

/* Two fingers: the zoom and the place at the beginning, and what was between them. */
typedef struct
{
  SwPanZoom zoom;
  double scale;
  double x_cm, y_cm;
} Pinch;

static void
pinch_begin_cb (GtkGesture *gesture, GdkEventSequence *sequence, SwPanView *self)
{
  Pinch *pinch = g_object_get_data (G_OBJECT (gesture), "pinch");
  double x, y;

  sw_pan_view_cancel_hand (self);
  gtk_gesture_set_state (gesture, GTK_EVENT_SEQUENCE_CLAIMED);
  if (!gtk_gesture_get_bounding_box_center (gesture, &x, &y))
    return;
  pinch->zoom = self->zoom;
  pinch->scale = self->geometry.scale / self->zoom.zoom;
  sw_pan_to_cm (&self->geometry, x, y, &pinch->x_cm, &pinch->y_cm);
}

/* What was between the fingers stays between them. */
static void
pinch_update_cb (GtkGesture *gesture, GdkEventSequence *sequence, SwPanView *self)
{
  const Pinch *pinch = g_object_get_data (G_OBJECT (gesture), "pinch");
  const double zoom = CLAMP (pinch->zoom.zoom * gtk_gesture_zoom_get_scale_delta (GTK_GESTURE_ZOOM (gesture)), 1, MOST_ZOOM);
  const double scale = pinch->scale * zoom;
  const double middle_x = gtk_widget_get_width (GTK_WIDGET (self)) / 2.0, middle_y = gtk_widget_get_height (GTK_WIDGET (self)) / 2.0;
  double x, y;

  if (scale <= 0 || !gtk_gesture_get_bounding_box_center (gesture, &x, &y))
    return;
  self->zoom = (SwPanZoom){ zoom, pinch->x_cm - (x - middle_x) / scale, pinch->y_cm + (y - middle_y) / scale };
  sw_pan_view_relayout (self);
}

static void
middle_begin_cb (GtkGestureDrag *gesture, double x, double y, SwPanView *self)
{
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  self->hand.zoom = self->zoom;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "grabbing");
}

static void
middle_update_cb (GtkGestureDrag *gesture, double by_x, double by_y, SwPanView *self)
{
  if (self->geometry.scale <= 0)
    return;
  self->zoom.x_cm = self->hand.zoom.x_cm - by_x / self->geometry.scale;
  self->zoom.y_cm = self->hand.zoom.y_cm + by_y / self->geometry.scale;
  sw_pan_view_relayout (self);
}

static void
middle_end_cb (SwPanView *self)
{
  sw_pan_view_update_hover (self);
}

void
sw_pan_view_add_zoom (SwPanView *self)
{
  GtkEventController *scroll = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  GtkGesture *pinch = gtk_gesture_zoom_new (), *middle = gtk_gesture_drag_new ();

  g_signal_connect (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), scroll);

  g_object_set_data_full (G_OBJECT (pinch), "pinch", g_new0 (Pinch, 1), g_free);
  g_signal_connect (pinch, "begin", G_CALLBACK (pinch_begin_cb), self);
  g_signal_connect (pinch, "update", G_CALLBACK (pinch_update_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (pinch));

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (middle), GDK_BUTTON_MIDDLE);
  g_signal_connect (middle, "drag-begin", G_CALLBACK (middle_begin_cb), self);
  g_signal_connect (middle, "drag-update", G_CALLBACK (middle_update_cb), self);
  g_signal_connect_swapped (middle, "drag-end", G_CALLBACK (middle_end_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (middle));
}
