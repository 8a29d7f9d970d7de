/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/sw-sheet-private.h"

#include "bath/sw-ph.h"
#include "sheet/sw-measure.h"

#define ABOVE_LAY_CM 1.0 /* of liquor that still slops about in the pan; ours */

/* Water is measured in a jug from here on, and read to its marks: ours. */
#define JUG_ML 200.0
#define JUG_STEP_ML 10.0

static SwAmount
water_of (const SwSheet *sheet, double ml)
{
  double step = sheet->sketch->sheet.measure_step_ml;

  if (step > 0.0 && ml >= JUG_ML)
    step = MAX (step, JUG_STEP_ML);
  return (SwAmount){ ml, sw_round_to (ml, step) };
}

static SwAmount
acid_of (const SwSheet *sheet, double ml)
{
  return (SwAmount){ ml, sw_round_to (ml, sheet->sketch->sheet.measure_step_ml) };
}

static gboolean
weighed_dry (const SwSheet *sheet)
{
  return sheet->sketch->bath.acid == SW_ACID_CITRIC && sheet->sketch->sheet.acid_form == SW_ACID_FORM_CRYSTALS;
}

/* The crystals that are in so much solution. */
static SwAmount
crystals_of (const SwSheet *sheet, double ml, double percent)
{
  double grams = ml * percent / 100.0;

  if (!weighed_dry (sheet))
    return (SwAmount){ 0.0, 0.0 };
  return (SwAmount){ grams, sw_round_to (grams, sheet->sketch->sheet.weigh_step_g) };
}

/*
 * mL of the solution to @water_ml for @ph. In liquor of which the share f came
 * from the tap the charge balance asks for c(f) = c(0) + f (c(1) - c(0)) mol/L
 * of acid, since alkalinity and carbonate enter it by proportion; so the
 * volume follows without trying.
 */
static double
acid_for_ph (const SwSketch *sketch, double water_ml, double ph)
{
  const SwAcidSystem *acid = sketch->bath.acid == SW_ACID_CITRIC ? &sw_citric_acid : &sw_acetic_acid;
  double alkalinity = sketch->bath.alkalinity_meq_per_l / 1000.0;
  double carbonate = sketch->bath.keep_carbonate ? sw_carbonate_of_water (alkalinity, SW_TAP_PH) : 0.0;
  double in_tap = sw_acid_for_ph (acid, ph, alkalinity, carbonate);
  double in_pure = sw_acid_for_ph (acid, ph, 0.0, 0.0);
  double in_solution = 1000.0 * sketch->bath.acid_percent / 100.0 / acid->molar_mass; /* mol/L */

  if (in_solution <= in_pure)
    return -1.0;
  return water_ml * in_tap / (in_solution - in_pure);
}

/* Liquor up to a depth in a pan or box with such a floor. */
static double
liquor_to (const SwSheet *sheet, gsize skeins, double floor_cm2, double depth_cm)
{
  return MAX (floor_cm2 * depth_cm - sw_sheet_fibre_cm3 (sheet, skeins), 0.0);
}

double
sw_sheet_fibre_cm3 (const SwSheet *sheet, gsize skeins)
{
  return sheet->sketch->yarn.mass_g * (double) skeins / SW_FIBRE_DENSITY;
}

