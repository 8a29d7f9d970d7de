/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-hank-strands.h"

#include "draw/sw-grain.h"
#include "draw/sw-unit.h"

#include <math.h>
#include <string.h>

/* Lengths across are in strand widths. */
#define HALF_WIDTH 0.62f
#define WANDER 0.34f
#define WANDER_CM 3.4f
#define HEAVE 0.46f
#define HEAVE_CM 3.0f
#define SINK 1.15f /* of one that dives ... */
#define BENEATH 0.45f /* ... how far it goes beneath a neighbour ... */
#define CLOSING 0.62f /* ... how far that one comes over it ... */
#define FOLLOWING 0.30f /* ... and the other one after it */

/* Strands that leave the bundle and come back: of all, so many to each stretch of the rope; how far and for how long, cm. */
#define STRAY 0.17f
#define STRAY_EVERY_CM 9.0f
#define STRAY_OFF 1.7f
#define STRAY_ASIDE 1.5f
#define STRAY_CM 3.0f
#define HELD_CM 1.2f /* they are free again so far beside what holds them */

/* The far side of the bundle, whose strands are not seen: the skin's normal towards the eye. */
#define FAR_SIDE -0.45f

/* Fibres stand over a strand's edge so far, half widths; so many to a cm of it. */
#define FRAYED 0.17f
#define FRAYS_TO_CM 110.0f

static float
even (guint64 address, guint64 part)
{
  return (float) sw_chance_even (sw_chance_mix (address, part));
}

/* How far a strand has left the bundle: outwards and aside. */
static void
stray_at (guint64 seed, int strand, float along, float *off, float *aside)
{
  const int stretch = (int) (along / STRAY_EVERY_CM);
  const guint64 address = sw_chance_mix (sw_chance_mix (sw_chance_mix (seed, 0x7374726179), (guint64) strand), (guint64) stretch);
  const float length = STRAY_CM * (0.5f + 1.5f * even (address, 1)), from = even (address, 2) * (STRAY_EVERY_CM - length);
  const float t = (along - STRAY_EVERY_CM * (float) stretch - from) / length, s = t * (1 - t);
  const float far = t > 0 && t < 1 && even (address, 3) < STRAY ? 16 * s * s : 0;

  *off = far * STRAY_OFF * (0.25f + 0.75f * even (address, 4));
  *aside = far * STRAY_ASIDE * (2 * even (address, 5) - 1);
}

/* Where the strands are at one ring before they are placed in space: across the strands, and up. */
typedef struct
{
  float *round, *lift;
} Lie;

/* How free strands are at a ring: 0 where they are held. */
static float
freedom_at (const SwBundle *bundle, const SwHankHold *hold, int ring)
{
  const float *p = bundle->points + 3 * (gsize) ring * (gsize) (bundle->n_around + 1), *opposite = p + 3 * (bundle->n_around / 2);
  const float at = 0.5f * ((p[0] + opposite[0]) * hold->axis[0] + (p[1] + opposite[1]) * hold->axis[1]);
  const float off = MAX (hold->from - at, at - hold->to);

  return hold->to > hold->from ? CLAMP (off / HELD_CM - 0.3f, 0, 1) : 1;
}

/* How far a strand comes towards a neighbour that dives: beneath it, where @sunk is positive, or beneath the next. */
static float
covering (float sunk)
{
  return sunk > 0 ? CLOSING * sunk : -FOLLOWING * sunk;
}

