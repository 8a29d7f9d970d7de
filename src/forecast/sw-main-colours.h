/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

#define SW_MOST_COLOURS 6

/* One of the colours that a person would name of a yarn. */
typedef struct
{
  SwLab lab;    /* where it is most its own */
  double share; /* of the strand, 0 .. 1 */
} SwMainColour;

/*
 * Two main colours differ by at least so much, CIEDE2000. Ours: under about 5
 * two chips beside each other look like one dye, and the lighter and the darker
 * tone of one name of sw_colour_name() are 8 to 12 apart.
 */
#define SW_COLOURS_APART 8.0
#define SW_TONES_APART 4.5 /* where there is one colour only, its tones */

/**
 * sw_main_colours:
 * @colours: (out caller-allocates): SW_MOST_COLOURS, those with the greatest share first
 *
 * The colours of the stitches' legs sorted into a few groups, so that a small
 * change of the dyeing changes them little. They are looked for from a fixed
 * lattice of places in CIELAB, never from the strand's own: each climbs to where
 * there is more of the strand (mean shift). Of what is found, those are taken one
 * by one that matter most to the eye: by their share, their difference from the
 * ones before, and less if they are on the way between two of those, as dyes run
 * into each other and thin out into bare wool. Each leg goes to the nearest, the
 * groups' colours move to what is most their own (plain CIELAB distance, since it
 * is only for grouping), and the least of the groups is dropped until each has at
 * least one leg in 40, one in 10 if it is such a passage, or 3 in 1000 if it is an
 * accent, 20 CIEDE2000 from every other, and none is nearer to another than
 * SW_COLOURS_APART. Where that leaves one, its tones are told, SW_TONES_APART.
 * The shares sum to 1.
 *
 * Returns: how many, at least 1 for a strand with stitches
 */
int sw_main_colours (const SwForecast *forecast, SwMainColour *colours);

/**
 * sw_main_colour_percents:
 * @percents: (out caller-allocates): @n whole numbers, each at least 1, that sum to 100: rounded by the largest remainder
 */
void sw_main_colour_percents (const SwMainColour *colours, int n, int *percents);

G_END_DECLS
