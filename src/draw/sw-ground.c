/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-ground.h"

#include "sketch/sw-chance.h"

#include <math.h>

/* sRGB codes over 255: towards the light, away from it, letters, faint letters. */
static const struct
{
  double light, shade, ink, faint;
} grounds[] = {
  [SW_GROUND_WHITE] = { 1.0, 0.965, 0.16, 0.45 },
  [SW_GROUND_PALE] = { 0.945, 0.885, 0.16, 0.42 },
  [SW_GROUND_GREY] = { 0.725, 0.650, 0.08, 0.26 },
  [SW_GROUND_CHARCOAL] = { 0.270, 0.205, 0.93, 0.68 },
};

/* Circles between which the light falls off: shares of the picture's width, height and diagonal. */
#define INNER_X 0.32
#define INNER_Y 0.28
#define INNER 0.1
#define OUTER_X 0.36
#define OUTER_Y 0.34
#define OUTER 0.85

SwGround
sw_ground_for (const SwSketch *sketch, const SwLook *look)
{
  return look->dark ? SW_GROUND_CHARCOAL : sketch->listing.ground;
}

/* Codes: chance added before rounding. Short of half a code, so that neighbours never lie two apart. */
#define GRAIN 0.47f

/* 0 .. 1 for a pixel; never the same pattern again as a table would have. */
static inline float
grain_at (guint32 x, guint32 y)
{
  guint32 hash = x * 0x9e3779b1u ^ y * 0x85ebca77u;

  hash = (hash ^ hash >> 15) * 0x2c1b3c6du;
  hash = (hash ^ hash >> 12) * 0x297a2d39u;
  return (float) ((hash ^ hash >> 15) >> 8) * 0x1p-24f;
}

/* Light falls off round a place at the upper left: the same cone as cairo's radial gradients have, its inner circle within its outer one. */
typedef struct
{
  float x, y, dx, dy, from, to; /* the inner circle's middle, from there to the outer one's; their radii */
} Cone;

/* Share of the way out, 0 .. 1. */
static inline float
cone_at (const Cone *cone, float x, float y)
{
  const float px = x - cone->x, py = y - cone->y, dr = cone->to - cone->from;
  const float a = cone->dx * cone->dx + cone->dy * cone->dy - dr * dr, b = px * cone->dx + py * cone->dy + cone->from * dr, c = px * px + py * py - cone->from * cone->from;

  return CLAMP ((b - sqrtf (MAX (b * b - a * c, 0))) / a, 0.0f, 1.0f);
}

/* Pixels over which the cone is taken to be straight: it bends by far less than the grain hides. */
#define STRAIGHT 16

typedef struct
{
  const SwRaster *raster;
  Cone cone;
  float light, shade;
  int next_line; /* atomic */
} Job;

static void
paint_stretch (guint32 *pixels, int n, guint32 x, guint32 y, float from, float step)
{
  for (int i = 0; i < n; i++)
    {
      const float code = from + step * (float) i + 0.5f + GRAIN * (2 * grain_at (x + (guint32) i, y) - 1);
      const guint32 grey = (guint32) (gint32) MIN (code, 255.0f);

      pixels[i] = 0xff000000u | grey << 16 | grey << 8 | grey;
    }
}

static gpointer
paint_worker (gpointer data)
{
  Job *job = data;
  const SwRaster *raster = job->raster;
  const float span = 255 * (job->shade - job->light);

  for (int j = g_atomic_int_add (&job->next_line, 1); j < raster->height; j = g_atomic_int_add (&job->next_line, 1))
    {
      const float y = (float) (raster->y + j) + 0.5f;

      /* Stretches count from the picture's edge, not the raster's: a part of it is as it is in the whole. */
      for (int i = 0; i < raster->width;)
        {
          const int x = raster->x + i, on = ((x % STRAIGHT) + STRAIGHT) % STRAIGHT, n = MIN (STRAIGHT - on, raster->width - i);
          const float left = (float) (x - on) + 0.5f, from = cone_at (&job->cone, left, y), step = (cone_at (&job->cone, left + STRAIGHT, y) - from) / STRAIGHT;

          paint_stretch (raster->pixels + (gsize) j * (gsize) raster->stride + (gsize) i, n, (guint32) x, (guint32) (raster->y + j),
                         255 * job->light + span * (from + step * (float) on), span * step);
          i += n;
        }
    }
  return NULL;
}

