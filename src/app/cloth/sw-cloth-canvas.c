/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/cloth/sw-cloth-canvas-private.h"

#include "app/parts/sw-frame-times.h"
#include "draw/sw-canvas.h"

#include <math.h>

G_DEFINE_FINAL_TYPE_WITH_CODE (SwClothCanvas, sw_cloth_canvas, SW_TYPE_PICTURE_VIEW, G_IMPLEMENT_INTERFACE (GTK_TYPE_SCROLLABLE, NULL))

enum
{
  PROP_0,
  PROP_STITCH_PX,
  PROP_FIT,
  PROP_PURL_SIDE,
  N_PROPS,
  PROP_HADJUSTMENT = N_PROPS,
  PROP_VADJUSTMENT,
  PROP_HSCROLL_POLICY,
  PROP_VSCROLL_POLICY,
};

static GParamSpec *props[N_PROPS];

/* The scroll bars show where the camera is; nothing they say back is taken meanwhile. */
static void
show_adjustment (GtkAdjustment *adjustment, double value, double extent, double page)
{
  if (adjustment != NULL)
    gtk_adjustment_configure (adjustment, value, 0, extent, page * 0.1, page * 0.9, page);
}

static void
show_adjustments (SwClothCanvas *self)
{
  SwClothCamera *camera = &self->camera;

  self->showing = TRUE;
  show_adjustment (self->hadjustment, sw_cloth_camera_scroll_x (camera), sw_cloth_camera_extent_x (camera), camera->width);
  show_adjustment (self->vadjustment, sw_cloth_camera_scroll_y (camera), sw_cloth_camera_extent_y (camera), camera->height);
  self->showing = FALSE;
}

/* Returns: FALSE if there is nothing to see. What is to be seen is painted meanwhile. Scrolled by whole device pixels, so that stitches stay sharp. */
static gboolean
look_at_cloth (SwClothCanvas *self)
{
  SwPictureView *view = SW_PICTURE_VIEW (self);
  const SwClothCamera *camera = &self->camera;
  const int scale = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  SwClothSight sight = { .forecast = sw_picture_view_get_forecast (view) };

  if (self->tiles == NULL || sight.forecast == NULL || camera->rows < 1 || camera->width <= 0 || camera->height <= 0 || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return FALSE;
  sight.edit_time = sw_live_get_edit_time (sw_picture_view_get_live (view));
  sight.size = sw_cloth_size (sight.forecast, camera->stitch * scale, sw_picture_view_get_look (view)->purl_side);
  sight.left = (int) lround (sw_cloth_camera_x (camera, 0) * scale);
  sight.top = (int) lround (sw_cloth_camera_y (camera, camera->rows) * scale);
  sight.width = (int) camera->width * scale;
  sight.height = (int) camera->height * scale;
  if (sw_cloth_tiles_look (self->tiles, &sight))
    self->looked_at = g_get_monotonic_time ();
  if (!sw_cloth_tiles_is_sharp (self->tiles))
    sw_picture_view_hold_frames (view);
  return TRUE;
}

/* A held frame waits for what it shows. */
static gboolean
catch_up (GtkWidget *widget, gint64 until_us)
{
  SwClothCanvas *self = SW_CLOTH_CANVAS (widget);

  return !look_at_cloth (self) || sw_cloth_tiles_wait (self->tiles, until_us);
}

static void
painted_cb (gpointer user_data)
{
  gtk_widget_queue_draw (GTK_WIDGET (user_data));
}

void
sw_cloth_canvas_moved (SwClothCanvas *self)
{
  show_adjustments (self);
  look_at_cloth (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* The camera's cloth and view as they are now. */
static void
measure_cloth (SwClothCanvas *self)
{
  SwForecast *forecast = sw_picture_view_get_forecast (SW_PICTURE_VIEW (self));
  SwClothCamera *camera = &self->camera;

  camera->width = gtk_widget_get_width (GTK_WIDGET (self));
  camera->height = gtk_widget_get_height (GTK_WIDGET (self));
  if (forecast == NULL || camera->width <= 0 || camera->height <= 0)
    return;
  camera->columns = (double) forecast->layout.width;
  camera->rows = (double) sw_layout_rows (&forecast->layout);
  camera->gauge = forecast->row_height_cm / forecast->stitch_width_cm;
  if (self->pulling)
    return; /* the edge follows the hand; the rest stays where it is */
  if (self->fit)
    {
      const double stitch = sw_cloth_camera_fit (camera);

      if (stitch != camera->stitch)
        {
          camera->stitch = stitch;
          g_object_notify_by_pspec (G_OBJECT (self), props[PROP_STITCH_PX]);
        }
    }
  sw_cloth_camera_settle (camera);
}

void
sw_cloth_canvas_remeasure (SwClothCanvas *self)
{
  measure_cloth (self);
  sw_cloth_canvas_moved (self);
}

void
sw_cloth_canvas_set_fit (SwClothCanvas *self, gboolean fit)
{
  if (self->fit == fit)
    return;
  self->fit = fit;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_FIT]);
  if (fit)
    sw_cloth_canvas_remeasure (self);
}

void
sw_cloth_canvas_zoom_at (SwClothCanvas *self, double stitch, double x, double y)
{
  sw_cloth_canvas_set_fit (self, FALSE);
  sw_cloth_camera_zoom (&self->camera, stitch, x, y);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_STITCH_PX]);
  sw_cloth_canvas_moved (self);
}

