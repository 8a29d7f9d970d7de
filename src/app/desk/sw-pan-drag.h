/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-pan-handles.h"

G_BEGIN_DECLS

/*
 * What a pour becomes while it is dragged: a function of what it was at the
 * press and of how far the hand has gone, so that going back returns it.
 */
typedef enum
{
  SW_DRAG_STEADY = 1 << 0,  /* moves along one axis, turns by 15 degrees, keeps a corner's proportions, both sides alike */
  SW_DRAG_CENTRED = 1 << 1, /* stretches to both sides */
  SW_DRAG_DETENT = 1 << 2,  /* the turn catches at straight and at 45 degrees */
} SwDragFlags;

/**
 * sw_pan_drag:
 * @from: the place at the press
 * @handle: what was taken
 * @dx, @dy: how far it was taken, cm
 * Returns: the new place, tidied
 *
 * Stretching leaves the opposite side where it was, and stops at it.
 */
SwPourPlace sw_pan_drag (const SwSketch *sketch, const SwPourPlace *from, SwHandle handle, const SwGrips *grips, double dx, double dy, SwDragFlags flags);

/**
 * sw_pan_draw:
 * A new pour drawn from the press at @x0, @y0 to @x1, @y1, cm: a band spans
 * what was stroked along the skein, and follows a stroke across it; a splotch
 * or zone fills the corners of the stroke, or grows around the press
 * (SW_DRAG_CENTRED), as a circle or square (SW_DRAG_STEADY).
 */
SwPourPlace sw_pan_draw (const SwSketch *sketch, SwStepKind kind, double x0, double y0, double x1, double y1, SwDragFlags flags);

/* A new pour of a usual size for the skein, about @x, @y. */
SwPourPlace sw_pan_click (const SwSketch *sketch, SwStepKind kind, double x, double y);

G_END_DECLS
