/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-loop.h"

#include <math.h>

/* a, in wale spacings: the legs stand well apart in the head and close together in the foot, as in relaxed cloth. By eye; theirs is free from 2 on. */
#define FULLNESS 4.7

static double
smooth (double t)
{
  t = CLAMP (t, 0, 1);
  return t * t * (3 - 2 * t);
}

static double
across (double a, double t)
{
  return ((a * t - 1.5 * a) * t + 0.5 * (a + 1)) * t;
}

/* How far through the fabric a loop goes: strands touch where foot and head cross. */
static double
depth_for (double a, double row, double half, double diameter)
{
  double last = 0;

  for (int i = 1; i < 100; i++)
    {
      const double low = 0.005 * i, from = cos (G_PI * low) - row / half;
      const double high = from > -1 ? acos (from) / G_PI : 1, gap = across (a, high) - across (a, low);

      if (i > 1 && (gap < 0) != (last < 0))
        {
          const double apart = cos (2 * G_PI * low) - cos (2 * G_PI * high);

          return CLAMP (2 * diameter / MAX (fabs (apart), 0.1), 0.6 * diameter, 0.85 * diameter);
        }
      last = gap;
    }
  return diameter;
}

double
sw_loop_length (const SwLoop *loop)
{
  double sum = 0, x = 0, y = 0, z = 0;

  for (int i = 0; i <= 64; i++)
    {
      const double t = i / 64.0;
      const double to_x = across ((double) loop->fullness, t), to_y = (double) loop->half * (1 - cos (G_PI * t));
      const double to_z = 0.5 * (double) loop->depth * (1 - cos (2 * G_PI * t));

      if (i > 0)
        sum += sqrt ((to_x - x) * (to_x - x) + (to_y - y) * (to_y - y) + (to_z - z) * (to_z - z));
      x = to_x;
      y = to_y;
      z = to_z;
    }
  return 2 * sum;
}

void
sw_loop_init (SwLoop *loop, double row, double length, double diameter)
{
  double low = 0.5 * row + 0.1 * diameter, high = 0.5 * row + 0.8;

  g_return_if_fail (row > 0 && diameter > 0);
  for (int i = 0; i < 24; i++)
    {
      const double half = (low + high) / 2;

      *loop = (SwLoop){ (float) row, (float) FULLNESS, (float) half, (float) depth_for (FULLNESS, row, half, diameter), (float) (diameter / 2) };
      if (sw_loop_length (loop) < length)
        low = half;
      else
        high = half;
    }
}

/* Which side the strand is on: by the stitch's own pull below, by that of the stitch above in the head, midway to a neighbour that differs. */
static double
side_at (const SwLoopSides *sides, gboolean right, double t)
{
  const double own = (double) sides->own, beside = (own + (double) (right ? sides->right : sides->left)) / 2;

  if (t < 0.3)
    return beside + (own - beside) * smooth (t / 0.25);
  return own + ((double) sides->above - own) * smooth ((t - 0.36) / 0.28);
}

/*
 * Between purl wales a knit one comes to the front and spreads, and they draw
 * back and narrow: by this share of a wale, and so far through the cloth, in
 * radii. Off the needles rib draws together until the knit wales touch. The
 * strand fills out where its wale has room. By eye.
 */
#define RIB_SPREAD 0.52
#define RIB_LIFT 2.6
#define RIB_FULL 0.3

static double
rib_side (const SwLoopSides *sides)
{
  const gboolean in_rib = sides->left == sides->right && sides->left != sides->own && sides->above == sides->own;

  return in_rib ? (double) sides->own : 0;
}

/* A soft strand is pressed flat in head and sinker, where the one two rows off comes near it on the same side; a share of the radius. */
static double
pressed (const SwLoop *loop, const SwLoopSides *sides)
{
  if (sides->above != sides->own)
    return 1;
  return CLAMP (1.1 * (double) ((loop->row - loop->half) / loop->radius), 0.7, 1);
}

/* Where a stitch leads from one side of the cloth to the other, it stands out farther: nothing holds it flat. */
#define SWING 1.35

static void
measure_places (SwTubePoint *points)
{
  float sum = 0;

  points[0].place = 0;
  for (int i = 1; i < SW_LOOP_POINTS; i++)
    {
      const float dx = points[i].x - points[i - 1].x, dy = points[i].y - points[i - 1].y, dz = points[i].z - points[i - 1].z;

      sum += sqrtf (dx * dx + dy * dy + dz * dz);
      points[i].place = sum;
    }
  for (int i = 1; i < SW_LOOP_POINTS; i++)
    points[i].place /= sum;
}

void
sw_loop_trace (const SwLoop *loop, const SwLoopSides *sides, const SwLoopWander *wander, int column, int row, SwTubePoint *points)
{
  const double a = (double) loop->fullness, half = (double) loop->half, rib = rib_side (sides), spread = RIB_SPREAD * rib;
  const double press = pressed (loop, sides), swing = sides->above != sides->own ? SWING : 1;

  for (int i = 0; i < SW_LOOP_POINTS; i++)
    {
      const double q = (double) i / (SW_LOOP_POINTS - 1);
      const gboolean right = q > 0.5;
      const double t = right ? 2 - 2 * q : 2 * q, free = smooth (t / 0.5), lift = smooth (t / 0.3); /* sinkers stay where the neighbours meet them */
      const double leg = sin (G_PI * t), out = 0.5 - across (a, t) + free * (leg * (double) wander->bow[right] + 0.25 * (double) wander->wide);
      const double x = (right ? out : -out) * (1 + spread) + free * (double) wander->lean * t;
      const double y = (double) loop->row / 2 - half * cos (G_PI * t) + free * (double) wander->tall * half * t;

      points[i].x = (float) (x + column);
      points[i].y = (float) (y + row * (double) loop->row);
      points[i].z = (float) (-0.5 * swing * (double) loop->depth * cos (2 * G_PI * t) * side_at (sides, right, t) + RIB_LIFT * rib * lift * (double) loop->radius);
      points[i].radius = loop->radius * (float) ((press + (1 - press) * smooth (leg / 0.8)) * (1 + RIB_FULL * MAX (rib, 0) * free));
    }
  measure_places (points);
}
