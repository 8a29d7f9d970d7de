/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-canvas.h"
#include "draw/sw-relief.h"

G_BEGIN_DECLS

/**
 * sw_shadow_draw:
 * @x, @y: px, of the relief's origin
 * @px_per_cm: px
 * What lies on the relief keeps light off the table; fades out towards the relief's rim.
 */
void sw_shadow_draw (const SwRelief *relief, const SwCanvas *canvas, double x, double y, double px_per_cm);

G_END_DECLS
