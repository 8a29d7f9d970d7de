/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-picture-view.h"

#include "app/parts/sw-frame-times.h"
#include "app/parts/sw-seen.h"
#include "app/parts/sw-texture.h"

#include <adwaita.h>

typedef struct
{
  SwPainter *painter; /* NULL once disposed of */
  gulong dark_id;
  SwLook look;
} SwPictureViewPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (SwPictureView, sw_picture_view, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_LIVE,
  PROP_INCHES,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static SwPictureViewPrivate *
private_of (SwPictureView *self)
{
  return sw_picture_view_get_instance_private (self);
}

static gboolean
fill (GtkWidget *widget, SwPainting *painting)
{
  SwPictureView *self = SW_PICTURE_VIEW (widget);
  SwPictureViewClass *klass = SW_PICTURE_VIEW_GET_CLASS (self);

  painting->look = private_of (self)->look;
  return klass->is_painted == NULL || klass->is_painted (self);
}

static void
sw_picture_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SwPictureViewPrivate *priv = private_of (SW_PICTURE_VIEW (widget));
  const SwPainting *painting;
  GdkTexture *texture = sw_painter_get (priv->painter, &painting);

  if (texture == NULL)
    return;
  sw_texture_append (widget, snapshot, texture, &GRAPHENE_RECT_INIT (0, 0, (float) painting->width, (float) painting->height));
  sw_frame_times_expect (widget, painting->edit_time);
}

static void
sw_picture_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  sw_picture_view_repaint (SW_PICTURE_VIEW (widget));
}

static void
describe (gpointer view)
{
  SwPictureView *self = view;
  SwPictureViewClass *klass = SW_PICTURE_VIEW_GET_CLASS (self);
  SwForecast *forecast = sw_picture_view_get_forecast (self);
  g_autofree char *words = NULL;

  if (klass->describe == NULL || forecast == NULL)
    return;
  words = klass->describe (self, forecast);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}

static void
dark_changed_cb (SwPictureView *self)
{
  private_of (self)->look.dark = adw_style_manager_get_dark (adw_style_manager_get_default ());
  sw_picture_view_repaint (self);
}

static void
set_live (SwPictureView *self, SwLive *live)
{
  SwPictureViewPrivate *priv = private_of (self);
  SwPictureViewClass *klass = SW_PICTURE_VIEW_GET_CLASS (self);
  SwLive *before = sw_painter_get_live (priv->painter);

  if (before == live)
    return;
  if (before != NULL)
    {
      g_signal_handlers_disconnect_by_data (before, self);
      sw_seen_disconnect (GTK_WIDGET (self), before);
    }
  sw_painter_set_live (priv->painter, live);
  if (live == NULL)
    return;
  sw_seen_connect (GTK_WIDGET (self), live, "told", describe);
  if (klass->updated != NULL)
    g_signal_connect_swapped (live, "updated", G_CALLBACK (klass->updated), self);
  if (klass->updated != NULL && sw_live_get_forecast (live) != NULL)
    klass->updated (self);
  describe (self);
}

static void
sw_picture_view_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwPictureViewPrivate *priv = private_of (SW_PICTURE_VIEW (object));

  switch (prop_id)
    {
    case PROP_LIVE:
      g_value_set_object (value, sw_painter_get_live (priv->painter));
      break;
    case PROP_INCHES:
      g_value_set_boolean (value, priv->look.inches);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_picture_view_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwPictureView *self = SW_PICTURE_VIEW (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      set_live (self, g_value_get_object (value));
      break;
    case PROP_INCHES:
      private_of (self)->look.inches = g_value_get_boolean (value);
      sw_picture_view_repaint (self);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

/* Only now is it known whose picture it is. */
static void
sw_picture_view_constructed (GObject *object)
{
  SwPictureView *self = SW_PICTURE_VIEW (object);
  SwPictureViewPrivate *priv = private_of (self);

  G_OBJECT_CLASS (sw_picture_view_parent_class)->constructed (object);
  priv->painter = sw_painter_new (GTK_WIDGET (self), fill, SW_PICTURE_VIEW_GET_CLASS (self)->paint);
  sw_painter_set_catch_up (priv->painter, SW_PICTURE_VIEW_GET_CLASS (self)->catch_up);
  priv->dark_id = g_signal_connect_swapped (adw_style_manager_get_default (), "notify::dark", G_CALLBACK (dark_changed_cb), self);
  dark_changed_cb (self);
}

static void
sw_picture_view_dispose (GObject *object)
{
  SwPictureView *self = SW_PICTURE_VIEW (object);
  SwPictureViewPrivate *priv = private_of (self);

  if (priv->painter != NULL)
    set_live (self, NULL);
  g_clear_pointer (&priv->painter, sw_painter_free);
  g_clear_signal_handler (&priv->dark_id, adw_style_manager_get_default ());

  G_OBJECT_CLASS (sw_picture_view_parent_class)->dispose (object);
}

static void
sw_picture_view_class_init (SwPictureViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_picture_view_get_property;
  object_class->set_property = sw_picture_view_set_property;
  object_class->constructed = sw_picture_view_constructed;
  object_class->dispose = sw_picture_view_dispose;
  widget_class->snapshot = sw_picture_view_snapshot;
  widget_class->size_allocate = sw_picture_view_size_allocate;

  props[PROP_LIVE] = g_param_spec_object ("live", NULL, NULL, SW_TYPE_LIVE, flags);
  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sw_picture_view_init (SwPictureView *self)
{
  SwPictureViewPrivate *priv = private_of (self);

  priv->look = sw_look_plain;
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

SwLive *
sw_picture_view_get_live (SwPictureView *self)
{
  g_return_val_if_fail (SW_IS_PICTURE_VIEW (self), NULL);
  return private_of (self)->painter != NULL ? sw_painter_get_live (private_of (self)->painter) : NULL;
}

SwForecast *
sw_picture_view_get_forecast (SwPictureView *self)
{
  SwLive *live = sw_picture_view_get_live (self);

  return live != NULL ? sw_live_get_forecast (live) : NULL;
}

SwLook *
sw_picture_view_get_look (SwPictureView *self)
{
  g_return_val_if_fail (SW_IS_PICTURE_VIEW (self), NULL);
  return &private_of (self)->look;
}

void
sw_picture_view_hold_frames (SwPictureView *self)
{
  g_return_if_fail (SW_IS_PICTURE_VIEW (self));

  sw_painter_hold_frames (private_of (self)->painter);
}

void
sw_picture_view_repaint (SwPictureView *self)
{
  g_return_if_fail (SW_IS_PICTURE_VIEW (self));

  sw_painter_ask (private_of (self)->painter);
}
