/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/*
 * Which stitch of the strand is where in the cloth.
 *
 * The strand is cut into stitches of one length from its start. The cast-on
 * and the turns use whole stitches of it, so that a change of width only
 * moves an index: the error is under half a stitch, well inside the rule of
 * thumb that the cast-on itself is.
 */

/* Centres of the two legs that show on the knit side, and their half-width, in stitch lengths. */
#define SW_LEG_FIRST 0.275
#define SW_LEG_SECOND 0.725
#define SW_LEG_HALF 0.175

/**
 * SwAlternation: several skeins in turn: the first for @rows rows, then the
 * next, and round again. Each goes on where it was left. Up to one skein:
 * there is none to alternate with.
 */
typedef struct
{
  gsize skeins; /* up to SW_MOST_ALTERNATE */
  gsize rows;   /* >= 1 */
} SwAlternation;

/* Which skein a row is knitted from, 0 the first, and which of that skein's rows it is. */
gsize sw_alternation_skein (const SwAlternation *alternation, gsize row);
gsize sw_alternation_own_row (const SwAlternation *alternation, gsize row);

typedef struct
{
  SwWorked worked;
  gsize width;    /* stitches in a row */
  gsize cast_on;  /* stitches' worth of yarn used before the first row */
  double turn;    /* stitches' worth of yarn at each turn of flat work, >= 0 */
  gsize n;        /* stitches in the strand */
  SwAlternation alternation;
  gsize next_n[SW_MOST_ALTERNATE - 1]; /* stitches in the strands of the next skeins; these have no cast-on */
} SwLayout;

/* Rows that are full. */
gsize sw_layout_rows (const SwLayout *layout);

/**
 * sw_layout_stitch:
 * @row: from the cast-on edge, 0 the first
 * @column: as seen on the knit side, from the left, 0 .. width - 1
 * Returns: index along the strand of that row's skein, sw_alternation_skein();
 *   G_MAXSIZE if the strand does not reach there
 *
 * Worked to and fro, even rows run from right to left as they are knitted and
 * odd rows back. In the round all run the same way. Row r column c as seen.
 */
gsize sw_layout_stitch (const SwLayout *layout, gsize row, gsize column);

/* Whether the stitch at that row is worked from left to right as seen, so its first leg is the left one. */
gboolean sw_layout_rightward (const SwLayout *layout, gsize row);

G_END_DECLS
