/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-linear.h"
#include "draw/sw-stitch-mask.h"

G_BEGIN_DECLS

/*
 * Lays rows of stitches into a picture, a band of lines at a time: light is
 * gathered in linear light from all stitches that share a pixel.
 */

/* Red, green, blue in linear light and cover. */
typedef float SwGather __attribute__ ((vector_size (16)));

typedef struct
{
  SwStitchMask *mask;
  SwLinear linear;
  int x, width;
  int y, lines;       /* of the band */
  double stitch, row; /* px */
  /*< private >*/
  float peak;
  int segments;
  SwGather *gather;  /* what is seen */
  SwGather *under;   /* what would be seen, were nothing over it */
  guint8 *inside;    /* whether a pixel is amid stitches, whatever covers it */
  SwGather *legs;    /* 3 vectors a leg: lit, flat, deep */
  SwGather *colours; /* the same by segments of one stitch */
  guint32 *codes;
  gsize room; /* legs */
} SwStitchPainter;

/**
 * SwStitchRow: stitches side by side.
 * @row, @column: of the first, as seen, from the cast-on and the left: which stitch of the fabric it is
 * @x, @y: upper left corner of the first cell, device px
 * @n: stitches
 * @edges: of all of them
 * @left_edge, @right_edge: of the first and the last
 * @xyz: 3 x 2 (n + 2): XYZ planes of the left and right legs, with those of the neighbours to both sides
 * @edge_xyz: (nullable): 3 x n of the cast-on or cast-off
 * @address: whose chance: rows have different ones
 */
typedef struct
{
  gsize row, column, n;
  double x, y;
  guint edges;
  gboolean left_edge, right_edge;
  const float *xyz, *edge_xyz;
  guint64 address;
} SwStitchRow;

/**
 * sw_stitch_painter_init:
 * @x, @width: of the picture, device px
 * @most_lines: of a band
 * @most_stitches: in a row
 */
void sw_stitch_painter_init (SwStitchPainter *painter, const SwStitchStyle *style, int x, int width, int most_lines, gsize most_stitches);
void sw_stitch_painter_clear (SwStitchPainter *painter);

/* Begins a band of @lines lines from @y. */
void sw_stitch_painter_begin (SwStitchPainter *painter, int y, int lines);
void sw_stitch_painter_add (SwStitchPainter *painter, const SwStitchRow *row);

/**
 * sw_stitch_painter_end:
 * @pixels: (out): the band's, premultiplied CAIRO_FORMAT_ARGB32, clear where no stitch is
 */
void sw_stitch_painter_end (SwStitchPainter *painter, int stride, guint32 *pixels);

G_END_DECLS
