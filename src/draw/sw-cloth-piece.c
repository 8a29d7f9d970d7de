/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-cloth-piece.h"

#include "draw/sw-cloth-raster.h"
#include "draw/sw-grain.h"
#include "draw/sw-linear.h"
#include "draw/sw-relief.h"
#include "draw/sw-shadow.h"

#include <math.h>

#define LEAST_STITCH_PX 2.0

/* cm */
#define THICK 0.30
#define ROLL 0.34f   /* radius at which the edges turn under */
#define SWAY 0.22f   /* how far the edges are off a straight line */
#define SWAY_ON 5.5f /* and over which length */
#define HEAVE 0.10f  /* how high the cloth rises */
#define HEAVE_ON 7.0f
#define CURL 0.32f      /* radius to which a cast-on edge curls */
#define CURL_VARY 0.16f /* by which share it does so here more and there less */
#define CURL_SEEN 1.8f  /* how far up its roll is seen before it meets the cloth, radii */
#define LEAST_CURLED 4  /* a piece lower than this does not */
#define NOOK 0.10f      /* how far the shade in that nook reaches, and how dark it is */
#define NOOK_SHADE 0.42f
#define SAME_LIGHT 0.08 /* so far from where it was found the light of level cloth holds */

/* Cloth as knitted, straight, its lower left corner at the picture's, but for the rim. */
typedef struct
{
  int width, height;
  guint32 *pixels;
} Straight;

typedef struct
{
  const SwCanvas *canvas;
  double per_cm;       /* device pixels */
  double c, s;         /* of the tilt */
  double x, y;         /* the lower left corner, device pixels */
  float width, height; /* as it lies, cm */
  float beyond;        /* what is turned under at each edge, cm */
  float below;         /* the same at the lower edge */
  float knitted;       /* width as knitted, cm */
  float curl;          /* radius of the lower edge's roll, cm; 0 none */
  Straight front, back;
  int rim; /* pixels of room around both */
  SwGrain *grain;
  SwLinear linear;
  SwRaster raster;
  int next_line; /* atomic */
} Piece;

/* A place of the piece as it lies, cm from its lower left corner, up and to the right. */
typedef struct
{
  float u, v;
} Place;

static Place
place_at (const Piece *self, double x, double y)
{
  const double dx = (x - self->x) / self->per_cm, dy = (y - self->y) / self->per_cm;
  const float u = (float) (self->c * dx + self->s * dy), v = (float) (self->s * dx - self->c * dy);

  /* The whole piece sways, so that a wale bends as its edge does. */
  return (Place){ u + SWAY * sw_grain_tone (self->grain, 3, v / SWAY_ON + 0.4f), v + SWAY * sw_grain_tone (self->grain, 5, u / SWAY_ON + 0.7f) };
}

/* How far inside the nearest edge: negative outside. */
static float
inside (const Piece *self, Place at)
{
  return MIN (MIN (at.u, self->width - at.u), MIN (at.v, self->height - at.v));
}

/* From a place as it is seen to one along the cloth, on the way from an edge; and how steeply the cloth turns down towards that edge, 0 .. 1. */
static float
unroll (float d, float *steep)
{
  const float in = CLAMP ((ROLL - d) / ROLL, 0, 1);

  *steep = in;
  if (d >= ROLL)
    return d + ROLL * ((float) G_PI_2 - 1);
  return ROLL * ((float) G_PI_2 - asinf (in));
}

/* Both edges of one direction: @at of @length, cm, to a place on the cloth; @before: what is turned under at the near edge; @slope: of the normal towards the far edge, -1 .. 1 */
static float
unroll_both (float at, float length, float before, float beyond, float *slope)
{
  float steep_near, steep_far;
  const float near = unroll (at, &steep_near), far = unroll (length - at, &steep_far);

  *slope = steep_far - steep_near;
  return at < length / 2 ? near - beyond + before : length + before + beyond - far;
}

/* Plain knit curls: its lower edge comes forward and shows its purl side. The radius at @u. */
static float
curl_at (const Piece *self, float u)
{
  return self->curl * (1 + CURL_VARY * sw_grain_tone (self->grain, 7, u / SWAY_ON + 0.2f));
}

/* How far along the cloth from the end of a roll of radius 1 to where it is seen @up its outline. */
static float
curled (float up)
{
  return acosf (1 - CURL_SEEN) - acosf (CLAMP (1 - up, -1, 1));
}

