/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-laid.h"

#include "colour/sw-mix.h"
#include "draw/sw-exposure.h"
#include "draw/sw-laid-hairs.h"
#include "draw/sw-laid-threads.h"
#include "draw/sw-linear.h"
#include "draw/sw-relief.h"
#include "draw/sw-shadow.h"
#include "draw/sw-wet.h"
#include "draw/sw-wraps-raster.h"
#include "draw/sw-yarn-light.h"
#include "skein/sw-strand.h"

#include <string.h>

/* Fibre in a laid bundle, g/cm3. Ours. */
#define DENSITY 0.26

#define RELIEF_CM 0.11
#define ROOM_CM 3.0
#define BODY_SMOOTH 10
#define MOST_HEIGHT_CM 2.2 /* a camera sees no more of a deep skein's side */
#define MEAN_STRAND_LIGHT 0.78f
#define TONE 0.085f /* how unlike two wraps are */
#define DARKEST 0.60f /* between wraps */
#define THREAD_WHITE 0.76f

/* So many samples make a strand's width, where there are not more than MOST_SAMPLES to a pixel's side; but two at least, for smooth edges. */
#define STRAND_SAMPLES 3.3f
#define MOST_SAMPLES 4
#define TILE_SAMPLES 128

/* Samples along the side of a tile from which the light is balanced, and how many of these there are. */
#define PROBE_SAMPLES 32
#define PROBES 72

struct _SwLaid
{
  const SwForecast *forecast;
  gboolean second_face, wet;
  SwLaidTies ties;
  SwWraps wraps;
  guint yarn_points; /* of the wraps' points; the ties' threads follow */
  SwRelief relief;
  SwRelief body; /* the same without single wraps, if wet: what water lies on evenly */
  SwGrain *grain;
  SwLinear linear;
  float logs[256];
  float strand_cm, height_cm, length_cm, width_cm;
};

/* Wraps as heights, so close that no place between is left out. */
static void
raise_wraps (SwRelief *relief, const SwWraps *wraps, guint from)
{
  for (guint i = from; i + 1 < wraps->points->len; i++)
    {
      const SwWrapPoint *p = &g_array_index (wraps->points, SwWrapPoint, i), *q = p + 1;
      const float radius = g_array_index (wraps->wraps, SwWrap, p->wrap).radius;
      const float length = hypotf (q->x - p->x, q->y - p->y), aside = 1.1f * radius / MAX (length, 1e-4f);
      const int n = (int) (length / (0.7f * relief->step)) + 1, m = MAX ((int) ceilf (1.1f * radius / relief->step), 1);

      if (q->wrap != p->wrap)
        continue;
      for (int k = 0; k < n; k++)
        {
          const float t = (float) k / (float) n, x = p->x + t * (q->x - p->x), y = p->y + t * (q->y - p->y), z = p->z + t * (q->z - p->z) + 0.8f * radius;

          for (int j = 0; j <= m; j++)
            {
              const float off = aside * ((float) j / (float) m - 0.5f);

              sw_relief_raise (relief, x - off * (q->y - p->y), y + off * (q->x - p->x), z);
            }
        }
    }
}

static void
smooth_body (SwLaid *self)
{
  const SwRelief *relief = &self->relief;

  sw_relief_init (&self->body, -ROOM_CM, -ROOM_CM, (double) self->length_cm + ROOM_CM, (double) self->width_cm + ROOM_CM, RELIEF_CM, 0);
  memcpy (self->body.heights, relief->heights, (gsize) relief->width * (gsize) relief->height * sizeof (float));
  for (int i = 0; i < BODY_SMOOTH; i++)
    sw_relief_smooth (&self->body);
}

static void
lay (SwLaid *self)
{
  SwRelief *relief = &self->relief;

  sw_wraps_init (&self->wraps, self->forecast->sketch, self->grain, &self->ties, (double) self->strand_cm, (double) self->height_cm);
  self->yarn_points = self->wraps.points->len;
  sw_relief_init (relief, -ROOM_CM, -ROOM_CM, (double) self->length_cm + ROOM_CM, (double) self->width_cm + ROOM_CM, RELIEF_CM, 0);
  raise_wraps (relief, &self->wraps, 0);
  sw_relief_smooth (relief);
  sw_laid_threads_lay (&self->wraps, &self->ties, self->forecast->sketch, relief);
  if (self->wet)
    smooth_body (self);
  raise_wraps (relief, &self->wraps, self->yarn_points);
  sw_relief_light (relief, 2.5);
}

