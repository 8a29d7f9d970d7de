/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-exposure.h"
#include "draw/sw-hank-private.h"

#include <math.h>

#define TILE 64 /* pixels */

/*
 * Samples to a pixel, each way. What is seen is found at each of them, so that
 * edges are smooth; light and colour only once for each strand in a block of
 * them: half a pixel where strands are narrow, a whole one where they are broad.
 */
#define FINER 4
#define FINER_BROAD 3
#define BROAD_PX 4.5
#define MOST_IN_BLOCK (FINER * FINER)
#define LIT_EACH 4 /* of so many of a block's samples on one strand, one is lit */

/*
 * A vivid or pale colour has a channel that cannot go higher, and held together
 * with it the others would not show light and shade either. So far each channel
 * goes its own way, as light that is thrown from strand to strand has it: more
 * colour in the grooves.
 */
#define APART 0.75f

#define PAPER_SHADE 0.14 /* reaches over the yarn so far, radii */
#define PRINT_FINER 2 /* the label's pixels to one of the picture */
#define PROBE_PX 420  /* samples along the hank from which its light is balanced */

/* The hank's layers, as their patches are numbered. */
static int
first_of_core (const SwHank *hank)
{
  return hank->strands.n * (hank->strands.n_rings - 1);
}

static int
first_of_band (const SwHank *hank)
{
  return first_of_core (hank) + hank->core.n_around * (hank->core.n_rings - 1);
}

static void
raster (const SwHank *hank, const SwSkinView *view, SwSkinSample *samples)
{
  sw_skin_clear (view, samples);
  sw_hank_strands_raster (&hank->strands, hank->grain, view, samples);
  sw_skin_raster (&hank->core, first_of_core (hank), view, samples);
  if (hank->label.width_cm > 0)
    sw_skin_raster (&hank->label.band, first_of_band (hank), view, samples);
}

/* Of yarn. */
static SwHankShade
shade_at (const SwHank *hank, const SwHankLight *light, const SwSkinSample *sample, float x, float y)
{
  const int core = first_of_core (hank);
  SwSkinSample gap = *sample;

  if (sample->patch < core)
    return sw_hank_light_at (light, sample, x, y);
  gap.patch -= core;
  return sw_hank_light_gap (light, &gap, x, y);
}