void
sw_cloth_canvas_zoom_by (SwClothCanvas *self, double factor)
{
  g_return_if_fail (SW_IS_CLOTH_CANVAS (self));
  sw_cloth_canvas_zoom_at (self, self->camera.stitch * factor, self->camera.width / 2, self->camera.height / 2);
}

static void
scrolled_cb (SwClothCanvas *self)
{
  if (self->showing || self->hadjustment == NULL || self->vadjustment == NULL)
    return;
  sw_cloth_camera_scroll_to (&self->camera, gtk_adjustment_get_value (self->hadjustment), gtk_adjustment_get_value (self->vadjustment));
  look_at_cloth (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
set_adjustment (SwClothCanvas *self, GtkAdjustment **held, GtkAdjustment *adjustment)
{
  if (*held == adjustment && adjustment != NULL)
    return;
  if (*held != NULL)
    g_signal_handlers_disconnect_by_func (*held, scrolled_cb, self);
  g_set_object (held, adjustment);
  if (adjustment != NULL)
    g_signal_connect_swapped (adjustment, "value-changed", G_CALLBACK (scrolled_cb), self);
  show_adjustments (self);
}

/* Painting */

static void
append_ground (SwClothCanvas *self, GtkSnapshot *snapshot)
{
  const float grey = (float) sw_ink_grey (SW_INK_GROUND, sw_picture_view_get_look (SW_PICTURE_VIEW (self))->dark);

  gtk_snapshot_append_color (snapshot, &(GdkRGBA){ grey, grey, grey, 1 }, &GRAPHENE_RECT_INIT (0, 0, (float) self->camera.width, (float) self->camera.height));
}

/* A soft shade on the ground, so that the cloth lies on it. */
static void
append_shade (GtkSnapshot *snapshot, const graphene_rect_t *cloth)
{
  GskRoundedRect outline;

  gsk_rounded_rect_init_from_rect (&outline, cloth, 2);
  gtk_snapshot_append_outset_shadow (snapshot, &outline, &(GdkRGBA){ 0, 0, 0, 0.35f }, 0, 1, 0, 5);
}

/* Made once for each piece; its pixels are not copied. */
static GdkTexture *
texture_of (SwClothPixels *piece)
{
  if (piece->texture == NULL)
    {
      piece->texture = gdk_memory_texture_new (piece->width, piece->height, GDK_MEMORY_DEFAULT, piece->bytes, (gsize) piece->width * sizeof (guint32));
      piece->free_texture = g_object_unref;
    }
  return piece->texture;
}

static void
append_piece (GtkSnapshot *snapshot, const SwClothShown *shown, float scale)
{
  graphene_rect_t box = GRAPHENE_RECT_INIT ((float) shown->x / scale, (float) shown->y / scale, (float) shown->width / scale, (float) shown->height / scale);

  if (!shown->turned)
    {
      gtk_snapshot_append_texture (snapshot, texture_of (shown->piece), &box);
      return;
    }
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (2 * box.origin.x + box.size.width, 0));
  gtk_snapshot_scale (snapshot, -1, 1);
  gtk_snapshot_append_texture (snapshot, texture_of (shown->piece), &box);
  gtk_snapshot_restore (snapshot);
}

static void
append_cloth (SwClothCanvas *self, GtkSnapshot *snapshot)
{
  const float scale = (float) gtk_widget_get_scale_factor (GTK_WIDGET (self));
  SwClothSight sight;
  g_autoptr (GArray) pieces = sw_cloth_tiles_show (self->tiles, &sight);
  double width, height;

  if (pieces == NULL)
    return;
  sw_cloth_size_extent (sight.forecast, &sight.size, &width, &height);
  append_shade (snapshot, &GRAPHENE_RECT_INIT ((float) sight.left / scale, (float) sight.top / scale, (float) width / scale, (float) height / scale));
  for (guint i = 0; i < pieces->len; i++)
    append_piece (snapshot, &g_array_index (pieces, SwClothShown, i), scale);
  sw_frame_times_expect (GTK_WIDGET (self), sight.edit_time);
  sw_frame_times_expect_kind (GTK_WIDGET (self), SW_FRAME_MOVE, self->looked_at);
  if (sw_cloth_tiles_is_sharp (self->tiles))
    sw_frame_times_expect_kind (GTK_WIDGET (self), SW_FRAME_SHARP, self->looked_at);
}

static void
sw_cloth_canvas_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SwClothCanvas *self = SW_CLOTH_CANVAS (widget);
  SwForecast *forecast = sw_picture_view_get_forecast (SW_PICTURE_VIEW (self));

  if (forecast == NULL || self->camera.width <= 0 || self->camera.height <= 0)
    return;
  if (self->camera.rows < 1)
    {
      /* The renderer has a sentence for a strand that is too short. */
      GTK_WIDGET_CLASS (sw_cloth_canvas_parent_class)->snapshot (widget, snapshot);
      return;
    }
  append_ground (self, snapshot);
  look_at_cloth (self);
  append_cloth (self, snapshot);
  sw_cloth_handle_append (self, snapshot);
}

