/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-pan-marks.h"

#include <math.h>

#define BADGE_PX 8.5 /* radius */
#define INSIDE_PX 18
#define LEAST_SKEIN_FOR_BADGES 40 /* px of the skein's shorter side: on a thumbnail numbers would hide it */

static gboolean
is_selected (const SwPanMarks *marks, guint step)
{
  for (gsize i = 0; i < marks->n_selected; i++)
    if (marks->selected[i] == step)
      return step != 0;
  return FALSE;
}

/* A line that is seen on any colour: light, or the accent, on a wider dark one. */
typedef struct
{
  double width, alpha;
  const double *rgb;
  const double *dash;
  int n_dash;
} Line;

static void
stroke_twice (cairo_t *cr, const Line *line)
{
  const double white[] = { 1, 1, 1 };
  const double *rgb = line->rgb != NULL ? line->rgb : white;

  cairo_set_dash (cr, line->dash, line->n_dash, 0);
  cairo_set_line_width (cr, line->width + 1.6);
  cairo_set_source_rgba (cr, 0, 0, 0, 0.55 * line->alpha);
  cairo_stroke_preserve (cr);
  /* A dark accent would be lost on the dark line: a light one lies between. */
  if (line->rgb != NULL)
    {
      cairo_set_line_width (cr, line->width + 1.2);
      cairo_set_source_rgba (cr, 1, 1, 1, line->alpha);
      cairo_stroke_preserve (cr);
    }
  cairo_set_line_width (cr, line->width);
  cairo_set_source_rgba (cr, rgb[0], rgb[1], rgb[2], line->alpha);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

static void
draw_outline (const SwCanvas *canvas, const SwPanGeometry *geometry, const SwSketch *sketch, const SwStep *step, const SwPanMarks *marks, gboolean up)
{
  static const double beneath[] = { 3, 4 }, zone[] = { 1.5, 3 };
  const gboolean selected = is_selected (marks, step->id), hovered = step->id == marks->hovered;
  Line line = { 1, 0.75, NULL, NULL, 0 };

  if (selected)
    line = (Line){ 2.2, up ? 1 : 0.7, marks->accent, up ? NULL : beneath, up ? 0 : 2 };
  else if (!up)
    line = (Line){ 0.8, hovered ? 0.8 : 0.22, NULL, beneath, 2 };
  else if (step->kind == SW_STEP_SPECKLE)
    line = (Line){ hovered ? 1.8 : 1, hovered ? 1 : 0.75, NULL, zone, 2 };
  else if (hovered)
    line = (Line){ 1.8, 1, NULL, NULL, 0 };
  cairo_new_path (canvas->cr);
  sw_pan_trace_pour (canvas->cr, geometry, sketch, step);
  stroke_twice (canvas->cr, &line);
}

void
sw_pan_mark_place (const SwPanGeometry *geometry, const SwSketch *sketch, const SwStep *step, double *x, double *y)
{
  const double turn = step->angle_deg * G_PI / 180;

  if (step->kind == SW_STEP_BAND)
    {
      const double across = sw_sketch_lay_width (sketch);
      const double far = step->length_cm > 0 ? MIN (step->y_cm + step->length_cm / 2, across) : across;

      sw_pan_to_px (geometry, step->x_cm + sw_pan_band_shift (step, far), far, x, y);
      *x = CLAMP (*x, geometry->skein.x, geometry->skein.x + geometry->skein.width);
    }
  else
    {
      const double share = step->kind == SW_STEP_SPLOTCH ? G_SQRT2 / 4 : 0.5; /* on the ellipse; at the corner */
      const double u = -share * step->width_cm, v = share * step->length_cm;

      sw_pan_to_px (geometry, step->x_cm + u * cos (turn) - v * sin (turn), step->y_cm + u * sin (turn) + v * cos (turn), x, y);
    }
}

/* The earlier number that one at @x, @y would cover; @n_taken if none. */
static guint
covered_by (const double *taken, guint n_taken, double x, double y)
{
  guint i = 0;

  while (i < n_taken && hypot (x - taken[2 * i], y - taken[2 * i + 1]) >= 2 * BADGE_PX)
    i++;
  return i;
}

/* Moves aside, along the skein, until no earlier number is covered. Each move goes right, so it ends. */
static void
make_room (const double *taken, guint n_taken, double *x, double y)
{
  for (guint i = covered_by (taken, n_taken, *x, y); i < n_taken; i = covered_by (taken, n_taken, *x, y))
    *x = taken[2 * i] + 2 * BADGE_PX + 1;
}

static void
draw_badge (const SwCanvas *canvas, double x, double y, guint number, gboolean selected, const double *accent)
{
  cairo_t *cr = canvas->cr;
  char text[16];

  g_snprintf (text, sizeof text, "%u", number);
  cairo_new_path (cr);
  cairo_arc (cr, x, y, BADGE_PX, 0, 2 * G_PI);
  if (selected && accent != NULL)
    cairo_set_source_rgb (cr, accent[0], accent[1], accent[2]);
  else
    cairo_set_source_rgb (cr, selected ? 1 : 0.13, selected ? 1 : 0.13, selected ? 1 : 0.13);
  cairo_fill_preserve (cr);
  cairo_set_line_width (cr, selected ? 2 : 1.2);
  if (selected && accent == NULL)
    cairo_set_source_rgb (cr, 0.13, 0.13, 0.13);
  else
    cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_stroke (cr);
  sw_canvas_text (canvas, text, x, y, 0.5, 0.5, number < 100 ? SW_TEXT_PX : 0.8 * SW_TEXT_PX, NULL);
}

/* A selected pour has handles on its outline: its number steps inside. */
static void
step_inside (const SwPanGeometry *geometry, const SwStep *step, double *x, double *y)
{
  double centre_x, centre_y, off;

  sw_pan_to_px (geometry, step->x_cm, step->y_cm, &centre_x, &centre_y);
  off = hypot (centre_x - *x, centre_y - *y);
  if (off <= INSIDE_PX)
    return;
  *x += (centre_x - *x) * INSIDE_PX / off;
  *y += (centre_y - *y) * INSIDE_PX / off;
}

static void
draw_badges (const SwCanvas *canvas, const SwPanGeometry *geometry, const SwSketch *sketch, const SwPanMarks *marks)
{
  const gboolean second = !!canvas->look->second_face;
  g_autofree double *taken = g_new (double, 2 * sketch->steps->len);
  guint n_taken = 0;

  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = g_ptr_array_index (sketch->steps, i);
      double x, y;

      if (!sw_step_is_pour (step) || sw_pan_pour_on_second (sketch, step->id) != second)
        continue;
      sw_pan_mark_place (geometry, sketch, step, &x, &y);
      if (marks->accent != NULL && is_selected (marks, step->id))
        step_inside (geometry, step, &x, &y);
      make_room (taken, n_taken, &x, y);
      taken[2 * n_taken] = x;
      taken[2 * n_taken + 1] = y;
      n_taken++;
      draw_badge (canvas, x, y, sw_pan_pour_number (sketch, step->id), is_selected (marks, step->id), marks->accent);
    }
}

void
sw_pan_marks_draw (const SwCanvas *canvas, const SwPanGeometry *geometry, const SwSketch *sketch, const SwPanMarks *marks)
{
  const gboolean second = !!canvas->look->second_face;

  /* Those beneath first, the selected one last. */
  for (int round = 0; round < 3; round++)
    for (guint i = 0; i < sketch->steps->len; i++)
      {
        const SwStep *step = g_ptr_array_index (sketch->steps, i);
        const gboolean up = sw_pan_pour_on_second (sketch, step->id) == second;
        const int wanted = is_selected (marks, step->id) ? 2 : up ? 1
                                                                  : 0;

        if (sw_step_is_pour (step) && wanted == round)
          draw_outline (canvas, geometry, sketch, step, marks, up);
      }
  if (MIN (geometry->skein.width, geometry->skein.height) >= LEAST_SKEIN_FOR_BADGES)
    draw_badges (canvas, geometry, sketch, marks);
}
