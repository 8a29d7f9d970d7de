/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "bath/sw-deposit.h"
#include "forecast/sw-stage-private.h"
#include "sketch/sw-chance.h"

#include <math.h>
#include <string.h>

/*
 * Pours to struck dye. A pour's modes do not depend on the other steps, so
 * dragging one costs its own modes, the sum of its dye and one inverse
 * transform.
 *
 * Keeping the transfers of all moments was tried and is slower: swept anew
 * they cost a tenth of a millisecond a span and stay in the processor's
 * cache, while a first forecast spent half its time on the memory they need.
 */

/* Size classes of a pour's specks: their marks are tabled once a class. */
#define SPECK_CLASSES 32

static SwKey
key_grid (SwKey key, const SwGrid *grid)
{
  const double extent[] = { grid->lx, grid->ly, grid->lz };

  key = sw_key_whole (key, (guint64) grid->nx);
  key = sw_key_whole (key, (guint64) grid->ny);
  key = sw_key_whole (key, (guint64) grid->nz);
  return sw_key_numbers (key, extent, G_N_ELEMENTS (extent));
}

/* What happens to a dye from a step on. */
static SwKey
key_spans (SwKey key, const SwSchedulePart *schedule, gsize dye, double quick_share, gsize step)
{
  key = sw_key_number (key, quick_share);
  for (int share = 0; share < (quick_share > 0.0 ? 2 : 1); share++)
    for (gsize i = step; i < schedule->n_steps; i++)
      {
        const SwSpan *span = &sw_schedule_part_spans (schedule, dye, share)[i];
        const double numbers[] = { span->minutes, span->rate, span->spread_xy, span->spread_z };

        if (span->minutes > 0.0)
          key = sw_key_numbers (key, numbers, G_N_ELEMENTS (numbers));
      }
  return key;
}

static SwKey
key_place (SwKey key, const SwStep *step, double grams, gboolean second_face)
{
  const double numbers[] = {
    step->x_cm, step->y_cm, step->width_cm, step->length_cm, step->angle_deg, step->worked_in, grams
  };

  key = sw_key_whole (key, (guint64) step->kind);
  key = sw_key_whole (key, (guint64) second_face);
  return sw_key_numbers (key, numbers, G_N_ELEMENTS (numbers));
}

static void
pour_part_free (gpointer data)
{
  SwPourPart *part = data;

  sw_field_free (part->plane);
  sw_field_free (part->depth);
}

static SwPourPart *
stage_pour (SwRun *run, const SwBasisPart *basis, const SwStep *step, double grams, gboolean second_face, SwKey *key)
{
  const SwOutline outline = {
    .ellipse = step->kind == SW_STEP_SPLOTCH,
    .x = step->x_cm,
    .y = step->y_cm,
    .width = step->width_cm,
    .length = step->length_cm,
    .angle_deg = step->angle_deg,
  };
  const SwGrid *grid = &basis->grid;
  gsize n = (gsize) grid->nx * (gsize) grid->ny;
  SwPourPart *part;
  double *plane;

  *key = key_place (key_grid (sw_stage_key (SW_STAGE_POUR), grid), step, grams, second_face);
  part = sw_cache_get (run->cache, *key);
  if (part != NULL)
    return part;

  part = sw_part_new (sizeof (SwPourPart), pour_part_free);
  part->plane = sw_field_new (n);
  part->depth = sw_field_new ((gsize) grid->nz);

  plane = sw_field_new (n);
  sw_deposit_plane (grid, &outline, grams, plane);
  sw_basis_forward_plane (basis->basis, plane, part->plane);
  sw_field_free (plane);

  sw_deposit_blur (grid, sw_deposit_blur_for (step->worked_in), part->plane);
  sw_deposit_depth_modes (grid->nz, step->worked_in, second_face, part->depth);

  run->counts[SW_STAGE_POUR]++;
  return sw_cache_put (run->cache, *key, part);
}

static void
specks_part_free (gpointer data)
{
  SwSpecks *specks = &((SwSpecksPart *) data)->specks;

  g_free (specks->specks);
  g_free (specks->class_of);
  g_free (specks->marks);
}

