/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-laid-threads.h"

#include <math.h>

#define RADIUS 0.07f /* cm */
#define MOST 0.10f    /* of a bundle's width: a thin one has a thinner thread */
#define STEP 0.10f
#define SPAN_PARTS 96
#define KNOT_AT (-0.50f) /* -1 far edge .. 1 near edge */

typedef struct
{
  SwWraps *wraps;
  const SwRelief *relief;
  guint64 address;
  float x, lean, radius;
  float far, near; /* edges of the bundle there */
} Tie;

static float
chance (const Tie *tie, guint64 part)
{
  return (float) sw_chance_even (sw_chance_mix (tie->address, part));
}

static float
height_at (const Tie *tie, float x, float y)
{
  float normal[3], height;

  sw_relief_normal (tie->relief, x, y, normal, &height);
  return height;
}

/* Where the yarn ends, from the bundle's middle on. */
static float
edge_from (const Tie *tie, float middle, float way, float most)
{
  float off = 0.3f * most;

  while (off < most && height_at (tie, tie->x, middle + way * off) > 0.12f)
    off += 0.04f;
  return middle + way * MIN (off, most);
}

static float
course_x (const Tie *tie, float t)
{
  return tie->x + tie->lean * (t + 0.35f * sinf (2.4f * t + 1));
}

/* Taut from edge to edge: the mean of the yarn's height near by. */
static void
lay_span (const Tie *tie)
{
  const float middle = (tie->far + tie->near) / 2, half = (tie->near - tie->far) / 2;

  sw_wraps_begin (tie->wraps, tie->radius, 1, (guint32) tie->address, TRUE);
  for (int k = 0; k <= SPAN_PARTS; k++)
    {
      const float t = 2 * (float) k / SPAN_PARTS - 1, x = course_x (tie, t);
      float z = 0;

      for (int j = -3; j <= 3; j++)
        z += height_at (tie, x, CLAMP (middle + half * t + 0.06f * (float) j, tie->far, tie->near)) / 7;
      sw_wraps_add (tie->wraps, x, middle + half * t, MAX (z + 1.5f * tie->radius, tie->radius));
    }
}

static void
lay_tail (const Tie *tie, float x, float y, float angle, guint64 part)
{
  const float length = (0.8f + 0.7f * chance (tie, part)) * tie->radius / RADIUS, bend = 2.4f * (chance (tie, part + 1) - 0.5f);
  const int n = MAX ((int) (length / STEP), 4);
  const float step = length / (float) n;

  sw_wraps_begin (tie->wraps, 0.85f * tie->radius, 1, (guint32) (tie->address + part), TRUE);
  for (int k = 0; k <= n; k++)
    {
      const float on = (float) k / (float) n;

      sw_wraps_add (tie->wraps, x, y, height_at (tie, x, y) + tie->radius * (2.0f - on));
      angle += bend / (float) n;
      x += step * cosf (angle);
      y += step * sinf (angle);
    }
}

/* A turn and a half round the thread, and two tails. */
static void
lay_knot (const Tie *tie)
{
  const float middle = (tie->far + tie->near) / 2, half = (tie->near - tie->far) / 2;
  const float x = course_x (tie, KNOT_AT), y = middle + half * KNOT_AT, z = height_at (tie, x, y) + 2.1f * tie->radius;

  lay_tail (tie, x, y, -0.5f + 0.5f * chance (tie, 11), 20);
  lay_tail (tie, x, y, (float) G_PI - 0.5f + 1.1f * chance (tie, 12), 30);
  sw_wraps_begin (tie->wraps, tie->radius, 1, (guint32) tie->address + 1, TRUE);
  for (int k = 0; k <= 12; k++)
    {
      const float angle = (float) G_PI * 1.5f * (float) k / 12 - 0.7f;

      sw_wraps_add (tie->wraps, x + tie->radius * 1.3f * cosf (angle), y + tie->radius * (0.5f * sinf (angle) + 0.7f * ((float) k / 6 - 1)), z + tie->radius * 0.7f * cosf (2 * angle));
    }
}

void
sw_laid_threads_lay (SwWraps *wraps, const SwLaidTies *ties, const SwSketch *sketch, const SwRelief *relief)
{
  const int across = sketch->lay.folding == SW_FOLDING_SIDE_BY_SIDE ? (int) sketch->lay.runs : 1;
  const float run = (float) (sketch->lay.width_cm / across), width = (float) sw_sketch_lay_width (sketch);

  for (int i = 0; i < ties->n; i++)
    {
      const float middle = width - ((float) ties->ties[i].bundle + 0.5f) * run;
      Tie tie = { .wraps = wraps, .relief = relief, .address = sw_chance_mix (ties->seed, 100 + (guint64) i), .x = (float) ties->ties[i].x_cm };

      tie.radius = MIN (RADIUS, MOST * run);
      tie.lean = 0.10f + 0.22f * chance (&tie, 1);
      tie.far = edge_from (&tie, middle, -1, run / 2 - tie.radius);
      tie.near = edge_from (&tie, middle, 1, run / 2 - tie.radius);
      lay_span (&tie);
      lay_knot (&tie);
    }
}
