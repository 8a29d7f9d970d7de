/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/parts/sw-picture-view.h"

G_BEGIN_DECLS

/**
 * SwClothCanvas: the whole cloth at true gauge, to scroll and zoom (it is a
 * GtkScrollable), with a handle on its right edge that changes the width.
 *
 * Properties: "stitch-px": width of one stitch (set by zooming); "fit":
 * whether the stitches follow the view so that the whole width is seen.
 *
 * Actions: "cloth.zoom-in", "cloth.zoom-out", "cloth.fit", "cloth.purl-side".
 */
#define SW_TYPE_CLOTH_CANVAS (sw_cloth_canvas_get_type ())
G_DECLARE_FINAL_TYPE (SwClothCanvas, sw_cloth_canvas, SW, CLOTH_CANVAS, SwPictureView)

/* Stitches get @factor times as wide; the middle of the view stays. */
void sw_cloth_canvas_zoom_by (SwClothCanvas *self, double factor);

G_END_DECLS
