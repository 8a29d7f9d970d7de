/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "forecast/sw-repeat.h"

#include "forecast/sw-colour-words.h"
#include "sketch/sw-chance.h"

#include <math.h>

/* Places along one loop that are looked at for the twist. */
#define LOOP_PLACES 720

/*
 * The skeins of a batch as the forecast sees them: those of one pan lie in its
 * lanes and share its specks, the next pan is another throw of the dice.
 */
static SwSketch *
skein_of_batch (const SwSketch *sketch, gsize k)
{
  SwSketch *copy = sw_sketch_copy (sketch);
  guint64 pan = k / (gsize) sketch->lay.skeins;

  copy->cloth.skein = 1 + (gint64) (k % (gsize) sketch->lay.skeins);
  copy->cloth.alternate_skeins = 1;
  if (pan > 0)
    copy->seed = (gint64) (sw_chance_mix ((guint64) sketch->seed, pan) >> 32); /* as many as a seed may be */
  return copy;
}

static int
nearest_colour (const SwStripe *colours, gsize n, float l, float a, float b)
{
  int nearest = 0;
  float least = INFINITY;

  for (gsize i = 0; i < n; i++)
    {
      float dl = l - colours[i].l, da = a - colours[i].a, db = b - colours[i].b;
      float distance = dl * dl + da * da + db * db;

      if (distance < least)
        {
          least = distance;
          nearest = (int) i;
        }
    }
  return nearest;
}

/* Every stitch goes to the nearest of the colours. */
static void
share_out (const SwForecast *forecast, const SwStripe *colours, gsize n, double *shares)
{
  for (gsize i = 0; i < n; i++)
    shares[i] = 0.0;
  for (gsize i = 0; i < forecast->n_stitches; i++)
    shares[nearest_colour (colours, n, forecast->lab_l[i], forecast->lab_a[i], forecast->lab_b[i])] += 1.0 / (double) forecast->n_stitches;
}

/* Colours are averaged as XYZ. */
static SwLab
mean_colour (const SwForecast *forecast)
{
  gsize n = 2 * forecast->n_stitches;
  SwXyz sum = { 0.0, 0.0, 0.0 };

  for (gsize i = 0; i < n; i++)
    {
      sum.x += forecast->leg_x[i];
      sum.y += forecast->leg_y[i];
      sum.z += forecast->leg_z[i];
    }
  return sw_lab_from_xyz ((SwXyz){ sum.x / (double) n, sum.y / (double) n, sum.z / (double) n });
}

static void
range_init (SwRange *range)
{
  *range = (SwRange){ INFINITY, 0.0, -INFINITY };
}

/* One of @n figures. */
static void
range_add (SwRange *range, double figure, gsize n)
{
  range->least = MIN (range->least, figure);
  range->most = MAX (range->most, figure);
  range->mean += figure / (double) n;
}

static void
compare_means (SwRepeat *repeat, const SwLab *means)
{
  gsize n = repeat->n_seeds, pairs = n * (n - 1) / 2;

  if (pairs == 0)
    {
      repeat->mean_difference = (SwRange){ 0.0, 0.0, 0.0 };
      return;
    }
  range_init (&repeat->mean_difference);
  for (gsize i = 0; i < n; i++)
    for (gsize j = i + 1; j < n; j++)
      range_add (&repeat->mean_difference, sw_ciede2000 (means[i], means[j]), pairs);
}

/* The middle of the longest run of one colour round the loop, which closes on itself. */
static double
middle_of_longest_run (const int *colours, int n)
{
  int start = 0, longest = 0;
  double middle = 0.0;

  /* Begin where a run begins, so that none is cut. */
  while (start < n && colours[start] == colours[(start + n - 1) % n])
    start++;
  if (start == n)
    return 0.0;

  for (int i = 0; i < n;)
    {
      int run = 1;

      while (i + run < n && colours[(start + i + run) % n] == colours[(start + i) % n])
        run++;
      if (run > longest)
        {
          longest = run;
          middle = fmod (start + i + run / 2.0, n) / n;
        }
      i += run;
    }
  return middle;
}

static double
twist_start (const SwForecast *forecast)
{
  float x[LOOP_PLACES], y[LOOP_PLACES], z[LOOP_PLACES];
  int colours[LOOP_PLACES];

  sw_forecast_strip (forecast, LOOP_PLACES, x, y, z);
  for (int i = 0; i < LOOP_PLACES; i++)
    {
      SwLab lab = sw_lab_from_xyz ((SwXyz){ x[i], y[i], z[i] });

      colours[i] = nearest_colour (forecast->stripes, forecast->n_stripes, (float) lab.l, (float) lab.a, (float) lab.b);
    }
  return forecast->repeat_cm * middle_of_longest_run (colours, LOOP_PLACES);
}

/* What the first skein settles for all: the colours that are told apart, and the twist. */
static void
begin (SwRepeat *repeat, const SwForecast *first)
{
  repeat->n_colours = first->n_stripes;
  repeat->colours = sw_forecast_stripe_names (first);
  repeat->shares = g_new (SwRange, first->n_stripes);
  for (gsize i = 0; i < first->n_stripes; i++)
    range_init (&repeat->shares[i]);
  range_init (&repeat->stack);
  repeat->twist_start_cm = twist_start (first);
}

SwRepeat *
sw_repeat_new (const SwSketch *sketch, gsize n_seeds, GCancellable *cancellable, GError **error)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwRepeat) repeat = g_new0 (SwRepeat, 1);
  g_autoptr (SwForecast) first = NULL;
  g_autofree SwLab *means = NULL;
  g_autofree double *shares = NULL;

  g_return_val_if_fail (sketch != NULL && n_seeds > 0, NULL);

  repeat->n_seeds = n_seeds;
  means = g_new (SwLab, n_seeds);
  for (gsize k = 0; k < n_seeds; k++)
    {
      g_autoptr (SwSketch) skein = skein_of_batch (sketch, k);
      g_autoptr (SwForecast) forecast = sw_forecaster_run (forecaster, skein, cancellable, error);

      if (forecast == NULL)
        return NULL;
      if (first == NULL)
        {
          first = sw_forecast_ref (forecast);
          shares = g_new (double, first->n_stripes);
          begin (repeat, first);
        }
      share_out (forecast, first->stripes, first->n_stripes, shares);
      for (gsize i = 0; i < first->n_stripes; i++)
        range_add (&repeat->shares[i], shares[i], n_seeds);
      range_add (&repeat->stack, forecast->pooling.stack, n_seeds);
      means[k] = mean_colour (forecast);
    }
  compare_means (repeat, means);
  return g_steal_pointer (&repeat);
}

void
sw_repeat_free (SwRepeat *repeat)
{
  if (repeat == NULL)
    return;

  g_strfreev (repeat->colours);
  g_free (repeat->shares);
  g_free (repeat);
}
