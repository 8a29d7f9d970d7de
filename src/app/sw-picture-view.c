/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sw-picture-view.h"

#include "app/sw-frame-times.h"

#include <adwaita.h>

typedef struct
{
  SwLive *live;
  gulong updated_id;
  gulong dark_id;
  SwLook look;
  GdkTexture *painted; /* NULL: to be painted anew */
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

/* Paint at the screen's own pixels, without a copy between cairo and GDK. */
static GdkTexture *
paint_texture (SwPictureView *self, SwForecast *forecast, int width, int height, int scale)
{
  SwPictureViewPrivate *priv = private_of (self);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width * scale, height * scale);
  g_autoptr (GBytes) bytes = NULL;
  cairo_t *cr;
  int stride;

  cairo_surface_set_device_scale (surface, scale, scale);
  cr = cairo_create (surface);
  SW_PICTURE_VIEW_GET_CLASS (self)->paint (self, cr, forecast, width, height, &priv->look);
  cairo_destroy (cr);
  cairo_surface_flush (surface);

  stride = cairo_image_surface_get_stride (surface);
  bytes = g_bytes_new_with_free_func (cairo_image_surface_get_data (surface), (gsize) stride * (gsize) (height * scale),
                                      (GDestroyNotify) cairo_surface_destroy, surface);
  return gdk_memory_texture_new (width * scale, height * scale, GDK_MEMORY_DEFAULT, bytes, (gsize) stride);
}

static void
sw_picture_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SwPictureView *self = SW_PICTURE_VIEW (widget);
  SwPictureViewPrivate *priv = private_of (self);
  SwForecast *forecast = sw_picture_view_get_forecast (self);
  int width = gtk_widget_get_width (widget);
  int height = gtk_widget_get_height (widget);

  if (forecast == NULL || width <= 0 || height <= 0)
    return;

  if (priv->painted == NULL)
    {
      priv->painted = paint_texture (self, forecast, width, height, gtk_widget_get_scale_factor (widget));
      sw_frame_times_expect (widget, sw_live_get_edit_time (priv->live));
    }
  gtk_snapshot_append_texture (snapshot, priv->painted, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
}

static void
sw_picture_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  sw_picture_view_repaint (SW_PICTURE_VIEW (widget));
}

static void
updated_cb (SwPictureView *self)
{
  SwPictureViewClass *klass = SW_PICTURE_VIEW_GET_CLASS (self);
  SwForecast *forecast = sw_picture_view_get_forecast (self);
  g_autofree char *words = NULL;

  sw_picture_view_repaint (self);
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

  if (priv->live == live)
    return;
  if (priv->live != NULL)
    g_clear_signal_handler (&priv->updated_id, priv->live);
  g_set_object (&priv->live, live);
  if (live != NULL)
    {
      priv->updated_id = g_signal_connect_swapped (live, "updated", G_CALLBACK (updated_cb), self);
      updated_cb (self);
    }
}

static void
sw_picture_view_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwPictureViewPrivate *priv = private_of (SW_PICTURE_VIEW (object));

  switch (prop_id)
    {
    case PROP_LIVE:
      g_value_set_object (value, priv->live);
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

static void
sw_picture_view_dispose (GObject *object)
{
  SwPictureView *self = SW_PICTURE_VIEW (object);
  SwPictureViewPrivate *priv = private_of (self);

  set_live (self, NULL);
  g_clear_signal_handler (&priv->dark_id, adw_style_manager_get_default ());
  g_clear_object (&priv->painted);

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
  priv->dark_id = g_signal_connect_swapped (adw_style_manager_get_default (), "notify::dark", G_CALLBACK (dark_changed_cb), self);
  dark_changed_cb (self);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  g_signal_connect (self, "notify::scale-factor", G_CALLBACK (sw_picture_view_repaint), NULL);
}

SwLive *
sw_picture_view_get_live (SwPictureView *self)
{
  g_return_val_if_fail (SW_IS_PICTURE_VIEW (self), NULL);
  return private_of (self)->live;
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
sw_picture_view_repaint (SwPictureView *self)
{
  g_return_if_fail (SW_IS_PICTURE_VIEW (self));

  g_clear_object (&private_of (self)->painted);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