SwLaid *
sw_laid_new (const SwForecast *forecast, gboolean second_face)
{
  SwLaid *self = g_new0 (SwLaid, 1);
  const SwSketch *sketch = forecast->sketch;
  const gboolean beside = sketch->lay.folding == SW_FOLDING_SIDE_BY_SIDE;

  self->forecast = forecast;
  self->second_face = second_face;
  self->wet = sketch->listing.wet;
  sw_laid_ties_init (&self->ties, sketch);
  self->grain = sw_grain_new (sw_chance_mix (0x6c616964, (guint64) sketch->seed));
  sw_linear_init (&self->linear);
  for (int i = 0; i < 256; i++)
    self->logs[i] = logf (MAX (self->linear.decode[i], 0.002f));
  self->strand_cm = (float) sqrt (4 * sw_tex (sketch->yarn.metres_per_100_g) * 1e-5 / (G_PI * DENSITY));
  self->height_cm = (float) MIN (MIN (sketch->lay.depth_cm, MOST_HEIGHT_CM), 0.45 * sketch->lay.width_cm / (double) (beside ? sketch->lay.runs : 1));
  self->length_cm = (float) sw_sketch_lay_length (sketch);
  self->width_cm = (float) sw_sketch_lay_width (sketch);
  lay (self);
  return self;
}

void
sw_laid_free (SwLaid *self)
{
  if (self == NULL)
    return;
  sw_wraps_clear (&self->wraps);
  sw_laid_ties_clear (&self->ties);
  sw_relief_clear (&self->relief);
  sw_relief_clear (&self->body);
  g_free (self->grain);
  g_free (self);
}

const SwRelief *
sw_laid_get_relief (const SwLaid *self)
{
  return &self->relief;
}

/* What one place gives to the picture. */
typedef struct
{
  float light, dye, gloss;
  float x, y; /* cm, from the upper left: where the strand that is seen was dyed */
  gboolean thread;
} Shade;

static float
body_light (const SwRelief *relief, const float *normal, float x, float y)
{
  const float facing = normal[0] * SW_LAMP_X + normal[1] * SW_LAMP_Y + normal[2] * SW_LAMP_Z;
  float sky, lamp;

  sw_relief_at (relief, x, y, &sky, &lamp);
  return SW_RELIEF_SKY * sky * (0.62f + 0.38f * normal[2]) + SW_RELIEF_LAMP * lamp * MAX ((facing + 0.30f) / 1.30f, 0);
}

/* To the 16th power. */
static inline float
power16 (float x)
{
  x *= x;
  x *= x;
  x *= x;
  return x * x;
}

/*
 * Wet yarn throws the lamp back from its water: a broad sheen where the body
 * faces halfway between lamp and eye, and on it a narrower one along each
 * strand's back, which comes and goes along it as the film does.
 */
static float
gloss_at (const float *normal, const float *course, float across, float film)
{
  static const float half[3] = { -0.231f, -0.279f, 0.933f }; /* halfway between lamp and eye */
  const float towards = MAX (normal[0] * half[0] + normal[1] * half[1] + normal[2] * half[2], 0), broad = power16 (towards);
  const float nx = normal[0] + 1.1f * across * course[1], ny = normal[1] - 1.1f * across * course[0], nz = normal[2];
  const float facing = (nx * half[0] + ny * half[1] + nz * half[2]) / sqrtf (nx * nx + ny * ny + nz * nz);
  const float fine = power16 (MAX (facing, 0)) * power16 (MAX (facing, 0)), t = CLAMP (0.5f + 0.9f * film, 0, 1);

  return broad * broad * (0.10f + 2.4f * fine * t * t);
}

