/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cloth/sw-gauge.h"

#include <math.h>

/* Munden 1959, as tabled in D. J. Spencer, Knitting Technology, 3rd ed. 2001, section 22.5. */
static const SwMunden constants[] = {
  [SW_STATE_DRY] = { .k_s = 19.0, .k_c = 5.0, .k_w = 3.8 },
  [SW_STATE_WET] = { .k_s = 21.6, .k_c = 5.3, .k_w = 4.1 },
};

const SwMunden *
sw_munden (SwFabricState state)
{
  g_return_val_if_fail ((gsize) state < G_N_ELEMENTS (constants), &constants[SW_STATE_DRY]);

  return &constants[state];
}

double
sw_stitch_length (double wales_per_cm, double courses_per_cm, SwFabricState state)
{
  return sqrt (sw_munden (state)->k_s / (wales_per_cm * courses_per_cm));
}

double
sw_courses_from_wales (double wales_per_cm)
{
  const SwMunden *dry = sw_munden (SW_STATE_DRY);

  return wales_per_cm * dry->k_c / dry->k_w;
}
