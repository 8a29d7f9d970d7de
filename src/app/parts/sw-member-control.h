/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-subject.h"

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * SwMemberControl: what a person turns to change one member of what a pane is
 * about. Each kind of member has its own; all of them follow the subject and
 * say beside themselves why a value was refused.
 *
 * Property, read-only: "refusal" (a sentence, NULL while all is well).
 */
#define SW_TYPE_MEMBER_CONTROL (sw_member_control_get_type ())
G_DECLARE_DERIVABLE_TYPE (SwMemberControl, sw_member_control, SW, MEMBER_CONTROL, AdwBin)

/**
 * SwMemberControlClass:
 * @show: show this value; @value is NULL when the subject has no such member, and
 *   @several is TRUE when not all of the records have it
 * @mark: show that what stands there was refused, or is well again; the child as a whole unless a kind knows better
 * @leave: whatever is typed and not yet taken over belongs to the subject as it is now
 */
struct _SwMemberControlClass
{
  AdwBinClass parent_class;

  void (*show) (SwMemberControl *self, const SwValue *value, gboolean several);
  void (*mark) (SwMemberControl *self, gboolean refused);
  void (*leave) (SwMemberControl *self);
};

/* (transfer floating): the control for the member's kind, bound to the subject. */
GtkWidget *sw_member_control_new (SwSubject *subject, const SwMember *member) G_GNUC_WARN_UNUSED_RESULT;

/* @subject: (nullable) */
void sw_member_control_bind (SwMemberControl *self, SwSubject *subject, const SwMember *member);

SwSubject *sw_member_control_get_subject (SwMemberControl *self); /* (nullable) */
const SwMember *sw_member_control_get_member (SwMemberControl *self);
const char *sw_member_control_get_refusal (SwMemberControl *self); /* (nullable) */

/* The label that a screen reader says for it. */
void sw_member_control_set_label (SwMemberControl *self, const char *label);

/* For the kinds of control: */

/**
 * sw_member_control_put:
 * @series: whether it continues what this control did a moment ago
 * Returns: whether the document took it; else "refusal" says why it did not
 */
gboolean sw_member_control_put (SwMemberControl *self, const SwValue *value, gboolean series);

/* @sentence: (nullable) */
void sw_member_control_refuse (SwMemberControl *self, const char *sentence);

/* Makes a widget look, and read, refused or well. */
void sw_member_control_mark_widget (GtkWidget *widget, gboolean refused);

/* Show the subject's value again, whatever was typed. */
void sw_member_control_show (SwMemberControl *self);

G_END_DECLS
