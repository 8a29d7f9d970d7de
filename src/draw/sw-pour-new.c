/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-pour-new.h"

#include "bath/sw-deposit.h"

#include <math.h>

/* From @from to before the flip that ends the face, or to the end. */
static guint
face_end (const SwSketch *sketch, guint from)
{
  guint i = from;

  while (i < sketch->steps->len && ((const SwStep *) sketch->steps->pdata[i])->kind != SW_STEP_FLIP)
    i++;
  return i;
}

static SwStepKind
kind_at (const SwSketch *sketch, guint i)
{
  return ((const SwStep *) sketch->steps->pdata[i])->kind;
}

/* After the last pour in [from, end); @none if there is none. */
static guint
after_last_pour (const SwSketch *sketch, guint from, guint end, guint none)
{
  for (guint i = end; i > from; i--)
    if (sw_step_is_pour (sketch->steps->pdata[i - 1]))
      return i;
  return none;
}

static guint
before_closing (const SwSketch *sketch, guint from, guint end)
{
  while (end > from && (kind_at (sketch, end - 1) == SW_STEP_REST || kind_at (sketch, end - 1) == SW_STEP_SET))
    end--;
  return end;
}

SwPourSlot
sw_pour_slot (const SwSketch *sketch, gboolean second_face)
{
  const guint n = sketch->steps->len;
  guint from = 0, end = face_end (sketch, 0);

  if (second_face && end == n)
    {
      guint at = after_last_pour (sketch, 0, n, 0);

      while (at < n && kind_at (sketch, at) != SW_STEP_SET)
        at++;
      return (SwPourSlot){ (int) at, TRUE };
    }
  if (second_face)
    {
      from = end + 1;
      end = face_end (sketch, from);
    }
  return (SwPourSlot){ (int) after_last_pour (sketch, from, end, before_closing (sketch, from, end)), FALSE };
}

static gboolean
covers (const SwPourPlace *place, double x, double y)
{
  double u, v;

  sw_pour_to_own (place, x - place->x - sw_pour_shift (place, y), y - place->y, &u, &v);
  u /= place->width / 2;
  if (place->kind == SW_STEP_BAND)
    return fabs (u) <= 1 && (place->length <= 0 || fabs (v) <= place->length / 2);
  v /= place->length / 2;
  return place->kind == SW_STEP_SPLOTCH ? u * u + v * v <= 1 : fabs (u) <= 1 && fabs (v) <= 1;
}

#define POINTS 64 /* along each side */

/* The pour's share of the laid skeins. */
static double
covered_share (const SwSketch *sketch, const SwPourPlace *place)
{
  const double length = sw_sketch_lay_length (sketch), across = sw_sketch_lay_width (sketch);
  const double lean = place->kind == SW_STEP_BAND ? MAX (fabs (sw_pour_shift (place, 0)), fabs (sw_pour_shift (place, across))) : 0;
  const SwExtent extent = sw_pour_extent (sketch, place);
  const double x0 = CLAMP (extent.x0 - lean, 0, length), x1 = CLAMP (extent.x1 + lean, 0, length);
  const double y0 = CLAMP (extent.y0, 0, across), y1 = CLAMP (extent.y1, 0, across);
  int inside = 0;

  for (int j = 0; j < POINTS; j++)
    for (int i = 0; i < POINTS; i++)
      inside += covers (place, x0 + (i + 0.5) / POINTS * (x1 - x0), y0 + (j + 0.5) / POINTS * (y1 - y0)) ? 1 : 0;
  return inside * (x1 - x0) * (y1 - y0) / (POINTS * POINTS * length * across);
}

/* The share of a zone that its specks cover: n pi/4 E(d^2), of a lognormal diameter. */
static double
specked_share (const SwStep *step)
{
  const double diameter = step->speck_mm / 10;

  return MIN (step->specks_per_100_cm2 / 100 * G_PI / 4 * diameter * diameter * exp (2 * step->speck_variation * step->speck_variation), 1);
}

/* What a syringe, a measuring cylinder and a jug can tell apart. */
static double
kitchen_round (double ml)
{
  static const struct
  {
    double below, step;
  } tools[] = { { 2, 0.1 }, { 10, 0.5 }, { 50, 1 }, { G_MAXDOUBLE, 5 } };
  gsize i = 0;

  while (ml >= tools[i].below)
    i++;
  return MAX (round (ml / tools[i].step), 1) * tools[i].step;
}

/* How much deeper the outer quarter is dyed than the whole depth. */
static double
seen_factor (double worked_in)
{
  double shares[4];

  sw_deposit_depth (G_N_ELEMENTS (shares), worked_in, FALSE, shares);
  return shares[0] * G_N_ELEMENTS (shares);
}

/* A droplet bleeds: the mark it leaves is about twice as large as itself. */
#define BLEED 2.0

double
sw_pour_amount (const SwSketch *sketch, const SwDye *dye, const SwPourPlace *place)
{
  const double fibre_g = sketch->yarn.mass_g * (double) sketch->lay.skeins * covered_share (sketch, place);
  double ml = fibre_g * dye->sample_depth_percent / dye->stock_percent;

  if (place->kind == SW_STEP_SPECKLE)
    {
      g_autoptr (SwStep) usual = sw_step_new (0, SW_STEP_SPECKLE);

      ml *= BLEED * specked_share (usual);
    }
  else
    ml /= seen_factor (SW_POUR_WORKED_IN);
  return kitchen_round (MIN (ml, 20000));
}

SwStep *
sw_pour_new (const SwSketch *sketch, const SwDye *dye, const SwPourPlace *place)
{
  SwStep *step;

  g_return_val_if_fail (sketch != NULL && dye != NULL && place != NULL, NULL);

  step = sw_step_new (0, place->kind);
  step->dye = dye->id;
  sw_pour_place_put (place, step);
  if (place->kind != SW_STEP_SPECKLE)
    step->worked_in = SW_POUR_WORKED_IN;
  step->amount_ml = sw_pour_amount (sketch, dye, place);
  return step;
}
