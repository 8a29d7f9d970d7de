/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-bundle.h"
#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/*
 * A hank: the loop is drawn out, turned many times between two hands, folded
 * in the middle and let go, so that its two halves wind round each other; one
 * end is tucked through the other. It is one rope along one path, laid here
 * along x with the fold at the right.
 */

/**
 * SwHankShape:
 * @rounds: how often the loop is laid round itself first, when it is too long for two hands
 * @strand_cm: width that one strand takes in the bundle
 * @wraps: strands in a half of the rope's loop
 * @around: strands round the rope's skin
 * @rope_cm: length of the rope: half the loop as it is held
 * @length_cm, @radius_cm: of the folded hank; of the rope
 * @plied: turns of its two halves round each other
 * @left: turns that stay in each half
 * @label_cm: width of the paper band round the hank; 0: none
 */
typedef struct
{
  int rounds;
  double strand_cm, wraps;
  int around;
  double rope_cm, length_cm, radius_cm;
  double plied, left;
  double label_cm;
} SwHankShape;

void sw_hank_shape_init (SwHankShape *shape, const SwSketch *sketch);

/* No two hanks of a batch are turned and pulled quite alike: a little more twist or less, a little longer or shorter. */
void sw_hank_shape_vary (SwHankShape *shape, guint64 seed);

/**
 * sw_hank_shape_bundle:
 * @seed: no two hanks lie quite alike
 * @bundle: (out caller-allocates)
 */
void sw_hank_shape_bundle (const SwHankShape *shape, guint64 seed, SwBundle *bundle);

/**
 * sw_hank_shape_label:
 * @band: (out caller-allocates): the paper band round that bundle. Its columns
 *   run with the hank, the first towards the eye, the next ones up
 * Returns: the band's radius, cm
 */
double sw_hank_shape_label (const SwHankShape *shape, guint64 seed, SwBundle *band);

G_END_DECLS
