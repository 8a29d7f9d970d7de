/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-hank-shape.h"

#include "sketch/sw-chance.h"
#include "skein/sw-strand.h"

#include <math.h>

/* Fibre in a loosely twisted hank, g/cm3: 100 g of sock yarn make one of about 27 by 5 cm (common practice, no source). */
#define DENSITY 0.26

/* Of the turns put into one half, this share goes into winding the halves round each other: balanced two-ply (common practice, no source). */
#define PLIED_SHARE 0.62

/* Strands lie aslant in the rope, and loops take some length. */
#define TAKEN_UP 0.94

/* A loop longer than two hands can hold apart is laid round itself first, until it is about this long (common practice, no source). */
#define MOST_LOOP_CM 260
#define USUAL_LOOP_CM 150

#define OFFSET 0.80 /* of a half's middle from the hank's, in radii: they press on each other */
#define SQUASH 0.13f
#define N_RINGS 720
#define N_AROUND 72
#define SMOOTHED 0.30 /* radii */

/* Towards the fold the halves come apart and lie flat, so that the strands fan round an eye: radii, but the shares. */
#define OPENING 2.6 /* begins so far before the fold */
#define EYE 0.13    /* half the width of the eye */
#define FANNED 0.20 /* how much flatter the rope is there, and as much taller */
#define SLIMMER 0.84
#define FOLD_ASLANT 0.5 /* radians between the folds that lie most unlike */
#define ROUND 1.06 /* from the eye's middle to the rope's, on along the hank */

/* A paper band holds the halves together: lengths in radii, along the hank as a share of its length. */
#define LABEL_AT 0.52
#define LABEL_WIDE 3.2
#define LABEL_LONGEST 0.34 /* of the hank */
#define LABEL_RADIUS 1.53
#define SQUEEZED 0.86 /* what is beneath it */
#define LABEL_FADES 1.6
#define LABEL_FLAT 0.05   /* lying on the table */
#define LABEL_RAISED 0.30  /* above whatever strand heaves beneath it */
#define LABEL_UNEVEN 0.020 /* drawn over what is beneath it */
#define LABEL_RINGS 24

/* How unlike the knots are: where the one end goes round, and how far the other looks out; shares. */
#define KNOT_UNLIKE 0.7
#define END_UNLIKE 0.5

/* The path before it is smoothed. */
typedef struct
{
  const SwHankShape *shape;
  guint64 seed;
  double tuck; /* turns round the neck: from the back, where the rope's end is not seen */
  double flat; /* how far the other end turns until it lies flat */
  SwBundleRing rings[N_RINGS];
  int n;
} Path;

/* Stretches of the rope, in the order of the path. */
typedef enum
{
  TUCK,  /* round the other half's neck */
  THERE, /* the first half */
  FOLD,
  BACK, /* the second half */
  PUFF, /* the end that was pulled through */
  N_STRETCHES,
} Stretch;

static double
smooth (double t)
{
  t = CLAMP (t, 0, 1);
  return t * t * (3 - 2 * t);
}

static double
chance (const Path *path, guint64 part)
{
  return sw_chance_even (sw_chance_mix (path->seed, part));
}

/* The halves' angle at @x; the winding runs out before the fold, which lies flat, so that it is seen as a bend. */
static double
angle_at (const Path *path, double x)
{
  const SwHankShape *shape = path->shape;
  const double ease = MIN (OPENING * shape->radius_cm / shape->length_cm, 0.5), left = 1 - x / shape->length_cm;
  const double wound = left < ease ? left * left / (2 * ease) : left - ease / 2;

  return G_PI + FOLD_ASLANT * (chance (path, 3) - 0.5) - 2 * G_PI * shape->plied * wound / (1 - ease / 2);
}

/* How far the halves have come apart at @x: 0 .. 1 at the fold. */
static double
opened_at (const Path *path, double x)
{
  return smooth (1 - (path->shape->length_cm - x) / (OPENING * path->shape->radius_cm));
}

static SwBundleRing
ring_at (const Path *path, double x, double from_middle, double angle, double radius, double squash)
{
  const double c = cos (angle), s = sin (angle);

  (void) path;
  return (SwBundleRing){ (float) x, (float) (from_middle * c), (float) (from_middle * s), (float) radius, 0, (float) c, (float) s, (float) squash };
}

/* A little thicker here and thinner there; less so round the eye, which stays open. */
static double
thickness (const Path *path, double x, guint64 half)
{
  const double at = x / path->shape->length_cm * 2 * G_PI;

  return 1 + (1 - 0.6 * opened_at (path, x)) * (0.045 * sin (1.3 * at + 6 * chance (path, 10 + half)) + 0.035 * sin (2.9 * at + 6 * chance (path, 20 + half)));
}

/* How much slimmer the halves are at @x for the paper round them. */
static double
squeezed_at (const Path *path, double x)
{
  const SwHankShape *shape = path->shape;
  const double off = fabs (x - LABEL_AT * shape->length_cm) - shape->label_cm / 2;

  return shape->label_cm > 0 ? SQUEEZED + (1 - SQUEEZED) * smooth (off / (LABEL_FADES * shape->radius_cm)) : 1;
}

