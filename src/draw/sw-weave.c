/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-weave.h"

#include "sketch/sw-chance.h"

#include <math.h>

typedef struct
{
  double pitch;  /* in strands */
  float depth;   /* of the grooves */
  float tone;    /* how unlike neighbours are */
  double wander; /* cm */
} Layer;

static const Layer layers[SW_WEAVE_LAYERS] = {
  { 1, 0.30f, 0.22f, 0.025 },
  { 3.7, 0.16f, 0.20f, 0.06 },
  { 13, 0.06f, 0.10f, 0.12 },
};

#define KNOT_CM 2.6   /* along a strand, from one tone to the next */
#define TWIST 1.6     /* turns of a ply in this many strand widths */
#define PLY_FROM_PX 5 /* a strand narrower than this shows no plies */

static float
smooth (float t)
{
  t = CLAMP (t, 0, 1);
  return t * t * (3 - 2 * t);
}

static void
layer_init (SwWeaveLayer *to, const Layer *layer, double strand_cm, double px_per_cm, int first, int width)
{
  const double pitch = layer->pitch * strand_cm;
  const float seen = smooth (((float) (pitch * px_per_cm) - 1.8f) / 2.5f);

  to->pitch_cm = (float) pitch;
  to->depth = layer->depth * seen;
  to->tone = layer->tone * seen;
  to->wander_a = g_new (float, width);
  to->wander_b = g_new (float, width);
  for (int i = 0; i < width; i++)
    {
      const double x = (first + i + 0.5) / px_per_cm + 40 * layer->pitch;

      to->wander_a[i] = (float) (layer->wander * (sin (x * 0.61) + 0.6 * sin (x * 1.37 + 1)));
      to->wander_b[i] = (float) (layer->wander * (sin (x * 0.83 + 2) + 0.5 * sin (x * 1.71)));
    }
}

void
sw_weave_init (SwWeave *weave, double strand_cm, int plies, double px_per_cm, int first, int width)
{
  for (guint s = 0; s < SW_WEAVE_STRANDS; s++)
    for (guint k = 0; k < SW_WEAVE_KNOTS; k++)
      weave->tones[s][k] = (float) (2 * sw_chance_even (sw_chance_mix (s, k)) - 1);
  weave->px_per_cm = (float) px_per_cm;
  weave->first_cm = (float) (first / px_per_cm);
  weave->plies = (float) plies;
  weave->ply_depth = (plies == 1 ? 0.08f : 0.26f) * smooth (((float) (strand_cm * px_per_cm) - PLY_FROM_PX) / 6);
  for (int i = 0; i < SW_WEAVE_LAYERS; i++)
    layer_init (&weave->layers[i], &layers[i], strand_cm, px_per_cm, first, width);
}

void
sw_weave_clear (SwWeave *weave)
{
  for (int i = 0; i < SW_WEAVE_LAYERS; i++)
    {
      g_free (weave->layers[i].wander_a);
      g_free (weave->layers[i].wander_b);
    }
}

SwWeaveRow
sw_weave_row (double y_cm)
{
  return (SwWeaveRow){ (float) cos (y_cm * 1.9), (float) cos (y_cm * 1.1 + 2) };
}

/* The library's floor() is a call, and this is hot. */
static inline int
whole_below (float x)
{
  const int whole = (int) x;

  return whole - ((float) whole > x);
}

/* Between a strand's tones at the knots about @knots; layers start at other strands of the table. */
static inline float
tone_at (const SwWeave *weave, int layer, int strand, float knots)
{
  const int knot = whole_below (knots);
  const float *tones = weave->tones[(strand + 71 * layer) & (SW_WEAVE_STRANDS - 1)];
  const float t = knots - (float) knot, on = t * t * (3 - 2 * t);
  const float from = tones[knot & (SW_WEAVE_KNOTS - 1)], to = tones[(knot + 1) & (SW_WEAVE_KNOTS - 1)];

  return from + (to - from) * on;
}

/* The plies' grooves across a strand; 1 in the mean. */
static float
ply_light (const SwWeave *weave, float x_cm, float across)
{
  const float wind = weave->plies * (x_cm / ((float) TWIST * weave->layers[0].pitch_cm) + 0.25f * across);
  const float ply = 0.5f + 0.5f * cosf (2 * (float) G_PI * wind);

  return 1 - weave->ply_depth * (ply * ply * ply - 0.3125f); /* 5/16: the mean of the cube */
}

SwWeavePoint
sw_weave_at (const SwWeave *weave, const SwWeaveRow *row, int column, float strand)
{
  const float x_cm = weave->first_cm + ((float) column + 0.5f) / weave->px_per_cm;
  SwWeavePoint point = { 1, 0, 0 };

  for (int i = 0; i < SW_WEAVE_LAYERS; i++)
    {
      const SwWeaveLayer *layer = &weave->layers[i];
      float at, across;
      int whole;

      if (layer->depth <= 0)
        continue;
      at = (strand + row->wave_a * layer->wander_a[column] + row->wave_b * layer->wander_b[column]) / layer->pitch_cm;
      whole = whole_below (at);
      across = 2 * (at - (float) whole) - 1;
      point.light *= 1 + layer->depth * (0.5f - 1.5f * across * across) + layer->tone * tone_at (weave, i, whole, x_cm / (float) KNOT_CM + 0.37f * (float) whole);
      if (i > 0)
        continue;
      point.off_cm = across * layer->pitch_cm / 2 * layer->depth / layers[0].depth;
      point.shift_cm = weave->tones[whole & (SW_WEAVE_STRANDS - 1)][SW_WEAVE_KNOTS - 1] * layer->pitch_cm;
      if (weave->ply_depth > 0)
        point.light *= ply_light (weave, x_cm, across);
    }
  return point;
}
