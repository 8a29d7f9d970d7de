/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-laid.h"

#include "colour/sw-mix.h"
#include "draw/sw-exposure.h"
#include "draw/sw-laid-ties.h"
#include "draw/sw-linear.h"
#include "draw/sw-relief.h"
#include "draw/sw-shadow.h"
#include "draw/sw-skein-shape.h"
#include "draw/sw-strands.h"
#include "draw/sw-wet.h"
#include "draw/sw-yarn-light.h"
#include "skein/sw-strand.h"

/* Fibre in a laid bundle, g/cm3. Ours. */
#define DENSITY 0.26

#define RELIEF_CM 0.11
#define ROOM_CM 3.0
#define MOST_HEIGHT_CM 2.2 /* a camera sees no more of a deep skein's side */
#define LOCK_CM 0.6f
#define LOCK_TONE 0.10f
/* Locks of wraps stray sideways together, and so does the skein's edge, cm. */
#define STRAY_CM 0.34f
#define STRAY_ALONG_CM 9.0f
#define STRAY_ACROSS_CM 1.7f
#define EDGE_CM 0.16f
#define TONE 0.07f
#define MEAN_STRAND_LIGHT 0.78f
#define PROBES 180 /* along and across, from which the light is balanced */

struct _SwLaid
{
  const SwForecast *forecast;
  gboolean second_face, wet;
  SwSkeinShape shape;
  SwLaidTies ties;
  SwRelief relief;
  SwGrain *grain;
  SwLinear linear;
  float logs[256];
  float strand_cm, height_cm, width_cm;
};

/* One place of the skeins. @y_cm from the near edge. */
typedef struct
{
  SwSkeinPoint point;
  float inside; /* cm, 0 at the edge */
} Place;

static Place
place_at (const SwLaid *self, double x_cm, double y_cm)
{
  const double lane = self->shape.lane, first = lane * floor (CLAMP (y_cm / lane, 0, self->shape.lanes - 1.0));
  const double middle = first + lane / 2, pinch = sw_laid_ties_pinch (&self->ties, x_cm);
  const SwSkeinPoint point = sw_skein_shape_at (&self->shape, x_cm, middle + (y_cm - middle) * (1 + pinch));

  return (Place){ point, point.inside - EDGE_CM * (0.6f + sw_grain_cloud (self->grain, (float) ((y_cm - first) / lane) + 200 + 2 * (float) (first / lane), 256, (float) x_cm / 4.5f)) };
}

/* How far to the side the wraps lie of where they would lie ruler-straight. */
static float
stray_at (const SwLaid *self, float strand, float x_cm)
{
  return STRAY_CM * sw_grain_cloud (self->grain, strand / STRAY_ACROSS_CM + 30, 190, x_cm / STRAY_ALONG_CM) + 0.4f * STRAY_CM * sw_grain_cloud (self->grain, strand / LOCK_CM + 60, 190, x_cm / (0.5f * STRAY_ALONG_CM));
}

/* How high the yarn lies: round towards its edges, lower where it is tied, uneven by its locks. */
static float
height_at (const SwLaid *self, double x_cm, double y_cm)
{
  const Place place = place_at (self, x_cm, y_cm);
  const float beside = place.point.end > 0 ? (1 - fabsf (place.point.across)) * (float) self->shape.lane / 2 : place.inside;
  const float up = 1 - CLAMP (beside / (1.5f * self->height_cm), 0, 1);
  const float strand = place.point.strand + stray_at (self, place.point.strand, (float) x_cm);
  const float locks = sw_grain_cloud (self->grain, strand / LOCK_CM + 40, 200, (float) x_cm / 7.0f) + 0.8f * sw_grain_cloud (self->grain, strand / (3 * LOCK_CM) + 140, 100, (float) x_cm / 11.0f);
  const float tied = 1 - 1.6f * (float) sw_laid_ties_pinch (&self->ties, x_cm);

  if (place.inside <= 0)
    return 0;
  return self->height_cm * sqrtf (MAX (1 - up * up, 0)) * tied * sqrtf (1 - 0.9f * place.point.end * place.point.end) * (1 + 0.13f * locks);
}

