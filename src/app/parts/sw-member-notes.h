/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/parts/sw-member-control.h"

G_BEGIN_DECLS

/* SwMemberNotes: a text of more than a line. It grows with what is written. */
#define SW_TYPE_MEMBER_NOTES (sw_member_notes_get_type ())
G_DECLARE_FINAL_TYPE (SwMemberNotes, sw_member_notes, SW, MEMBER_NOTES, SwMemberControl)

/* Whether a member is such a text. */
gboolean sw_member_is_notes (const SwMember *member);

G_END_DECLS
