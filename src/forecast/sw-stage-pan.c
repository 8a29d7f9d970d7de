/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "colour/sw-recover.h"
#include "forecast/sw-stage-private.h"

/*
 * What the later stages stand on: the colours of yarn and dyes, the grid over
 * the laid skeins, and the state of the bath at each step.
 */

/* Cells across the pan, cm, and layers through its depth. */
#define CELL_CM 0.25
#define LAYERS 8

SwKey
sw_stage_key (SwStage stage)
{
  return sw_key_whole (0, (guint64) stage);
}

static SwKey
key_sample (SwKey key, const SwSample *sample)
{
  return sw_key_numbers (sw_key_whole (key, (guint64) sample->kind), sample->numbers, sw_sample_numbers (sample->kind));
}

static void
nothing_to_free (gpointer part)
{
}

SwPalettePart *
sw_stage_palette (SwRun *run, GError **error)
{
  const SwSketch *sketch = run->sketch;
  SwKey key = key_sample (sw_stage_key (SW_STAGE_PALETTE), &sketch->yarn.undyed);
  double reflectance[SW_BANDS];
  SwPalettePart *part;

  for (guint i = 0; i < sketch->dyes->len; i++)
    {
      const SwDye *dye = sketch->dyes->pdata[i];

      key = sw_key_number (key_sample (key, &dye->sample), dye->sample_depth_percent);
    }
  part = sw_cache_get (run->cache, key);
  if (part != NULL)
    return part;

  part = sw_part_new (sizeof (SwPalettePart), nothing_to_free);
  part->key = key;
  if (!sw_sample_reflectance (&sketch->yarn.undyed, reflectance, error))
    {
      g_prefix_error (error, "yarn.undyed: ");
      sw_part_unref (part);
      return NULL;
    }
  sw_palette_set_yarn (&part->palette, reflectance);

  for (guint i = 0; i < sketch->dyes->len; i++)
    {
      const SwDye *dye = sketch->dyes->pdata[i];

      if (!sw_sample_reflectance (&dye->sample, reflectance, error))
        {
          g_prefix_error (error, "dyes[%u].sample: ", i);
          sw_part_unref (part);
          return NULL;
        }
      sw_palette_add_dye (&part->palette, reflectance, dye->sample_depth_percent);
    }

  run->counts[SW_STAGE_PALETTE]++;
  return sw_cache_put (run->cache, key, part);
}

static void
basis_part_free (gpointer data)
{
  SwBasisPart *part = data;

  sw_basis_unref (part->basis);
  sw_field_free (part->transfer);
  sw_field_free (part->struck);
}

SwBasisPart *
sw_stage_basis (SwRun *run)
{
  const SwSketch *sketch = run->sketch;
  double skeins = (double) sketch->lay.skeins;
  const double numbers[] = {
    sw_sketch_lay_length (sketch), sw_sketch_lay_width (sketch), sketch->lay.depth_cm, sketch->yarn.mass_g * skeins
  };
  SwKey key = sw_key_numbers (sw_stage_key (SW_STAGE_BASIS), numbers, G_N_ELEMENTS (numbers));
  SwBasisPart *part = sw_cache_get (run->cache, key);

  if (part != NULL)
    return part;

  part = sw_part_new (sizeof (SwBasisPart), basis_part_free);
  part->key = key;
  part->grid = sw_grid_for (numbers[0], numbers[1], numbers[2], CELL_CM, LAYERS);
  part->grams_per_cell = numbers[3] / (double) sw_grid_cells (&part->grid);
  part->basis = sw_basis_new (&part->grid);
  part->transfer = sw_field_new (sw_grid_cells (&part->grid));
  part->struck = sw_field_new (sw_grid_cells (&part->grid));

  run->counts[SW_STAGE_BASIS]++;
  return sw_cache_put (run->cache, key, part);
}

static void
schedule_part_free (gpointer data)
{
  SwSchedulePart *part = data;

  g_free (part->states);
  g_free (part->spans);
  g_free (part->second_face);
}

/* All that changes the liquor or how a dye answers to it; not where the pours lie. */
static SwKey
key_schedule (const SwRun *run, const SwBasisPart *basis)
{
  const SwSketch *sketch = run->sketch;
  const SwBathSettings *bath = &sketch->bath;
  const double liquor[] = {
    bath->water_ml, bath->alkalinity_meq_per_l, bath->acid_percent, bath->acid_ml, bath->temperature_c, bath->spread_cm2_per_min
  };
  SwKey key = sw_key_whole (sw_stage_key (SW_STAGE_SCHEDULE), basis->key);

  key = sw_key_numbers (key, liquor, G_N_ELEMENTS (liquor));
  key = sw_key_whole (sw_key_whole (key, (guint64) bath->keep_carbonate), (guint64) bath->acid);
  key = sw_key_whole (key, (guint64) sketch->yarn.fibre);

  for (guint i = 0; i < sketch->dyes->len; i++)
    {
      const SwDye *dye = sketch->dyes->pdata[i];
      const double kinetics[] = {
        dye->half_time_min, dye->quick_half_time_min, dye->activation_kj_per_mol, dye->spread
      };

      key = sw_key_numbers (key, kinetics, G_N_ELEMENTS (kinetics));
    }
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];
      const double amounts[] = {
        sw_schedule_pour_ml (sketch, step), step->minutes, step->temperature_c, step->volume_ml, step->acid_percent
      };

      key = sw_key_numbers (sw_key_whole (key, (guint64) step->kind), amounts, G_N_ELEMENTS (amounts));
      key = sw_key_whole (key, (guint64) step->dry);
    }
  return key;
}

SwSchedulePart *
sw_stage_schedule (SwRun *run, const SwBasisPart *basis)
{
  const SwSketch *sketch = run->sketch;
  SwKey key = key_schedule (run, basis);
  SwSchedulePart *part = sw_cache_get (run->cache, key);
  gsize n = sketch->steps->len;

  if (part != NULL)
    return part;

  part = sw_part_new (sizeof (SwSchedulePart), schedule_part_free);
  part->key = key;
  part->n_steps = n;
  part->states = g_new (SwBathState, n + 1);
  part->spans = g_new (SwSpan, MAX (sketch->dyes->len * 2 * n, 1));
  part->second_face = g_new0 (gboolean, n + 1);

  sw_schedule_run (sketch, part->states);
  for (gsize i = 0; i < n; i++)
    part->second_face[i] = part->states[i].second_face;
  for (guint dye = 0; dye < sketch->dyes->len; dye++)
    for (int share = 0; share < 2; share++)
      sw_schedule_spans (sketch, part->states, sketch->dyes->pdata[dye], share, part->spans + (dye * 2 + (guint) share) * n);

  run->counts[SW_STAGE_SCHEDULE]++;
  return sw_cache_put (run->cache, key, part);
}

const SwSpan *
sw_schedule_part_spans (const SwSchedulePart *schedule, gsize dye, int share)
{
  return schedule->spans + (dye * 2 + (gsize) share) * schedule->n_steps;
}
