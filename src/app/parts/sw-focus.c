/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-focus.h"

gboolean
sw_focus_bin_in_order (GtkWidget *bin, GtkDirectionType direction)
{
  GtkWidget *child = adw_bin_get_child (ADW_BIN (bin));

  return child != NULL && gtk_widget_child_focus (child, direction);
}