static void
raise_relief (SwLaid *self)
{
  SwRelief *relief = &self->relief;
  const double length = self->shape.length;

  sw_relief_init (relief, -ROOM_CM, -ROOM_CM, length + ROOM_CM, (double) self->width_cm + ROOM_CM, RELIEF_CM, 0);
  for (int j = 0; j < relief->height; j++)
    for (int i = 0; i < relief->width; i++)
      {
        const double x = (double) (relief->left + relief->step * (float) i), down = (double) (relief->top + relief->step * (float) j);

        if (x > 0 && x < length && down > 0 && down < (double) self->width_cm)
          relief->heights[(gsize) j * (gsize) relief->width + (gsize) i] = height_at (self, x, (double) self->width_cm - down);
      }
  sw_relief_light (relief, 2.5);
}

SwLaid *
sw_laid_new (const SwForecast *forecast, gboolean second_face)
{
  SwLaid *self = g_new0 (SwLaid, 1);
  const SwSketch *sketch = forecast->sketch;

  self->forecast = forecast;
  self->second_face = second_face;
  self->wet = sketch->listing.wet;
  sw_skein_shape_init (&self->shape, sketch);
  sw_laid_ties_init (&self->ties, sketch);
  self->grain = sw_grain_new (sw_chance_mix (0x6c616964, (guint64) sketch->seed));
  sw_linear_init (&self->linear);
  for (int i = 0; i < 256; i++)
    self->logs[i] = logf (MAX (self->linear.decode[i], 0.002f));
  self->strand_cm = (float) sqrt (4 * sw_tex (sketch->yarn.metres_per_100_g) * 1e-5 / (G_PI * DENSITY));
  self->height_cm = (float) MIN (MIN (sketch->lay.depth_cm, MOST_HEIGHT_CM), 0.45 * self->shape.lane / self->shape.runs_across);
  self->width_cm = (float) sw_sketch_lay_width (sketch);
  raise_relief (self);
  return self;
}

void
sw_laid_free (SwLaid *self)
{
  if (self == NULL)
    return;
  sw_relief_clear (&self->relief);
  g_free (self->grain);
  g_free (self);
}

/* What one place gives to the picture. */
typedef struct
{
  float light, dye, gloss;
  float x_cm, y_cm; /* where the strand that is seen was dyed */
} Shade;

static void
normal_at (const SwRelief *relief, float x, float down, float *normal)
{
  const float u = CLAMP ((x - relief->left) / relief->step, 1, (float) relief->width - 2.001f);
  const float v = CLAMP ((down - relief->top) / relief->step, 1, (float) relief->height - 2.001f);
  const int i = (int) u, j = (int) v;
  const float a = u - (float) i, b = v - (float) j, *h = relief->heights + (gsize) j * (gsize) relief->width + (gsize) i;
  const int w = relief->width;
  const float dx0 = (h[1] - h[-1]) * (1 - a) + (h[2] - h[0]) * a, dx1 = (h[w + 1] - h[w - 1]) * (1 - a) + (h[w + 2] - h[w]) * a;
  const float dy0 = (h[w] - h[-w]) * (1 - b) + (h[2 * w] - h[0]) * b, dy1 = (h[w + 1] - h[1 - w]) * (1 - b) + (h[2 * w + 1] - h[1]) * b;
  const float sx = (dx0 * (1 - b) + dx1 * b) / (2 * relief->step), sy = (dy0 * (1 - a) + dy1 * a) / (2 * relief->step);
  const float length = sqrtf (1 + sx * sx + sy * sy);

  normal[0] = -sx / length;
  normal[1] = -sy / length;
  normal[2] = 1 / length;
}