static void
paint_ground (const SwRaster *raster, const Cone *cone, float light, float shade)
{
  Job job = { raster, *cone, light, shade, 0 };
  GThread *other = g_thread_new ("ground", paint_worker, &job);

  paint_worker (&job);
  g_thread_join (other);
}

/* For those who draw the picture at sizes of their own. */
static void
draw_gradient (const SwCanvas *canvas, double reach, double light, double shade)
{
  cairo_pattern_t *pattern = cairo_pattern_create_radial (INNER_X * canvas->width, INNER_Y * canvas->height, INNER * reach, OUTER_X * canvas->width, OUTER_Y * canvas->height, OUTER * reach);

  cairo_pattern_add_color_stop_rgb (pattern, 0, light, light, light);
  cairo_pattern_add_color_stop_rgb (pattern, 1, shade, shade, shade);
  cairo_set_source (canvas->cr, pattern);
  cairo_paint (canvas->cr);
  cairo_pattern_destroy (pattern);
}

void
sw_ground_draw (const SwCanvas *canvas, SwGround ground)
{
  const double light = grounds[ground].light, shade = grounds[ground].shade, reach = hypot (canvas->width, canvas->height);
  const SwBox all = { 0, 0, canvas->width, canvas->height };
  SwRaster raster;
  Cone cone;

  if (cairo_surface_get_type (cairo_get_group_target (canvas->cr)) != CAIRO_SURFACE_TYPE_IMAGE || !sw_raster_begin (&raster, canvas, &all))
    {
      draw_gradient (canvas, reach, light, shade);
      return;
    }
  cone = (Cone){
    .x = (float) (INNER_X * canvas->width * raster.scale),
    .y = (float) (INNER_Y * canvas->height * raster.scale),
    .dx = (float) ((OUTER_X - INNER_X) * canvas->width * raster.scale),
    .dy = (float) ((OUTER_Y - INNER_Y) * canvas->height * raster.scale),
    .from = (float) (INNER * reach * raster.scale),
    .to = (float) (OUTER * reach * raster.scale),
  };
  paint_ground (&raster, &cone, (float) light, (float) shade);
  sw_raster_end (&raster, canvas);
}

double
sw_ground_ink (SwGround ground, gboolean faint)
{
  return faint ? grounds[ground].faint : grounds[ground].ink;
}

/* What vessels are made of: from the rim inwards. All greys: a hue would tint the colours beside it. */
typedef struct
{
  double rim, rim_edge, wall_lit, wall_dark, floor_lit, floor_dark;
  double brushed; /* strength of the lines that polishing leaves */
} Metal;

static const Metal metals[] = {
  [SW_VESSEL_STEEL] = { 0.86, 0.52, 0.83, 0.46, 0.80, 0.66, 0.05 },
  [SW_VESSEL_ENAMEL] = { 0.17, 0.08, 0.97, 0.74, 0.965, 0.90, 0 },
};

static SwBox
grown (const SwBox *box, double by)
{
  return (SwBox){ box->x - by, box->y - by, box->width + 2 * by, box->height + 2 * by };
}

static void
fill_across (const SwCanvas *canvas, const SwBox *box, double radius, double from, double to)
{
  cairo_pattern_t *pattern = cairo_pattern_create_linear (box->x, box->y, box->x + 0.5 * box->width + 0.5 * box->height, box->y + 0.5 * box->width + 0.5 * box->height);

  cairo_pattern_add_color_stop_rgb (pattern, 0, from, from, from);
  cairo_pattern_add_color_stop_rgb (pattern, 1, to, to, to);
  sw_canvas_rounded (canvas, box, radius);
  cairo_set_source (canvas->cr, pattern);
  cairo_fill (canvas->cr);
  cairo_pattern_destroy (pattern);
}

