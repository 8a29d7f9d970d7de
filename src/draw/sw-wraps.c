/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-wraps-private.h"

/* Layers of a flat bundle: the top one, and what shows between its wraps. */
#define LAYERS 2
#define LAYER_DOWN 0.62f /* from one to the next, in strands */
/* Beneath them a core of wraps in threes, side by side, lets no ground through. */
#define CORE 3.0f

/* Wraps stray sideways in locks, and each for itself. */
#define LOCK_CM 0.55f
#define LOCK_STRAY_CM 0.20f
#define LOCK_ALONG_CM 9.0f
#define WANDER 0.55f /* strands */
#define WANDER_CM 3.6f
#define KINK 0.22f /* strands */
#define KINK_CM 1.1f
#define HEAVE 0.36f /* strands */
#define HEAVE_CM 3.0f

/* Some lie over others, on a slant. */
#define ROVERS 0.10f
#define ROVER_CM 0.9f
#define ROVER_ALONG_CM 15.0f
#define ROVER_UP 0.55f /* strands */

/* The bundle keeps from the edge of its room. */
#define EDGE_CM 0.22f
#define UNEVEN 0.035f
#define NARROW 0.07f /* at the ends */
#define NARROW_CM 5.0f

#define PARTS 128 /* of a bundle's outline across */

void
sw_wraps_begin (SwWraps *wraps, float radius, int strands, guint32 seed, gboolean thread)
{
  const SwWrap wrap = { .first = wraps->points->len, .seed = seed, .radius = radius, .tone = 2 * sw_wraps_chance (seed, 9) - 1, .strands = strands, .thread = thread };

  g_array_append_val (wraps->wraps, wrap);
}

void
sw_wraps_add (SwWraps *wraps, float x, float y, float z)
{
  SwWrap *wrap = &g_array_index (wraps->wraps, SwWrap, wraps->wraps->len - 1);
  SwWrapPoint point = { x, y, z, 0, wraps->wraps->len - 1 };

  if (wrap->n++ > 0)
    {
      const SwWrapPoint *last = &g_array_index (wraps->points, SwWrapPoint, wraps->points->len - 1);

      point.along = last->along + hypotf (hypotf (x - last->x, y - last->y), z - last->z);
    }
  g_array_append_val (wraps->points, point);
}

void
sw_weaver_begin (SwWeaver *weaver, guint64 address, float wide)
{
  sw_wraps_begin (weaver->wraps, wide * weaver->strand * (0.54f + 0.05f * sw_wraps_chance (address, 8)), (int) wide, (guint32) address, FALSE);
}

void
sw_weaver_add (SwWeaver *weaver, float x, float y, float z)
{
  const float room = weaver->strand / 2;

  x = weaver->ring ? x : CLAMP (x, room, weaver->length - room);
  sw_wraps_add (weaver->wraps, x, weaver->width - CLAMP (y, room, weaver->width - room), MAX (z, room));
}

void
sw_weaver_dive (SwWeaver *weaver, const SwWrapDive *dive, SwWrapSpot spot, gboolean right, gboolean down)
{
  for (int k = 0; k <= SW_WRAPS_TURN; k++)
    {
      const float angle = (float) G_PI * 0.94f * (float) (down ? k : SW_WRAPS_TURN - k) / SW_WRAPS_TURN;
      const float from_end = dive->tip + dive->reach * (1 - sinf (angle)), sunk = (1 - cosf (angle)) / 2;

      sw_weaver_add (weaver, right ? weaver->length - from_end : from_end, spot.y + dive->aside * sunk, spot.z * (1 - sunk));
    }
}

/* A flat bundle, seen across: its upper half's outline. */
typedef struct
{
  float middle, half, fall; /* @fall: how far from the edge the top begins to slope */
  float places[PARTS + 1];  /* -1 .. 1 across, in even steps along the outline */
  float around;             /* length of the outline */
  int skein;
} Bundle;

static float
profile (const Bundle *bundle, float u)
{
  const float up = 1 - CLAMP ((1 - fabsf (u)) * bundle->half / bundle->fall, 0, 1);

  return sqrtf (MAX (1 - up * up, 0));
}