static void
find_lie (const SwBundle *bundle, const SwHankYarn *yarn, const SwGrain *grain, float freedom, guint64 seed, int ring, const Lie *lie)
{
  const float along = bundle->along[ring];
  const int place = MIN ((int) (along / bundle->along[bundle->n_rings - 1] * SW_HANK_PLACES), SW_HANK_PLACES - 1), n = yarn->n;

  for (int k = 0; k < n; k++)
    {
      const float *sunk = yarn->sunk + place;
      const float own = sunk[(gsize) k * SW_HANK_PLACES], before = sunk[(gsize) ((k + n - 1) % n) * SW_HANK_PLACES], after = sunk[(gsize) ((k + 1) % n) * SW_HANK_PLACES];
      float off, aside;

      stray_at (seed, k, along, &off, &aside);
      lie->round[k] = (float) k + 0.5f + WANDER * sw_grain_tone (grain, 2 * k, along / WANDER_CM + 7.3f * (float) (k & 255)) + BENEATH * own + covering (-after) - covering (before) + freedom * aside;
      lie->lift[k] = HEAVE * sw_grain_tone (grain, 2 * k + 1, along / HEAVE_CM + 3.1f * (float) (k & 255)) - SINK * fabsf (own) + freedom * off;
    }
}

/* How closely something stands over strand @k on the side of @way: 1 or -1. */
static float
over_at (const Lie *lie, int n, int k, int way)
{
  float most = 0;

  for (int far = 1; far <= 4; far++)
    for (int back = -1; back <= 1; back += 2)
      {
        const int other = (k + back * way * far + 4 * n) % n;
        float apart = (lie->round[other] - lie->round[k]) * (float) way;
        float close;

        apart -= apart > (float) n / 2 ? (float) n : 0;
        apart += apart < (float) -n / 2 ? (float) n : 0;
        if (apart < 0 || apart > 2)
          continue;
        close = CLAMP (2 - apart, 0, 1) * CLAMP (0.62f + 0.9f * (lie->lift[other] - lie->lift[k]), 0, 1);
        most = MAX (most, close);
      }
  return most;
}

static void
place_knot (const SwBundle *bundle, int ring, const float *core, float round, float lift, int n, float strand_cm, SwStrandKnot *knot)
{
  const gsize row = (gsize) ring * (gsize) (bundle->n_around + 1);
  const float turned = round / (float) n, at = (turned - floorf (turned)) * (float) bundle->n_around;
  const int column = MIN ((int) at, bundle->n_around - 1);
  const float t = at - (float) column;
  const float *p = bundle->points + (row + (gsize) column) * 3, *m = bundle->normals + (row + (gsize) column) * 3;
  const float wide = sqrtf ((p[3] - p[0]) * (p[3] - p[0]) + (p[4] - p[1]) * (p[4] - p[1]) + (p[5] - p[2]) * (p[5] - p[2])) * (float) bundle->n_around / (float) n;
  const float room = CLAMP (wide, 0.55f * strand_cm, 1.25f * strand_cm);
  float middle[3], off, out = 0;

  knot->half = HALF_WIDTH * room;
  off = lift * room - knot->half;
  for (int i = 0; i < 3; i++)
    knot->normal[i] = m[i] + (m[3 + i] - m[i]) * t;
  sw_unit (knot->normal);
  for (int i = 0; i < 3; i++)
    {
      middle[i] = p[i] + (p[3 + i] - p[i]) * t;
      out += (middle[i] - core[i]) * knot->normal[i];
      middle[i] += off * knot->normal[i];
    }
  knot->x = middle[0];
  knot->y = middle[1];
  knot->z = middle[2];
  knot->lift = lift;
  /* Where the bundle bends too closely its skin is inside out: nothing of that is seen. */
  if (out <= 0)
    memcpy (knot->normal, (float[]){ 0, 0, -1 }, sizeof knot->normal);
}

static void
find_courses (SwHankStrands *strands)
{
  for (int k = 0; k < strands->n; k++)
    for (int i = 0; i < strands->n_rings; i++)
      {
        SwStrandKnot *row = strands->knots + (gsize) k * (gsize) strands->n_rings;
        const SwStrandKnot *from = &row[MAX (i - 1, 0)], *to = &row[MIN (i + 1, strands->n_rings - 1)];
        float *course = row[i].course;

        course[0] = to->x - from->x;
        course[1] = to->y - from->y;
        course[2] = to->z - from->z;
        sw_unit (course);
      }
}

