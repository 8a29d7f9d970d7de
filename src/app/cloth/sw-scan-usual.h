/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-scan-geometry.h"

G_BEGIN_DECLS

/* Height of the band below the width scan that names usual pieces. */
#define SW_SCAN_USUAL_PX 24

/* Brackets over the widths at which pieces are usually knitted, in a band from y = 0 below a scan of that geometry. */
void sw_scan_usual_draw (cairo_t *cr, const SwForecast *forecast, const SwScanGeometry *geometry, double width, const SwLook *look);

G_END_DECLS
