/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cloth/sw-fabric.h"
#include "cloth/sw-gauge.h"
#include "cloth/sw-variogram.h"
#include "forecast/sw-stage-private.h"
#include "sketch/sw-chance.h"
#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/*
 * From the pan to the strand's stitches: where their legs lay, what dye they
 * took, what colour that is, and how the colours repeat.
 */

/* More than this and a sketch is no skein: 20 km of lace at 1 cm a stitch. */
#define MOST_STITCHES 2000000

/* Bins for finding the legs near a speck, cm. */
#define BIN_CM 0.5

static void
strand_part_free (gpointer data)
{
  SwStrandPart *part = data;

  g_free (part->x);
  g_free (part->y);
  g_free (part->z);
  sw_places_clear (&part->places);
  sw_bins_clear (&part->bins);
}

/*
 * The number that a skein's chance is drawn from. The next skeins are those of
 * the next places in the pan; when all of those are used, they are of another
 * pan dyed by the same recipe.
 */
static guint64
skein_number (const SwSketch *sketch, gsize turn)
{
  const guint64 skeins = (guint64) sketch->lay.skeins, first = (guint64) sketch->cloth.skein;

  return (first - 1 + turn) % skeins + 1 + turn / skeins * skeins;
}

static void
describe_strand (const SwSketch *sketch, gsize turn, SwReel *reel, SwLay *lay, double *stitch_length)
{
  const SwClothSettings *cloth = &sketch->cloth;
  double wales = cloth->stitches_per_10cm / 10.0;
  double courses = cloth->rows_per_10cm > 0.0 ? cloth->rows_per_10cm / 10.0 : sw_courses_from_wales (wales);

  *reel = (SwReel) {
    .length_cm = sw_strand_length (sketch->yarn.mass_g, sketch->yarn.metres_per_100_g),
    .circumference_cm = sketch->reel.circumference_cm,
    .growth = sketch->reel.growth,
    .winding = sketch->reel.winding,
    .wraps_per_sweep = sketch->reel.wraps_per_sweep,
    .wander = sketch->reel.wander,
    .seed = sw_chance_mix ((guint64) sketch->seed, skein_number (sketch, turn)),
  };
  *lay = (SwLay) {
    .runs = (int) sketch->lay.runs,
    .folding = sketch->lay.folding,
    .lanes = (int) sketch->lay.skeins,
    .lane = (int) ((sketch->cloth.skein - 1 + (gint64) turn) % sketch->lay.skeins),
  };
  /* Munden's relation is plain knit's: of another fabric the stitch gauge alone tells, as if its stitches were plain knit. */
  if (cloth->fabric != SW_FABRIC_STOCKINETTE)
    courses = sw_courses_from_wales (wales);
  *stitch_length = cloth->stitch_length_cm > 0.0 ? cloth->stitch_length_cm : sw_stitch_length (wales, courses, cloth->state);
}

static SwKey
key_strand (const SwBasisPart *basis, const SwReel *reel, const SwLay *lay, double stitch_length, double start)
{
  const double numbers[] = {
    reel->length_cm, reel->circumference_cm, reel->growth, reel->wraps_per_sweep, reel->wander, stitch_length, start
  };
  const guint64 wholes[] = {
    (guint64) reel->winding, reel->seed, (guint64) lay->runs, (guint64) lay->folding, (guint64) lay->lanes, (guint64) lay->lane
  };
  SwKey key = sw_key_whole (sw_stage_key (SW_STAGE_STRAND), basis->key);

  for (gsize i = 0; i < G_N_ELEMENTS (wholes); i++)
    key = sw_key_whole (key, wholes[i]);
  return sw_key_numbers (key, numbers, G_N_ELEMENTS (numbers));
}

static gboolean
check_stitches (double stitches, GError **error)
{
  if (stitches < 1.0)
    {
      g_set_error_literal (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE,
                           _ ("The strand is shorter than one stitch, so there is no cloth to show. Give the yarn more grams or metres, or start nearer its end."));
      return FALSE;
    }
  if (stitches > MOST_STITCHES)
    {
      g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE,
                   /* Translators: both numbers are counts of stitches */
                   _ ("The strand makes %.0f stitches, more than the %d that can be followed. Check the grams, the metres in 100 g and the stitch length."),
                   stitches, MOST_STITCHES);
      return FALSE;
    }
  return TRUE;
}

