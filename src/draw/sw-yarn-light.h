/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

#include <math.h>

G_BEGIN_DECLS

/*
 * How a strand of plied yarn takes the light, wherever it lies: in cloth, in
 * a skein, in a hank. Everything is measured in the strand's own diameter, x
 * to the right, y up, z towards the eye.
 *
 * The light comes from the upper left and the front. Wool is matt: its fibres
 * lie in all directions and scatter light past the edge of the shadow. Silk
 * and nylon are smooth and straight; their sheen is the one of J. T. Kajiya &
 * T. L. Kay 1989, "Rendering fur with three dimensional textures", SIGGRAPH
 * 23:271. Twist, grooves and grain are chosen by eye (common practice, no
 * source).
 */

/**
 * SwYarnLight:
 * @plies: >= 1
 * @twist: turns of the plies round the strand in one diameter of its length
 * @relief: how steep the plies stand out, 0 .. 1; fades where there is no room for them
 * @valley: how much more dye the grooves between plies show than the mean, a share
 * @grain: light and dark of single fibres, a share
 * @single: the same of those that are seen one by one from near
 * @sheen, @sharpness: strength and exponent of the highlight
 * @fuzz: hairs that stand off one diameter of length
 * @hair: their length, diameters
 * @light: unit vector towards the light
 */
typedef struct
{
  int plies;
  float twist, relief, valley, grain, single;
  float sheen, sharpness;
  float fuzz, hair;
  float light[3];
} SwYarnLight;

/**
 * sw_yarn_light_init:
 * @diameter_px: of the strand as it will be drawn: what is finer than pixels is left out
 */
void sw_yarn_light_init (SwYarnLight *yarn, SwFibre fibre, int plies, double diameter_px);

/* For a drawing that is turned afterwards: so many quarter turns clockwise as seen. The light then comes from where it does in the others. */
void sw_yarn_light_turn (SwYarnLight *yarn, int quarters);

/* Apparent diameter of a loose strand, cm, from its put-up: a cylinder of 0.2 g/cm3, which gives the wraps per inch that yarn is sold by (common practice, no source). */
double sw_yarn_diameter_cm (double metres_per_100_g);

/**
 * SwYarnPoint: one place on the strand's visible half.
 * @along: diameters from the strand's beginning
 * @across: -1 .. 1 from edge to edge, positive to the left of its course
 * @course: unit vector along it
 * @seed: whose grain it is
 */
typedef struct
{
  float along, across;
  float course[3];
  guint32 seed;
} SwYarnPoint;

/**
 * SwYarnShade:
 * @light: factor on the colour in linear light, about 1 in the mean; the caller balances it
 * @dye: how much more dye lies there than in the mean, a share: the colour to the power of 1 + @dye
 */
typedef struct
{
  float light, dye;
} SwYarnShade;

SwYarnShade sw_yarn_light_at (const SwYarnLight *yarn, const SwYarnPoint *point);

/**
 * SwYarnHair: one fibre that stands off the strand.
 * @along: where, as a share of the length asked for
 * @side: -1 right of the course, 1 left
 * @lean: radians from straight off the strand towards its course
 * @curl: change of that over its length
 * @length: diameters
 * @weight: 0 .. 1
 */
typedef struct
{
  float along, side, lean, curl, length, weight;
} SwYarnHair;

/* How many hairs a strand of @length diameters has. */
int sw_yarn_hairs (const SwYarnLight *yarn, double length);
SwYarnHair sw_yarn_hair (const SwYarnLight *yarn, guint64 seed, int number);

G_END_DECLS
