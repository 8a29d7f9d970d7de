/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-stitch-sample.h"

#include "sketch/sw-chance.h"

#include <string.h>

/* Neighbours that can reach into a stitch: rows are low in garter stitch. */
#define ROWS_AROUND 3

/* Where a selvedge turns, from the middle of the stitch. */
#define SELVEDGE_X 0.33f

/* The turn's radius; where on the loop it leaves the foot, of how many points the half circle is and how many are made anew. */
#define TURN_RADIUS 0.22f
#define TURN_FOOT 4
#define TURN_ARC 6
#define TURN_POINTS 8

#define EDGE_POINTS 17

#define EDGE_SLANT 0.07f
#define EDGE_UP 0.06f /* from the sinkers' middle */

#define BENEATH -1.0f

/* Between strands one sees the inside of the cloth: soft shade, for wool lets light through. */
#define GAP_LIGHT 0.34f

void
sw_stitch_samples_init (SwStitchSamples *samples, const SwTubeGrid *grid)
{
  const gsize n = (gsize) grid->width * (gsize) grid->height;
  float *planes = g_new (float, 10 * n + (gsize) MAX (grid->width, grid->height) + 1);
  float **to[] = { &samples->others, &samples->others_across, &samples->own, &samples->place, &samples->across, &samples->light, &samples->dye, &samples->cover, &samples->blur };

  samples->grid = *grid;
  for (gsize i = 0; i < G_N_ELEMENTS (to); i++)
    *to[i] = planes + i * n;
  samples->line = planes + 10 * n;
}

void
sw_stitch_samples_clear (SwStitchSamples *samples)
{
  g_free (samples->others);
}

static float
sign_at (const SwStitchScene *scene, int row, int column)
{
  const gboolean purl = sw_fabric_is_purl (scene->style.fabric, (gsize) row & 1, (gsize) column & 1);

  return purl == scene->style.purl_side ? 1 : -1;
}

static SwLoopSides
sides_of (const SwStitchScene *scene, int row, int column, gboolean top)
{
  const float own = sign_at (scene, row, column);

  return (SwLoopSides){
    .own = own,
    .above = top ? own : sign_at (scene, row + 1, column),
    .left = sign_at (scene, row, column - 1),
    .right = sign_at (scene, row, column + 1),
  };
}

/*
 * At a selvedge the sinker does not go on into a neighbour: the yarn turns up
 * to the next row, in half a circle whose ends lie behind the leg.
 */
static void
turn_selvedge (SwTubePoint *points, float side)
{
  const int last = SW_LOOP_POINTS - 1;
  SwTubePoint turn[TURN_POINTS + 1];

  for (int i = 0; i <= TURN_POINTS; i++)
    {
      const int from = TURN_FOOT + 2 * MAX (i - TURN_ARC, 0); /* the foot's own points, but for every second */
      const float round = (float) G_PI * (1 - (float) MIN (i, TURN_ARC) / TURN_ARC);
      SwTubePoint *to = &turn[i];

      *to = points[side < 0 ? from : last - from];
      to->place = points[side < 0 ? i : last - i].place;
      to->x += side * TURN_RADIUS * sinf (round);
      to->y += TURN_RADIUS * (1 - cosf (round));
      to->z -= 0.75f * round * fabsf (to->z); /* away from the eye */
    }
  for (int i = 0; i < TURN_POINTS; i++)
    points[side < 0 ? i : last - i] = turn[i];
}

float
sw_stitch_edge_low (const SwLoop *loop)
{
  return loop->half - loop->row / 2 - EDGE_UP - EDGE_SLANT;
}

/* The strand of the cast-on or of the cast-off: a bead to a stitch, a little aslant, before the loops. */
static void
trace_edge (const SwLoop *loop, gboolean off, SwTubePoint *points)
{
  const float y = off ? loop->row / 2 + loop->half - 0.02f : loop->row / 2 - loop->half + EDGE_UP;

  for (int i = 0; i < EDGE_POINTS; i++)
    {
      const float u = 2.0f * (float) i / (EDGE_POINTS - 1) - 1, u2 = u * u;

      points[i].x = 0.5f * u + 0.06f * u * (1 - u2);
      points[i].y = y + (off ? -EDGE_SLANT : EDGE_SLANT) * u;
      points[i].z = loop->depth * (1.0f - 0.9f * u2 * u2);
      points[i].radius = loop->radius * 1.12f * (1 - 0.35f * u2 * u2);
      points[i].place = 2 + (float) i / (EDGE_POINTS - 1);
    }
}

