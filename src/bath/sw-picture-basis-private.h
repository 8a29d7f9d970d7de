/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bath/sw-basis.h"

G_BEGIN_DECLS

/*
 * The inverse transform in single precision, for pictures: the part of a
 * forecast that runs once for each dye at each move of the hand.
 */
typedef struct _SwPictureBasis SwPictureBasis;

/* Both to be called with the planner locked. */
SwPictureBasis *sw_picture_basis_new (const SwGrid *grid) G_GNUC_WARN_UNUSED_RESULT;
void sw_picture_basis_free (SwPictureBasis *basis);

/* As sw_basis_inverse_single(). */
void sw_picture_basis_inverse (const SwPictureBasis *basis, const double *modes, float *cells);

G_END_DECLS
