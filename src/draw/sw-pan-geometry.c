/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-pan-geometry.h"

#include <math.h>

/* Room for the rulers and around the pan, px; a picture smaller than this goes without rulers. */
#define RULER_X_PX 30
#define RULER_Y_PX 38
#define AROUND_PX 16
#define SMALLEST_WITH_RULERS 160

void
sw_pan_geometry (const SwSketch *sketch, double width, double height, SwPanGeometry *geometry)
{
  const double length = sw_sketch_lay_length (sketch), across = sw_sketch_lay_width (sketch);
  const double pan_length = sketch->lay.pan_length_cm, pan_width = sketch->lay.pan_width_cm;
  const gboolean rulers = MIN (width, height) >= SMALLEST_WITH_RULERS;
  const double around = MIN (AROUND_PX, MIN (width, height) / 16);
  const double left = rulers ? RULER_Y_PX : around, below = rulers ? RULER_X_PX : around;
  const double room_x = MAX (width - left - around, 1), room_y = MAX (height - below - around, 1);
  /* A skein that hangs over the pan's walls is still all in the picture. */
  const double scale = MIN (room_x / MAX (length, pan_length), room_y / MAX (across, pan_width));
  const double middle_x = left + room_x / 2, middle_y = around + room_y / 2;

  geometry->scale = scale;
  geometry->pan = (SwBox){ middle_x - pan_length * scale / 2, middle_y - pan_width * scale / 2, pan_length * scale, pan_width * scale };
  geometry->skein = (SwBox){ middle_x - length * scale / 2, middle_y - across * scale / 2, length * scale, across * scale };
  geometry->ruler_x = geometry->ruler_y = (SwBox){ 0 };
  if (rulers)
    {
      const double bottom = MAX (geometry->pan.y + geometry->pan.height, geometry->skein.y + geometry->skein.height);
      const double edge = MIN (geometry->pan.x, geometry->skein.x);

      geometry->ruler_x = (SwBox){ geometry->skein.x, bottom + SW_RULER_OFF_PX, geometry->skein.width, RULER_X_PX - 8 };
      geometry->ruler_y = (SwBox){ edge - RULER_Y_PX + 2, geometry->skein.y, RULER_Y_PX - 8, geometry->skein.height };
    }
}

static SwBox
box_around (const SwBox *a, const SwBox *b)
{
  const double x = MIN (a->x, b->x), y = MIN (a->y, b->y);

  return (SwBox){ x, y, MAX (a->x + a->width, b->x + b->width) - x, MAX (a->y + a->height, b->y + b->height) - y };
}

/* How far to move [start, start + size) so that it covers [from, to), or lies in its middle if it is too small. */
static double
move_into (double start, double size, double from, double to)
{
  if (size <= to - from)
    return (from + to - size) / 2 - start;
  return MAX (to - (start + size), 0) + MIN (from - start, 0);
}

static SwBox
enlarged (const SwBox *box, double zoom, double around_x, double around_y, double to_x, double to_y)
{
  return (SwBox){ to_x + (box->x - around_x) * zoom, to_y + (box->y - around_y) * zoom, box->width * zoom, box->height * zoom };
}

