/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-member-entry.h"

#include "app/desk/sw-field.h"

#include <glib/gi18n-lib.h>

#define PAGE_STEPS 5

struct _SwMemberEntry
{
  SwMemberControl parent_instance;

  GtkEntry *entry;
  gboolean typed; /* there is text that was not taken over yet */
  gboolean showing;
};

G_DEFINE_FINAL_TYPE (SwMemberEntry, sw_member_entry, SW_TYPE_MEMBER_CONTROL)

static void
set_text (SwMemberEntry *self, const char *text)
{
  self->showing = TRUE;
  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (self->entry)), text))
    gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  self->showing = FALSE;
  self->typed = FALSE;
}

static void
sw_member_entry_show (SwMemberControl *control, const SwValue *value, gboolean several)
{
  SwMemberEntry *self = SW_MEMBER_ENTRY (control);
  const SwMember *member = sw_member_control_get_member (control);
  const char *zero = sw_field_zero (member);
  g_autofree char *text = NULL;

  if (self->typed)
    return;
  if (value != NULL && !several)
    text = sw_field_text (member, value, sw_subject_get_system (sw_member_control_get_subject (control)));
  /* Translators: stands in a field when the things selected differ in it */
  gtk_entry_set_placeholder_text (self->entry, several ? _ ("several") : zero != NULL ? zero
                                                                                      : "");
  set_text (self, text != NULL ? text : "");
}

/* Takes over what was typed. Returns whether nothing is left to be mended. */
static gboolean
take_typed (SwMemberEntry *self)
{
  SwMemberControl *control = SW_MEMBER_CONTROL (self);
  SwSubject *subject = sw_member_control_get_subject (control);
  const SwMember *member = sw_member_control_get_member (control);
  g_autoptr (GError) error = NULL;
  SwValue shown, value;

  if (!self->typed || subject == NULL || !sw_subject_get (subject, member, &shown, NULL))
    return TRUE;
  if (!sw_field_parse (member, gtk_editable_get_text (GTK_EDITABLE (self->entry)), &shown, sw_subject_get_system (subject), &value, &error))
    {
      sw_member_control_refuse (control, error->message);
      return FALSE;
    }
  if (!sw_member_control_put (control, &value, FALSE))
    return FALSE;
  self->typed = FALSE;
  sw_member_control_show (control);
  return TRUE;
}

static void
take_back (SwMemberEntry *self)
{
  self->typed = FALSE;
  sw_member_control_show (SW_MEMBER_CONTROL (self));
}

/* Refused text goes when the entry is left, its sentence stays until something else is done here. */
static void
sw_member_entry_leave (SwMemberControl *control)
{
  SwMemberEntry *self = SW_MEMBER_ENTRY (control);

  if (!take_typed (self))
    take_back (self);
}

static void
activate_cb (SwMemberEntry *self)
{
  if (take_typed (self))
    gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, -1);
}

static void
changed_cb (SwMemberEntry *self)
{
  if (self->showing)
    return;
  self->typed = TRUE;
  sw_member_control_refuse (SW_MEMBER_CONTROL (self), NULL);
}

static void
nudge (SwMemberEntry *self, int steps)
{
  SwMemberControl *control = SW_MEMBER_CONTROL (self);
  SwSubject *subject = sw_member_control_get_subject (control);
  g_autoptr (GError) error = NULL;

  if (subject == NULL || !take_typed (self))
    return;
  if (sw_subject_nudge (subject, sw_member_control_get_member (control), steps, &error))
    sw_member_control_refuse (control, NULL);
  else
    sw_member_control_refuse (control, error->message);
  gtk_editable_set_position (GTK_EDITABLE (self->entry), -1);
}

static gboolean
key_cb (GtkEventControllerKey *controller, guint key, guint code, GdkModifierType modifiers, SwMemberEntry *self)
{
  static const struct
  {
    guint key, keypad;
    int steps;
  } keys[] = {
    { GDK_KEY_Up, GDK_KEY_KP_Up, 1 },
    { GDK_KEY_Down, GDK_KEY_KP_Down, -1 },
    { GDK_KEY_Page_Up, GDK_KEY_KP_Page_Up, PAGE_STEPS },
    { GDK_KEY_Page_Down, GDK_KEY_KP_Page_Down, -PAGE_STEPS },
  };

  if (modifiers & gtk_accelerator_get_default_mod_mask ())
    return GDK_EVENT_PROPAGATE;
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    if (key == keys[i].key || key == keys[i].keypad)
      {
        nudge (self, keys[i].steps);
        return GDK_EVENT_STOP;
      }
  if (key == GDK_KEY_Escape && (self->typed || sw_member_control_get_refusal (SW_MEMBER_CONTROL (self)) != NULL))
    {
      take_back (self);
      sw_member_control_refuse (SW_MEMBER_CONTROL (self), NULL);
      return GDK_EVENT_STOP;
    }
  return GDK_EVENT_PROPAGATE;
}

static void
focus_left_cb (SwMemberEntry *self)
{
  sw_member_entry_leave (SW_MEMBER_CONTROL (self));
  gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, 0);
}

static void
sw_member_entry_class_init (SwMemberEntryClass *klass)
{
  SW_MEMBER_CONTROL_CLASS (klass)->show = sw_member_entry_show;
  SW_MEMBER_CONTROL_CLASS (klass)->leave = sw_member_entry_leave;
}

static void
sw_member_entry_init (SwMemberEntry *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->entry = GTK_ENTRY (gtk_entry_new ());
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 10);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), 10);
  gtk_entry_set_alignment (self->entry, 1);
  /* Figures with their signs run from left to right in every language. */
  gtk_widget_set_direction (GTK_WIDGET (self->entry), GTK_TEXT_DIR_LTR);
  gtk_widget_add_css_class (GTK_WIDGET (self->entry), "numeric");
  adw_bin_set_child (ADW_BIN (self), GTK_WIDGET (self->entry));

  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect_swapped (self->entry, "changed", G_CALLBACK (changed_cb), self);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->entry), keys);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->entry), focus);
}

void
sw_member_entry_set_inline (SwMemberEntry *self, int chars)
{
  g_return_if_fail (SW_IS_MEMBER_ENTRY (self));

  gtk_widget_add_css_class (GTK_WIDGET (self->entry), "inline-amount");
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), chars);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), chars);
}
