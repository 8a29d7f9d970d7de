/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-look.h"
#include "draw/sw-pan-geometry.h"

G_BEGIN_DECLS

/* Where is what in the width scan chart. */
typedef struct
{
  SwBox plot;
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

/* One width worth a word on the chart. */
typedef struct
{
  gsize width;
  double stack;
  SwVerdict verdict;
  SwWorked worked;
} SwScanPeak;

#define SW_SCAN_MAX_PEAKS 24

/**
 * sw_scan_peaks:
 * @results: (array length=n): one verdict per width, rising
 * @spacing: least distance of two peaks, stitches
 * @peaks: (out caller-allocates): SW_SCAN_MAX_PEAKS
 * Widths whose stack is the highest within @spacing and whose verdict is a
 * pattern, the highest first.
 * Returns: how many
 */
gsize sw_scan_peaks (const SwPooling *results, gsize n, gsize spacing, SwScanPeak *peaks);

G_END_DECLS
