/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-pour-place.h"

G_BEGIN_DECLS

/*
 * A new pour: where among the steps it belongs, and how much is poured.
 */

/**
 * SwPourSlot:
 * @index: where in the list of steps it goes
 * @flip: a flip is needed first: it goes to @index, the pour after it
 */
typedef struct
{
  int index;
  gboolean flip;
} SwPourSlot;

/**
 * sw_pour_slot:
 * A pour joins the others of its face, after the last of them and before what
 * follows on them (a rest, acid, the final heat). On a face without pours it
 * comes last, but before closing rests and heat. If nothing has been turned
 * over yet, a pour for the second face brings the flip with it, once all
 * pours have been made and had their rest, before the next heat.
 */
SwPourSlot sw_pour_slot (const SwSketch *sketch, gboolean second_face);

/* How far a new band or splotch is worked in: pressed in with a spoon, the underside stays paler. Common practice, no source. */
#define SW_POUR_WORKED_IN 0.5

/**
 * sw_pour_amount:
 * @dye: the pot
 * @place: of a new pour
 * Returns: mL of stock that make what is seen about as deep as the dye's
 *   sample, so that the pour looks like the pot; rounded to what can be
 *   measured in a kitchen
 *
 * Fibre is taken as spread evenly over the laid skeins; what lies beside them
 * is not counted, worked out on a grid of points. Seen is the outer quarter of
 * the depth, which is about as far as dye spreads before it strikes. Dye that
 * is there already is not counted.
 */
double sw_pour_amount (const SwSketch *sketch, const SwDye *dye, const SwPourPlace *place);

/**
 * sw_pour_new:
 * Returns: (transfer full): a pour without id or name, of a usual amount
 */
SwStep *sw_pour_new (const SwSketch *sketch, const SwDye *dye, const SwPourPlace *place) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
