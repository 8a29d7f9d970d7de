/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-exposure.h"

#include <math.h>

#define BIN (SW_EXPOSURE_MOST / SW_EXPOSURE_LIGHTS)
#define KNEE 0.7f /* of the room there is: light below it is left alone */

/* Light bent so that it never reaches @top. */
static float
bend (float light, float top)
{
  const float knee = KNEE * top, rest = top - knee;

  return light <= knee ? light : top - rest * expf (-(light - knee) / rest);
}

static double
mean_at (const guint *counts, float gain, float top)
{
  double sum = 0, n = 0;

  for (int i = 0; i < SW_EXPOSURE_LIGHTS; i++)
    {
      sum += counts[i] * (double) bend (gain * ((float) i + 0.5f) * BIN, top);
      n += counts[i];
    }
  return sum / MAX (n, 1);
}

/* The gain at which the mean is 1, or as near to it as there is room. */
static float
gain_for (const guint *counts, float top)
{
  float low = 0.05f, high = 12;

  for (int i = 0; i < 32; i++)
    {
      const float gain = sqrtf (low * high);

      if (mean_at (counts, gain, top) < 1)
        low = gain;
      else
        high = gain;
    }
  return low;
}

SwExposure *
sw_exposure_new (const guint *counts)
{
  SwExposure *exposure = g_new (SwExposure, 1);

  for (int tone = 0; tone < SW_EXPOSURE_TONES; tone++)
    {
      const float top = SW_EXPOSURE_TONES / ((float) tone + 0.5f);
      const float gain = gain_for (counts, top);

      for (int i = 0; i < SW_EXPOSURE_LIGHTS; i++)
        exposure->factor[tone][i] = bend (gain * ((float) i + 0.5f) * BIN, top);
    }
  return exposure;
}
