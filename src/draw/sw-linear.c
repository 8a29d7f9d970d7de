/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-linear.h"

#include <math.h>

static double
decode (double code)
{
  return code <= 0.04045 ? code / 12.92 : pow ((code + 0.055) / 1.055, 2.4);
}

static double
encode (double light)
{
  return light <= 0.0031308 ? light * 12.92 : 1.055 * pow (light, 1 / 2.4) - 0.055;
}

static void
fill (SwLinear *linear)
{
  for (int i = 0; i < 256; i++)
    linear->decode[i] = (float) decode (i / 255.0);
  for (int i = 0; i <= SW_LINEAR_STEPS; i++)
    linear->encode[i] = (guint8) lround (encode ((double) i / SW_LINEAR_STEPS) * 255);
}

/* Worked out once: small pictures, of which a large one may be made, should not pay for four thousand powers each. */
void
sw_linear_init (SwLinear *linear)
{
  static SwLinear table;
  static gsize ready;

  if (g_once_init_enter (&ready))
    {
      fill (&table);
      g_once_init_leave (&ready, 1);
    }
  *linear = table;
}
