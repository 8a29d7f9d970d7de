/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

#define SW_MOST_COLOURS 6

/* One of the colours that a person would name of a yarn. */
typedef struct
{
  SwLab lab;    /* mean */
  double share; /* of the strand, 0 .. 1 */
} SwMainColour;

/**
 * sw_main_colours:
 * @colours: (out caller-allocates): SW_MOST_COLOURS, those with the greatest share first
 *
 * The stitches' colours sorted into a few groups: the most frequent colours
 * that differ clearly are taken for the groups' middles (plain CIELAB
 * distance, since it is only for grouping), each stitch goes to the nearest,
 * and the middles move to their groups' means (Lloyd 1982). Groups of less
 * than one stitch in 40 are left out; groups of one name are joined. The
 * shares sum to 1.
 *
 * Returns: how many, at least 1 for a strand with stitches
 */
int sw_main_colours (const SwForecast *forecast, SwMainColour *colours);

G_END_DECLS
