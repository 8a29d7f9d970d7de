/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-grain.h"
#include "draw/sw-hank-yarn.h"
#include "draw/sw-skin.h"

G_BEGIN_DECLS

/*
 * The strands on a hank's skin as round cords in space. They wander sideways
 * and heave up and down among their neighbours; one that dives goes beneath
 * these, which close over it; a few leave the bundle for a while. Coordinates
 * are those of SwBundle.
 */

/**
 * SwStrandKnot: one strand at one ring of the bundle.
 * @half: half its width, cm
 * @normal: of the bundle's skin there
 * @course: unit vector along the strand
 * @lift: of its middle from where it would lie evenly, strand widths
 * @over: 0 .. 1: how closely a neighbour stands over it, on the side of the strand before it and of the one after it
 */
typedef struct
{
  float x, y, z, half;
  float normal[3], course[3];
  float lift, over[2];
} SwStrandKnot;

/**
 * SwHankStrands:
 * @knots: n x n_rings
 * @along: n_rings: the bundle's
 * @boxes: n x n_boxes x 4: left, top, right and bottom of each stretch of SW_STRAND_STRETCH rings, for quick refusal
 */
typedef struct
{
  int n, n_rings, n_boxes;
  SwStrandKnot *knots;
  const float *along;
  float *boxes;
} SwHankStrands;

#define SW_STRAND_STRETCH 12

/**
 * SwHankHold: where something lies tightly round the hank.
 * @axis: unit vector along the hank
 * @from, @to: along that axis, cm; both 0: nothing does
 */
typedef struct
{
  float axis[2], from, to;
} SwHankHold;

/**
 * sw_hank_strands_init:
 * @bundle: as it lies in the picture
 * @hold: no strand leaves the bundle there
 * @strand_cm: from one strand to the next
 * @seed: which strands leave the bundle, and where
 */
void sw_hank_strands_init (SwHankStrands *strands, const SwBundle *bundle, const SwHankYarn *yarn, const SwGrain *grain, const SwHankHold *hold, double strand_cm, guint64 seed);
void sw_hank_strands_clear (SwHankStrands *strands);

/* The least and greatest x and y of what is seen of them, cm: left, top, right, bottom. */
void sw_hank_strands_extents (const SwHankStrands *strands, float *box);

/**
 * sw_hank_strands_raster:
 * @samples: (inout): as of sw_skin_raster(); @patch becomes strand x (n_rings - 1) + ring, @u -1 .. 1 from the strand's right edge to its left, @v along it
 * @grain: fibres stand out over the edges as it has it
 */
void sw_hank_strands_raster (const SwHankStrands *strands, const SwGrain *grain, const SwSkinView *view, SwSkinSample *samples);

G_END_DECLS
