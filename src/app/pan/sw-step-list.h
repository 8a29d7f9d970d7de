/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-live.h"
#include "app/desk/sw-selection.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwStepList: the dyeing from top to bottom. Everything that the picture of
 * the pan shows is said here, and everything that is drawn there can be added,
 * moved and changed here, by keyboard alone.
 *
 * Properties "live" (SwLive), "selection" (SwSelection) and "inches".
 * Actions: steps.add(s) with a step's kind, steps.duplicate, steps.delete,
 * steps.move-up, steps.move-down.
 */
#define SW_TYPE_STEP_LIST (sw_step_list_get_type ())
G_DECLARE_FINAL_TYPE (SwStepList, sw_step_list, SW, STEP_LIST, AdwBin)

G_END_DECLS