static void
find_boxes (SwHankStrands *strands)
{
  for (int k = 0; k < strands->n; k++)
    for (int b = 0; b < strands->n_boxes; b++)
      {
        float *box = strands->boxes + 4 * ((gsize) k * (gsize) strands->n_boxes + (gsize) b);
        const int last = MIN ((b + 1) * SW_STRAND_STRETCH, strands->n_rings - 1);

        box[0] = box[1] = INFINITY;
        box[2] = box[3] = -INFINITY;
        for (int i = b * SW_STRAND_STRETCH; i <= last; i++)
          {
            const SwStrandKnot *knot = &strands->knots[(gsize) k * (gsize) strands->n_rings + (gsize) i];
            const float half = knot->half * (1 + FRAYED);

            if (knot->normal[2] < FAR_SIDE)
              continue;
            box[0] = MIN (box[0], knot->x - half);
            box[1] = MIN (box[1], knot->y - half);
            box[2] = MAX (box[2], knot->x + half);
            box[3] = MAX (box[3], knot->y + half);
          }
      }
}

void
sw_hank_strands_init (SwHankStrands *strands, const SwBundle *bundle, const SwHankYarn *yarn, const SwGrain *grain, const SwHankHold *hold, double strand_cm, guint64 seed)
{
  const int n = yarn->n, n_boxes = (bundle->n_rings - 2) / SW_STRAND_STRETCH + 1;
  g_autofree float *lies = g_new (float, 2 * n);
  const Lie lie = { lies, lies + n };

  *strands = (SwHankStrands){ n, bundle->n_rings, n_boxes, g_new (SwStrandKnot, (gsize) n * (gsize) bundle->n_rings), bundle->along, g_new (float, 4 * (gsize) n * (gsize) n_boxes) };
  for (int i = 0; i < bundle->n_rings; i++)
    {
      float core[3];

      sw_bundle_middle (bundle, i, core);
      find_lie (bundle, yarn, grain, freedom_at (bundle, hold, i), seed, i, &lie);
      for (int k = 0; k < n; k++)
        {
          SwStrandKnot *knot = &strands->knots[(gsize) k * (gsize) bundle->n_rings + (gsize) i];

          place_knot (bundle, i, core, lie.round[k], lie.lift[k], n, (float) strand_cm, knot);
          knot->over[0] = over_at (&lie, n, k, -1);
          knot->over[1] = over_at (&lie, n, k, 1);
        }
    }
  find_courses (strands);
  find_boxes (strands);
}

void
sw_hank_strands_clear (SwHankStrands *strands)
{
  g_free (strands->knots);
  g_free (strands->boxes);
}

void
sw_hank_strands_extents (const SwHankStrands *strands, float *box)
{
  box[0] = box[1] = INFINITY;
  box[2] = box[3] = -INFINITY;
  for (gsize i = 0; i < (gsize) strands->n * (gsize) strands->n_boxes; i++)
    for (int k = 0; k < 2; k++)
      {
        box[k] = MIN (box[k], strands->boxes[4 * i + (gsize) k]);
        box[2 + k] = MAX (box[2 + k], strands->boxes[4 * i + 2 + (gsize) k]);
      }
}

/* How much of the fibres at the edges is told apart: beneath a pixel they are only a soft edge. */
static float
frayed_in (const SwSkinView *view)
{
  const float t = CLAMP ((1 / (view->step * FRAYS_TO_CM) - 1.2f) / 6, 0, 1);

  return FRAYED * (0.35f + 0.65f * t);
}