/* Middle radii of the classes: evenly spaced in the logarithm over those that occur. */
static void
classify (const SwSpeck *specks, gsize n, guint8 *class_of, double *radii)
{
  double low = G_MAXDOUBLE, high = 0.0, step;

  for (gsize i = 0; i < n; i++)
    {
      low = MIN (low, log ((double) specks[i].radius));
      high = i == 0 ? low : MAX (high, log ((double) specks[i].radius));
    }

  step = MAX ((high - low) / SPECK_CLASSES, 1e-9);
  for (int i = 0; i < SPECK_CLASSES; i++)
    radii[i] = exp (low + (i + 0.5) * step);
  for (gsize i = 0; i < n; i++)
    class_of[i] = (guint8) CLAMP ((int) ((log ((double) specks[i].radius) - low) / step), 0, SPECK_CLASSES - 1);
}

/* Fills the specks of one share of the dye, and the marks they make. */
static void
fill_share (SwSpecks *specks, int share, double grams_share, const SwSpeck *scattered, gsize n, const SwSpan *spans, gsize n_spans, const SwGrid *grid, const SwStep *step, gboolean second_face)
{
  double radii[SPECK_CLASSES];
  guint8 *class_of = specks->class_of + (gsize) share * n;
  SwSpeck *copies = specks->specks + (gsize) share * n;
  g_autofree SwSpan *own_spans = g_new (SwSpan, MAX (n_spans, 1));
  double spread = sw_speck_spread (step->dry);

  for (gsize i = 0; i < n_spans; i++)
    {
      own_spans[i] = spans[i];
      own_spans[i].spread_xy *= spread;
      own_spans[i].spread_z *= spread;
    }

  classify (scattered, n, class_of, radii);
  for (gsize i = 0; i < n; i++)
    {
      copies[i] = scattered[i];
      copies[i].grams *= (float) grams_share;
      class_of[i] = (guint8) (class_of[i] + share * SPECK_CLASSES);
    }
  for (int i = 0; i < SPECK_CLASSES; i++)
    sw_mark_for (radii[i], own_spans, n_spans, grid->nz, grid->lz, step->worked_in, second_face, &specks->marks[share * SPECK_CLASSES + i]);
}

static SwSpecksPart *
stage_specks (SwRun *run, const SwBasisPart *basis, const SwSchedulePart *schedule, gsize index, gsize dye, double grams, gboolean second_face)
{
  const SwStep *step = run->sketch->steps->pdata[index];
  const SwDye *record = run->sketch->dyes->pdata[dye];
  const SwSpeckZone zone = {
    .x = step->x_cm,
    .y = step->y_cm,
    .width = step->width_cm,
    .length = step->length_cm,
    .angle_deg = step->angle_deg,
    .per_100_cm2 = step->specks_per_100_cm2,
    .median_mm = step->speck_mm,
    .variation = step->speck_variation,
    .grams = grams,
    .seed = sw_chance_mix ((guint64) run->sketch->seed, step->id),
  };
  const double numbers[] = { zone.per_100_cm2, zone.median_mm, zone.variation };
  int n_shares = record->quick_share > 0.0 ? 2 : 1;
  g_autofree SwSpeck *scattered = NULL;
  SwSpecksPart *part;
  SwKey key;
  gsize n;

  key = key_place (key_grid (sw_stage_key (SW_STAGE_POUR), &basis->grid), step, grams, second_face);
  key = sw_key_numbers (key, numbers, G_N_ELEMENTS (numbers));
  key = sw_key_whole (sw_key_whole (key, zone.seed), (guint64) step->dry);
  key = key_spans (sw_key_whole (key, dye), schedule, dye, record->quick_share, index);

  part = sw_cache_get (run->cache, key);
  if (part != NULL)
    return part;

  n = sw_speck_count (&zone);
  scattered = g_new (SwSpeck, MAX (n, 1));
  sw_speck_scatter (&zone, scattered);

  part = sw_part_new (sizeof (SwSpecksPart), specks_part_free);
  part->key = key;
  part->specks.step = step->id;
  part->specks.dye = (int) dye;
  part->specks.n_specks = n * (gsize) n_shares;
  part->specks.specks = g_new (SwSpeck, MAX (part->specks.n_specks, 1));
  part->specks.class_of = g_new (guint8, MAX (part->specks.n_specks, 1));
  part->specks.n_marks = n_shares * SPECK_CLASSES;
  part->specks.marks = g_new (SwMark, part->specks.n_marks);
  for (int share = 0; share < n_shares; share++)
    {
      double grams_share = share == 0 ? 1.0 - record->quick_share : record->quick_share;
      const SwSpan *spans = sw_schedule_part_spans (schedule, dye, share) + index;

      fill_share (&part->specks, share, grams_share, scattered, n, spans, schedule->n_steps - index, &basis->grid, step, second_face);
    }

  run->counts[SW_STAGE_POUR]++;
  return sw_cache_put (run->cache, key, part);
}

