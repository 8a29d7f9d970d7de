/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * sw_focus_bin_in_order:
 * The `focus` of a bin whose `grab_focus` goes to its chief part: without it
 * the Tab key enters there, too, and never reaches what lies before.
 *
 * Returns: whether something inside has taken the focus
 */
gboolean sw_focus_bin_in_order (GtkWidget *bin, GtkDirectionType direction);

G_END_DECLS
