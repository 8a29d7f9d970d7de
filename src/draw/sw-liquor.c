/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-liquor.h"

#include "draw/sw-grain.h"

#include <math.h>

#define SPREAD_CM 0.9f /* how far from the yarn the pool reaches, about */
#define EDGE 0.20f     /* of the nearness at which it ends */
#define UNEVEN 0.13f
#define RIM_CM 0.22f /* width of its rounded rim */
#define DEEPER 0.06f /* how much darker the floor is beneath it */
#define RIM_LIGHT 0.42f
#define RIM_SHADE 0.20f
#define SHEEN 0.05f

#define DROPS 110
#define MOST_DROP_CM 0.26

typedef struct
{
  const SwRelief *relief;
  SwGrain *grain;
  float *near_by; /* a share for each of the relief's places: how much yarn lies about it */
} Pool;

/* The mean over 2 x @reach + 1 places; @step from one to the next. */
static void
average (const float *from, float *to, int n, int step, int reach)
{
  float sum = 0;

  for (int i = -reach; i < n + reach; i++)
    {
      if (i + reach < n && i + reach >= 0)
        sum += from[(gssize) (i + reach) * step];
      if (i - reach - 1 >= 0)
        sum -= from[(gssize) (i - reach - 1) * step];
      if (i >= 0 && i < n)
        to[(gssize) i * step] = sum / (float) (2 * reach + 1);
    }
}

static void
pool_init (Pool *pool, const SwRelief *relief, guint64 seed)
{
  const gsize n = (gsize) relief->width * (gsize) relief->height;
  const int reach = MAX ((int) (SPREAD_CM / relief->step), 1);
  g_autofree float *other = g_new (float, n);

  *pool = (Pool){ .relief = relief, .grain = sw_grain_new (sw_chance_mix (0x706f6f6c, seed)), .near_by = g_new (float, n) };
  for (gsize i = 0; i < n; i++)
    pool->near_by[i] = relief->heights[i] > relief->ground + 0.05f;
  for (int pass = 0; pass < 2; pass++)
    {
      for (int j = 0; j < relief->height; j++)
        average (pool->near_by + (gsize) j * (gsize) relief->width, other + (gsize) j * (gsize) relief->width, relief->width, 1, reach);
      for (int i = 0; i < relief->width; i++)
        average (other + i, pool->near_by + i, relief->height, relief->width, reach);
    }
}

static void
pool_clear (Pool *pool)
{
  g_free (pool->near_by);
  g_free (pool->grain);
}

/* How far within the pool a place is, in no unit: above 0 there is water. */
static float
depth_at (const Pool *pool, float x, float y)
{
  const SwRelief *relief = pool->relief;
  const float u = (x - relief->left) / relief->step, v = (y - relief->top) / relief->step;
  const int i = (int) u, j = (int) v;
  const float a = u - (float) i, b = v - (float) j;
  const float *p;

  if (u < 0 || v < 0 || i + 1 >= relief->width || j + 1 >= relief->height)
    return -EDGE;
  p = pool->near_by + (gsize) j * (gsize) relief->width + (gsize) i;
  return (p[0] * (1 - a) + p[1] * a) * (1 - b) + (p[relief->width] * (1 - a) + p[relief->width + 1] * a) * b - EDGE + UNEVEN * sw_grain_cloud (pool->grain, y / 2.3f + 40, 200, x / 2.9f);
}

