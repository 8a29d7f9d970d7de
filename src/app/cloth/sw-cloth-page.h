/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-live.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* SwClothPage: the cloth at true gauge, and what its width does to the colours. Properties "live" (SwLive) and "inches". */
#define SW_TYPE_CLOTH_PAGE (sw_cloth_page_get_type ())
G_DECLARE_FINAL_TYPE (SwClothPage, sw_cloth_page, SW, CLOTH_PAGE, AdwBin)

G_END_DECLS