/* The light as it will be in the picture, looked up here and there all over the hank. */
static SwExposure *
balance (const SwHank *self, const SwHankLight *light, float *gain)
{
  const float step = (float) (MAX (self->box.width, self->box.height) / PROBE_PX);
  const SwSkinView view = { (float) self->box.x, (float) self->box.y, step, (int) (self->box.width / (double) step) + 1, (int) (self->box.height / (double) step) + 1 };
  const gsize n = (gsize) view.width * (gsize) view.height;
  g_autofree SwSkinSample *samples = g_new (SwSkinSample, n);
  g_autofree float *lights = g_new (float, n);
  guint counts[SW_EXPOSURE_LIGHTS] = { 0 };
  double sum = 0;
  gsize seen = 0;

  raster (self, &view, samples);
  for (gsize i = 0; i < n; i++)
    if (samples[i].patch >= 0 && samples[i].patch < first_of_band (self))
      {
        const float x = view.left + step * (float) (i % (gsize) view.width), y = view.top + step * (float) (i / (gsize) view.width);

        lights[seen] = shade_at (self, light, &samples[i], x, y).light;
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
  cairo_surface_t *print; /* on the label, PRINT_FINER pixels to one of the picture; NULL: none */
  float gain, per_cm;     /* device pixels */
  int finer, block;       /* samples to a pixel and to a block, each way */
  int core, band;         /* first patches */
  int left, top, width, height, stride;
  guint32 *pixels;
  int next_tile; /* atomic */
} Job;

static void
add_paper (const Job *job, const SwSkinSample *sample, float x, float y, float weight, float *sum)
{
  const SwHank *hank = job->hank;
  SwSkinSample at = *sample;
  float rgb[3];

  at.patch -= job->band;
  sw_hank_label_light (&hank->label, &job->light, &hank->linear, job->print, (double) (job->per_cm * PRINT_FINER), &at, x, y, rgb);
  for (int k = 0; k < 3; k++)
    sum[k] += weight * rgb[k];
}

/* Adds a sample's linear light to @sum. */
static void
add_sample (const Job *job, const SwSkinSample *sample, float x, float y, float weight, float *sum)
{
  SwHankShade shade;
  float rgb[3], most;

  if (sample->patch >= job->band)
    {
      add_paper (job, sample, x, y, weight, sum);
      return;
    }
  shade = shade_at (job->hank, &job->light, sample, x, y);
  sw_linear_decode (&job->hank->linear, shade.colour, rgb);
  shade.light *= job->gain;
  most = sw_exposure_factor (job->exposure, MAX (MAX (rgb[0], rgb[1]), rgb[2]), shade.light);
  for (int k = 0; k < 3; k++)
    sum[k] += weight * rgb[k] * (most + APART * (sw_exposure_factor (job->exposure, rgb[k], shade.light) - most)) * (1 + shade.dye * job->hank->logs[shade.colour >> (16 - 8 * k) & 0xff]);
}

/* What samples must share to be lit as one: a stretch of a strand; print is finer than that. */
static int
key_of (const Job *job, const SwSkinSample *sample, int i, int j)
{
  if (sample->patch < job->core)
    return sample->patch >> 5;
  return sample->patch < job->band ? -2 : -3 - (2 * i / job->block + 2 * (2 * j / job->block));
}

/* The samples of one block that are lit as one. */
typedef struct
{
  int key, n;
  guint8 members[MOST_IN_BLOCK]; /* row x block + column */
} Group;

static int
group_block (const Job *job, const SwSkinSample *samples, int across, Group *groups)
{
  int n = 0;

  for (int j = 0; j < job->block; j++)
    for (int i = 0; i < job->block; i++)
      {
        const SwSkinSample *sample = &samples[j * across + i];
        int key, k = 0;

        if (sample->patch == -1)
          continue;
        key = key_of (job, sample, i, j);
        while (k < n && groups[k].key != key)
          k++;
        if (k == n)
          groups[n++] = (Group){ .key = key };
        groups[k].members[groups[k].n++] = (guint8) (j * job->block + i);
      }
  return n;
}

/* Adds the light of the block whose first sample is at @x, @y. Returns: how many of its samples are covered */
static int
add_block (const Job *job, const SwSkinSample *samples, int across, float x, float y, float step, float *sum)
{
  Group groups[MOST_IN_BLOCK];
  const int n = group_block (job, samples, across, groups), odd = (lrintf (x / step) + lrintf (y / step)) / job->block & 1; /* of two in the middle, now the one and now the other */
  int covered = 0;

  for (int k = 0; k < n; k++)
    {
      const Group *group = &groups[k];
      const int times = (group->n + LIT_EACH - 1) / LIT_EACH;

      for (int t = 0; t < times; t++)
        {
          const int member = group->members[(group->n * (2 * t + 1) - odd) / (2 * times)], i = member % job->block, j = member / job->block;

          add_sample (job, &samples[j * across + i], x + step * (float) i, y + step * (float) j, (float) group->n / (float) times, sum);
        }
      covered += group->n;
    }
  return covered;
}

static guint32
pixel_of (const Job *job, const float *sum, int covered)
{
  const int all = job->finer * job->finer;
  float rgb[3];
  guint32 pixel;

  if (covered == 0)
    return 0;
  for (int k = 0; k < 3; k++)
    rgb[k] = sum[k] / (float) covered;
  pixel = sw_linear_pixel (&job->hank->linear, rgb);
  return covered == all ? pixel : sw_linear_premultiply (pixel, (float) covered / (float) all);
}

static void
paint_tile (const Job *job, int left, int top, SwSkinSample *samples)
{
  const int width = MIN (TILE, job->width - left), height = MIN (TILE, job->height - top), finer = job->finer, across = width * finer;
  const float step = 1 / (job->per_cm * (float) finer);
  const SwSkinView view = { ((float) (job->left + left) + 0.5f / (float) finer) / job->per_cm, ((float) (job->top + top) + 0.5f / (float) finer) / job->per_cm, step, across, height * finer };

  raster (job->hank, &view, samples);
  for (int j = 0; j < height; j++)
    for (int i = 0; i < width; i++)
      {
        float sum[3] = { 0 };
        int covered = 0;

        for (int b = 0; b < finer; b += job->block)
          for (int a = 0; a < finer; a += job->block)
            {
              const int column = i * finer + a, row = j * finer + b;

              covered += add_block (job, &samples[(gsize) row * (gsize) across + (gsize) column], across, view.left + step * (float) column, view.top + step * (float) row, step, sum);
            }
        job->pixels[(gsize) (top + j) * (gsize) job->stride + (gsize) (left + i)] = pixel_of (job, sum, covered);
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
  const gboolean broad = self->shape.strand_cm * px_per_cm >= BROAD_PX;
  Job job = {
    .hank = self,
    .per_cm = (float) px_per_cm,
    .finer = broad ? FINER_BROAD : FINER,
    .block = broad ? FINER_BROAD : FINER / 2,
    .core = first_of_core (self),
    .band = first_of_band (self),
    .left = left,
    .top = top,
    .width = width,
    .height = height,
    .stride = stride,
    .pixels = pixels,
  };
  GThread *other;

  sw_hank_light_init (&job.light, &self->bundle, &self->strands, &self->yarn, &self->table->relief, self->x, self->y, self->grain, self->sketch, self->shape.strand_cm, self->shape.strand_cm * px_per_cm);
  job.light.paper = self->label.hold;
  job.light.paper_reach = (float) (PAPER_SHADE * self->shape.radius_cm);
  job.exposure = balance (self, &job.light, &job.gain);
  job.print = sw_hank_label_print (&self->label, px_per_cm * PRINT_FINER);
  other = g_thread_new ("hank", paint_worker, &job);
  paint_worker (&job);
  g_thread_join (other);
  g_free (job.exposure);
  g_clear_pointer (&job.print, cairo_surface_destroy);
}
