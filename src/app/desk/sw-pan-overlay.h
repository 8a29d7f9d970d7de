/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-pan-handles.h"
#include "app/desk/sw-pan-snap.h"
#include "draw/sw-pan-geometry.h"

#include <cairo.h>

G_BEGIN_DECLS

/*
 * What lies over the picture of the pan while it is worked on: outlines and
 * numbers of the pours as they are now, handles, guides, the measure at the
 * hand. It follows the hand at once; the dyed picture beneath comes after it.
 */

/* Sizes for the hand, px. */
#define SW_OVERLAY_GRIP_PX 6.5 /* half of what takes a handle */
#define SW_OVERLAY_TURN_PX 22.0

typedef struct
{
  const SwSketch *sketch;
  const SwPanGeometry *geometry;
  gboolean dark, second_face, inches;
  const guint *selected; /* ids */
  gsize n_selected;
  guint hovered;         /* id; 0 none */
  guint grips;           /* id of the pour that shows its handles; 0 none */
  SwHandle held;         /* the handle in hand or under the pointer */
  const SwBox *marquee;  /* px; NULL none */
  SwSnapHit guides[2];   /* by axis; SW_SNAP_NONE for none */
  const char *measure;   /* at the hand; NULL none */
  double hand_x, hand_y; /* px */
  gboolean hand_in;      /* the pointer is over the pan: the rulers show where */
  const char *hint;      /* in an empty pan; NULL none */
  double accent[3];      /* sRGB, 0..1 */
} SwPanOverlay;

/* How large the grips are in the pan. */
SwGrips sw_pan_overlay_grips (const SwPanGeometry *geometry);

/**
 * sw_pan_overlay_band:
 * @width, @height: of the picture
 * Returns: the part of it, from edge to edge and in whole px, outside of which
 *   nothing is drawn: what a frame must paint anew when the overlay changes
 */
SwBox sw_pan_overlay_band (const SwPanOverlay *overlay, double width, double height);

void sw_pan_overlay_draw (cairo_t *cr, const SwPanOverlay *overlay, double width, double height);

G_END_DECLS
