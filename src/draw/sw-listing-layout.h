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
 * @small: a line of small letters
 * @cloth: its lower left corner is at that of the box; as far as the box reaches the picture's edge, the cloth runs off it
 * @cloth_tilt: about that corner, clockwise as seen, radians
 * @lying: several hanks lie along the picture, one below the other, instead of upright
 * @hank_room: that each hank's outline must fit into
 */
typedef struct
{
  SwBox safe, stage, cloth, skein, palette, caption, small, mark;
  double chip, names; /* of the palette: height of a chip, and from its top to that of the names */
  double cloth_tilt;
  gboolean lying;
  int n_hanks;
  SwHankPlace hanks[SW_MOST_HANKS];
  SwBox hank_room[SW_MOST_HANKS];
} SwListingLayout;

/**
 * SwListingFoot: what stands beneath the yarn, as measured.
 * @mark_aspect: width over height of the maker's mark; 0: none
 * @caption_lines: at the usual size; 0: none
 * @name_lines: of the names in the palette, 1 or 2
 * @small: whether there is a line of small letters
 */
typedef struct
{
  double mark_aspect;
  int caption_lines, name_lines;
  gboolean small;
} SwListingFoot;

/* Whether caption, maker's name and mark are read on a label band instead of beneath the picture. */
gboolean sw_listing_on_label (const SwListingSettings *listing);

/* The letters' height in a caption, and how wide its lines may be. */
void sw_listing_caption_room (const SwListingSettings *listing, double mark_aspect, double width, double height, double *letters, double *room);

/* The same of a palette of @n colours. */
void sw_listing_palette_room (int n, double width, double height, double *letters, double *room);

/**
 * sw_listing_layout:
 * @foot: caption and mark are left out where the label has them
 * @slim: width of a hank of this yarn over its length
 */
void sw_listing_layout (const SwListingSettings *listing, const SwListingFoot *foot, double slim, double width, double height, SwListingLayout *layout);

G_END_DECLS
