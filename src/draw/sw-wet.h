/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Chance that light coming from below is thrown back at water's surface: 1 - (1 - 0.066) / 1.333^2, evenly scattered light. */
#define SW_WET_BACK 0.474f
#define SW_WET_FRONT 0.02f /* thrown back on its way in */

/**
 * sw_wet:
 * @dry: reflectance, 0 .. 1
 *
 * Yarn is darker and deeper in colour when wet: light that it scatters is
 * thrown back onto it by the water's surface and meets the dye again. After
 * A. Angstrom 1925 as given by J. Lekner & M. C. Dorf 1988, "Why some things
 * are darker when wet", Applied Optics 27:1278 (cited from memory): of what is
 * absorbed, a = 1 - R, wet yarn absorbs (1 - front) a / (1 - back (1 - a)).
 * Their second effect, weaker scattering in water, is left out.
 */
static inline float
sw_wet (float dry)
{
  const float absorbed = 1 - CLAMP (dry, 0.0f, 1.0f);

  return 1 - SW_WET_FRONT - (1 - SW_WET_FRONT) * absorbed / (1 - SW_WET_BACK * (1 - absorbed));
}

G_END_DECLS
