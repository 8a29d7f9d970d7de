/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-member-text.h"

#include <glib/gi18n-lib.h>

struct _SwMemberText
{
  SwMemberControl parent_instance;

  GtkEntry *entry;
  gboolean showing;
};

G_DEFINE_FINAL_TYPE (SwMemberText, sw_member_text, SW_TYPE_MEMBER_CONTROL)

static void
sw_member_text_show (SwMemberControl *control, const SwValue *value, gboolean several)
{
  SwMemberText *self = SW_MEMBER_TEXT (control);
  const char *text = value != NULL && !several ? value->as.text : "";

  self->showing = TRUE;
  gtk_entry_set_placeholder_text (self->entry, several ? _ ("several") : "");
  /* Setting the same text again would send the cursor to the front. */
  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (self->entry)), text))
    gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  self->showing = FALSE;
}

static void
changed_cb (SwMemberText *self)
{
  SwValue value;

  if (self->showing)
    return;
  value = sw_value_text (gtk_editable_get_text (GTK_EDITABLE (self->entry)));
  sw_member_control_put (SW_MEMBER_CONTROL (self), &value, TRUE);
  sw_value_clear (&value);
}

static void
sw_member_text_class_init (SwMemberTextClass *klass)
{
  SW_MEMBER_CONTROL_CLASS (klass)->show = sw_member_text_show;
}

static void
sw_member_text_init (SwMemberText *self)
{
  self->entry = GTK_ENTRY (gtk_entry_new ());
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 14);
  gtk_widget_set_hexpand (GTK_WIDGET (self->entry), TRUE);
  adw_bin_set_child (ADW_BIN (self), GTK_WIDGET (self->entry));
  g_signal_connect_swapped (self->entry, "changed", G_CALLBACK (changed_cb), self);
}
