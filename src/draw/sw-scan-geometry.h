/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-look.h"
#include "draw/sw-pan-geometry.h"

G_BEGIN_DECLS

/* Where is what in the width scan chart. */
typedef struct
{
  SwBox plot;
  int key_lines;  /* above it */
  gsize from, to; /* widths, stitches */
} SwScanGeometry;

/* @from <= @to */
void sw_scan_geometry (gsize from, gsize to, double width, double height, SwScanGeometry *geometry);
double sw_scan_to_x (const SwScanGeometry *geometry, double stitches);
double sw_scan_to_y (const SwScanGeometry *geometry, double stack);

/* The width nearest to @x px, held between from and to. */
gsize sw_scan_width_at (const SwScanGeometry *geometry, double x);

/* Steps of the width axis: the closest of 1, 2, 5 x 10^n whose labels do not crowd. */
gsize sw_scan_step (const SwScanGeometry *geometry);

#define SW_SCAN_MAX_PEAKS 64

/**
 * sw_scan_peaks:
 * @results: (array length=n): one verdict per width, rising
 * @spacing: least distance of two peaks, stitches
 * @peaks: (out caller-allocates): SW_SCAN_MAX_PEAKS pointers into @results
 * Widths worth a word: none within @spacing stacks higher, and the verdict is
 * a pattern. The highest first.
 * Returns: how many
 */
gsize sw_scan_peaks (const SwPooling *results, gsize n, gsize spacing, const SwPooling **peaks);

G_END_DECLS
