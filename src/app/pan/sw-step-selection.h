/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-selection.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * SwStepSelection: what the dyer has selected, as the selection of a list view
 * of the steps. It keeps nothing of its own: the canvas and the list show the
 * same.
 */
#define SW_TYPE_STEP_SELECTION (sw_step_selection_get_type ())
G_DECLARE_FINAL_TYPE (SwStepSelection, sw_step_selection, SW, STEP_SELECTION, GObject)

SwStepSelection *sw_step_selection_new (SwSelection *selection) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
