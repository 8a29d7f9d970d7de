/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-sheet-pan.h"

#include "app/desk/sw-step-words.h"
#include "draw/sw-pan-geometry.h"

#include <glib/gi18n-lib.h>

struct _SwSheetPan
{
  SwPictureView parent_instance;

  guint step;
};

G_DEFINE_FINAL_TYPE (SwSheetPan, sw_sheet_pan, SW_TYPE_PICTURE_VIEW)

enum
{
  PROP_0,
  PROP_STEP,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

/* The step is in the look; the face is that on which it falls. */
static void
sw_sheet_pan_paint (cairo_t *cr, const SwPainting *painting)
{
  SwLook look = painting->look;

  look.second_face = look.selected != 0 && sw_pan_pour_on_second (painting->forecast->sketch, look.selected);
  sw_draw_pan (cr, painting->forecast, painting->width, painting->height, &look);
}

static char *
sw_sheet_pan_describe (SwPictureView *view, SwForecast *forecast)
{
  const SwStep *step = sw_sketch_find_step (forecast->sketch, SW_SHEET_PAN (view)->step);
  const SwSystem system = sw_picture_view_get_look (view)->inches ? SW_SYSTEM_US : SW_SYSTEM_METRIC;

  return step != NULL ? sw_step_reading (forecast->sketch, step, system) : g_strdup ("");
}

static void
sw_sheet_pan_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  switch (prop_id)
    {
    case PROP_STEP:
      g_value_set_uint (value, SW_SHEET_PAN (object)->step);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_sheet_pan_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  switch (prop_id)
    {
    case PROP_STEP:
      sw_sheet_pan_set_step (SW_SHEET_PAN (object), g_value_get_uint (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_sheet_pan_class_init (SwSheetPanClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = sw_sheet_pan_get_property;
  object_class->set_property = sw_sheet_pan_set_property;
  SW_PICTURE_VIEW_CLASS (klass)->paint = sw_sheet_pan_paint;
  SW_PICTURE_VIEW_CLASS (klass)->describe = sw_sheet_pan_describe;

  props[PROP_STEP] = g_param_spec_uint ("step", NULL, NULL, 0, G_MAXUINT, 0, G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
sw_sheet_pan_init (SwSheetPan *self)
{
}

void
sw_sheet_pan_set_step (SwSheetPan *self, guint step)
{
  SwForecast *forecast;
  g_autofree char *words = NULL;

  g_return_if_fail (SW_IS_SHEET_PAN (self));

  if (self->step == step)
    return;
  self->step = step;
  sw_picture_view_get_look (SW_PICTURE_VIEW (self))->selected = step;
  forecast = sw_picture_view_get_forecast (SW_PICTURE_VIEW (self));
  if (forecast != NULL)
    {
      words = sw_sheet_pan_describe (SW_PICTURE_VIEW (self), forecast);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
    }
  sw_picture_view_repaint (SW_PICTURE_VIEW (self));
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_STEP]);
}
