/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-draw-pan.h"

#include "draw/sw-canvas.h"
#include "draw/sw-pan-marks.h"
#include "draw/sw-ruler.h"
#include "draw/sw-skein-raster.h"

#include <math.h>

#define WALL_PX 5.0

static SwBox
grown (const SwBox *box, double by)
{
  return (SwBox){ box->x - by, box->y - by, box->width + 2 * by, box->height + 2 * by };
}

static void
draw_pan_itself (const SwCanvas *canvas, const SwPanGeometry *geometry)
{
  const SwBox wall = grown (&geometry->pan, WALL_PX), rim = grown (&geometry->pan, WALL_PX - 1.5);
  const double radius = MIN (1.8 * geometry->scale, 22);

  sw_canvas_rounded (canvas, &wall, radius + WALL_PX);
  sw_canvas_set_ink (canvas, SW_INK_WALL);
  cairo_fill (canvas->cr);
  sw_canvas_rounded (canvas, &rim, radius + WALL_PX - 1.5);
  cairo_set_source_rgba (canvas->cr, 1, 1, 1, canvas->look->dark ? 0.12 : 0.35);
  cairo_set_line_width (canvas->cr, 1);
  cairo_stroke (canvas->cr);
  sw_canvas_rounded (canvas, &geometry->pan, radius);
  sw_canvas_set_ink (canvas, SW_INK_FLOOR);
  cairo_fill_preserve (canvas->cr);
  cairo_set_source_rgba (canvas->cr, 0, 0, 0, 0.25);
  cairo_stroke (canvas->cr);
}

/* The skein's shadow on the pan's floor: light falls from the upper left. */
static void
draw_shadow (const SwCanvas *canvas, const SwBox *skein, double scale)
{
  const double reach = MIN (0.5 * scale, 9);

  for (int i = 5; i >= 1; i--)
    {
      const double by = reach * (i - 2) / 4;
      SwBox box = grown (skein, by);

      box.x += reach * 0.25;
      box.y += reach * 0.45;
      sw_canvas_rounded (canvas, &box, MAX (1.4 * scale, 2) + by);
      cairo_set_source_rgba (canvas->cr, 0, 0, 0, 0.06);
      cairo_fill (canvas->cr);
    }
}

static void
draw_skein (const SwCanvas *canvas, const SwForecast *forecast, const SwPanGeometry *geometry)
{
  const SwBox *skein = &geometry->skein;
  SwFaceWindow window;
  SwRaster raster;

  draw_shadow (canvas, skein, geometry->scale);
  if (!sw_raster_begin (&raster, canvas, skein))
    return;
  window = (SwFaceWindow){
    .nx = raster.box_width,
    .ny = raster.box_height,
    .left = raster.x - raster.box_x,
    .near = raster.box_y + raster.box_height - raster.y - raster.height,
    .width = raster.width,
    .height = raster.height,
  };
  sw_skein_raster (forecast, canvas->look->second_face, &window, raster.stride, raster.pixels);
  sw_raster_end (&raster, canvas);
}

/* An opened ring goes on from one end to the other: dashes say that nothing is cut there. */
static void
draw_ring_ends (const SwCanvas *canvas, const SwPanGeometry *geometry)
{
  const double dashes[] = { 4, 3 };
  const SwBox *skein = &geometry->skein;

  cairo_set_dash (canvas->cr, dashes, 2, 0);
  sw_canvas_set_ink (canvas, SW_INK_LINE);
  sw_canvas_line (canvas, skein->x - 2, skein->y - 3, skein->x - 2, skein->y + skein->height + 3);
  sw_canvas_line (canvas, skein->x + skein->width + 1, skein->y - 3, skein->x + skein->width + 1, skein->y + skein->height + 3);
  cairo_set_dash (canvas->cr, NULL, 0, 0);
}

static void
fill_ground (const SwCanvas *canvas, const SwBox *box)
{
  sw_canvas_set_ink (canvas, SW_INK_GROUND);
  cairo_rectangle (canvas->cr, box->x, box->y, box->width, box->height);
  cairo_fill (canvas->cr);
}

static void
draw_ruler_within (const SwCanvas *canvas, SwRulerSide side, const SwBox *ruler, const SwBox *clip, double scale)
{
  cairo_save (canvas->cr);
  cairo_rectangle (canvas->cr, clip->x, clip->y, clip->width, clip->height);
  cairo_clip (canvas->cr);
  sw_ruler_draw (canvas, side, ruler, scale);
  cairo_restore (canvas->cr);
}

/* Rulers that stay in the picture while the pan reaches beyond it lie over the pan, on a ground of their own, and end where they meet. */
static void
draw_rulers (const SwCanvas *canvas, const SwPanGeometry *geometry)
{
  const double width = canvas->width, height = canvas->height;
  const SwBox room = sw_pan_room (geometry, width, height);
  const SwBox left = { 0, 0, room.x, height }, below = { 0, room.height, width, height - room.height };
  const SwBox corner = { 0, room.height, room.x, height - room.height };
  const SwBox beside = { room.x, 0, width - room.x, height }, above = { 0, 0, width, room.height };

  if (geometry->ruler_x.width <= 0)
    return;
  fill_ground (canvas, &left);
  fill_ground (canvas, &below);
  if (corner.width > 0 && corner.height > 0)
    sw_ruler_draw_unit (canvas, &corner);
  draw_ruler_within (canvas, SW_RULER_BELOW, &geometry->ruler_x, &beside, geometry->scale);
  draw_ruler_within (canvas, SW_RULER_LEFT, &geometry->ruler_y, &above, geometry->scale);
}

void
sw_draw_pan_parts (cairo_t *cr, const SwForecast *forecast, const SwPanGeometry *geometry, guint parts, double width, double height, const SwLook *look)
{
  const SwPanMarks marks = { .selected = &look->selected, .n_selected = 1 };
  SwCanvas canvas;

  if (parts & SW_PAN_GROUND)
    {
      sw_canvas_begin (&canvas, cr, width, height, look);
      draw_pan_itself (&canvas, geometry);
    }
  else
    sw_canvas_begin_over (&canvas, cr, width, height, look);
  if (parts & SW_PAN_SKEIN)
    {
      draw_skein (&canvas, forecast, geometry);
      if (forecast->sketch->lay.runs == 1)
        draw_ring_ends (&canvas, geometry);
    }
  if (parts & SW_PAN_RULERS)
    draw_rulers (&canvas, geometry);
  if ((parts & SW_PAN_MARKS) && look->marks)
    sw_pan_marks_draw (&canvas, geometry, forecast->sketch, &marks);
  sw_canvas_end (&canvas);
}

void
sw_draw_pan (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look)
{
  SwPanGeometry geometry;

  sw_pan_geometry (forecast->sketch, width, height, &geometry);
  sw_draw_pan_parts (cr, forecast, &geometry, SW_PAN_ALL, width, height, look);
}
