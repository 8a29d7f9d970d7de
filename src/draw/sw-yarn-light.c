/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-yarn-light.h"

#include "sketch/sw-chance.h"

/* g/cm3 within the outline of a relaxed strand. */
#define LOFT 0.16

/* What fibres look like: matt wool stands off in all directions, silk and nylon lie smooth. */
static const struct
{
  float sheen, sharpness, fuzz, hair, valley, grain;
} fibres[] = {
  [SW_FIBRE_SUPERWASH_WOOL] = { 0.10f, 6, 10, 0.62f, 0.17f, 0.16f },
  [SW_FIBRE_WOOL] = { 0.03f, 4, 20, 0.95f, 0.17f, 0.18f },
  [SW_FIBRE_SUPERWASH_NYLON] = { 0.13f, 7, 9, 0.58f, 0.17f, 0.15f },
  [SW_FIBRE_NYLON] = { 0.36f, 12, 3, 0.35f, 0.14f, 0.11f },
  [SW_FIBRE_SILK] = { 0.50f, 14, 3, 0.35f, 0.14f, 0.12f },
};

/* From this width of a strand on single fibres show, and how many more of those that stand off. */
#define SINGLE_FROM_PX 18
#define FUZZ_NEAR 1.2f

/* Towards the light: from the upper left, well in front. */
static const float light[3] = { -0.43f, 0.52f, 0.738f };

static float
smooth (double t)
{
  t = CLAMP (t, 0, 1);
  return (float) (t * t * (3 - 2 * t));
}

void
sw_yarn_light_init (SwYarnLight *yarn, SwFibre fibre, int plies, double diameter_px)
{
  const float room = smooth ((diameter_px - 2.5) / 5), fine = smooth ((diameter_px - 6) / 10), finest = smooth ((diameter_px - SINGLE_FROM_PX) / 12);

  *yarn = (SwYarnLight){
    .plies = plies,
    .twist = plies == 1 ? 0.10f : 0.165f, /* a surface angle of about 27 degrees */
    .relief = room * (plies == 1 ? 0.16f : 0.62f),
    .valley = room * fibres[fibre].valley * (plies == 1 ? 0.4f : 1),
    .grain = fine * fibres[fibre].grain,
    .single = finest * fibres[fibre].grain * 1.3f,
    .sheen = fibres[fibre].sheen,
    .sharpness = fibres[fibre].sharpness,
    .fuzz = fine * fibres[fibre].fuzz * (plies == 1 ? 1.5f : 1) * (1 + FUZZ_NEAR * finest),
    .hair = fibres[fibre].hair,
    .light = { light[0], light[1], light[2] },
  };
}

void
sw_yarn_light_turn (SwYarnLight *yarn, int quarters)
{
  for (int i = 0; i < quarters; i++)
    {
      const float x = yarn->light[0];

      /* The drawing turns clockwise, so its light is turned back. */
      yarn->light[0] = -yarn->light[1];
      yarn->light[1] = x;
    }
}

double
sw_yarn_diameter_cm (double metres_per_100_g)
{
  return sqrt (4 / (G_PI * LOFT * metres_per_100_g));
}

/* 0 .. 1, the same for the same place. */
static inline float
speck (guint32 seed, int a, int b)
{
  guint32 hash = seed ^ (guint32) a * 0x9e3779b1u ^ (guint32) b * 0x85ebca77u;

  hash = (hash ^ hash >> 15) * 0x2c1b3c6du;
  hash = (hash ^ hash >> 12) * 0x297a2d39u;
  return (float) ((hash ^ hash >> 15) >> 8) * 0x1p-24f;
}

/* Smooth chance over a plane, -1 .. 1. */
static float
cloud_at (guint32 seed, float a, float b)
{
  const int i = (int) a, j = (int) b;
  const float u = a - (float) i, v = b - (float) j;
  const float low = speck (seed, i, j) * (1 - u) + speck (seed, i + 1, j) * u;
  const float high = speck (seed, i, j + 1) * (1 - u) + speck (seed, i + 1, j + 1) * u;

  return 2 * (low * (1 - v) + high * v) - 1;
}

/* Fibres that run with the ply, long along and thin across: locks of them, and single ones. */
static float
grain_at (guint32 seed, float along, float turns)
{
  return 0.5f * cloud_at (seed, along * 0.9f + 64, turns * 3.3f + 64) + 0.7f * cloud_at (seed + 1, along * 1.7f + 64, turns * 9.0f + 96);
}