static void
sw_cloth_canvas_paint (cairo_t *cr, const SwPainting *painting)
{
  sw_draw_cloth (cr, painting->forecast, painting->width, painting->height, &painting->look);
}

static gboolean
sw_cloth_canvas_is_painted (SwPictureView *view)
{
  return SW_CLOTH_CANVAS (view)->camera.rows < 1;
}

static void
sw_cloth_canvas_updated (SwPictureView *view)
{
  sw_cloth_canvas_remeasure (SW_CLOTH_CANVAS (view));
}

static char *
sw_cloth_canvas_describe (SwPictureView *view, SwForecast *forecast)
{
  return sw_pooling_sentence (&forecast->pooling);
}

static void
sw_cloth_canvas_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SwClothCanvas *self = SW_CLOTH_CANVAS (widget);

  GTK_WIDGET_CLASS (sw_cloth_canvas_parent_class)->size_allocate (widget, width, height, baseline);
  measure_cloth (self);
  show_adjustments (self);
}

/* Actions */

static void
zoom_in_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  sw_cloth_canvas_zoom_by (SW_CLOTH_CANVAS (widget), SW_CLOTH_ZOOM_STEP);
}

static void
zoom_out_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  sw_cloth_canvas_zoom_by (SW_CLOTH_CANVAS (widget), 1 / SW_CLOTH_ZOOM_STEP);
}