static float
heave_at (const Piece *self, float u, float v)
{
  return HEAVE * sw_grain_cloud (self->grain, 20 + u / HEAVE_ON, 200, v / HEAVE_ON + 3);
}

/* Sky and lamp as on everything that lies on the table, against level ground. */
static float
light_at (const Piece *self, Place at, float slope_u, float slope_v)
{
  const float step = 0.4f, here = heave_at (self, at.u, at.v);
  const float rise_u = (heave_at (self, at.u + step, at.v) - here) / step, rise_v = (heave_at (self, at.u, at.v + step) - here) / step;
  const float nu = slope_u - rise_u, nv = slope_v - rise_v, nz = sqrtf (MAX (1 - slope_u * slope_u - slope_v * slope_v, 0.02f));
  const float length = sqrtf (nu * nu + nv * nv + nz * nz);
  /* The piece's own axes in the picture, y down. */
  const float nx = (float) (self->c * (double) nu + self->s * (double) nv), ny = (float) (self->s * (double) nu - self->c * (double) nv);
  const float facing = (nx * SW_LAMP_X + ny * SW_LAMP_Y + nz * SW_LAMP_Z) / length, level = (SW_LAMP_Z + 0.30f) / 1.30f;
  const float light = SW_RELIEF_SKY * (0.62f + 0.38f * nz / length) + SW_RELIEF_LAMP * MAX ((facing + 0.30f) / 1.30f, 0);

  return light / (SW_RELIEF_SKY + SW_RELIEF_LAMP * level);
}

static guint32
straight_pixel (const Straight *straight, int x, int y)
{
  return x < 0 || y < 0 || x >= straight->width || y >= straight->height ? 0 : straight->pixels[(gsize) y * (gsize) straight->width + (gsize) x];
}

/* Between four pixels of the straight cloth, in linear light. Returns: the share that is cloth */
static float
sample_straight (const Piece *self, const Straight *straight, float u, float v, float *rgb)
{
  const float x = u * (float) self->per_cm + (float) self->rim - 0.5f, y = (float) (straight->height - self->rim) - v * (float) self->per_cm - 0.5f;
  const int i = sw_grain_whole (x), j = sw_grain_whole (y);
  const float a = x - (float) i, b = y - (float) j;
  float whole = 0;

  for (int k = 0; k < 4; k++)
    {
      const guint32 pixel = straight_pixel (straight, i + (k & 1), j + (k >> 1));
      const float part = ((k & 1) ? a : 1 - a) * ((k >> 1) ? b : 1 - b) * (float) (pixel >> 24) / 255;
      float light[3];

      if (pixel >> 24 == 0)
        continue;
      sw_linear_decode (&self->linear, pixel >> 24 == 0xff ? pixel : sw_linear_unpremultiply (pixel), light);
      for (int n = 0; n < 3; n++)
        rgb[n] += part * light[n];
      whole += part;
    }
  for (int n = 0; n < 3; n++)
    rgb[n] /= MAX (whole, 1e-6f);
  return whole;
}

/* The nook between the cloth and the roll upon it sees less of the sky. */
static float
nook_at (const Piece *self, Place at)
{
  const float above = at.v - CURL_SEEN * curl_at (self, at.u);

  return self->curl <= 0 || above > 4 * NOOK ? 1 : 1 - NOOK_SHADE * expf (-MAX (above, 0) / NOOK);
}

/* The roll at the lower edge, where it is seen, over the @rgb of the cloth behind it. */
static void
lay_curl (const Piece *self, Place at, float u, float slope_u, float *rgb)
{
  const float radius = MAX (curl_at (self, at.u), 0.01f), up = at.v / radius;
  float own[3] = { 0 }, share, light;

  if (self->curl <= 0 || up >= CURL_SEEN + 1)
    return;
  share = sample_straight (self, &self->back, self->knitted - u, radius * curled (MIN (up, CURL_SEEN)), own);
  share = MIN (share * 1.5f, 1) * CLAMP ((CURL_SEEN - up) * radius * (float) self->per_cm + 0.5f, 0, 1);
  light = light_at (self, at, slope_u, CLAMP (up - 1, -1, 1));
  for (int k = 0; k < 3; k++)
    rgb[k] += share * (own[k] * light - rgb[k]);
}

