/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "colour/sw-recover.h"

#include "colour/sw-smoothest-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* This near to a perfect white or black z runs off; a flat reflectance with the colour to 1e-6 is given instead. */
#define LIMIT_REFLECTANCE 5e-9
#define LIMIT_XYZ 1e-6

/* Shares of the way from grey to the colour, when Newton's method does not get there at once. */
#define FIRST_STRIDE 0.25
#define LEAST_STRIDE 1e-4

static SwXyz
mix (SwXyz from, SwXyz to, double share)
{
  return (SwXyz){
    from.x + share * (to.x - from.x),
    from.y + share * (to.y - from.y),
    from.z + share * (to.z - from.z),
  };
}

static SwXyz
not_reflected (SwXyz xyz)
{
  return (SwXyz){ sw_white.x - xyz.x, sw_white.y - xyz.y, sw_white.z - xyz.z };
}

/* From the grey of the same luminance, where @at starts, towards the colour in strides short enough to follow. */
static gboolean
walk_from_grey (SwSmoothest *at, SwXyz target)
{
  SwXyz grey = mix ((SwXyz){ 0, 0, 0 }, sw_white, target.y / sw_white.y);
  double reached = 0, stride = FIRST_STRIDE;

  while (reached < 1 && stride > LEAST_STRIDE)
    {
      double aim = MIN (reached + stride, 1);
      SwSmoothest next = *at;
      gboolean arrived = sw_smoothest_seek (&next, mix (grey, target, aim));

      if (sw_smoothest_proves_unreachable (&next, target))
        return FALSE;
      if (arrived)
        {
          *at = next;
          reached = aim;
        }
      stride *= arrived ? 2 : 0.5;
    }
  return reached >= 1;
}

static gboolean
find_smoothest (SwXyz target, SwSmoothest *found)
{
  SwSmoothest grey = { 0 };

  for (int band = 0; band < SW_BANDS; band++)
    grey.z[band] = atanh (2 * target.y / sw_white.y - 1);

  *found = grey;
  if (sw_smoothest_seek (found, target))
    return TRUE;
  if (sw_smoothest_proves_unreachable (found, target))
    return FALSE;
  *found = grey;
  return walk_from_grey (found, target);
}

static gboolean
is_near (SwXyz a, SwXyz b)
{
  return fabs (a.x - b.x) < LIMIT_XYZ && fabs (a.y - b.y) < LIMIT_XYZ && fabs (a.z - b.z) < LIMIT_XYZ;
}

static gboolean
is_within_white (SwXyz xyz)
{
  return xyz.x > 0 && xyz.x < sw_white.x && xyz.y > 0 && xyz.y < sw_white.y && xyz.z > 0 && xyz.z < sw_white.z;
}

static void
fill (double *reflectance, double value)
{
  for (int band = 0; band < SW_BANDS; band++)
    reflectance[band] = value;
}

gboolean
sw_recover_reflectance (SwXyz target, double *reflectance, GError **error)
{
  /* What is not reflected has a colour too, and its z is minus ours: always look for the darker of the two, since Newton's steps suit dark ones. */
  gboolean is_light = target.y > sw_white.y / 2;
  SwSmoothest found;

  g_return_val_if_fail (reflectance != NULL, FALSE);

  if (is_near (target, sw_white))
    {
      fill (reflectance, 1 - LIMIT_REFLECTANCE);
      return TRUE;
    }
  if (is_near (target, (SwXyz){ 0, 0, 0 }))
    {
      fill (reflectance, LIMIT_REFLECTANCE);
      return TRUE;
    }
  if (!is_within_white (target) || !find_smoothest (is_light ? not_reflected (target) : target, &found))
    {
      g_set_error_literal (error, SW_COLOUR_ERROR, SW_COLOUR_ERROR_UNREACHABLE,
                           _ ("No dyed yarn can have this colour: it is too vivid for its lightness, or lighter than white. Choose a duller colour, or give a measured spectrum."));
      return FALSE;
    }
  for (int band = 0; band < SW_BANDS; band++)
    reflectance[band] = 1 / (1 + exp (is_light ? 2 * found.z[band] : -2 * found.z[band]));
  return TRUE;
}

gboolean
sw_sample_reflectance (const SwSample *sample, double *reflectance, GError **error)
{
  const double *n;

  g_return_val_if_fail (sample != NULL, FALSE);
  g_return_val_if_fail (reflectance != NULL, FALSE);

  n = sample->numbers;
  switch (sample->kind)
    {
    case SW_SAMPLE_SRGB:
      return sw_recover_reflectance (sw_xyz_from_srgb ((SwSrgb){ n[0] / 255, n[1] / 255, n[2] / 255 }), reflectance, error);
    case SW_SAMPLE_LAB:
      return sw_recover_reflectance (sw_xyz_from_lab ((SwLab){ n[0], n[1], n[2] }), reflectance, error);
    case SW_SAMPLE_REFLECTANCE:
      memcpy (reflectance, n, SW_BANDS * sizeof (double));
      return TRUE;
    default:
      g_return_val_if_reached (FALSE);
    }
}
