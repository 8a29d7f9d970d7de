/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-canvas.h"
#include "draw/sw-item-raster.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Ground left around an item, as a share of the smaller side. */
#define MARGIN 0.05

/* The soft shadow beneath: how far it is thrown to the lower right and how wide it spreads, as shares of the smaller side. */
#define THROW 0.004
#define SPREAD 0.007
#define DARKNESS 0.42

/* How far in its outline is rounded, a share of the smaller side, and how dark it gets on the side away from the light. */
#define ROUND 0.011
#define ROUNDING 0.24f

static void
blur_line (const guint8 *from, guint8 *to, int n, int step, int half)
{
  int sum = 0;

  for (int i = -half; i < n + half; i++)
    {
      sum += i + half < n ? from[(i + half) * step] : 0;
      sum -= i - half - 1 >= 0 && i - half - 1 < n ? from[(i - half - 1) * step] : 0;
      if (i >= 0 && i < n)
        to[i * step] = (guint8) (sum / (2 * half + 1));
    }
}

/* What is opaque in @raster, softened by two passes of a box; @n: bytes to a line. */
static guint8 *
soften (const SwRaster *raster, int n, int half)
{
  const gsize bytes = (gsize) n * (gsize) raster->height;
  guint8 *a = g_malloc0 (bytes);
  g_autofree guint8 *b = g_malloc0 (bytes);

  for (int y = 0; y < raster->height; y++)
    for (int x = 0; x < raster->width; x++)
      a[(gsize) y * (gsize) n + (gsize) x] = (guint8) (raster->pixels[(gsize) y * (gsize) raster->stride + (gsize) x] >> 24);
  for (int pass = 0; pass < 2; pass++)
    {
      for (int y = 0; y < raster->height; y++)
        blur_line (a + (gsize) y * (gsize) n, b + (gsize) y * (gsize) n, raster->width, 1, half);
      for (int x = 0; x < raster->width; x++)
        blur_line (b + x, a + x, raster->height, n, half);
    }
  return a;
}

static guint32
dim (guint32 pixel, float light)
{
  guint32 out = pixel & 0xff000000u;

  for (int shift = 0; shift < 24; shift += 8)
    out |= (guint32) MIN ((float) (pixel >> shift & 0xff) * light + 0.5f, (float) (pixel >> 24)) << shift;
  return out;
}

/* Knitting is soft: towards its outline it bends away, to the light at the upper left and from it at the lower right. */
static void
round_edges (SwRaster *raster, int half)
{
  const int n = raster->width;
  g_autofree guint8 *soft = soften (raster, n, half);

  for (int y = 1; y + 1 < raster->height; y++)
    for (int x = 1; x + 1 < n; x++)
      {
        guint32 *pixel = &raster->pixels[(gsize) y * (gsize) raster->stride + (gsize) x];
        const guint8 *at = &soft[(gsize) y * (gsize) n + (gsize) x];
        const float edge = MIN (2 * (1 - (float) *at / 255), 1.0f);
        const float dx = (float) (at[1] - at[-1]), dy = (float) (at[n] - at[-n]);

        if (*pixel >> 24 == 0 || edge <= 0.01f)
          continue;
        *pixel = dim (*pixel, 1 - ROUNDING * edge * edge * (0.6f + (-0.64f * dx - 0.77f * dy) / (hypotf (dx, dy) + 4)));
      }
}

static void
draw_shadow (const SwCanvas *canvas, const SwRaster *raster, double smaller)
{
  const int stride = cairo_format_stride_for_width (CAIRO_FORMAT_A8, raster->width);
  g_autofree guint8 *soft = soften (raster, stride, MAX (1, (int) (SPREAD * smaller * raster->scale)));
  cairo_surface_t *shade = cairo_image_surface_create_for_data (soft, CAIRO_FORMAT_A8, raster->width, raster->height, stride);

  cairo_save (canvas->cr);
  cairo_translate (canvas->cr, THROW * smaller, 1.6 * THROW * smaller);
  cairo_scale (canvas->cr, 1 / raster->scale, 1 / raster->scale);
  cairo_set_source_rgba (canvas->cr, 0, 0, 0, DARKNESS);
  cairo_mask_surface (canvas->cr, shade, raster->x, raster->y);
  cairo_restore (canvas->cr);
  cairo_surface_destroy (shade);
}

static const char *
remark_on (const SwItemKnit *knit)
{
  /* Translators: beneath a drawn sock, hat or shawl that breaks off; also after the name of the colourway's file and a colon */
  return knit->whole ? NULL : _ ("The yarn runs out before all of it is knitted");
}

const char *
sw_draw_item_remark (const SwForecast *forecast, const SwLook *look)
{
  const char *words;
  SwItemYarn yarn;
  SwItemKnit knit;

  sw_item_yarn (forecast, &yarn);
  sw_item_knit (look->item, &yarn, &knit);
  words = remark_on (&knit);
  sw_item_knit_clear (&knit);
  return words;
}

static void
draw_remark (const SwCanvas *canvas, const char *words)
{
  double width, height;

  sw_canvas_text_size (canvas, words, SW_TEXT_PX, &width, &height);
  sw_canvas_set_ink (canvas, SW_INK_TEXT);
  sw_canvas_text (canvas, words, canvas->width / 2, canvas->height - 3, 0.5, 1, SW_TEXT_PX * MIN (1, (canvas->width - 6) / width), NULL);
}

void
sw_draw_item (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look)
{
  const double smaller = MIN (width, height), room = 2 * MARGIN * smaller;
  const SwBox all = { 0, 0, width, height };
  SwCanvas canvas;
  SwItemYarn yarn;
  SwItemKnit knit;
  SwRaster raster;

  sw_item_yarn (forecast, &yarn);
  sw_item_knit (look->item, &yarn, &knit);
  sw_canvas_begin (&canvas, cr, width, height, look);
  if (knit.right_cm > knit.left_cm && sw_raster_begin (&raster, &canvas, &all))
    {
      const double wide = knit.right_cm - knit.left_cm, high = knit.bottom_cm - knit.top_cm;
      const double scale = MIN (MAX (width - room, 1) / wide, MAX (height - room, 1) / high) * raster.scale;

      sw_item_raster (forecast, &knit, scale, (int) lround ((raster.width - wide * scale) / 2), (int) lround ((raster.height - high * scale) / 2),
                      raster.width, raster.height, raster.stride, raster.pixels);
      round_edges (&raster, MAX (1, (int) (ROUND * smaller * raster.scale)));
      draw_shadow (&canvas, &raster, smaller);
      sw_raster_end (&raster, &canvas);
    }
  if (!knit.whole)
    draw_remark (&canvas, remark_on (&knit));
  sw_canvas_end (&canvas);
  sw_item_knit_clear (&knit);
}
