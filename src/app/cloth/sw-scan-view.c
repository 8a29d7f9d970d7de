/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/cloth/sw-scan-view.h"

#include "app/desk/sw-cloth-edit.h"
#include "app/desk/sw-cloth-scan.h"
#include "cloth/sw-usual-widths.h"
#include "app/desk/sw-cloth-words.h"
#include "app/cloth/sw-scan-usual.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Widths that a hand knitter casts on: a narrow scarf to a large jumper in the round. */
#define NARROWEST 20
#define WIDEST 320

struct _SwScanView
{
  SwPictureView parent_instance;

  SwClothScan scan;
  gsize reading; /* width of the reading line that the keys move; 0: where the cloth is */
  gsize hovered; /* 0: none */
};

G_DEFINE_FINAL_TYPE (SwScanView, sw_scan_view, SW_TYPE_PICTURE_VIEW)

void
sw_scan_view_range (gsize width, gsize *from, gsize *to)
{
  *from = MIN (width, NARROWEST);
  *to = width <= WIDEST ? WIDEST : SW_SCAN_WIDEST;
}

static gboolean
find_geometry (SwScanView *self, SwScanGeometry *geometry)
{
  SwForecast *forecast = sw_picture_view_get_forecast (SW_PICTURE_VIEW (self));
  gsize from, to;

  if (forecast == NULL)
    return FALSE;
  sw_scan_view_range (forecast->layout.width, &from, &to);
  sw_scan_geometry (from, to, gtk_widget_get_width (GTK_WIDGET (self)), gtk_widget_get_height (GTK_WIDGET (self)) - SW_SCAN_USUAL_PX, geometry);
  sw_cloth_scan_of (&self->scan, forecast, from, to);
  return TRUE;
}

static void
sw_scan_view_paint (cairo_t *cr, const SwPainting *painting)
{
  const SwForecast *forecast = painting->forecast;
  const double width = painting->width, height = painting->height - SW_SCAN_USUAL_PX;
  SwScanGeometry geometry;
  gsize from, to;

  sw_scan_view_range (forecast->layout.width, &from, &to);
  sw_draw_scan (cr, forecast, from, to, width, height, &painting->look);
  sw_scan_geometry (from, to, width, height, &geometry);
  cairo_translate (cr, 0, height);
  sw_scan_usual_draw (cr, forecast, &geometry, width, &painting->look);
}

/* A line at a width, with a dot where it meets the stacking. */
static void
append_line (SwScanView *self, GtkSnapshot *snapshot, const SwScanGeometry *geometry, gsize width, const GdkRGBA *colour)
{
  const SwPooling *pooling = sw_cloth_scan_at (&self->scan, width);
  const float x = (float) floor (sw_scan_to_x (geometry, (double) width)), y = (float) sw_scan_to_y (geometry, pooling->stack);
  GskRoundedRect dot;

  gtk_snapshot_append_color (snapshot, colour, &GRAPHENE_RECT_INIT (x - 0.5f, (float) geometry->plot.y, 2, (float) geometry->plot.height));
  gsk_rounded_rect_init_from_rect (&dot, &GRAPHENE_RECT_INIT (x - 3.5f, y - 4, 8, 8), 4);
  gtk_snapshot_push_rounded_clip (snapshot, &dot);
  gtk_snapshot_append_color (snapshot, colour, &dot.bounds);
  gtk_snapshot_pop (snapshot);
}

static void
sw_scan_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SwScanView *self = SW_SCAN_VIEW (widget);
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  SwScanGeometry geometry;
  GdkRGBA colour;

  GTK_WIDGET_CLASS (sw_scan_view_parent_class)->snapshot (widget, snapshot);
  if (!find_geometry (self, &geometry))
    return;
  if (self->hovered != 0)
    {
      gtk_style_context_get_color (style, &colour);
      colour.alpha *= 0.45f;
      append_line (self, snapshot, &geometry, self->hovered, &colour);
    }
  if (self->reading != 0 && gtk_widget_has_focus (widget) && gtk_style_context_lookup_color (style, "accent_color", &colour))
    append_line (self, snapshot, &geometry, self->reading, &colour);
}