static void
field_part_free (gpointer data)
{
  sw_field_free (((SwFieldPart *) data)->depth);
}

/* Whether a step is a band or splotch of that dye. Specks are kept apart. */
static gboolean
spreads (const SwStep *step, const SwDye *dye)
{
  return sw_step_is_pour (step) && step->kind != SW_STEP_SPECKLE && step->dye == dye->id;
}

/* Adds the struck modes of one share of a dye, times @factor: from the last step back to the first, each pour met at its own moment. */
static void
sweep_share (const SwBasisPart *basis, const SwSpan *spans, SwPourPart *const *pours, gsize n_steps, double factor)
{
  const SwGrid *grid = &basis->grid;
  g_autofree double *depth = g_new (double, grid->nz);

  memset (basis->transfer, 0, sw_grid_cells (grid) * sizeof (double));
  for (gsize i = n_steps; i-- > 0;)
    if (pours[i] != NULL)
      {
        for (int iz = 0; iz < grid->nz; iz++)
          depth[iz] = factor * pours[i]->depth[iz];
        sw_transfer_add_pour (grid, basis->transfer, pours[i]->plane, depth, basis->struck);
      }
    else if (spans[i].minutes > 0.0)
      {
        sw_transfer_prepend (grid, &spans[i], basis->transfer);
      }
}

static SwFieldPart *
compute_field (SwRun *run, const SwBasisPart *basis, const SwSchedulePart *schedule, gsize dye, SwPourPart *const *pours)
{
  const SwDye *record = run->sketch->dyes->pdata[dye];
  const double shares[] = { 1.0 - record->quick_share, record->quick_share };
  SwFieldPart *part = sw_part_new (sizeof (SwFieldPart), field_part_free);
  gsize n = sw_grid_cells (&basis->grid);

  memset (basis->struck, 0, n * sizeof (double));
  for (int share = 0; share < 2; share++)
    if (shares[share] > 0.0)
      sweep_share (basis, sw_schedule_part_spans (schedule, dye, share), pours, schedule->n_steps, shares[share] * 100.0 / basis->grams_per_cell);

  part->depth = sw_field_new_single (n);
  sw_basis_inverse_single (basis->basis, basis->struck, part->depth);
  return part;
}

/* A dye that is only speckled, or not used, leaves the cells undyed. */
static SwFieldPart *
empty_field (const SwBasisPart *basis)
{
  SwFieldPart *part = sw_part_new (sizeof (SwFieldPart), field_part_free);
  gsize n = sw_grid_cells (&basis->grid);

  part->depth = sw_field_new_single (n);
  memset (part->depth, 0, n * sizeof (float));
  return part;
}

