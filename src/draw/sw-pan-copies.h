/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-pan-geometry.h"

G_BEGIN_DECLS

/* A pan of a batch: the drawing repeated across, or a part of it (sheet/sw-sheet-lay.h). */

/**
 * sw_pan_copy_geometry:
 * @whole: the pan, its skein box as wide across as all that lies in it
 * @copy: from 0, the nearest one
 * @geometry: (out): where the drawing itself lies the @copy-th time; what of it is outside @whole's skein box does not lie in the pan
 */
void sw_pan_copy_geometry (const SwPanGeometry *whole, const SwSketch *sketch, gsize copy, SwPanGeometry *geometry);

G_END_DECLS