SwStrandPart *
sw_stage_strand (SwRun *run, const SwBasisPart *basis, gsize turn, GError **error)
{
  double start = run->sketch->cloth.start_cm + (turn > 0 ? (double) turn * run->sketch->cloth.alternate_shift_cm : 0.0);
  SwStrandPart *part;
  double stitch_length, stitches;
  g_autofree double *t = NULL;
  SwReel reel;
  SwLay lay;
  SwKey key;
  gsize n;

  describe_strand (run->sketch, turn, &reel, &lay, &stitch_length);
  key = key_strand (basis, &reel, &lay, stitch_length, start);
  part = sw_cache_get (run->cache, key);
  if (part != NULL)
    return part;

  /* A whole number of stitches must not be lost to the last bit of the division. */
  stitches = (reel.length_cm - start) / stitch_length + 1e-9;
  if (!check_stitches (stitches, error))
    return NULL;

  part = sw_part_new (sizeof (SwStrandPart), strand_part_free);
  part->key = key;
  part->reel = reel;
  part->lay = lay;
  part->stitch_length_cm = stitch_length;
  part->wraps = sw_reel_wraps (&reel);
  part->n_stitches = (gsize) stitches;

  n = 2 * part->n_stitches;
  t = g_new (double, n);
  for (gsize i = 0; i < part->n_stitches; i++)
    {
      t[2 * i] = start + ((double) i + SW_LEG_FIRST) * stitch_length;
      t[2 * i + 1] = start + ((double) i + SW_LEG_SECOND) * stitch_length;
    }
  part->x = g_new (float, n);
  part->y = g_new (float, n);
  part->z = g_new (float, n);
  sw_strand_places (&reel, &lay, t, n, part->x, part->y, part->z);
  sw_places_init (&part->places, &basis->grid, part->x, part->y, part->z, n);
  sw_bins_init (&part->bins, &basis->grid, BIN_CM, part->x, part->y, n);

  run->counts[SW_STAGE_STRAND]++;
  return sw_cache_put (run->cache, key, part);
}

static void
read_part_free (gpointer data)
{
  sw_field_free (((SwReadPart *) data)->values);
}

static SwReadPart *
stage_read (SwRun *run, const SwBasisPart *basis, const SwFieldPart *field, const SwStrandPart *strand)
{
  SwKey key = sw_key_whole (sw_key_whole (sw_stage_key (SW_STAGE_READ), field->key), strand->key);
  SwReadPart *part = sw_cache_get (run->cache, key);

  if (part != NULL)
    return part;

  part = sw_part_new (sizeof (SwReadPart), read_part_free);
  part->key = key;
  part->values = sw_field_new_single (strand->places.n);
  sw_places_read (&strand->places, &basis->grid, field->depth, 1.0f, part->values);

  run->counts[SW_STAGE_READ]++;
  return sw_cache_put (run->cache, key, part);
}

static SwReadPart *
stage_read_specks (SwRun *run, const SwBasisPart *basis, const SwSpecksPart *specks, const SwStrandPart *strand)
{
  const SwGrid *grid = &basis->grid;
  double column_cm2 = grid->lx / grid->nx * grid->ly / grid->ny;
  SwKey key = sw_key_whole (sw_key_whole (sw_stage_key (SW_STAGE_READ), specks->key), strand->key);
  SwReadPart *part;

  key = sw_key_number (key, basis->grams_per_cell);
  part = sw_cache_get (run->cache, key);
  if (part != NULL)
    return part;

  part = sw_part_new (sizeof (SwReadPart), read_part_free);
  part->key = key;
  part->values = sw_field_new_single (strand->places.n);
  memset (part->values, 0, strand->places.n * sizeof (float));
  sw_specks_read (&strand->bins, grid, strand->x, strand->y, strand->z, SW_LEG_HALF * strand->stitch_length_cm,
                  specks->specks.specks, specks->specks.class_of, specks->specks.n_specks, specks->specks.marks,
                  (float) (100.0 * column_cm2 / basis->grams_per_cell), part->values);

  run->counts[SW_STAGE_READ]++;
  return sw_cache_put (run->cache, key, part);
}

static void
legs_part_free (gpointer data)
{
  SwLegsPart *part = data;

  sw_field_free (part->x);
  sw_field_free (part->y);
  sw_field_free (part->z);
}

static void
add (float *sum, const float *values, gsize n)
{
  for (gsize i = 0; i < n; i++)
    sum[i] += values[i];
}

