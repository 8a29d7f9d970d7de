/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* One stretch of one colour on the loop. */
typedef struct
{
  gsize from, to; /* places, from <= i < to */
  double l, a, b; /* mean CIELAB */
} SwStripRun;

#define SW_STRIP_MAX_PLACES 1024

/**
 * sw_strip_runs:
 * @l, @a, @b: (array length=n): CIELAB at places along the loop, evenly
 * @n: 1 .. SW_STRIP_MAX_PLACES
 * @runs: (out caller-allocates): up to @n, in order, covering all places
 *
 * Joins the two neighbouring stretches that are most alike, as long as they
 * differ by less than a person would call two colours; then those too short
 * to be called a stretch to the more alike of their neighbours. The loop's
 * ends are not joined here.
 *
 * Returns: how many runs
 */
gsize sw_strip_runs (const float *l, const float *a, const float *b, gsize n, SwStripRun *runs);

/* Plain CIELAB distance of two runs' colours. */
double sw_strip_run_distance (const SwStripRun *a, const SwStripRun *b);

/* Below this the loop's first and last run are one colour that goes on round the loop. */
#define SW_STRIP_SAME 12.0

G_END_DECLS
