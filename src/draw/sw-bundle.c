/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-bundle.h"

#include "draw/sw-grain.h"
#include "draw/sw-unit.h"

#include <math.h>

/* Strands hold together in locks: so many round a bundle, and so far along it before they change, cm. */
static const struct
{
  float round, along, share;
} locks[] = { { 9, 3.1f, 0.55f }, { 21, 1.9f, 0.45f } };

static void
cross (const float *a, const float *b, float *c)
{
  c[0] = a[1] * b[2] - a[2] * b[1];
  c[1] = a[2] * b[0] - a[0] * b[2];
  c[2] = a[0] * b[1] - a[1] * b[0];
}

static float
dot (const float *a, const float *b)
{
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

static void
course_at (const SwBundleRing *rings, int n, int i, float *course)
{
  const SwBundleRing *from = &rings[MAX (i - 1, 0)], *to = &rings[MIN (i + 1, n - 1)];

  course[0] = to->x - from->x;
  course[1] = to->y - from->y;
  course[2] = to->z - from->z;
  sw_unit (course);
}

/* How far a lock stands off at a place, -1 .. 1. */
static float
lock_at (const SwGrain *grain, float round, float along)
{
  float off = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (locks); i++)
    off += locks[i].share * sw_grain_cloud (grain, round * locks[i].round, (int) locks[i].round, along / locks[i].along + 11 * (float) i);
  return off;
}

/* One ring of the skin about @ring, its first column along @side. */
static void
place_ring (SwBundle *bundle, const SwBundleRing *ring, int i, const float *side, const float *course, float angle, float uneven, const SwGrain *grain)
{
  const float push[3] = { ring->push_x, ring->push_y, ring->push_z };
  float up[3];

  cross (course, side, up);
  for (int j = 0; j <= bundle->n_around; j++)
    {
      const float round = (float) (j % bundle->n_around) / (float) bundle->n_around;
      const float a = 2 * (float) G_PI * round + angle, c = cosf (a), s = sinf (a);
      const float bump = 1 + uneven * lock_at (grain, round, bundle->along[i]);
      float out[3], pushed;
      float *point = bundle->points + ((gsize) i * (gsize) (bundle->n_around + 1) + (gsize) j) * 3;

      for (int k = 0; k < 3; k++)
        out[k] = c * side[k] + s * up[k];
      pushed = dot (out, push);
      for (int k = 0; k < 3; k++)
        out[k] = out[k] * (1 + ring->squash) - 2 * ring->squash * pushed * push[k];
      point[0] = ring->x + ring->radius * bump * out[0];
      point[1] = ring->y + ring->radius * bump * out[1];
      point[2] = ring->z + ring->radius * bump * out[2];
    }
}

static void
find_normals (SwBundle *bundle)
{
  const int columns = bundle->n_around + 1;

  for (int i = 0; i < bundle->n_rings; i++)
    for (int j = 0; j < columns; j++)
      {
        const float *from = bundle->points + ((gsize) MAX (i - 1, 0) * (gsize) columns + (gsize) j) * 3;
        const float *to = bundle->points + ((gsize) MIN (i + 1, bundle->n_rings - 1) * (gsize) columns + (gsize) j) * 3;
        const gsize row = (gsize) i * (gsize) columns;
        const float *left = bundle->points + (row + (gsize) ((j + bundle->n_around - 1) % bundle->n_around)) * 3;
        const float *right = bundle->points + (row + (gsize) ((j + 1) % bundle->n_around)) * 3;
        const float on[3] = { to[0] - from[0], to[1] - from[1], to[2] - from[2] };
        const float over[3] = { right[0] - left[0], right[1] - left[1], right[2] - left[2] };
        float *normal = bundle->normals + (row + (gsize) j) * 3;

        cross (over, on, normal);
        sw_unit (normal);
      }
}

static void
measure (SwBundle *bundle, const SwBundleRing *rings)
{
  bundle->along[0] = 0;
  for (int i = 1; i < bundle->n_rings; i++)
    {
      const float dx = rings[i].x - rings[i - 1].x, dy = rings[i].y - rings[i - 1].y, dz = rings[i].z - rings[i - 1].z;

      bundle->along[i] = bundle->along[i - 1] + sqrtf (dx * dx + dy * dy + dz * dz);
    }
}

