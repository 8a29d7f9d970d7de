/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-grain.h"

#include <math.h>

G_BEGIN_DECLS

/*
 * Strands lying side by side, seen from above: they wander sideways and heave
 * up and down among their neighbours, and where two overlap the higher one is
 * seen. Lengths across are in strand widths.
 */

#define SW_STRANDS_WANDER 0.42f
#define SW_STRANDS_WANDER_CM 3.4f
#define SW_STRANDS_HEAVE 0.85f
#define SW_STRANDS_HEAVE_CM 3.0f
#define SW_STRANDS_HALF_WIDTH 0.80f

/**
 * SwStrandTop: the strand that is seen at a place.
 * @across: -1 .. 1 from edge to edge
 * @height: about -1 in the deepest gap .. 1.8
 * @aside: its middle's, from the place where it would lie ruler-straight
 */
typedef struct
{
  int strand;
  float across, height, aside;
} SwStrandTop;

/**
 * sw_strands_top:
 * @round: across the strands
 * @along: cm
 */
static inline SwStrandTop
sw_strands_top (const SwGrain *grain, float round, float along)
{
  const int near = sw_grain_whole (round);
  SwStrandTop top = { 0, 0, -9, 0 };

  for (int k = near - 1; k <= near + 1; k++)
    {
      const float aside = SW_STRANDS_WANDER * sw_grain_tone (grain, 2 * k, along / SW_STRANDS_WANDER_CM + 7.3f * (float) (k & 255));
      const float across = (round - (float) k - 0.5f - aside) / SW_STRANDS_HALF_WIDTH;
      const float rise = 1 - across * across;
      const float height = SW_STRANDS_HEAVE * sw_grain_tone (grain, 2 * k + 1, along / SW_STRANDS_HEAVE_CM + 3.1f * (float) (k & 255)) + (rise > 0 ? sqrtf (rise) : rise);

      if (height > top.height)
        top = (SwStrandTop){ k, CLAMP (across, -1, 1), height, aside };
    }
  return top;
}

/* How much light comes down to that height between the strands: 0.5 .. 1.04. */
static inline float
sw_strands_depth_light (float height)
{
  const float t = CLAMP ((height + 0.75f) / 1.9f, 0.0f, 1.0f);

  return 0.50f + 0.54f * t * t * (3 - 2 * t);
}

G_END_DECLS