/* @level: the light of level cloth hereabouts */
static guint32
pixel_at (const Piece *self, double x, double y, float level)
{
  const Place at = place_at (self, x, y);
  const float in = inside (self, at), cover = CLAMP (in * (float) self->per_cm + 0.5f, 0, 1);
  float rgb[3] = { 0 }, slope_u, slope_v, u, v, light, cloth;

  if (cover <= 0)
    return 0;
  u = unroll_both (CLAMP (at.u, 0, self->width), self->width, self->beyond, self->beyond, &slope_u);
  v = unroll_both (CLAMP (at.v, 0, self->height), self->height, self->below, self->beyond, &slope_v);
  cloth = sample_straight (self, &self->front, u, v, rgb);
  if (cloth <= 0)
    return 0;
  light = in >= ROLL ? level : light_at (self, at, slope_u, slope_v);
  light *= nook_at (self, at);
  for (int k = 0; k < 3; k++)
    rgb[k] *= light;
  lay_curl (self, at, u, slope_u, rgb);
  for (int k = 0; k < 3; k++)
    rgb[k] = MIN (rgb[k], 1);
  return sw_linear_premultiply (sw_linear_pixel (&self->linear, rgb), cover * MIN (cloth * 1.5f, 1));
}

static gpointer
paint_worker (gpointer data)
{
  Piece *self = data;
  SwRaster *raster = &self->raster;
  const int same = CLAMP ((int) (SAME_LIGHT * self->per_cm), 1, 16);
  float level = 1;

  for (int j = g_atomic_int_add (&self->next_line, 1); j < raster->height; j = g_atomic_int_add (&self->next_line, 1))
    for (int i = 0; i < raster->width; i++)
      {
        if (i % same == 0)
          level = light_at (self, place_at (self, raster->x + i + same / 2.0, raster->y + j + 0.5), 0, 0);
        raster->pixels[(gsize) j * (gsize) raster->stride + (gsize) i] = pixel_at (self, raster->x + i + 0.5, raster->y + j + 0.5, level);
      }
  return NULL;
}

/* What is beneath the cloth is in its shadow. */
static void
draw_shadow (const Piece *self, double px_per_cm)
{
  const double room = 1.6, step = 0.09;
  const double left = self->raster.box_x / self->per_cm, top = self->raster.box_y / self->per_cm;
  SwRelief relief;

  sw_relief_init (&relief, left - room, top - room, left + self->raster.box_width / self->per_cm + room, top + self->raster.box_height / self->per_cm + room, step, 0);
  for (int j = 0; j < relief.height; j++)
    for (int i = 0; i < relief.width; i++)
      {
        const Place at = place_at (self, (double) (relief.left + relief.step * (float) i) * self->per_cm, (double) (relief.top + relief.step * (float) j) * self->per_cm);

        if (inside (self, at) > 0)
          relief.heights[(gsize) j * (gsize) relief.width + (gsize) i] = (float) THICK + (at.v < 2 * self->curl ? self->curl : 0);
      }
  sw_relief_light (&relief, 1.2);
  sw_shadow_draw (&relief, self->canvas, 0, 0, px_per_cm);
  sw_relief_clear (&relief);
}

/* @geometry's cloth in device pixels, and room around it. */
static void
knit_straight (const SwForecast *forecast, SwClothGeometry *geometry, int rim, Straight *straight)
{
  straight->width = (int) ceil (geometry->cloth.width) + 2 * rim;
  straight->height = (int) ceil (geometry->cloth.height) + 2 * rim;
  geometry->cloth.x = rim;
  geometry->cloth.y = straight->height - rim - geometry->cloth.height;
  straight->pixels = g_new (guint32, (gsize) straight->width * (gsize) straight->height);
  sw_cloth_raster (forecast, geometry, 1, 0, 0, straight->width, straight->height, straight->width, straight->pixels);
}

/* The other side of the rows that curl; the columns that are seen at the front lie on its right. */
static void
knit_back (Piece *self, const SwForecast *forecast, const SwClothGeometry *front)
{
  SwClothGeometry geometry = *front;

  self->curl = CURL;
  self->below = CURL * (acosf (1 - CURL_SEEN) + (float) G_PI_2 - 1);
  geometry.rows = MIN (front->rows, 2 + (gsize) ceil ((double) (CURL * (1 + CURL_VARY) * (float) G_PI) * self->per_cm / front->row));
  geometry.cloth.height = (double) geometry.rows * geometry.row;
  geometry.first_column = forecast->layout.width - front->columns;
  geometry.purl_side = geometry.turned = TRUE;
  knit_straight (forecast, &geometry, self->rim, &self->back);
}

