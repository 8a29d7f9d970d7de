/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bath/sw-speck.h"

#include <math.h>

G_BEGIN_DECLS

/*
 * A speck's mark as a stretch of strand shows it: the mean over the stretch,
 * by how far its middle is from the speck. Many marks are narrower than the
 * stretch, so that a few points along it would hit or miss them.
 */

#define SW_LEG_ALONG 64
#define SW_LEG_ACROSS 40

/**
 * SwLegMark:
 * @along_cm, @across_cm: reach; @mean is 0 there
 * @mean: g per cm2 per gram of the speck, at offsets that grow as the square of their numbers
 */
typedef struct
{
  float along_cm, across_cm;
  float mean[SW_LEG_ACROSS][SW_LEG_ALONG];
} SwLegMark;

/**
 * sw_leg_mark_for:
 * @half_cm: half the stretch, > 0; the strand lies along x
 */
void sw_leg_mark_for (const SwMark *mark, double half_cm, SwLegMark *leg);

/* The step below a distance, and how far on to the next; the last step stands for all that is farther. */
static inline int
sw_leg_mark_step (float distance, float reach, int n, float *on)
{
  float step = MIN (sqrtf (fabsf (distance) / reach) * (float) (n - 1), (float) (n - 1));
  int lower = MIN ((int) step, n - 2);

  *on = step - (float) lower;
  return lower;
}

/**
 * sw_leg_mark_mean:
 * @dx, @dy: from the speck to the stretch's middle, cm
 */
static inline float
sw_leg_mark_mean (const SwLegMark *leg, float dx, float dy)
{
  float x, y;
  int i = sw_leg_mark_step (dx, leg->along_cm, SW_LEG_ALONG, &x);
  int j = sw_leg_mark_step (dy, leg->across_cm, SW_LEG_ACROSS, &y);
  const float *near = &leg->mean[j][i], *far = &leg->mean[j + 1][i];
  float low = near[0] + x * (near[1] - near[0]), high = far[0] + x * (far[1] - far[0]);

  return low + y * (high - low);
}

G_END_DECLS
