/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-stitch-mask.h"

#include "sketch/sw-chance.h"

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

/* The course of a leg, right leg, x in cell widths from the middle of the stitch, y in rows from the cell's lower edge. */
typedef struct
{
  double aspect; /* row height over stitch width */
  double foot_x, head_x, half;
  double turns, turn_phase; /* of the plies over the leg's length */
  double ply_depth;
  double lean; /* of the light: +1 right leg, -1 left leg */
} Course;

#define FOOT_Y (-0.38)
#define HEAD_Y 1.30

static double
smooth (double t)
{
  t = CLAMP (t, 0, 1);
  return t * t * (3 - 2 * t);
}

/* Whether the leg is at @x, @y; @along 0 foot .. 1 head, @across -1 inside .. 1 outside. */
static gboolean
course_find (const Course *course, double x, double y, double *along, double *across)
{
  const double s = (y - FOOT_Y) / (HEAD_Y - FOOT_Y);
  double half, centre;

  if (s <= 0 || s >= 1)
    return FALSE;
  /* Slim at the foot, round at the head. */
  half = course->half * 1.53 * pow (s, 0.50) * pow (1 - s, 0.34);
  centre = course->foot_x + (course->head_x - course->foot_x) * (0.6 * s + 0.4 * smooth (s));
  *along = s;
  *across = (x - centre) / half;
  return fabs (*across) < 1;
}

/*
 * Light from the upper left and the front on a round strand that dives behind
 * its neighbours at both ends; the plies wind round it.
 */
static double
course_light (const Course *course, double along, double across)
{
  const double dive = 0.75 * (smooth ((along - 0.62) / 0.38) - smooth ((0.45 - along) / 0.45));
  const double nx = across * 0.86, ny = dive * 0.5;
  const double nz = sqrt (MAX (1 - nx * nx - ny * ny, 0.05));
  const double facing = MAX (-0.30 * course->lean * nx + 0.34 * ny + 0.89 * nz, 0);
  const double depth = smooth (along / 0.42);                      /* the foot lies deep, in shadow */
  const double rim = 1 - 0.45 * across * across * across * across; /* and so do the sides */
  const double wind = (along * course->turns + course->lean * asin (across) / G_PI * 0.9 + course->turn_phase);
  const double ply = 0.5 + 0.5 * cos (2 * G_PI * wind), groove = ply * ply * ply;

  return (0.22 + 0.78 * facing) * (0.45 + 0.55 * depth) * rim * (1 - course->ply_depth * groove);
}

/* Between the wales one looks into the shade of the back. */
static float
gap_light (double x)
{
  return (float) (0.14 + 0.30 * smooth ((0.5 - x) / 0.2));
}

/* The cast-on's bead, a little aslant; @x from the middle of the stitch to the right. */
static gboolean
bead_find (double x, double y, double *along, double *across)
{
  const double u = x / 0.5, half = 0.25 * sqrt (MAX (1 - u * u * u * u, 0));

  *along = u;
  *across = half > 0 ? (y - (-0.10 + 0.09 * u)) / half : 2;
  return fabs (*across) < 1;
}

static double
bead_light (const Course *course, double along, double across)
{
  const double round = sqrt (MAX (1 - 0.75 * across * across, 0.05)), ends = 1 - 0.45 * along * along * along * along;
  const double ply = 0.5 + 0.5 * cos (2 * G_PI * (along * 1.1 + across * 0.45)), groove = ply * ply * ply;

  return (0.25 + 0.75 * (0.85 * round + 0.15 * across)) * ends * (1 - course->ply_depth * groove);
}

/* What one sample of a part sees: @x to the right from the middle of the stitch, @y up from the cell's lower edge. */
static void
sample_part (const Course *course, SwStitchPart part, double x, double y, float *light, float *cover)
{
  const gboolean first = part != SW_PART_LEFT && part != SW_PART_RIGHT;
  const gboolean on_bead = first && bead_find (x, y, &(double){ 0 }, &(double){ 0 });
  const double outwards = x * course->lean;
  double along, across;

  if (part == SW_PART_BEAD)
    {
      if (!bead_find (x, y, &along, &across))
        return;
      *light += (float) bead_light (course, along, across);
      *cover += 1;
      return;
    }
  if (outwards < 0 || outwards >= 0.5 || on_bead)
    return; /* another part's */
  if (!first && course_find (course, outwards, y + 1, &along, &across))
    return; /* behind the row below */
  if (course_find (course, outwards, y, &along, &across))
    {
      *light += (float) course_light (course, along, across);
      *cover += 1;
    }
  else if (y >= 0 && y < 1 && !course_find (course, outwards, y - 1, &along, &across))
    {
      *light += gap_light (outwards);
      *cover += 1;
    }
}

static void
fill_patch (SwStitchPatch *patch, const Course *course, SwStitchPart part, double stitch, double row, double phase_x, double phase_y, int samples)
{
  const float share = 1.0f / (float) (samples * samples);

  for (int j = 0; j < patch->height; j++)
    for (int i = 0; i < patch->width; i++)
      {
        float light = 0, cover = 0;

        for (int b = 0; b < samples; b++)
          for (int a = 0; a < samples; a++)
            {
              const double u = (patch->x + i + (a + 0.5) / samples - phase_x) / stitch - 0.5;
              const double v = 1 - (patch->y + j + (b + 0.5) / samples - phase_y) / row;

              sample_part (course, part, u, v, &light, &cover);
            }
        patch->light[j * patch->width + i] = light * share;
        patch->cover[j * patch->width + i] = cover * share;
      }
}