/* One of the halves, on the side of @side: 1 or -1. */
static SwBundleRing
half_at (const Path *path, double x, double side)
{
  const double r = path->shape->radius_cm * squeezed_at (path, x), open = opened_at (path, x);
  const double from_middle = r * (OFFSET + (EYE + SLIMMER * (1 - FANNED) - OFFSET) * open);

  return ring_at (path, x, side * from_middle, angle_at (path, x), r * thickness (path, x, side < 0) * (1 + (SLIMMER - 1) * open), (double) SQUASH + (FANNED - (double) SQUASH) * open);
}

/* Round the eye, from one half at 0 to the other at 1; what presses on the strands there is the bend itself. */
static SwBundleRing
fold_at (const Path *path, double t)
{
  const double r = path->shape->radius_cm, length = path->shape->length_cm, across = EYE + SLIMMER * (1 - FANNED);
  const double c = cos (G_PI * t), s = sin (G_PI * t);
  const double thick = thickness (path, length, 0) + (thickness (path, length, 1) - thickness (path, length, 0)) * t;
  SwBundleRing ring = ring_at (path, length + ROUND * r * s, r * across * c, angle_at (path, length), r * thick * SLIMMER, FANNED);

  ring.push_y *= (float) c;
  ring.push_z *= (float) c;
  ring.push_x = (float) s;
  return ring;
}

static SwBundleRing
point_at (const Path *path, Stretch stretch, double t)
{
  const double r = path->shape->radius_cm, length = path->shape->length_cm, off = OFFSET * r;
  const double start = angle_at (path, 0);
  double in;

  switch (stretch)
    {
    case TUCK: /* comes out from beneath, goes once round the neck and on into the first half */
      in = smooth (t * 1.5 - 0.5);
      return ring_at (path, r * -0.75 * (1 + KNOT_UNLIKE * (chance (path, 4) - 0.5)) * (1 - t), off * (1.30 - 0.30 * in), start + 2 * G_PI * path->tuck * (1 - t), r * (0.52 * smooth (t * 6) * (1 - in) + in), SQUASH * (2 * in - 1));
    case THERE:
      return half_at (path, t * length, 1);
    case FOLD:
      return fold_at (path, t);
    case BACK:
      return half_at (path, (1 - t) * length, -1);
    case PUFF: /* the other end's strands turn round here, half of them on their way out and half on their way back */
    default:
      in = smooth (t * 3);
      return ring_at (path, -0.2 * r - 1.35 * (1 + END_UNLIKE * (chance (path, 5) - 0.5)) * r * sin (G_PI * t), -0.62 * off * cos (G_PI * t), start + in * (path->flat + FOLD_ASLANT * (chance (path, 6) - 0.5)), r * (1 - 0.34 * in), SQUASH * (1 - in));
    }
}

static void
trace (Path *path)
{
  static const double shares[N_STRETCHES] = { 0.14, 0.36, 0.07, 0.36, 0.07 };

  const double start = angle_at (path, 0);

  path->flat = G_PI * round (start / G_PI) - start;
  path->tuck = (-0.5 * G_PI - start) / (2 * G_PI);
  path->tuck += ceil (-1.55 - path->tuck);
  path->n = 0;
  for (int stretch = 0; stretch < N_STRETCHES; stretch++)
    {
      const int n = (int) (shares[stretch] * N_RINGS);

      for (int i = 0; i < n && path->n < N_RINGS; i++)
        path->rings[path->n++] = point_at (path, (Stretch) stretch, stretch == N_STRETCHES - 1 ? i / (n - 1.0) : (double) i / n);
    }
}

static double
path_length (const Path *path)
{
  double length = 0;

  for (int i = 1; i < path->n; i++)
    {
      const SwBundleRing *a = &path->rings[i - 1], *b = &path->rings[i];

      length += sqrt ((double) ((b->x - a->x) * (b->x - a->x) + (b->y - a->y) * (b->y - a->y) + (b->z - a->z) * (b->z - a->z)));
    }
  return length;
}

/* Rounds the joints of the stretches: each place goes to the middle of what is within reach, many times. */
static void
round_joints (Path *path)
{
  const double step = path_length (path) / path->n;
  const double reach = SMOOTHED * path->shape->radius_cm / step;
  const int times = MAX ((int) (reach * reach), 1);

  for (int k = 0; k < times; k++)
    for (int parity = 1; parity <= 2; parity++)
      for (int i = parity; i < path->n - 1; i += 2)
        {
          const SwBundleRing *a = &path->rings[i - 1], *b = &path->rings[i + 1];
          SwBundleRing *ring = &path->rings[i];

          ring->x = 0.5f * ring->x + 0.25f * (a->x + b->x);
          ring->y = 0.5f * ring->y + 0.25f * (a->y + b->y);
          ring->z = 0.5f * ring->z + 0.25f * (a->z + b->z);
          ring->radius = 0.5f * ring->radius + 0.25f * (a->radius + b->radius);
          ring->squash = 0.5f * ring->squash + 0.25f * (a->squash + b->squash);
        }
}

