/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/sw-sheet-private.h"

#include "sheet/sw-measure.h"

#include <math.h>

/* Skeins over pans, as evenly as they go; no pan stays empty. */
static void
spread_skeins (SwSheet *sheet)
{
  const SwSketch *sketch = sheet->sketch;
  gsize in_drawing = (gsize) sketch->lay.skeins, rest;

  sheet->skeins = sketch->sheet.skeins > 0 ? (gsize) sketch->sheet.skeins : in_drawing;
  sheet->pans = sketch->sheet.pans > 0 ? (gsize) sketch->sheet.pans : (sheet->skeins + in_drawing - 1) / in_drawing;
  sheet->pans = MIN (sheet->pans, sheet->skeins);

  rest = sheet->skeins % sheet->pans;
  sheet->fullest = sheet->skeins / sheet->pans + (rest > 0);
  sheet->fuller_pans = rest > 0 ? rest : sheet->pans;
  sheet->lesser = rest > 0 ? sheet->fullest - 1 : 0;
  sheet->fibre_g = sketch->yarn.mass_g * (double) sheet->skeins;
}

double
sw_sheet_part (const SwSheet *sheet, gsize skeins)
{
  return (double) skeins / (double) sheet->sketch->lay.skeins;
}

SwAmount
sw_sheet_over_pans (const SwSheet *sheet, SwAmount fuller, SwAmount lesser)
{
  double n_fuller = (double) sheet->fuller_pans;
  double n_lesser = (double) (sheet->pans - sheet->fuller_pans);

  return (SwAmount){
    n_fuller * fuller.exact + n_lesser * lesser.exact,
    n_fuller * fuller.rounded + n_lesser * lesser.rounded,
  };
}

static SwAmount
amount_of (double exact, double step)
{
  return (SwAmount){ exact, sw_round_to (exact, step) };
}

static guint
index_of_dye (const SwSketch *sketch, guint id)
{
  for (guint i = 0; i < sketch->dyes->len; i++)
    if (((const SwDye *) sketch->dyes->pdata[i])->id == id)
      return i;
  g_return_val_if_reached (0);
}

/* Volumes of one pour, and the mass of dry grains; what stock brings is known once it is weighed. */
static void
fill_pour (const SwSheet *sheet, const SwStep *step, SwSheetPour *pour)
{
  const SwSketch *sketch = sheet->sketch;
  double ml = sw_schedule_pour_ml (sketch, step), grams = sw_schedule_pour_grams (sketch, step);
  double full = sw_sheet_part (sheet, sheet->fullest), lesser = sw_sheet_part (sheet, sheet->lesser);

  pour->step = step->id;
  pour->dye = index_of_dye (sketch, step->dye);
  pour->dry = step->kind == SW_STEP_SPECKLE && step->dry;
  pour->by_depth = !pour->dry && step->depth_percent > 0.0;
  pour->stock_ml = amount_of (ml * full, sketch->sheet.measure_step_ml);
  pour->lesser_stock_ml = amount_of (ml * lesser, sketch->sheet.measure_step_ml);
  pour->dye_g = amount_of (grams * full, pour->dry ? sketch->sheet.weigh_step_g : 0.0);
  pour->lesser_dye_g = amount_of (grams * lesser, pour->dry ? sketch->sheet.weigh_step_g : 0.0);
  pour->depth_percent = 100.0 * grams / (sketch->yarn.mass_g * (double) sketch->lay.skeins);
}

static void
fill_pours (SwSheet *sheet)
{
  const GPtrArray *steps = sheet->sketch->steps;

  sheet->pours = g_new0 (SwSheetPour, steps->len);
  for (guint i = 0; i < steps->len; i++)
    if (sw_step_is_pour (steps->pdata[i]))
      {
        SwSheetPour *pour = &sheet->pours[sheet->n_pours++];

        fill_pour (sheet, steps->pdata[i], pour);
        pour->number = (guint) sheet->n_pours;
      }
}

static void
add (SwAmount *sum, SwAmount more)
{
  sum->exact += more.exact;
  sum->rounded += more.rounded;
}

static SwAmount
pour_over_pans (const SwSheet *sheet, const SwSheetPour *pour)
{
  return sw_sheet_over_pans (sheet, pour->stock_ml, pour->lesser_stock_ml);
}

/* Powder and the volume it is made up to, as scale and measure can show them. */
typedef struct
{
  double weigh_g, stock_ml;
} Stock;

/* How far it is from its strength, as a fraction; nothing weighed is no stock. */
static double
strength_error (Stock stock, double percent)
{
  return stock.weigh_g > 0.0 && stock.stock_ml > 0.0 ? fabs (100.0 * stock.weigh_g / stock.stock_ml / percent - 1.0) : INFINITY;
}

/*
 * A coarse scale or measure makes more stock, not another colour: either
 * powder up to the next step of the scale is made up to the volume that then
 * has the strength, or the volume up to the next step of the measure gets the
 * powder it takes, whichever comes nearer to the strength.
 */
static Stock
rounded_stock (const SwSheetSettings *settings, double wanted_ml, double percent)
{
  double weigh_g = sw_round_up_to (wanted_ml * percent / 100.0, settings->weigh_step_g);
  double stock_ml = sw_round_up_to (wanted_ml, settings->measure_step_ml);
  const Stock by_scale = { weigh_g, sw_round_to (weigh_g * 100.0 / percent, settings->measure_step_ml) };
  const Stock by_measure = { sw_round_to (stock_ml * percent / 100.0, settings->weigh_step_g), stock_ml };

  return strength_error (by_measure, percent) < strength_error (by_scale, percent) - 1e-9 ? by_measure : by_scale;
}

