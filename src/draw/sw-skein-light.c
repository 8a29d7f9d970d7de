/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-skein-light.h"

#include "draw/sw-linear.h"
#include "draw/sw-skein-shape.h"
#include "draw/sw-weave.h"
#include "skein/sw-strand.h"

#include <math.h>
#include <string.h>

/* Fibre in a bloomed strand, g/cm3: the width a strand is drawn with. Ours. */
#define STRAND_DENSITY 0.35

/* Highlights of the weave, for pale yarn's softer shade: see shade(). */
#define PEAK 1.45f

#define SHADOW_CM 0.22f
#define SHADOW_ALPHA 0.55f

/* A window shows one size of pan, the dye sheet another. */
#define KEPT 2

/* Larger pictures are of files, which are drawn once. */
#define MOST_KEPT_PIXELS 3000000

/* What it all depends on. */
typedef struct
{
  SwSkeinShape shape;
  SwFaceWindow window;
  double strand_cm;
  int plies;
} Key;

/* A pixel that the yarn covers in part, or not at all: then the contact shadow beside it is seen alone. */
typedef struct
{
  guint32 at;
  float cover;
  guint32 shadow; /* the pixel where there is no cover */
} Rim;

struct _SwSkeinLight
{
  gatomicrefcount refs;
  Key key;
  guint32 *from; /* per pixel, the far edge first: the place in the face that is seen there */
  float *light;  /* on it, in linear light */
  GArray *rims;  /* of Rim */
  SwLinear linear;
};

/* Making */

typedef struct
{
  const Key *key;
  SwWeave weave;
  float gap_cm, px_per_cm;
} Loom;

static Key
key_of (const SwSketch *sketch, const SwFaceWindow *window)
{
  const SwYarn *yarn = &sketch->yarn;
  Key key;

  memset (&key, 0, sizeof key); /* its padding is compared, too */
  sw_skein_shape_init (&key.shape, sketch);
  key.window = *window;
  key.strand_cm = sqrt (4 * sw_tex (yarn->metres_per_100_g) * 1e-5 / (G_PI * STRAND_DENSITY));
  key.plies = (int) yarn->plies;
  return key;
}

static void
loom_init (Loom *loom, const Key *key)
{
  const double px_per_cm = key->window.nx / key->shape.length;

  loom->key = key;
  loom->px_per_cm = (float) px_per_cm;
  loom->gap_cm = (float) MIN (0.02 * key->shape.lane / key->shape.runs_across, 0.1);
  sw_weave_init (&loom->weave, key->strand_cm, key->plies, px_per_cm, key->window.left, key->window.width);
}

/* Where the strand that is seen at a pixel takes its colour: it is dyed where it lies, so a speck's edge follows the strands. */
static guint32
strand_place (const Loom *loom, const SwWeavePoint *weave, int column, int row)
{
  const SwFaceWindow *window = &loom->key->window;
  const int i = column + (int) lrintf (weave->shift_cm * loom->px_per_cm), j = row - (int) lrintf (weave->off_cm * loom->px_per_cm);

  return (guint32) CLAMP (j, 0, window->height - 1) * (guint32) window->width + (guint32) CLAMP (i, 0, window->width - 1);
}

/* The bundle is round at its edges and falls away at a fold; light comes from the far side. 1 in the mean across. */
static float
body_light (const SwSkeinPoint *point)
{
  const float a = point->across, a2 = a * a;

  return (1.06f - 0.42f * a2 * a2 * a2 + 0.06f * a) * (1 - 0.5f * point->end * point->end);
}

static void
add_rim (SwSkeinLight *self, gsize at, float cover, float edge)
{
  Rim rim = { (guint32) at, cover, 0 };

  if (cover <= 0)
    rim.shadow = (guint32) (255 * SHADOW_ALPHA * expf (edge / SHADOW_CM)) << 24;
  g_array_append_val (self->rims, rim);
}

/* One pixel at @at: the yarn, its edge softened by a pixel, over the contact shadow beside it. @column and @row are of the window. */
static void
lay_pixel (SwSkeinLight *self, const Loom *loom, const SwWeaveRow *weave_row, int column, int row, gsize at)
{
  const SwFaceWindow *window = &loom->key->window;
  const float from_near = (float) (window->near + row) + 0.5f;
  const SwSkeinPoint point = sw_skein_shape_at (&loom->key->shape, (window->left + column + 0.5) / (double) loom->px_per_cm, (double) (from_near / loom->px_per_cm));
  const float ragged = 1 + 12 * loom->weave.layers[0].wander_a[column];
  /* The gap is between bundles; at the outermost edges the yarn reaches as far as the skein does. */
  const float rim = MIN (from_near, (float) window->ny - from_near) / loom->px_per_cm;
  const float edge = point.inside - MIN (loom->gap_cm * ragged, 0.01f + 0.4f * rim);
  const float cover = CLAMP (edge * loom->px_per_cm + 0.5f, 0, 1);
  SwWeavePoint weave;

  if (cover < 1)
    add_rim (self, at, cover, edge);
  if (cover <= 0)
    return;
  weave = sw_weave_at (&loom->weave, weave_row, column, point.strand);
  self->from[at] = strand_place (loom, &weave, column, row);
  self->light[at] = weave.light * body_light (&point);
}

