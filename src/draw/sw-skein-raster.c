/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-skein-raster.h"

#include "colour/sw-mix.h"
#include "draw/sw-linear.h"
#include "draw/sw-skein-shape.h"
#include "draw/sw-weave.h"
#include "skein/sw-strand.h"

#include <math.h>

/* Fibre in a bloomed strand, g/cm3: the width a strand is drawn with. Ours. */
#define STRAND_DENSITY 0.35

/* Highlights of the weave, for pale yarn's softer shade: see shade(). */
#define PEAK 1.45f

#define SHADOW_CM 0.22f
#define SHADOW_ALPHA 0.55f

typedef struct
{
  SwSkeinShape shape;
  SwWeave weave;
  SwLinear linear;
  const SwFaceWindow *window;
  float gap_cm, px_per_cm;
  guint32 *face; /* the window of the forecast's colours, the near edge first */
} Skein;

static void
read_face (Skein *skein, const SwForecast *forecast, gboolean second_face)
{
  const gsize n = (gsize) skein->window->width * (gsize) skein->window->height;
  g_autofree float *xyz = g_new (float, 3 * n);

  sw_forecast_face_window (forecast, second_face, skein->window, xyz, xyz + n, xyz + 2 * n);
  sw_pixels_from_xyz (xyz, xyz + n, xyz + 2 * n, 1, n, skein->face);
}

static void
skein_init (Skein *skein, const SwForecast *forecast, gboolean second_face, const SwFaceWindow *window)
{
  const double px_per_cm = window->nx / sw_sketch_lay_length (forecast->sketch);
  const SwYarn *yarn = &forecast->sketch->yarn;
  const double strand = sqrt (4 * sw_tex (yarn->metres_per_100_g) * 1e-5 / (G_PI * STRAND_DENSITY));

  sw_skein_shape_init (&skein->shape, forecast->sketch);
  sw_weave_init (&skein->weave, strand, (int) yarn->plies, px_per_cm, window->left, window->width);
  sw_linear_init (&skein->linear);
  skein->window = window;
  skein->px_per_cm = (float) px_per_cm;
  skein->gap_cm = (float) MIN (0.02 * skein->shape.lane / skein->shape.runs_across, 0.1);
  skein->face = g_new (guint32, (gsize) window->width * (gsize) window->height);
  read_face (skein, forecast, second_face);
}

static void
skein_clear (Skein *skein)
{
  sw_weave_clear (&skein->weave);
  g_free (skein->face);
}

/* The colour of the strand that is seen at a pixel: a strand is dyed where it lies, so a speck's edge follows the strands. */
static guint32
strand_colour (const Skein *skein, const SwWeavePoint *weave, int column, int row)
{
  const SwFaceWindow *window = skein->window;
  const int i = column + (int) lrintf (weave->shift_cm * skein->px_per_cm), j = row - (int) lrintf (weave->off_cm * skein->px_per_cm);

  return skein->face[(gsize) CLAMP (j, 0, window->height - 1) * (gsize) window->width + (gsize) CLAMP (i, 0, window->width - 1)];
}

/* The bundle is round at its edges and falls away at a fold; light comes from the far side. 1 in the mean across. */
static float
body_light (const SwSkeinPoint *point)
{
  const float a = point->across, a2 = a * a;

  return (1.06f - 0.42f * a2 * a2 * a2 + 0.06f * a) * (1 - 0.5f * point->end * point->end);
}

/* Highlights stay within the white: what has little room above it takes less of the light and shade. */
static guint32
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

/* The yarn, its edge softened by a pixel, over the contact shadow beside it. @column and @row are of the window. */
static guint32
pixel_at (const Skein *skein, const SwWeaveRow *weave_row, int column, int row)
{
  const SwFaceWindow *window = skein->window;
  const float from_near = (float) (window->near + row) + 0.5f;
  const SwSkeinPoint point = sw_skein_shape_at (&skein->shape, (window->left + column + 0.5) / (double) skein->px_per_cm, (double) (from_near / skein->px_per_cm));
  const float ragged = 1 + 12 * skein->weave.layers[0].wander_a[column];
  /* The gap is between bundles; at the outermost edges the yarn reaches as far as the skein does. */
  const float rim = MIN (from_near, (float) window->ny - from_near) / skein->px_per_cm;
  const float edge = point.inside - MIN (skein->gap_cm * ragged, 0.01f + 0.4f * rim);
  const float cover = CLAMP (edge * skein->px_per_cm + 0.5f, 0, 1);
  SwWeavePoint weave;
  guint32 yarn, alpha;

  if (cover <= 0)
    return (guint32) (255 * SHADOW_ALPHA * expf (edge / SHADOW_CM)) << 24;
  weave = sw_weave_at (&skein->weave, weave_row, column, point.strand);
  yarn = shade (&skein->linear, strand_colour (skein, &weave, column, row), weave.light * body_light (&point));
  if (cover >= 1)
    return yarn;
  yarn = sw_linear_premultiply (yarn, cover);
  alpha = (yarn >> 24) + (guint32) ((float) (255 - (yarn >> 24)) * SHADOW_ALPHA);
  return (yarn & 0xffffff) | alpha << 24;
}

void
sw_skein_raster (const SwForecast *forecast, gboolean second_face, const SwFaceWindow *window, int stride, guint32 *pixels)
{
  Skein skein;

  skein_init (&skein, forecast, second_face, window);
  for (int j = 0; j < window->height; j++)
    {
      const int row = window->height - 1 - j; /* the face counts from the near edge, the picture from the far one */
      const SwWeaveRow weave_row = sw_weave_row ((window->near + row + 0.5) / (double) skein.px_per_cm);

      for (int i = 0; i < window->width; i++)
        pixels[(gsize) j * (gsize) stride + (gsize) i] = pixel_at (&skein, &weave_row, i, row);
    }
  skein_clear (&skein);
}