/* The frame goes along without turning about the path, so that all turning is the strands' own. */
void
sw_bundle_init (SwBundle *bundle, const SwBundleRing *rings, int n_rings, int n_around, double turns, double uneven, guint64 seed)
{
  const gsize n = (gsize) n_rings * (gsize) (n_around + 1);
  g_autofree SwGrain *grain = sw_grain_new (seed);
  float side[3] = { 0, 0, 1 };
  float length;

  g_return_if_fail (n_rings >= 3 && n_around >= 3);

  *bundle = (SwBundle){ n_rings, n_around, g_new (float, 3 * n), g_new (float, 3 * n), g_new (float, n_rings), NULL };
  measure (bundle, rings);
  length = bundle->along[n_rings - 1];
  for (int i = 0; i < n_rings; i++)
    {
      float course[3], along;

      course_at (rings, n_rings, i, course);
      along = dot (side, course);
      for (int k = 0; k < 3; k++)
        side[k] -= along * course[k];
      sw_unit (side);
      place_ring (bundle, &rings[i], i, side, course, (float) (2 * G_PI * turns) * bundle->along[i] / length, (float) uneven, grain);
    }
  find_normals (bundle);
}

void
sw_bundle_clear (SwBundle *bundle)
{
  g_free (bundle->points);
  g_free (bundle->normals);
  g_free (bundle->along);
  g_free (bundle->boxes);
}

void
sw_bundle_middle (const SwBundle *bundle, int ring, float *middle)
{
  const float *points = bundle->points + 3 * (gsize) ring * (gsize) (bundle->n_around + 1);

  for (int k = 0; k < 3; k++)
    {
      middle[k] = 0;
      for (int j = 0; j < bundle->n_around; j++)
        middle[k] += points[3 * j + k] / (float) bundle->n_around;
    }
}

/* Towards the rings' middles: where the path bends closely the skin's normals go astray. */
void
sw_bundle_shrunk (const SwBundle *bundle, double deep, SwBundle *shrunk)
{
  const gsize n = (gsize) bundle->n_rings * (gsize) (bundle->n_around + 1);

  *shrunk = (SwBundle){ bundle->n_rings, bundle->n_around, g_memdup2 (bundle->points, 3 * n * sizeof (float)), g_memdup2 (bundle->normals, 3 * n * sizeof (float)), g_memdup2 (bundle->along, (gsize) bundle->n_rings * sizeof (float)), NULL };
  for (int i = 0; i < bundle->n_rings; i++)
    {
      float *point = shrunk->points + 3 * (gsize) i * (gsize) (bundle->n_around + 1);
      float middle[3];

      sw_bundle_middle (bundle, i, middle);
      for (int j = 0; j <= bundle->n_around; j++, point += 3)
        {
          const float out[3] = { point[0] - middle[0], point[1] - middle[1], point[2] - middle[2] };
          const float kept = 1 - MIN ((float) deep / MAX (sqrtf (dot (out, out)), 1e-6f), 1);

          for (int k = 0; k < 3; k++)
            point[k] = middle[k] + kept * out[k];
        }
    }
}

static void
turn (float *v, float c, float s)
{
  const float x = v[0];

  v[0] = c * x - s * v[1];
  v[1] = s * x + c * v[1];
}

void
sw_bundle_turn (SwBundle *bundle, double angle)
{
  const gsize n = (gsize) bundle->n_rings * (gsize) (bundle->n_around + 1);
  const float c = (float) cos (angle), s = (float) sin (angle);

  for (gsize i = 0; i < n; i++)
    {
      turn (bundle->points + 3 * i, c, s);
      turn (bundle->normals + 3 * i, c, s);
    }
}

void
sw_bundle_find_boxes (SwBundle *bundle)
{
  const gsize columns = (gsize) bundle->n_around + 1;

  bundle->boxes = g_new (float, 4 * (gsize) (bundle->n_rings - 1));
  for (gsize i = 0; i + 1 < (gsize) bundle->n_rings; i++)
    {
      const float *points = bundle->points + 3 * i * columns;
      float *box = bundle->boxes + 4 * i;

      box[0] = box[1] = INFINITY;
      box[2] = box[3] = -INFINITY;
      for (gsize j = 0; j < 2 * columns; j++)
        for (gsize k = 0; k < 2; k++)
          {
            box[k] = MIN (box[k], points[3 * j + k]);
            box[2 + k] = MAX (box[2 + k], points[3 * j + k]);
          }
    }
}

void
sw_bundle_extents (const SwBundle *bundle, float *least, float *most)
{
  const gsize n = (gsize) bundle->n_rings * (gsize) (bundle->n_around + 1);

  for (int k = 0; k < 3; k++)
    least[k] = most[k] = bundle->points[k];
  for (gsize i = 0; i < 3 * n; i++)
    {
      least[i % 3] = MIN (least[i % 3], bundle->points[i]);
      most[i % 3] = MAX (most[i % 3], bundle->points[i]);
    }
}
