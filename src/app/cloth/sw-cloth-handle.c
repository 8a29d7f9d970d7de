/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/cloth/sw-cloth-canvas-private.h"
#include "app/desk/sw-cloth-edit.h"
#include "app/desk/sw-cloth-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define HANDLE_WIDTH 8
#define HANDLE_HEIGHT 56
#define REACH 8 /* from the edge at which it can be taken hold of, px */

/* One notch of a wheel. */
#define WHEEL_STEP 1.1

static SwDocument *
document_of (SwClothCanvas *self)
{
  return sw_live_get_document (sw_picture_view_get_live (SW_PICTURE_VIEW (self)));
}

/* In the hand it is where the hand has put it, not where the newest forecast has. */
static double
edge_x (SwClothCanvas *self)
{
  const double columns = self->pulling ? (double) sw_document_get_sketch (document_of (self))->cloth.width_stitches : self->camera.columns;

  return sw_cloth_camera_x (&self->camera, columns);
}

/* The handle sits on the edge, in the middle of what is seen of it. */
static gboolean
find_handle (SwClothCanvas *self, graphene_rect_t *handle)
{
  const double top = MAX (sw_cloth_camera_y (&self->camera, self->camera.rows), 0);
  const double bottom = MIN (sw_cloth_camera_y (&self->camera, 0), self->camera.height);

  if (self->camera.rows < 1 || bottom <= top || edge_x (self) > self->camera.width + HANDLE_WIDTH)
    return FALSE;
  graphene_rect_init (handle, (float) (edge_x (self) - HANDLE_WIDTH / 2.0), (float) ((top + bottom - HANDLE_HEIGHT) / 2), HANDLE_WIDTH, HANDLE_HEIGHT);
  return TRUE;
}

static gboolean
is_on_edge (SwClothCanvas *self, double x, double y)
{
  graphene_rect_t handle;

  return find_handle (self, &handle) && fabs (x - edge_x (self)) <= REACH &&
         y >= sw_cloth_camera_y (&self->camera, self->camera.rows) && y <= sw_cloth_camera_y (&self->camera, 0);
}

static void
append_pill (GtkSnapshot *snapshot, const graphene_rect_t *box, float radius, const GdkRGBA *fill)
{
  const GdkRGBA line = { 0, 0, 0, 0.55f };
  GskRoundedRect outline;

  gsk_rounded_rect_init_from_rect (&outline, box, radius);
  gtk_snapshot_push_rounded_clip (snapshot, &outline);
  gtk_snapshot_append_color (snapshot, fill, box);
  gtk_snapshot_pop (snapshot);
  gtk_snapshot_append_border (snapshot, &outline, (float[4]){ 1, 1, 1, 1 }, (GdkRGBA[4]){ line, line, line, line });
}

static char *
width_words (SwClothCanvas *self)
{
  const SwLook *look = sw_picture_view_get_look (SW_PICTURE_VIEW (self));
  SwForecast *forecast = sw_picture_view_get_forecast (SW_PICTURE_VIEW (self));

  return sw_cloth_width (forecast, (gsize) sw_document_get_sketch (document_of (self))->cloth.width_stitches, look->inches ? SW_SYSTEM_US : SW_SYSTEM_METRIC);
}

/* While it is pulled, the width stands beside the handle. */
static void
append_words (SwClothCanvas *self, GtkSnapshot *snapshot, const graphene_rect_t *handle)
{
  g_autofree char *words = width_words (self);
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), words);
  graphene_rect_t box;
  int width, height;
  float x, y;

  pango_layout_get_pixel_size (layout, &width, &height);
  x = MIN (handle->origin.x + HANDLE_WIDTH + 10, (float) (self->camera.width - width - 20));
  y = handle->origin.y - (float) height - 18;
  graphene_rect_init (&box, x, y, (float) width + 16, (float) height + 8);
  append_pill (snapshot, &box, 6, &(GdkRGBA){ 0.12f, 0.12f, 0.12f, 0.92f });
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (x + 8, y + 4));
  gtk_snapshot_append_layout (snapshot, layout, &(GdkRGBA){ 1, 1, 1, 1 });
  gtk_snapshot_restore (snapshot);
}

