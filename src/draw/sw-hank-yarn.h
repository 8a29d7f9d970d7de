/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-hank-shape.h"
#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/*
 * Which strands are seen on a hank's skin, and their colours. Round the rope
 * lie both halves of the loop, one running on and one back from the place at
 * which it was held. A strand is seen for a while, then dives beneath its
 * neighbours and another wrap comes up; each has the colours of its own place
 * on the skein.
 */

#define SW_HANK_PLACES 1024 /* along the rope */

/**
 * SwHankYarn:
 * @n: strands round the rope
 * @pixels: n x SW_HANK_PLACES: 0xffRRGGBB
 * @sunk: n x SW_HANK_PLACES: 0 on top .. 1 where the strand dives beneath the one after it, .. -1 beneath the one before
 */
typedef struct
{
  int n;
  guint32 *pixels;
  float *sunk;
} SwHankYarn;

/* @legs: of the skein that is twisted, one of the forecast's */
void sw_hank_yarn_init (SwHankYarn *yarn, const SwForecast *forecast, const SwSkeinLegs *legs, const SwHankShape *shape, guint64 seed);
void sw_hank_yarn_clear (SwHankYarn *yarn);

G_END_DECLS
