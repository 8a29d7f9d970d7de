/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/sw-picture-view.h"

G_BEGIN_DECLS

/* SwPanView: the laid skein in the pan, to scale, one face up. */
#define SW_TYPE_PAN_VIEW (sw_pan_view_get_type ())
G_DECLARE_FINAL_TYPE (SwPanView, sw_pan_view, SW, PAN_VIEW, SwPictureView)

G_END_DECLS
