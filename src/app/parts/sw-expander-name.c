/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-expander-name.h"

/* Rows inside have names of their own. */
static void
name_lists (GtkWidget *widget, const char *name)
{
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      if (GTK_IS_LIST_BOX (child))
        gtk_accessible_update_property (GTK_ACCESSIBLE (child), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
      if (!ADW_IS_EXPANDER_ROW (child))
        name_lists (child, name);
    }
}

void
sw_expander_tell_name (AdwExpanderRow *row)
{
  const char *title;

  g_return_if_fail (ADW_IS_EXPANDER_ROW (row));

  title = adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row));
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  name_lists (GTK_WIDGET (row), title);
}
