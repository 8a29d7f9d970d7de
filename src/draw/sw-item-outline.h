/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cloth/sw-item.h"

G_BEGIN_DECLS

/*
 * What is knitted in the round is a tube; laid flat it ends to both sides in
 * a fold, not in a selvedge. Stitches go on beyond it, so rows of different
 * lengths have a smooth outline, whichever stitches it cuts through.
 */

/* Stitches drawn beyond the fold, to be cut. */
#define SW_ITEM_BEYOND 4

/* Whether a piece lies folded (not all of its stitches are seen) or its rows end in steps, which cloth evens out by itself. */
gboolean sw_item_is_cut (const SwItemPiece *piece);

#define SW_ITEM_NO_SEAM 1e9f

/**
 * SwItemOutline: of one piece, by lines of pixels from its top down.
 * @stitch: px
 * @left, @right: (array length=lines): where it ends, px from its middle line
 * @share: (array length=lines): of the width that its stitches have there
 * @seam: (array length=lines): where it meets the other piece of a bend, px from its middle line, or SW_ITEM_NO_SEAM
 */
typedef struct
{
  int lines;
  float stitch;
  float *left, *right, *share, *seam;
} SwItemOutline;

/**
 * sw_item_outline_init:
 * @stitch, @row: px
 * @top: of the first line, px from where the piece begins; upwards is negative
 * @beneath: at its bend the piece goes on a little beneath the next one
 */
void sw_item_outline_init (SwItemOutline *outline, const SwItemPiece *piece, double stitch, double row, int top, int lines, gboolean beneath);
void sw_item_outline_clear (SwItemOutline *outline);

/**
 * sw_item_outline_cut:
 * @left: of the pixels, px from the middle line
 * @pixels: (inout): lines x width of the whole rows, premultiplied; draws them in to their share and cuts them off, both smoothly
 */
void sw_item_outline_cut (const SwItemOutline *outline, int left, int width, guint32 *pixels);

/* A premultiplied pixel of which only the share @cover, 0 .. 1, is left. */
guint32 sw_item_fade (guint32 pixel, float cover);

G_END_DECLS
