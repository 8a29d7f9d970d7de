/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cloth/sw-fabric.h"
#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/* The light and shade of a fabric's stitches at one size, worked out once and laid down many times. */

/**
 * SwStitchStyle: what all stitches of a cloth share.
 * @stitch, @row: size of a cell, device px, >= 1; need not be whole
 * @length, @diameter: of the yarn in a stitch and of the strand, in stitch widths
 * @purl_side: the fabric is seen from behind
 * @quarters: the drawing will be turned so many quarters clockwise; the light stays where it is
 */
typedef struct
{
  double stitch, row;
  double length, diameter;
  SwFabric fabric;
  gboolean purl_side;
  SwFibre fibre;
  int plies;
  int quarters;
} SwStitchStyle;

/* Where a stitch has no neighbour, as seen. */
typedef enum
{
  SW_EDGE_LEFT = 1 << 0,
  SW_EDGE_RIGHT = 1 << 1,
  SW_EDGE_CAST_ON = 1 << 2,  /* below; the cast-on shows */
  SW_EDGE_TOP = 1 << 3,      /* above: its head is open */
  SW_EDGE_CAST_OFF = 1 << 4, /* above, with the cast-off's chain */
} SwStitchEdge;

/**
 * SwStitchFragment: what one segment of a stitch adds to one pixel.
 * @x: of the pixel in the patch
 * @segment: of the strand, from left to right: 0 .. n - 1; n is the edge's own strand
 * @light: factor on the colour in linear light, with the share of the pixel in it
 * @cover: share of the pixel, 0 .. 1
 * @dye: how much more dye shows than in the mean, with the light in it
 */
typedef struct
{
  gint16 x;
  guint16 segment;
  float light, cover, dye;
} SwStitchFragment;

/* @lines: (array length=height+1): the first fragment of each line */
typedef struct
{
  guint *lines;
  SwStitchFragment *fragments;
} SwStitchLayer;

/**
 * SwStitchPatch: one stitch, in device pixels.
 * @x, @y: of the patch's upper left pixel, from the pixel that holds the upper left corner of the stitch's cell
 * @seen: what is seen of it
 * @under: what lies just beneath its neighbours, and is seen where they leave
 *   a share of a pixel free, at their edges or because they lie a little
 *   otherwise than they should
 *
 * Over a fabric's stitches the light sums to the cover and the dye to nothing,
 * so that cloth of one colour has that colour in the mean. Neighbours overlap
 * a little: the cover of all that is seen on a pixel may add up to more than
 * one, and divides their light.
 */
typedef struct
{
  int x, y, width, height;
  SwStitchLayer seen, under;
} SwStitchPatch;

typedef struct _SwStitchMask SwStitchMask;

SwStitchMask *sw_stitch_mask_new (const SwStitchStyle *style) G_GNUC_WARN_UNUSED_RESULT;
void sw_stitch_mask_free (SwStitchMask *mask);

const SwStitchStyle *sw_stitch_mask_get_style (const SwStitchMask *mask);

/* Segments that a stitch's strand is cut into for its colours. */
int sw_stitch_mask_get_segments (const SwStitchMask *mask);

/* How far a stitch reaches above and below its cell, in px. */
double sw_stitch_mask_get_reach (const SwStitchMask *mask);

/* How far below the cells of the first row the cast-on closes the cloth, px. */
double sw_stitch_mask_get_foot (const SwStitchMask *mask);

/**
 * sw_stitch_mask_patch:
 * @row, @column: as seen, counted from the cast-on and from the left
 * @edges: SwStitchEdge
 * @x, @y: upper left corner of the cell, device px
 * @chance: 64 bits that belong to the stitch: no two stitches are quite alike
 * @pixel_x, @pixel_y: (out): the pixel the patch counts from
 * Patches are made when they are first asked for.
 */
const SwStitchPatch *sw_stitch_mask_patch (SwStitchMask *mask, gsize row, gsize column, guint edges, double x, double y, guint64 chance, int *pixel_x, int *pixel_y);

/* The light of the brightest hundredth of a fabric, > 1. */
float sw_stitch_mask_get_peak (const SwStitchMask *mask);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwStitchMask, sw_stitch_mask_free)

G_END_DECLS
