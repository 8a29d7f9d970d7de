/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-shadow.h"

#include <math.h>
#include <string.h>

#define DARKEST 0.62 /* of the shadow */
#define RIM 12.0     /* places over which it fades out */

#define BENEATH 4    /* places so far in from the edge of what lies there have its shadow too */
#define SOFTENED 3

#define NARROW 6 /* places to each side, by which a gap is narrow */
#define NARROW_FROM 0.60f
#define NARROW_TO 0.80f
#define NARROW_LIGHT 0.16f

/* Whether something lies on a place or right beside it, where its own light is mixed into that of the table. */
static gboolean
is_touched (const SwRelief *relief, int i, int j)
{
  for (int b = MAX (j - 1, 0); b <= MIN (j + 1, relief->height - 1); b++)
    for (int a = MAX (i - 1, 0); a <= MIN (i + 1, relief->width - 1); a++)
      if (relief->heights[(gsize) b * (gsize) relief->width + (gsize) a] > relief->ground)
        return TRUE;
  return FALSE;
}

/*
 * The light on the table. What lies on it is itself in the light, and would
 * shine out round its own edge: at that edge and beneath it is as dark as beside it.
 */
static float *
table_light (const SwRelief *relief)
{
  const gsize n = (gsize) relief->width * (gsize) relief->height;
  float *light = g_new (float, n);
  g_autofree float *before = g_new (float, n);

  for (int j = 0; j < relief->height; j++)
    for (int i = 0; i < relief->width; i++)
      {
        const gsize at = (gsize) j * (gsize) relief->width + (gsize) i;

        light[at] = is_touched (relief, i, j) ? INFINITY : SW_RELIEF_SKY * relief->sky[at] + SW_RELIEF_LAMP * relief->lamp[at];
      }
  for (int pass = 0; pass < BENEATH; pass++)
    {
      memcpy (before, light, n * sizeof *light);
      for (int j = 1; j + 1 < relief->height; j++)
        for (int i = 1; i + 1 < relief->width; i++)
          {
            const gsize at = (gsize) j * (gsize) relief->width + (gsize) i;
            const float *p = before + at;

            if (isinf (p[0]))
              light[at] = MIN (MIN (p[-1], p[1]), MIN (p[-relief->width], p[relief->width]));
          }
    }
  return light;
}

/* 1 2 1 along lines @step apart. */
static void
soften_lines (const float *from, float *to, int n, int lines, int step, int line_step)
{
  static const float weights[] = { 1, 2, 1 };

  for (int l = 0; l < lines; l++)
    for (int i = 0; i < n; i++)
      {
        const float *in = from + l * line_step + i * step;
        float sum = 0, whole = 0;

        for (int k = -1; k <= 1; k++)
          if (i + k >= 0 && i + k < n)
            {
              sum += weights[k + 1] * in[k * step];
              whole += weights[k + 1];
            }
        to[l * line_step + i * step] = sum / whole;
      }
}

/* What lies there ends at whole places, and so would its shadow, in steps that show in a large picture. */
static void
soften (const SwRelief *relief, float *light)
{
  const int w = relief->width, h = relief->height;
  g_autofree float *across = g_new (float, (gsize) w * (gsize) h);

  for (int pass = 0; pass < SOFTENED; pass++)
    {
      soften_lines (light, across, w, h, 1, w);
      soften_lines (across, light, h, w, w, 1);
    }
}

/* Sums over NARROW places to each side, along lines @step apart. */
static void
sum_lines (const float *from, float *to, int n, int lines, int step, int line_step)
{
  for (int l = 0; l < lines; l++)
    {
      const float *in = from + l * line_step;
      float sum = 0;

      for (int i = 0; i < n + NARROW; i++)
        {
          sum += i < n ? in[i * step] : 0;
          sum -= i > 2 * NARROW ? in[(i - 2 * NARROW - 1) * step] : 0;
          if (i >= NARROW)
            to[l * line_step + (i - NARROW) * step] = sum;
        }
    }
}

/*
 * Into a gap between two things little light falls, and less than the relief,
 * whose places are as wide as the gap, makes of it: the more of what is around
 * a place is covered, the nearer it comes to the shade there.
 */
static void
shade_gaps (const SwRelief *relief, float *light)
{
  const int w = relief->width, h = relief->height;
  const gsize n = (gsize) w * (gsize) h;
  g_autofree float *covered = g_new (float, 2 * n);
  float *sums = covered + n;

  for (gsize i = 0; i < n; i++)
    covered[i] = relief->heights[i] > relief->ground ? 1.0f / ((2 * NARROW + 1) * (2 * NARROW + 1)) : 0;
  sum_lines (covered, sums, w, h, 1, w);
  sum_lines (sums, covered, h, w, w, 1);
  for (gsize i = 0; i < n; i++)
    {
      const float narrow = CLAMP ((covered[i] - NARROW_FROM) / (NARROW_TO - NARROW_FROM), 0, 1);

      if (isinf (light[i]))
        light[i] = NARROW_LIGHT;
      else if (narrow > 0)
        light[i] += narrow * (MIN (light[i], NARROW_LIGHT) - light[i]);
    }
}

/* As a picture of the relief's size: black and its alpha. (A mask would do, but cairo's SVG puts it in the wrong place once it is scaled.) */
static cairo_surface_t *
shadow_surface (const SwRelief *relief)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, relief->width, relief->height);
  const int stride = cairo_image_surface_get_stride (surface) / 4; /* pixels */
  g_autofree float *lights = table_light (relief);
  guint32 *data = (guint32 *) (gpointer) cairo_image_surface_get_data (surface);

  shade_gaps (relief, lights);
  soften (relief, lights);
  for (int j = 0; j < relief->height; j++)
    for (int i = 0; i < relief->width; i++)
      {
        const gsize at = (gsize) j * (gsize) relief->width + (gsize) i;
        const double light = (double) lights[at];
        const int rim = MIN (MIN (i, relief->width - 1 - i), MIN (j, relief->height - 1 - j));

        /* A share of linear light; laid over an encoded grey as alpha it is about its 2.2th root. */
        data[(gsize) j * (gsize) stride + (gsize) i] = (guint32) (255 * DARKEST * (1 - pow (CLAMP (light, 0, 1), 1 / 2.2)) * MIN (rim / RIM, 1)) << 24;
      }
  cairo_surface_mark_dirty (surface);
  return surface;
}

void
sw_shadow_draw (const SwRelief *relief, const SwCanvas *canvas, double x, double y, double px_per_cm)
{
  cairo_surface_t *surface = shadow_surface (relief);
  const double step = (double) relief->step * px_per_cm;

  cairo_save (canvas->cr);
  cairo_translate (canvas->cr, x + (double) relief->left * px_per_cm - step / 2, y + (double) relief->top * px_per_cm - step / 2);
  cairo_scale (canvas->cr, step, step);
  cairo_set_source_surface (canvas->cr, surface, 0, 0);
  cairo_paint (canvas->cr);
  cairo_restore (canvas->cr);
  cairo_surface_destroy (surface);
}
