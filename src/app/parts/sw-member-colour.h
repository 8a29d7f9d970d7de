/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/parts/sw-member-control.h"

G_BEGIN_DECLS

/**
 * SwMemberColour: the colour of a sample: chosen on the screen, typed as a
 * code or as CIELAB, or read from a file of a spectrum, which may also be
 * dropped on it.
 */
#define SW_TYPE_MEMBER_COLOUR (sw_member_colour_get_type ())
G_DECLARE_FINAL_TYPE (SwMemberColour, sw_member_colour, SW, MEMBER_COLOUR, SwMemberControl)

G_END_DECLS
