/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/parts/sw-painter.h"

G_BEGIN_DECLS

/**
 * SwPictureView: shows one picture of a live forecast. Painting is the
 * renderer's, beside the main thread; the view keeps what was painted until
 * the next is there, so that an overlay above it costs nothing.
 *
 * Properties: "live" (SwLive), "inches" (rulers and lengths in inches).
 */
#define SW_TYPE_PICTURE_VIEW (sw_picture_view_get_type ())
G_DECLARE_DERIVABLE_TYPE (SwPictureView, sw_picture_view, SW, PICTURE_VIEW, GtkWidget)

/**
 * SwPictureViewClass:
 * @paint: paints the picture, in a thread of its own: it knows no view
 * @is_painted: (nullable): whether there is something to paint now
 * @updated: (nullable): there is a newer forecast
 * @catch_up: (nullable): a frame is held for what the view paints by itself
 * @describe: (nullable): what the picture shows, as a sentence for a screen reader (transfer full)
 */
struct _SwPictureViewClass
{
  GtkWidgetClass parent_class;

  SwPainterPaint paint;
  gboolean (*is_painted) (SwPictureView *self);
  void (*updated) (SwPictureView *self);
  SwPainterCatchUp catch_up;
  char *(*describe) (SwPictureView *self, SwForecast *forecast);
};

SwLive *sw_picture_view_get_live (SwPictureView *self);

/* (transfer none) (nullable): what is or will be shown */
SwForecast *sw_picture_view_get_forecast (SwPictureView *self);

/**
 * sw_picture_view_get_look:
 * Returns: the look; whoever changes it calls sw_picture_view_repaint(). "dark" and "inches" are kept by the view
 */
SwLook *sw_picture_view_get_look (SwPictureView *self);

/* The view has begun to paint something by itself: see @catch_up. */
void sw_picture_view_hold_frames (SwPictureView *self);

/* What was painted is no longer good. */
void sw_picture_view_repaint (SwPictureView *self);

G_END_DECLS
