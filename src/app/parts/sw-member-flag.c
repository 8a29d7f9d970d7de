/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-member-flag.h"

struct _SwMemberFlag
{
  SwMemberControl parent_instance;

  GtkCheckButton *button;
  gboolean showing;
};

G_DEFINE_FINAL_TYPE (SwMemberFlag, sw_member_flag, SW_TYPE_MEMBER_CONTROL)

static void
sw_member_flag_show (SwMemberControl *control, const SwValue *value, gboolean several)
{
  SwMemberFlag *self = SW_MEMBER_FLAG (control);

  self->showing = TRUE;
  gtk_check_button_set_active (self->button, value != NULL && value->as.flag);
  gtk_check_button_set_inconsistent (self->button, several);
  self->showing = FALSE;
}

static void
toggled_cb (SwMemberFlag *self)
{
  SwValue value = sw_value_flag (gtk_check_button_get_active (self->button));

  if (!self->showing && !sw_member_control_put (SW_MEMBER_CONTROL (self), &value, FALSE))
    sw_member_control_show (SW_MEMBER_CONTROL (self));
}

static void
sw_member_flag_class_init (SwMemberFlagClass *klass)
{
  SW_MEMBER_CONTROL_CLASS (klass)->show = sw_member_flag_show;
}

static void
sw_member_flag_init (SwMemberFlag *self)
{
  self->button = GTK_CHECK_BUTTON (gtk_check_button_new ());
  adw_bin_set_child (ADW_BIN (self), GTK_WIDGET (self->button));
  g_signal_connect_swapped (self->button, "toggled", G_CALLBACK (toggled_cb), self);
}
