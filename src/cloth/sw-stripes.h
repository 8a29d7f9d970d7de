/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Runs of one colour along the strand. */
typedef struct
{
  float l, a, b;        /* mean colour */
  double mean_stitches; /* of its runs, each run counted once */
  double share;         /* of all stitches */
  gsize runs;
} SwStripe;

#define SW_MAX_STRIPES 12

/**
 * sw_stripes:
 * @l, @a, @b: (array length=n): CIELAB along the strand
 * @stripes: (out caller-allocates): up to SW_MAX_STRIPES, largest share first; shares sum to 1
 * @mean_run: (out): mean run over the stitches (a stitch in a long run counts that run)
 *
 * Segmented where the colour differs by more than a person would call one
 * colour; single odd stitches (specks) do not break a run. Runs whose colours
 * are alike are one stripe colour.
 *
 * Returns: how many stripes
 */
gsize sw_stripes (const float *l, const float *a, const float *b, gsize n, SwStripe *stripes, double *mean_run);

G_END_DECLS
