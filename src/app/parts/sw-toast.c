/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-toast.h"

void
sw_toast (GtkWidget *widget, const char *sentence)
{
  GtkWidget *overlay;
  g_autofree char *escaped = NULL;

  g_return_if_fail (GTK_IS_WIDGET (widget) && sentence != NULL);

  overlay = gtk_widget_get_ancestor (widget, ADW_TYPE_TOAST_OVERLAY);
  if (overlay == NULL)
    return;
  /* A toast's title is markup; a dye may be called "<b>". */
  escaped = g_markup_escape_text (sentence, -1);
  adw_toast_overlay_add_toast (ADW_TOAST_OVERLAY (overlay), adw_toast_new (escaped));
}
