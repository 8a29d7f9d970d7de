/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-member.h"

/* Values for the tests that walk every member. To be cleared with sw_value_clear(). */

/* An allowed value that is not the member's default. A dye: the id 7. */
SwValue sketch_value_other (const SwMember *member);

/* A value that the member alone refuses. */
SwValue sketch_value_bad (const SwMember *member);

/* Drawn by g_test_rand: mostly allowed, often at an edge, one in twelve refused. */
SwValue sketch_value_random (const SwMember *member, const SwSketch *sketch);
