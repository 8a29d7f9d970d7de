/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-hank-strands.h"
#include "draw/sw-relief.h"
#include "draw/sw-yarn-light.h"

G_BEGIN_DECLS

/* How the strands on a hank's skin take the light. */

/**
 * SwHankLight:
 * @x, @y: where the hank's origin is on the relief, cm
 * @strand_cm: from one strand on the skin to the next
 * @single: 0 .. 1: whether there is room to tell strands apart
 * @paper: where that lies round the hank
 * @paper_reach: how far beside it its shade is seen, cm
 */
typedef struct
{
  const SwBundle *bundle;
  const SwHankStrands *strands;
  const SwHankYarn *yarn;
  const SwRelief *relief;
  float x, y;
  const SwGrain *grain;
  SwYarnLight strand;
  float strand_cm, single;
  SwHankHold paper;
  float paper_reach;
} SwHankLight;

/* @light: factor in linear light, not balanced; @dye: see SwYarnShade */
typedef struct
{
  float light, dye;
  guint32 colour; /* 0xffRRGGBB */
} SwHankShade;

/* @px: width of a strand in the picture, device pixels. No paper lies there yet. */
void sw_hank_light_init (SwHankLight *light, const SwBundle *bundle, const SwHankStrands *strands, const SwHankYarn *yarn, const SwRelief *relief, double x, double y, const SwGrain *grain, const SwSketch *sketch, double strand_cm, double px);

/* What falls on anything of the hank's: sky and lamp, 1 about on open, level ground. */
float sw_hank_body_light (const SwHankLight *light, const float *normal, float x, float y);

/* @sample: of sw_hank_strands_raster() */
SwHankShade sw_hank_light_at (const SwHankLight *light, const SwSkinSample *sample, float x, float y);

/* @sample: of the skin beneath the strands, as it is seen in the gaps between them */
SwHankShade sw_hank_light_gap (const SwHankLight *light, const SwSkinSample *sample, float x, float y);

G_END_DECLS
