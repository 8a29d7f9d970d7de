/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-stitch-mask.h"

#include "draw/sw-stitch-drift.h"
#include "draw/sw-stitch-sample.h"

#include <stdlib.h>
#include <string.h>

/*
 * How finely a size is prepared: places of a cell within a pixel, samples a
 * side of a pixel, shapes, segments of the strand. All places of a cell share
 * its samples, so these are a multiple of the places.
 */
typedef struct
{
  double below_px;
  int phases, samples, shapes, segments;
} Plan;

static const Plan plans[] = {
  { 6, 4, 4, 1, 4 },
  { 16, 3, 6, 2, 6 },
  { 32, 2, 4, 6, 10 },
  { 56, 1, 2, 8, 16 },
  { INFINITY, 1, 2, 8, 28 },
};

#define MOST_SEGMENTS 28
#define EDGE_KINDS 32 /* SwStitchEdge together */

/* A share of a pixel that no eye misses. */
#define LEAST_COVER 0.002f

struct _SwStitchMask
{
  const Plan *plan;
  SwStitchScene scene;
  int rows, columns; /* of the fabric's repeat */
  float ratio[4];    /* light over cover of each stitch of it */
  float peak;
  SwStitchPatch *patches; /* [kind][edges][phase y][phase x][shape], empty until asked for */
};

/* Few stitches lie at an edge: they need not have as many shapes. */
#define EDGE_SHAPES 2

/* The upper left corner of a cell within its pixel, in places of the plan. */
typedef struct
{
  int x, y;
} Phase;

/* What one segment adds to the pixel that is gathered. */
typedef struct
{
  float light, cover, dye;
} Share;

static double
reach_px (const SwStitchMask *mask)
{
  const SwLoop *loop = &mask->scene.loop;

  return ((double) loop->half - (double) loop->row / 2 + 1.5 * (double) loop->radius) * mask->scene.style.stitch;
}

/* How far the strands of a stitch reach beside its cell, px. */
static double
beside_px (const SwStitchMask *mask)
{
  return ((double) mask->scene.loop.radius * 1.25 + (mask->columns > 1 ? 0.1 : 0)) * mask->scene.style.stitch;
}

static void
place_patch (const SwStitchMask *mask, Phase phase, SwStitchPatch *patch)
{
  const double x = (double) phase.x / mask->plan->phases, y = (double) phase.y / mask->plan->phases;

  patch->x = (int) floor (x - beside_px (mask));
  patch->y = (int) floor (y - reach_px (mask));
  patch->width = (int) ceil (x + mask->scene.style.stitch + beside_px (mask)) - patch->x;
  patch->height = (int) ceil (y + mask->scene.style.row + reach_px (mask)) - patch->y;
}

/* The pixel of the samples' upper left corner, from that of the cell, whatever the cell's place in it. */
static void
samples_corner (const SwStitchMask *mask, int *x, int *y)
{
  *x = (int) floor (-beside_px (mask)) - 1;
  *y = (int) floor (-reach_px (mask)) - 1;
}

/* Samples for a cell at any place within a pixel: the patch of each is a part of them. */
static SwTubeGrid
samples_grid (const SwStitchMask *mask)
{
  const int n = mask->plan->samples;
  const double stitch = mask->scene.style.stitch, row = mask->scene.style.row;
  int x, y;

  samples_corner (mask, &x, &y);
  return (SwTubeGrid){
    .width = ((int) ceil (stitch + beside_px (mask)) + 1 - x) * n,
    .height = ((int) ceil (row + reach_px (mask)) + 1 - y) * n,
    .left = (float) ((x + 0.5 / n) / stitch - 0.5),
    .top = (float) ((row - y - 0.5 / n) / stitch),
    .step = (float) (1 / (n * stitch)),
  };
}

static int
segment_of (const SwStitchMask *mask, float place)
{
  const int n = mask->plan->segments;

  return sw_stitch_place_is_edge (place) ? n : CLAMP ((int) (place * (float) n), 0, n - 1);
}

/* Sums of one pixel's samples by segment. @x, @y: its first sample; @sign: 1 of what is seen, -1 of what lies beneath. */
static void
gather_pixel (const SwStitchMask *mask, const SwStitchSamples *samples, int x, int y, float sign, Share *shares)
{
  const int n = mask->plan->samples;
  const float share = 1.0f / (float) (n * n);

  for (int b = 0; b < n; b++)
    for (int a = 0; a < n; a++)
      {
        const int at = (y + b) * samples->grid.width + x + a;
        const float cover = sign * samples->cover[at] * share;
        Share *to;

        if (cover <= 0)
          continue;
        to = &shares[segment_of (mask, samples->place[at])];
        to->cover += cover;
        to->light += cover * samples->light[at];
        to->dye += cover * samples->light[at] * samples->dye[at];
      }
}

