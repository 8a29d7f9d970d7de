/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-live.h"
#include "draw/sw-look.h"
#include "draw/sw-pan-geometry.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/*
 * Paints a widget's picture of a live forecast beside the main thread; what
 * was painted last is shown until the next is there. While something is under
 * way, each frame is held a moment for it (sw-frame-hold.h).
 */
typedef struct _SwPainter SwPainter;

/* What to paint: values, so that the widget may go on meanwhile. */
typedef struct
{
  SwForecast *forecast; /* (owned) */
  double width, height; /* of the whole picture, px */
  SwBox part;           /* of it that is painted, whole px */
  int scale;            /* device pixels per px */
  SwLook look;
  SwPanGeometry geometry; /* of the pan alone */
  gint64 edit_time;       /* of the newest edit in the forecast */
} SwPainting;

/* In a thread of its own; the picture's upper left corner is at the origin. */
typedef void (*SwPainterPaint) (cairo_t *cr, const SwPainting *painting);

/**
 * SwPainterFill: in the main thread
 * @painting: (inout): with forecast, width, height, part (all of it), scale and edit time set; look and more to be set
 * Returns: FALSE if there is nothing to paint
 */
typedef gboolean (*SwPainterFill) (GtkWidget *widget, SwPainting *painting);

/* @widget: owns the painter, and is drawn anew when something was painted */
SwPainter *sw_painter_new (GtkWidget *widget, SwPainterFill fill, SwPainterPaint paint) G_GNUC_WARN_UNUSED_RESULT;
void sw_painter_free (SwPainter *self);

/**
 * SwPainterCatchUp: within a frame that is held
 * @until_us: g_get_monotonic_time() at which to give up
 * Returns: whether nothing more is under way
 */
typedef gboolean (*SwPainterCatchUp) (GtkWidget *widget, gint64 until_us);

/* A widget that paints a part of its picture by itself: each frame waits for that, too. */
void sw_painter_set_catch_up (SwPainter *self, SwPainterCatchUp catch_up);

/* Something is under way: frames are held from now on until nothing is. */
void sw_painter_hold_frames (SwPainter *self);

/* (nullable): whose forecasts are painted; each is, from now on */
void sw_painter_set_live (SwPainter *self, SwLive *live);
SwLive *sw_painter_get_live (SwPainter *self);

/* Size, look or geometry have changed: paint anew. */
void sw_painter_ask (SwPainter *self);

/**
 * sw_painter_get:
 * @painting: (out): what it shows, for as long as the texture is current
 * Returns: (nullable) (transfer none): NULL before the first
 */
GdkTexture *sw_painter_get (SwPainter *self, const SwPainting **painting);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwPainter, sw_painter_free)

G_END_DECLS
