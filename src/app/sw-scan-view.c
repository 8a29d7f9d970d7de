/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sw-scan-view.h"

/* Widths that a hand knitter casts on: a narrow scarf to a large jumper in the round. */
#define NARROWEST 20
#define WIDEST 320

struct _SwScanView
{
  SwPictureView parent_instance;
};

G_DEFINE_FINAL_TYPE (SwScanView, sw_scan_view, SW_TYPE_PICTURE_VIEW)

static void
sw_scan_view_paint (SwPictureView *view, cairo_t *cr, SwForecast *forecast, double width, double height, const SwLook *look)
{
  sw_draw_scan (cr, forecast, NARROWEST, WIDEST, width, height, look);
}

static void
sw_scan_view_class_init (SwScanViewClass *klass)
{
  SW_PICTURE_VIEW_CLASS (klass)->paint = sw_scan_view_paint;
}

static void
sw_scan_view_init (SwScanView *self)
{
}