static void
bundle_init (Bundle *bundle, const SwWeaver *weaver, int skein)
{
  float along[PARTS * 4 + 1] = { 0 };
  int k = 0;

  *bundle = (Bundle){ .middle = ((float) skein + 0.5f) * weaver->lane, .half = weaver->lane / 2 - EDGE_CM, .skein = skein };
  bundle->half = MAX (bundle->half, 0.3f * weaver->lane);
  bundle->fall = MIN (1.5f * weaver->height, 0.9f * bundle->half);
  for (int i = 1; i <= PARTS * 4; i++)
    {
      const float u = (float) i / (PARTS * 2) - 1, before = u - 1.0f / (PARTS * 2);

      along[i] = along[i - 1] + hypotf ((u - before) * bundle->half, (profile (bundle, u) - profile (bundle, before)) * weaver->height);
    }
  bundle->around = along[PARTS * 4];
  for (int i = 0; i <= PARTS; i++)
    {
      const float at = bundle->around * (float) i / PARTS;

      while (k + 1 < PARTS * 4 && along[k + 1] < at)
        k++;
      bundle->places[i] = ((float) k + (at - along[k]) / MAX (along[k + 1] - along[k], 1e-6f)) / (PARTS * 2) - 1;
    }
}

/* One wrap of a flat bundle. */
typedef struct
{
  guint32 own, lock; /* rows of chance */
  float u;           /* -1 .. 1 across */
  float rove;        /* cm */
  float down;        /* below the top, cm */
  float wide;        /* of a strand's width */
} Wrap;

static SwWrapSpot
spot_at (const SwWeaver *weaver, const Bundle *bundle, const Wrap *wrap, float x)
{
  const float pinch = (float) sw_laid_ties_pinch (weaver->ties, bundle->skein, (double) x);
  const float from_end = MIN (x, weaver->length - x), narrow = weaver->ring ? 0 : NARROW * sw_wraps_smooth (1 - from_end / NARROW_CM);
  const float free = 1 - 6 * pinch; /* a tie holds them in order */
  const float stray = wrap->wide > 1 ? 0 : LOCK_STRAY_CM * sw_wraps_tone (weaver, wrap->lock, x / LOCK_ALONG_CM) + weaver->strand * (WANDER * sw_wraps_tone (weaver, wrap->own, x / WANDER_CM) + KINK * sw_wraps_tone (weaver, wrap->own + 60, x / KINK_CM));
  const float rove = wrap->rove * sw_wraps_tone (weaver, wrap->own + 77, x / ROVER_ALONG_CM);
  const float edge = UNEVEN * sw_wraps_tone (weaver, (guint32) (wrap->u < 0) + 31 + 2 * (guint32) bundle->skein, x / 8) * fabsf (wrap->u);
  float u = wrap->u + (stray + rove) * free / bundle->half, height;

  if (fabsf (u) > 1)
    u = copysignf (1 + 0.25f * (fabsf (u) - 1), u);
  height = weaver->height * profile (bundle, u) * (1 - 1.9f * pinch) * (1 + 0.10f * sw_wraps_tone (weaver, wrap->lock + 40, x / 7.5f));
  height += weaver->strand * (HEAVE * sw_wraps_tone (weaver, wrap->own + 120, x / HEAVE_CM) + (wrap->rove > 0 ? ROVER_UP : 0));
  return (SwWrapSpot){ bundle->middle + u * bundle->half * (1 - narrow - pinch) * (1 + edge - UNEVEN), height - wrap->down };
}

/* Every wrap comes back under the bundle nearer to its middle, so that those at the edges go round the end as on a loop that lies flat. */
static SwWrapDive
dive_of (const SwWeaver *weaver, const Bundle *bundle, const Wrap *wrap, float z, guint32 end)
{
  const float u = CLAMP (wrap->u, -1, 1), deep = MIN (0.27f * weaver->lane, 3.0f), edge = powf (fabsf (u), 2.5f);
  const float at = (u + 1) * bundle->half + 9.7f * (float) (end + 2 * (guint32) bundle->skein); /* cm across all ends */
  const float slow = sw_grain_cloud (weaver->grain, at / 1.5f + 20, 200, 11.3f), quick = sw_grain_cloud (weaver->grain, at / 0.5f + 20, 200, 23.7f), own = sw_wraps_tone (weaver, wrap->own + 201 + end, 9.5f);
  const float corner = deep * (1 - sqrtf (1 - 0.97f * edge));
  const float loose = own > 0.85f ? -0.16f : 0; /* a loop that stands out */

  return (SwWrapDive){
    .tip = MAX (0.36f + corner + 0.26f * slow + 0.10f * quick + 0.07f * own + loose + 0.7f * wrap->down, 0.06f),
    .reach = 0.5f + 0.65f * z + 0.6f * deep * fabsf (u),
    .aside = -MIN (bundle->half, 1.7f * deep) * u * (0.35f + 0.7f * u * u) + 0.9f * slow + 0.5f * quick + 0.3f * own,
  };
}