static Shade
shade_at (const SwLaid *self, const SwYarnLight *yarn, const SwWrapSample *sample)
{
  const SwWrapPoint *p = &g_array_index (self->wraps.points, SwWrapPoint, sample->segment - 1), *q = p + 1;
  const SwWrap *wrap = &g_array_index (self->wraps.wraps, SwWrap, p->wrap);
  const float dx = q->x - p->x, dy = q->y - p->y, dz = q->z - p->z, per = 1 / sqrtf (MAX (dx * dx + dy * dy + dz * dz, 1e-8f));
  const float middle_x = p->x + sample->t * dx, middle_y = p->y + sample->t * dy, along = p->along + sample->t * (q->along - p->along);
  const float flat = wrap->radius * sample->across / sqrtf (MAX (dx * dx + dy * dy, 1e-8f));
  const float x = middle_x + flat * dy, y = middle_y - flat * dx; /* left of the course, y down */
  const float beside = (sample->across + 1) / 2 * (float) wrap->strands, strand_number = MIN (floorf (beside), (float) (wrap->strands - 1));
  const SwYarnPoint point = { along * (float) wrap->strands / (2 * wrap->radius) + 2.3f * strand_number, (2 * (beside - strand_number) - 1) * 0.94f, { dx * per, -dy * per, dz * per }, wrap->seed };
  const SwYarnShade strand = sw_yarn_light_at (yarn, &point);
  const float streak = sw_grain_tone (self->grain, (int) (wrap->seed >> 8 & 0xff), along / 3.1f);
  Shade shade = { .dye = strand.dye, .thread = wrap->thread };
  float normal[3], height, deep;

  sw_relief_normal (&self->relief, x, y, normal, &height);
  deep = CLAMP ((height - sample->z - 0.25f * self->strand_cm) / (1.7f * self->strand_cm), 0, 1);
  shade.light = body_light (&self->relief, normal, x, y) * strand.light / MEAN_STRAND_LIGHT * (1 - (1 - DARKEST) * deep * deep * (3 - 2 * deep));
  if (!wrap->thread)
    shade.light *= 1 + TONE * (wrap->tone + 0.7f * streak);
  if (self->wet && !wrap->thread)
    {
      sw_relief_normal (&self->body, x, y, normal, &height);
      shade.gloss = gloss_at (normal, (const float[]){ dx * per, dy * per }, sample->across, 0.6f * streak + 0.6f * sw_grain_cloud (self->grain, y / 0.8f + 40, 200, x / 2.7f)) * (1 - deep);
    }
  shade.x = middle_x + 0.6f * self->strand_cm * wrap->tone;
  shade.y = middle_y;
  return shade;
}

typedef struct
{
  const SwLaid *laid;
  const SwFaceWindow *window;
  SwYarnLight yarn;
  SwExposure *exposure;
  float gain, per_cm;
  int finer;     /* samples along a pixel's side */
  guint32 *face; /* the window of the forecast's colours, the near edge first */
  int stride;
  guint32 *pixels;
  SwWrapGrid grid;
  int next_tile; /* atomic */
} Job;

/* The light looked up here and there all over the skeins, at the size it will have in the picture. */
static void
balance (Job *job)
{
  const SwLaid *self = job->laid;
  const float scale = job->per_cm * (float) job->finer;
  const int width = (int) (self->length_cm * scale) + 1, height = (int) (self->width_cm * scale) + 1;
  g_autofree SwWrapSample *samples = g_new (SwWrapSample, PROBE_SAMPLES *PROBE_SAMPLES);
  g_autofree float *lights = g_new (float, PROBES *PROBE_SAMPLES *PROBE_SAMPLES);
  guint counts[SW_EXPOSURE_LIGHTS] = { 0 };
  double sum = 0;
  gsize seen = 0;
  SwWrapGrid grid;
  int n;

  sw_wrap_grid_init (&grid, &self->wraps, self->yarn_points, scale, 0, 0, width, height, PROBE_SAMPLES, job->finer);
  n = grid.columns * grid.rows;
  for (int k = 0; k < MIN (n, PROBES); k++)
    {
      const int tile = n <= PROBES ? k : (int) (((double) k + sw_chance_even (sw_chance_mix (7, (guint64) k))) * n / PROBES);

      sw_wrap_grid_sample (&grid, tile % grid.columns, tile / grid.columns, samples);
      for (int i = 0; i < PROBE_SAMPLES * PROBE_SAMPLES; i++)
        if (samples[i].segment != 0)
          {
            lights[seen] = shade_at (self, &job->yarn, &samples[i]).light;
            sum += (double) lights[seen++];
          }
    }
  sw_wrap_grid_clear (&grid);
  job->gain = (float) ((double) seen / MAX (sum, 1e-9));
  for (gsize i = 0; i < seen; i++)
    counts[sw_exposure_bin (lights[i] * job->gain)]++;
  job->exposure = sw_exposure_new (counts);
}

static guint32
colour_at (const Job *job, float x_cm, float y_cm)
{
  const SwFaceWindow *window = job->window;
  const int i = (int) lrintf (x_cm * job->per_cm - 0.5f) - window->left, j = (int) lrintf (y_cm * job->per_cm - 0.5f) - window->near;

  return job->face[(gsize) CLAMP (j, 0, window->height - 1) * (gsize) window->width + (gsize) CLAMP (i, 0, window->width - 1)];
}

