/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-selection.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * SwPanTools: the bar above the pan: tools, the face that is up, what
 * catches, alignment, zoom. All of it is actions of the group "pan".
 *
 * Property "selection" (SwSelection): whose face is named.
 */
#define SW_TYPE_PAN_TOOLS (sw_pan_tools_get_type ())
G_DECLARE_FINAL_TYPE (SwPanTools, sw_pan_tools, SW, PAN_TOOLS, GtkWidget)

G_END_DECLS
