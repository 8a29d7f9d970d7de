/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/cloth/sw-cloth-view.h"

struct _SwClothView
{
  SwPictureView parent_instance;
};

G_DEFINE_FINAL_TYPE (SwClothView, sw_cloth_view, SW_TYPE_PICTURE_VIEW)

enum
{
  PROP_0,
  PROP_STITCH_PX,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static void
sw_cloth_view_paint (cairo_t *cr, const SwPainting *painting)
{
  sw_draw_cloth (cr, painting->forecast, painting->width, painting->height, &painting->look);
}

static char *
sw_cloth_view_describe (SwPictureView *view, SwForecast *forecast)
{
  return sw_pooling_sentence (&forecast->pooling);
}

static void
sw_cloth_view_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwPictureView *view = SW_PICTURE_VIEW (object);

  switch (prop_id)
    {
    case PROP_STITCH_PX:
      g_value_set_double (value, sw_picture_view_get_look (view)->stitch_px);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_cloth_view_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwPictureView *view = SW_PICTURE_VIEW (object);

  switch (prop_id)
    {
    case PROP_STITCH_PX:
      sw_picture_view_get_look (view)->stitch_px = g_value_get_double (value);
      sw_picture_view_repaint (view);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_cloth_view_class_init (SwClothViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = sw_cloth_view_get_property;
  object_class->set_property = sw_cloth_view_set_property;
  SW_PICTURE_VIEW_CLASS (klass)->paint = sw_cloth_view_paint;
  SW_PICTURE_VIEW_CLASS (klass)->describe = sw_cloth_view_describe;

  props[PROP_STITCH_PX] = g_param_spec_double ("stitch-px", NULL, NULL, 0, 200, 0, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
sw_cloth_view_init (SwClothView *self)
{
}
