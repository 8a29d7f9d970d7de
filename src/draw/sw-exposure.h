/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Light and shade on pale yarn would go beyond white. As a photographer
 * does, the highlights are held below it; then everything is laid on a little
 * more strongly, so that the mean stays what it was and with it the colour.
 */

#define SW_EXPOSURE_TONES 64
#define SW_EXPOSURE_LIGHTS 256
#define SW_EXPOSURE_MOST 4.0f /* light beyond this is taken for this */

/**
 * SwExposure:
 * @factor: by the colour's largest channel in linear light and by the light
 */
typedef struct
{
  float factor[SW_EXPOSURE_TONES][SW_EXPOSURE_LIGHTS];
} SwExposure;

/**
 * sw_exposure_new:
 * @counts: (array fixed-size=SW_EXPOSURE_LIGHTS): how much of the picture has which light, 0 .. SW_EXPOSURE_MOST in even bins
 * The factors' mean over the counts is 1 for every tone that has room for it.
 */
SwExposure *sw_exposure_new (const guint *counts) G_GNUC_WARN_UNUSED_RESULT;

static inline int
sw_exposure_bin (float light)
{
  return (int) (CLAMP (light, 0.0f, SW_EXPOSURE_MOST * 0.9999f) * (SW_EXPOSURE_LIGHTS / SW_EXPOSURE_MOST));
}

/* @most: the colour's largest channel, linear, 0 .. 1 */
static inline float
sw_exposure_factor (const SwExposure *exposure, float most, float light)
{
  const float *factors = exposure->factor[(int) (CLAMP (most, 0.0f, 0.9999f) * SW_EXPOSURE_TONES)];
  const float at = CLAMP (light * (SW_EXPOSURE_LIGHTS / SW_EXPOSURE_MOST) - 0.5f, 0.0f, SW_EXPOSURE_LIGHTS - 1.001f);
  const int i = (int) at;

  return factors[i] + (at - (float) i) * (factors[i + 1] - factors[i]);
}

G_END_DECLS
