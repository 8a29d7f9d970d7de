/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-toast.h"

/* Words in a line before they go on in the next: a toast is not to hide what is beside it. */
#define LINE_CHARS 72

void
sw_toast_over (AdwToastOverlay *overlay, const char *sentence)
{
  AdwToast *toast = adw_toast_new ("");
  GtkWidget *label;

  g_return_if_fail (ADW_IS_TOAST_OVERLAY (overlay) && sentence != NULL);

  /* A toast's own title is one line that ends in dots where the room does. */
  label = gtk_label_new (sentence);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), LINE_CHARS);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "heading");
  adw_toast_set_custom_title (toast, label);
  adw_toast_overlay_add_toast (overlay, toast);
}

void
sw_toast (GtkWidget *widget, const char *sentence)
{
  GtkWidget *overlay;

  g_return_if_fail (GTK_IS_WIDGET (widget) && sentence != NULL);

  overlay = gtk_widget_get_ancestor (widget, ADW_TYPE_TOAST_OVERLAY);
  if (overlay != NULL)
    sw_toast_over (ADW_TOAST_OVERLAY (overlay), sentence);
}
