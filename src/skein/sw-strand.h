/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/* Where the strand lies: arclength -> wrap and place in the bundle -> place in the pan. */

typedef struct
{
  double length_cm; /* of the strand */
  double circumference_cm;
  double growth;
  SwWinding winding;
  double wraps_per_sweep;
  double wander;
  guint64 seed; /* of the sketch and the skein */
} SwReel;

typedef struct
{
  int runs;
  SwFolding folding;
  int lanes; /* skeins in the pan */
  int lane;  /* this one, from 0 */
} SwLay;

/* Strand length of one skein: mass x metres per 100 g, in cm. */
double sw_strand_length (double mass_g, double metres_per_100_g);
double sw_tex (double metres_per_100_g);

/**
 * sw_reel_wraps: how many wraps the strand makes, growth counted; need not be whole
 */
double sw_reel_wraps (const SwReel *reel);

/**
 * sw_reel_place:
 * @t: arclength, 0 .. length
 * @wrap: (out): wrap number, 0 the first
 * @loop: (out): how far round the loop, 0 .. 1
 * @u, @v: (out): place in the bundle's cross-section, 0 .. 1
 */
void sw_reel_place (const SwReel *reel, double t, gsize *wrap, double *loop, double *u, double *v);

/**
 * sw_reel_loop: how far round the loop @t lies, 0 .. 1; sw_reel_place() without the place in the bundle
 */
double sw_reel_loop (const SwReel *reel, double t);

/**
 * sw_lay_place:
 * @x, @y, @z: (out): fractions 0 .. 1 of the laid length, width (all lanes) and depth
 */
void sw_lay_place (const SwLay *lay, double loop, double u, double v, double *x, double *y, double *z);

/**
 * sw_strand_places:
 * @t: (array length=n): arclengths, cm
 * @x, @y, @z: (out caller-allocates): @n fractions each
 * Both of the above for many places at once.
 */
void sw_strand_places (const SwReel *reel, const SwLay *lay, const double *t, gsize n, float *x, float *y, float *z);

G_END_DECLS
