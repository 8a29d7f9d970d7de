/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-loop.h"
#include "draw/sw-stitch-mask.h"
#include "draw/sw-yarn-light.h"

G_BEGIN_DECLS

/* One stitch among its neighbours, seen on a grid of samples: whose strand is where, how it is lit, what it hides. */

/**
 * SwStitchScene: what the samples of all stitches of a mask share.
 * @slack: how far a stitch reaches beneath its neighbours, stitch widths: two
 *   stitches may each lie a little off, and no hole may open between them
 */
typedef struct
{
  SwStitchStyle style;
  SwLoop loop;
  SwYarnLight yarn;
  float slack;
} SwStitchScene;

/**
 * SwStitchSamples: planes of width x height; grid units are stitch widths, x
 * from the middle of the stitch, y up from the cell's lower edge.
 * @others, @others_across: heights of the neighbours, and whether their middle or their edge is seen, as @across
 * @own, @place, @across: of the stitch's own strand; places of the edge's own strand are 2 .. 3
 * @light, @dye: how it is lit where it is seen
 * @cover: 1 where it is seen, less under hairs; -1 just beneath a neighbour,
 *   which may not be quite where it is thought to be; 0 elsewhere
 */
typedef struct
{
  SwTubeGrid grid;
  float *others, *others_across, *own, *place, *across, *light, *dye, *cover, *blur, *line;
} SwStitchSamples;

void sw_stitch_samples_init (SwStitchSamples *samples, const SwTubeGrid *grid);
void sw_stitch_samples_clear (SwStitchSamples *samples);

/* Fills `others` for a stitch of a kind: of the row and column, as seen, with those @edges. */
void sw_stitch_sample_others (const SwStitchScene *scene, int row, int column, guint edges, SwStitchSamples *samples);

/* Fills the rest, for the stitch of that kind with the @shape of its own; 0 is the plain one. */
void sw_stitch_sample_own (const SwStitchScene *scene, int row, int column, guint edges, int shape, SwStitchSamples *samples);

/* How far below the cell the middle of the cast-on's strand lies where it is highest, stitch widths. */
float sw_stitch_edge_low (const SwLoop *loop);

/* A place of the edge's own strand. */
static inline gboolean
sw_stitch_place_is_edge (float place)
{
  return place > 1.5f;
}

G_END_DECLS
