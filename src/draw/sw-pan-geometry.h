/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-look.h"

G_BEGIN_DECLS

/* Where is what in the pan picture: shared by the paint, hit-testing, the SVG for people and accessibility. */
typedef struct
{
  double x, y, width, height; /* px */
} SwBox;

typedef struct
{
  SwBox pan;   /* the pan's inner walls */
  SwBox skein; /* the laid skeins */
  SwBox ruler_x, ruler_y;
  double scale; /* px per cm */
} SwPanGeometry;

/* All of the pan and the skein fitted into the picture. */
void sw_pan_geometry (const SwSketch *sketch, double width, double height, SwPanGeometry *geometry);

/* A ruler this far from what it measures. */
#define SW_RULER_OFF_PX 6.0

/**
 * SwPanZoom: a part of the pan.
 * @zoom: how much larger than fitted, >= 1
 * @x_cm, @y_cm: the place in the middle of the picture
 */
typedef struct
{
  double zoom, x_cm, y_cm;
} SwPanZoom;

/**
 * sw_pan_geometry_zoomed:
 * @zoom: (inout): its middle is moved so that no more of what is around the
 *   pan is seen than when fitted; at a zoom of 1 it is the fitted geometry
 *
 * The rulers stay within the picture, over the pan if need be.
 */
void sw_pan_geometry_zoomed (const SwSketch *sketch, double width, double height, SwPanZoom *zoom, SwPanGeometry *geometry);

void sw_pan_to_px (const SwPanGeometry *geometry, double x_cm, double y_cm, double *x, double *y);
void sw_pan_to_cm (const SwPanGeometry *geometry, double x, double y, double *x_cm, double *y_cm);

/* How far a band's middle has moved along x at @y_cm, cm: positive slants lean right on the far side, never quite along the skein. */
double sw_pan_band_shift (const SwStep *step, double y_cm);

/* What of a picture of @width x @height is left to the pan by rulers that lie over it. */
SwBox sw_pan_room (const SwPanGeometry *geometry, double width, double height);

/* Traces a pour's outline, in px, onto the context's path. */
void sw_pan_trace_pour (cairo_t *cr, const SwPanGeometry *geometry, const SwSketch *sketch, const SwStep *step);

/* The topmost pour of the face that is up at @x, @y (px); 0 if none. */
guint sw_pan_pour_at (const SwPanGeometry *geometry, const SwSketch *sketch, gboolean second_face, double x, double y);

/* The topmost of the pours that lie there beneath the pour @above; of all of them if @above is 0. */
guint sw_pan_pour_below (const SwPanGeometry *geometry, const SwSketch *sketch, gboolean second_face, double x, double y, guint above);

/* Number a person sees on a pour: its place among the pours, from 1. */
guint sw_pan_pour_number (const SwSketch *sketch, guint step_id);

/* Whether the pour goes onto the second face: an odd number of flips before it. */
gboolean sw_pan_pour_on_second (const SwSketch *sketch, guint step_id);

G_END_DECLS
