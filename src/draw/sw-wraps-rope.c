/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-wraps-private.h"

#define TURN_ASPECT 0.7f /* a turn reaches this share of a run's width along the skein: wet yarn is pushed flat */
#define FILL 0.93f       /* of a run's room, on average */
#define UNEVEN 0.07f
#define MEANDER 0.045f /* of a run's room */
#define TWIST_CM 70.0f /* of rope to a turn of its twist */
#define LAYERS 2
#define CORE 3.0f /* beneath these: wraps in threes, which let no ground through */

/* A wrap is left out where the rope hides it: below this share of its height from the middle. */
#define HIDDEN (-0.45f)

typedef struct
{
  guint32 own, lock;
  float angle;
  float in;   /* 1 on the rope's skin */
  float wide; /* of a strand's width */
} Wrap;

typedef struct
{
  SwWeaver *weaver;
  float run, half;
  float flat;    /* (width - height) / (width + height) of its section */
  float first_y; /* of the first run's near side */
  float whole;   /* length of all of it */
  int skein;
  gboolean closed; /* two runs: the end goes on into the beginning */
} Rope;

/* Where in the rope's section a wrap is, @along from the loop's beginning, at @x of run @run. */
typedef struct
{
  float across; /* cm, towards the next run */
  float z;
} Place;

/* A closed rope's wraps meet themselves again. */
static float
seam (const Rope *rope, float along)
{
  return rope->closed ? sw_wraps_smooth (MIN (along, rope->whole - along) / 4) : 1;
}

static float
angle_at (const Rope *rope, const Wrap *wrap, float along)
{
  const SwWeaver *weaver = rope->weaver;
  const float twist = rope->closed ? 0.9f * sinf (2 * (float) G_PI * along / rope->whole * 2) : 2 * (float) G_PI * along / TWIST_CM;
  const float own = 0.55f * weaver->strand / rope->half * sw_wraps_tone (weaver, wrap->own, along / 3.6f);
  const float lock = 0.20f * sw_wraps_tone (weaver, wrap->lock, along / 8);

  return wrap->angle + twist + seam (rope, along) * ((wrap->wide > 1 ? 0 : own + lock) + 0.5f * sw_wraps_tone (weaver, 19 + (guint32) rope->skein, along / 26));
}

static Place
place_at (const Rope *rope, const Wrap *wrap, int run, float x, float along, float *sine)
{
  const SwWeaver *weaver = rope->weaver;
  const float pinch = (float) sw_laid_ties_pinch (weaver->ties, rope->skein * weaver->runs + run, (double) x), on = seam (rope, along);
  const float angle = angle_at (rope, wrap, along), side = run % 2 == 0 ? 1 : -1;
  const float wide = rope->half * FILL * (1 + on * UNEVEN * sw_wraps_tone (weaver, 23 + (guint32) rope->skein, along / 6) - 1.6f * pinch) * wrap->in;
  const float round = angle + rope->flat / 2 * sinf (2 * angle); /* as many wraps to a cm of its back as of its sides */
  const float high = weaver->height * (1 - 1.6f * pinch) * (1 + 0.10f * on * sw_wraps_tone (weaver, wrap->lock + 40, along / 7.5f));

  *sine = sinf (round);
  return (Place){ side * cosf (round) * wide, high * (0.42f + 0.58f * *sine * wrap->in) + 0.33f * weaver->strand * on * sw_wraps_tone (weaver, wrap->own + 120, along / 3) };
}

/* How far the rope's middle keeps from the middle of its room: towards the next run. The outermost runs keep from the edge. */
static float
meander_at (const Rope *rope, int run, float x)
{
  const float from_end = MIN (x, rope->weaver->length - x), free = sw_wraps_smooth ((from_end - rope->run) / 4);
  const float most = free * MEANDER * rope->run * 2, off = most * sw_wraps_tone (rope->weaver, 57 + (guint32) run * 3 + 101 * (guint32) rope->skein, x / 11 + 0.3f);

  return run == 0 ? (most + off) / 2 : run == rope->weaver->runs - 1 ? -(most + off) / 2 : off;
}

/* A course is broken off where it cannot be seen, and begun anew. */
static void
add (const Rope *rope, const Wrap *wrap, guint64 address, gboolean *begun, float sine, float x, float y, float z)
{
  if (sine < HIDDEN)
    {
      *begun = FALSE;
      return;
    }
  if (!*begun)
    sw_weaver_begin (rope->weaver, address, wrap->wide);
  *begun = TRUE;
  sw_weaver_add (rope->weaver, x, y, z);
}

/* Where the straight part of a run ends: each turn a little sooner or later. */
static float
straight_end (const Rope *rope, int turn)
{
  return rope->run * TURN_ASPECT + 0.12f + 0.25f * (0.5f + 0.5f * sw_wraps_tone (rope->weaver, 83 + (guint32) turn + 37 * (guint32) rope->skein, 0.5f));
}