static void
draw_brushed (const SwCanvas *canvas, const SwBox *box, double radius, double strength, double px_per_cm)
{
  const int n = (int) (box->height / MAX (0.05 * px_per_cm, 1));

  cairo_save (canvas->cr);
  sw_canvas_rounded (canvas, box, radius);
  cairo_clip (canvas->cr);
  cairo_set_line_width (canvas->cr, MAX (0.03 * px_per_cm, 0.6));
  for (int i = 0; i < n; i++)
    {
      const guint64 address = sw_chance_mix (0x627275, (guint64) i);
      const double y = box->y + (i + sw_chance_even (address)) * box->height / n, x = box->x + box->width * (sw_chance_even (sw_chance_mix (address, 1)) - 0.3);

      cairo_set_source_rgba (canvas->cr, i % 2, i % 2, i % 2, strength * sw_chance_even (sw_chance_mix (address, 2)));
      cairo_move_to (canvas->cr, x, y);
      cairo_line_to (canvas->cr, x + box->width * (0.3 + 0.6 * sw_chance_even (sw_chance_mix (address, 3))), y);
      cairo_stroke (canvas->cr);
    }
  cairo_restore (canvas->cr);
}

/* The wall keeps light off the floor along its upper and left foot. */
static void
draw_wall_shade (const SwCanvas *canvas, const SwBox *inside, double radius, double reach)
{
  cairo_save (canvas->cr);
  sw_canvas_rounded (canvas, inside, radius);
  cairo_clip (canvas->cr);
  for (int i = 1; i <= 10; i++)
    {
      const double t = i / 10.0;
      const SwBox lit = { inside->x + reach * t, inside->y + reach * t, inside->width - 0.3 * reach * t, inside->height - 0.3 * reach * t };

      cairo_set_fill_rule (canvas->cr, CAIRO_FILL_RULE_EVEN_ODD);
      cairo_rectangle (canvas->cr, inside->x - 9, inside->y - 9, inside->width + 18, inside->height + 18);
      sw_canvas_rounded (canvas, &lit, radius);
      cairo_set_source_rgba (canvas->cr, 0, 0, 0, 0.028);
      cairo_fill (canvas->cr);
    }
  cairo_restore (canvas->cr);
}

static void
draw_outer_shadow (const SwCanvas *canvas, const SwBox *rim, double radius, double reach)
{
  for (int i = 12; i >= 1; i--)
    {
      SwBox box = grown (rim, reach * (i / 12.0 - 0.35));

      box.x += 0.45 * reach;
      box.y += 0.6 * reach;
      sw_canvas_rounded (canvas, &box, radius + reach);
      cairo_set_source_rgba (canvas->cr, 0, 0, 0, 0.026);
      cairo_fill (canvas->cr);
    }
}

void
sw_vessel_draw (const SwCanvas *canvas, SwVessel vessel, const SwBox *inside, double px_per_cm)
{
  const Metal *metal = &metals[vessel];
  const double radius = 2.2 * px_per_cm, wall = 1.1 * px_per_cm, lip = 0.7 * px_per_cm;
  const SwBox rim = grown (inside, wall + lip), edge = grown (inside, wall), lit = grown (&rim, -0.12 * px_per_cm);

  if (vessel == SW_VESSEL_NONE)
    return;
  draw_outer_shadow (canvas, &rim, radius + wall + lip, 1.6 * px_per_cm);
  fill_across (canvas, &rim, radius + wall + lip, metal->rim_edge, 0.8 * metal->rim_edge);
  fill_across (canvas, &lit, radius + wall + lip, MIN (1, 1.12 * metal->rim), 0.86 * metal->rim);
  fill_across (canvas, &edge, radius + wall, metal->wall_dark, metal->wall_lit);
  fill_across (canvas, inside, radius, metal->floor_dark, metal->floor_lit);
  if (metal->brushed > 0)
    draw_brushed (canvas, inside, radius, metal->brushed, px_per_cm);
  draw_wall_shade (canvas, inside, radius, 1.3 * px_per_cm);
}