#define GLOSS 0.20f

static void
add_sample (const Job *job, const SwWrapSample *sample, float *sum)
{
  const SwLaid *laid = job->laid;
  const Shade shade = shade_at (laid, &job->yarn, sample);
  float rgb[3], factor;
  guint32 colour;

  if (shade.thread)
    {
      for (int k = 0; k < 3; k++)
        sum[k] += MIN (THREAD_WHITE * shade.light * job->gain, 1);
      return;
    }
  colour = colour_at (job, shade.x, laid->width_cm - shade.y);
  sw_linear_decode (&laid->linear, colour, rgb);
  factor = sw_exposure_factor (job->exposure, MAX (MAX (rgb[0], rgb[1]), rgb[2]), shade.light * job->gain);
  for (int k = 0; k < 3; k++)
    sum[k] += MAX ((laid->wet ? sw_wet (rgb[k]) : rgb[k]) * factor * (1 + shade.dye * laid->logs[colour >> (16 - 8 * k) & 0xff]) + GLOSS * shade.gloss, 0);
}

/* The samples of a pixel as one, where all are of one wrap: most pixels of a large picture, and one is lit as soon as four. */
static gboolean
merge (const Job *job, const SwWrapSample *samples, int tile, SwWrapSample *mean)
{
  const GArray *points = job->laid->wraps.points;
  const int n = job->finer * job->finer;
  guint32 wrap;

  *mean = samples[0];
  if (mean->segment == 0)
    return FALSE;
  wrap = g_array_index (points, SwWrapPoint, mean->segment - 1).wrap;
  if (g_array_index (job->laid->wraps.wraps, SwWrap, wrap).strands > 1)
    return FALSE;
  for (int k = 1; k < n; k++)
    {
      const SwWrapSample *sample = &samples[k / job->finer * tile + k % job->finer];

      if (sample->segment == 0 || (sample->segment != samples->segment && g_array_index (points, SwWrapPoint, sample->segment - 1).wrap != wrap))
        return FALSE;
      mean->across += sample->across;
      mean->z += sample->z;
    }
  mean->across /= (float) n;
  mean->z /= (float) n;
  return TRUE;
}

/* One pixel from its samples. */
static guint32
pixel_of (const Job *job, const SwWrapSample *samples, int tile)
{
  const int n = job->finer * job->finer;
  SwWrapSample mean;
  float sum[3] = { 0, 0, 0 };
  int seen = 0;

  if (merge (job, samples, tile, &mean))
    {
      add_sample (job, &mean, sum);
      return sw_linear_pixel (&job->laid->linear, sum);
    }
  for (int k = 0; k < n; k++)
    {
      const SwWrapSample *sample = &samples[k / job->finer * tile + k % job->finer];

      if (sample->segment == 0)
        continue;
      add_sample (job, sample, sum);
      seen++;
    }
  if (seen == 0)
    return 0;
  for (int k = 0; k < 3; k++)
    sum[k] /= (float) seen;
  if (seen == n)
    return sw_linear_pixel (&job->laid->linear, sum);
  return sw_linear_premultiply (sw_linear_pixel (&job->laid->linear, sum), (float) seen / (float) n);
}

static void
paint_tile (const Job *job, int number, SwWrapSample *samples)
{
  const int column = number % job->grid.columns, row = number / job->grid.columns, side = job->grid.tile / job->finer;
  const int left = column * side, top = row * side;

  sw_wrap_grid_sample (&job->grid, column, row, samples);
  for (int j = 0; j < MIN (side, job->window->height - top); j++)
    for (int i = 0; i < MIN (side, job->window->width - left); i++)
      job->pixels[(gsize) (top + j) * (gsize) job->stride + (gsize) (left + i)] = pixel_of (job, samples + (j * job->grid.tile + i) * job->finer, job->grid.tile);
}

static gpointer
paint_worker (gpointer data)
{
  Job *job = data;
  g_autofree SwWrapSample *samples = g_new (SwWrapSample, (gsize) job->grid.tile * (gsize) job->grid.tile);
  const int n = job->grid.columns * job->grid.rows;

  for (int k = g_atomic_int_add (&job->next_tile, 1); k < n; k = g_atomic_int_add (&job->next_tile, 1))
    paint_tile (job, k, samples);
  return NULL;
}

