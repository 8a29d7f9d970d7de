/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/parts/sw-member-control.h"

G_BEGIN_DECLS

/* SwMemberDye: which of the dye pots a pour is from. */
#define SW_TYPE_MEMBER_DYE (sw_member_dye_get_type ())
G_DECLARE_FINAL_TYPE (SwMemberDye, sw_member_dye, SW, MEMBER_DYE, SwMemberControl)

G_END_DECLS
