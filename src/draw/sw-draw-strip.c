/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "colour/sw-mix.h"
#include "draw/sw-canvas.h"
#include "draw/sw-linear.h"
#include "draw/sw-ruler.h"
#include "draw/sw-strip-geometry.h"
#include "draw/sw-strip-runs.h"

#include <math.h>

/* One loop's colours, XYZ planes of @n places. */
typedef struct
{
  gsize n;
  float *x, *y, *z;
} Loop;

/* As many places as stitches have legs on the loop: more would be bare, and the colours are means over the wraps anyway. */
static void
loop_init (Loop *loop, const SwForecast *forecast)
{
  loop->n = (gsize) CLAMP (2 * forecast->repeat_cm / forecast->stitch_length_cm, 16, SW_STRIP_MAX_PLACES);
  loop->x = g_new (float, 3 * loop->n);
  loop->y = loop->x + loop->n;
  loop->z = loop->y + loop->n;
  sw_forecast_strip (forecast, loop->n, loop->x, loop->y, loop->z);
}

static void
loop_clear (Loop *loop)
{
  g_free (loop->x);
}

/* Round like a strand, with its plies wound round it. 1 in the mean over the height. */
static float
strand_light (float across, float along_px, float height_px, int plies)
{
  const float round = 0.62f + 0.55f * sqrtf (MAX (1 - across * across, 0)) + 0.10f * across;
  const float wind = (along_px / (height_px * 1.5f) + asinf (across) * 0.28f) * (float) plies;
  const float ply = 0.5f + 0.5f * cosf (2 * (float) G_PI * wind), groove = ply * ply * ply;
  const float depth = plies == 1 ? 0.06f : 0.20f;

  /* Means: of the circle's height pi/4, of the cube of a raised cosine 5/16. */
  return round / (0.62f + 0.55f * 0.7854f) * (1 - depth * groove) / (1 - depth * 0.3125f);
}

/* Rounded ends: how much of the pixel is strand. */
static float
strand_cover (const SwRaster *raster, int i, int j)
{
  const float radius = 0.18f * (float) raster->height;
  const float x = (float) MIN (i, raster->width - 1 - i) + 0.5f, y = (float) MIN (j, raster->height - 1 - j) + 0.5f;

  if (x >= radius || y >= radius)
    return 1;
  return CLAMP (radius - hypotf (radius - x, radius - y) + 0.5f, 0, 1);
}

/* Between the two places nearest to @at, 0 .. 1 along the loop; it closes on itself. */
static float
read_loop (const float *places, gsize n, float at)
{
  const float place = at * (float) n + (float) n - 0.5f, whole = floorf (place);
  const gsize i = (gsize) whole % n, next = (i + 1) % n;

  return places[i] + (places[next] - places[i]) * (place - whole);
}

static void
fill_strand (const SwRaster *raster, const Loop *loop, int plies)
{
  const gsize n = (gsize) raster->width;
  g_autofree float *xyz = g_new (float, 3 * n);
  g_autofree guint32 *colours = g_new (guint32, n);
  SwLinear linear;

  sw_linear_init (&linear);
  for (gsize i = 0; i < 3 * n; i++)
    xyz[i] = read_loop (loop->x + i / n * loop->n, loop->n, ((float) (i % n) + 0.5f) / (float) n);
  sw_pixels_from_xyz (xyz, xyz + n, xyz + 2 * n, 1, n, colours);
  for (int j = 0; j < raster->height; j++)
    for (int i = 0; i < raster->width; i++)
      {
        const float across = 1 - 2 * ((float) j + 0.5f) / (float) raster->height;
        const float light = strand_light (across, (float) i, (float) raster->height, plies);
        float rgb[3];

        sw_linear_decode (&linear, colours[i], rgb);
        for (int c = 0; c < 3; c++)
          rgb[c] *= light;
        raster->pixels[(gsize) j * (gsize) raster->stride + (gsize) i] = sw_linear_premultiply (sw_linear_pixel (&linear, rgb), strand_cover (raster, i, j));
      }
}

/* A diamond on the strand's edge, seen on any colour. */
static void
draw_fold_sign (const SwCanvas *canvas, double x, double y)
{
  cairo_move_to (canvas->cr, x - 4, y);
  cairo_line_to (canvas->cr, x, y - 4);
  cairo_line_to (canvas->cr, x + 4, y);
  cairo_line_to (canvas->cr, x, y + 4);
  cairo_close_path (canvas->cr);
  cairo_set_source_rgb (canvas->cr, 1, 1, 1);
  cairo_fill_preserve (canvas->cr);
  cairo_set_source_rgb (canvas->cr, 0.12, 0.12, 0.12);
  cairo_stroke (canvas->cr);
}

