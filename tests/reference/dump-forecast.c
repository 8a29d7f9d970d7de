/* SPDX-License-Identifier: GPL-3.0-or-later */

/*
 * What the program computed, as plain arrays for whoever computes it another
 * way: for each a line "name type count", then its bytes as this machine has
 * them. Usage: dump-forecast FILE.colourway >arrays
 */

#include "config.h"

#include "files/sw-colourway.h"
#include "forecast/sw-forecast.h"

#include <math.h>
#include <stdio.h>

static void
dump (const char *name, const char *type, gsize size, const void *values, gsize n)
{
  printf ("%s %s %" G_GSIZE_FORMAT "\n", name, type, n);
  if (fwrite (values, size, n, stdout) != n)
    g_error ("Cannot write %s", name);
}

static void
dump_doubles (const char *name, const double *values, gsize n)
{
  dump (name, "float64", sizeof (double), values, n);
}

static void
dump_floats (const char *name, const float *values, gsize n)
{
  dump (name, "float32", sizeof (float), values, n);
}

/* One array a dye, one a pour of specks: "field0", "field1". */
static char *
numbered (const char *name, gsize i)
{
  return g_strdup_printf ("%s%" G_GSIZE_FORMAT, name, i);
}

static void
dump_pan (const SwForecast *forecast)
{
  const SwGrid *grid = &forecast->grid;
  const double box[] = { grid->nx, grid->ny, grid->nz, grid->lx, grid->ly, grid->lz, forecast->grams_per_cell };

  dump_doubles ("grid", box, G_N_ELEMENTS (box));
  dump_floats ("yarn", forecast->palette.yarn, SW_BANDS);
  for (gsize i = 0; i < (gsize) forecast->n_dyes; i++)
    {
      const double balance[] = { forecast->dyes[i].poured_g, forecast->dyes[i].struck_g, forecast->dyes[i].left_g };
      g_autofree char *dye = numbered ("dye", i), *slope = numbered ("slope", i), *field = numbered ("field", i);

      dump_doubles (dye, balance, G_N_ELEMENTS (balance));
      dump_floats (slope, forecast->palette.slope[i], SW_BANDS);
      dump_floats (field, forecast->fields[i].depth, sw_grid_cells (grid));
    }
  for (gsize i = 0; i <= forecast->n_steps; i++)
    {
      const SwBathState *state = &forecast->states[i];
      const double figures[] = { state->minutes, state->temperature_c, state->liquor_ml, state->ph, state->cover, state->second_face };
      g_autofree char *name = numbered ("state", i);

      dump_doubles (name, figures, G_N_ELEMENTS (figures));
    }
}

/* x, y, radius and grams of each speck; a quick share's are copies of the others. */
static void
dump_specks (const SwForecast *forecast)
{
  for (gsize i = 0; i < forecast->n_specks; i++)
    {
      const SwSpecks *specks = forecast->specks[i];
      g_autofree char *name = numbered ("specks", i);

      G_STATIC_ASSERT (sizeof (SwSpeck) == 4 * sizeof (float));
      dump_floats (name, &specks->specks->x, 4 * specks->n_specks);
    }
}

static void
dump_strand (const SwForecast *forecast)
{
  const double start = forecast->sketch->cloth.start_cm, length = forecast->stitch_length_cm;
  const double figures[] = { forecast->strand_length_cm, forecast->wraps, length };
  gsize n = 2 * forecast->n_stitches;
  g_autofree double *t = g_new (double, n);
  g_autofree float *x = g_new (float, n);
  g_autofree float *y = g_new (float, n);
  g_autofree float *z = g_new (float, n);

  for (gsize i = 0; i < n; i++)
    t[i] = start + ((double) (i / 2) + (i % 2 == 0 ? SW_LEG_FIRST : SW_LEG_SECOND)) * length;
  sw_strand_places (&forecast->reel, &forecast->lay, t, n, x, y, z);

  dump_doubles ("strand", figures, G_N_ELEMENTS (figures));
  dump_floats ("x", x, n);
  dump_floats ("y", y, n);
  dump_floats ("z", z, n);
  dump_floats ("leg_x", forecast->leg_x, n);
  dump_floats ("leg_y", forecast->leg_y, n);
  dump_floats ("leg_z", forecast->leg_z, n);
}

/* The legs of the other skeins that are knitted in turn. */
static void
dump_next_skeins (const SwForecast *forecast)
{
  for (gsize turn = 1; turn < forecast->n_skeins; turn++)
    {
      const SwSkeinLegs *legs = &forecast->skeins[turn];
      g_autofree char *x = numbered ("next_x", turn), *y = numbered ("next_y", turn), *z = numbered ("next_z", turn);

      dump_floats (x, legs->leg_x, 2 * legs->n_stitches);
      dump_floats (y, legs->leg_y, 2 * legs->n_stitches);
      dump_floats (z, legs->leg_z, 2 * legs->n_stitches);
    }
}

static void
dump_cloth (const SwForecast *forecast)
{
  const SwPoolingInput *input = &forecast->pooling_input;
  const SwLayout *layout = &forecast->layout;
  const double figures[] = { input->gamma_inf, input->stripe_stitches, (double) layout->cast_on, (double) sw_layout_rows (layout) };
  g_autofree double *sums = g_new (double, input->n_lags);
  double stacks[SW_POOLING_ROWS * (2 * SW_POOLING_STITCHES + 1)];
  gsize n = 0;

  sw_pooling_sums (input, sums);
  for (int dr = 1; dr <= SW_POOLING_ROWS; dr++)
    for (int dj = -SW_POOLING_STITCHES; dj <= SW_POOLING_STITCHES; dj++)
      stacks[n++] = (gsize) ABS (dj) < layout->width ? sw_pooling_stack (input, sums, layout->worked, layout->width, dr, dj) : -INFINITY;

  dump_floats ("lab_l", forecast->lab_l, forecast->n_stitches);
  dump_floats ("lab_a", forecast->lab_a, forecast->n_stitches);
  dump_floats ("lab_b", forecast->lab_b, forecast->n_stitches);
  dump_doubles ("cloth", figures, G_N_ELEMENTS (figures));
  dump_doubles ("gamma", input->gamma, input->n_lags);
  dump_doubles ("stacks", stacks, n);
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) file = NULL;
  g_autoptr (SwSketch) sketch = NULL;
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwForecast) forecast = NULL;

  if (argc != 2)
    g_error ("Usage: %s FILE.colourway", argv[0]);

  file = g_file_new_for_path (argv[1]);
  sketch = sw_colourway_load (file, NULL, NULL, &error);
  if (sketch != NULL)
    forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);
  if (forecast == NULL)
    g_error ("%s", error->message);

  dump_pan (forecast);
  dump_specks (forecast);
  dump_strand (forecast);
  dump_next_skeins (forecast);
  dump_cloth (forecast);
  return 0;
}
