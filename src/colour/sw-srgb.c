/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-srgb-private.h"

#include <math.h>

/* Halvings of the chroma: to 2^-40 of it. */
#define FIT_STEPS 40

/* Rounding of a colour on the cube's face must not send it round the gamut mapping. */
#define GAMUT_TOLERANCE 1e-9

typedef struct
{
  double r, g, b;
} Linear;

static Linear
linear_from_xyz (SwXyz xyz)
{
  double x = xyz.x / sw_white.x;
  double y = xyz.y / sw_white.y;
  double z = xyz.z / sw_white.z;
  const double (*m)[3] = sw_srgb_from_white;

  return (Linear){
    m[0][0] * x + m[0][1] * y + m[0][2] * z,
    m[1][0] * x + m[1][1] * y + m[1][2] * z,
    m[2][0] * x + m[2][1] * y + m[2][2] * z,
  };
}

static gboolean
channel_fits (double channel)
{
  return channel >= -GAMUT_TOLERANCE && channel <= 1 + GAMUT_TOLERANCE;
}

static gboolean
linear_fits (Linear linear)
{
  return channel_fits (linear.r) && channel_fits (linear.g) && channel_fits (linear.b);
}

static double
encode (double linear)
{
  linear = CLAMP (linear, 0, 1);
  if (linear <= SW_SRGB_THRESHOLD)
    return SW_SRGB_SLOPE * linear;
  return SW_SRGB_GAIN * pow (linear, 1 / 2.4) - SW_SRGB_OFFSET;
}

static double
decode (double encoded)
{
  if (encoded <= SW_SRGB_SLOPE * SW_SRGB_THRESHOLD)
    return encoded / SW_SRGB_SLOPE;
  return pow ((encoded + SW_SRGB_OFFSET) / SW_SRGB_GAIN, 2.4);
}

/* The most chroma that fits, at the same lightness and hue; a lightness above 100 or below 0 ends as white or black. */
static Linear
fit_chroma (SwLab lab)
{
  Linear fitted;
  double inside = 0, outside = 1;

  lab.l = CLAMP (lab.l, 0, 100);
  fitted = linear_from_xyz (sw_xyz_from_lab ((SwLab){ lab.l, 0, 0 }));
  for (int step = 0; step < FIT_STEPS; step++)
    {
      double share = (inside + outside) / 2;
      Linear linear = linear_from_xyz (sw_xyz_from_lab ((SwLab){ lab.l, share * lab.a, share * lab.b }));

      if (linear_fits (linear))
        {
          inside = share;
          fitted = linear;
        }
      else
        outside = share;
    }
  return fitted;
}

gboolean
sw_xyz_in_gamut (SwXyz xyz)
{
  return linear_fits (linear_from_xyz (xyz));
}

SwSrgb
sw_srgb_from_xyz (SwXyz xyz)
{
  Linear linear = linear_from_xyz (xyz);

  if (!linear_fits (linear))
    linear = fit_chroma (sw_lab_from_xyz (xyz));
  return (SwSrgb){ encode (linear.r), encode (linear.g), encode (linear.b) };
}

SwXyz
sw_xyz_from_srgb (SwSrgb srgb)
{
  double linear[3] = { decode (srgb.r), decode (srgb.g), decode (srgb.b) };
  double xyz[3];

  for (int row = 0; row < 3; row++)
    {
      const double *m = sw_srgb_to_xyz[row];

      xyz[row] = (m[0] * linear[0] + m[1] * linear[1] + m[2] * linear[2]) / (m[0] + m[1] + m[2]);
    }
  return (SwXyz){ xyz[0] * sw_white.x, xyz[1] * sw_white.y, xyz[2] * sw_white.z };
}
