/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-pan-picture.h"

#include "app/parts/sw-frame-times.h"
#include "app/parts/sw-painter.h"
#include "app/parts/sw-texture.h"
#include "draw/sw-draw-pan.h"

#include <adwaita.h>
#include <math.h>

#define TURN_MS 420
#define SHADOW_PX 14 /* the skein's shadow reaches so far */

/* What stays while the hand moves is painted once: replaying its lines and letters took longer than all the rest of a frame. */
typedef enum
{
  PART_GROUND,
  PART_RULER_LEFT,
  PART_RULER_BELOW,
  N_PARTS,
} PartId;

typedef struct
{
  GdkTexture *texture; /* NULL: to be painted */
  SwBox box;           /* whole px */
} Part;

struct _SwPanPicture
{
  GtkWidget parent_instance;

  SwPainter *painter;
  Part parts[N_PARTS]; /* by PartId */
  gulong dark_id;
  SwPanGeometry geometry;
  SwLook look;
  gboolean second_face; /* wanted; look.second_face is the one that is painted */
  AdwAnimation *turn;
  double turned; /* 0 .. 1 while turning */
};

G_DEFINE_FINAL_TYPE (SwPanPicture, sw_pan_picture, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_TURNING,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static void
paint (cairo_t *cr, const SwPainting *painting)
{
  sw_draw_pan_parts (cr, painting->forecast, &painting->geometry, SW_PAN_SKEIN, painting->width, painting->height, &painting->look);
}

/* What of the skein and its shadow is in the picture, in whole px; empty if nothing is. */
static SwBox
visible_part (const SwPanGeometry *geometry, double width, double height)
{
  const SwBox *skein = &geometry->skein;
  const double x0 = floor (CLAMP (skein->x - SHADOW_PX, 0, width)), x1 = ceil (CLAMP (skein->x + skein->width + SHADOW_PX, 0, width));
  const double y0 = floor (CLAMP (skein->y - SHADOW_PX, 0, height)), y1 = ceil (CLAMP (skein->y + skein->height + SHADOW_PX, 0, height));

  return (SwBox){ x0, y0, x1 - x0, y1 - y0 };
}

static gboolean
fill (GtkWidget *widget, SwPainting *painting)
{
  SwPanPicture *self = SW_PAN_PICTURE (widget);

  if (self->geometry.scale <= 0)
    return FALSE;
  painting->geometry = self->geometry;
  painting->look = self->look;
  painting->part = visible_part (&self->geometry, painting->width, painting->height);
  return painting->part.width >= 1 && painting->part.height >= 1;
}

static SwForecast *
forecast_of (SwPanPicture *self)
{
  SwLive *live = sw_painter_get_live (self->painter);

  return live != NULL ? sw_live_get_forecast (live) : NULL;
}

/* Showing */

/* Rulers keep to two edges: the rest of a picture of them would be clear. */
static SwBox
part_box (SwPanPicture *self, PartId id)
{
  const double width = gtk_widget_get_width (GTK_WIDGET (self)), height = gtk_widget_get_height (GTK_WIDGET (self));
  const SwBox *beside = &self->geometry.ruler_y, *under = &self->geometry.ruler_x;
  const double left = CLAMP (ceil (beside->x + beside->width + SW_RULER_OFF_PX), 0, width), below = CLAMP (floor (under->y - SW_RULER_OFF_PX), 0, height);

  if (id == PART_GROUND)
    return (SwBox){ 0, 0, width, height };
  if (under->width <= 0)
    return (SwBox){ 0 };
  if (id == PART_RULER_LEFT)
    return (SwBox){ 0, 0, left, height };
  return (SwBox){ left, below, width - left, height - below };
}

static GdkTexture *
paint_part (SwPanPicture *self, const SwForecast *forecast, PartId id, const SwBox *box)
{
  const int scale = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int) box->width * scale, (int) box->height * scale);
  cairo_t *cr;

  cairo_surface_set_device_scale (surface, scale, scale);
  cr = cairo_create (surface);
  cairo_translate (cr, -box->x, -box->y);
  sw_draw_pan_parts (cr, forecast, &self->geometry, id == PART_GROUND ? SW_PAN_GROUND : SW_PAN_RULERS,
                     gtk_widget_get_width (GTK_WIDGET (self)), gtk_widget_get_height (GTK_WIDGET (self)), &self->look);
  cairo_destroy (cr);
  return sw_texture_new (surface);
}

static void
snapshot_part (SwPanPicture *self, GtkSnapshot *snapshot, const SwForecast *forecast, PartId id)
{
  Part *part = &self->parts[id];
  const SwBox *box = &part->box;

  if (part->texture == NULL)
    {
      part->box = part_box (self, id);
      if (box->width < 1 || box->height < 1)
        return;
      part->texture = paint_part (self, forecast, id, box);
    }
  sw_texture_append (GTK_WIDGET (self), snapshot, part->texture, &GRAPHENE_RECT_INIT ((float) box->x, (float) box->y, (float) box->width, (float) box->height));
}

