/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-canvas.h"
#include "draw/sw-relief.h"

G_BEGIN_DECLS

/**
 * sw_liquor_draw:
 * @relief: of the yarn that lies in the pan
 * @inside: the pan's floor, px
 * @x, @y: of the relief's origin, px
 *
 * What runs out of wet yarn onto the floor of its pan: a shallow pool with a
 * rounded rim, and a few drops. The bath is spent, so it is clear. By eye.
 */
void sw_liquor_draw (const SwCanvas *canvas, const SwRelief *relief, const SwBox *inside, double x, double y, double px_per_cm, guint64 seed);

G_END_DECLS
