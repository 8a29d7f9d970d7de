/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * sw_frame_hold_until:
 * @widget: in a window
 *
 * A frame is held back for a moment, so that what follows from an edit is in
 * the same frame as the edit. All widgets of a window share that moment: what
 * is not done by then comes with a later frame, and the hand is never kept
 * waiting.
 *
 * Returns: g_get_monotonic_time() at which this frame waits no longer
 */
gint64 sw_frame_hold_until (GtkWidget *widget);

G_END_DECLS
