/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/parts/sw-picture-view.h"

G_BEGIN_DECLS

/* SwClothView: the knitted cloth. "stitch-px": width of one stitch, 0 fits the width of the cloth. */
#define SW_TYPE_CLOTH_VIEW (sw_cloth_view_get_type ())
G_DECLARE_FINAL_TYPE (SwClothView, sw_cloth_view, SW, CLOTH_VIEW, SwPictureView)

G_END_DECLS
