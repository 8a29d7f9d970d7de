/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/parts/sw-member-control.h"

G_BEGIN_DECLS

/* SwMemberText: words on one line, taken over while they are typed; typing is one step to undo. */
#define SW_TYPE_MEMBER_TEXT (sw_member_text_get_type ())
G_DECLARE_FINAL_TYPE (SwMemberText, sw_member_text, SW, MEMBER_TEXT, SwMemberControl)

G_END_DECLS