static void
fill_stock (const SwSheet *sheet, SwSheetDye *dye)
{
  double percent = ((const SwDye *) sheet->sketch->dyes->pdata[dye->dye])->stock_percent;
  double spare = 1.0 + sheet->sketch->sheet.stock_margin_percent / 100.0;
  Stock stock = rounded_stock (&sheet->sketch->sheet, dye->poured_ml.rounded * spare, percent);

  dye->stock_ml = (SwAmount){ dye->poured_ml.exact * spare, stock.stock_ml };
  dye->weigh_g = (SwAmount){ dye->stock_ml.exact * percent / 100.0, stock.weigh_g };
  dye->water_ml = stock.stock_ml;
  dye->strength_percent = stock.stock_ml > 0.0 ? 100.0 * stock.weigh_g / stock.stock_ml : percent;
}

static void
fill_dye (SwSheet *sheet, SwSheetDye *dye)
{
  for (gsize i = 0; i < sheet->n_pours; i++)
    if (sheet->pours[i].dye == dye->dye && !sheet->pours[i].dry)
      add (&dye->poured_ml, pour_over_pans (sheet, &sheet->pours[i]));
  fill_stock (sheet, dye);

  for (gsize i = 0; i < sheet->n_pours; i++)
    {
      SwSheetPour *pour = &sheet->pours[i];
      SwAmount grams;

      if (pour->dye != dye->dye)
        continue;
      if (!pour->dry)
        {
          pour->dye_g.rounded = pour->stock_ml.rounded * dye->strength_percent / 100.0;
          pour->lesser_dye_g.rounded = pour->lesser_stock_ml.rounded * dye->strength_percent / 100.0;
        }
      grams = sw_sheet_over_pans (sheet, pour->dye_g, pour->lesser_dye_g);
      add (&dye->poured_g, grams);
      if (pour->dry)
        add (&dye->dry_g, grams);
    }
  dye->depth_percent = 100.0 * dye->poured_g.exact / sheet->fibre_g;
  dye->left_percent = -1.0;
}

static gboolean
is_poured (const SwSheet *sheet, guint dye)
{
  for (gsize i = 0; i < sheet->n_pours; i++)
    if (sheet->pours[i].dye == dye)
      return TRUE;
  return FALSE;
}

static void
fill_dyes (SwSheet *sheet)
{
  guint n = sheet->sketch->dyes->len;

  sheet->dyes = g_new0 (SwSheetDye, n);
  for (guint i = 0; i < n; i++)
    if (is_poured (sheet, i))
      {
        SwSheetDye *dye = &sheet->dyes[sheet->n_dyes++];

        dye->dye = i;
        fill_dye (sheet, dye);
      }
}

/* The bath after each step. */
static void
fill_states (SwSheet *sheet, const SwSheetBath *bath)
{
  gsize n = sheet->sketch->steps->len;
  g_autofree SwBathState *own = NULL;
  const SwBathState *states = bath != NULL ? bath->states : NULL;

  if (states == NULL)
    {
      own = g_new (SwBathState, n + 1);
      sw_schedule_run (sheet->sketch, own);
      states = own;
    }
  sheet->n_steps = n;
  sheet->steps = g_new0 (SwSheetStep, n);
  sheet->liquor.start_ph = states[0].ph;
  for (gsize i = 0; i < n; i++)
    sheet->steps[i] = (SwSheetStep){
      .step = ((const SwStep *) sheet->sketch->steps->pdata[i])->id,
      .ph = states[i + 1].ph,
      .temperature_c = states[i + 1].temperature_c,
      .left_percent = -1.0,
    };
}

/* What is still in the liquor, of all dye poured until then; by dye only at the end. */
static void
fill_left (SwSheet *sheet, const double *left_g)
{
  const SwSketch *sketch = sheet->sketch;
  gsize n_dyes = sketch->dyes->len;
  double poured = 0.0;

  sheet->clear_percent = -1.0;
  if (left_g == NULL)
    return;

  for (gsize i = 0; i < sheet->n_steps; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];
      double left = 0.0;

      if (sw_step_is_pour (step))
        poured += sw_schedule_pour_grams (sketch, step);
      for (gsize dye = 0; dye < n_dyes; dye++)
        left += left_g[i * n_dyes + dye];
      sheet->steps[i].left_percent = poured > 0.0 ? 100.0 * left / poured : 0.0;
    }
  sheet->clear_percent = sheet->n_steps > 0 ? 100.0 - sheet->steps[sheet->n_steps - 1].left_percent : 100.0;

  for (gsize i = 0; i < sheet->n_dyes && sheet->n_steps > 0; i++)
    {
      SwSheetDye *dye = &sheet->dyes[i];
      double in_drawing = dye->poured_g.exact / (double) sheet->skeins * (double) sketch->lay.skeins;

      dye->left_percent = in_drawing > 0.0 ? 100.0 * left_g[(sheet->n_steps - 1) * n_dyes + dye->dye] / in_drawing : 0.0;
    }
}

SwSheet *
sw_sheet_new (const SwSketch *sketch, const SwSheetBath *bath)
{
  SwSheet *sheet;

  g_return_val_if_fail (sketch != NULL, NULL);

  sheet = g_new0 (SwSheet, 1);
  sheet->sketch = sketch;
  spread_skeins (sheet);
  fill_pours (sheet);
  fill_dyes (sheet);
  fill_states (sheet, bath);
  fill_left (sheet, bath != NULL ? bath->left_g : NULL);
  sw_sheet_fill_liquor (sheet);
  sw_sheet_fill_shares (sheet);
  return sheet;
}

void
sw_sheet_free (SwSheet *sheet)
{
  if (sheet == NULL)
    return;

  g_free (sheet->pours);
  g_free (sheet->dyes);
  g_free (sheet->steps);
  g_free (sheet);
}