static void
lay_wrap (SwWeaver *weaver, const Bundle *bundle, const Wrap *wrap, guint64 address)
{
  SwWrapDive left = { 0 }, right = { 0 };
  float from = 0, to = weaver->length;
  int n;

  if (!weaver->ring)
    {
      const float middle = spot_at (weaver, bundle, wrap, 1.5f).z;

      left = dive_of (weaver, bundle, wrap, middle, 0);
      right = dive_of (weaver, bundle, wrap, middle, 1);
      from = MIN (left.tip + left.reach, weaver->length / 3);
      to = weaver->length - MIN (right.tip + right.reach, weaver->length / 3);
    }
  n = MAX ((int) ((to - from) / SW_WRAPS_STEP_CM), 1);
  sw_weaver_begin (weaver, address, wrap->wide);
  if (!weaver->ring)
    sw_weaver_dive (weaver, &left, spot_at (weaver, bundle, wrap, from), FALSE, FALSE);
  for (int i = weaver->ring ? 0 : 1; i <= (weaver->ring ? n : n - 1); i++)
    {
      const float x = from + (to - from) * (float) i / (float) n;
      const SwWrapSpot spot = spot_at (weaver, bundle, wrap, x);

      sw_weaver_add (weaver, x, spot.y, spot.z);
    }
  if (!weaver->ring)
    sw_weaver_dive (weaver, &right, spot_at (weaver, bundle, wrap, to), TRUE, TRUE);
}

static void
lay_flat (SwWeaver *weaver, int skein)
{
  Bundle bundle;

  bundle_init (&bundle, weaver, skein);
  for (int layer = 0; layer <= LAYERS; layer++)
    {
      const float wide = layer < LAYERS ? 1 : CORE;
      const guint64 seed = sw_chance_mix (sw_chance_mix (weaver->seed, (guint64) skein), (guint64) layer);
      const int n = MAX ((int) (bundle.around / (SW_WRAPS_PITCH * weaver->strand) / (layer < LAYERS ? 1 : CORE * 0.55f)), 3);

      for (int j = 0; j < n; j++)
        {
          const guint64 address = sw_chance_mix (seed, (guint64) j);
          const float at = CLAMP (((float) j + 0.5f + (layer < LAYERS ? 0.5f : 0) * (sw_wraps_chance (address, 1) - 0.5f)) / (float) n, 0, 0.9999f) * PARTS;
          const int part = (int) at;
          const float u = bundle.places[part] + (at - (float) part) * (bundle.places[part + 1] - bundle.places[part]), down = LAYER_DOWN * weaver->strand * ((float) layer + (wide - 1) / 2);
          const float lock = (u + 1) * bundle.half / LOCK_CM + 0.9f * sw_wraps_chance (address, 2);
          const Wrap wrap = {
            .own = (guint32) (address >> 16) & 0xffff,
            .lock = (guint32) (sw_chance_mix (seed, 1000 + (guint64) lock) >> 20) & 0xffff,
            .u = u * (1 - down / bundle.half),
            .rove = layer == 0 && sw_wraps_chance (address, 3) < ROVERS ? ROVER_CM : 0,
            .down = down,
            .wide = wide,
          };

          lay_wrap (weaver, &bundle, &wrap, address);
        }
    }
}

void
sw_wraps_init (SwWraps *wraps, const SwSketch *sketch, const SwGrain *grain, const SwLaidTies *ties, double strand_cm, double height_cm)
{
  SwWeaver weaver = {
    .wraps = wraps,
    .grain = grain,
    .ties = ties,
    .seed = sw_chance_mix (0x77726170, (guint64) sketch->seed),
    .length = (float) sw_sketch_lay_length (sketch),
    .width = (float) sw_sketch_lay_width (sketch),
    .lane = (float) sketch->lay.width_cm,
    .strand = (float) strand_cm,
    .height = (float) height_cm,
    .runs = (int) sketch->lay.runs,
    .ring = sketch->lay.runs == 1,
  };

  wraps->points = g_array_new (FALSE, FALSE, sizeof (SwWrapPoint));
  wraps->wraps = g_array_new (FALSE, FALSE, sizeof (SwWrap));
  for (int skein = 0; skein < (int) sketch->lay.skeins; skein++)
    if (sketch->lay.folding == SW_FOLDING_SIDE_BY_SIDE && sketch->lay.runs > 1)
      sw_weaver_lay_rope (&weaver, skein);
    else
      lay_flat (&weaver, skein);
}

void
sw_wraps_clear (SwWraps *wraps)
{
  g_clear_pointer (&wraps->points, g_array_unref);
  g_clear_pointer (&wraps->wraps, g_array_unref);
}
