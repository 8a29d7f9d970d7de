/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/parts/sw-member-control.h"

G_BEGIN_DECLS

/* SwMemberFlag: yes or no; neither when the things selected differ. */
#define SW_TYPE_MEMBER_FLAG (sw_member_flag_get_type ())
G_DECLARE_FINAL_TYPE (SwMemberFlag, sw_member_flag, SW, MEMBER_FLAG, SwMemberControl)

G_END_DECLS
