/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/sw-picture-view.h"

G_BEGIN_DECLS

/* SwScanView: pooling at every width, with the present one marked. */
#define SW_TYPE_SCAN_VIEW (sw_scan_view_get_type ())
G_DECLARE_FINAL_TYPE (SwScanView, sw_scan_view, SW, SCAN_VIEW, SwPictureView)

G_END_DECLS
