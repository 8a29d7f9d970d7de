/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-selection.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwDyeList: the dye pots; the selected one is the one to pour from.
 *
 * Property "selection" (SwSelection).
 * Signal "edit" (guint dye): someone wants to see and change all of a dye.
 * Actions: dyes.add, dyes.edit(u), dyes.duplicate, dyes.delete; the last two
 * concern the pot to pour from.
 */
#define SW_TYPE_DYE_LIST (sw_dye_list_get_type ())
G_DECLARE_FINAL_TYPE (SwDyeList, sw_dye_list, SW, DYE_LIST, AdwBin)

G_END_DECLS
