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

/*
 * Two main colours differ by at least so much, CIEDE2000. Ours: under about 5
 * two chips beside each other look like one dye, and the lighter and the darker
 * tone of one name of sw_colour_name() are 8 to 12 apart.
 */
#define SW_COLOURS_APART 8.0

/**
 * sw_main_colours:
 * @colours: (out caller-allocates): SW_MOST_COLOURS, those with the greatest share first
 *
 * The colours of the stitches' legs sorted into a few groups. Seeds are taken
 * one by one where most of the strand is farthest from those before (the sum
 * of squared distances that k-means++ draws from, Arthur and Vassilvitskii
 * 2007, but the greatest instead of a chance one), so that a few bright specks
 * get one, too. Each leg goes to the nearest, and the groups' colours move to
 * the fullest of their places (plain CIELAB distance, since it is only for
 * grouping). Groups nearer than SW_COLOURS_APART are joined. Those are kept
 * that matter most to the eye, by their share and their difference from the
 * ones before: of at least one leg in 40, or one in 250 if it is an accent, 20
 * CIEDE2000 from every other. The shares sum to 1.
 *
 * Returns: how many, at least 1 for a strand with stitches
 */
int sw_main_colours (const SwForecast *forecast, SwMainColour *colours);

/* Returns: (transfer full): their names: see sw_colour_names() */
char **sw_main_colour_names (const SwMainColour *colours, int n) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
