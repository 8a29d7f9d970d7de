/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-chance.h"

#include <math.h>

double
sw_chance_normal (guint64 address)
{
  /* 1 - u is in (0, 1]: its logarithm is finite. */
  double radius = sqrt (-2.0 * log (1.0 - sw_chance_even (sw_chance_mix (address, 1))));
  double angle = 2.0 * G_PI * sw_chance_even (sw_chance_mix (address, 2));

  return radius * cos (angle);
}