static float
body_light (const SwRelief *relief, float x, float down)
{
  float normal[3], sky, lamp, facing;

  normal_at (relief, x, down, normal);
  facing = normal[0] * SW_LAMP_X + normal[1] * SW_LAMP_Y + normal[2] * SW_LAMP_Z;
  sw_relief_at (relief, x, down, &sky, &lamp);
  return SW_RELIEF_SKY * sky * (0.62f + 0.38f * normal[2]) + SW_RELIEF_LAMP * lamp * MAX ((facing + 0.30f) / 1.30f, 0);
}

/* Wet strands throw the lamp back from their water: brightest a little to its side of their backs. */
static float
gloss_at (float across, float height, float streak)
{
  const float off = (across - 0.42f) / 0.20f;

  return expf (-off * off) * CLAMP (height, 0, 1.3f) * MAX (0.55f + 0.9f * streak, 0);
}

static Shade
shade_at (const SwLaid *self, const SwYarnLight *strand, float single, float x_cm, float y_cm, const Place *place)
{
  const float stray = stray_at (self, place->point.strand, x_cm), slope = (stray_at (self, place->point.strand, x_cm + 0.2f) - stray) / 0.2f;
  const float down = self->width_cm - y_cm, lying = place->point.strand + stray, round = lying / self->strand_cm + 64;
  const SwStrandTop top = sw_strands_top (self->grain, round, x_cm);
  const SwYarnPoint point = { x_cm / self->strand_cm, top.across * 0.92f, { 1, -slope, 0 }, (guint32) top.strand * 977u + 13u };
  const SwYarnShade yarn = sw_yarn_light_at (strand, &point);
  const float tone = sw_grain_tone (self->grain, top.strand + 91, x_cm / 5.0f);
  Shade shade = { .light = body_light (&self->relief, x_cm, down), .dye = single * yarn.dye };

  shade.light *= 1 + single * (yarn.light / MEAN_STRAND_LIGHT * sw_strands_depth_light (top.height) - 1);
  shade.light *= 1 + TONE * tone + LOCK_TONE * sw_grain_cloud (self->grain, lying / LOCK_CM + 90, 200, x_cm / 5.0f);
  shade.gloss = self->wet ? gloss_at (top.across, top.height, sw_grain_tone (self->grain, top.strand + 17, x_cm / 2.2f)) * (0.4f + 0.6f * single) : 0;
  shade.x_cm = x_cm + single * self->strand_cm * 2 * sw_grain_tone (self->grain, top.strand + 50, 0.5f);
  shade.y_cm = y_cm - single * top.across * SW_STRANDS_HALF_WIDTH * self->strand_cm;
  return shade;
}

/* The light looked up here and there all over the skeins, as it will be in the picture. */
static SwExposure *
balance (const SwLaid *self, const SwYarnLight *strand, float single, float *gain)
{
  g_autofree float *lights = g_new (float, PROBES *PROBES);
  guint counts[SW_EXPOSURE_LIGHTS] = { 0 };
  double sum = 0;
  gsize seen = 0;

  for (int k = 0; k < PROBES * PROBES; k++)
    {
      const double x = self->shape.length * sw_chance_even (sw_chance_mix (1, (guint64) k)), y = (double) self->width_cm * ((k % PROBES) + 0.5) / PROBES;
      const Place place = place_at (self, x, y);

      if (place.inside <= 0)
        continue;
      lights[seen] = shade_at (self, strand, single, (float) x, (float) y, &place).light;
      sum += (double) lights[seen++];
    }
  *gain = (float) ((double) seen / MAX (sum, 1e-9));
  for (gsize i = 0; i < seen; i++)
    counts[sw_exposure_bin (lights[i] * *gain)]++;
  return sw_exposure_new (counts);
}

typedef struct
{
  const SwLaid *laid;
  const SwFaceWindow *window;
  SwYarnLight strand;
  SwExposure *exposure;
  float single, gain, per_cm;
  guint32 *face; /* the window of the forecast's colours, the near edge first */
  int stride;
  guint32 *pixels;
  int next_row; /* atomic */
} Job;