static double
sum_light (const SwStitchPatch *patch)
{
  double sum = 0;

  for (int i = 0; i < patch->width * patch->height; i++)
    sum += (double) patch->light[i];
  return sum;
}

/* Scales all parts so that an ordinary stitch as a whole is as light as its colour. */
static void
balance (SwStitchPatch *parts, double area)
{
  const float factor = (float) (area / (sum_light (&parts[SW_PART_LEFT]) + sum_light (&parts[SW_PART_RIGHT])));

  for (int part = 0; part < SW_N_PARTS; part++)
    for (int i = 0; i < parts[part].width * parts[part].height; i++)
      parts[part].light[i] *= factor;
}

/* A shape of its own for each number; shape 0 is the plain one. A bead takes the left leg's plies. */
static Course
course_for (int shape, SwStitchPart part, double stitch, double row, int plies)
{
  const int right = part == SW_PART_RIGHT || part == SW_PART_FIRST_RIGHT;
  const guint64 address = sw_chance_mix (0x6c6567, (guint64) (shape * 2 + right));
  const double loose = shape == 0 ? 0 : 1;

  return (Course){
    .aspect = row / stitch,
    .foot_x = 0.07 + loose * 0.012 * (sw_chance_even (sw_chance_mix (address, 1)) - 0.5),
    .head_x = 0.345 + loose * 0.02 * (sw_chance_even (sw_chance_mix (address, 2)) - 0.5),
    .half = 0.225 * (1 + loose * 0.07 * (sw_chance_even (sw_chance_mix (address, 3)) - 0.5)),
    .turns = plies == 1 ? 1.0 : 0.9 * plies,
    .turn_phase = sw_chance_even (sw_chance_mix (address, 4)),
    .ply_depth = (plies == 1 ? 0.08 : 0.34) * smooth ((stitch - 9) / 12),
    .lean = right ? 1 : -1,
  };
}

static void
place_patch (SwStitchPatch *patch, SwStitchPart part, double stitch, double row, double phase_x, double phase_y)
{
  const gboolean right = part == SW_PART_RIGHT || part == SW_PART_FIRST_RIGHT;
  const double left = phase_x + (right ? stitch / 2 : 0), top = phase_y - SW_STITCH_ABOVE * row;

  patch->x = (int) floor (left);
  patch->y = (int) floor (top);
  patch->width = (int) ceil (left + (part == SW_PART_BEAD ? stitch : stitch / 2)) - patch->x;
  patch->height = (int) ceil (top + (1 + SW_STITCH_ABOVE + SW_STITCH_BELOW) * row) - patch->y;
}

/* All parts of one shape at one place within a pixel. Returns the numbers used. */
static gsize
make_stitch (SwStitchPatch *parts, int n_parts, int shape, double phase_x, double phase_y, double stitch, double row, int plies, int samples, float *numbers)
{
  gsize used = 0;

  for (int part = 0; part < n_parts; part++)
    {
      const Course course = course_for (shape, (SwStitchPart) part, stitch, row, plies);
      SwStitchPatch *patch = &parts[part];
      gsize n;

      place_patch (patch, (SwStitchPart) part, stitch, row, phase_x, phase_y);
      n = (gsize) patch->width * (gsize) patch->height;
      patch->light = numbers + used;
      patch->cover = patch->light + n;
      used += 2 * n;
      fill_patch (patch, &course, (SwStitchPart) part, stitch, row, phase_x, phase_y, samples);
    }
  balance (parts, stitch * row);
  return used;
}

SwStitchMask *
sw_stitch_mask_new (double stitch, double row, int plies, gboolean edge)
{
  SwStitchMask *mask = g_new0 (SwStitchMask, 1);
  const Plan *plan = plans;
  gsize n_stitches, room, used = 0;

  g_return_val_if_fail (stitch >= 1 && row > 0 && plies >= 1, NULL);
  while (stitch >= plan->below_px)
    plan++;
  mask->plan = plan;
  n_stitches = (gsize) (plan->shapes * plan->phases * plan->phases);
  /* Of one stitch: five half cells and a whole one at most, with their heads and feet, light and cover. */
  room = (gsize) ((3 * stitch + 12) * (row * (1 + SW_STITCH_ABOVE + SW_STITCH_BELOW) + 2)) * 2;
  mask->patches = g_new0 (SwStitchPatch, n_stitches * SW_N_PARTS);
  mask->numbers = g_new (float, n_stitches *room);
  for (gsize i = 0; i < n_stitches; i++)
    {
      const int phases = plan->phases, phase = (int) i % (phases * phases), shape = (int) i / (phases * phases);
      const int n_parts = edge && shape == 0 ? SW_N_PARTS : SW_PART_RIGHT + 1;

      used += make_stitch (mask->patches + i * SW_N_PARTS, n_parts, shape, (double) (phase % phases) / phases, (double) (phase / phases) / phases,
                           stitch, row, plies, plan->samples, mask->numbers + used);
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
