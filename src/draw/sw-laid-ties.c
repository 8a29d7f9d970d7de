/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-laid-ties.h"

#include "sketch/sw-chance.h"

#include <math.h>

#define THREAD_CM 0.17
#define PINCH 0.055
#define PINCH_CM 1.1
#define PER_LOOP 4

void
sw_laid_ties_init (SwLaidTies *ties, const SwSketch *sketch)
{
  const double length = sw_sketch_lay_length (sketch);

  *ties = (SwLaidTies){
    .n = CLAMP (PER_LOOP / (int) sketch->lay.runs, 1, PER_LOOP),
    .lane_cm = sketch->lay.width_cm,
    .lanes = (int) sketch->lay.skeins,
    .runs_across = sketch->lay.folding == SW_FOLDING_SIDE_BY_SIDE ? (int) sketch->lay.runs : 1,
    .seed = sw_chance_mix (0x74696573, (guint64) sketch->seed),
  };
  for (int i = 0; i < ties->n; i++)
    ties->x_cm[i] = length * ((i + 0.5) / ties->n + 0.05 * (sw_chance_even (sw_chance_mix (ties->seed, (guint64) i)) - 0.5));
}

double
sw_laid_ties_pinch (const SwLaidTies *ties, double x_cm)
{
  double pinch = 0;

  for (int i = 0; i < ties->n; i++)
    {
      const double off = (x_cm - ties->x_cm[i]) / PINCH_CM;

      pinch += off * off < 20 ? PINCH * exp (-off * off) : 0;
    }
  return pinch;
}

/* A thread's course: a gentle curve from one edge of its eye to the other, px. */
typedef struct
{
  double x0, y0, x1, y1, bow;
} Course;

static void
trace (cairo_t *cr, const Course *course, double dx, double dy)
{
  cairo_move_to (cr, course->x0 + dx, course->y0 + dy);
  cairo_curve_to (cr, course->x0 + course->bow + dx, course->y0 + (course->y1 - course->y0) / 3 + dy, course->x1 + course->bow + dx, course->y0 + (course->y1 - course->y0) * 2 / 3 + dy, course->x1 + dx, course->y1 + dy);
}

/* Shadow, body, the light on its upper left, and the twist. */
static void
draw_thread (cairo_t *cr, const Course *course, double px)
{
  const double dashes[] = { 0.34 * px, 0.5 * px };
  const struct
  {
    double grey, alpha, width, off;
    gboolean dashed;
  } layers[] = {
    { 0.0, 0.16, 2.0, 0.55, FALSE },
    { 0.0, 0.30, 1.25, 0.25, FALSE },
    { 0.66, 1, 1, 0, FALSE },
    { 0.86, 1, 0.66, -0.08, FALSE },
    { 0.97, 0.8, 0.34, -0.14, FALSE },
    { 0.45, 0.4, 0.8, 0, TRUE },
  };

  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  for (gsize i = 0; i < G_N_ELEMENTS (layers); i++)
    {
      if (layers[i].dashed && px < 4)
        continue;
      cairo_set_dash (cr, dashes, layers[i].dashed ? 2 : 0, 0);
      cairo_set_line_cap (cr, layers[i].dashed ? CAIRO_LINE_CAP_BUTT : CAIRO_LINE_CAP_ROUND);
      cairo_set_source_rgba (cr, layers[i].grey, layers[i].grey, layers[i].grey, layers[i].alpha);
      cairo_set_line_width (cr, layers[i].width * px);
      trace (cr, course, layers[i].off * px, layers[i].off * px);
      cairo_stroke (cr);
    }
  cairo_set_dash (cr, NULL, 0, 0);
}

/* One tie of one lane: @top, @bottom its edges, px. */
static void
draw_tie (const SwLaidTies *ties, cairo_t *cr, guint64 address, double x, double top, double bottom, double px)
{
  const double middle = (top + bottom) / 2, lean = px * (1 + sw_chance_even (sw_chance_mix (address, 1)));
  const double in = 0.03 * (bottom - top);
  const double tail = px * (5 + 4 * sw_chance_even (sw_chance_mix (address, 2))), aside = px * 6 * (sw_chance_even (sw_chance_mix (address, 3)) - 0.3);
  const Course courses[] = {
    { x - lean, top + in, x + 0.2 * lean, middle - 0.4 * px, 0.5 * px },
    { x - 0.2 * lean, middle + 0.4 * px, x + lean, bottom - in, -0.5 * px },
    { x - lean, top + in, x - lean + aside, top + in - tail, 1.5 * px },
    { x - lean, top + in, x - lean - 0.6 * aside - 2 * px, top + in - 0.8 * tail, -1.5 * px },
  };

  (void) ties;
  for (gsize i = 0; i < G_N_ELEMENTS (courses); i++)
    draw_thread (cr, &courses[i], px);
  /* The knot. */
  cairo_arc (cr, x - lean, top + in, 0.95 * px, 0, 2 * G_PI);
  cairo_set_source_rgb (cr, 0.80, 0.80, 0.80);
  cairo_fill (cr);
  cairo_arc (cr, x - lean - 0.2 * px, top + in - 0.2 * px, 0.55 * px, 0, 2 * G_PI);
  cairo_set_source_rgb (cr, 0.93, 0.93, 0.93);
  cairo_fill (cr);
}

void
sw_laid_ties_draw (const SwLaidTies *ties, const SwCanvas *canvas, const SwBox *box, double length_cm)
{
  const double per_cm = box->width / length_cm, bundle = ties->lane_cm / ties->runs_across * per_cm;

  for (int i = 0; i < ties->n; i++)
    for (int k = 0; k < ties->lanes * ties->runs_across; k++)
      {
        const double off = PINCH / (1 + PINCH) / 2 * bundle;

        draw_tie (ties, canvas->cr, sw_chance_mix (ties->seed, (guint64) (100 + 16 * k + i)), box->x + ties->x_cm[i] * per_cm, box->y + k * bundle + off, box->y + (k + 1) * bundle - off, MAX (THREAD_CM * per_cm, 0.8));
      }
}
