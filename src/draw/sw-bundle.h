/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Many strands lying together along a path, as a skin of points in space: cm,
 * x to the right, y down as seen, z towards the eye. The skin's columns run
 * with the strands, so they wind round the path as these do.
 */

/**
 * SwBundleRing: one place of the path.
 * @radius: of the bundle, cm
 * @push_x, @push_y, @push_z: unit vector: from where something presses on it
 * @squash: how much flatter it is in that direction, and wider across, 0 .. 1
 */
typedef struct
{
  float x, y, z, radius;
  float push_x, push_y, push_z, squash;
} SwBundleRing;

/**
 * SwBundle:
 * @points, @normals: n_rings x (n_around + 1) x 3; the last column is the first again
 * @along: n_rings: how far along the path, cm
 * @boxes: (nullable): (n_rings - 1) x 4: left, top, right and bottom of the skin between a ring and the next, for quick refusal
 */
typedef struct
{
  int n_rings, n_around;
  float *points, *normals, *along, *boxes;
} SwBundle;

/**
 * sw_bundle_init:
 * @rings: (array length=n_rings): at least 3, close together
 * @turns: of the strands round the path over its length; positive ones as a right-handed screw
 * @uneven: how far locks of strands stand off, a share of the radius
 * @seed: whose locks
 */
void sw_bundle_init (SwBundle *bundle, const SwBundleRing *rings, int n_rings, int n_around, double turns, double uneven, guint64 seed);
void sw_bundle_clear (SwBundle *bundle);

/* The middle of a ring of the skin. */
void sw_bundle_middle (const SwBundle *bundle, int ring, float *middle);

/* The same, @deep cm beneath its skin, or its middle. @shrunk: (out caller-allocates) */
void sw_bundle_shrunk (const SwBundle *bundle, double deep, SwBundle *shrunk);

/* Turns everything by an angle about the z axis, clockwise as seen, radians. */
void sw_bundle_turn (SwBundle *bundle, double angle);

/* Finds the boxes; nothing may be turned afterwards. */
void sw_bundle_find_boxes (SwBundle *bundle);

/* The least and greatest of each coordinate. */
void sw_bundle_extents (const SwBundle *bundle, float *least, float *most);

G_END_DECLS
