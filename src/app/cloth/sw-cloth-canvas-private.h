/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-cloth-camera.h"
#include "app/desk/sw-cloth-tiles.h"
#include "app/cloth/sw-cloth-canvas.h"

G_BEGIN_DECLS

#define SW_CLOTH_ZOOM_STEP 1.25

struct _SwClothCanvas
{
  SwPictureView parent_instance;

  SwClothCamera camera;
  SwClothTiles *tiles; /* NULL once disposed of */
  gint64 looked_at;    /* g_get_monotonic_time() at which another sight was looked at */
  GtkAdjustment *hadjustment, *vadjustment;
  gboolean showing; /* the adjustments are being set from the camera */
  gboolean fit;

  /* the hand */
  double pointer_x, pointer_y;
  double pinched_from; /* stitch px when two fingers were put down */
  gboolean over_handle;
  gboolean pulling;      /* the handle is held; the document has a group open */
  double pulled_columns; /* from the pointer to the edge when it was taken hold of */
};

/* The camera has moved: scroll bars and picture follow. */
void sw_cloth_canvas_moved (SwClothCanvas *self);

/* The cloth or the view has another size. */
void sw_cloth_canvas_remeasure (SwClothCanvas *self);

void sw_cloth_canvas_set_fit (SwClothCanvas *self, gboolean fit);

/* Stitches become @stitch px wide; what is at @x, @y stays. */
void sw_cloth_canvas_zoom_at (SwClothCanvas *self, double stitch, double x, double y);

/* Gestures on the canvas and the handle on the cloth's right edge. */
void sw_cloth_handle_init (SwClothCanvas *self);
void sw_cloth_handle_append (SwClothCanvas *self, GtkSnapshot *snapshot);

/* Ends a pull that is under way. */
void sw_cloth_handle_let_go (SwClothCanvas *self);

G_END_DECLS
