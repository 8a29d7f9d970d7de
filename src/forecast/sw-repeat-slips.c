/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "forecast/sw-repeat.h"

#include "sheet/sw-sheet.h"
#include "sketch/sw-member.h"

#include <math.h>
#include <stdlib.h>

#define WEIGHED_BY 0.05
#define POURED_BY_ML 1.0
#define WORST_SHARE 0.01

/* One question after the other to the same forecaster, so that only what a slip changes is computed again. */
typedef struct
{
  SwForecaster *forecaster;
  const SwSketch *sketch; /* every pour by its volume */
  SwForecast *plain;
  double *differences; /* one per stitch */
  GArray *effects;
  GCancellable *cancellable;
} Slips;

/* A member's limits hold for slips too: stock at its strongest cannot be made stronger. */
static double
within (SwRecord record, const char *name, double value)
{
  const SwMember *member = sw_record_find_member (record, name);

  return CLAMP (value, member->min, member->max);
}

/* Slips are made with the jug and the scale: what was to be poured by depth is a volume by then, if it is one that can be poured. */
static SwSketch *
by_volume (const SwSketch *sketch)
{
  SwSketch *copy = sw_sketch_copy (sketch);

  for (guint i = 0; i < copy->steps->len; i++)
    {
      SwStep *step = copy->steps->pdata[i];
      double ml = sw_step_is_pour (step) && step->depth_percent > 0.0 ? sw_schedule_pour_ml (sketch, step) : -1.0;

      if (ml < 0.0 || ml > within (SW_RECORD_STEP, "amount_ml", ml))
        continue;
      step->amount_ml = ml;
      step->depth_percent = 0.0;
    }
  return copy;
}

static int
smaller_first (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* Stitch by stitch, since the strand lies where it lay. */
static void
compare (Slips *slips, const SwForecast *slipped, double *mean, double *most)
{
  const SwForecast *plain = slips->plain;
  gsize n = plain->n_stitches;
  gsize worst = MAX (1, (gsize) (WORST_SHARE * (double) n));

  *mean = *most = 0.0;
  for (gsize i = 0; i < n; i++)
    {
      slips->differences[i] = sw_ciede2000 ((SwLab){ plain->lab_l[i], plain->lab_a[i], plain->lab_b[i] },
                                            (SwLab){ slipped->lab_l[i], slipped->lab_a[i], slipped->lab_b[i] });
      *mean += slips->differences[i] / (double) n;
    }
  qsort (slips->differences, n, sizeof (double), smaller_first);
  for (gsize i = n - worst; i < n; i++)
    *most += slips->differences[i] / (double) worst;
}

static gboolean
measure (Slips *slips, const SwSketch *slipped, SwSlipEffect *effect, GError **error)
{
  g_autoptr (SwForecast) forecast = sw_forecaster_run (slips->forecaster, slipped, slips->cancellable, error);

  if (forecast == NULL)
    return FALSE;
  compare (slips, forecast, &effect->mean, &effect->most);
  return TRUE;
}

static gboolean
add (Slips *slips, const SwSketch *slipped, SwSlipEffect effect, GError **error)
{
  if (!measure (slips, slipped, &effect, error))
    return FALSE;
  g_array_append_val (slips->effects, effect);
  return TRUE;
}

static gboolean
is_poured (const SwSketch *sketch, const SwDye *dye)
{
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];

      if (sw_step_is_pour (step) && step->dye == dye->id)
        return TRUE;
    }
  return FALSE;
}

/* More or less powder in the same water, and of grains. */
static gboolean
add_weighed (Slips *slips, guint index, SwSlip slip, GError **error)
{
  g_autoptr (SwSketch) slipped = sw_sketch_copy (slips->sketch);
  SwDye *dye = slipped->dyes->pdata[index];
  double by = slip == SW_SLIP_WEIGHED_MORE ? 1.0 + WEIGHED_BY : 1.0 - WEIGHED_BY;

  dye->stock_percent = within (SW_RECORD_DYE, "stock_percent", dye->stock_percent * by);
  for (guint i = 0; i < slipped->steps->len; i++)
    {
      SwStep *step = slipped->steps->pdata[i];

      if (step->kind == SW_STEP_SPECKLE && step->dry && step->dye == dye->id)
        step->grams = within (SW_RECORD_STEP, "grams", step->grams * by);
    }
  return add (slips, slipped, (SwSlipEffect){ .slip = slip, .dye = (int) index }, error);
}

static gboolean
add_poured (Slips *slips, guint index, SwSlip slip, GError **error)
{
  g_autoptr (SwSketch) slipped = sw_sketch_copy (slips->sketch);
  SwStep *step = slipped->steps->pdata[index];
  double by = slip == SW_SLIP_POURED_MORE ? POURED_BY_ML : -POURED_BY_ML;

  step->amount_ml = within (SW_RECORD_STEP, "amount_ml", step->amount_ml + by);
  return add (slips, slipped, (SwSlipEffect){ .slip = slip, .step = step->id, .dye = -1 }, error);
}