/* As bright as the yarn round its root. */
static guint32
hair_colour (gconstpointer data, float x, float y)
{
  const Job *job = data;
  const SwLaid *laid = job->laid;
  float normal[3], height, rgb[3], factor;

  sw_relief_normal (&laid->relief, x, y, normal, &height);
  sw_linear_decode (&laid->linear, colour_at (job, x, laid->width_cm - y), rgb);
  factor = sw_exposure_factor (job->exposure, MAX (MAX (rgb[0], rgb[1]), rgb[2]), CLAMP (body_light (&laid->relief, normal, x, y) * job->gain, 0.6f, 1.2f));
  for (int k = 0; k < 3; k++)
    rgb[k] *= factor;
  return sw_linear_pixel (&laid->linear, rgb);
}

/* Wet hairs cling. */
static void
draw_hairs (const Job *job)
{
  const SwLaid *laid = job->laid;
  const SwFaceWindow *window = job->window;
  const SwYarn *yarn = &laid->forecast->sketch->yarn;
  SwYarnLight near_by;
  SwLaidHairs hairs = {
    .wraps = &laid->wraps,
    .points = laid->yarn_points,
    .relief = &laid->relief,
    .left = (float) window->left,
    .top = (float) (window->ny - window->near - window->height),
    .width = window->width,
    .height = window->height,
    .stride = job->stride,
    .pixels = job->pixels,
    .per_cm = job->per_cm,
    .seed = (guint64) laid->forecast->sketch->seed,
    .colour = hair_colour,
    .data = job,
  };

  sw_yarn_light_init (&near_by, yarn->fibre, (int) yarn->plies, 18); /* before single fibres show */
  hairs.fuzz = near_by.fuzz / 10;
  hairs.length = near_by.hair * 0.9f;
  if (!laid->wet)
    sw_laid_hairs_draw (&hairs);
}

static void
paint (SwLaid *self, const SwFaceWindow *window, gboolean threads, int stride, guint32 *pixels)
{
  const gsize n = (gsize) window->width * (gsize) window->height;
  g_autofree float *xyz = g_new (float, 3 * n);
  g_autofree guint32 *face = g_new (guint32, n);
  Job job = { .laid = self, .window = window, .per_cm = (float) window->nx / self->length_cm, .face = face, .stride = stride, .pixels = pixels };
  const float px = self->strand_cm * job.per_cm;
  const SwYarn *yarn = &self->forecast->sketch->yarn;
  GThread *other;

  sw_forecast_face_window (self->forecast, self->second_face, window, xyz, xyz + n, xyz + 2 * n);
  sw_pixels_from_xyz (xyz, xyz + n, xyz + 2 * n, 1, n, face);
  job.finer = CLAMP ((int) ceilf (STRAND_SAMPLES / px), 2, MOST_SAMPLES);
  sw_yarn_light_init (&job.yarn, yarn->fibre, (int) yarn->plies, (double) (px * MIN ((float) job.finer, 1.4f)));
  balance (&job);
  sw_wrap_grid_init (&job.grid, &self->wraps, threads ? self->wraps.points->len : self->yarn_points, job.per_cm * (float) job.finer, (float) (window->left * job.finer), (float) ((window->ny - window->near - window->height) * job.finer), window->width * job.finer, window->height * job.finer, TILE_SAMPLES / job.finer * job.finer, job.finer);
  other = g_thread_new ("skein", paint_worker, &job);
  paint_worker (&job);
  g_thread_join (other);
  draw_hairs (&job);
  sw_wrap_grid_clear (&job.grid);
  g_free (job.exposure);
}

void
sw_laid_raster (SwLaid *self, const SwFaceWindow *window, int stride, guint32 *pixels)
{
  paint (self, window, FALSE, stride, pixels);
}

void
sw_laid_draw (SwLaid *self, const SwCanvas *canvas, const SwBox *box)
{
  SwFaceWindow window;
  SwRaster raster;

  sw_shadow_draw (&self->relief, canvas, box->x, box->y, box->width / (double) self->length_cm);
  if (!sw_raster_begin (&raster, canvas, box))
    return;
  window = (SwFaceWindow){
    .nx = raster.box_width,
    .ny = raster.box_height,
    .left = raster.x - raster.box_x,
    .near = raster.box_y + raster.box_height - raster.y - raster.height,
    .width = raster.width,
    .height = raster.height,
  };
  paint (self, &window, TRUE, raster.stride, raster.pixels);
  sw_raster_end (&raster, canvas);
}