static SwLegsPart *
compute_legs (const SwPalettePart *palette, SwReadPart *const *reads, SwReadPart *const *speck_reads, const SwBathResult *bath, gsize n_dyes, gsize n)
{
  SwLegsPart *part = sw_part_new (sizeof (SwLegsPart), legs_part_free);
  g_autoptr (GPtrArray) owned = g_ptr_array_new_with_free_func (sw_field_free);
  g_autofree const float **depths = g_new (const float *, MAX (n_dyes, 1));

  for (gsize dye = 0; dye < n_dyes; dye++)
    depths[dye] = reads[dye]->values;

  /* A dye with specks gets a copy of its own to add them to. */
  for (gsize i = 0; i < bath->n_specks; i++)
    {
      gsize dye = (gsize) bath->specks[i]->specks.dye;

      if (depths[dye] == reads[dye]->values)
        {
          float *copy = sw_field_new_single (n);

          memcpy (copy, reads[dye]->values, n * sizeof (float));
          g_ptr_array_add (owned, copy);
          depths[dye] = copy;
        }
      add ((float *) depths[dye], speck_reads[i]->values, n);
    }

  part->x = sw_field_new_single (n);
  part->y = sw_field_new_single (n);
  part->z = sw_field_new_single (n);
  sw_mix_xyz (&palette->palette, depths, n, part->x, part->y, part->z);
  return part;
}

SwLegsPart *
sw_stage_legs (SwRun *run, const SwBasisPart *basis, const SwPalettePart *palette, const SwBathResult *bath, const SwStrandPart *strand, GError **error)
{
  gsize n_dyes = run->sketch->dyes->len;
  g_autofree SwReadPart **reads = g_new0 (SwReadPart *, n_dyes + 1);
  g_autofree SwReadPart **speck_reads = g_new0 (SwReadPart *, bath->n_specks + 1);
  SwKey key = sw_key_whole (sw_key_whole (sw_stage_key (SW_STAGE_LEGS), palette->key), strand->key);
  SwLegsPart *part;

  for (gsize dye = 0; dye < n_dyes; dye++)
    {
      if (g_cancellable_set_error_if_cancelled (run->cancellable, error))
        return NULL;
      reads[dye] = stage_read (run, basis, bath->fields[dye], strand);
      key = sw_key_whole (key, reads[dye]->key);
    }
  for (gsize i = 0; i < bath->n_specks; i++)
    {
      if (g_cancellable_set_error_if_cancelled (run->cancellable, error))
        return NULL;
      speck_reads[i] = stage_read_specks (run, basis, bath->specks[i], strand);
      key = sw_key_whole (key, speck_reads[i]->key);
    }

  part = sw_cache_get (run->cache, key);
  if (part != NULL)
    return part;

  part = compute_legs (palette, reads, speck_reads, bath, n_dyes, strand->places.n);
  part->key = key;
  run->counts[SW_STAGE_LEGS]++;
  return sw_cache_put (run->cache, key, part);
}

static void
series_part_free (gpointer data)
{
  SwSeriesPart *part = data;

  sw_field_free (part->l);
  sw_field_free (part->a);
  sw_field_free (part->b);
  g_free (part->gamma);
}

SwSeriesPart *
sw_stage_series (SwRun *run, const SwLegsPart *legs, gsize n_stitches, const SwPoolingInput *alternating)
{
  /* Two sizes only, so that another width does not ask for another variogram. */
  gsize widest = run->sketch->cloth.width_stitches <= SW_SCAN_WIDEST ? SW_SCAN_WIDEST : SW_CLOTH_WIDEST;
  gsize lags = sw_pooling_lags (widest) + MIN (sw_pooling_lags_apart (alternating, widest), n_stitches);
  SwKey key = sw_key_whole (sw_key_whole (sw_stage_key (SW_STAGE_SERIES), legs->key), lags);
  SwSeriesPart *part = sw_cache_get (run->cache, key);

  if (part != NULL)
    return part;

  part = sw_part_new (sizeof (SwSeriesPart), series_part_free);
  part->key = key;
  part->l = sw_field_new_single (n_stitches);
  part->a = sw_field_new_single (n_stitches);
  part->b = sw_field_new_single (n_stitches);
  for (gsize i = 0; i < n_stitches; i++)
    {
      part->l[i] = 0.5f * (legs->x[2 * i] + legs->x[2 * i + 1]);
      part->a[i] = 0.5f * (legs->y[2 * i] + legs->y[2 * i + 1]);
      part->b[i] = 0.5f * (legs->z[2 * i] + legs->z[2 * i + 1]);
    }
  sw_lab_from_xyz_many (part->l, part->a, part->b, n_stitches, part->l, part->a, part->b);

  part->n_lags = lags;
  part->gamma = g_new (double, part->n_lags);
  part->gamma_inf = sw_variogram (part->l, part->a, part->b, n_stitches, part->n_lags, part->gamma);
  part->n_stripes = sw_stripes (part->l, part->a, part->b, n_stitches, part->stripes, &part->mean_run);

  run->counts[SW_STAGE_SERIES]++;
  return sw_cache_put (run->cache, key, part);
}
