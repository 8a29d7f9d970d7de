/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-laid-ties.h"
#include "draw/sw-relief.h"
#include "draw/sw-wraps.h"

G_BEGIN_DECLS

/**
 * sw_laid_threads_lay:
 * @relief: the yarn's
 * Adds the ties' threads to the wraps: each goes across its bundle in one
 * sweep, over the yarn as it lies, and is knotted near the far edge.
 */
void sw_laid_threads_lay (SwWraps *wraps, const SwLaidTies *ties, const SwSketch *sketch, const SwRelief *relief);

G_END_DECLS
