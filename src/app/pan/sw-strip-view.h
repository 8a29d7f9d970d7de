/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/parts/sw-picture-view.h"

G_BEGIN_DECLS

/* SwStripView: the colours along one loop of the strand, with lengths. */
#define SW_TYPE_STRIP_VIEW (sw_strip_view_get_type ())
G_DECLARE_FINAL_TYPE (SwStripView, sw_strip_view, SW, STRIP_VIEW, SwPictureView)

G_END_DECLS
