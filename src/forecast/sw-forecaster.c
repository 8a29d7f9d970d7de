/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cloth/sw-fabric.h"
#include "forecast/sw-stage-private.h"

#include <math.h>

/*
 * The pipeline: the one place that knows the order of the stages.
 */

struct _SwForecaster
{
  SwCache *cache;
  guint counts[SW_N_STAGES];
};

SwForecaster *
sw_forecaster_new (void)
{
  SwForecaster *self = g_new0 (SwForecaster, 1);

  self->cache = sw_cache_new ();
  return self;
}

void
sw_forecaster_free (SwForecaster *self)
{
  sw_cache_free (self->cache);
  g_free (self);
}

guint
sw_forecaster_count (const SwForecaster *self, SwStage stage)
{
  return self->counts[stage];
}

/* Arrays of pointers that a forecast owns besides the parts. */
static void
fill_pan (SwForecast *forecast, const SwBasisPart *basis, const SwSchedulePart *schedule, const SwPalettePart *palette, SwBathResult *bath)
{
  const SwSketch *sketch = forecast->sketch;
  gsize n_dyes = sketch->dyes->len;
  SwDyeField *fields = g_new0 (SwDyeField, MAX (n_dyes, 1));
  const SwSpecks **specks = g_new0 (const SwSpecks *, bath->n_specks + 1);
  double poured = 0.0, struck = 0.0;

  for (gsize i = 0; i < n_dyes; i++)
    {
      fields[i].depth = bath->fields[i]->depth;
      bath->balances[i].name = ((const SwDye *) sketch->dyes->pdata[i])->name;
      poured += bath->balances[i].poured_g;
      struck += bath->balances[i].struck_g;
    }
  for (gsize i = 0; i < bath->n_specks; i++)
    specks[i] = &bath->specks[i]->specks;

  forecast->grid = basis->grid;
  forecast->grams_per_cell = basis->grams_per_cell;
  forecast->palette = palette->palette;
  forecast->n_dyes = (int) n_dyes;
  forecast->dyes = g_steal_pointer (&bath->balances);
  forecast->fields = fields;
  forecast->n_specks = bath->n_specks;
  forecast->specks = specks;
  forecast->n_steps = schedule->n_steps;
  forecast->states = schedule->states;
  forecast->step_balances = g_steal_pointer (&bath->step_balances);
  forecast->clear_percent = poured > 0.0 ? 100.0 * struck / poured : 100.0;
}

/* The strands of the skeins that are knitted in turn, and their colours. */
typedef struct
{
  gsize n;
  const SwStrandPart *strands[SW_MOST_ALTERNATE];
  const SwLegsPart *legs[SW_MOST_ALTERNATE];
} Skeins;

static gboolean
run_skeins (SwRun *run, const SwBasisPart *basis, const SwPalettePart *palette, const SwBathResult *bath, Skeins *skeins, GError **error)
{
  skeins->n = (gsize) run->sketch->cloth.alternate_skeins;
  for (gsize turn = 0; turn < skeins->n; turn++)
    {
      skeins->strands[turn] = sw_stage_strand (run, basis, turn, error);
      if (skeins->strands[turn] == NULL)
        return FALSE;
      skeins->legs[turn] = sw_stage_legs (run, basis, palette, bath, skeins->strands[turn], error);
      if (skeins->legs[turn] == NULL)
        return FALSE;
    }
  return TRUE;
}

/* What the pooling needs to know of skeins in turn. */
static SwPoolingInput
describe_alternation (const SwClothSettings *cloth, double stitch_length)
{
  return (SwPoolingInput){
    .alternation = { (gsize) cloth->alternate_skeins, (gsize) cloth->alternate_rows },
    .shift = cloth->alternate_shift_cm / stitch_length,
    .cast_on = cloth->cast_on * 10.0 / cloth->stitches_per_10cm / stitch_length,
  };
}

static void
fill_skeins (SwForecast *forecast, const Skeins *skeins)
{
  forecast->n_skeins = skeins->n;
  for (gsize turn = 0; turn < skeins->n; turn++)
    forecast->skeins[turn] = (SwSkeinLegs){
      .n_stitches = skeins->strands[turn]->n_stitches,
      .leg_x = skeins->legs[turn]->x,
      .leg_y = skeins->legs[turn]->y,
      .leg_z = skeins->legs[turn]->z,
    };
}

static void
fill_strand (SwForecast *forecast, const SwStrandPart *strand, const SwLegsPart *legs)
{
  const SwClothSettings *cloth = &forecast->sketch->cloth;

  forecast->reel = strand->reel;
  forecast->lay = strand->lay;
  forecast->strand_length_cm = strand->reel.length_cm;
  forecast->wraps = strand->wraps;
  forecast->repeat_cm = strand->reel.circumference_cm;
  forecast->stitch_length_cm = strand->stitch_length_cm;
  forecast->stitch_width_cm = 10.0 / cloth->stitches_per_10cm;
  forecast->row_height_cm = 1.0 / (cloth->rows_per_10cm > 0.0 ? cloth->rows_per_10cm / 10.0 : sw_fabric_courses (cloth->fabric, cloth->stitches_per_10cm / 10.0));
  forecast->n_stitches = strand->n_stitches;
  forecast->leg_x = legs->x;
  forecast->leg_y = legs->y;
  forecast->leg_z = legs->z;
}

