/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* No stitch lies farther from its place, stitch widths either way. */
#define SW_STITCH_DRIFT 0.10

/**
 * sw_stitch_drift:
 * @row, @column: of the fabric
 * @right, @up: (out): how far the stitch lies from where the gauge puts it, stitch widths
 *
 * Hands do not pull every stitch alike: rows and columns wander, over some
 * stitches at a time, so that neighbours move together and no hole opens. The
 * same for the same stitch at every size. How far is by eye (common practice,
 * no source).
 */
void sw_stitch_drift (gsize row, gsize column, double *right, double *up);

G_END_DECLS
