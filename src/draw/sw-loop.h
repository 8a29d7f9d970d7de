/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-tube.h"

G_BEGIN_DECLS

/*
 * The centre line of a stitch's loop, after K. F. Choi & T. Y. Lo 2003, "An
 * energy model of plain knitted fabric", Text. Res. J. 73:739. For half a
 * loop, t from 0 in the middle of the sinker to 1 in the middle of the head,
 * wale spacing w, course spacing c, yarn diameter d and thickness of the
 * fabric t_h:
 *
 *   x(t) = a t^3 - 1.5 a t^2 + 0.5 (a + w) t
 *   y(t) = 0.5 (c + 2 e) (1 - cos (pi t))
 *   z(t) = 0.5 (t_h - d) (1 - cos (2 pi t))
 *
 * with t_h such that strands just touch where they cross; a soft strand gives
 * way where it is pressed, so t_h is held in bounds. They find e from contacts
 * and energy; we solve it for the yarn that is in a stitch.
 *
 * A stitch is knit or purl by the side to which it was pulled through the one
 * below. Its foot goes by its own side, its head by that of the stitch above;
 * between them the leg passes through the cloth if the two differ.
 *
 * Lengths are in wale spacings.
 */
typedef struct
{
  float row;      /* c */
  float fullness; /* a */
  float half;     /* 0.5 (c + 2 e): half the loop's height */
  float depth;    /* t_h - d */
  float radius;
} SwLoop;

/**
 * sw_loop_init:
 * @row: height of a row, > 0
 * @length: of yarn in a stitch
 * @diameter: of the strand, > 0
 * What no loop can be (too little yarn, too thick) is held to the nearest that can.
 */
void sw_loop_init (SwLoop *loop, double row, double length, double diameter);

/* Yarn in the loop, for a plain knit stitch. */
double sw_loop_length (const SwLoop *loop);

/**
 * SwLoopSides: +1 knit, -1 purl, as seen.
 * @above: of the stitch that hangs in this one's head; as @own if none does
 * @left, @right: of the neighbours that its sinkers lead to
 */
typedef struct
{
  float own, above, left, right;
} SwLoopSides;

/**
 * SwLoopWander: how one stitch differs from the ideal, all 0 for the plain one.
 * @lean: how far its head stands to the right
 * @tall, @wide: shares by which the head is higher, the legs farther apart
 * @bow: how far the legs bend aside, left and right
 */
typedef struct
{
  float lean, tall, wide, bow[2];
} SwLoopWander;

/* Points of a whole loop. */
#define SW_LOOP_POINTS 57

/**
 * sw_loop_trace:
 * @column, @row: of the stitch, from the one whose cell's lower edge has its middle at 0, 0
 * @points: (out caller-allocates): SW_LOOP_POINTS, from left to right; place
 *   follows the length of yarn
 */
void sw_loop_trace (const SwLoop *loop, const SwLoopSides *sides, const SwLoopWander *wander, int column, int row, SwTubePoint *points);

G_END_DECLS
