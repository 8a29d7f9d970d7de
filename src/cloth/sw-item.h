/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cloth/sw-stitches.h"

G_BEGIN_DECLS

/*
 * Things to wear, row by row with the number of stitches each row really
 * has, so that colours pool in them where they will be worn. Drawn flat: of
 * what is knitted in the round one half is seen. Sizes and ways of shaping
 * are common practice, no source.
 */

typedef enum
{
  SW_ITEM_SOCK,   /* from the cuff, a heel of short rows */
  SW_ITEM_HAT,    /* from the brim */
  SW_ITEM_MITTEN, /* from the cuff, its thumb last */
  SW_ITEM_SCARF,
  SW_ITEM_SHAWL, /* a triangle, from its tip */
  SW_N_ITEMS,
} SwItem;

const char *sw_item_name (SwItem item);   /* in commands: "sock" */
int sw_item_from_name (const char *name); /* -1 if none */

/**
 * SwItemRow:
 * @skein: which of those knitted in turn it is from
 * @start: index along its strand of the first stitch knitted
 * @stitches: knitted in it, those that are not seen too
 * @first, @seen: which of them, from the left as seen, lie on the side that is drawn; none of some
 * @left: of the first of these, stitch widths from the piece's middle line
 * @column: of the first, which stitch of the fabric it is
 * @rightward: knitted from left to right as seen
 */
typedef struct
{
  gsize skein, start, stitches;
  gsize first, seen, column;
  double left;
  gboolean rightward;
} SwItemRow;

/**
 * SwItemPiece: rows one upon the other, of one fabric.
 * @quarters: clockwise quarter turns of the way its rows grow; 0 is upwards
 * @x_cm, @y_cm: where its middle line begins, to the right and downwards
 * @stitch_cm, @row_cm: width of a stitch, height of a row
 * @drawn_in: shares by which its stitches are pulled together at its beginning and its end, as by a rib
 * @bend: 1 if its end bends to the right into the next piece, -1 if its beginning comes out of such a bend, 0 neither
 * @bend_cm: from its beginning to the inside of the bend; the outside is as far from there as the piece is wide
 * @bend_radius_cm: to which the outside is rounded
 * @begins: whether its first row has a cast-on
 * @ends, @closed: whether its last row has a cast-off, or is drawn together or grafted; else the next piece goes on
 */
typedef struct
{
  SwFabric fabric;
  int quarters;
  double x_cm, y_cm, stitch_cm, row_cm;
  double drawn_in[2];
  int bend;
  double bend_cm, bend_radius_cm;
  gboolean begins, ends, closed;
  SwItemRow *rows;
  gsize n_rows;
  gsize cast_on; /* index along the first skein's strand of the yarn in the cast-on, if it has one */
} SwItemPiece;

#define SW_ITEM_MOST_PIECES 6

/**
 * SwItemKnit: an item as far as the yarn goes.
 * @left_cm .. @bottom_cm: its extent
 * @stitches: of all strands that it takes, the cast-on's yarn counted
 * @whole: the yarn was enough
 */
typedef struct
{
  SwItemPiece pieces[SW_ITEM_MOST_PIECES];
  gsize n_pieces;
  double left_cm, top_cm, right_cm, bottom_cm;
  gsize stitches;
  gboolean whole;
} SwItemKnit;

/**
 * SwItemYarn: what an item is knitted from.
 * @stitch_cm, @row_cm: of the body's fabric
 * @rib_cm: height of a row of rib
 * @stitch_length_cm: yarn in a stitch
 * @alternation: skeins knitted in turn, by the rows of the whole item
 * @n_stitches: in the strand of each of them
 * @cast_on: yarn in the cast-on over the width
 */
typedef struct
{
  SwFabric fabric;
  double stitch_cm, row_cm, rib_cm, stitch_length_cm;
  SwAlternation alternation;
  gsize n_stitches[SW_MOST_ALTERNATE];
  double cast_on;
} SwItemYarn;

void sw_item_knit (SwItem item, const SwItemYarn *yarn, SwItemKnit *knit);
void sw_item_knit_clear (SwItemKnit *knit);

/**
 * sw_item_stitch:
 * @column: among those that are seen, 0 .. seen - 1; beyond them the stitches that lie behind the fold
 * Returns: index along the strand of the row's skein
 */
gsize sw_item_stitch (const SwItemRow *row, gssize column);

/* The stitch gauge's multiple of @multiple nearest to @cm, at least one. */
gsize sw_item_width (double cm, double stitch_cm, gsize multiple);

G_END_DECLS
