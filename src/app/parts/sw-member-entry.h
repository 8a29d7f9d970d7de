/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/parts/sw-member-control.h"

G_BEGIN_DECLS

/**
 * SwMemberEntry: a number with its unit, to be typed in any unit or stepped
 * with the arrow keys. What is typed counts from Return on, or when the entry
 * is left; Escape takes it back.
 */
#define SW_TYPE_MEMBER_ENTRY (sw_member_entry_get_type ())
G_DECLARE_FINAL_TYPE (SwMemberEntry, sw_member_entry, SW, MEMBER_ENTRY, SwMemberControl)

/**
 * sw_member_entry_set_inline:
 * @chars: how many characters there is room for
 * For a place where space is short: no frame until the pointer or the keys come to it.
 */
void sw_member_entry_set_inline (SwMemberEntry *self, int chars);

G_END_DECLS
