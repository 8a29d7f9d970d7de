/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/*
 * How the laid skeins look from above: where their edges are and which way
 * the wraps run. Runs side by side are joined by turns at the ends, at which
 * the wraps go round; stacked runs end in a fold; an opened ring goes on from
 * its right end to its left.
 */
typedef struct
{
  double length, lane; /* cm: of the laid loop; width of one skein */
  int lanes;
  int runs_across; /* of one skein, side by side */
  gboolean ring;   /* opened: no turns */
  double fold_cm;  /* how far in a fold's rounding reaches */
} SwSkeinShape;

/**
 * SwSkeinPoint: the yarn at one place.
 * @inside: cm to the nearest edge of its bundle; below 0 there is no yarn
 * @across: -1 .. 1 from edge to edge of its bundle (one run)
 * @strand: cm across the lane's wraps, following the turns; no two bundles share values
 * @end: 0 in the open .. 1 at the very end of a fold
 */
typedef struct
{
  float inside, across, strand, end;
} SwSkeinPoint;

void sw_skein_shape_init (SwSkeinShape *shape, const SwSketch *sketch);
SwSkeinPoint sw_skein_shape_at (const SwSkeinShape *shape, double x_cm, double y_cm);

G_END_DECLS