static guint
edges_there (guint edges, int row, int column)
{
  if (row != 0)
    edges &= ~(guint) (SW_EDGE_TOP | SW_EDGE_CAST_OFF | SW_EDGE_CAST_ON);
  if (column != 0)
    edges &= ~(guint) (SW_EDGE_LEFT | SW_EDGE_RIGHT);
  return edges;
}

static gboolean
is_there (guint edges, int row, int column)
{
  return !((row < 0 && (edges & SW_EDGE_CAST_ON) != 0) || (row > 0 && (edges & (SW_EDGE_TOP | SW_EDGE_CAST_OFF)) != 0) ||
           (column < 0 && (edges & SW_EDGE_LEFT) != 0) || (column > 0 && (edges & SW_EDGE_RIGHT) != 0));
}

/* @row, @column: the neighbour, from the stitch at @from_row, @from_column. */
static void
trace_neighbour (const SwStitchScene *scene, int from_row, int from_column, int row, int column, guint edges, SwTubePoint *points)
{
  const SwLoopWander plain = { 0 };
  const guint there = edges_there (edges, row, column);
  const SwLoopSides sides = sides_of (scene, from_row + row, from_column + column, (there & (SW_EDGE_TOP | SW_EDGE_CAST_OFF)) != 0);

  sw_loop_trace (&scene->loop, &sides, &plain, column, row, points);
  if (column == 0 && (edges & SW_EDGE_LEFT) != 0)
    turn_selvedge (points, -1);
  if (column == 0 && (edges & SW_EDGE_RIGHT) != 0)
    turn_selvedge (points, 1);
}

void
sw_stitch_sample_others (const SwStitchScene *scene, int row, int column, guint edges, SwStitchSamples *samples)
{
  const gsize n = (gsize) samples->grid.width * (gsize) samples->grid.height;
  SwTubePoint points[SW_LOOP_POINTS];

  for (gsize i = 0; i < n; i++)
    samples->others[i] = SW_TUBE_NOTHING;
  for (int r = -ROWS_AROUND; r <= ROWS_AROUND; r++)
    for (int c = -1; c <= 1; c++)
      if ((r != 0 || c != 0) && is_there (edges, r, c))
        {
          trace_neighbour (scene, row, column, r, c, edges, points);
          /* The places are not asked for; `own` gets them, which is not filled yet. */
          sw_tube_raster (points, SW_LOOP_POINTS, &samples->grid, samples->others, samples->own, samples->others_across);
        }
}

static double
wander (guint64 address, int part, double extent)
{
  return extent * (sw_chance_even (sw_chance_mix (address, (guint64) part)) - 0.5);
}

/* No two stitches of a hand are alike: a lean, a bow of a leg, a little more or less yarn. */
static SwLoopWander
wander_of (int shape)
{
  const guint64 address = sw_chance_mix (0x6c6f6f70, (guint64) shape);

  if (shape == 0)
    return (SwLoopWander){ 0 };
  return (SwLoopWander){
    .lean = (float) wander (address, 1, 0.080),
    .tall = (float) wander (address, 2, 0.085),
    .wide = (float) wander (address, 3, 0.140),
    .bow = { (float) wander (address, 4, 0.065), (float) wander (address, 5, 0.065) },
  };
}

/* A strand is thicker here and thinner there, over some of its own diameters. */
static void
vary_radius (SwTubePoint *points, int n, int shape)
{
  const double phase = sw_chance_even (sw_chance_mix (0x746869636b, (guint64) shape));

  for (int i = 0; shape != 0 && i < n; i++)
    {
      const double q = (double) i / (n - 1);

      points[i].radius *= (float) (1 + 0.07 * sin (G_PI * q) * sin (2 * G_PI * (1.3 * q + phase)));
    }
}

/* Mean of the heights over a box of @half samples to each side, along lines @step apart. */
static void
blur_lines (const float *from, float *to, int n, int lines, int step, int line_step, int half, float *sums)
{
  for (int l = 0; l < lines; l++)
    {
      const float *in = from + l * line_step;
      float *out = to + l * line_step;

      sums[0] = 0;
      for (int i = 0; i < n; i++)
        sums[i + 1] = sums[i] + in[i * step];
      for (int i = 0; i < n; i++)
        {
          const int low = MAX (i - half, 0), high = MIN (i + half, n - 1);

          out[i * step] = (sums[high + 1] - sums[low]) / (float) (high + 1 - low);
        }
    }
}

