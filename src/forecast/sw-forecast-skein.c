/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "forecast/sw-stage-private.h"

/* The forecast's stages take fields and specks as parts of a cache; these are the forecast's own, under keys that hold for one cache only. */
static void
borrow_bath (const SwForecast *forecast, SwFieldPart *fields, SwFieldPart **field_places, SwSpecksPart *specks, SwSpecksPart **specks_places, SwBathResult *bath)
{
  SwKey key = sw_stage_key (SW_STAGE_FIELD);

  for (int i = 0; i < forecast->n_dyes; i++)
    {
      fields[i] = (SwFieldPart){ .key = key = sw_key_whole (key, (guint64) i), .depth = forecast->fields[i].depth };
      field_places[i] = &fields[i];
    }
  for (gsize i = 0; i < forecast->n_specks; i++)
    {
      specks[i] = (SwSpecksPart){ .key = key = sw_key_whole (key, i), .specks = *forecast->specks[i] };
      specks_places[i] = &specks[i];
    }
  *bath = (SwBathResult){ .fields = field_places, .specks = specks_places, .n_specks = forecast->n_specks };
}

/* From the pan as it is, through the reel and the lay of another skein. */
static SwLegsPart *
follow (const SwForecast *forecast, const SwSketch *sketch, gsize turn)
{
  const gsize n_dyes = (gsize) MAX (forecast->n_dyes, 1), n_specks = MAX (forecast->n_specks, 1);
  g_autofree SwFieldPart *fields = g_new0 (SwFieldPart, n_dyes);
  g_autofree SwFieldPart **field_places = g_new0 (SwFieldPart *, n_dyes);
  g_autofree SwSpecksPart *specks = g_new0 (SwSpecksPart, n_specks);
  g_autofree SwSpecksPart **specks_places = g_new0 (SwSpecksPart *, n_specks);
  const SwBasisPart basis = { .grid = forecast->grid, .grams_per_cell = forecast->grams_per_cell };
  const SwPalettePart palette = { .palette = forecast->palette };
  guint counts[SW_N_STAGES] = { 0 };
  SwRun run = { sketch, sw_cache_new (), NULL, counts };
  SwStrandPart *strand = sw_stage_strand (&run, &basis, turn, NULL);
  SwLegsPart *legs;
  SwBathResult bath;

  /* As long as the forecast's own, which was followed, and nothing can stop it: neither stage can fail. */
  g_assert (strand != NULL);
  borrow_bath (forecast, fields, field_places, specks, specks_places, &bath);
  legs = sw_part_ref (sw_stage_legs (&run, &basis, &palette, &bath, strand, NULL));
  sw_cache_free (run.cache);
  return legs;
}

void
sw_forecast_skein (const SwForecast *forecast, gsize turn, SwForecastSkein *skein)
{
  g_autoptr (SwSketch) sketch = NULL;
  SwLegsPart *legs;

  *skein = (SwForecastSkein){ { forecast->n_stitches, forecast->leg_x, forecast->leg_y, forecast->leg_z }, NULL };
  if (turn == 0)
    return;
  sketch = sw_sketch_copy (forecast->sketch);
  sketch->cloth.alternate_shift_cm = 0;
  legs = follow (forecast, sketch, turn);
  *skein = (SwForecastSkein){ { forecast->n_stitches, legs->x, legs->y, legs->z }, legs };
}

void
sw_forecast_skein_clear (SwForecastSkein *skein)
{
  if (skein->part != NULL)
    sw_part_unref (skein->part);
}
