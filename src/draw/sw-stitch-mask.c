/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-stitch-mask.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* How finely a size is prepared: places of a cell within a pixel, samples a side of a pixel, leg shapes. */
typedef struct
{
  double below_px;
  int phases, samples, shapes;
} Plan;

static const Plan plans[] = {
  { 6, 8, 4, 1 },
  { 16, 4, 4, 1 },
  { 32, 2, 3, 3 },
  { 64, 1, 3, 4 },
  { INFINITY, 1, 2, 4 },
};

struct _SwStitchMask
{
  const Plan *plan;
  SwStitchPatch *patches; /* [shape][phase y][phase x][part]; those of the first row in shape 0 alone */
  float *numbers;
};

/* What all patches of a mask share. */
typedef struct
{
  const Plan *plan;
  double stitch, row; /* px */
  int plies;
  SwStitchOutline outline;
} Size;

/* The upper left corner of a cell within its pixel. */
typedef struct
{
  double x, y;
} Phase;

static void
fill_patch (SwStitchPatch *patch, const Size *size, Phase phase, const SwStitchShape *shape, SwStitchPart part)
{
  const int samples = size->plan->samples;
  const float share = 1.0f / (float) (samples * samples);

  for (int j = 0; j < patch->height; j++)
    for (int i = 0; i < patch->width; i++)
      {
        float light = 0, cover = 0;

        for (int b = 0; b < samples; b++)
          for (int a = 0; a < samples; a++)
            {
              const double u = (patch->x + i + (a + 0.5) / samples - phase.x) / size->stitch - 0.5;
              const double v = 1 - (patch->y + j + (b + 0.5) / samples - phase.y) / size->row;

              sw_stitch_sample (shape, part, u, v, &light, &cover);
            }
        patch->light[j * patch->width + i] = light * share;
        patch->cover[j * patch->width + i] = cover * share;
      }
}

static double
sum_of (const float *numbers, const SwStitchPatch *patch)
{
  double sum = 0;

  for (int i = 0; i < patch->width * patch->height; i++)
    sum += (double) numbers[i];
  return sum;
}

/* Scales all parts so that an ordinary stitch as a whole is as light as its colour: its light sums to its cover. */
static void
balance (SwStitchPatch *parts)
{
  const SwStitchPatch *left = &parts[SW_PART_LEFT], *right = &parts[SW_PART_RIGHT];
  const double cover = sum_of (left->cover, left) + sum_of (right->cover, right);
  const float factor = (float) (cover / (sum_of (left->light, left) + sum_of (right->light, right)));

  for (int part = 0; part < SW_N_PARTS; part++)
    for (int i = 0; i < parts[part].width * parts[part].height; i++)
      parts[part].light[i] *= factor;
}

static void
place_patch (SwStitchPatch *patch, const Size *size, Phase phase, SwStitchPart part)
{
  const gboolean right = part == SW_PART_RIGHT || part == SW_PART_FIRST_RIGHT;
  const double left = phase.x + (right ? size->stitch / 2 : 0), top = phase.y - SW_STITCH_ABOVE * size->row;

  patch->x = (int) floor (left);
  patch->y = (int) floor (top);
  patch->width = (int) ceil (left + (part == SW_PART_BEAD ? size->stitch : size->stitch / 2)) - patch->x;
  patch->height = (int) ceil (top + (1 + SW_STITCH_ABOVE + SW_STITCH_BELOW) * size->row) - patch->y;
}

/* The first @n_parts parts of one shape. Returns the numbers used. */
static gsize
make_stitch (SwStitchPatch *parts, int n_parts, const Size *size, Phase phase, int shape, float *numbers)
{
  gsize used = 0;

  for (int part = 0; part < n_parts; part++)
    {
      SwStitchShape leg = sw_stitch_shape_for (&size->outline, shape, (SwStitchPart) part, size->stitch, size->plies);
      SwStitchPatch *patch = &parts[part];
      gsize n;

      leg.slack = 1.0 / size->plan->phases / size->row; /* two rows may each lie half a prepared place off: no hole may open between them */
      place_patch (patch, size, phase, (SwStitchPart) part);
      n = (gsize) patch->width * (gsize) patch->height;
      patch->light = numbers + used;
      patch->cover = patch->light + n;
      used += 2 * n;
      fill_patch (patch, size, phase, &leg, (SwStitchPart) part);
    }
  balance (parts);
  return used;
}

