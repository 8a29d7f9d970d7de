/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

/*
 * A small sketch for tests: invented numbers, nothing from the trade. Its
 * loop is an exact number of stitches, so that periods are whole.
 */

static inline SwDye *
test_add_dye (SwSketch *sketch, const char *name, double r, double g, double b)
{
  SwDye *dye = sw_dye_new (sketch->next_id++);

  g_free (dye->name);
  dye->name = g_strdup (name);
  dye->sample = (SwSample) { .kind = SW_SAMPLE_SRGB, .numbers = { r, g, b } };
  g_ptr_array_add (sketch->dyes, dye);
  return dye;
}

static inline SwStep *
test_add_step (SwSketch *sketch, SwStepKind kind)
{
  SwStep *step = sw_step_new (sketch->next_id++, kind);

  g_ptr_array_add (sketch->steps, step);
  return step;
}

static inline SwStep *
test_add_band (SwSketch *sketch, const SwDye *dye, double x, double width, double ml, double worked_in)
{
  SwStep *step = test_add_step (sketch, SW_STEP_BAND);

  step->dye = dye->id;
  step->x_cm = x;
  step->y_cm = sw_sketch_lay_width (sketch) / 2.0;
  step->width_cm = width;
  step->length_cm = 0.0;
  step->angle_deg = 0.0;
  step->amount_ml = ml;
  step->worked_in = worked_in;
  return step;
}

/* 100 g of 300 m on a 120 cm loop, 1 cm of yarn a stitch: 120 stitches a loop, 250 loops. */
static inline SwSketch *
test_bare_sketch (gint64 runs)
{
  SwSketch *sketch = sw_sketch_new ();

  sketch->seed = 11;
  sketch->yarn.mass_g = 100.0;
  sketch->yarn.metres_per_100_g = 300.0;
  sketch->reel.circumference_cm = 120.0;
  sketch->reel.wander = 0.0;
  sketch->lay.runs = runs;
  sketch->lay.width_cm = 8.0;
  sketch->lay.depth_cm = 2.0;
  sketch->lay.pan_length_cm = 130.0;
  sketch->cloth.stitch_length_cm = 1.0;
  sketch->cloth.worked = SW_WORKED_ROUND;
  sketch->cloth.width_stitches = 60;
  return sketch;
}

/* Two dyes in four bands, a rest, a flip, a third band on the second face, the set. */
static inline SwSketch *
test_sketch (gint64 runs)
{
  SwSketch *sketch = test_bare_sketch (runs);
  SwDye *red = test_add_dye (sketch, "Red", 178, 60, 52);
  SwDye *blue = test_add_dye (sketch, "Blue", 30, 80, 140);
  double length = sw_sketch_lay_length (sketch);
  SwStep *step;

  blue->half_time_min = 5.0;
  test_add_band (sketch, red, 0.15 * length, 0.2 * length, 30.0, 0.9);
  test_add_band (sketch, blue, 0.5 * length, 0.2 * length, 25.0, 0.7);
  step = test_add_step (sketch, SW_STEP_REST);
  step->minutes = 10.0;
  test_add_step (sketch, SW_STEP_FLIP);
  test_add_band (sketch, red, 0.8 * length, 0.15 * length, 15.0, 0.3);
  step = test_add_step (sketch, SW_STEP_SET);
  step->minutes = 30.0;
  return sketch;
}

static inline SwStep *
test_add_speckles (SwSketch *sketch, const SwDye *dye, int index)
{
  SwStep *step = sw_step_new (sketch->next_id++, SW_STEP_SPECKLE);

  step->dye = dye->id;
  step->x_cm = sw_sketch_lay_length (sketch) / 2.0;
  step->y_cm = sw_sketch_lay_width (sketch) / 2.0;
  step->width_cm = 0.8 * sw_sketch_lay_length (sketch);
  step->length_cm = 0.8 * sw_sketch_lay_width (sketch);
  step->amount_ml = 4.0;
  step->worked_in = 0.0;
  g_ptr_array_insert (sketch->steps, index, step);
  return step;
}