static void
fill_one (const SwSheet *sheet, gsize skeins, SwSheetLiquor *liquor)
{
  const SwSketch *sketch = sheet->sketch;
  double part = sw_sheet_part (sheet, skeins);
  double acid_ml = sketch->bath.acid_ml * part;
  double lay_cm2 = sw_sketch_lay_length (sketch) * sw_sketch_lay_width (sketch) * part;
  double pan_cm2 = MAX (sketch->lay.pan_length_cm * sketch->lay.pan_width_cm, lay_cm2);

  liquor->fibre_g = sketch->yarn.mass_g * (double) skeins;
  liquor->water_ml = water_of (sheet, sketch->bath.water_ml * part);
  liquor->acid_ml = acid_of (sheet, acid_ml);
  liquor->crystals_g = crystals_of (sheet, acid_ml, sketch->bath.acid_percent);
  liquor->cover_ml = liquor_to (sheet, skeins, pan_cm2, sketch->lay.depth_cm);
  liquor->lay_cover_ml = liquor_to (sheet, skeins, lay_cm2, sketch->lay.depth_cm);
  liquor->pan_ml = liquor_to (sheet, skeins, pan_cm2, sketch->lay.depth_cm + ABOVE_LAY_CM);
  liquor->ratio = (liquor->water_ml.exact + acid_ml) / liquor->fibre_g;
  if (sketch->sheet.liquor_ratio > 0.0)
    liquor->ratio_water_ml = MAX (sketch->sheet.liquor_ratio * liquor->fibre_g - acid_ml, 0.0);
  if (sketch->sheet.target_ph > 0.0)
    liquor->target_acid_ml = acid_for_ph (sketch, liquor->water_ml.exact, sketch->sheet.target_ph);
  if (liquor->target_acid_ml > 0.0)
    liquor->target_crystals_g = crystals_of (sheet, liquor->target_acid_ml, sketch->bath.acid_percent).exact;
}

static void
fill_added (const SwSheet *sheet, const SwStep *step, gsize skeins, SwAmount *ml, SwAmount *crystals_g)
{
  double added_ml = step->volume_ml * sw_sheet_part (sheet, skeins);

  if (step->kind == SW_STEP_WATER)
    *ml = water_of (sheet, added_ml);
  if (step->kind == SW_STEP_ACID)
    {
      *ml = acid_of (sheet, added_ml);
      *crystals_g = crystals_of (sheet, added_ml, step->acid_percent);
    }
}

static void
add_scaled (SwAmount *sum, SwAmount more, double scale)
{
  sum->exact += more.exact * scale;
  sum->rounded += more.rounded * scale;
}

static void
fill_totals (SwSheet *sheet)
{
  const SwSheetLiquor *fuller = &sheet->liquor, *lesser = &sheet->lesser_liquor;

  sheet->water_ml = sw_sheet_over_pans (sheet, fuller->water_ml, lesser->water_ml);
  sheet->acid_ml = sw_sheet_over_pans (sheet, fuller->acid_ml, lesser->acid_ml);
  sheet->crystals_g = sw_sheet_over_pans (sheet, fuller->crystals_g, lesser->crystals_g);
  for (gsize i = 0; i < sheet->n_steps; i++)
    {
      const SwStep *step = sheet->sketch->steps->pdata[i];
      SwAmount added = sw_sheet_over_pans (sheet, sheet->steps[i].added_ml, sheet->steps[i].lesser_added_ml);

      if (step->kind == SW_STEP_WATER)
        add_scaled (&sheet->water_ml, added, 1.0);
      if (step->kind == SW_STEP_ACID)
        add_scaled (&sheet->acid_ml, added, step->acid_percent / sheet->sketch->bath.acid_percent);
      add_scaled (&sheet->crystals_g, sw_sheet_over_pans (sheet, sheet->steps[i].crystals_g, sheet->steps[i].lesser_crystals_g), 1.0);
    }
}

void
sw_sheet_fill_liquor (SwSheet *sheet)
{
  fill_one (sheet, sheet->fullest, &sheet->liquor);
  if (sheet->lesser > 0)
    {
      fill_one (sheet, sheet->lesser, &sheet->lesser_liquor);
      sheet->lesser_liquor.start_ph = sheet->liquor.start_ph;
    }
  for (gsize i = 0; i < sheet->n_steps; i++)
    {
      SwSheetStep *row = &sheet->steps[i];
      const SwStep *step = sheet->sketch->steps->pdata[i];

      fill_added (sheet, step, sheet->fullest, &row->added_ml, &row->crystals_g);
      if (sheet->lesser > 0)
        fill_added (sheet, step, sheet->lesser, &row->lesser_added_ml, &row->lesser_crystals_g);
    }
  fill_totals (sheet);
}
