/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-hank.h"

#include "draw/sw-exposure.h"
#include "draw/sw-hank-hairs.h"
#include "draw/sw-hank-light.h"
#include "draw/sw-linear.h"
#include "draw/sw-shadow.h"

#define TILE 96 /* pixels */
#define FINER 2 /* samples to a pixel, each way */
#define BROAD_PX 9.0
#define PROBE_PX 420     /* samples along the hank from which its light is balanced */
#define RELIEF_STEP 0.08 /* of the rope's radius */

/* Hairs to a cm2 for each that the kernel has to a strand's diameter; none where strands are not told apart. */
#define HAIRS 18.0
#define HAIRS_FROM_PX 2.5

struct _SwHank
{
  guint64 seed;
  const SwSketch *sketch;
  SwHankShape shape;
  SwHankYarn yarn;
  SwBundle bundle;
  SwRelief relief;
  SwGrain *grain;
  SwLinear linear;
  float logs[256];
  SwBox box;
};

static void
lay_down (SwHank *self)
{
  const double r = self->shape.radius_cm, room = 3.0 * r;
  float least[3], most[3];

  sw_bundle_extents (&self->bundle, least, most);
  self->box = (SwBox){ (double) least[0], (double) least[1], (double) (most[0] - least[0]), (double) (most[1] - least[1]) };
  sw_relief_init (&self->relief, (double) least[0] - room, (double) least[1] - room, (double) most[0] + room, (double) most[1] + room, RELIEF_STEP * r, (double) least[2] + 0.18 * r);
  sw_relief_add (&self->relief, &self->bundle);
  sw_relief_light (&self->relief, 2.6 * r);
}

SwHank *
sw_hank_new (const SwForecast *forecast, int number, double angle)
{
  SwHank *self = g_new0 (SwHank, 1);
  const guint64 seed = sw_chance_mix (sw_chance_mix (0x68616e6b, (guint64) forecast->sketch->seed), (guint64) number);

  self->seed = seed;
  self->sketch = forecast->sketch;
  sw_hank_shape_init (&self->shape, forecast->sketch);
  sw_hank_shape_bundle (&self->shape, seed, &self->bundle);
  sw_bundle_turn (&self->bundle, angle);
  sw_hank_yarn_init (&self->yarn, forecast, &self->shape, seed);
  self->grain = sw_grain_new (seed);
  sw_linear_init (&self->linear);
  for (int i = 0; i < 256; i++)
    self->logs[i] = logf (MAX (self->linear.decode[i], 0.002f));
  lay_down (self);
  return self;
}

void
sw_hank_free (SwHank *self)
{
  if (self == NULL)
    return;
  sw_hank_yarn_clear (&self->yarn);
  sw_bundle_clear (&self->bundle);
  sw_relief_clear (&self->relief);
  g_free (self->grain);
  g_free (self);
}

SwBox
sw_hank_get_box (const SwHank *self)
{
  return self->box;
}

/* The light as it will be in the picture, looked up here and there all over the hank. */
static SwExposure *
balance (const SwHank *self, const SwHankLight *light, float *gain)
{
  const float step = (float) (MAX (self->box.width, self->box.height) / PROBE_PX);
  const int width = (int) (self->box.width / (double) step) + 1, height = (int) (self->box.height / (double) step) + 1;
  const gsize n = (gsize) width * (gsize) height;
  g_autofree SwSkinSample *samples = g_new (SwSkinSample, n);
  g_autofree float *lights = g_new (float, n);
  guint counts[SW_EXPOSURE_LIGHTS] = { 0 };
  double sum = 0;
  gsize seen = 0;

  sw_skin_raster (&self->bundle, (float) self->box.x, (float) self->box.y, step, width, height, samples);
  for (gsize i = 0; i < n; i++)
    if (samples[i].patch >= 0)
      {
        const float x = (float) self->box.x + step * (float) (i % (gsize) width), y = (float) self->box.y + step * (float) (i / (gsize) width);

        lights[seen] = sw_hank_light_at (light, &samples[i], x, y).light;
        sum += (double) lights[seen++];
      }
  *gain = (float) ((double) seen / MAX (sum, 1e-9));
  for (gsize i = 0; i < seen; i++)
    counts[sw_exposure_bin (lights[i] * *gain)]++;
  return sw_exposure_new (counts);
}

typedef struct
{
  const SwHank *hank;
  SwHankLight light;
  SwExposure *exposure;
  float gain, per_cm; /* device pixels */
  gboolean broad;     /* strands many pixels wide: two samples tell a pixel's colour, the others only its edge */
  float step_z;       /* a greater one is an edge, cm */
  int left, top, width, height, stride;
  guint32 *pixels;
  int next_tile; /* atomic */
} Job;

/* Adds a sample's linear light to @sum. */
static void
add_sample (const Job *job, const SwSkinSample *sample, float x, float y, float *sum)
{
  const SwLinear *linear = &job->hank->linear;
  const SwHankShade shade = sw_hank_light_at (&job->light, sample, x, y);
  float rgb[3], factor;

  sw_linear_decode (linear, shade.colour, rgb);
  factor = sw_exposure_factor (job->exposure, MAX (MAX (rgb[0], rgb[1]), rgb[2]), shade.light * job->gain);
  for (int k = 0; k < 3; k++)
    sum[k] += rgb[k] * factor * (1 + shade.dye * job->hank->logs[shade.colour >> (16 - 8 * k) & 0xff]);
}

