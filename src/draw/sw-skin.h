/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-bundle.h"

G_BEGIN_DECLS

/*
 * Which place of a bundle's skin is seen at each sample of a part of the
 * picture.
 */

/* One sample. @patch: ring x n_around + column of the skin's patch, -1 where nothing is; @u round, @v along it, 0 .. 1 */
typedef struct
{
  float z;
  gint32 patch;
  float u, v;
} SwSkinSample;

/**
 * sw_skin_raster:
 * @left, @top: of the first sample's middle, cm
 * @step: from one sample to the next, cm
 * @samples: (out caller-allocates): width x height
 */
void sw_skin_raster (const SwBundle *bundle, float left, float top, float step, int width, int height, SwSkinSample *samples);

/* The skin's unit normal at a sample that is on it, and (nullable) the unit course of its columns there. */
void sw_skin_normal (const SwBundle *bundle, const SwSkinSample *sample, float *normal, float *course);

G_END_DECLS