void
sw_cloth_handle_append (SwClothCanvas *self, GtkSnapshot *snapshot)
{
  GdkRGBA fill = { 0.97f, 0.97f, 0.97f, 0.95f };
  graphene_rect_t handle;

  if (!find_handle (self, &handle))
    return;
  if (self->over_handle || self->pulling)
    gtk_style_context_lookup_color (gtk_widget_get_style_context (GTK_WIDGET (self)), "accent_bg_color", &fill);
  append_pill (snapshot, &handle, HANDLE_WIDTH / 2.0f, &fill);
  if (self->pulling)
    append_words (self, snapshot, &handle);
}

/* Pulling the edge */

static void
drag_begin_cb (GtkGestureDrag *gesture, double x, double y, SwClothCanvas *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (sw_picture_view_get_forecast (SW_PICTURE_VIEW (self)) == NULL || !is_on_edge (self, x, y))
    {
      gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_DENIED);
      return;
    }
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  self->pulling = TRUE;
  self->pulled_columns = self->camera.columns - sw_cloth_camera_column (&self->camera, x);
  sw_document_begin_group (document_of (self), sw_cloth_width_step ());
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
drag_update_cb (GtkGestureDrag *gesture, double dx, double dy, SwClothCanvas *self)
{
  g_autoptr (GError) error = NULL;
  double x, y;

  if (!self->pulling || !gtk_gesture_drag_get_start_point (gesture, &x, &y))
    return;
  if (!sw_cloth_drag_width (document_of (self), sw_cloth_camera_column (&self->camera, x + dx) + self->pulled_columns, &error))
    gtk_widget_error_bell (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
sw_cloth_handle_let_go (SwClothCanvas *self)
{
  if (!self->pulling)
    return;
  self->pulling = FALSE;
  if (sw_picture_view_get_live (SW_PICTURE_VIEW (self)) == NULL)
    return;
  sw_document_end_group (document_of (self));
  sw_cloth_canvas_remeasure (self);
}

static void
drag_end_cb (GtkGestureDrag *gesture, double dx, double dy, SwClothCanvas *self)
{
  sw_cloth_handle_let_go (self);
}

/* How far a key scrolls: steps and pages to the right and down. */
static const struct
{
  guint key, keypad;
  int step_x, step_y, page_y;
} scroll_keys[] = {
  { GDK_KEY_Left, GDK_KEY_KP_Left, .step_x = -1 },
  { GDK_KEY_Right, GDK_KEY_KP_Right, .step_x = 1 },
  { GDK_KEY_Up, GDK_KEY_KP_Up, .step_y = -1 },
  { GDK_KEY_Down, GDK_KEY_KP_Down, .step_y = 1 },
  { GDK_KEY_Page_Up, GDK_KEY_KP_Page_Up, .page_y = -1 },
  { GDK_KEY_Page_Down, GDK_KEY_KP_Page_Down, .page_y = 1 },
  { GDK_KEY_Home, GDK_KEY_KP_Home, .page_y = -10000 },
  { GDK_KEY_End, GDK_KEY_KP_End, .page_y = 10000 },
};

static gboolean
scroll_by_key (SwClothCanvas *self, guint key)
{
  SwClothCamera *camera = &self->camera;

  for (gsize i = 0; i < G_N_ELEMENTS (scroll_keys); i++)
    if (key == scroll_keys[i].key || key == scroll_keys[i].keypad)
      {
        sw_cloth_camera_scroll_to (camera, sw_cloth_camera_scroll_x (camera) + scroll_keys[i].step_x * camera->width * 0.1,
                                   sw_cloth_camera_scroll_y (camera) + (scroll_keys[i].step_y * 0.1 + scroll_keys[i].page_y * 0.9) * camera->height);
        sw_cloth_canvas_moved (self);
        return TRUE;
      }
  return FALSE;
}

static gboolean
key_cb (GtkEventControllerKey *controller, guint key, guint code, GdkModifierType modifiers, SwClothCanvas *self)
{
  g_autoptr (GError) error = NULL;

  if (!(modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK)) && scroll_by_key (self, key))
    return TRUE;
  if (key != GDK_KEY_Escape || !self->pulling)
    return FALSE;
  self->pulling = FALSE;
  if (!sw_document_cancel_group (document_of (self), &error))
    gtk_widget_error_bell (GTK_WIDGET (self));
  sw_cloth_canvas_remeasure (self);
  return TRUE;
}

/* Pointing, wheel and pinch */

static void
point (SwClothCanvas *self, double x, double y)
{
  const gboolean over = is_on_edge (self, x, y);

  self->pointer_x = x;
  self->pointer_y = y;
  if (over == self->over_handle)
    return;
  self->over_handle = over;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), over ? "ew-resize" : NULL);
  gtk_widget_trigger_tooltip_query (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
motion_cb (GtkEventControllerMotion *controller, double x, double y, SwClothCanvas *self)
{
  point (self, x, y);
}

static void
leave_cb (GtkEventControllerMotion *controller, SwClothCanvas *self)
{
  point (self, -1000, -1000);
}

static gboolean
query_tooltip_cb (SwClothCanvas *self, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  g_autofree char *words = NULL, *text = NULL;

  if (!self->over_handle || self->pulling || sw_picture_view_get_forecast (SW_PICTURE_VIEW (self)) == NULL)
    return FALSE;
  words = width_words (self);
  /* Translators: of the handle on the cloth's edge; %s is the width: "64 stitches, 21 cm" */
  text = g_strdup_printf (_ ("Drag to change the width: %s"), words);
  gtk_tooltip_set_text (tooltip, text);
  return TRUE;
}

/* With Ctrl the wheel zooms; else it scrolls, which is the scrolled window's. */
static gboolean
scroll_cb (GtkEventControllerScroll *controller, double dx, double dy, SwClothCanvas *self)
{
  const GdkModifierType modifiers = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (controller));

  if (!(modifiers & GDK_CONTROL_MASK))
    return FALSE;
  sw_cloth_canvas_zoom_at (self, self->camera.stitch * pow (WHEEL_STEP, -dy), self->pointer_x, self->pointer_y);
  return TRUE;
}