/* @first_x, @first_y: the patch's first sample. */
static void
gather_layer (const SwStitchMask *mask, const SwStitchSamples *samples, const SwStitchPatch *patch, int first_x, int first_y, float sign, SwStitchLayer *layer)
{
  const int segments = mask->plan->segments + 1, n = mask->plan->samples;
  g_autoptr (GArray) fragments = g_array_sized_new (FALSE, FALSE, sizeof (SwStitchFragment), (guint) (patch->width * patch->height));

  layer->lines = g_new (guint, patch->height + 1);
  for (int y = 0; y < patch->height; y++)
    {
      layer->lines[y] = fragments->len;
      for (int x = 0; x < patch->width; x++)
        {
          Share shares[MOST_SEGMENTS + 1];

          memset (shares, 0, sizeof (Share) * (gsize) segments);
          gather_pixel (mask, samples, first_x + x * n, first_y + y * n, sign, shares);
          for (int s = 0; s < segments; s++)
            if (shares[s].cover > LEAST_COVER)
              {
                const SwStitchFragment fragment = { (gint16) x, (guint16) s, shares[s].light, shares[s].cover, shares[s].dye };

                g_array_append_val (fragments, fragment);
              }
        }
    }
  layer->lines[patch->height] = fragments->len;
  layer->fragments = (SwStitchFragment *) g_array_free (g_steal_pointer (&fragments), FALSE);
}

static void
scale_layer (SwStitchLayer *layer, guint n, float factor, float mean)
{
  for (guint i = 0; i < n; i++)
    {
      layer->fragments[i].dye = factor * (layer->fragments[i].dye - mean * layer->fragments[i].light);
      layer->fragments[i].light *= factor;
    }
}

/* Scales the light to @ratio of the cover and takes the dye's mean away, the edge's own strand with the rest. */
static void
balance (SwStitchPatch *patch, float ratio)
{
  const guint n = patch->seen.lines[patch->height];
  double light = 0, cover = 0, dye = 0;

  for (guint i = 0; i < n; i++)
    {
      light += (double) patch->seen.fragments[i].light;
      cover += (double) patch->seen.fragments[i].cover;
      dye += (double) patch->seen.fragments[i].dye;
    }
  if (light <= 0)
    return;
  scale_layer (&patch->seen, n, ratio * (float) (cover / light), (float) (dye / light));
  scale_layer (&patch->under, patch->under.lines[patch->height], ratio * (float) (cover / light), (float) (dye / light));
}

static SwStitchPatch *
patch_at (const SwStitchMask *mask, int kind, guint edges, int phase, int shape)
{
  const int phases = mask->plan->phases * mask->plan->phases;

  return &mask->patches[(((gsize) kind * EDGE_KINDS + edges) * (gsize) phases + (gsize) phase) * (gsize) mask->plan->shapes + (gsize) shape];
}

static int
shapes_of (const SwStitchMask *mask, guint edges)
{
  return edges != 0 ? MIN (mask->plan->shapes, EDGE_SHAPES) : mask->plan->shapes;
}

static void
gather_patch (SwStitchMask *mask, int kind, const SwStitchSamples *samples, Phase phase, SwStitchPatch *patch)
{
  const int n = mask->plan->samples, on = n / mask->plan->phases;
  int corner_x, corner_y, first_x, first_y;

  place_patch (mask, phase, patch);
  samples_corner (mask, &corner_x, &corner_y);
  first_x = (patch->x - corner_x) * n - phase.x * on;
  first_y = (patch->y - corner_y) * n - phase.y * on;
  gather_layer (mask, samples, patch, first_x, first_y, 1, &patch->seen);
  gather_layer (mask, samples, patch, first_x, first_y, -1, &patch->under);
  balance (patch, mask->ratio[kind]);
}

/* All shapes of one kind, since they share their neighbours, at all places within a pixel. */
static void
make_patches (SwStitchMask *mask, int kind, guint edges)
{
  const int row = kind / mask->columns, column = kind % mask->columns, phases = mask->plan->phases;
  const SwTubeGrid grid = samples_grid (mask);
  SwStitchSamples samples;

  sw_stitch_samples_init (&samples, &grid);
  sw_stitch_sample_others (&mask->scene, row, column, edges, &samples);
  for (int shape = 0; shape < shapes_of (mask, edges); shape++)
    {
      sw_stitch_sample_own (&mask->scene, row, column, edges, shape, &samples);
      for (int phase = 0; phase < phases * phases; phase++)
        gather_patch (mask, kind, &samples, (Phase){ phase % phases, phase / phases }, patch_at (mask, kind, edges, phase, shape));
    }
  sw_stitch_samples_clear (&samples);
}

static const Plan *
plan_for (double stitch)
{
  const Plan *plan = plans;

  while (stitch >= plan->below_px)
    plan++;
  return plan;
}

static int
compare_floats (gconstpointer a, gconstpointer b)
{
  const float p = *(const float *) a, q = *(const float *) b;

  return p < q ? -1 : p > q;
}

