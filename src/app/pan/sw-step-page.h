/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-live.h"
#include "app/desk/sw-selection.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwStepPage: the selected steps by number: all members that they have in
 * common, and what the bath is after a single one.
 * Properties "live" (SwLive), "selection" (SwSelection) and "inches".
 */
#define SW_TYPE_STEP_PAGE (sw_step_page_get_type ())
G_DECLARE_FINAL_TYPE (SwStepPage, sw_step_page, SW, STEP_PAGE, AdwBin)

G_END_DECLS
