/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bath/sw-transfer.h"
#include "sketch/sw-sketch.h"

G_BEGIN_DECLS

/*
 * The bath's state step by step: what the liquor is while dye spreads and strikes.
 */

#define SW_FIBRE_DENSITY 1.31 /* g/cm3, wool; the others are within a tenth or so */
#define SW_TAP_PH 8.0         /* of tap water before any acid */

typedef struct
{
  double minutes;       /* this step lasts; 0 for a pour, a flip, acid or water */
  double temperature_c;
  double liquor_ml;
  double ph;
  double cover;         /* spread factor from the liquor: 1 with the yarn just covered */
  gboolean second_face; /* which face is up after the step */
} SwBathState;

/**
 * sw_schedule_run:
 * @sketch: validated
 * @states: (out caller-allocates): one per step, plus the start at [0]: n_steps + 1
 *
 * [0] is the bath before the first step; [i + 1] the bath during and after
 * step i. Acid and water mix at once. Stock poured adds its water.
 */
void sw_schedule_run (const SwSketch *sketch, SwBathState *states);

/**
 * sw_schedule_spans:
 * @share: 0 the dye's main share, 1 its quick share
 * @spans: (out caller-allocates): n_steps; a step that takes no time gives a span of 0 minutes
 */
void sw_schedule_spans (const SwSketch *sketch, const SwBathState *states, const SwDye *dye, int share, SwSpan *spans);

/* Spread factor: liquor over what just covers the yarn, held between 0.1 and 3. Ours, to be fitted. */
double sw_schedule_cover (const SwSketch *sketch, double liquor_ml);

/* Stock in a pour, mL: as set, or from its depth on all the fibre in the pan; none for dry grains, which add no water. */
double sw_schedule_pour_ml (const SwSketch *sketch, const SwStep *step);

/* Grams of dye in a pour. */
double sw_schedule_pour_grams (const SwSketch *sketch, const SwStep *step);

G_END_DECLS