void
sw_pan_geometry_zoomed (const SwSketch *sketch, double width, double height, SwPanZoom *zoom, SwPanGeometry *geometry)
{
  const double fitted_margin = MIN (AROUND_PX, MIN (width, height) / 16);
  SwBox all;
  double x, y, left, bottom, by_x, by_y;

  sw_pan_geometry (sketch, width, height, geometry);
  if (zoom->zoom <= 1)
    {
      sw_pan_to_cm (geometry, width / 2, height / 2, &zoom->x_cm, &zoom->y_cm);
      return;
    }
  left = geometry->ruler_y.width > 0 ? RULER_Y_PX : fitted_margin;
  bottom = height - (geometry->ruler_x.height > 0 ? RULER_X_PX : fitted_margin);
  sw_pan_to_px (geometry, zoom->x_cm, zoom->y_cm, &x, &y);
  geometry->pan = enlarged (&geometry->pan, zoom->zoom, x, y, width / 2, height / 2);
  geometry->skein = enlarged (&geometry->skein, zoom->zoom, x, y, width / 2, height / 2);
  geometry->scale *= zoom->zoom;

  all = box_around (&geometry->pan, &geometry->skein);
  by_x = move_into (all.x, all.width, left, width - fitted_margin);
  by_y = move_into (all.y, all.height, fitted_margin, bottom);
  for (int i = 0; i < 2; i++)
    {
      SwBox *box = i == 0 ? &geometry->pan : &geometry->skein;

      box->x += by_x;
      box->y += by_y;
    }
  zoom->x_cm -= by_x / geometry->scale;
  zoom->y_cm += by_y / geometry->scale;

  if (geometry->ruler_x.height > 0)
    {
      geometry->ruler_x.x = geometry->skein.x;
      geometry->ruler_x.width = geometry->skein.width;
      geometry->ruler_x.y = MIN (all.y + by_y + all.height + SW_RULER_OFF_PX, height - RULER_X_PX + SW_RULER_OFF_PX);
      geometry->ruler_y.y = geometry->skein.y;
      geometry->ruler_y.height = geometry->skein.height;
      geometry->ruler_y.x = MAX (all.x + by_x - RULER_Y_PX + 2, 2);
    }
}

SwBox
sw_pan_room (const SwPanGeometry *geometry, double width, double height)
{
  const SwBox all = box_around (&geometry->pan, &geometry->skein);
  const double x = geometry->ruler_y.x + geometry->ruler_y.width + SW_RULER_OFF_PX, y = geometry->ruler_x.y - SW_RULER_OFF_PX;
  const gboolean rulers = geometry->ruler_x.width > 0;
  const double left = rulers && all.x < x - 1 ? x : 0, bottom = rulers && all.y + all.height > y + 1 ? y : height;

  return (SwBox){ left, 0, width - left, bottom };
}

/* y counts from the near edge, which is the lower one in the picture. */
void
sw_pan_to_px (const SwPanGeometry *geometry, double x_cm, double y_cm, double *x, double *y)
{
  *x = geometry->skein.x + x_cm * geometry->scale;
  *y = geometry->skein.y + geometry->skein.height - y_cm * geometry->scale;
}

void
sw_pan_to_cm (const SwPanGeometry *geometry, double x, double y, double *x_cm, double *y_cm)
{
  *x_cm = (x - geometry->skein.x) / geometry->scale;
  *y_cm = (geometry->skein.y + geometry->skein.height - y) / geometry->scale;
}

/* A band's extent across the laid skeins, cm. */
static void
band_extent (const SwSketch *sketch, const SwStep *step, double *near, double *far)
{
  const double across = sw_sketch_lay_width (sketch);

  *near = step->length_cm > 0 ? MAX (step->y_cm - step->length_cm / 2, 0) : 0;
  *far = step->length_cm > 0 ? MIN (step->y_cm + step->length_cm / 2, across) : across;
}

double
sw_pan_band_shift (const SwStep *step, double y_cm)
{
  const double folded = step->angle_deg - 180 * round (step->angle_deg / 180);

  return (y_cm - step->y_cm) * tan (CLAMP (folded, -85, 85) * G_PI / 180);
}

static void
corner_to (cairo_t *cr, const SwPanGeometry *geometry, double x_cm, double y_cm)
{
  double x, y;

  sw_pan_to_px (geometry, x_cm, y_cm, &x, &y);
  cairo_line_to (cr, x, y);
}

