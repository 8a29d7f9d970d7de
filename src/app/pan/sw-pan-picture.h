/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-live.h"
#include "draw/sw-pan-geometry.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * SwPanPicture: the pan with the dyed skein in it, beneath a canvas. The
 * skein is painted off the main thread; until it is there, the last one is
 * shown where it belongs now. So zooming and dragging never wait for it.
 *
 * Property "turning" (read-only): the skein is being turned over.
 */
#define SW_TYPE_PAN_PICTURE (sw_pan_picture_get_type ())
G_DECLARE_FINAL_TYPE (SwPanPicture, sw_pan_picture, SW, PAN_PICTURE, GtkWidget)

GtkWidget *sw_pan_picture_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* @live: (nullable) */
void sw_pan_picture_set_live (SwPanPicture *self, SwLive *live);

/* Of a picture as large as the widget. */
void sw_pan_picture_set_geometry (SwPanPicture *self, const SwPanGeometry *geometry);
void sw_pan_picture_set_inches (SwPanPicture *self, gboolean inches);

/* Turns the skein over to that face, before the dyer's eyes unless animations are off. */
void sw_pan_picture_show_face (SwPanPicture *self, gboolean second_face);
gboolean sw_pan_picture_is_turning (SwPanPicture *self);

G_END_DECLS
