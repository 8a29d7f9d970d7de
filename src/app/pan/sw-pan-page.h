/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/parts/sw-guide.h"
#include "app/desk/sw-live.h"

#include <adwaita.h>

G_BEGIN_DECLS

/* SwPanPage: the place where a colourway is drawn. Properties "live" (SwLive), "inches" and, read-only, "selection" (SwSelection) of that document. */
#define SW_TYPE_PAN_PAGE (sw_pan_page_get_type ())
G_DECLARE_FINAL_TYPE (SwPanPage, sw_pan_page, SW, PAN_PAGE, AdwBin)

/* What a newcomer is told about the pan. */
void sw_pan_page_guide (SwPanPage *self, SwGuide *guide);

G_END_DECLS
