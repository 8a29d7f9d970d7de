/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-live.h"
#include "app/desk/sw-selection.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * SwPanView: the skein in the pan, to draw on. Pours of the face that is up
 * are drawn, moved, stretched, slanted and turned with pointer, finger and
 * keys; the dyed picture beneath follows the document's live forecast.
 *
 * Its actions are the group "pan" of the window it is in.
 *
 * Properties: "live" (SwLive), "selection" (SwSelection of the same
 * document), "inches" (rulers and measures in inches).
 *
 * Signal "edit-properties" (guint step): the dyer wants to give that pour's
 * numbers: Enter, or a double click.
 */
#define SW_TYPE_PAN_VIEW (sw_pan_view_get_type ())
G_DECLARE_FINAL_TYPE (SwPanView, sw_pan_view, SW, PAN_VIEW, GtkWidget)

G_END_DECLS
