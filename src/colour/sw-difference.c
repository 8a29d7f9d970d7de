/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-spectrum.h"

#include <lcms2.h>

double
sw_ciede2000 (SwLab a, SwLab b)
{
  cmsCIELab first = { a.l, a.a, a.b };
  cmsCIELab second = { b.l, b.a, b.b };

  return cmsCIE2000DeltaE (&first, &second, 1, 1, 1);
}