/* Heights of everything, with a floor where nothing lies, and their mean around each sample. */
static void
fill_surroundings (const SwStitchScene *scene, SwStitchSamples *samples)
{
  const int w = samples->grid.width, h = samples->grid.height;
  const int half = MAX (1, (int) (0.62f * scene->loop.radius / samples->grid.step));
  const float floor_z = -(scene->loop.depth / 2 + 2 * scene->loop.radius);

  for (int i = 0; i < w * h; i++)
    samples->light[i] = MAX (MAX (samples->own[i], samples->others[i]), floor_z);
  blur_lines (samples->light, samples->blur, w, h, 1, w, half, samples->line);
  blur_lines (samples->blur, samples->blur, h, w, w, 1, half, samples->line);
  blur_lines (samples->blur, samples->dye, w, h, 1, w, half, samples->line);
  blur_lines (samples->dye, samples->blur, h, w, w, 1, half, samples->line);
}

/* How much lower than its surroundings a sample lies: hollows see less of the sky. */
static float
hollow_light (const SwStitchScene *scene, const SwStitchSamples *samples, int at)
{
  const float deep = (samples->blur[at] - samples->own[at]) / (2 * scene->loop.radius);

  return 1 - 0.50f * CLAMP (deep + 0.05f, 0, 0.95f);
}

/* The valleys of a rib are too wide for the hollows of single strands: the wales to both sides take sky from all that lies low. */
static float
valley_light (const SwStitchScene *scene, float z)
{
  return scene->style.fabric == SW_FABRIC_RIB ? 1 - 0.16f * CLAMP (0.5f - z / (3 * scene->loop.radius), 0, 1) : 1;
}

/* What stands between a sample and the lamp, softly; heights in `blur` would be too smooth. */
static float
shadow_light (const SwStitchScene *scene, const SwStitchSamples *samples, int i, int j)
{
  static const float steps[] = { 0.5f, 0.9f, 1.5f, 2.3f };
  const float *l = scene->yarn.light, flat = hypotf (l[0], l[1]), rise = l[2] / flat;
  const float own = samples->own[j * samples->grid.width + i];
  float most = 0;

  for (gsize s = 0; s < G_N_ELEMENTS (steps); s++)
    {
      const float far = steps[s] * scene->loop.radius, on = far / (samples->grid.step * flat);
      const int to_i = i + (int) lrintf (on * l[0]), to_j = j - (int) lrintf (on * l[1]);
      float height;

      if (to_i < 0 || to_j < 0 || to_i >= samples->grid.width || to_j >= samples->grid.height)
        continue;
      height = MAX (samples->others[to_j * samples->grid.width + to_i], samples->own[to_j * samples->grid.width + to_i]);
      most = MAX (most, (height - own - far * rise) / scene->loop.radius);
    }
  return 1 - 0.36f * MIN (most / 0.7f, 1.0f);
}

/* Steps of the table of a strand's course. */
#define COURSES 128

/* One place on a strand: its course, and diameters from its beginning. */
typedef struct
{
  float course[3], along;
} Course;

/* Both strands of a stitch and what shading needs of them. */
typedef struct
{
  SwTubePoint loop[SW_LOOP_POINTS], edge[EDGE_POINTS];
  Course loop_courses[COURSES + 1], edge_courses[COURSES + 1];
  float along; /* diameters in the loop, rounded so that its plies meet the neighbours' */
  guint32 seed;
} Strand;

/* @phase: how far along the plies of each half stand from where they should; the twist is not quite even, and meets the neighbours' in the sinkers. */
static void
fill_courses (const SwTubePoint *points, int n, float along, const float *phase, Course *courses)
{
  int low = 0;

  for (int i = 0; i <= COURSES; i++)
    {
      const float on = (float) i / COURSES, place = points[0].place + on, aside = sinf ((float) G_PI * on);
      float dx, dy, dz, unit;

      while (low < n - 2 && points[low + 1].place < place)
        low++;
      dx = points[low + 1].x - points[low].x;
      dy = points[low + 1].y - points[low].y;
      dz = points[low + 1].z - points[low].z;
      unit = 1 / sqrtf (dx * dx + dy * dy + dz * dz);
      courses[i] = (Course){ { dx * unit, dy * unit, dz * unit }, on * along + aside * aside * (phase[0] * (1 - on) + phase[1] * on) };
    }
}

