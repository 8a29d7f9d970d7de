/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-strip-geometry.h"

#define SIDE_PX 16
#define RULER_PX 22
#define LABELS_PX 22
#define LEAST_STRAND_PX 10

void
sw_strip_geometry (const SwForecast *forecast, double width, double height, SwStripGeometry *geometry)
{
  const double side = MIN (SIDE_PX, width / 16), length = MAX (width - 2 * side, 1);
  double labels = LABELS_PX, ruler = RULER_PX, strand;

  /* A low strip gives up its lengths first, then its ruler. */
  if (height < LABELS_PX + RULER_PX + LEAST_STRAND_PX)
    labels = 0;
  if (height < RULER_PX + LEAST_STRAND_PX)
    ruler = 0;
  strand = MAX (height - labels - ruler - (labels + ruler > 0 ? 10 : 0), 1);
  geometry->labels = (SwBox){ side, 4, length, labels };
  geometry->strand = (SwBox){ side, (labels + ruler > 0 ? 4 : 0) + labels, length, strand };
  geometry->ruler = (SwBox){ side, geometry->strand.y + strand + 4, length, ruler };
  geometry->scale = length / forecast->repeat_cm;
}

double
sw_strip_to_px (const SwStripGeometry *geometry, double cm)
{
  return geometry->strand.x + cm * geometry->scale;
}

double
sw_strip_to_cm (const SwStripGeometry *geometry, double x)
{
  return (x - geometry->strand.x) / geometry->scale;
}
