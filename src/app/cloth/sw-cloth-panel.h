/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-live.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* SwClothPanel: the verdict in words, the stripes, and everything the cloth is knitted by. Properties "live" (SwLive) and "inches". */
#define SW_TYPE_CLOTH_PANEL (sw_cloth_panel_get_type ())
G_DECLARE_FINAL_TYPE (SwClothPanel, sw_cloth_panel, SW, CLOTH_PANEL, AdwBin)

G_END_DECLS
