/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-field-row.h"

#include "app/desk/sw-field.h"
#include "app/parts/sw-member-notes.h"

#include <glib/gi18n-lib.h>

struct _SwFieldRow
{
  AdwPreferencesRow parent_instance;

  SwSubject *subject;
  const SwMember *member;

  GtkBox *line;
  GtkLabel *title;
  GtkLabel *note;
  GtkLabel *refusal;
};

G_DEFINE_FINAL_TYPE (SwFieldRow, sw_field_row, ADW_TYPE_PREFERENCES_ROW)

static void
show (SwFieldRow *self)
{
  const char *note = sw_field_note (self->member, sw_subject_get_system (self->subject));

  gtk_widget_set_visible (GTK_WIDGET (self), sw_subject_applies (self->subject, self->member));
  gtk_label_set_text (self->note, note != NULL ? note : "");
  gtk_widget_set_visible (GTK_WIDGET (self->note), note != NULL);
}

static gboolean
is_there (GBinding *binding, const GValue *sentence, GValue *there, gpointer user_data)
{
  g_value_set_boolean (there, g_value_get_string (sentence) != NULL);
  return TRUE;
}

/* Words and colours want room: they get a line of their own. */
static gboolean
is_wide (const SwMember *member)
{
  return member->kind == SW_KIND_COLOUR || sw_member_is_notes (member);
}

static void
place_control (SwFieldRow *self, GtkWidget *control)
{
  gtk_widget_set_valign (control, GTK_ALIGN_CENTER);
  if (is_wide (self->member))
    gtk_box_insert_child_after (GTK_BOX (gtk_widget_get_parent (GTK_WIDGET (self->line))), control, GTK_WIDGET (self->line));
  else
    gtk_box_insert_child_after (self->line, control, GTK_WIDGET (self->title));
  g_object_bind_property (control, "refusal", self->refusal, "label", G_BINDING_SYNC_CREATE);
  g_object_bind_property_full (control, "refusal", self->refusal, "visible", G_BINDING_SYNC_CREATE, is_there, NULL, NULL, NULL);
}

static void
sw_field_row_dispose (GObject *object)
{
  g_clear_object (&SW_FIELD_ROW (object)->subject);

  G_OBJECT_CLASS (sw_field_row_parent_class)->dispose (object);
}

static void
sw_field_row_class_init (SwFieldRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_field_row_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-field-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, line);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, title);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, note);
  gtk_widget_class_bind_template_child (widget_class, SwFieldRow, refusal);
}

static void
sw_field_row_init (SwFieldRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
sw_field_row_new (SwSubject *subject, const SwMember *member)
{
  SwFieldRow *self = g_object_new (SW_TYPE_FIELD_ROW, NULL);

  self->subject = g_object_ref (subject);
  self->member = member;
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self), _ (member->label));
  gtk_label_set_text (self->title, _ (member->label));
  place_control (self, sw_member_control_new (subject, member));
  g_signal_connect_object (subject, "changed", G_CALLBACK (show), self, G_CONNECT_SWAPPED);
  show (self);
  return GTK_WIDGET (self);
}
