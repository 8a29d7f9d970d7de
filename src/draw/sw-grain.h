/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-chance.h"

G_BEGIN_DECLS

/* Smooth chance for pictures, tabled once: it repeats further on than an eye compares. */

#define SW_GRAIN_ROWS 256
#define SW_GRAIN_KNOTS 64

typedef struct
{
  float tones[SW_GRAIN_ROWS][SW_GRAIN_KNOTS]; /* -1 .. 1 */
} SwGrain;

SwGrain *sw_grain_new (guint64 seed) G_GNUC_WARN_UNUSED_RESULT;

/* The library's floor() is a call, and this is hot. */
static inline int
sw_grain_whole (float x)
{
  const int whole = (int) x;

  return whole - ((float) whole > x);
}

/* Row @row's tone at @knots, -1 .. 1. */
static inline float
sw_grain_tone (const SwGrain *grain, int row, float knots)
{
  const int knot = sw_grain_whole (knots);
  const float *tones = grain->tones[row & (SW_GRAIN_ROWS - 1)];
  const float t = knots - (float) knot, on = t * t * (3 - 2 * t);
  const float from = tones[knot & (SW_GRAIN_KNOTS - 1)], to = tones[(knot + 1) & (SW_GRAIN_KNOTS - 1)];

  return from + (to - from) * on;
}

/* Smooth in both directions. @rows: after so many rows it comes round to the first */
static inline float
sw_grain_cloud (const SwGrain *grain, float row, int rows, float knots)
{
  const int whole = sw_grain_whole (row);
  const float t = row - (float) whole, on = t * t * (3 - 2 * t);
  const float from = sw_grain_tone (grain, whole % rows, knots), to = sw_grain_tone (grain, (whole + 1) % rows, knots);

  return from + (to - from) * on;
}

G_END_DECLS
