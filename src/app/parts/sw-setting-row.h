/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-document.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwSettingRow: one number of the cloth to be set, as a row with a spin
 * button in the person's units. A member that may be worked out instead (0 in
 * the sketch) has a switch: off, the row says what was worked out.
 *
 * Properties: "document" (SwDocument), "inches", "member" (its name, at
 * construction), "edit-name" (what a change is called beside Undo,
 * translated), "step" (of the spin button, in the core's unit), "worked-out"
 * (what the forecast found, 0 if unknown).
 */
#define SW_TYPE_SETTING_ROW (sw_setting_row_get_type ())
G_DECLARE_FINAL_TYPE (SwSettingRow, sw_setting_row, SW, SETTING_ROW, AdwActionRow)

G_END_DECLS
