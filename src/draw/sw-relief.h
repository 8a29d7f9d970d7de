/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-bundle.h"

G_BEGIN_DECLS

/*
 * How much light reaches things that lie on a table, and the table: a map of
 * heights, and at each of its places how open the sky is and how much of the
 * lamp at the upper left is seen past what stands in the way.
 */

/* Of the light on open, level ground: what comes from all sides, and what from the lamp. */
#define SW_RELIEF_SKY 0.45f
#define SW_RELIEF_LAMP 0.55f

/* Unit vector towards the lamp; y down as seen, z towards the eye. */
#define SW_LAMP_X (-0.43f)
#define SW_LAMP_Y (-0.52f)
#define SW_LAMP_Z 0.738f

/**
 * SwRelief:
 * @left, @top, @step: of the first place's middle, and from one to the next, cm
 * @heights: cm; @ground where there is nothing
 * @sky, @lamp: shares, 0 .. 1
 */
typedef struct
{
  int width, height;
  float left, top, step, ground;
  float *heights, *sky, *lamp;
} SwRelief;

/* An empty map; @step at least a 4000th of the longer side. */
void sw_relief_init (SwRelief *relief, double left, double top, double right, double bottom, double step, double ground);
void sw_relief_clear (SwRelief *relief);

/* Lays a bundle's skin on the map, its origin at @x, @y cm. */
void sw_relief_add (SwRelief *relief, const SwBundle *bundle, double x, double y);

/* At least so high at the place nearest to @x, @y. */
void sw_relief_raise (SwRelief *relief, float x, float y, float z);

/* Evens the heights out between neighbouring places. */
void sw_relief_smooth (SwRelief *relief);

/**
 * sw_relief_light:
 * @reach: how far away what stands in the way is looked for, cm
 * Finds sky and lamp from the heights.
 */
void sw_relief_light (SwRelief *relief, double reach);

/* Between the four places about @x, @y. */
void sw_relief_at (const SwRelief *relief, float x, float y, float *sky, float *lamp);

/* @normal: (out) (array fixed-size=3): unit vector, y down as seen; @height: (out): cm */
void sw_relief_normal (const SwRelief *relief, float x, float y, float *normal, float *height);

G_END_DECLS