static void
strand_init (Strand *strand, const SwStitchScene *scene, int shape)
{
  const float pitch = 1 / (scene->yarn.twist * (float) scene->yarn.plies);
  const double length = sw_loop_length (&scene->loop) / (2 * (double) scene->loop.radius);
  const guint64 address = sw_chance_mix (0x706c79, (guint64) shape);
  const float phase[] = { (float) wander (address, 1, 0.9) * pitch, (float) wander (address, 2, 0.9) * pitch };

  strand->along = MAX (roundf ((float) length / pitch), 1) * pitch;
  strand->seed = (guint32) sw_chance_mix (address, 3);
  fill_courses (strand->loop, SW_LOOP_POINTS, strand->along, phase, strand->loop_courses);
  fill_courses (strand->edge, EDGE_POINTS, 0.3f * strand->along, phase, strand->edge_courses);
}

static SwYarnPoint
strand_at (const Strand *strand, float place, float across)
{
  const gboolean edge = sw_stitch_place_is_edge (place);
  const Course *courses = edge ? strand->edge_courses : strand->loop_courses;
  const float at = (edge ? place - 2 : place) * COURSES;
  const int i = CLAMP ((int) at, 0, COURSES - 1);
  const Course *low = &courses[i], *high = &courses[i + 1];

  return (SwYarnPoint){
    .along = low->along + (high->along - low->along) * (at - (float) i),
    .across = across,
    .course = { low->course[0], low->course[1], low->course[2] },
    .seed = strand->seed,
  };
}

/* Between strands one looks into the shade of the back. */
static void
shade_gap (const SwStitchScene *scene, guint edges, SwStitchSamples *samples, int i, int j)
{
  const float x = samples->grid.left + (float) i * samples->grid.step, y = samples->grid.top - (float) j * samples->grid.step;
  const float slack = scene->slack, row = scene->loop.row;
  const int at = j * samples->grid.width + i;
  const float left = (edges & SW_EDGE_LEFT) != 0 ? -SELVEDGE_X : -0.5f - slack, right = (edges & SW_EDGE_RIGHT) != 0 ? SELVEDGE_X : 0.5f + slack;
  const float low = (edges & SW_EDGE_CAST_ON) != 0 ? MIN (-sw_stitch_edge_low (&scene->loop), 0) - slack : -slack, high = (edges & (SW_EDGE_TOP | SW_EDGE_CAST_OFF)) != 0 ? 0.6f * row : row + slack;

  if (x < left || x > right || y < low || y > high)
    return;
  samples->place[at] = x < 0 ? 0.27f : 0.73f;
  samples->light[at] = GAP_LIGHT;
  samples->dye[at] = 0;
  samples->cover[at] = samples->others[at] == SW_TUBE_NOTHING ? 1 : BENEATH;
}

static void
shade_strand (const SwStitchScene *scene, const Strand *strand, SwStitchSamples *samples, int i, int j)
{
  const int at = j * samples->grid.width + i;

  /* Where two strands go on from each other they are at one height, but for how a strand sinks beyond its end: whichever is seen there is lit alike. */
  const float ends = MIN (fabsf (samples->place[at]), fabsf (samples->place[at] - 1)), alike = ends < 0.03f ? 0.8f : 0.1f;

  if (samples->own[at] < samples->others[at] - alike * scene->loop.radius)
    {
      samples->light[at] = 0.5f * hollow_light (scene, samples, at) * valley_light (scene, samples->own[at]);
      samples->dye[at] = 0;
      samples->cover[at] = BENEATH;
    }
  else
    {
      const SwYarnPoint point = strand_at (strand, samples->place[at], samples->across[at]);
      const SwYarnShade lit = sw_yarn_light_at (&scene->yarn, &point);

      samples->light[at] = lit.light * hollow_light (scene, samples, at) * valley_light (scene, samples->own[at]) * shadow_light (scene, samples, i, j);
      samples->dye[at] = lit.dye;
      samples->cover[at] = samples->own[at] >= samples->others[at] ? 1 : BENEATH;
    }
}

/* Whether a neighbour may leave the sample free if it lies a little otherwise than it should. */
static gboolean
is_doubtful (const SwStitchScene *scene, const SwStitchSamples *samples, int at)
{
  return samples->others[at] == SW_TUBE_NOTHING || fabsf (samples->others_across[at]) * scene->loop.radius > scene->loop.radius - scene->slack;
}

