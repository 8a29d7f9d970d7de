/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-bundle.h"

G_BEGIN_DECLS

/*
 * Which place of a bundle's skin is seen at each sample of a part of the
 * picture.
 */

/* One sample. @patch: first + ring x n_around + column of the skin's patch, -1 where nothing is; @u round, @v along it, 0 .. 1 */
typedef struct
{
  float z;
  gint32 patch;
  float u, v;
} SwSkinSample;

/**
 * SwSkinView: a part of the picture.
 * @left, @top: of the first sample's middle, cm
 * @step: from one sample to the next, cm
 * @width, @height: samples
 */
typedef struct
{
  float left, top, step;
  int width, height;
} SwSkinView;

void sw_skin_clear (const SwSkinView *view, SwSkinSample *samples);

/**
 * sw_skin_raster:
 * @first: what the patches are counted from, so that those of several skins can be told apart
 * @samples: (inout): width x height: what is nearer than what is there already is laid over it
 */
void sw_skin_raster (const SwBundle *bundle, int first, const SwSkinView *view, SwSkinSample *samples);

/* The skin's unit normal at a sample that is on it (counted from 0), and (nullable) the unit course of its columns there. */
void sw_skin_normal (const SwBundle *bundle, const SwSkinSample *sample, float *normal, float *course);

G_END_DECLS
