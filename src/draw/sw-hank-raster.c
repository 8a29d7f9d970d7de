/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-exposure.h"
#include "draw/sw-hank-private.h"

#include <math.h>

#define TILE 96 /* pixels */
#define FINER 2 /* samples to a pixel, each way */
#define BROAD_PX 9.0
#define PROBE_PX 420 /* samples along the hank from which its light is balanced */

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
  cairo_surface_t *print; /* on the label, FINER pixels to one of the picture; NULL: none */
  float gain, per_cm;     /* device pixels */
  gboolean broad;         /* strands many pixels wide: two samples tell a pixel's colour, the others only its edge */
  float step_z;           /* a greater one is an edge, cm */
  int left, top, width, height, stride;
  guint32 *pixels;
  int next_tile; /* atomic */
} Job;

/* The band's patches are told from the yarn's by counting down from -2; -1 is neither. */
static int
on_label (int patch)
{
  return -2 - patch;
}

/* Lays the band over the yarn where it is higher. */
static void
add_label (const Job *job, float x, float y, float step, int width, int height, SwSkinSample *samples, SwSkinSample *scratch)
{
  sw_skin_raster (&job->hank->label.band, x, y, step, width, height, scratch);
  for (gsize i = 0; i < (gsize) width * (gsize) height; i++)
    if (scratch[i].patch >= 0 && (samples[i].patch < 0 || scratch[i].z > samples[i].z))
      {
        samples[i] = scratch[i];
        samples[i].patch = on_label (scratch[i].patch);
      }
}

static void
add_paper (const Job *job, const SwSkinSample *sample, float x, float y, float *sum)
{
  const SwHank *hank = job->hank;
  SwSkinSample at = *sample;
  float rgb[3];

  at.patch = on_label (sample->patch);
  sw_hank_label_light (&hank->label, &job->light, &hank->linear, job->print, (double) (job->per_cm * FINER), &at, x, y, rgb);
  for (int k = 0; k < 3; k++)
    sum[k] += rgb[k];
}

/* Adds a sample's linear light to @sum. */
static void
add_sample (const Job *job, const SwSkinSample *sample, float x, float y, float *sum)
{
  const SwLinear *linear = &job->hank->linear;
  SwHankShade shade;
  float rgb[3], factor;

  if (sample->patch < -1)
    {
      add_paper (job, sample, x, y, sum);
      return;
    }
  shade = sw_hank_light_at (&job->light, sample, x, y);
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
paint_tile (const Job *job, int left, int top, SwSkinSample *samples, SwSkinSample *scratch)
{
  const int width = MIN (TILE, job->width - left), height = MIN (TILE, job->height - top);
  const float step = 1 / (job->per_cm * FINER);
  const float x0 = ((float) (job->left + left) + 0.5f / FINER) / job->per_cm, y0 = ((float) (job->top + top) + 0.5f / FINER) / job->per_cm;

  sw_skin_raster (&job->hank->bundle, x0, y0, step, width * FINER, height * FINER, samples);
  if (job->hank->label.width_cm > 0)
    add_label (job, x0, y0, step, width * FINER, height * FINER, samples, scratch);
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

            covered += sample->patch != -1;
            if (sample->patch == -1 || (job->broad && shaded > 0 && k < FINER * FINER - 1 && fabsf (sample->z - before) < job->step_z))
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
  g_autofree SwSkinSample *scratch = g_new (SwSkinSample, TILE * TILE * FINER * FINER);

  for (int tile = g_atomic_int_add (&job->next_tile, 1); tile < n; tile = g_atomic_int_add (&job->next_tile, 1))
    paint_tile (job, tile % across * TILE, tile / across * TILE, samples, scratch);
  return NULL;
}

void
sw_hank_raster (SwHank *self, double px_per_cm, int left, int top, int width, int height, int stride, guint32 *pixels)
{
  Job job = { .hank = self, .per_cm = (float) px_per_cm, .left = left, .top = top, .width = width, .height = height, .stride = stride, .pixels = pixels };
  GThread *other;

  sw_hank_light_init (&job.light, &self->bundle, &self->yarn, &self->table->relief, self->x, self->y, self->grain, self->sketch, self->shape.strand_cm, self->shape.strand_cm * px_per_cm);
  job.exposure = balance (self, &job.light, &job.gain);
  job.print = sw_hank_label_print (&self->label, px_per_cm * FINER);
  job.broad = self->shape.strand_cm * px_per_cm >= BROAD_PX;
  job.step_z = (float) (0.1 * self->shape.radius_cm);
  other = g_thread_new ("hank", paint_worker, &job);
  paint_worker (&job);
  g_thread_join (other);
  g_free (job.exposure);
  g_clear_pointer (&job.print, cairo_surface_destroy);
}
