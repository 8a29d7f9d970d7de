/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-canvas.h"

G_BEGIN_DECLS

#define SW_CM_PER_INCH 2.54

/* How a length is divided, in the ruler's own unit. */
typedef struct
{
  double step;   /* from one labelled tick to the next */
  int divisions; /* small ticks to a step */
} SwRulerSteps;

/**
 * sw_ruler_steps:
 * @px_per_unit: > 0
 * @inches: halves and quarters instead of tenths, feet beyond
 * Returns: the closest steps whose labels do not crowd
 */
SwRulerSteps sw_ruler_steps (double px_per_unit, gboolean inches);

typedef enum
{
  SW_RULER_BELOW, /* of what it measures, from left to right */
  SW_RULER_LEFT,  /* of what it measures, from the lower end up */
} SwRulerSide;

/**
 * sw_ruler_draw:
 * @box: its edge towards the measured thing carries the ticks; its length is the thing's
 */
void sw_ruler_draw (const SwCanvas *canvas, SwRulerSide side, const SwBox *box, double px_per_cm);

/* The unit, in the corner between two rulers whose beginnings are out of sight. */
void sw_ruler_draw_unit (const SwCanvas *canvas, const SwBox *box);

/* A length for people, in the look's unit: "12.5 cm", "4.9 in". */
char *sw_ruler_length (double cm, gboolean inches) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
