/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sw-strip-view.h"

struct _SwStripView
{
  SwPictureView parent_instance;
};

G_DEFINE_FINAL_TYPE (SwStripView, sw_strip_view, SW_TYPE_PICTURE_VIEW)

static void
sw_strip_view_paint (SwPictureView *view, cairo_t *cr, SwForecast *forecast, double width, double height, const SwLook *look)
{
  sw_draw_strip (cr, forecast, width, height, look);
}

static void
sw_strip_view_class_init (SwStripViewClass *klass)
{
  SW_PICTURE_VIEW_CLASS (klass)->paint = sw_strip_view_paint;
}

static void
sw_strip_view_init (SwStripView *self)
{
}