static guint32
colour_at (const Job *job, float x_cm, float y_cm)
{
  const SwFaceWindow *window = job->window;
  const int i = (int) lrintf (x_cm * job->per_cm - 0.5f) - window->left, j = (int) lrintf (y_cm * job->per_cm - 0.5f) - window->near;

  return job->face[(gsize) CLAMP (j, 0, window->height - 1) * (gsize) window->width + (gsize) CLAMP (i, 0, window->width - 1)];
}

#define GLOSS 0.10f

static guint32
pixel_at (const Job *job, float x_cm, float y_cm)
{
  const SwLaid *laid = job->laid;
  const Place place = place_at (laid, (double) x_cm, (double) y_cm);
  const float cover = CLAMP (place.inside * job->per_cm + 0.5f, 0, 1);
  float rgb[3], factor;
  guint32 colour;
  Shade shade;

  if (cover <= 0)
    return 0;
  shade = shade_at (laid, &job->strand, job->single, x_cm, y_cm, &place);
  colour = colour_at (job, shade.x_cm, shade.y_cm);
  sw_linear_decode (&laid->linear, colour, rgb);
  factor = sw_exposure_factor (job->exposure, MAX (MAX (rgb[0], rgb[1]), rgb[2]), shade.light * job->gain);
  for (int k = 0; k < 3; k++)
    rgb[k] = (laid->wet ? sw_wet (rgb[k]) : rgb[k]) * factor * (1 + shade.dye * laid->logs[colour >> (16 - 8 * k) & 0xff]) + GLOSS * shade.gloss * factor;
  colour = sw_linear_pixel (&laid->linear, rgb);
  return cover < 1 ? sw_linear_premultiply (colour, cover) : colour;
}

static gpointer
paint_worker (gpointer data)
{
  Job *job = data;
  const SwFaceWindow *window = job->window;

  for (int j = g_atomic_int_add (&job->next_row, 1); j < window->height; j = g_atomic_int_add (&job->next_row, 1))
    for (int i = 0; i < window->width; i++)
      {
        const int row = window->height - 1 - j; /* the face counts from the near edge, the picture from the far one */

        job->pixels[(gsize) j * (gsize) job->stride + (gsize) i] = pixel_at (job, ((float) (window->left + i) + 0.5f) / job->per_cm, ((float) (window->near + row) + 0.5f) / job->per_cm);
      }
  return NULL;
}

void
sw_laid_raster (SwLaid *self, const SwFaceWindow *window, int stride, guint32 *pixels)
{
  const gsize n = (gsize) window->width * (gsize) window->height;
  g_autofree float *xyz = g_new (float, 3 * n);
  g_autofree guint32 *face = g_new (guint32, n);
  Job job = { .laid = self, .window = window, .per_cm = (float) (window->nx / self->shape.length), .face = face, .stride = stride, .pixels = pixels };
  const float px = self->strand_cm * job.per_cm, t = CLAMP ((px - 0.8f) / 2.2f, 0, 1);
  GThread *other;

  sw_forecast_face_window (self->forecast, self->second_face, window, xyz, xyz + n, xyz + 2 * n);
  sw_pixels_from_xyz (xyz, xyz + n, xyz + 2 * n, 1, n, face);
  job.single = t * t * (3 - 2 * t);
  sw_yarn_light_init (&job.strand, self->forecast->sketch->yarn.fibre, (int) self->forecast->sketch->yarn.plies, (double) px);
  job.exposure = balance (self, &job.strand, job.single, &job.gain);
  other = g_thread_new ("skein", paint_worker, &job);
  paint_worker (&job);
  g_thread_join (other);
  g_free (job.exposure);
}

void
sw_laid_draw (SwLaid *self, const SwCanvas *canvas, const SwBox *box)
{
  SwFaceWindow window;
  SwRaster raster;

  sw_shadow_draw (&self->relief, canvas, box->x, box->y, box->width / self->shape.length);
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
  sw_laid_raster (self, &window, raster.stride, raster.pixels);
  sw_raster_end (&raster, canvas);
  sw_laid_ties_draw (&self->ties, canvas, box, self->shape.length);
}