/* Crystals rounded by the scale make another strength of the same volume. */
static void
round_acid (double *ml, double *percent, SwAmount poured, SwAmount crystals_g, double part)
{
  if (crystals_g.exact > 0.0)
    *percent = CLAMP (*percent * crystals_g.rounded / crystals_g.exact, 0.1, 100.0);
  else
    *ml = poured.rounded / part;
}

/* The drawing as it is when one kind of pan is poured by scale and measure. */
static SwSketch *
rounded_sketch (const SwSketch *sketch, const SwSheet *sheet, gboolean lesser)
{
  SwSketch *rounded = sw_sketch_copy (sketch);
  const SwSheetLiquor *liquor = lesser ? &sheet->lesser_liquor : &sheet->liquor;
  double part = (double) (lesser ? sheet->lesser : sheet->fullest) / (double) sketch->lay.skeins;
  gsize pour = 0;

  rounded->bath.water_ml = within (SW_RECORD_BATH, "water_ml", liquor->water_ml.rounded / part);
  round_acid (&rounded->bath.acid_ml, &rounded->bath.acid_percent, liquor->acid_ml, liquor->crystals_g, part);
  for (gsize i = 0; i < sheet->n_dyes; i++)
    {
      SwDye *dye = rounded->dyes->pdata[sheet->dyes[i].dye];

      dye->stock_percent = within (SW_RECORD_DYE, "stock_percent", sheet->dyes[i].strength_percent);
    }
  for (guint i = 0; i < rounded->steps->len; i++)
    {
      SwStep *step = rounded->steps->pdata[i];
      const SwSheetStep *row = &sheet->steps[i];
      SwAmount added = lesser ? row->lesser_added_ml : row->added_ml;

      if (step->kind == SW_STEP_WATER)
        step->volume_ml = added.rounded / part;
      if (step->kind == SW_STEP_ACID)
        round_acid (&step->volume_ml, &step->acid_percent, added, lesser ? row->lesser_crystals_g : row->crystals_g, part);
      if (!sw_step_is_pour (step))
        continue;
      step->depth_percent = 0.0;
      step->amount_ml = within (SW_RECORD_STEP, "amount_ml", (lesser ? sheet->pours[pour].lesser_stock_ml : sheet->pours[pour].stock_ml).rounded / part);
      step->grams = sheet->pours[pour].dry ? (lesser ? sheet->pours[pour].lesser_dye_g : sheet->pours[pour].dye_g).rounded / part : step->grams;
      pour++;
    }
  return rounded;
}

/* In the kind of pan that rounding hits harder. */
static gboolean
add_rounded (Slips *slips, const SwSketch *sketch, GError **error)
{
  g_autoptr (SwSheet) sheet = sw_sheet_new (sketch, NULL);
  SwSlipEffect worse = { .slip = SW_SLIP_ROUNDED, .dye = -1 };

  for (int lesser = 0; lesser <= (sheet->lesser > 0); lesser++)
    {
      g_autoptr (SwSketch) rounded = rounded_sketch (sketch, sheet, lesser);
      SwSlipEffect effect = worse;

      if (!measure (slips, rounded, &effect, error))
        return FALSE;
      if (effect.mean >= worse.mean)
        worse = effect;
    }
  g_array_append_val (slips->effects, worse);
  return TRUE;
}

static gboolean
add_all (Slips *slips, GError **error)
{
  const SwSketch *sketch = slips->sketch;

  for (guint i = 0; i < sketch->dyes->len; i++)
    if (is_poured (sketch, sketch->dyes->pdata[i]))
      for (SwSlip slip = SW_SLIP_WEIGHED_MORE; slip <= SW_SLIP_WEIGHED_LESS; slip++)
        if (!add_weighed (slips, i, slip, error))
          return FALSE;
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];

      if (!sw_step_is_pour (step) || (step->kind == SW_STEP_SPECKLE && step->dry) || step->depth_percent > 0.0)
        continue;
      for (SwSlip slip = SW_SLIP_POURED_MORE; slip <= SW_SLIP_POURED_LESS; slip++)
        if (!add_poured (slips, i, slip, error))
          return FALSE;
    }
  return TRUE;
}

GArray *
sw_slips_new (const SwSketch *sketch, GCancellable *cancellable, GError **error)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwSketch) plain_sketch = NULL;
  g_autoptr (SwForecast) plain = NULL;
  g_autoptr (GArray) effects = g_array_new (FALSE, FALSE, sizeof (SwSlipEffect));
  g_autofree double *differences = NULL;
  Slips slips;

  g_return_val_if_fail (sketch != NULL, NULL);

  if (!sw_sketch_validate (sketch, error))
    return NULL;
  plain_sketch = by_volume (sketch);
  plain_sketch->cloth.alternate_skeins = 1;
  plain = sw_forecaster_run (forecaster, plain_sketch, cancellable, error);
  if (plain == NULL)
    return NULL;

  differences = g_new (double, plain->n_stitches);
  slips = (Slips){ forecaster, plain_sketch, plain, differences, effects, cancellable };
  if (!add_all (&slips, error) || !add_rounded (&slips, sketch, error))
    return NULL;
  return g_steal_pointer (&effects);
}
