/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-live.h"
#include "app/desk/sw-selection.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwSettingsPage: what is settled before the first pour: title, yarn, reel,
 * lay and pan, bath, each summed up on a line until it is opened.
 * Properties "live" (SwLive), "selection" (SwSelection) and "inches".
 */
#define SW_TYPE_SETTINGS_PAGE (sw_settings_page_get_type ())
G_DECLARE_FINAL_TYPE (SwSettingsPage, sw_settings_page, SW, SETTINGS_PAGE, AdwBin)

G_END_DECLS