/* Premultiplied black or white over the floor. Where the rim slopes towards the lamp it is bright, on the other side dark. */
static guint32
water_at (const Pool *pool, float x, float y)
{
  const float depth = depth_at (pool, x, y), step = 0.08f;
  float dx, dy, steep, in, round, lit, alpha;
  guint32 white;

  if (depth < -0.08f)
    return 0;
  dx = (depth_at (pool, x + step, y) - depth) / step;
  dy = (depth_at (pool, x, y + step) - depth) / step;
  steep = hypotf (dx, dy) + 1e-4f;
  in = depth / steep; /* cm from the edge */
  if (in < 0)
    return 0;
  round = in < RIM_CM ? 1 - in / RIM_CM : 0;
  round *= round * CLAMP (in / 0.03f, 0, 1);
  lit = -(dx * SW_LAMP_X + dy * SW_LAMP_Y) / steep / 0.675f; /* the rim slopes outwards */
  alpha = round * (lit > 0 ? RIM_LIGHT : RIM_SHADE) * lit + SHEEN * sw_grain_cloud (pool->grain, y / 5 + 90, 200, x / 9) - DEEPER * CLAMP (in / RIM_CM, 0, 1);
  white = alpha > 0 ? 255 : 0;
  alpha = fabsf (alpha);
  white = (guint32) ((float) white * alpha + 0.5f);
  return (guint32) (255 * alpha + 0.5f) << 24 | white << 16 | white << 8 | white;
}

/* Shadow beside it, the floor's light gathered at its far side, the lamp in it. */
static void
draw_drop (cairo_t *cr, double x, double y, double radius, double squash)
{
  cairo_pattern_t *pattern;

  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_scale (cr, radius, radius * squash);
  cairo_arc (cr, 0.16, 0.20, 1.02, 0, 2 * G_PI);
  cairo_set_source_rgba (cr, 0, 0, 0, 0.16);
  cairo_fill (cr);
  pattern = cairo_pattern_create_radial (0.45, 0.5, 0.1, 0, 0, 1);
  cairo_pattern_add_color_stop_rgba (pattern, 0, 1, 1, 1, 0.55);
  cairo_pattern_add_color_stop_rgba (pattern, 0.55, 0.75, 0.75, 0.75, 0.25);
  cairo_pattern_add_color_stop_rgba (pattern, 1, 0, 0, 0, 0.22);
  cairo_arc (cr, 0, 0, 1, 0, 2 * G_PI);
  cairo_set_source (cr, pattern);
  cairo_fill (cr);
  cairo_pattern_destroy (pattern);
  cairo_arc (cr, -0.38, -0.42, 0.20, 0, 2 * G_PI);
  cairo_set_source_rgba (cr, 1, 1, 1, 0.85);
  cairo_fill (cr);
  cairo_restore (cr);
}

static void
draw_drops (const Pool *pool, const SwCanvas *canvas, const SwBox *inside, double x, double y, double px_per_cm, guint64 seed)
{
  for (guint64 i = 0; i < DROPS; i++)
    {
      const guint64 address = sw_chance_mix (sw_chance_mix (0x64726f70, seed), i);
      const double size = sw_chance_even (sw_chance_mix (address, 1)), radius = MOST_DROP_CM * (0.18 + 0.82 * size * size * size) * px_per_cm;
      const double at_x = inside->x + inside->width * (0.02 + 0.96 * sw_chance_even (sw_chance_mix (address, 2))), at_y = inside->y + inside->height * (0.04 + 0.92 * sw_chance_even (sw_chance_mix (address, 3)));

      if (radius > 0.8 && depth_at (pool, (float) ((at_x - x) / px_per_cm), (float) ((at_y - y) / px_per_cm)) < -0.13f)
        draw_drop (canvas->cr, at_x, at_y, radius, 0.82 + 0.18 * sw_chance_even (sw_chance_mix (address, 4)));
    }
}

void
sw_liquor_draw (const SwCanvas *canvas, const SwRelief *relief, const SwBox *inside, double x, double y, double px_per_cm, guint64 seed)
{
  SwRaster raster;
  Pool pool;

  if (!sw_raster_begin (&raster, canvas, inside))
    return;
  pool_init (&pool, relief, seed);
  for (int j = 0; j < raster.height; j++)
    for (int i = 0; i < raster.width; i++)
      raster.pixels[(gsize) j * (gsize) raster.stride + (gsize) i] = water_at (&pool, (float) (((raster.x + i + 0.5) / raster.scale - x) / px_per_cm), (float) (((raster.y + j + 0.5) / raster.scale - y) / px_per_cm));
  sw_raster_end (&raster, canvas);
  draw_drops (&pool, canvas, inside, x, y, px_per_cm, seed);
  pool_clear (&pool);
}
