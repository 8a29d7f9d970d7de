/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-look.h"
#include "draw/sw-pan-geometry.h"

G_BEGIN_DECLS

/* Where is what in the strand strip: one loop of the strand, drawn out. */
typedef struct
{
  SwBox labels; /* above: lengths of the colours' stretches */
  SwBox strand;
  SwBox ruler;
  double scale; /* px per cm of strand */
} SwStripGeometry;

void sw_strip_geometry (const SwForecast *forecast, double width, double height, SwStripGeometry *geometry);
double sw_strip_to_px (const SwStripGeometry *geometry, double cm);
double sw_strip_to_cm (const SwStripGeometry *geometry, double x);

G_END_DECLS