/* Folds of the lay: where the strand turns back in the pan. */
static void
draw_folds (const SwCanvas *canvas, const SwForecast *forecast, const SwStripGeometry *geometry)
{
  const int runs = (int) forecast->sketch->lay.runs;
  const double dashes[] = { 2, 2 };
  const double top = geometry->strand.y, bottom = top + geometry->strand.height;

  for (int i = 1; i < runs; i++)
    {
      const double x = floor (sw_strip_to_px (geometry, i * forecast->repeat_cm / runs)) + 0.5;

      cairo_set_dash (canvas->cr, dashes, 2, 0);
      cairo_set_source_rgba (canvas->cr, 0, 0, 0, 0.5);
      sw_canvas_line (canvas, x, top, x, bottom);
      cairo_set_source_rgba (canvas->cr, 1, 1, 1, 0.8);
      cairo_set_dash (canvas->cr, dashes, 2, 2);
      sw_canvas_line (canvas, x, top, x, bottom);
      cairo_set_dash (canvas->cr, NULL, 0, 0);
      draw_fold_sign (canvas, x, top);
      draw_fold_sign (canvas, x, bottom);
    }
}

/* A bracket over one stretch with its length, where that fits; none if it is 0. A stretch that goes on round the loop's end stays open there. */
static void
draw_run (const SwCanvas *canvas, const SwStripGeometry *geometry, double from_cm, double to_cm, double length_cm, gboolean open_left, gboolean open_right)
{
  const double left = sw_strip_to_px (geometry, from_cm) + 2, right = sw_strip_to_px (geometry, to_cm) - 2;
  const double line = geometry->labels.y + geometry->labels.height - 6;
  g_autofree char *text = sw_ruler_length (length_cm, canvas->look->inches);
  double width, height;

  if (right - left < 4)
    return;
  sw_canvas_set_ink (canvas, SW_INK_LINE);
  sw_canvas_line (canvas, left, line, right, line);
  if (!open_left)
    sw_canvas_line (canvas, left, line, left, line + 4);
  if (!open_right)
    sw_canvas_line (canvas, right - 1, line, right - 1, line + 4);
  if (length_cm <= 0)
    return;
  sw_canvas_text_size (canvas, text, SW_TEXT_PX, &width, &height);
  if (width + 6 > right - left)
    return;
  sw_canvas_set_ink (canvas, SW_INK_TEXT);
  sw_canvas_text (canvas, text, (left + right) / 2, line - 1, 0.5, 1, SW_TEXT_PX, NULL);
}

/* In places. */
static double
length_of (const SwStripRun *run)
{
  return (double) (run->to - run->from);
}

static void
draw_runs (const SwCanvas *canvas, const SwForecast *forecast, const SwStripGeometry *geometry, const Loop *loop)
{
  g_autofree SwStripRun *runs = g_new (SwStripRun, loop->n);
  g_autofree float *lab = g_new (float, 3 * loop->n);
  const double place = forecast->repeat_cm / (double) loop->n;
  gsize n, longer;
  gboolean joined;

  sw_lab_from_xyz_many (loop->x, loop->y, loop->z, loop->n, lab, lab + loop->n, lab + 2 * loop->n);
  n = sw_strip_runs (lab, lab + loop->n, lab + 2 * loop->n, loop->n, runs);
  joined = n > 1 && sw_strip_run_distance (&runs[0], &runs[n - 1]) < SW_STRIP_SAME;
  longer = length_of (&runs[n - 1]) > length_of (&runs[0]) ? n - 1 : 0;
  for (gsize i = 0; i < n; i++)
    {
      double length = length_of (&runs[i]) * place;

      /* One stretch in two pieces is named once, over the longer. */
      if (joined && i == longer)
        length = (length_of (&runs[0]) + length_of (&runs[n - 1])) * place;
      else if (joined && (i == 0 || i == n - 1))
        length = 0;
      draw_run (canvas, geometry, (double) runs[i].from * place, (double) runs[i].to * place, length, joined && i == 0, joined && i == n - 1);
    }
}

void
sw_draw_strip (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look)
{
  SwCanvas canvas;
  SwStripGeometry geometry;
  SwRaster raster;
  Loop loop;

  loop_init (&loop, forecast);
  sw_canvas_begin (&canvas, cr, width, height, look);
  sw_strip_geometry (forecast, width, height, &geometry);
  if (sw_raster_begin (&raster, &canvas, &geometry.strand))
    {
      fill_strand (&raster, &loop, (int) forecast->sketch->yarn.plies);
      sw_raster_end (&raster, &canvas);
    }
  draw_folds (&canvas, forecast, &geometry);
  if (geometry.labels.height > 0)
    draw_runs (&canvas, forecast, &geometry, &loop);
  if (geometry.ruler.height > 0)
    sw_ruler_draw (&canvas, SW_RULER_BELOW, &geometry.ruler, geometry.scale);
  sw_canvas_end (&canvas);
  loop_clear (&loop);
}
