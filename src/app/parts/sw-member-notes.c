/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-member-notes.h"

/* A text that may be longer than this is written in lines. */
#define LINE_MAX_CHARS 5000

#define LEAST_HEIGHT 72 /* three lines, px */

struct _SwMemberNotes
{
  SwMemberControl parent_instance;

  GtkTextBuffer *buffer;
  gboolean showing;
};

G_DEFINE_FINAL_TYPE (SwMemberNotes, sw_member_notes, SW_TYPE_MEMBER_CONTROL)

gboolean
sw_member_is_notes (const SwMember *member)
{
  return member->kind == SW_KIND_TEXT && member->max > LINE_MAX_CHARS;
}

static char *
written (SwMemberNotes *self)
{
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (self->buffer, &start, &end);
  return gtk_text_buffer_get_text (self->buffer, &start, &end, FALSE);
}

static void
sw_member_notes_show (SwMemberControl *control, const SwValue *value, gboolean several)
{
  SwMemberNotes *self = SW_MEMBER_NOTES (control);
  const char *text = value != NULL && !several ? value->as.text : "";
  g_autofree char *before = written (self);

  /* Setting the same text again would send the cursor to the front. */
  if (g_str_equal (before, text))
    return;
  self->showing = TRUE;
  gtk_text_buffer_set_text (self->buffer, text, -1);
  self->showing = FALSE;
}

static void
changed_cb (SwMemberNotes *self)
{
  SwValue value;
  g_autofree char *text = NULL;

  if (self->showing)
    return;
  text = written (self);
  value = sw_value_text (text);
  sw_member_control_put (SW_MEMBER_CONTROL (self), &value, TRUE);
  sw_value_clear (&value);
}

static void
sw_member_notes_class_init (SwMemberNotesClass *klass)
{
  SW_MEMBER_CONTROL_CLASS (klass)->show = sw_member_notes_show;
}

static void
sw_member_notes_init (SwMemberNotes *self)
{
  GtkWidget *view = gtk_text_view_new ();

  self->buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (view));
  /* The document's own undo knows every word of it. */
  gtk_text_buffer_set_enable_undo (self->buffer, FALSE);
  gtk_text_view_set_wrap_mode (GTK_TEXT_VIEW (view), GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (view), FALSE);
  gtk_text_view_set_left_margin (GTK_TEXT_VIEW (view), 8);
  gtk_text_view_set_right_margin (GTK_TEXT_VIEW (view), 8);
  gtk_text_view_set_top_margin (GTK_TEXT_VIEW (view), 6);
  gtk_text_view_set_bottom_margin (GTK_TEXT_VIEW (view), 6);
  gtk_widget_set_size_request (view, -1, LEAST_HEIGHT);
  gtk_widget_add_css_class (view, "notes");
  adw_bin_set_child (ADW_BIN (self), view);
  g_signal_connect_swapped (self->buffer, "changed", G_CALLBACK (changed_cb), self);
}