static void
shade (const SwStitchScene *scene, const Strand *strand, guint edges, SwStitchSamples *samples)
{
  const int w = samples->grid.width;

  for (int j = 0; j < samples->grid.height; j++)
    for (int i = 0; i < w; i++)
      {
        const int at = j * w + i;

        samples->cover[at] = 0;
        if (samples->own[at] == SW_TUBE_NOTHING)
          {
            if (is_doubtful (scene, samples, at))
              shade_gap (scene, edges, samples, i, j);
          }
        else if (samples->own[at] >= samples->others[at] - 0.3f * scene->loop.radius || is_doubtful (scene, samples, at))
          shade_strand (scene, strand, samples, i, j);
      }
}

/* One hair, a sample wide, over whatever lies there no higher than it. */
static void
draw_hair (const SwStitchScene *scene, const Strand *strand, const SwYarnHair *hair, SwStitchSamples *samples)
{
  const SwTubeGrid *grid = &samples->grid;
  const int root = 1 + (int) (hair->along * (SW_LOOP_POINTS - 3));
  const SwTubePoint *at = &strand->loop[root];
  const SwYarnPoint point = strand_at (strand, at->place, 0);
  const float course = atan2f (point.course[1], point.course[0]);
  const float diameter = 2 * at->radius, step = 0.7f * grid->step;
  const int n = (int) (hair->length * diameter / step);
  float x = at->x - hair->side * 0.92f * at->radius * sinf (course), y = at->y + hair->side * 0.92f * at->radius * cosf (course);

  for (int i = 0; i < n; i++)
    {
      const float on = (float) i / (float) n, angle = course + hair->side * ((float) G_PI_2 - hair->lean - hair->curl * on);
      const int to_i = (int) lrintf ((x - grid->left) / grid->step), to_j = (int) lrintf ((grid->top - y) / grid->step);
      const int to = to_j * grid->width + to_i;

      x += step * cosf (angle);
      y += step * sinf (angle);
      if (to_i < 0 || to_j < 0 || to_i >= grid->width || to_j >= grid->height)
        continue;
      if (samples->cover[to] >= 1 && !sw_stitch_place_is_edge (samples->place[to]))
        {
          samples->light[to] *= 1 + 0.16f * hair->weight * (1 - on);
          continue;
        }
      if (samples->others[to] > at->z + 1.5f * at->radius || samples->cover[to] > 0)
        continue;
      samples->place[to] = at->place;
      samples->light[to] = 1.05f;
      samples->dye[to] = 0;
      samples->cover[to] = 0.6f * hair->weight * (1 - 0.6f * on);
    }
}

void
sw_stitch_sample_own (const SwStitchScene *scene, int row, int column, guint edges, int shape, SwStitchSamples *samples)
{
  const gsize n = (gsize) samples->grid.width * (gsize) samples->grid.height;
  const gboolean top = (edges & (SW_EDGE_TOP | SW_EDGE_CAST_OFF)) != 0;
  const SwLoopSides sides = sides_of (scene, row, column, top);
  const SwLoopWander loose = wander_of (shape);
  Strand strand;
  int hairs;

  sw_loop_trace (&scene->loop, &sides, &loose, 0, 0, strand.loop);
  vary_radius (strand.loop, SW_LOOP_POINTS, shape);
  if ((edges & SW_EDGE_LEFT) != 0)
    turn_selvedge (strand.loop, -1);
  if ((edges & SW_EDGE_RIGHT) != 0)
    turn_selvedge (strand.loop, 1);
  trace_edge (&scene->loop, (edges & SW_EDGE_CAST_OFF) != 0, strand.edge);
  strand_init (&strand, scene, shape);
  for (gsize i = 0; i < n; i++)
    samples->own[i] = SW_TUBE_NOTHING;
  sw_tube_raster (strand.loop, SW_LOOP_POINTS, &samples->grid, samples->own, samples->place, samples->across);
  if ((edges & (SW_EDGE_CAST_ON | SW_EDGE_CAST_OFF)) != 0)
    sw_tube_raster (strand.edge, EDGE_POINTS, &samples->grid, samples->own, samples->place, samples->across);
  fill_surroundings (scene, samples);
  shade (scene, &strand, edges, samples);
  hairs = sw_yarn_hairs (&scene->yarn, (double) strand.along);
  for (int i = 0; i < hairs; i++)
    {
      const SwYarnHair hair = sw_yarn_hair (&scene->yarn, sw_chance_mix (strand.seed, (guint64) shape), i);

      draw_hair (scene, &strand, &hair, samples);
    }
}
