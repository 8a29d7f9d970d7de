/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-relief.h"
#include "draw/sw-wraps.h"

G_BEGIN_DECLS

/* The colour of a hair whose root is there, opaque; cm from the lay's upper left. */
typedef guint32 (*SwLaidHairColour) (gconstpointer data, float x, float y);

/**
 * SwLaidHairs:
 * @points: of the wraps' points, those that are of yarn
 * @left, @top: where the picture begins, px from the lay's upper left
 * @pixels: premultiplied CAIRO_FORMAT_ARGB32, @stride pixels to a line
 * @per_cm: px
 * @fuzz: hairs to a cm of a strand's outline
 * @length: of the longest, cm
 */
typedef struct
{
  const SwWraps *wraps;
  guint points;
  const SwRelief *relief;
  float left, top;
  int width, height, stride;
  guint32 *pixels;
  float per_cm, fuzz, length;
  guint64 seed;
  SwLaidHairColour colour;
  gconstpointer data;
} SwLaidHairs;

/* Fibres that stand off the yarn: plain beside the skein, faint over it. Where a picture is cut changes nothing in it. */
void sw_laid_hairs_draw (const SwLaidHairs *hairs);

G_END_DECLS