/* Seen from near: single fibres along the ply, and those that wander across it from one lock to the next. */
static float
single_at (guint32 seed, float along, float turns)
{
  const float with = cloud_at (seed + 2, along * 2.3f + 64, turns * 31 + 512), across = cloud_at (seed + 3, along * 6 + turns * 3 + 128, turns * 13 - along * 5 + 256);

  return 0.75f * with + 0.9f * across * fabsf (across);
}

/*
 * The plies as seen at one place: @turn counts them round the strand; @at is
 * -1 .. 1 from groove to groove. The wanted depth is 0 on the back of a ply
 * and 1 in the groove; its mean is 0.28.
 */
static float
ply_at (float turn, float *at)
{
  const float on = turn - floorf (turn);

  *at = 2 * on - 1;
  return *at * *at * *at * *at * (1.4f - 0.4f * *at * *at);
}

SwYarnShade
sw_yarn_light_at (const SwYarnLight *yarn, const SwYarnPoint *point)
{
  const float *t = point->course, *l = yarn->light, s = point->across;
  const float flat = 1 / sqrtf (MAX (t[0] * t[0] + t[1] * t[1], 0.01f));
  const float bx = -t[1] * flat, by = t[0] * flat;  /* to the left of the course */
  const float out = sqrtf (MAX (1 - s * s, 0.02f)); /* towards the eye */
  const float ox = -t[2] * t[0] * flat, oy = -t[2] * t[1] * flat, oz = 1 / flat;
  const float angle = s * (1 + 0.18f * s * s + 0.39f * s * s * s * s); /* near enough the arc sine */
  const float turns = (point->along * yarn->twist + angle * 0.159f) * (float) yarn->plies;
  const float lean = yarn->plies == 1 ? 0 : yarn->relief;
  float at, facing, tangent, shine, groove, nx, ny, nz, grain = 0;
  float px, py, pz; /* along the surface, across the ply */
  SwYarnShade shade;

  groove = ply_at (turns + 64, &at);
  px = 0.45f * t[0] + 0.89f * (bx * out - ox * s);
  py = 0.45f * t[1] + 0.89f * (by * out - oy * s);
  pz = 0.45f * t[2] - 0.89f * oz * s;
  nx = bx * s + ox * out + lean * at * px;
  ny = by * s + oy * out + lean * at * py;
  nz = oz * out + lean * at * pz;
  facing = (nx * l[0] + ny * l[1] + nz * l[2]) / sqrtf (nx * nx + ny * ny + nz * nz);
  if (yarn->grain > 0)
    grain = yarn->grain * grain_at (point->seed, point->along, turns);
  if (yarn->single > 0)
    grain += yarn->single * single_at (point->seed, point->along, turns);
  /* Fibres lie along the ply, which winds round the strand: their sine to the half vector of light and eye. */
  tangent = (0.89f * t[0] - 0.45f * bx) * l[0] + (0.89f * t[1] - 0.45f * by) * l[1] + (0.89f * t[2]) * (l[2] + 1);
  tangent /= 1.87f;
  /* sin^p of it, near enough */
  shine = 1 / (1 + 0.5f * yarn->sharpness * tangent * tangent);
  shine *= shine * MAX (facing, 0.0f);
  shade.light = 0.34f + 0.66f * MAX ((facing + 0.22f) / 1.22f, 0.0f) + yarn->sheen * shine;
  shade.light *= (1 - 0.34f * yarn->relief * groove) * (1 - 0.22f * s * s * s * s) * (1 + grain);
  shade.dye = yarn->valley * (groove - 0.28f) - 0.5f * grain;
  return shade;
}

int
sw_yarn_hairs (const SwYarnLight *yarn, double length)
{
  return (int) (yarn->fuzz * length);
}

SwYarnHair
sw_yarn_hair (const SwYarnLight *yarn, guint64 seed, int number)
{
  const guint64 address = sw_chance_mix (sw_chance_mix (0x68616972, seed), (guint64) number);
  const float far = (float) sw_chance_even (sw_chance_mix (address, 5));

  return (SwYarnHair){
    .along = (float) sw_chance_even (sw_chance_mix (address, 1)),
    .side = sw_chance_even (sw_chance_mix (address, 2)) < 0.5 ? -1 : 1,
    .lean = (float) (2.6 * (sw_chance_even (sw_chance_mix (address, 3)) - 0.5)),
    .curl = (float) (2.4 * (sw_chance_even (sw_chance_mix (address, 4)) - 0.5)),
    .length = yarn->hair * (0.25f + 0.75f * far * far),
    .weight = 0.35f + 0.65f * (float) sw_chance_even (sw_chance_mix (address, 6)),
  };
}
