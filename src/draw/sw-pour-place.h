/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-edit.h"

G_BEGIN_DECLS

/*
 * Where a pour lies and how large it is: what a hand on the canvas changes.
 * Plain values, so that a drag is a function from the place at the press and
 * the pointer to a new place.
 */
typedef struct
{
  SwStepKind kind;
  double x, y;          /* cm, the centre */
  double width, length; /* cm, as SwStep has them: a band's length of 0 goes right across */
  double angle;         /* degrees, as SwStep has it */
} SwPourPlace;

/* Upright, cm. */
typedef struct
{
  double x0, x1, y0, y1;
} SwExtent;

SwPourPlace sw_pour_place (const SwStep *step);
void sw_pour_place_put (const SwPourPlace *place, SwStep *step);

/* A band that goes right across has no place across: it moves along only. */
void sw_pour_place_move (SwPourPlace *place, double dx, double dy);

/**
 * sw_pour_place_tidy:
 * Puts it within the members' limits, and takes off what no hand can measure
 * (tenths of a millimetre of size, tenths of a degree) and the noise of sums.
 */
void sw_pour_place_tidy (SwPourPlace *place);

/**
 * sw_pour_place_edit:
 * @step: as it is now
 * Returns: (transfer full) (nullable): the edit that puts it there; NULL if it is there already
 */
SwEdit *sw_pour_place_edit (const SwStep *step, const SwPourPlace *place) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_pour_extent:
 * What the pour's own edges line up with. A slanted band counts where its
 * middle is, since that is the edge a person reads; a turned splotch counts
 * with all of it.
 */
SwExtent sw_pour_extent (const SwSketch *sketch, const SwPourPlace *place);

/* Where a band ends across the skein, cm. */
void sw_pour_band_ends (const SwSketch *sketch, const SwPourPlace *place, double *near, double *far);

/* From upright to the place's own directions, about its centre, and back. A band only slants: it is not turned. */
void sw_pour_to_own (const SwPourPlace *place, double dx, double dy, double *u, double *v);
void sw_pour_from_own (const SwPourPlace *place, double u, double v, double *dx, double *dy);

/* How far a slanted band's middle has moved along the skein at @y, cm; 0 for others. */
double sw_pour_shift (const SwPourPlace *place, double y);

G_END_DECLS
