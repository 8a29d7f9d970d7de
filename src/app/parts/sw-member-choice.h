/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/parts/sw-member-control.h"

G_BEGIN_DECLS

/* SwMemberChoice: one of a few words. */
#define SW_TYPE_MEMBER_CHOICE (sw_member_choice_get_type ())
G_DECLARE_FINAL_TYPE (SwMemberChoice, sw_member_choice, SW, MEMBER_CHOICE, SwMemberControl)

G_END_DECLS
