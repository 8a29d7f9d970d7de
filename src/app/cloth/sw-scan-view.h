/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/parts/sw-picture-view.h"

G_BEGIN_DECLS

/**
 * SwScanView: pooling at every width, with the present one marked and the
 * usual widths of knitted pieces below.
 *
 * A click takes a width. With the keyboard a reading line is moved: Left and
 * Right by a stitch, Page Up and Page Down to the next peak, Home and End;
 * Enter takes it.
 */
#define SW_TYPE_SCAN_VIEW (sw_scan_view_get_type ())
G_DECLARE_FINAL_TYPE (SwScanView, sw_scan_view, SW, SCAN_VIEW, SwPictureView)

/* Widths that the chart shows for a cloth of @width stitches. */
void sw_scan_view_range (gsize width, gsize *from, gsize *to);

G_END_DECLS
