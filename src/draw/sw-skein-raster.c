/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-skein-raster.h"

#include "colour/sw-mix.h"
#include "draw/sw-linear.h"
#include "draw/sw-skein-shape.h"
#include "sketch/sw-chance.h"
#include "skein/sw-strand.h"

#include <math.h>

/* Fibre in a bloomed strand, g/cm3; a drawing's figure, from memory of cover-factor tables. */
#define STRAND_DENSITY 0.35

/*
 * The wraps' texture in layers, from single strands to the locks they lie in.
 * Each layer fades out before its pitch comes near the pixels', so that
 * nothing beats with them.
 */
typedef struct
{
  double pitch;  /* in strands */
  float depth;   /* of the grooves */
  float tone;    /* how unlike neighbours are */
  double wander; /* cm */
} Layer;

static const Layer layers[] = {
  { 1, 0.30f, 0.26f, 0.025 },
  { 3.7, 0.16f, 0.20f, 0.06 },
  { 13, 0.06f, 0.10f, 0.12 },
};

#define N_LAYERS G_N_ELEMENTS (layers)
#define KNOT_CM 2.6 /* along a strand, from one tone to the next */

typedef struct
{
  float pitch_cm, depth, tone;
  float *wander_a, *wander_b; /* per column */
} Weave;

typedef struct
{
  SwSkeinShape shape;
  Weave weave[N_LAYERS];
  SwLinear linear;
  float gap_cm, px_per_cm;
} Skein;

static float
smooth (float t)
{
  t = CLAMP (t, 0, 1);
  return t * t * (3 - 2 * t);
}

static void
weave_init (Weave *weave, const Layer *layer, double strand_cm, double px_per_cm, int width)
{
  const double pitch = layer->pitch * strand_cm;
  const float seen = smooth (((float) (pitch * px_per_cm) - 1.8f) / 2.5f);

  weave->pitch_cm = (float) pitch;
  weave->depth = layer->depth * seen;
  weave->tone = layer->tone * seen;
  weave->wander_a = g_new (float, width);
  weave->wander_b = g_new (float, width);
  for (int i = 0; i < width; i++)
    {
      const double x = (i + 0.5) / px_per_cm + 40 * layer->pitch;

      weave->wander_a[i] = (float) (layer->wander * (sin (x * 0.61) + 0.6 * sin (x * 1.37 + 1)));
      weave->wander_b[i] = (float) (layer->wander * (sin (x * 0.83 + 2) + 0.5 * sin (x * 1.71)));
    }
}

/* -1 .. 1, a tone for each strand and knot. */
static float
tone_at (int strand, int knot, guint64 layer)
{
  const guint64 address = sw_chance_mix (layer, (guint64) (guint32) strand << 20 ^ (guint64) (guint32) knot);

  return (float) (address >> 40) * (2.0f / (1 << 24)) - 1;
}

/* The layer's light where the strand coordinate is @strand, cm. */
static float
weave_light (const Weave *weave, guint64 layer, float strand, float knots)
{
  const float at = strand / weave->pitch_cm, whole = floorf (at), across = 2 * (at - whole) - 1;
  const float knot = floorf (knots), t = smooth (knots - knot);
  const int s = (int) whole, k = (int) knot;
  const float tone = tone_at (s, k, layer) * (1 - t) + tone_at (s, k + 1, layer) * t;

  return 1 + weave->depth * (0.5f - 1.5f * across * across) + weave->tone * tone;
}

static float
light_at (const Skein *skein, const SwSkeinPoint *point, int column, float wave_a, float wave_b)
{
  const float a = point->across, a2 = a * a;
  float light = (1.06f - 0.42f * a2 * a2 * a2 + 0.06f * a) * (1 - 0.5f * point->end * point->end);

  for (gsize i = 0; i < N_LAYERS; i++)
    if (skein->weave[i].depth > 0)
      {
        const Weave *weave = &skein->weave[i];
        const float strand = point->strand + wave_a * weave->wander_a[column] + wave_b * weave->wander_b[column];
        const float knots = ((float) column / skein->px_per_cm + strand * 7.3f) / (float) KNOT_CM;

        light *= weave_light (weave, i + 1, strand, knots);
      }
  return light;
}

/* The contact shadow beside a bundle, and its edge softened by a pixel. */
static guint32
pixel_at (const Skein *skein, guint32 colour, const SwSkeinPoint *point, int column, float wave_a, float wave_b)
{
  const float edge = point->inside - skein->gap_cm * (1 + 0.5f * skein->weave[0].wander_a[column] / 0.04f);
  const float cover = CLAMP (edge * skein->px_per_cm + 0.5f, 0, 1);
  const float shadow = 0.55f * expf (MIN (edge, 0) / 0.22f);
  guint32 yarn = 0, alpha;
  float rgb[3], light;

  if (cover <= 0)
    return (guint32) (shadow * 255) << 24;
  light = light_at (skein, point, column, wave_a, wave_b);
  sw_linear_decode (&skein->linear, colour, rgb);
  for (int i = 0; i < 3; i++)
    rgb[i] *= light;
  yarn = sw_linear_premultiply (sw_linear_pixel (&skein->linear, rgb), cover);
  alpha = (yarn >> 24) + (guint32) ((float) (255 - (yarn >> 24)) * shadow);
  return (yarn & 0xffffff) | alpha << 24;
}

static void
skein_init (Skein *skein, const SwForecast *forecast, int width, double px_per_cm)
{
  const double tex = sw_tex (forecast->sketch->yarn.metres_per_100_g);
  const double strand = sqrt (4 * tex * 1e-5 / (G_PI * STRAND_DENSITY));

  sw_skein_shape_init (&skein->shape, forecast->sketch);
  sw_linear_init (&skein->linear);
  skein->px_per_cm = (float) px_per_cm;
  skein->gap_cm = (float) MIN (0.02 * skein->shape.lane / skein->shape.runs_across, 0.1);
  for (gsize i = 0; i < N_LAYERS; i++)
    weave_init (&skein->weave[i], &layers[i], strand, px_per_cm, width);
}

void
sw_skein_raster (const SwForecast *forecast, gboolean second_face, int width, int height, double px_per_cm, int stride, guint32 *pixels)
{
  const gsize n = (gsize) width * (gsize) height;
  float *xyz = g_new (float, 3 * n);
  Skein skein;

  skein_init (&skein, forecast, width, px_per_cm);
  sw_forecast_face (forecast, second_face, width, height, xyz, xyz + n, xyz + 2 * n);
  for (int j = 0; j < height; j++)
    {
      const int from_near = height - 1 - j; /* the face counts from the near edge, the picture from the far one */
      const gsize at = (gsize) from_near * (gsize) width;
      const double y = (from_near + 0.5) / px_per_cm;
      const float wave_a = (float) cos (y * 1.9), wave_b = (float) cos (y * 1.1 + 2);
      guint32 *line = pixels + (gsize) j * (gsize) stride;

      sw_pixels_from_xyz (xyz + at, xyz + n + at, xyz + 2 * n + at, 1, (gsize) width, line);
      for (int i = 0; i < width; i++)
        {
          const SwSkeinPoint point = sw_skein_shape_at (&skein.shape, (i + 0.5) / px_per_cm, y);

          line[i] = pixel_at (&skein, line[i], &point, i, wave_a, wave_b);
        }
    }
  for (gsize i = 0; i < N_LAYERS; i++)
    {
      g_free (skein.weave[i].wander_a);
      g_free (skein.weave[i].wander_b);
    }
  g_free (xyz);
}
