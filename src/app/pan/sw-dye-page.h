/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-live.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwDyePage: all there is to say of a dye: name, colour and depth of its
 * sample, how it strikes and spreads, its stock; and whether the bath suits it.
 * Properties "live" (SwLive), "dye" (id, 0 for none) and "inches".
 * Signal "done": back to what was shown before.
 */
#define SW_TYPE_DYE_PAGE (sw_dye_page_get_type ())
G_DECLARE_FINAL_TYPE (SwDyePage, sw_dye_page, SW, DYE_PAGE, AdwBin)

G_END_DECLS