static void
trace_band (cairo_t *cr, const SwPanGeometry *geometry, const SwSketch *sketch, const SwStep *step)
{
  double near, far;

  band_extent (sketch, step, &near, &far);
  cairo_new_sub_path (cr);
  corner_to (cr, geometry, step->x_cm + sw_pan_band_shift (step, near) - step->width_cm / 2, near);
  corner_to (cr, geometry, step->x_cm + sw_pan_band_shift (step, near) + step->width_cm / 2, near);
  corner_to (cr, geometry, step->x_cm + sw_pan_band_shift (step, far) + step->width_cm / 2, far);
  corner_to (cr, geometry, step->x_cm + sw_pan_band_shift (step, far) - step->width_cm / 2, far);
  cairo_close_path (cr);
}

void
sw_pan_trace_pour (cairo_t *cr, const SwPanGeometry *geometry, const SwSketch *sketch, const SwStep *step)
{
  cairo_matrix_t matrix;
  double x, y;

  if (step->kind == SW_STEP_BAND)
    {
      trace_band (cr, geometry, sketch, step);
      return;
    }
  sw_pan_to_px (geometry, step->x_cm, step->y_cm, &x, &y);
  cairo_get_matrix (cr, &matrix);
  cairo_translate (cr, x, y);
  cairo_rotate (cr, -step->angle_deg * G_PI / 180);
  cairo_scale (cr, step->width_cm * geometry->scale / 2, step->length_cm * geometry->scale / 2);
  if (step->kind == SW_STEP_SPLOTCH)
    {
      cairo_new_sub_path (cr);
      cairo_arc (cr, 0, 0, 1, 0, 2 * G_PI);
      cairo_close_path (cr);
    }
  else
    cairo_rectangle (cr, -1, -1, 2, 2);
  cairo_set_matrix (cr, &matrix);
}

static gboolean
pour_holds (const SwSketch *sketch, const SwStep *step, double x_cm, double y_cm)
{
  const double turn = step->angle_deg * G_PI / 180;
  const double dx = x_cm - step->x_cm, dy = y_cm - step->y_cm;
  double u, v, near, far;

  if (step->kind == SW_STEP_BAND)
    {
      band_extent (sketch, step, &near, &far);
      return y_cm >= near && y_cm <= far && fabs (dx - sw_pan_band_shift (step, y_cm)) <= step->width_cm / 2;
    }
  u = (dx * cos (turn) + dy * sin (turn)) / (step->width_cm / 2);
  v = (-dx * sin (turn) + dy * cos (turn)) / (step->length_cm / 2);
  return step->kind == SW_STEP_SPLOTCH ? u * u + v * v <= 1 : fabs (u) <= 1 && fabs (v) <= 1;
}

guint
sw_pan_pour_below (const SwPanGeometry *geometry, const SwSketch *sketch, gboolean second_face, double x, double y, guint above)
{
  gboolean second = FALSE;
  guint found = 0;
  double x_cm, y_cm;

  sw_pan_to_cm (geometry, x, y, &x_cm, &y_cm);
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = g_ptr_array_index (sketch->steps, i);

      if (step->id == above)
        break;
      if (step->kind == SW_STEP_FLIP)
        second = !second;
      else if (sw_step_is_pour (step) && second == !!second_face && pour_holds (sketch, step, x_cm, y_cm))
        found = step->id;
    }
  return found;
}

guint
sw_pan_pour_at (const SwPanGeometry *geometry, const SwSketch *sketch, gboolean second_face, double x, double y)
{
  return sw_pan_pour_below (geometry, sketch, second_face, x, y, 0);
}

guint
sw_pan_pour_number (const SwSketch *sketch, guint step_id)
{
  guint number = 0;

  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = g_ptr_array_index (sketch->steps, i);

      if (sw_step_is_pour (step))
        number++;
      if (step->id == step_id)
        return sw_step_is_pour (step) ? number : 0;
    }
  return 0;
}

gboolean
sw_pan_pour_on_second (const SwSketch *sketch, guint step_id)
{
  gboolean second = FALSE;

  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = g_ptr_array_index (sketch->steps, i);

      if (step->id == step_id)
        return second;
      if (step->kind == SW_STEP_FLIP)
        second = !second;
    }
  return FALSE;
}
