/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-hank-yarn.h"
#include "draw/sw-relief.h"

#include <cairo.h>

G_BEGIN_DECLS

/**
 * sw_hank_hairs_draw:
 * @x, @y: where the hank's origin is on the relief, cm
 * @fuzz, @length_cm: how many hairs stand off a cm2, and how long they are
 * @px_per_cm: px; the hank's origin is at the context's
 * @pixel: width of a device pixel, px: no hair is drawn thinner
 *
 * Single fibres that stand off the hank, most plainly seen against the ground
 * beside it: each in the colour of its own strand.
 */
void sw_hank_hairs_draw (cairo_t *cr, const SwBundle *bundle, const SwHankYarn *yarn, const SwRelief *relief, double x, double y, guint64 seed, double fuzz, double length_cm, double px_per_cm, double pixel);

G_END_DECLS
