/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-pour-place.h"

#include "draw/sw-pan-geometry.h"

#include <math.h>

#define SIZE_STEP_CM 0.01
#define ANGLE_STEP_DEG 0.1
#define NOISE 1e-4 /* cm; places keep their edges to half of this */

/* What each member is called in edits, and its finest step. */
static const struct
{
  const char *name;
  gsize in_place, in_step;
  double step;
} members[] = {
  { "x_cm", G_STRUCT_OFFSET (SwPourPlace, x), G_STRUCT_OFFSET (SwStep, x_cm), NOISE },
  { "y_cm", G_STRUCT_OFFSET (SwPourPlace, y), G_STRUCT_OFFSET (SwStep, y_cm), NOISE },
  { "width_cm", G_STRUCT_OFFSET (SwPourPlace, width), G_STRUCT_OFFSET (SwStep, width_cm), SIZE_STEP_CM },
  { "length_cm", G_STRUCT_OFFSET (SwPourPlace, length), G_STRUCT_OFFSET (SwStep, length_cm), SIZE_STEP_CM },
  { "angle_deg", G_STRUCT_OFFSET (SwPourPlace, angle), G_STRUCT_OFFSET (SwStep, angle_deg), ANGLE_STEP_DEG },
};

#define N_MEMBERS G_N_ELEMENTS (members)

SwPourPlace
sw_pour_place (const SwStep *step)
{
  return (SwPourPlace){ step->kind, step->x_cm, step->y_cm, step->width_cm, step->length_cm, step->angle_deg };
}

void
sw_pour_place_put (const SwPourPlace *place, SwStep *step)
{
  for (gsize i = 0; i < N_MEMBERS; i++)
    G_STRUCT_MEMBER (double, step, members[i].in_step) = G_STRUCT_MEMBER (double, place, members[i].in_place);
}

void
sw_pour_place_move (SwPourPlace *place, double dx, double dy)
{
  place->x += dx;
  if (place->kind != SW_STEP_BAND || place->length > 0)
    place->y += dy;
}

/* The limits are those of the members; only a length of 0 is a band's alone. */
static double
within_limits (const SwPourPlace *place, const SwMember *member, double value)
{
  if (member->above_zero > 0 && value < member->above_zero)
    return place->kind == SW_STEP_BAND && value <= 0 ? 0 : member->above_zero;
  return CLAMP (value, member->min, member->max);
}

void
sw_pour_place_tidy (SwPourPlace *place)
{
  /* 180 and -180 are one angle, and rounding may lead from one to the other. */
  if (place->kind != SW_STEP_BAND)
    place->angle = remainder (place->angle, 360);
  else
    place->angle = CLAMP (place->angle, -SW_MAX_SLANT_DEG, SW_MAX_SLANT_DEG);
  for (gsize i = 0; i < N_MEMBERS; i++)
    {
      const SwMember *member = sw_record_find_member (SW_RECORD_STEP, members[i].name);
      double *value = &G_STRUCT_MEMBER (double, place, members[i].in_place);

      /* Divided by a whole number, the result is the double nearest to its decimals. */
      *value = within_limits (place, member, round (*value / members[i].step) / round (1 / members[i].step));
    }
  if (place->angle <= -180)
    place->angle += 360;
}

SwEdit *
sw_pour_place_edit (const SwStep *step, const SwPourPlace *place)
{
  SwEdit *edits[N_MEMBERS];
  gsize n = 0;

  for (gsize i = 0; i < N_MEMBERS; i++)
    {
      const double wanted = G_STRUCT_MEMBER (double, place, members[i].in_place);
      const SwValue value = sw_value_number (wanted);

      if (wanted < G_STRUCT_MEMBER (double, step, members[i].in_step) || wanted > G_STRUCT_MEMBER (double, step, members[i].in_step))
        edits[n++] = sw_edit_set (SW_RECORD_STEP, step->id, members[i].name, &value);
    }
  return n > 0 ? sw_edit_group (edits, n) : NULL;
}

void
sw_pour_band_ends (const SwSketch *sketch, const SwPourPlace *place, double *near, double *far)
{
  const double across = sw_sketch_lay_width (sketch);

  *near = place->length > 0 ? CLAMP (place->y - place->length / 2, 0, across) : 0;
  *far = place->length > 0 ? CLAMP (place->y + place->length / 2, 0, across) : across;
}

SwExtent
sw_pour_extent (const SwSketch *sketch, const SwPourPlace *place)
{
  const double turn = place->angle * G_PI / 180, a = place->width / 2, b = place->length / 2;
  const double c = fabs (cos (turn)), s = fabs (sin (turn));
  double half_x, half_y;

  if (place->kind == SW_STEP_BAND)
    return (SwExtent){ place->x - a, place->x + a, b > 0 ? place->y - b : 0, b > 0 ? place->y + b : sw_sketch_lay_width (sketch) };
  half_x = place->kind == SW_STEP_SPLOTCH ? hypot (a * c, b * s) : a * c + b * s;
  half_y = place->kind == SW_STEP_SPLOTCH ? hypot (a * s, b * c) : a * s + b * c;
  return (SwExtent){ place->x - half_x, place->x + half_x, place->y - half_y, place->y + half_y };
}

static double
turn_of (const SwPourPlace *place)
{
  return place->kind == SW_STEP_BAND ? 0 : place->angle * G_PI / 180;
}

void
sw_pour_to_own (const SwPourPlace *place, double dx, double dy, double *u, double *v)
{
  const double c = cos (turn_of (place)), s = sin (turn_of (place));

  *u = dx * c + dy * s;
  *v = -dx * s + dy * c;
}

void
sw_pour_from_own (const SwPourPlace *place, double u, double v, double *dx, double *dy)
{
  const double c = cos (turn_of (place)), s = sin (turn_of (place));

  *dx = u * c - v * s;
  *dy = u * s + v * c;
}

double
sw_pour_shift (const SwPourPlace *place, double y)
{
  SwStep step = { .y_cm = place->y, .angle_deg = place->angle };

  return place->kind == SW_STEP_BAND ? sw_pan_band_shift (&step, y) : 0;
}
