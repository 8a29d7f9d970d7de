/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "colour/sw-spectrum.h"

#define SW_N_COLOURS 3

/**
 * SwSmoothest: a reflectance R = (tanh z + 1) / 2 on its way to being the smoothest of a colour.
 * @z: artanh (2 R - 1), per band
 * @multiplier: Lagrange's, of X, Y and Z
 */
typedef struct
{
  double z[SW_BANDS];
  double multiplier[SW_N_COLOURS];
} SwSmoothest;

/**
 * sw_smoothest_seek:
 * @at: (inout): the start, then the last iterate, whether it arrived or not
 * @target: X, Y and Z all above 0
 *
 * Newton's method on the Lagrangian of least sum of (z[i + 1] - z[i])^2 with the colour held.
 * Returns: whether the colour came out to 1e-10 of itself and the slope is least
 */
gboolean sw_smoothest_seek (SwSmoothest *at, SwXyz target);

/**
 * sw_smoothest_proves_unreachable:
 *
 * The multipliers of @at point somewhere in XYZ. No reflectance within 0..1 lies further that way than the one that
 * is 1 where a band's weight points along and 0 elsewhere (Schrödinger's optimal colour), so a target beyond that is out of reach.
 * Returns: FALSE if this direction proves nothing
 */
gboolean sw_smoothest_proves_unreachable (const SwSmoothest *at, SwXyz target);