/* No hank is ruler-straight: how far it is off at @x. */
static double
bent_at (const Path *path, double x)
{
  const SwHankShape *shape = path->shape;
  const double bow = (chance (path, 1) - 0.5) * 0.034 * shape->length_cm, sway = (chance (path, 2) - 0.5) * 0.018 * shape->length_cm;
  const double t = x / shape->length_cm;

  return bow * (4 * t * (1 - t) - 0.6) + sway * sin (2 * G_PI * t);
}

static void
bend (Path *path)
{
  for (int i = 0; i < path->n; i++)
    path->rings[i].y += (float) bent_at (path, (double) path->rings[i].x);
}

/* The length at which the path takes just the rope that there is. */
static void
find_length (SwHankShape *shape)
{
  g_autofree Path *path = g_new0 (Path, 1);
  double low = 2 * shape->radius_cm, high = shape->rope_cm;

  path->shape = shape;
  for (int i = 0; i < 24; i++)
    {
      shape->length_cm = (low + high) / 2;
      trace (path);
      if (path_length (path) < TAKEN_UP * shape->rope_cm)
        low = shape->length_cm;
      else
        high = shape->length_cm;
    }
}

/* The halves cannot be wound so closely that the hank would be shorter than this share of a half. */
#define SHORTEST 0.36
#define ENDS 0.78 /* of a half that is left by tuck, fold and end */

static double
most_plied (const SwHankShape *shape)
{
  const double half = ENDS * TAKEN_UP * shape->rope_cm / 2;

  return half * sqrt (1 - SHORTEST * SHORTEST) / (2 * G_PI * OFFSET * shape->radius_cm);
}

void
sw_hank_shape_init (SwHankShape *shape, const SwSketch *sketch)
{
  const double tex = sw_tex (sketch->yarn.metres_per_100_g) * 1e-5; /* g/cm */
  const double strand = sw_strand_length (sketch->yarn.mass_g, sketch->yarn.metres_per_100_g);
  const double per_half = sketch->listing.twist_turns / 2;

  shape->rounds = sketch->reel.circumference_cm > MOST_LOOP_CM ? (int) lrint (sketch->reel.circumference_cm / USUAL_LOOP_CM) : 1;
  shape->rope_cm = sketch->reel.circumference_cm / shape->rounds / 2;
  shape->wraps = strand / (2 * shape->rope_cm);
  shape->strand_cm = sqrt (4 * tex / (G_PI * DENSITY));
  shape->radius_cm = sqrt (2 * shape->wraps * tex / (DENSITY * G_PI));
  shape->radius_cm = MIN (shape->radius_cm, 0.09 * shape->rope_cm);
  shape->around = MAX ((int) lrint (2 * G_PI * shape->radius_cm / shape->strand_cm), 6);
  shape->plied = MIN (PLIED_SHARE * per_half, most_plied (shape));
  shape->left = per_half - shape->plied;
  shape->label_cm = 0;
  find_length (shape);
  if (sketch->listing.label != SW_LABEL_NONE)
    shape->label_cm = MIN (LABEL_WIDE * shape->radius_cm, LABEL_LONGEST * shape->length_cm);
}

void
sw_hank_shape_vary (SwHankShape *shape, guint64 seed)
{
  static const double shares[] = { 0.14, 0.16, 0.05 }; /* between the most unlike (common practice, no source) */
  double *const lengths[] = { &shape->plied, &shape->left, &shape->length_cm };

  for (int i = 0; i < 3; i++)
    *lengths[i] *= 1 + shares[i] * (sw_chance_even (sw_chance_mix (seed, 0x76617279 + (guint64) i)) - 0.5);
  shape->plied = MIN (shape->plied, most_plied (shape));
}

void
sw_hank_shape_bundle (const SwHankShape *shape, guint64 seed, SwBundle *bundle)
{
  g_autofree Path *path = g_new0 (Path, 1);

  path->shape = shape;
  path->seed = seed;
  trace (path);
  round_joints (path);
  bend (path);
  sw_bundle_init (bundle, path->rings, path->n, N_AROUND, -2 * shape->left, 0.07, seed);
}

double
sw_hank_shape_label (const SwHankShape *shape, guint64 seed, SwBundle *band)
{
  const Path path = { .shape = shape, .seed = seed };
  const double radius = LABEL_RADIUS * shape->radius_cm;
  SwBundleRing rings[LABEL_RINGS];

  for (int i = 0; i < LABEL_RINGS; i++)
    {
      const double x = LABEL_AT * shape->length_cm + shape->label_cm * (i / (LABEL_RINGS - 1.0) - 0.5);

      rings[i] = ring_at (&path, x, 0, G_PI_2, radius, LABEL_FLAT);
      rings[i].y = (float) bent_at (&path, x);
      rings[i].z = (float) (LABEL_RAISED * shape->radius_cm);
    }
  sw_bundle_init (band, rings, LABEL_RINGS, N_AROUND, 0, LABEL_UNEVEN, seed);
  return radius;
}
