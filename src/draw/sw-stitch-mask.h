/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-stitch-light.h"

G_BEGIN_DECLS

/* The light and shade of stitches at one size, worked out once and laid down many times. */

/**
 * SwStitchPatch: one leg or bead, in device pixels.
 * @x, @y: of the patch's upper left pixel, from the pixel that holds the upper left corner of the stitch's cell
 * @light: height x width factors on the part's colour in linear light, with the
 *   part's share of the pixel in them
 * @cover: height x width shares of the pixel that the stitch covers, 0..1
 *
 * Over a whole stitch the light sums to the cover, so that cloth of one colour
 * has that colour in the mean. Neighbours overlap a little: the cover of all
 * stitches on a pixel may add up to more than one, and divides their light.
 */
typedef struct
{
  int x, y, width, height;
  float *light;
  float *cover;
} SwStitchPatch;

typedef struct _SwStitchMask SwStitchMask;

/**
 * sw_stitch_mask_new:
 * @stitch, @row: size of a cell, device px, >= 1; need not be whole
 * @plies: of the yarn, >= 1; they show when there is room
 * @edge: whether the first row and the cast-on are wanted too
 */
SwStitchMask *sw_stitch_mask_new (double stitch, double row, int plies, gboolean edge) G_GNUC_WARN_UNUSED_RESULT;
void sw_stitch_mask_free (SwStitchMask *mask);

/**
 * sw_stitch_mask_patch:
 * @x, @y: upper left corner of the cell, device px
 * @chance: 64 bits that belong to the stitch: no two stitches are quite alike
 * @pixel_x, @pixel_y: (out): the pixel the patch counts from
 */
const SwStitchPatch *sw_stitch_mask_patch (const SwStitchMask *mask, SwStitchPart part, double x, double y, guint64 chance, int *pixel_x, int *pixel_y);

/* The light of the brightest hundredth of a stitch of shape 0, > 1. */
float sw_stitch_mask_get_peak (const SwStitchMask *mask);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwStitchMask, sw_stitch_mask_free)

G_END_DECLS
