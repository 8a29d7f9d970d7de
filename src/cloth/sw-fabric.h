/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/* Which stitches of a fabric are knit and which purl, and how it measures. All fabrics have the same grid of rows and columns. */

/**
 * sw_fabric_is_purl:
 * @row: from the cast-on edge
 * @column: from the left, on the side that stockinette shows as knit
 * Returns: whether the stitch shows as purl on that side
 */
gboolean sw_fabric_is_purl (SwFabric fabric, gsize row, gsize column);

/* Rows and columns after which the fabric repeats: 1 or 2. */
gsize sw_fabric_row_repeat (SwFabric fabric);
gsize sw_fabric_column_repeat (SwFabric fabric);

/**
 * sw_fabric_courses:
 * @wales_per_cm: > 0
 * Returns: rows to a cm where only the stitch gauge is known: Munden's ratio
 *   for stockinette and rib; for garter and seed stitch common practice, no source
 */
double sw_fabric_courses (SwFabric fabric, double wales_per_cm);

G_END_DECLS
