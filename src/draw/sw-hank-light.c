/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-hank-light.h"

#include "draw/sw-unit.h"
#include "sketch/sw-chance.h"

/* Several places of each pixel are lit: plies are told apart at a width at which a single look would miss them. */
#define FINER 3.0

/* How unlike in brightness neighbours and locks of them are. */
#define TONE 0.07f
#define LOCK_TONE 0.07f

#define MEAN_STRAND_LIGHT 0.78f

/* How much of the light on yarn it throws on, where there is shade to fill. */
#define THROWN 0.42f

/* How dark it is in the groove beside a strand, and in the gaps where none is seen. */
#define GROOVE 0.84f
#define GAP 0.55f

/* The paper's edge keeps light off the yarn that goes beneath it. */
#define PAPER_SHADE 0.55f

static float
smooth (float t)
{
  t = CLAMP (t, 0, 1);
  return t * t * (3 - 2 * t);
}

void
sw_hank_light_init (SwHankLight *light, const SwBundle *bundle, const SwHankStrands *strands, const SwHankYarn *yarn, const SwRelief *relief, double x, double y, const SwGrain *grain, const SwSketch *sketch, double strand_cm, double px)
{
  *light = (SwHankLight){ bundle, strands, yarn, relief, (float) x, (float) y, grain, .strand_cm = (float) strand_cm, .single = smooth (((float) px - 0.8f) / 2.2f) };
  sw_yarn_light_init (&light->strand, sketch->yarn.fibre, (int) sketch->yarn.plies, FINER * px);
}

/* The rope's own roundness in the room it lies in: sky from all sides, and the lamp. */
float
sw_hank_body_light (const SwHankLight *light, const float *normal, float x, float y)
{
  const float facing = normal[0] * SW_LAMP_X + normal[1] * SW_LAMP_Y + normal[2] * SW_LAMP_Z;
  float sky, lamp;

  sw_relief_at (light->relief, x + light->x, y + light->y, &sky, &lamp);
  return SW_RELIEF_SKY * sky * (0.62f + 0.38f * normal[2]) + SW_RELIEF_LAMP * lamp * MAX ((facing + 0.30f) / 1.30f, 0);
}

/* How much of the light beside the paper's edges comes in. */
static float
beside_paper (const SwHankLight *light, float x, float y)
{
  const SwHankHold *paper = &light->paper;
  const float at = x * paper->axis[0] + y * paper->axis[1], off = MAX (paper->from - at, at - paper->to);

  if (paper->to <= paper->from)
    return 1;
  return off > 0 ? 1 - PAPER_SHADE * expf (-off / light->paper_reach) : 1 - PAPER_SHADE;
}

/* Of yarn: what falls on it, and what is thrown from strand to strand into the shade. */
static float
rope_light (const SwHankLight *light, const float *normal, float x, float y)
{
  const float falls = sw_hank_body_light (light, normal, x, y) * beside_paper (light, x, y);

  return falls / (1 - THROWN + THROWN * falls);
}

/* Neighbours and locks of them are not equally bright. */
static float
tone_at (const SwHankLight *light, int strand, float along)
{
  const int locks = light->yarn->n / 6 + 1;

  return 1 + TONE * sw_grain_tone (light->grain, strand + 91, along / 5.0f) + LOCK_TONE * sw_grain_cloud (light->grain, (float) strand * (float) locks / (float) light->yarn->n, locks, along / 4.0f);
}

/* How much light comes down to that height between the strands: 0.5 .. 1.04. */
static float
depth_light (float height)
{
  const float t = CLAMP ((height + 0.75f) / 1.9f, 0.0f, 1.0f);

  return 0.50f + 0.54f * t * t * (3 - 2 * t);
}

/* How much light comes in between a strand and its neighbours, where the strand's own surface at @across faces along the skin. */
static float
groove_light (const SwStrandKnot *knot, float across)
{
  const float *c = knot->course, *n = knot->normal;
  const float flat = 1 / sqrtf (MAX (c[0] * c[0] + c[1] * c[1], 0.01f)), out = sqrtf (MAX (1 - across * across, 0));
  /* The strand's own normal: from its left edge as seen, and towards the eye. */
  const float own[3] = { flat * (c[1] * across - c[0] * c[2] * out), flat * (-c[0] * across - c[1] * c[2] * out), out / flat };
  const float open = own[0] * n[0] + own[1] * n[1] + own[2] * n[2];
  const float aside = own[0] * (c[1] * n[2] - c[2] * n[1]) + own[1] * (c[2] * n[0] - c[0] * n[2]) + own[2] * (c[0] * n[1] - c[1] * n[0]);
  const float turned = open > 0 ? smooth ((1 - open) / 0.42f) : 1;

  return 1 - GROOVE * turned * knot->over[aside > 0];
}

