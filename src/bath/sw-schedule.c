/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bath/sw-schedule.h"

#include "bath/sw-ph.h"
#include "bath/sw-strike.h"

#define DEPTH_SPREAD (1.0 / 3.0) /* Dz / Dxy */
#define LEAST_COVER 0.1
#define MOST_COVER 3.0

/* What is dissolved, as it adds up. */
typedef struct
{
  double liquor_ml;
  double tap_ml; /* of the liquor, what came from the tap with its alkalinity */
  double acid_mol;
} Liquor;

static const SwAcidSystem *
acid_of (const SwSketch *sketch)
{
  static const SwAcidSystem *const systems[] = {
    [SW_ACID_ACETIC] = &sw_acetic_acid,
    [SW_ACID_CITRIC] = &sw_citric_acid,
  };

  return systems[sketch->bath.acid];
}

/* Acid solutions are made up with little or soft water: they count as pure. */
static void
add_acid (const SwSketch *sketch, Liquor *liquor, double ml, double percent)
{
  liquor->liquor_ml += ml;
  liquor->acid_mol += ml * percent / 100.0 / acid_of (sketch)->molar_mass;
}

static double
ph_of (const SwSketch *sketch, const Liquor *liquor)
{
  double litres = liquor->liquor_ml / 1000.0;
  double tap = liquor->tap_ml / liquor->liquor_ml;
  double alkalinity = sketch->bath.alkalinity_meq_per_l / 1000.0;
  double carbonate = sketch->bath.keep_carbonate ? sw_carbonate_of_water (alkalinity, SW_TAP_PH) : 0.0;

  return sw_ph (acid_of (sketch), liquor->acid_mol / litres, alkalinity * tap, carbonate * tap);
}

static void
add_step (const SwSketch *sketch, const SwStep *step, Liquor *liquor)
{
  switch (step->kind)
    {
    case SW_STEP_BAND:
    case SW_STEP_SPLOTCH:
    case SW_STEP_SPECKLE:
      liquor->liquor_ml += sw_schedule_pour_ml (sketch, step);
      break;
    case SW_STEP_ACID:
      add_acid (sketch, liquor, step->volume_ml, step->acid_percent);
      break;
    case SW_STEP_WATER:
      liquor->liquor_ml += step->volume_ml;
      liquor->tap_ml += step->volume_ml;
      break;
    case SW_STEP_REST:
    case SW_STEP_FLIP:
    case SW_STEP_SET:
      break;
    }
}

static gboolean
takes_time (const SwStep *step)
{
  return step->kind == SW_STEP_REST || step->kind == SW_STEP_SET;
}

static void
state_from_liquor (const SwSketch *sketch, const Liquor *liquor, SwBathState *state)
{
  state->liquor_ml = liquor->liquor_ml;
  state->ph = ph_of (sketch, liquor);
  state->cover = sw_schedule_cover (sketch, liquor->liquor_ml);
}

void
sw_schedule_run (const SwSketch *sketch, SwBathState *states)
{
  Liquor liquor = { sketch->bath.water_ml, sketch->bath.water_ml, 0.0 };

  add_acid (sketch, &liquor, sketch->bath.acid_ml, sketch->bath.acid_percent);
  states[0] = (SwBathState){ .temperature_c = sketch->bath.temperature_c };
  state_from_liquor (sketch, &liquor, &states[0]);

  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = g_ptr_array_index (sketch->steps, i);
      SwBathState *state = &states[i + 1];

      *state = states[i];
      state->minutes = takes_time (step) ? step->minutes : 0.0;
      if (takes_time (step))
        state->temperature_c = step->temperature_c;
      if (step->kind == SW_STEP_FLIP)
        state->second_face = !state->second_face;

      add_step (sketch, step, &liquor);
      state_from_liquor (sketch, &liquor, state);
    }
}

void
sw_schedule_spans (const SwSketch *sketch, const SwBathState *states, const SwDye *dye, int share, SwSpan *spans)
{
  double half_time = share == 1 ? dye->quick_half_time_min : dye->half_time_min;

  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwBathState *state = &states[i + 1];
      double spread = sketch->bath.spread_cm2_per_min * dye->spread * state->cover;

      spans[i] = (SwSpan){
        state->minutes,
        sw_strike_rate (half_time, dye->activation_kj_per_mol, state->ph, state->temperature_c, sketch->yarn.fibre),
        spread,
        spread * DEPTH_SPREAD,
      };
    }
}

double
sw_schedule_cover (const SwSketch *sketch, double liquor_ml)
{
  double box = sw_sketch_lay_length (sketch) * sw_sketch_lay_width (sketch) * sketch->lay.depth_cm;
  double fibre = sketch->yarn.mass_g * (double) sketch->lay.skeins / SW_FIBRE_DENSITY;

  /* A lay drawn smaller than its fibre has no room for liquor: any covers it. */
  return CLAMP (liquor_ml / MAX (box - fibre, 1.0), LEAST_COVER, MOST_COVER);
}

/* The dye of one pour at its depth on all the fibre in the pan. */
static double
grams_by_depth (const SwSketch *sketch, const SwStep *step)
{
  return step->depth_percent / 100.0 * sketch->yarn.mass_g * (double) sketch->lay.skeins;
}

double
sw_schedule_pour_ml (const SwSketch *sketch, const SwStep *step)
{
  const SwDye *dye;

  if (step->kind == SW_STEP_SPECKLE && step->dry)
    return 0.0;
  if (!(step->depth_percent > 0.0))
    return step->amount_ml;

  dye = sw_sketch_find_dye (sketch, step->dye);
  g_return_val_if_fail (dye != NULL, 0.0);

  return grams_by_depth (sketch, step) * 100.0 / dye->stock_percent;
}

double
sw_schedule_pour_grams (const SwSketch *sketch, const SwStep *step)
{
  const SwDye *dye;

  if (step->kind == SW_STEP_SPECKLE && step->dry)
    return step->grams;
  if (step->depth_percent > 0.0)
    return grams_by_depth (sketch, step);

  dye = sw_sketch_find_dye (sketch, step->dye);
  g_return_val_if_fail (dye != NULL, 0.0);

  return step->amount_ml * dye->stock_percent / 100.0;
}