/* The light of each stitch of the repeat, and the brightest hundredth of all their samples. */
static void
measure (SwStitchMask *mask)
{
  const int kinds = mask->rows * mask->columns;
  g_autoptr (GArray) lights = g_array_new (FALSE, FALSE, sizeof (float));
  double light[4] = { 0 }, cover[4] = { 0 }, all_light = 0, all_cover = 0;
  const SwTubeGrid grid = samples_grid (mask);
  SwStitchSamples samples;

  sw_stitch_samples_init (&samples, &grid);
  for (int kind = 0; kind < kinds; kind++)
    {
      sw_stitch_sample_others (&mask->scene, kind / mask->columns, kind % mask->columns, 0, &samples);
      sw_stitch_sample_own (&mask->scene, kind / mask->columns, kind % mask->columns, 0, 0, &samples);
      for (int i = 0; i < grid.width * grid.height; i++)
        if (samples.cover[i] > 0)
          {
            light[kind] += (double) (samples.light[i] * samples.cover[i]);
            cover[kind] += (double) samples.cover[i];
            g_array_append_val (lights, samples.light[i]);
          }
      all_light += light[kind];
      all_cover += cover[kind];
    }
  sw_stitch_samples_clear (&samples);
  for (int kind = 0; kind < kinds; kind++)
    mask->ratio[kind] = (float) (light[kind] / cover[kind] * all_cover / all_light);
  g_array_sort (lights, compare_floats);
  mask->peak = MAX (g_array_index (lights, float, lights->len - 1 - lights->len / 100) * (float) (all_cover / all_light), 1.01f);
}

SwStitchMask *
sw_stitch_mask_new (const SwStitchStyle *style)
{
  SwStitchMask *mask;
  SwStitchScene *scene;
  gsize n;

  g_return_val_if_fail (style->stitch >= 1 && style->row > 0 && style->plies >= 1 && style->diameter > 0, NULL);
  mask = g_new0 (SwStitchMask, 1);
  scene = &mask->scene;
  mask->plan = plan_for (style->stitch);
  mask->rows = (int) sw_fabric_row_repeat (style->fabric);
  mask->columns = (int) sw_fabric_column_repeat (style->fabric);
  scene->style = *style;
  sw_loop_init (&scene->loop, style->row / style->stitch, style->length, style->diameter);
  sw_yarn_light_init (&scene->yarn, style->fibre, style->plies, style->diameter * style->stitch);
  sw_yarn_light_turn (&scene->yarn, style->quarters);
  scene->slack = (float) ((0.5 / mask->plan->phases + 0.2) / style->stitch) + 0.055f;
  n = (gsize) (mask->rows * mask->columns) * EDGE_KINDS * (gsize) (mask->plan->phases * mask->plan->phases * mask->plan->shapes);
  mask->patches = g_new0 (SwStitchPatch, n);
  measure (mask);
  return mask;
}

static void
free_layer (SwStitchLayer *layer)
{
  g_free (layer->lines);
  g_free (layer->fragments);
}

void
sw_stitch_mask_free (SwStitchMask *mask)
{
  const gsize n = (gsize) (mask->rows * mask->columns) * EDGE_KINDS * (gsize) (mask->plan->phases * mask->plan->phases * mask->plan->shapes);

  for (gsize i = 0; i < n; i++)
    {
      free_layer (&mask->patches[i].seen);
      free_layer (&mask->patches[i].under);
    }
  g_free (mask->patches);
  g_free (mask);
}

const SwStitchStyle *
sw_stitch_mask_get_style (const SwStitchMask *mask)
{
  return &mask->scene.style;
}

int
sw_stitch_mask_get_segments (const SwStitchMask *mask)
{
  return mask->plan->segments;
}

double
sw_stitch_mask_get_reach (const SwStitchMask *mask)
{
  return reach_px (mask) + SW_STITCH_DRIFT * mask->scene.style.stitch + 1;
}

double
sw_stitch_mask_get_foot (const SwStitchMask *mask)
{
  return MAX ((double) sw_stitch_edge_low (&mask->scene.loop) * mask->scene.style.stitch, 0);
}

const SwStitchPatch *
sw_stitch_mask_patch (SwStitchMask *mask, gsize row, gsize column, guint edges, double x, double y, guint64 chance, int *pixel_x, int *pixel_y)
{
  const int phases = mask->plan->phases;
  /* Rounded to the nearest prepared place, which may be the next pixel's first. */
  const int at_x = (int) floor (x * phases + 0.5), at_y = (int) floor (y * phases + 0.5);
  const int whole_x = (int) floor ((double) at_x / phases), whole_y = (int) floor ((double) at_y / phases);
  const int shape = (int) (chance % (guint64) shapes_of (mask, edges));
  const int phase = (at_y - whole_y * phases) * phases + (at_x - whole_x * phases);
  const int kind = (int) (row % (gsize) mask->rows) * mask->columns + (int) (column % (gsize) mask->columns);
  const SwStitchPatch *patch = patch_at (mask, kind, edges, phase, shape);

  *pixel_x = whole_x;
  *pixel_y = whole_y;
  if (patch->seen.lines == NULL)
    make_patches (mask, kind, edges);
  return patch;
}

float
sw_stitch_mask_get_peak (const SwStitchMask *mask)
{
  return mask->peak;
}