/* How far out a strand reaches at a place of its edge, half widths: as single fibres have it. */
static float
edge_at (const SwGrain *grain, int strand, float across, float along_cm, float frayed)
{
  const int row = 4 * strand + (across > 0 ? 2 : 0) + 37;
  const float at = along_cm * FRAYS_TO_CM;

  return 1 + frayed * (0.6f * sw_grain_tone (grain, row, at + 2.0f * across) + 0.4f * sw_grain_tone (grain, row + 1, 2.3f * at));
}

/* Short pieces are drawn several at once: so many samples, and so many pieces at most. */
#define PIECE_SAMPLES 12
#define MOST_AT_ONCE 4

static int
pieces_at_once (const SwHankStrands *strands, const SwSkinView *view)
{
  const float length = strands->along[strands->n_rings - 1] / (float) (strands->n_rings - 1) / view->step;
  int n = 1;

  while (n < MOST_AT_ONCE && 2 * (float) n * length <= PIECE_SAMPLES)
    n *= 2;
  return n;
}

/* An end of a piece of strand, in samples: its middle and the way to its left edge. */
typedef struct
{
  float x, y, z, dx, dy, high;
} End;

static End
end_at (const SwSkinView *view, const SwStrandKnot *knot)
{
  const float per_cm = 1 / view->step, flat = sqrtf (MAX (knot->course[0] * knot->course[0] + knot->course[1] * knot->course[1], 1e-6f));

  return (End){ (knot->x - view->left) * per_cm, (knot->y - view->top) * per_cm, knot->z, knot->course[1] / flat * knot->half * per_cm, -knot->course[0] / flat * knot->half * per_cm, knot->half };
}

typedef struct
{
  const SwSkinView *view;
  const SwGrain *grain;
  SwSkinSample *samples;
  int strand, patch, at_once;
  float frayed;
  float along_cm, length_cm; /* of the piece from the strand's beginning, and on to its end */
} Piece;

/* A corner: place, and across and along the piece. */
typedef struct
{
  float x, y, s, t;
} Corner;

static void
put (const Piece *piece, const End *a, const End *b, int i, int j, float s, float t)
{
  SwSkinSample *sample = &piece->samples[(gsize) j * (gsize) piece->view->width + (gsize) i];
  const float rise = 1 - s * s, high = a->high + (b->high - a->high) * t, axis = a->z + (b->z - a->z) * t;
  float z, rings;
  int ring;

  if (sample->patch >= 0 && sample->z >= axis + high)
    return;
  z = axis + (rise > 0 ? high * sqrtf (rise) : 0);
  if (sample->patch >= 0 && sample->z >= z)
    return;
  if (fabsf (s) > 1 - piece->frayed && fabsf (s) > edge_at (piece->grain, piece->strand, s, piece->along_cm + t * piece->length_cm, piece->frayed))
    return;
  rings = t * (float) piece->at_once;
  ring = MIN ((int) rings, piece->at_once - 1);
  *sample = (SwSkinSample){ z, piece->patch + ring, CLAMP (s, -1, 1), rings - (float) ring };
}