/* From @run to the next, or from the last of a closed rope to the first. Returns: how far along it is then */
static float
lay_turn (const Rope *rope, const Wrap *wrap, guint64 address, gboolean *begun, int run, float along)
{
  const gboolean right = run % 2 == 0, back = rope->closed && run == 1;
  const float centre = rope->first_y + rope->run * (float) (back ? 1 : run + 1), end = straight_end (rope, run), length = (float) G_PI / 2 * rope->run * 0.85f;
  const int n = CLAMP ((int) (10 + 4 * rope->run), 14, 40);

  for (int k = 1; k < n + back; k++)
    {
      const float turned = (float) k / (float) n, angle = (float) G_PI * turned, at = along + length * turned;
      float sine;
      const Place place = place_at (rope, wrap, run, -1, at, &sine);
      /* Inside the turn wraps are slack and reach farther than they need. */
      const float round = MAX (rope->run / 2 + (back ? place.across : -place.across), 0.3f * rope->weaver->strand);
      const float loose = wrap->wide > 1 ? 0 : 1, slack = 0.22f * sw_wraps_smooth (1 - round / (0.5f * rope->run)) * (0.6f + 0.8f * loose * sw_wraps_tone (rope->weaver, wrap->own + 91, (float) run + 0.5f));
      const float uneven = loose * (0.10f * sw_wraps_tone (rope->weaver, wrap->lock + 131, (float) run + 0.5f) + 0.07f * sw_wraps_tone (rope->weaver, wrap->own + 141, (float) run + 0.5f));
      const float out = (round * TURN_ASPECT + slack + uneven) * sinf (angle), y = centre + (back ? 1 : -1) * round * cosf (angle);

      add (rope, wrap, address, begun, sine, right ? rope->weaver->length - end + out : end - out, y, place.z);
    }
  return along + length;
}

static float
lay_run (const Rope *rope, const Wrap *wrap, guint64 address, gboolean *begun, int run, float along)
{
  const SwWeaver *weaver = rope->weaver;
  const gboolean right = run % 2 == 0, first = run == 0 && !rope->closed, last = run == weaver->runs - 1 && !rope->closed;
  const float end = rope->weaver->height * 0.8f + 0.5f;
  const float before = first ? end : straight_end (rope, rope->closed ? 1 - run : run - 1), after = last ? end : straight_end (rope, run);
  const float from = right ? before : weaver->length - before, to = right ? weaver->length - after : after;
  const int n = MAX ((int) (fabsf (to - from) / SW_WRAPS_STEP_CM), 2);
  const float middle = rope->first_y + ((float) run + 0.5f) * rope->run;

  for (int i = 0; i <= n; i++)
    {
      const float x = from + (to - from) * (float) i / (float) n, at = along + fabsf (x - from);
      float sine;
      const Place place = place_at (rope, wrap, run, x, at, &sine);
      const SwWrapSpot spot = { middle + place.across + meander_at (rope, run, x), place.z };
      const gboolean rise = i == 0 && first, fall = i == n && last;

      if ((rise || fall) && sine >= HIDDEN)
        {
          const float share = place.across / rope->half, own = sw_wraps_tone (weaver, wrap->own + 201, (float) run + 0.5f);
          const float tip = 0.28f + 0.5f * share * share + 0.08f * own;
          const SwWrapDive dive = { tip, end - tip, -place.across * (0.4f + 0.6f * share * share) + 0.2f * own };

          add (rope, wrap, address, begun, sine, x, spot.y, spot.z);
          if (rise)
            sw_weaver_begin (rope->weaver, address, wrap->wide);
          sw_weaver_dive (rope->weaver, &dive, spot, rise ? !right : right, fall);
          continue;
        }
      add (rope, wrap, address, begun, sine, x, spot.y, spot.z);
    }
  return along + fabsf (to - from);
}

static void
lay_wrap (const Rope *rope, const Wrap *wrap, guint64 address)
{
  const int runs = rope->weaver->runs;
  gboolean begun = FALSE;
  float along = 0;

  for (int run = 0; run < runs; run++)
    {
      along = lay_run (rope, wrap, address, &begun, run, along);
      if (run + 1 < runs || rope->closed)
        along = lay_turn (rope, wrap, address, &begun, run, along);
    }
}

void
sw_weaver_lay_rope (SwWeaver *weaver, int skein)
{
  Rope rope = { .weaver = weaver, .run = weaver->lane / (float) weaver->runs, .first_y = weaver->lane * (float) skein, .skein = skein, .closed = weaver->runs == 2 };
  float around;

  rope.half = rope.run / 2;
  rope.whole = 2 * weaver->length - straight_end (&rope, 0) * 2 - straight_end (&rope, 1) * 2 + (float) G_PI * rope.run * 0.85f; /* if closed */
  rope.flat = CLAMP ((FILL * rope.half - 0.58f * weaver->height) / (FILL * rope.half + 0.58f * weaver->height), 0, 0.8f);
  around = (float) G_PI * (FILL * rope.half + 0.58f * weaver->height);
  for (int layer = 0; layer <= LAYERS; layer++)
    {
      const guint64 seed = sw_chance_mix (sw_chance_mix (weaver->seed, 500 + (guint64) skein), (guint64) layer);
      const float wide = layer < LAYERS ? 1 : CORE, in = MAX (1 - 0.62f * weaver->strand * ((float) layer + (wide - 1) / 2) / rope.half, 0.3f);
      const int n = MAX ((int) (around * in / (SW_WRAPS_PITCH * weaver->strand) / (layer < LAYERS ? 1 : CORE * 0.55f)), 5);

      for (int j = 0; j < n; j++)
        {
          const guint64 address = sw_chance_mix (seed, (guint64) j);
          const float angle = 2 * (float) G_PI * ((float) j + 0.5f * sw_wraps_chance (address, 1)) / (float) n;
          const Wrap wrap = { .own = (guint32) (address >> 16) & 0xffff, .lock = (guint32) (sw_chance_mix (seed, 1000 + (guint64) (angle * 1.9f + 0.4f * sw_wraps_chance (address, 2))) >> 20) & 0xffff, .angle = angle, .in = in, .wide = wide };

          lay_wrap (&rope, &wrap, address);
        }
    }
}
