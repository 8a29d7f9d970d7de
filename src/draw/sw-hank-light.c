/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-hank-light.h"

#include "draw/sw-strands.h"

/* How unlike in brightness neighbours and locks of them are. */
#define TONE 0.07f
#define LOCK_TONE 0.07f

#define MEAN_STRAND_LIGHT 0.78f

static float
smooth (float t)
{
  t = CLAMP (t, 0, 1);
  return t * t * (3 - 2 * t);
}

void
sw_hank_light_init (SwHankLight *light, const SwBundle *bundle, const SwHankYarn *yarn, const SwRelief *relief, double x, double y, const SwGrain *grain, const SwSketch *sketch, double strand_cm, double px)
{
  *light = (SwHankLight){ bundle, yarn, relief, (float) x, (float) y, grain, .strand_cm = (float) strand_cm, .single = smooth (((float) px - 0.8f) / 2.2f) };
  sw_yarn_light_init (&light->strand, sketch->yarn.fibre, (int) sketch->yarn.plies, px);
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

SwHankShade
sw_hank_light_at (const SwHankLight *light, const SwSkinSample *sample, float x, float y)
{
  const SwBundle *bundle = light->bundle;
  const gsize i = (gsize) (sample->patch / bundle->n_around), j = (gsize) (sample->patch % bundle->n_around);
  const float along = bundle->along[i] + (bundle->along[i + 1] - bundle->along[i]) * sample->v;
  const float round = ((float) j + sample->u) * (float) light->yarn->n / (float) bundle->n_around;
  const int place = MIN ((int) (along / bundle->along[bundle->n_rings - 1] * SW_HANK_PLACES), SW_HANK_PLACES - 1);
  const SwStrandTop top = sw_strands_top (light->grain, round, light->yarn->n, along, light->yarn->sunk + place, SW_HANK_PLACES);
  SwHankShade shade = { .colour = light->yarn->pixels[(gsize) top.strand * SW_HANK_PLACES + (gsize) place] };
  float normal[3], course[3];
  SwYarnPoint point;
  SwYarnShade yarn;

  sw_skin_normal (bundle, sample, normal, course);
  point = (SwYarnPoint){ along / light->strand_cm, -top.across * 0.92f, { course[0], -course[1], course[2] }, (guint32) top.strand * 977u + 13u };
  yarn = sw_yarn_light_at (&light->strand, &point);
  shade.light = sw_hank_body_light (light, normal, x, y);
  shade.light *= 1 + light->single * (yarn.light / MEAN_STRAND_LIGHT * sw_strands_depth_light (top.height) - 1);
  shade.light *= 1 + TONE * sw_grain_tone (light->grain, top.strand + 91, along / 5.0f) + LOCK_TONE * sw_grain_cloud (light->grain, round / 6, light->yarn->n / 6 + 1, along / 4.0f);
  shade.dye = light->single * yarn.dye;
  return shade;
}