/* One triangle, row by row. */
static void
fill (const Piece *piece, const End *from, const End *to, const Corner *a, const Corner *b, const Corner *c)
{
  const float whole = (b->x - a->x) * (c->y - a->y) - (c->x - a->x) * (b->y - a->y);
  const float low = MIN (a->y, MIN (b->y, c->y)), high = MAX (a->y, MAX (b->y, c->y));
  const int top = MAX ((int) ceilf (low), 0), bottom = MIN ((int) floorf (high), piece->view->height - 1);
  const Corner *const corners[4] = { a, b, c, a };
  float s_x, t_x, s_y, t_y;

  if (fabsf (whole) < 1e-9f)
    return;
  s_x = ((b->s - a->s) * (c->y - a->y) - (c->s - a->s) * (b->y - a->y)) / whole;
  t_x = ((b->t - a->t) * (c->y - a->y) - (c->t - a->t) * (b->y - a->y)) / whole;
  s_y = ((c->s - a->s) * (b->x - a->x) - (b->s - a->s) * (c->x - a->x)) / whole;
  t_y = ((c->t - a->t) * (b->x - a->x) - (b->t - a->t) * (c->x - a->x)) / whole;
  for (int j = top; j <= bottom; j++)
    {
      const float y = (float) j;
      float left = INFINITY, right = -INFINITY, s, t;
      int first, last;

      for (int k = 0; k < 3; k++)
        {
          const Corner *p = corners[k], *q = corners[k + 1];
          float x;

          if (MAX (p->y, q->y) < y || MIN (p->y, q->y) > y || p->y == q->y)
            continue;
          x = p->x + (q->x - p->x) * (y - p->y) / (q->y - p->y);
          left = MIN (left, x);
          right = MAX (right, x);
        }
      first = MAX ((int) ceilf (MAX (left, -1.0f)), 0);
      last = (int) floorf (MIN (right, (float) (piece->view->width - 1)));
      s = a->s + s_x * ((float) first - a->x) + s_y * (y - a->y);
      t = a->t + t_x * ((float) first - a->x) + t_y * (y - a->y);
      for (int i = first; i <= last; i++, s += s_x, t += t_x)
        put (piece, from, to, i, j, s, CLAMP (t, 0, 1));
    }
}

static gboolean
beside (const SwSkinView *view, const float *box)
{
  return box[2] < view->left || box[3] < view->top || box[0] > view->left + view->step * (float) view->width || box[1] > view->top + view->step * (float) view->height;
}

/* Where the bundle bends inwards more closely than it is thick, a strand would turn back: there it has gone from sight. */
static gboolean
is_kinked (const SwStrandKnot *from, const SwStrandKnot *to)
{
  const float *a = from->course, *b = to->course;

  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2] < 0.6f;
}

static void
raster_piece (Piece *piece, const SwStrandKnot *from, const SwStrandKnot *to)
{
  const float out = 1 + piece->frayed;
  const End a = end_at (piece->view, from), b = end_at (piece->view, to);
  const Corner corners[4] = {
    { a.x + out * a.dx, a.y + out * a.dy, out, 0 },
    { a.x - out * a.dx, a.y - out * a.dy, -out, 0 },
    { b.x + out * b.dx, b.y + out * b.dy, out, 1 },
    { b.x - out * b.dx, b.y - out * b.dy, -out, 1 },
  };

  fill (piece, &a, &b, &corners[0], &corners[1], &corners[3]);
  fill (piece, &a, &b, &corners[0], &corners[3], &corners[2]);
}

void
sw_hank_strands_raster (const SwHankStrands *strands, const SwGrain *grain, const SwSkinView *view, SwSkinSample *samples)
{
  const int at_once = pieces_at_once (strands, view);
  Piece piece = { .view = view, .grain = grain, .samples = samples, .frayed = frayed_in (view) };

  for (int k = 0; k < strands->n; k++)
    for (int b = 0; b < strands->n_boxes; b++)
      {
        const SwStrandKnot *row = strands->knots + (gsize) k * (gsize) strands->n_rings;
        const int last = MIN ((b + 1) * SW_STRAND_STRETCH, strands->n_rings - 1);

        if (beside (view, strands->boxes + 4 * ((gsize) k * (gsize) strands->n_boxes + (gsize) b)))
          continue;
        for (int i = b * SW_STRAND_STRETCH; i < last; i += at_once)
          {
            const int to = MIN (i + at_once, last);

            if (row[i].normal[2] < FAR_SIDE || row[to].normal[2] < FAR_SIDE || is_kinked (&row[i], &row[to]))
              continue;
            piece.strand = k;
            piece.patch = k * (strands->n_rings - 1) + i;
            piece.at_once = to - i;
            piece.along_cm = strands->along[i];
            piece.length_cm = strands->along[to] - strands->along[i];
            raster_piece (&piece, &row[i], &row[to]);
          }
      }
}