/* The sum is always taken over all of a dye's pours in their order, so that it does not depend on what was edited before. */
static SwFieldPart *
stage_field (SwRun *run, const SwBasisPart *basis, const SwSchedulePart *schedule, gsize dye)
{
  const SwDye *record = run->sketch->dyes->pdata[dye];
  g_autofree SwPourPart **pours = g_new0 (SwPourPart *, schedule->n_steps + 1);
  gboolean any = FALSE;
  SwFieldPart *part;
  SwKey key;

  key = sw_key_number (key_grid (sw_stage_key (SW_STAGE_FIELD), &basis->grid), basis->grams_per_cell);
  for (gsize i = 0; i < schedule->n_steps; i++)
    {
      const SwStep *step = run->sketch->steps->pdata[i];
      SwKey pour_key;

      if (!spreads (step, record))
        continue;
      pours[i] = stage_pour (run, basis, step, sw_schedule_pour_grams (run->sketch, step), schedule->second_face[i], &pour_key);
      key = key_spans (sw_key_whole (key, pour_key), schedule, dye, record->quick_share, i);
      any = TRUE;
    }

  part = sw_cache_get (run->cache, key);
  if (part != NULL)
    return part;

  part = any ? compute_field (run, basis, schedule, dye, pours) : empty_field (basis);
  part->key = key;
  run->counts[SW_STAGE_FIELD]++;
  return sw_cache_put (run->cache, key, part);
}

/* How much of a dye's pours has struck and is left after each step, and at the end: mode 0 alone, in doubles. */
static SwDyeForecast
balance (SwRun *run, const SwSchedulePart *schedule, gsize dye, SwStepBalance *step_balances)
{
  const SwDye *record = run->sketch->dyes->pdata[dye];
  const double shares[] = { 1.0 - record->quick_share, record->quick_share };
  gsize n = schedule->n_steps, n_dyes = run->sketch->dyes->len;
  g_autofree double *numbers = g_new0 (double, 3 * n + 1);
  double *poured = numbers, *struck = numbers + n, *left = numbers + 2 * n;
  SwDyeForecast sums = { 0 };

  for (gsize i = 0; i < n; i++)
    {
      const SwStep *step = run->sketch->steps->pdata[i];

      if (sw_step_is_pour (step) && step->dye == record->id)
        poured[i] = sw_schedule_pour_grams (run->sketch, step);
      sums.poured_g += poured[i];
    }

  for (int share = 0; share < 2; share++)
    {
      sw_transfer_follow (sw_schedule_part_spans (schedule, dye, share), poured, n, struck, left);
      for (gsize i = 0; i < n; i++)
        {
          step_balances[i * n_dyes + dye].struck_g += shares[share] * struck[i];
          step_balances[i * n_dyes + dye].left_g += shares[share] * left[i];
        }
      sums.struck_g += n > 0 ? shares[share] * struck[n - 1] : 0.0;
      sums.left_g += n > 0 ? shares[share] * left[n - 1] : 0.0;
    }
  return sums;
}

gboolean
sw_stage_bath (SwRun *run, const SwBasisPart *basis, const SwSchedulePart *schedule, SwBathResult *result, GError **error)
{
  gsize n_dyes = run->sketch->dyes->len;
  gsize n_steps = run->sketch->steps->len;

  result->fields = g_new0 (SwFieldPart *, n_dyes);
  result->balances = g_new0 (SwDyeForecast, n_dyes);
  result->step_balances = g_new0 (SwStepBalance, n_steps * n_dyes + 1);
  result->specks = g_new0 (SwSpecksPart *, n_steps);
  result->n_specks = 0;

  for (gsize dye = 0; dye < n_dyes; dye++)
    {
      if (g_cancellable_set_error_if_cancelled (run->cancellable, error))
        return FALSE;
      result->fields[dye] = stage_field (run, basis, schedule, dye);
      result->balances[dye] = balance (run, schedule, dye, result->step_balances);
    }

  for (gsize i = 0; i < n_steps; i++)
    {
      const SwStep *step = run->sketch->steps->pdata[i];

      if (step->kind != SW_STEP_SPECKLE)
        continue;
      for (gsize dye = 0; dye < n_dyes; dye++)
        if (((const SwDye *) run->sketch->dyes->pdata[dye])->id == step->dye)
          result->specks[result->n_specks++] = stage_specks (run, basis, schedule, i, dye, sw_schedule_pour_grams (run->sketch, step), schedule->second_face[i]);
    }
  return TRUE;
}

void
sw_bath_result_clear (SwBathResult *result)
{
  g_clear_pointer (&result->fields, g_free);
  g_clear_pointer (&result->specks, g_free);
  g_clear_pointer (&result->balances, g_free);
  g_clear_pointer (&result->step_balances, g_free);
}
