/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-pan-geometry.h"

G_BEGIN_DECLS

#define SW_MOST_HANKS 8

/* A hank's middle and how it lies: see sw_hank_new(). */
typedef struct
{
  double x, y, angle;
} SwHankPlace;

/**
 * SwListingLayout: what is where in a listing's picture, px. Boxes without a
 * width are not there. The cloth may run off the picture, as cloth does
 * beneath a camera; nothing else does.
 * @safe: what shops do not cut off
 * @stage: for the yarn
 * @cloth: its lower left corner is at that of the box; as far as the box reaches the picture's edge, the cloth runs off it
 * @cloth_tilt: about that corner, clockwise as seen, radians
 * @lying: several hanks lie along the picture, one below the other, instead of upright
 * @hank_room: that each hank's outline must fit into
 */
typedef struct
{
  SwBox safe, stage, cloth, skein, palette, caption, mark;
  double cloth_tilt;
  gboolean lying;
  int n_hanks;
  SwHankPlace hanks[SW_MOST_HANKS];
  SwBox hank_room[SW_MOST_HANKS];
} SwListingLayout;

/**
 * sw_listing_layout:
 * @mark_aspect: width over height of the maker's mark; 0: none
 */
void sw_listing_layout (const SwListingSettings *listing, double mark_aspect, double width, double height, SwListingLayout *layout);

G_END_DECLS