static SwStrandKnot
between (const SwStrandKnot *a, const SwStrandKnot *b, float t)
{
  SwStrandKnot knot = *a;

  for (int i = 0; i < 3; i++)
    {
      knot.normal[i] += (b->normal[i] - a->normal[i]) * t;
      knot.course[i] += (b->course[i] - a->course[i]) * t;
    }
  sw_unit (knot.normal);
  sw_unit (knot.course);
  knot.lift += (b->lift - a->lift) * t;
  for (int i = 0; i < 2; i++)
    knot.over[i] += (b->over[i] - a->over[i]) * t;
  return knot;
}

static int
place_at (const SwHankLight *light, float along)
{
  return MIN ((int) (along / light->bundle->along[light->bundle->n_rings - 1] * SW_HANK_PLACES), SW_HANK_PLACES - 1);
}

static guint32
colour_at (const SwHankLight *light, int strand, float along)
{
  return light->yarn->pixels[(gsize) strand * SW_HANK_PLACES + (gsize) place_at (light, along)];
}

SwHankShade
sw_hank_light_at (const SwHankLight *light, const SwSkinSample *sample, float x, float y)
{
  const SwHankStrands *strands = light->strands;
  const int strand = sample->patch / (strands->n_rings - 1), i = sample->patch % (strands->n_rings - 1);
  const SwStrandKnot *from = &strands->knots[(gsize) strand * (gsize) strands->n_rings + (gsize) i];
  const SwStrandKnot knot = between (from, from + 1, sample->v);
  const float along = strands->along[i] + (strands->along[i + 1] - strands->along[i]) * sample->v;
  /* Each strand has plies of its own, which begin anywhere. */
  const float tight = 1 + 0.12f * light->grain->tones[(strand + 17) & (SW_GRAIN_ROWS - 1)][0], phase = 3.1f * (float) (strand & 63) + 9 * light->grain->tones[(strand + 29) & (SW_GRAIN_ROWS - 1)][1];
  const SwYarnPoint point = { 32 + phase + tight * along / light->strand_cm, sample->u * 0.97f, { knot.course[0], -knot.course[1], knot.course[2] }, (guint32) strand * 977u + 13u };
  const SwYarnShade yarn = sw_yarn_light_at (&light->strand, &point);
  const float near = groove_light (&knot, sample->u) * depth_light (1.2f * knot.lift + 0.8f);
  SwHankShade shade = { .colour = colour_at (light, strand, along) };

  shade.light = rope_light (light, knot.normal, x, y);
  shade.light *= 1 + light->single * (yarn.light / MEAN_STRAND_LIGHT * near - 1);
  shade.light *= tone_at (light, strand, along);
  shade.dye = light->single * yarn.dye;
  return shade;
}

SwHankShade
sw_hank_light_gap (const SwHankLight *light, const SwSkinSample *sample, float x, float y)
{
  const SwBundle *bundle = light->bundle;
  const int i = sample->patch / bundle->n_around;
  const float along = bundle->along[i] + (bundle->along[i + 1] - bundle->along[i]) * sample->v;
  const float round = ((float) (sample->patch % bundle->n_around) + sample->u) / (float) bundle->n_around * (float) light->yarn->n;
  const int strand = MIN ((int) round, light->yarn->n - 1);
  const float across = 2 * (round - (float) strand) - 1;
  SwHankShade shade = { .colour = colour_at (light, strand, along) };
  float normal[3], course[3];
  SwYarnShade yarn;

  sw_skin_normal (bundle, sample, normal, course);
  yarn = sw_yarn_light_at (&light->strand, &(SwYarnPoint){ 32 + along / light->strand_cm, -0.97f * across, { course[0], -course[1], course[2] }, (guint32) strand * 977u + 14u });
  shade.light = rope_light (light, normal, x, y) * tone_at (light, strand, along);
  shade.light *= 1 + light->single * (GAP * (1 - 0.7f * across * across) * yarn.light / MEAN_STRAND_LIGHT - 1);
  return shade;
}