static guint32
pixel_of (const Job *job, const float *sum, int shaded, int covered)
{
  float rgb[3];
  guint32 pixel;

  if (covered == 0)
    return 0;
  for (int k = 0; k < 3; k++)
    rgb[k] = sum[k] / (float) shaded;
  pixel = sw_linear_pixel (&job->hank->linear, rgb);
  return covered == FINER * FINER ? pixel : sw_linear_premultiply (pixel, (float) covered / (FINER * FINER));
}

static void
paint_tile (const Job *job, int left, int top, SwSkinSample *samples)
{
  const int width = MIN (TILE, job->width - left), height = MIN (TILE, job->height - top);
  const float step = 1 / (job->per_cm * FINER);
  const float x0 = ((float) (job->left + left) + 0.5f / FINER) / job->per_cm, y0 = ((float) (job->top + top) + 0.5f / FINER) / job->per_cm;

  sw_skin_raster (&job->hank->bundle, x0, y0, step, width * FINER, height * FINER, samples);
  for (int j = 0; j < height; j++)
    for (int i = 0; i < width; i++)
      {
        float sum[3] = { 0 };
        float before = 0;
        int covered = 0, shaded = 0;

        for (int k = 0; k < FINER * FINER; k++)
          {
            const int a = i * FINER + k % FINER, b = j * FINER + k / FINER;
            const SwSkinSample *sample = &samples[(gsize) b * (gsize) (width * FINER) + (gsize) a];

            covered += sample->patch >= 0;
            if (sample->patch < 0 || (job->broad && shaded > 0 && k < FINER * FINER - 1 && fabsf (sample->z - before) < job->step_z))
              continue;
            add_sample (job, sample, x0 + step * (float) a, y0 + step * (float) b, sum);
            shaded++;
            before = sample->z;
          }
        job->pixels[(gsize) (top + j) * (gsize) job->stride + (gsize) (left + i)] = pixel_of (job, sum, shaded, covered);
      }
}

static gpointer
paint_worker (gpointer data)
{
  Job *job = data;
  const int across = (job->width + TILE - 1) / TILE, n = across * ((job->height + TILE - 1) / TILE);
  g_autofree SwSkinSample *samples = g_new (SwSkinSample, TILE * TILE * FINER * FINER);

  for (int tile = g_atomic_int_add (&job->next_tile, 1); tile < n; tile = g_atomic_int_add (&job->next_tile, 1))
    paint_tile (job, tile % across * TILE, tile / across * TILE, samples);
  return NULL;
}

void
sw_hank_raster (SwHank *self, double px_per_cm, int left, int top, int width, int height, int stride, guint32 *pixels)
{
  Job job = { .hank = self, .per_cm = (float) px_per_cm, .left = left, .top = top, .width = width, .height = height, .stride = stride, .pixels = pixels };
  GThread *other;

  sw_hank_light_init (&job.light, &self->bundle, &self->yarn, &self->relief, self->grain, self->sketch, self->shape.strand_cm, self->shape.strand_cm * px_per_cm);
  job.exposure = balance (self, &job.light, &job.gain);
  job.broad = self->shape.strand_cm * px_per_cm >= BROAD_PX;
  job.step_z = (float) (0.1 * self->shape.radius_cm);
  other = g_thread_new ("hank", paint_worker, &job);
  paint_worker (&job);
  g_thread_join (other);
  g_free (job.exposure);
}

static void
draw_hairs (const SwHank *self, const SwCanvas *canvas, double x, double y, double px_per_cm, double scale)
{
  SwYarnLight strand;

  if (self->shape.strand_cm * px_per_cm * scale < HAIRS_FROM_PX)
    return;
  sw_yarn_light_init (&strand, self->sketch->yarn.fibre, (int) self->sketch->yarn.plies, 100); /* as fuzzy as it is from near by */
  cairo_save (canvas->cr);
  cairo_translate (canvas->cr, x, y);
  sw_hank_hairs_draw (canvas->cr, &self->bundle, &self->yarn, &self->relief, self->seed, HAIRS * (double) strand.fuzz, (double) strand.hair * 2.4 * self->shape.strand_cm, px_per_cm, 1 / scale);
  cairo_restore (canvas->cr);
}

void
sw_hank_draw (SwHank *self, const SwCanvas *canvas, double x, double y, double px_per_cm)
{
  const SwBox box = { x + self->box.x * px_per_cm - 2, y + self->box.y * px_per_cm - 2, self->box.width * px_per_cm + 4, self->box.height * px_per_cm + 4 };
  SwRaster raster;

  sw_shadow_draw (&self->relief, canvas, x, y, px_per_cm);
  if (!sw_raster_begin (&raster, canvas, &box))
    return;
  sw_hank_raster (self, px_per_cm * raster.scale, raster.x - (int) lrint (x * raster.scale), raster.y - (int) lrint (y * raster.scale), raster.width, raster.height, raster.stride, raster.pixels);
  sw_raster_end (&raster, canvas);
  draw_hairs (self, canvas, x, y, px_per_cm, raster.scale);
}
