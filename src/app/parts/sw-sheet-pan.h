/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/parts/sw-picture-view.h"

G_BEGIN_DECLS

/**
 * SwSheetPan: the skein in the pan with one step's pour standing out, the face up that it falls on.
 * Property "step" (id; 0 none).
 */
#define SW_TYPE_SHEET_PAN (sw_sheet_pan_get_type ())
G_DECLARE_FINAL_TYPE (SwSheetPan, sw_sheet_pan, SW, SHEET_PAN, SwPictureView)

void sw_sheet_pan_set_step (SwSheetPan *self, guint step);

G_END_DECLS