SwSkeinLight *
sw_skein_light_new (const SwSketch *sketch, const SwFaceWindow *window)
{
  SwSkeinLight *self = g_new (SwSkeinLight, 1);
  const gsize n = (gsize) window->width * (gsize) window->height;
  Loom loom;

  g_atomic_ref_count_init (&self->refs);
  self->key = key_of (sketch, window);
  self->from = g_new0 (guint32, n);
  self->light = g_new0 (float, n);
  self->rims = g_array_new (FALSE, FALSE, sizeof (Rim));
  sw_linear_init (&self->linear);
  loom_init (&loom, &self->key);
  for (int j = 0; j < window->height; j++)
    {
      const int row = window->height - 1 - j; /* the face counts from the near edge, the picture from the far one */
      const SwWeaveRow weave_row = sw_weave_row ((window->near + row + 0.5) / (double) loom.px_per_cm);

      for (int i = 0; i < window->width; i++)
        lay_pixel (self, &loom, &weave_row, i, row, (gsize) j * (gsize) window->width + (gsize) i);
    }
  sw_weave_clear (&loom.weave);
  return self;
}

void
sw_skein_light_unref (SwSkeinLight *self)
{
  if (!g_atomic_ref_count_dec (&self->refs))
    return;
  g_free (self->from);
  g_free (self->light);
  g_array_unref (self->rims);
  g_free (self);
}

/* Keeping */

static GMutex lock;
static SwSkeinLight *kept[KEPT]; /* the last used first */

static SwSkeinLight *
ref (SwSkeinLight *self)
{
  g_atomic_ref_count_inc (&self->refs);
  return self;
}

/* Returns: (transfer full) (nullable): moved to the front */
static SwSkeinLight *
find (const Key *key)
{
  for (int i = 0; i < KEPT && kept[i] != NULL; i++)
    if (memcmp (&kept[i]->key, key, sizeof *key) == 0)
      {
        SwSkeinLight *found = kept[i];

        memmove (&kept[1], &kept[0], sizeof kept[0] * (gsize) i);
        kept[0] = found;
        return ref (found);
      }
  return NULL;
}

static void
keep (SwSkeinLight *self)
{
  SwSkeinLight *last;

  g_mutex_lock (&lock);
  last = kept[KEPT - 1];
  memmove (&kept[1], &kept[0], sizeof kept[0] * (KEPT - 1));
  kept[0] = ref (self);
  g_mutex_unlock (&lock);
  g_clear_pointer (&last, sw_skein_light_unref);
}

SwSkeinLight *
sw_skein_light_get (const SwSketch *sketch, const SwFaceWindow *window)
{
  const Key key = key_of (sketch, window);
  SwSkeinLight *self;

  g_mutex_lock (&lock);
  self = find (&key);
  g_mutex_unlock (&lock);
  if (self != NULL)
    return self;
  self = sw_skein_light_new (sketch, window);
  if ((gsize) window->width * (gsize) window->height <= MOST_KEPT_PIXELS)
    keep (self);
  return self;
}

/* Shading */

/* Highlights stay within the white: what has little room above it takes less of the light and shade. */
static inline guint32
shade (const SwLinear *linear, guint32 colour, float light)
{
  float rgb[3], room, soft;

  sw_linear_decode (linear, colour, rgb);
  room = 1 / MAX (MAX (rgb[0], rgb[1]), MAX (rgb[2], 0.01f));
  soft = 1 + (light - 1) * CLAMP ((room - 1) / (PEAK - 1), 0.4f, 1);
  for (int i = 0; i < 3; i++)
    rgb[i] *= soft;
  return sw_linear_pixel (linear, rgb);
}

static guint32
rim_pixel (guint32 yarn, float cover)
{
  guint32 alpha;

  yarn = sw_linear_premultiply (yarn, cover);
  alpha = (yarn >> 24) + (guint32) ((float) (255 - (yarn >> 24)) * SHADOW_ALPHA);
  return (yarn & 0xffffff) | alpha << 24;
}

void
sw_skein_light_shade (const SwSkeinLight *self, const guint32 *face, int stride, guint32 *pixels)
{
  const gsize width = (gsize) self->key.window.width, height = (gsize) self->key.window.height;

  for (gsize j = 0; j < height; j++)
    for (gsize i = 0; i < width; i++)
      pixels[j * (gsize) stride + i] = shade (&self->linear, face[self->from[j * width + i]], self->light[j * width + i]);
  for (guint i = 0; i < self->rims->len; i++)
    {
      const Rim *rim = &g_array_index (self->rims, Rim, i);
      guint32 *pixel = &pixels[rim->at / width * (gsize) stride + rim->at % width];

      *pixel = rim->cover > 0 ? rim_pixel (*pixel, rim->cover) : rim->shadow;
    }
}