static void
pinch_begin_cb (GtkGesture *gesture, GdkEventSequence *sequence, SwClothCanvas *self)
{
  self->pinched_from = self->camera.stitch;
  gtk_gesture_set_state (gesture, GTK_EVENT_SEQUENCE_CLAIMED);
}

static void
pinch_cb (GtkGestureZoom *gesture, double scale, SwClothCanvas *self)
{
  double x, y;

  if (gtk_gesture_get_bounding_box_center (GTK_GESTURE (gesture), &x, &y))
    sw_cloth_canvas_zoom_at (self, self->pinched_from * scale, x, y);
}

static void
add_controller (SwClothCanvas *self, gpointer controller)
{
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (controller));
}

void
sw_cloth_handle_init (SwClothCanvas *self)
{
  GtkGesture *drag = gtk_gesture_drag_new (), *pinch = gtk_gesture_zoom_new ();
  GtkEventController *motion = gtk_event_controller_motion_new (), *key = gtk_event_controller_key_new ();
  GtkEventController *scroll = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_VERTICAL);

  g_signal_connect (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect (pinch, "begin", G_CALLBACK (pinch_begin_cb), self);
  g_signal_connect (pinch, "scale-changed", G_CALLBACK (pinch_cb), self);
  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect (motion, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect (key, "key-pressed", G_CALLBACK (key_cb), self);
  g_signal_connect (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  add_controller (self, drag);
  add_controller (self, pinch);
  add_controller (self, motion);
  add_controller (self, key);
  add_controller (self, scroll);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  g_signal_connect (self, "query-tooltip", G_CALLBACK (query_tooltip_cb), NULL);
}
