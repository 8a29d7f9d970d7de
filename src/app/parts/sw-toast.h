/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/* A passing word at the foot of the window that @widget is in. */
void sw_toast (GtkWidget *widget, const char *sentence);

/* The same on an overlay that is known. */
void sw_toast_over (AdwToastOverlay *overlay, const char *sentence);

G_END_DECLS
