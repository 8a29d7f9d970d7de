/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-live.h"
#include "app/desk/sw-selection.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwProperties: by number what is looked at: the selected steps, or a dye, or
 * with neither the yarn, reel, lay and bath.
 * Properties "live" (SwLive), "selection" (SwSelection) and "inches".
 * Signal "done": a dye has been looked at enough; the keyboard goes back to where it came from.
 */
#define SW_TYPE_PROPERTIES (sw_properties_get_type ())
G_DECLARE_FINAL_TYPE (SwProperties, sw_properties, SW, PROPERTIES, AdwBin)

/* Shows the dye, with the keyboard on it, until steps are selected, or the dye is done with. */
void sw_properties_show_dye (SwProperties *self, guint dye);

G_END_DECLS
