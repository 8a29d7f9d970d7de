/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-canvas.h"

G_BEGIN_DECLS

/* Plain grounds as a photographer lays them beneath yarn: greys without a hue, a little lighter towards the light. */

/* The ground that a listing asks for; a dark look goes before it. */
SwGround sw_ground_for (const SwSketch *sketch, const SwLook *look);

void sw_ground_draw (const SwCanvas *canvas, SwGround ground);

/* The grey of letters on it, 0 .. 1 in sRGB. @faint: for what matters less */
double sw_ground_ink (SwGround ground, gboolean faint);

/**
 * sw_vessel_draw:
 * @inside: its floor, px
 * @px_per_cm: px
 * A dye pan seen from above; nothing for SW_VESSEL_NONE.
 */
void sw_vessel_draw (const SwCanvas *canvas, SwVessel vessel, const SwBox *inside, double px_per_cm);

G_END_DECLS