static gsize
present_width (SwScanView *self)
{
  return (gsize) sw_document_get_sketch (sw_live_get_document (sw_picture_view_get_live (SW_PICTURE_VIEW (self))))->cloth.width_stitches;
}

/* (transfer full): the words for one width */
static char *
words_at (SwScanView *self, gsize width)
{
  const SwForecast *forecast = self->scan.forecast;

  return sw_cloth_scan_words (sw_cloth_scan_at (&self->scan, width),
                              sw_usual_piece (10.0 / forecast->stitch_width_cm, forecast->layout.worked, width));
}

/* Says what is at the reading line, or at the cloth's own width. */
static void
tell (SwScanView *self)
{
  SwScanGeometry geometry;
  g_autofree char *words = NULL;
  gsize width;

  if (!find_geometry (self, &geometry))
    return;
  width = CLAMP (self->reading != 0 ? self->reading : present_width (self), geometry.from, geometry.to);
  words = words_at (self, width);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_MIN, (double) geometry.from,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_MAX, (double) geometry.to,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_NOW, (double) width,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, words,
                                  -1);
}

static char *
sw_scan_view_describe (SwPictureView *view, SwForecast *forecast)
{
  SwScanView *self = SW_SCAN_VIEW (view);
  gsize from, to;

  sw_scan_view_range (forecast->layout.width, &from, &to);
  sw_cloth_scan_of (&self->scan, forecast, from, to);
  return words_at (self, CLAMP (self->reading != 0 ? self->reading : forecast->layout.width, from, to));
}

static void
take (SwScanView *self, gsize width)
{
  SwLive *live = sw_picture_view_get_live (SW_PICTURE_VIEW (self));
  g_autoptr (GError) error = NULL;

  if (!sw_cloth_set_width (sw_live_get_document (live), (double) width, &error))
    gtk_widget_error_bell (GTK_WIDGET (self));
}

static gboolean
query_tooltip_cb (SwScanView *self, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  SwScanGeometry geometry;
  g_autofree char *words = NULL;
  gsize width;

  if (!find_geometry (self, &geometry))
    return FALSE;
  width = keyboard ? self->reading : self->hovered;
  if (width == 0)
    return FALSE;
  words = words_at (self, width);
  gtk_tooltip_set_text (tooltip, words);
  gtk_tooltip_set_tip_area (tooltip, &(GdkRectangle){ (int) sw_scan_to_x (&geometry, (double) width) - 2, (int) geometry.plot.y, 4, (int) geometry.plot.height });
  return TRUE;
}

