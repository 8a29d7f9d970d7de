/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-skin.h"

#include "draw/sw-unit.h"

#include <math.h>

typedef struct
{
  const SwSkinView *view;
  float per_cm; /* samples */
  SwSkinSample *samples;
} Sheet;

/* A corner in samples. */
typedef struct
{
  float x, y, z, u, v;
} Corner;

static Corner
corner_at (const Sheet *sheet, const float *point, float u, float v)
{
  return (Corner){ (point[0] - sheet->view->left) * sheet->per_cm, (point[1] - sheet->view->top) * sheet->per_cm, point[2], u, v };
}

/* Twice the area, positive when clockwise as seen: the outside of the skin. */
static float
area (const Corner *a, const Corner *b, const Corner *c)
{
  return (b->x - a->x) * (c->y - a->y) - (c->x - a->x) * (b->y - a->y);
}

/* Narrows the samples of a row, @first to @last, to those on the inner side of an edge, give or take one. */
static void
narrow (const Corner *from, const Corner *to, float y, int *first, int *last)
{
  const float slope = from->y - to->y, at = (to->x - from->x) * (y - from->y) + from->x * (to->y - from->y);
  const float x = -at / slope;

  /* An edge that is level, or nearly, cuts no row short. */
  if (fabsf (slope) < 1e-6f || fabsf (x) > 1e6f)
    return;
  if (slope > 0)
    *first = MAX (*first, (int) x - 1);
  else
    *last = MIN (*last, (int) x + 1);
}

static void
fill (const Sheet *sheet, const Corner *a, const Corner *b, const Corner *c, int patch)
{
  const float whole = area (a, b, c), nearest = MAX (a->z, MAX (b->z, c->z));
  const int left = MAX ((int) ceilf (MIN (a->x, MIN (b->x, c->x))), 0), right = MIN ((int) floorf (MAX (a->x, MAX (b->x, c->x))), sheet->view->width - 1);
  const int top = MAX ((int) ceilf (MIN (a->y, MIN (b->y, c->y))), 0), bottom = MIN ((int) floorf (MAX (a->y, MAX (b->y, c->y))), sheet->view->height - 1);

  if (whole <= 0)
    return;
  for (int j = top; j <= bottom; j++)
    {
      int first = left, last = right;

      narrow (a, b, (float) j, &first, &last);
      narrow (b, c, (float) j, &first, &last);
      narrow (c, a, (float) j, &first, &last);
      for (int i = first; i <= last; i++)
        {
          const Corner at = { .x = (float) i, .y = (float) j };
          SwSkinSample *sample = &sheet->samples[(gsize) j * (gsize) sheet->view->width + (gsize) i];
          float wa, wb, wc, z;

          if (sample->patch >= 0 && sample->z >= nearest)
            continue;
          wa = area (b, c, &at);
          wb = area (c, a, &at);
          wc = area (a, b, &at);
          if (wa < 0 || wb < 0 || wc < 0)
            continue;
          z = (wa * a->z + wb * b->z + wc * c->z) / whole;
          if (sample->patch >= 0 && sample->z >= z)
            continue;
          *sample = (SwSkinSample){ z, patch, (wa * a->u + wb * b->u + wc * c->u) / whole, (wa * a->v + wb * b->v + wc * c->v) / whole };
        }
    }
}

static gboolean
beside (const Sheet *sheet, const Corner *corners)
{
  const float left = MIN (MIN (corners[0].x, corners[1].x), MIN (corners[2].x, corners[3].x));
  const float right = MAX (MAX (corners[0].x, corners[1].x), MAX (corners[2].x, corners[3].x));
  const float top = MIN (MIN (corners[0].y, corners[1].y), MIN (corners[2].y, corners[3].y));
  const float bottom = MAX (MAX (corners[0].y, corners[1].y), MAX (corners[2].y, corners[3].y));

  return right < 0 || bottom < 0 || left > (float) sheet->view->width || top > (float) sheet->view->height;
}

/* Whether nothing of the patches between a ring and the next is in the view. */
static gboolean
ring_beside (const SwBundle *bundle, gsize ring, const SwSkinView *view)
{
  const float *box = bundle->boxes + 4 * ring;

  return bundle->boxes != NULL && (box[2] < view->left || box[3] < view->top || box[0] > view->left + view->step * (float) view->width || box[1] > view->top + view->step * (float) view->height);
}

void
sw_skin_clear (const SwSkinView *view, SwSkinSample *samples)
{
  for (gsize i = 0; i < (gsize) view->width * (gsize) view->height; i++)
    samples[i].patch = -1;
}

void
sw_skin_raster (const SwBundle *bundle, int first, const SwSkinView *view, SwSkinSample *samples)
{
  const Sheet sheet = { view, 1 / view->step, samples };
  const gsize columns = (gsize) bundle->n_around + 1;

  for (gsize i = 0; i + 1 < (gsize) bundle->n_rings; i++)
    for (gsize j = ring_beside (bundle, i, view) ? columns : 0; j + 1 < columns; j++)
      {
        const float *p = bundle->points + (i * columns + j) * 3, *q = p + columns * 3;
        const Corner corners[4] = { corner_at (&sheet, p, 0, 0), corner_at (&sheet, p + 3, 1, 0), corner_at (&sheet, q, 0, 1), corner_at (&sheet, q + 3, 1, 1) };
        const int patch = first + (int) (i * (columns - 1) + j);

        if (beside (&sheet, corners))
          continue;
        fill (&sheet, &corners[0], &corners[1], &corners[3], patch);
        fill (&sheet, &corners[0], &corners[3], &corners[2], patch);
      }
}

void
sw_skin_normal (const SwBundle *bundle, const SwSkinSample *sample, float *normal, float *course)
{
  const gsize columns = (gsize) bundle->n_around + 1;
  const gsize at = (gsize) (sample->patch / bundle->n_around) * columns + (gsize) (sample->patch % bundle->n_around);
  const float *p = bundle->normals + at * 3, *q = p + columns * 3, *point = bundle->points + at * 3;

  for (int k = 0; k < 3; k++)
    normal[k] = (p[k] + (p[3 + k] - p[k]) * sample->u) * (1 - sample->v) + (q[k] + (q[3 + k] - q[k]) * sample->u) * sample->v;
  sw_unit (normal);
  if (course == NULL)
    return;
  for (int k = 0; k < 3; k++)
    course[k] = point[columns * 3 + (gsize) k] - point[k];
  sw_unit (course);
}
