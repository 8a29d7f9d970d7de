/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * What one knit stitch looks like on the knit side. It is two legs that lean
 * apart like a V; each leg's foot is tucked behind the row below. The first
 * row's feet are tucked behind the cast-on, a bead to a stitch.
 */

typedef enum
{
  SW_PART_LEFT,
  SW_PART_RIGHT,
  SW_PART_FIRST_LEFT, /* of the first row */
  SW_PART_FIRST_RIGHT,
  SW_PART_BEAD,
  SW_N_PARTS,
} SwStitchPart;

/* How far a stitch reaches beyond its cell above and below, in rows. */
#define SW_STITCH_ABOVE 0.32
#define SW_STITCH_BELOW 0.5

/* A leg's half width and its way outwards, by steps from foot to head; tabled, since every sample asks for them. */
#define SW_STITCH_STEPS 256

typedef struct
{
  float half[SW_STITCH_STEPS + 1];     /* 1 at the widest, about */
  float outwards[SW_STITCH_STEPS + 1]; /* 0 foot .. 1 head */
} SwStitchOutline;

void sw_stitch_outline_init (SwStitchOutline *outline);

/* One part's course: x in cell widths from the middle of the stitch, y in rows from the cell's lower edge. */
typedef struct
{
  const SwStitchOutline *outline;
  double foot_x, head_x, half;
  double turns, turn_phase; /* of the plies over the leg's length */
  double ply_depth;
  double lean;  /* +1 right leg, -1 left leg */
  double slack; /* rows that a stitch reaches further beneath its neighbours than it shows; 0 unless set */
} SwStitchShape;

/**
 * sw_stitch_shape_for:
 * @number: each has a shape of its own; 0 is the plain one
 * @stitch: width of a cell, px: the plies fade in with it
 * A bead takes the left leg's plies.
 */
SwStitchShape sw_stitch_shape_for (const SwStitchOutline *outline, int number, SwStitchPart part, double stitch, int plies);

/**
 * sw_stitch_sample:
 * @x: to the right from the middle of the stitch, cell widths
 * @y: up from the cell's lower edge, rows
 * @light, @cover: (inout): get the part's light added and 1, if it is the one
 *   that is seen there; the dark between the wales is its stitch's own
 */
void sw_stitch_sample (const SwStitchShape *shape, SwStitchPart part, double x, double y, float *light, float *cover);

G_END_DECLS
