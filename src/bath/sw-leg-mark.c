/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-leg-mark.h"

#include "bath/sw-clones-private.h"

#include <math.h>
#include <string.h>

/*
 * A round Gaussian is one along x times one across, and its mean along x a
 * difference of error functions. So each moment of the mark adds one column
 * times one row.
 */

/* Offset number @i of @n: close together in the middle. */
static float
offset (int i, int n, float reach)
{
  float t = (float) i / (float) (n - 1);

  return t * t * reach;
}

static void
fill_along (float variance, float half, float reach, float along[SW_LEG_ALONG])
{
  float over = 1.0f / sqrtf (2.0f * variance);

  for (int i = 0; i < SW_LEG_ALONG - 1; i++)
    {
      float x = offset (i, SW_LEG_ALONG, reach);

      along[i] = (erff ((x + half) * over) - erff ((x - half) * over)) / (4.0f * half);
    }
  along[SW_LEG_ALONG - 1] = 0.0f;
}

static void
fill_across (float variance, float reach, float across[SW_LEG_ACROSS])
{
  float over = 1.0f / (2.0f * variance), peak = sqrtf (over / (float) G_PI);

  for (int i = 0; i < SW_LEG_ACROSS - 1; i++)
    {
      float y = offset (i, SW_LEG_ACROSS, reach);

      across[i] = peak * expf (-y * y * over);
    }
  across[SW_LEG_ACROSS - 1] = 0.0f;
}

SW_CLONES static void
add_product (float share, const float *restrict across, const float *restrict along, float (*restrict mean)[SW_LEG_ALONG])
{
  for (int j = 0; j < SW_LEG_ACROSS; j++)
    for (int i = 0; i < SW_LEG_ALONG; i++)
      mean[j][i] += share * across[j] * along[i];
}

void
sw_leg_mark_for (const SwMark *mark, double half_cm, SwLegMark *leg)
{
  float along[SW_LEG_ALONG], across[SW_LEG_ACROSS];

  g_return_if_fail (half_cm > 0.0);

  leg->along_cm = (float) (mark->reach_cm + half_cm);
  leg->across_cm = (float) mark->reach_cm;
  memset (leg->mean, 0, sizeof leg->mean);

  for (int spot = 0; spot < SW_MARK_SPOTS; spot++)
    if (mark->spot_share[spot] > 0.0f)
      {
        fill_along (mark->spot_variance[spot], (float) half_cm, leg->along_cm, along);
        fill_across (mark->spot_variance[spot], leg->across_cm, across);
        add_product (mark->spot_share[spot], across, along, leg->mean);
      }
}
