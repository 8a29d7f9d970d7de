/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-stitch-mask.h"

G_BEGIN_DECLS

/*
 * Masks kept from one picture to the next, as plans of a transform are:
 * whoever scrolls or drags asks for the same stitches again and again. A mask
 * is used by one thread at a time; what is drawn does not depend on whether it
 * was kept.
 */

/* Returns: (transfer full): a mask of that style, kept or new; for sw_stitch_masks_give_back() */
SwStitchMask *sw_stitch_masks_take (const SwStitchStyle *style) G_GNUC_WARN_UNUSED_RESULT;

/* Keeps it, and lets go of the one that was used longest ago if there are too many. */
void sw_stitch_masks_give_back (SwStitchMask *mask);

G_END_DECLS