/* How much of the cloth's last row is turned under: its heads are open, and the ground would show through them. A share of it. */
#define TOP_ROW 0.7

static double
top_row_px (const SwForecast *forecast, const SwClothGeometry *geometry)
{
  return geometry->first_row + geometry->rows >= sw_layout_rows (&forecast->layout) ? TOP_ROW * geometry->row : 0;
}

/* Returns: FALSE if there is no cloth */
static gboolean
knit (Piece *self, const SwForecast *forecast, double width, double height)
{
  SwLook look = *self->canvas->look;
  SwClothGeometry geometry;

  look.stitch_px = MAX (forecast->stitch_width_cm * self->per_cm, LEAST_STITCH_PX);
  look.first_row = look.first_column = 0;
  sw_cloth_geometry (forecast, width, height, &look, &geometry);
  if (geometry.rows == 0)
    return FALSE;
  self->rim = (int) ceil (MAX (geometry.stitch, geometry.row));
  knit_straight (forecast, &geometry, self->rim, &self->front);
  self->beyond = self->below = ROLL * ((float) G_PI_2 - 1);
  self->knitted = (float) (geometry.cloth.width / self->per_cm);
  if (forecast->sketch->cloth.fabric == SW_FABRIC_STOCKINETTE && !geometry.purl_side && geometry.cloth.height > LEAST_CURLED * self->per_cm)
    knit_back (self, forecast, &geometry);
  self->width = MAX (self->knitted - 2 * self->beyond, 2 * ROLL);
  self->height = MAX ((float) ((geometry.cloth.height - top_row_px (forecast, &geometry)) / self->per_cm) - self->below - self->beyond, 2 * ROLL);
  return TRUE;
}

/* All that the piece may cover, px. */
static SwBox
outline (const Piece *self, const SwClothPiece *piece, double px_per_cm)
{
  const double w = (double) self->width * px_per_cm, h = (double) self->height * px_per_cm, sway = 1.5 * (double) SWAY * px_per_cm;
  const double xs[] = { 0, self->c * w, self->s * h, self->c * w + self->s * h }, ys[] = { 0, self->s * w, -self->c * h, self->s * w - self->c * h };
  SwBox box = { piece->x, piece->y, 0, 0 };
  double left = 0, top = 0, right = 0, bottom = 0;

  for (int i = 0; i < 4; i++)
    {
      left = MIN (left, xs[i]);
      right = MAX (right, xs[i]);
      top = MIN (top, ys[i]);
      bottom = MAX (bottom, ys[i]);
    }
  box = (SwBox){ piece->x + left - sway, piece->y + top - sway, right - left + 2 * sway, bottom - top + 2 * sway };
  return box;
}

void
sw_cloth_piece_draw (const SwCanvas *canvas, const SwForecast *forecast, const SwClothPiece *wanted, double px_per_cm)
{
  const SwBox whole = { 0, 0, canvas->width, canvas->height };
  SwClothPiece piece = *wanted;
  Piece self = { .canvas = canvas, .c = cos (piece.tilt), .s = sin (piece.tilt) };
  SwRaster probe;
  SwBox box;
  GThread *other;

  if (!sw_raster_begin (&probe, canvas, &whole))
    return;
  self.per_cm = px_per_cm * probe.scale;
  cairo_surface_destroy (probe.surface);
  if (!knit (&self, forecast, piece.width * probe.scale, piece.height * probe.scale))
    return;
  piece.x = MAX (piece.x, piece.to_right - (double) self.width * px_per_cm);
  piece.y = MIN (piece.y, piece.to_top + (double) self.height * px_per_cm);
  box = outline (&self, &piece, px_per_cm);
  if (sw_raster_begin (&self.raster, canvas, &box))
    {
      self.x = piece.x * self.raster.scale;
      self.y = piece.y * self.raster.scale;
      self.grain = sw_grain_new (sw_chance_mix (0x7069656365, (guint64) forecast->sketch->seed));
      sw_linear_init (&self.linear);
      draw_shadow (&self, px_per_cm);
      other = g_thread_new ("cloth", paint_worker, &self);
      paint_worker (&self);
      g_thread_join (other);
      sw_raster_end (&self.raster, canvas);
      g_free (self.grain);
    }
  g_free (self.front.pixels);
  g_free (self.back.pixels);
}