static void
drop_parts (SwPanPicture *self)
{
  for (int id = 0; id < N_PARTS; id++)
    g_clear_object (&self->parts[id].texture);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* Painted for another zoom, it is stretched to where the skein is now. While turning it is seen ever more edge on, then from behind. */
static void
snapshot_skein (SwPanPicture *self, GtkSnapshot *snapshot, GdkTexture *texture, const SwPainting *painted)
{
  const SwBox *now = &self->geometry.skein, *then = &painted->geometry.skein;
  const double sx = now->width / then->width, sy = now->height / then->height;
  const float middle = (float) (now->y + now->height / 2);
  const graphene_rect_t box = GRAPHENE_RECT_INIT ((float) (now->x + (painted->part.x - then->x) * sx), (float) (now->y + (painted->part.y - then->y) * sy),
                                                  (float) (painted->part.width * sx), (float) (painted->part.height * sy));

  gtk_snapshot_save (snapshot);
  if (sw_pan_picture_is_turning (self))
    {
      gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (0, middle));
      gtk_snapshot_scale (snapshot, 1, (float) MAX (fabs (cos (self->turned * G_PI)), 0.04));
      gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (0, -middle));
    }
  sw_texture_append (GTK_WIDGET (self), snapshot, texture, &box);
  gtk_snapshot_restore (snapshot);
  sw_frame_times_expect (GTK_WIDGET (self), painted->edit_time);
}

static void
sw_pan_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SwPanPicture *self = SW_PAN_PICTURE (widget);
  SwForecast *forecast = forecast_of (self);
  const SwPainting *painting;
  GdkTexture *texture = sw_painter_get (self->painter, &painting);

  if (forecast == NULL || self->geometry.scale <= 0)
    return;
  snapshot_part (self, snapshot, forecast, PART_GROUND);
  if (texture != NULL)
    snapshot_skein (self, snapshot, texture, painting);
  snapshot_part (self, snapshot, forecast, PART_RULER_LEFT);
  snapshot_part (self, snapshot, forecast, PART_RULER_BELOW);
}

/* Turning over */

static void
turn_to (double value, gpointer user_data)
{
  SwPanPicture *self = user_data;

  self->turned = value;
  if (value >= 0.5 && self->look.second_face != self->second_face)
    {
      self->look.second_face = self->second_face;
      sw_painter_ask (self->painter);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
turned_cb (SwPanPicture *self)
{
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_TURNING]);
}

static void
dark_changed_cb (SwPanPicture *self)
{
  self->look.dark = adw_style_manager_get_dark (adw_style_manager_get_default ());
  drop_parts (self);
}

/* Lifecycle */

static void
sw_pan_picture_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  switch (prop_id)
    {
    case PROP_TURNING:
      g_value_set_boolean (value, sw_pan_picture_is_turning (SW_PAN_PICTURE (object)));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_pan_picture_dispose (GObject *object)
{
  SwPanPicture *self = SW_PAN_PICTURE (object);

  g_clear_signal_handler (&self->dark_id, adw_style_manager_get_default ());
  g_clear_pointer (&self->painter, sw_painter_free);
  drop_parts (self);
  g_clear_object (&self->turn);

  G_OBJECT_CLASS (sw_pan_picture_parent_class)->dispose (object);
}

static void
sw_pan_picture_class_init (SwPanPictureClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = sw_pan_picture_get_property;
  object_class->dispose = sw_pan_picture_dispose;
  widget_class->snapshot = sw_pan_picture_snapshot;

  props[PROP_TURNING] = g_param_spec_boolean ("turning", NULL, NULL, FALSE, G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  /* The canvas above it speaks for it. */
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
sw_pan_picture_init (SwPanPicture *self)
{
  self->look = sw_look_plain;
  self->look.marks = FALSE;
  self->painter = sw_painter_new (GTK_WIDGET (self), fill, paint);
  self->turn = adw_timed_animation_new (GTK_WIDGET (self), 0, 1, TURN_MS, adw_callback_animation_target_new (turn_to, self, NULL));
  adw_timed_animation_set_easing (ADW_TIMED_ANIMATION (self->turn), ADW_EASE_IN_OUT_CUBIC);
  g_signal_connect_object (self->turn, "done", G_CALLBACK (turned_cb), self, G_CONNECT_SWAPPED);
  self->dark_id = g_signal_connect_swapped (adw_style_manager_get_default (), "notify::dark", G_CALLBACK (dark_changed_cb), self);
  dark_changed_cb (self);
  g_signal_connect (self, "notify::scale-factor", G_CALLBACK (drop_parts), NULL);
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
}

GtkWidget *
sw_pan_picture_new (void)
{
  return g_object_new (SW_TYPE_PAN_PICTURE, NULL);
}

void
sw_pan_picture_set_live (SwPanPicture *self, SwLive *live)
{
  g_return_if_fail (SW_IS_PAN_PICTURE (self));

  if (self->painter != NULL)
    sw_painter_set_live (self->painter, live);
}

void
sw_pan_picture_set_geometry (SwPanPicture *self, const SwPanGeometry *geometry)
{
  g_return_if_fail (SW_IS_PAN_PICTURE (self));

  self->geometry = *geometry;
  drop_parts (self);
  sw_painter_ask (self->painter);
}

void
sw_pan_picture_set_inches (SwPanPicture *self, gboolean inches)
{
  g_return_if_fail (SW_IS_PAN_PICTURE (self));

  self->look.inches = inches;
  drop_parts (self);
}

void
sw_pan_picture_show_face (SwPanPicture *self, gboolean second_face)
{
  g_return_if_fail (SW_IS_PAN_PICTURE (self));

  if (self->second_face == second_face)
    return;
  self->second_face = second_face;
  self->turned = 0;
  adw_animation_play (self->turn);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_TURNING]);
}

gboolean
sw_pan_picture_is_turning (SwPanPicture *self)
{
  g_return_val_if_fail (SW_IS_PAN_PICTURE (self), FALSE);
  return self->turn != NULL && adw_animation_get_state (self->turn) == ADW_ANIMATION_PLAYING;
}