static void
show_purl_side (SwClothCanvas *self, gboolean purl_side)
{
  SwLook *look = sw_picture_view_get_look (SW_PICTURE_VIEW (self));

  if (look->purl_side == purl_side)
    return;
  look->purl_side = purl_side;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_PURL_SIDE]);
  look_at_cloth (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* The class */

static void
sw_cloth_canvas_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwClothCanvas *self = SW_CLOTH_CANVAS (object);

  switch (prop_id)
    {
    case PROP_STITCH_PX:
      g_value_set_double (value, self->camera.stitch);
      break;
    case PROP_FIT:
      g_value_set_boolean (value, self->fit);
      break;
    case PROP_PURL_SIDE:
      g_value_set_boolean (value, sw_picture_view_get_look (SW_PICTURE_VIEW (self))->purl_side);
      break;
    case PROP_HADJUSTMENT:
      g_value_set_object (value, self->hadjustment);
      break;
    case PROP_VADJUSTMENT:
      g_value_set_object (value, self->vadjustment);
      break;
    case PROP_HSCROLL_POLICY:
    case PROP_VSCROLL_POLICY:
      g_value_set_enum (value, GTK_SCROLL_NATURAL);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_cloth_canvas_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwClothCanvas *self = SW_CLOTH_CANVAS (object);

  switch (prop_id)
    {
    case PROP_STITCH_PX:
      sw_cloth_canvas_zoom_at (self, g_value_get_double (value), 0, self->camera.height);
      break;
    case PROP_FIT:
      sw_cloth_canvas_set_fit (self, g_value_get_boolean (value));
      break;
    case PROP_PURL_SIDE:
      show_purl_side (self, g_value_get_boolean (value));
      break;
    case PROP_HADJUSTMENT:
      set_adjustment (self, &self->hadjustment, g_value_get_object (value));
      break;
    case PROP_VADJUSTMENT:
      set_adjustment (self, &self->vadjustment, g_value_get_object (value));
      break;
    case PROP_HSCROLL_POLICY:
    case PROP_VSCROLL_POLICY:
      break; /* the cloth has no size of its own: it is seen through the view */
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_cloth_canvas_dispose (GObject *object)
{
  SwClothCanvas *self = SW_CLOTH_CANVAS (object);

  sw_cloth_handle_let_go (self);
  set_adjustment (self, &self->hadjustment, NULL);
  set_adjustment (self, &self->vadjustment, NULL);
  g_clear_pointer (&self->tiles, sw_cloth_tiles_free);

  G_OBJECT_CLASS (sw_cloth_canvas_parent_class)->dispose (object);
}

static void
add_key (GtkWidgetClass *klass, guint key, GdkModifierType modifiers, const char *action)
{
  gtk_widget_class_add_binding_action (klass, key, modifiers, action, NULL);
}

static void
add_actions (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "cloth.zoom-in", NULL, zoom_in_cb);
  gtk_widget_class_install_action (klass, "cloth.zoom-out", NULL, zoom_out_cb);
  gtk_widget_class_install_property_action (klass, "cloth.fit", "fit");
  gtk_widget_class_install_property_action (klass, "cloth.purl-side", "purl-side");
  add_key (klass, GDK_KEY_plus, 0, "cloth.zoom-in");
  add_key (klass, GDK_KEY_equal, 0, "cloth.zoom-in");
  add_key (klass, GDK_KEY_KP_Add, 0, "cloth.zoom-in");
  add_key (klass, GDK_KEY_minus, 0, "cloth.zoom-out");
  add_key (klass, GDK_KEY_KP_Subtract, 0, "cloth.zoom-out");
  add_key (klass, GDK_KEY_0, 0, "cloth.fit");
  add_key (klass, GDK_KEY_KP_0, 0, "cloth.fit");
}

static void
sw_cloth_canvas_class_init (SwClothCanvasClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_cloth_canvas_get_property;
  object_class->set_property = sw_cloth_canvas_set_property;
  object_class->dispose = sw_cloth_canvas_dispose;
  widget_class->snapshot = sw_cloth_canvas_snapshot;
  widget_class->size_allocate = sw_cloth_canvas_size_allocate;
  SW_PICTURE_VIEW_CLASS (klass)->paint = sw_cloth_canvas_paint;
  SW_PICTURE_VIEW_CLASS (klass)->is_painted = sw_cloth_canvas_is_painted;
  SW_PICTURE_VIEW_CLASS (klass)->updated = sw_cloth_canvas_updated;
  SW_PICTURE_VIEW_CLASS (klass)->catch_up = catch_up;
  SW_PICTURE_VIEW_CLASS (klass)->describe = sw_cloth_canvas_describe;

  props[PROP_STITCH_PX] = g_param_spec_double ("stitch-px", NULL, NULL, SW_CAMERA_LEAST_PX, SW_CAMERA_MOST_PX, 12, flags);
  props[PROP_FIT] = g_param_spec_boolean ("fit", NULL, NULL, TRUE, flags);
  props[PROP_PURL_SIDE] = g_param_spec_boolean ("purl-side", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
  g_object_class_override_property (object_class, PROP_HADJUSTMENT, "hadjustment");
  g_object_class_override_property (object_class, PROP_VADJUSTMENT, "vadjustment");
  g_object_class_override_property (object_class, PROP_HSCROLL_POLICY, "hscroll-policy");
  g_object_class_override_property (object_class, PROP_VSCROLL_POLICY, "vscroll-policy");

  add_actions (widget_class);
  gtk_widget_class_set_css_name (widget_class, "cloth");
}

static void
sw_cloth_canvas_init (SwClothCanvas *self)
{
  self->tiles = sw_cloth_tiles_new (painted_cb, self);
  self->fit = TRUE;
  self->camera = (SwClothCamera){ .stitch = 12, .gauge = 0.75, .row = -SW_CAMERA_MARGIN };
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  sw_cloth_handle_init (self);
}