static const Plan *
plan_for (double stitch)
{
  const Plan *plan = plans;

  while (stitch >= plan->below_px)
    plan++;
  return plan;
}

SwStitchMask *
sw_stitch_mask_new (double stitch, double row, int plies, gboolean edge)
{
  Size size = { .plan = plan_for (stitch), .stitch = stitch, .row = row, .plies = plies };
  const int phases = size.plan->phases;
  const gsize n_stitches = (gsize) (size.plan->shapes * phases * phases);
  /* Of one stitch: four half cells and a whole one, each with its head and foot, light and cover. */
  const gsize room = (gsize) ((3 * stitch + 12) * (row * (1 + SW_STITCH_ABOVE + SW_STITCH_BELOW) + 2)) * 2;
  SwStitchMask *mask;
  gsize used = 0;

  g_return_val_if_fail (stitch >= 1 && row > 0 && plies >= 1, NULL);
  mask = g_new0 (SwStitchMask, 1);
  mask->plan = size.plan;
  mask->patches = g_new0 (SwStitchPatch, n_stitches * SW_N_PARTS);
  mask->numbers = g_new (float, n_stitches *room);
  sw_stitch_outline_init (&size.outline);
  for (gsize i = 0; i < n_stitches; i++)
    {
      const int at = (int) i % (phases * phases), shape = (int) i / (phases * phases);
      const Phase phase = { (double) (at % phases) / phases, (double) (at / phases) / phases };
      const int n_parts = edge && shape == 0 ? SW_N_PARTS : SW_PART_RIGHT + 1;

      used += make_stitch (mask->patches + i * SW_N_PARTS, n_parts, &size, phase, shape, mask->numbers + used);
    }
  g_assert (used <= n_stitches * room);
  return mask;
}

void
sw_stitch_mask_free (SwStitchMask *mask)
{
  g_free (mask->patches);
  g_free (mask->numbers);
  g_free (mask);
}

const SwStitchPatch *
sw_stitch_mask_patch (const SwStitchMask *mask, SwStitchPart part, double x, double y, guint64 chance, int *pixel_x, int *pixel_y)
{
  const int phases = mask->plan->phases;
  /* Rounded to the nearest prepared place, which may be the next pixel's first. */
  const int at_x = (int) floor (x * phases + 0.5), at_y = (int) floor (y * phases + 0.5);
  const int whole_x = (int) floor ((double) at_x / phases), whole_y = (int) floor ((double) at_y / phases);
  const int shape = part <= SW_PART_RIGHT ? (int) (chance % (guint64) mask->plan->shapes) : 0;
  const int phase = (at_y - whole_y * phases) * phases + (at_x - whole_x * phases);

  *pixel_x = whole_x;
  *pixel_y = whole_y;
  return &mask->patches[(shape * phases * phases + phase) * SW_N_PARTS + (int) part];
}

static int
compare_floats (gconstpointer a, gconstpointer b)
{
  const float p = *(const float *) a, q = *(const float *) b;

  return p < q ? -1 : p > q;
}

float
sw_stitch_mask_get_peak (const SwStitchMask *mask)
{
  const SwStitchPatch *left = &mask->patches[SW_PART_LEFT], *right = &mask->patches[SW_PART_RIGHT];
  const gsize n_left = (gsize) (left->width * left->height), n = n_left + (gsize) (right->width * right->height);
  g_autofree float *lights = g_new (float, n);

  memcpy (lights, left->light, n_left * sizeof (float));
  memcpy (lights + n_left, right->light, (n - n_left) * sizeof (float));
  qsort (lights, n, sizeof (float), compare_floats);
  return MAX (lights[n - 1 - n / 100], 1.01f);
}
