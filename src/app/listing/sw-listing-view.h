/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-live.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * SwListingView: the picture of the shop's page as it will be saved, fitted
 * into the widget. It is painted beside the main thread: small at first, so
 * that it follows the hand, then as fine as the screen shows it; an answer
 * that is no longer wanted is dropped.
 *
 * Properties: "live" (SwLive), "problem" (a sentence, read-only: why the
 * maker's mark is not in the picture; NULL while all is well).
 */
#define SW_TYPE_LISTING_VIEW (sw_listing_view_get_type ())
G_DECLARE_FINAL_TYPE (SwListingView, sw_listing_view, SW, LISTING_VIEW, GtkWidget)

G_END_DECLS
