/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-hank-yarn.h"

#include "colour/sw-mix.h"
#include "sketch/sw-chance.h"

#include <math.h>

/* A strand stays on the skin for so long, cm, give or take. */
#define SEEN_CM 11.0
#define DIVE_CM 0.55

/* One strand's run on the skin. */
typedef struct
{
  double length_cm; /* of a stay */
  double offset;    /* of the first, in stays */
  guint64 address;
  gboolean back; /* the half that runs back from the place at which the loop was held */
} Slot;

static Slot
slot_for (int k, int n, guint64 seed)
{
  const guint64 address = sw_chance_mix (sw_chance_mix (seed, 0x736c6f74), (guint64) k);
  const double edge = 0.06 * (sw_chance_even (sw_chance_mix (address, 1)) - 0.5);
  const double at = (k + 0.5) / n + edge;

  return (Slot){
    .length_cm = SEEN_CM * (0.6 + 0.8 * sw_chance_even (sw_chance_mix (address, 2))),
    .offset = 5 + sw_chance_even (sw_chance_mix (address, 3)),
    .address = address,
    .back = at - floor (at) >= 0.5,
  };
}

/* Strand from its beginning to a place on a wrap, cm. The wraps grow evenly longer. */
static double
strand_to (const SwForecast *forecast, double wrap, double loop)
{
  const double c = forecast->reel.circumference_cm, growth = forecast->reel.growth / MAX (forecast->wraps, 1);

  return c * (wrap + growth * wrap * wrap / 2) + loop * c * (1 + growth * wrap);
}

/* The strand's colour at @t cm, between the middles of two legs. */
static void
colour_at (const SwForecast *forecast, const SwSkeinLegs *legs, double t, float *xyz)
{
  const double at = (t - forecast->sketch->cloth.start_cm) / forecast->stitch_length_cm * 2 - 0.5;
  const double held = CLAMP (at, 0, 2.0 * (double) legs->n_stitches - 1.001);
  const gsize i = (gsize) held;
  const float on = (float) (held - (double) i);

  xyz[0] = legs->leg_x[i] + on * (legs->leg_x[i + 1] - legs->leg_x[i]);
  xyz[1] = legs->leg_y[i] + on * (legs->leg_y[i + 1] - legs->leg_y[i]);
  xyz[2] = legs->leg_z[i] + on * (legs->leg_z[i + 1] - legs->leg_z[i]);
}

/* A wrap of those whose colours are known. */
static double
wrap_for (const SwForecast *forecast, guint64 address)
{
  const double c = forecast->reel.circumference_cm;
  const double first = ceil (forecast->sketch->cloth.start_cm / c);
  const double last = floor ((forecast->sketch->cloth.start_cm + (double) forecast->n_stitches * forecast->stitch_length_cm) / c) - 1;

  return floor (first + MAX (last - first, 0) * sw_chance_even (address));
}

static void
fill_slot (const SwForecast *forecast, const SwSkeinLegs *legs, const SwHankShape *shape, const Slot *slot, float *xyz, float *sunk)
{
  const double start = forecast->sketch->listing.twist_start_cm / forecast->reel.circumference_cm;
  const guint64 n = (guint64) shape->rounds;

  for (int i = 0; i < SW_HANK_PLACES; i++)
    {
      const double share = (i + 0.5) / SW_HANK_PLACES, along = share * shape->rope_cm;
      const double stays = along / slot->length_cm + slot->offset, on = stays - floor (stays);
      const double from_end = MIN (on, 1 - on) * slot->length_cm / DIVE_CM;
      const guint64 stay = sw_chance_mix (slot->address, (guint64) stays);
      const double round = (double) (stay % n); /* of a loop that is laid round itself, any */
      const double loop = start + (round + (slot->back ? -share / 2 : share / 2)) / shape->rounds;

      colour_at (forecast, legs, strand_to (forecast, wrap_for (forecast, stay), loop - floor (loop)), xyz + 3 * i);
      sunk[i] = (float) (sw_chance_mix (slot->address, (guint64) (stays + 0.5)) & 1 ? 1 : -1) * (float) (from_end < 1 ? 1 - from_end * from_end * (3 - 2 * from_end) : 0);
    }
}

/* The forecast has colours in steps, which a cord shows; on the strand they run into each other. */
static void
run_together (const float *from, float *to)
{
  static const float weights[] = { 1, 2, 3, 2, 1 };

  for (int i = 0; i < SW_HANK_PLACES; i++)
    for (int k = 0; k < 3; k++)
      {
        float sum = 0;

        for (int j = -2; j <= 2; j++)
          sum += weights[j + 2] * from[3 * CLAMP (i + j, 0, SW_HANK_PLACES - 1) + k];
        to[3 * i + k] = sum / 9;
      }
}

void
sw_hank_yarn_init (SwHankYarn *yarn, const SwForecast *forecast, const SwSkeinLegs *legs, const SwHankShape *shape, guint64 seed)
{
  const gsize n = (gsize) shape->around * SW_HANK_PLACES;
  g_autofree float *xyz = g_new (float, 3 * SW_HANK_PLACES);
  g_autofree float *even = g_new (float, 3 * SW_HANK_PLACES);

  *yarn = (SwHankYarn){ shape->around, g_new (guint32, n), g_new (float, n) };
  for (int k = 0; k < yarn->n; k++)
    {
      const Slot slot = slot_for (k, yarn->n, seed);
      const gsize at = (gsize) k * SW_HANK_PLACES;

      fill_slot (forecast, legs, shape, &slot, xyz, yarn->sunk + at);
      run_together (xyz, even);
      sw_pixels_from_xyz (even, even + 1, even + 2, 3, SW_HANK_PLACES, yarn->pixels + at);
    }
}

void
sw_hank_yarn_clear (SwHankYarn *yarn)
{
  g_free (yarn->pixels);
  g_free (yarn->sunk);
}
