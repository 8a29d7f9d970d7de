/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* @widget: what sw_seen_connect() was given */
typedef void (*SwSeenShow) (gpointer widget);

/**
 * sw_seen_connect:
 * @object: disconnected from before it, or @widget, is let go of
 * @signal: of @object; what it is emitted with is not handed on
 *
 * Lets @show follow a signal for as long as somebody can see @widget. What
 * happened in a place that is not shown is caught up with, once, when it is.
 */
void sw_seen_connect (GtkWidget *widget, gpointer object, const char *signal, SwSeenShow show);

/* From all signals of @object. */
void sw_seen_disconnect (GtkWidget *widget, gpointer object);

G_END_DECLS
