/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cloth/sw-stripes.h"

#include <math.h>
#include <stdlib.h>

/* CIELAB distance from which a person calls it another colour, not a shade of the same. Common practice, no source. */
#define ANOTHER_COLOUR 10.0f

/* So many stitches on end must be odd before the colour has changed; fewer are specks. */
#define SPECK 3

/* A run as short as this, with a colour between those beside it, is the passage from one to the other. */
#define PASSAGE 4
#define BETWEEN 1.5f

typedef struct
{
  float lab[3];
} Colour;

typedef struct
{
  Colour mean; /* of the stitches that have the run's colour */
  gsize n;
  int stripe;
} Run;

static float
distance (Colour one, Colour other)
{
  float l = one.lab[0] - other.lab[0], a = one.lab[1] - other.lab[1], b = one.lab[2] - other.lab[2];

  return sqrtf (l * l + a * a + b * b);
}

/* Weighted mean: @other takes the share @part. */
static Colour
blend (Colour one, Colour other, float part)
{
  for (int i = 0; i < 3; i++)
    one.lab[i] += part * (other.lab[i] - one.lab[i]);

  return one;
}

static Run
join (Run one, Run other)
{
  gsize n = one.n + other.n;

  one.mean = blend (one.mean, other.mean, (float) other.n / (float) n);
  one.n = n;
  return one;
}

/*
 * Cuts where SPECK stitches on end are unlike the run's mean. On a gradient the
 * mean lags behind, so that a run spans about twice ANOTHER_COLOUR and no more.
 * Returns: (array): of Run
 */
static GArray *
cut_runs (const float *l, const float *a, const float *b, gsize n)
{
  GArray *runs = g_array_new (FALSE, FALSE, sizeof (Run));
  Run run = { .mean = { { l[0], a[0], b[0] } } };
  gsize like = 0, odd = 0; /* stitches in the mean; odd ones since the last of them */

  for (gsize i = 0; i < n; i++)
    {
      Colour colour = { { l[i], a[i], b[i] } };

      run.n++;
      if (distance (colour, run.mean) <= ANOTHER_COLOUR)
        {
          like++;
          run.mean = blend (run.mean, colour, 1.0f / (float) like);
          odd = 0;
        }
      else if (++odd == SPECK)
        {
          run.n -= odd;
          g_array_append_val (runs, run);
          /* The third is the likeliest to be past the blurred edge. */
          run = (Run){ .mean = colour, .n = odd };
          like = 1;
          odd = 0;
        }
    }

  g_array_append_val (runs, run);
  return runs;
}

static gboolean
is_passage (const Run *before, const Run *run, const Run *after)
{
  return run->n <= PASSAGE && before->n > PASSAGE && after->n > PASSAGE &&
         distance (before->mean, run->mean) + distance (run->mean, after->mean) <= BETWEEN * distance (before->mean, after->mean);
}

/* Gives each passage to the more alike of its two sides. */
static void
share_out_passages (GArray *runs)
{
  for (guint i = 1; i + 1 < runs->len; i++)
    {
      Run *before = &g_array_index (runs, Run, i - 1), *run = before + 1, *after = before + 2;

      if (is_passage (before, run, after))
        {
          Run *side = distance (before->mean, run->mean) <= distance (run->mean, after->mean) ? before : after;

          side->n += run->n;
          run->n = 0;
        }
    }
}

/* Drops empty runs and joins those that now lie side by side with one colour. */
static void
join_alike (GArray *runs)
{
  guint kept = 0;

  for (guint i = 0; i < runs->len; i++)
    {
      Run run = g_array_index (runs, Run, i);
      Run *last = kept > 0 ? &g_array_index (runs, Run, kept - 1) : NULL;

      if (run.n == 0)
        continue;
      if (last != NULL && distance (last->mean, run.mean) <= ANOTHER_COLOUR)
        *last = join (*last, run);
      else
        g_array_index (runs, Run, kept++) = run;
    }

  g_array_set_size (runs, kept);
}

static int
compare_runs (const void *one, const void *other)
{
  const Run *a = one, *b = other;

  if (a->n != b->n)
    return a->n > b->n ? -1 : 1;
  for (int i = 0; i < 3; i++)
    if (a->mean.lab[i] != b->mean.lab[i])
      return a->mean.lab[i] < b->mean.lab[i] ? -1 : 1;
  return 0;
}

static gsize
nearest (const Run *stripes, gsize n, Colour colour, float *least)
{
  gsize best = 0;

  *least = INFINITY;
  for (gsize i = 0; i < n; i++)
    {
      float d = distance (stripes[i].mean, colour);

      if (d < *least)
        {
          *least = d;
          best = i;
        }
    }

  return best;
}

/* Longest runs first, each joins the stripe whose colour it has or founds one. */
static gsize
gather (GArray *runs, Run *stripes, gsize *counts)
{
  gsize n = 0;

  g_array_sort (runs, compare_runs);

  for (guint i = 0; i < runs->len; i++)
    {
      const Run *run = &g_array_index (runs, Run, i);
      float least;
      gsize stripe = nearest (stripes, n, run->mean, &least);

      if (least > ANOTHER_COLOUR && n < SW_MAX_STRIPES)
        {
          stripes[n] = *run;
          counts[n++] = 1;
        }
      else
        {
          stripes[stripe] = join (stripes[stripe], *run);
          counts[stripe]++;
        }
    }

  return n;
}

static int
compare_stripes (const void *one, const void *other)
{
  const SwStripe *a = one, *b = other;

  return a->share != b->share ? (a->share > b->share ? -1 : 1) : 0;
}

gsize
sw_stripes (const float *l, const float *a, const float *b, gsize n, SwStripe *stripes, double *mean_run)
{
  g_autoptr (GArray) runs = NULL;
  Run gathered[SW_MAX_STRIPES];
  gsize counts[SW_MAX_STRIPES];
  gsize n_stripes;

  *mean_run = 0.0;
  if (n == 0)
    return 0;

  runs = cut_runs (l, a, b, n);
  share_out_passages (runs);
  join_alike (runs);

  for (guint i = 0; i < runs->len; i++)
    {
      double run = (double) g_array_index (runs, Run, i).n;

      *mean_run += run * run / (double) n;
    }

  n_stripes = gather (runs, gathered, counts);
  for (gsize i = 0; i < n_stripes; i++)
    stripes[i] = (SwStripe){
      .l = gathered[i].mean.lab[0],
      .a = gathered[i].mean.lab[1],
      .b = gathered[i].mean.lab[2],
      .mean_stitches = (double) gathered[i].n / (double) counts[i],
      .share = (double) gathered[i].n / (double) n,
      .runs = counts[i],
    };
  qsort (stripes, n_stripes, sizeof *stripes, compare_stripes);

  return n_stripes;
}