static void
fill_cloth (SwForecast *forecast, const SwSeriesPart *series)
{
  const SwClothSettings *cloth = &forecast->sketch->cloth;
  double width_cm = (double) cloth->width_stitches * forecast->stitch_width_cm;
  SwPoolingInput input = describe_alternation (cloth, forecast->stitch_length_cm);

  forecast->lab_l = series->l;
  forecast->lab_a = series->a;
  forecast->lab_b = series->b;
  forecast->layout = (SwLayout){
    .worked = cloth->worked,
    .width = (gsize) cloth->width_stitches,
    .cast_on = (gsize) lround (cloth->cast_on * width_cm / forecast->stitch_length_cm),
    .turn = cloth->turn_cm / forecast->stitch_length_cm,
    .n = forecast->n_stitches,
    .alternation = input.alternation,
  };
  for (gsize turn = 1; turn < forecast->n_skeins; turn++)
    forecast->layout.next_n[turn - 1] = forecast->skeins[turn].n_stitches;
  input.gamma = series->gamma;
  input.n_lags = series->n_lags;
  input.n = forecast->n_stitches;
  input.gamma_inf = series->gamma_inf;
  input.turn = forecast->layout.turn;
  input.stripe_stitches = series->mean_run;
  input.stitch_width_cm = forecast->stitch_width_cm;
  input.row_height_cm = forecast->row_height_cm;
  forecast->pooling_input = input;
  forecast->n_stripes = series->n_stripes;
  forecast->stripes = series->stripes;
  sw_pooling_scan (&forecast->pooling_input, cloth->worked, forecast->layout.width, forecast->layout.width, &forecast->pooling);
}

SwForecast *
sw_forecaster_run (SwForecaster *self, const SwSketch *sketch, GCancellable *cancellable, GError **error)
{
  g_autoptr (SwForecast) forecast = NULL;
  SwRun run = { .sketch = sketch, .cache = self->cache, .cancellable = cancellable, .counts = self->counts };
  SwBathResult bath = { 0 };
  const SwBasisPart *basis;
  const SwPalettePart *palette;
  const SwSchedulePart *schedule;
  Skeins skeins = { 0 };
  const SwSeriesPart *series = NULL;

  if (!sw_sketch_validate (sketch, error))
    return NULL;

  palette = sw_stage_palette (&run, error);
  if (palette == NULL)
    return NULL;
  basis = sw_stage_basis (&run);
  schedule = sw_stage_schedule (&run, basis);

  if (sw_stage_bath (&run, basis, schedule, &bath, error) && run_skeins (&run, basis, palette, &bath, &skeins, error))
    {
      const SwStrandPart *strand = skeins.strands[0];
      const SwPoolingInput alternating = describe_alternation (&sketch->cloth, strand->stitch_length_cm);

      series = sw_stage_series (&run, skeins.legs[0], strand->n_stitches, &alternating);
    }

  /* A run that stopped half-way leaves what it has for the next one to find. */
  if (series != NULL)
    {
      forecast = g_new0 (SwForecast, 1);
      g_atomic_ref_count_init (&forecast->ref_count);
      forecast->sketch = sw_sketch_copy (sketch);
      fill_pan (forecast, basis, schedule, palette, &bath);
      fill_strand (forecast, skeins.strands[0], skeins.legs[0]);
      fill_skeins (forecast, &skeins);
      fill_cloth (forecast, series);
      self->counts[SW_STAGE_POOLING]++;
      forecast->parts = sw_cache_sweep (self->cache);
    }

  sw_bath_result_clear (&bath);
  return g_steal_pointer (&forecast);
}

SwForecast *
sw_forecast_ref (SwForecast *forecast)
{
  g_atomic_ref_count_inc (&forecast->ref_count);
  return forecast;
}

void
sw_forecast_unref (SwForecast *forecast)
{
  if (!g_atomic_ref_count_dec (&forecast->ref_count))
    return;

  g_free ((gpointer) forecast->dyes);
  g_free ((gpointer) forecast->step_balances);
  g_free ((gpointer) forecast->fields);
  g_free ((gpointer) forecast->specks);
  sw_sketch_free ((SwSketch *) forecast->sketch);
  g_ptr_array_unref (forecast->parts);
  g_free (forecast);
}

void
sw_forecast_scan (const SwForecast *forecast, SwWorked worked, gsize from, gsize to, SwPooling *results)
{
  sw_pooling_scan (&forecast->pooling_input, worked, from, to, results);
}
