/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-canvas.h"

G_BEGIN_DECLS

/**
 * SwPanMarks: which pours stand out.
 * @selected: (array length=n_selected): their ids
 * @hovered: the one under the pointer; 0 none
 * @accent: (array fixed-size=3) (nullable): sRGB, 0..1, of what is selected; white without it
 */
typedef struct
{
  const guint *selected;
  gsize n_selected;
  guint hovered;
  const double *accent;
} SwPanMarks;

/* The pours over the colour: numbered outlines on the face that is up, faint dashes of those beneath. */
void sw_pan_marks_draw (const SwCanvas *canvas, const SwPanGeometry *geometry, const SwSketch *sketch, const SwPanMarks *marks);

/**
 * sw_pan_mark_place:
 * Where a pour's number stands before others make it move aside: a band's at
 * its far end, another pour's at its upper left.
 */
void sw_pan_mark_place (const SwPanGeometry *geometry, const SwSketch *sketch, const SwStep *step, double *x, double *y);

G_END_DECLS