static void
hover (SwScanView *self, double x, double y)
{
  SwScanGeometry geometry;
  gsize hovered = 0;

  if (find_geometry (self, &geometry) && y >= geometry.plot.y && x >= geometry.plot.x - 6 && x <= geometry.plot.x + geometry.plot.width + 6)
    hovered = sw_scan_width_at (&geometry, x);
  if (hovered == self->hovered)
    return;
  self->hovered = hovered;
  gtk_widget_trigger_tooltip_query (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
motion_cb (GtkEventControllerMotion *controller, double x, double y, SwScanView *self)
{
  hover (self, x, y);
}

static void
leave_cb (GtkEventControllerMotion *controller, SwScanView *self)
{
  hover (self, -1, -1);
}

/* A press takes the width beneath it; moving on drags it along. */
static void
drag_cb (GtkGestureDrag *gesture, double dx, double dy, SwScanView *self)
{
  SwScanGeometry geometry;
  double x, y;

  if (!find_geometry (self, &geometry) || !gtk_gesture_drag_get_start_point (gesture, &x, &y))
    return;
  gtk_widget_grab_focus (GTK_WIDGET (self));
  self->reading = sw_scan_width_at (&geometry, x + dx);
  hover (self, x + dx, y);
  take (self, self->reading);
  tell (self);
}

static void
drag_begin_cb (GtkGestureDrag *gesture, double x, double y, SwScanView *self)
{
  drag_cb (gesture, 0, 0, self);
}

typedef enum
{
  READ_NARROWER,
  READ_WIDER,
  READ_PEAK_BELOW,
  READ_PEAK_ABOVE,
  READ_NARROWEST,
  READ_WIDEST,
  READ_TAKE,
} Reading;

/* The chart's axis runs from left to right in every language. */
static const struct
{
  guint key, keypad;
  Reading reading;
} keys[] = {
  { GDK_KEY_Left, GDK_KEY_KP_Left, READ_NARROWER },
  { GDK_KEY_Right, GDK_KEY_KP_Right, READ_WIDER },
  { GDK_KEY_Page_Down, GDK_KEY_KP_Page_Down, READ_PEAK_BELOW },
  { GDK_KEY_Page_Up, GDK_KEY_KP_Page_Up, READ_PEAK_ABOVE },
  { GDK_KEY_Home, GDK_KEY_KP_Home, READ_NARROWEST },
  { GDK_KEY_End, GDK_KEY_KP_End, READ_WIDEST },
  { GDK_KEY_Return, GDK_KEY_KP_Enter, READ_TAKE },
  { GDK_KEY_space, GDK_KEY_KP_Space, READ_TAKE },
};

static gsize
read_on (SwScanView *self, const SwScanGeometry *geometry, Reading reading, gsize width)
{
  switch (reading)
    {
    case READ_NARROWER:
      return MAX (width - 1, geometry->from);
    case READ_WIDER:
      return MIN (width + 1, geometry->to);
    case READ_PEAK_BELOW:
      return sw_cloth_scan_next_peak (&self->scan, width, -1);
    case READ_PEAK_ABOVE:
      return sw_cloth_scan_next_peak (&self->scan, width, 1);
    case READ_NARROWEST:
      return geometry->from;
    case READ_WIDEST:
      return geometry->to;
    case READ_TAKE:
      take (self, width);
      return width;
    default:
      g_return_val_if_reached (width);
    }
}

static gboolean
read_key (SwScanView *self, const SwScanGeometry *geometry, guint key, gsize *width)
{
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    if (key == keys[i].key || key == keys[i].keypad)
      {
        *width = read_on (self, geometry, keys[i].reading, *width);
        return TRUE;
      }
  return FALSE;
}

static gboolean
key_cb (GtkEventControllerKey *controller, guint key, guint code, GdkModifierType modifiers, SwScanView *self)
{
  SwScanGeometry geometry;
  gsize width;

  if ((modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK)) || !find_geometry (self, &geometry))
    return FALSE;
  width = CLAMP (self->reading != 0 ? self->reading : present_width (self), geometry.from, geometry.to);
  if (!read_key (self, &geometry, key, &width))
    return FALSE;
  self->reading = width;
  tell (self);
  gtk_widget_trigger_tooltip_query (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
  return TRUE;
}

static void
focus_cb (SwScanView *self)
{
  self->reading = gtk_widget_has_focus (GTK_WIDGET (self)) ? present_width (self) : 0;
  tell (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
sw_scan_view_finalize (GObject *object)
{
  sw_cloth_scan_clear (&SW_SCAN_VIEW (object)->scan);

  G_OBJECT_CLASS (sw_scan_view_parent_class)->finalize (object);
}

static void
sw_scan_view_class_init (SwScanViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = sw_scan_view_finalize;
  widget_class->snapshot = sw_scan_view_snapshot;
  SW_PICTURE_VIEW_CLASS (klass)->paint = sw_scan_view_paint;
  SW_PICTURE_VIEW_CLASS (klass)->describe = sw_scan_view_describe;
  gtk_widget_class_set_css_name (widget_class, "scan");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_SLIDER);
}

static void
sw_scan_view_init (SwScanView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  GtkEventController *motion = gtk_event_controller_motion_new (), *key = gtk_event_controller_key_new ();
  GtkGesture *drag = gtk_gesture_drag_new ();

  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect (motion, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect (key, "key-pressed", G_CALLBACK (key_cb), self);
  g_signal_connect (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (drag_cb), self);
  gtk_widget_add_controller (widget, motion);
  gtk_widget_add_controller (widget, key);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (drag));
  gtk_widget_set_focusable (widget, TRUE);
  gtk_widget_set_has_tooltip (widget, TRUE);
  g_signal_connect (self, "query-tooltip", G_CALLBACK (query_tooltip_cb), NULL);
  g_signal_connect (self, "notify::has-focus", G_CALLBACK (focus_cb), NULL);
}
