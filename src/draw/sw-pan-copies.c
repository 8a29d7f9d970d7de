/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/sw-pan-copies.h"

/* The near edge is the lower one. */
void
sw_pan_copy_geometry (const SwPanGeometry *whole, const SwSketch *sketch, gsize copy, SwPanGeometry *geometry)
{
  const double height = sw_sketch_lay_width (sketch) * whole->scale;

  *geometry = *whole;
  geometry->skein.y = whole->skein.y + whole->skein.height - (double) (copy + 1) * height;
  geometry->skein.height = height;
}
