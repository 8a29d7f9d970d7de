/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-canvas.h"

G_BEGIN_DECLS

/* The pours over the colour: numbered outlines on the face that is up, faint dashes of those beneath. */
void sw_pan_marks_draw (const SwCanvas *canvas, const SwPanGeometry *geometry, const SwSketch *sketch);

/**
 * sw_pan_mark_place:
 * Where a pour's number stands before others make it move aside: a band's at
 * its far end, another pour's at its upper left.
 */
void sw_pan_mark_place (const SwPanGeometry *geometry, const SwSketch *sketch, const SwStep *step, double *x, double *y);

G_END_DECLS
