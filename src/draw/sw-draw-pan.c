/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-canvas.h"
#include "draw/sw-pan-geometry.h"
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
  SwRaster raster;
  const SwBox *skein = &geometry->skein;

  draw_shadow (canvas, skein, geometry->scale);
  if (!sw_raster_begin (&raster, canvas, skein))
    return;
  sw_skein_raster (forecast, canvas->look->second_face, raster.width, raster.height, raster.width / sw_sketch_lay_length (forecast->sketch), raster.stride, raster.pixels);
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

void
sw_draw_pan (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look)
{
  SwCanvas canvas;
  SwPanGeometry geometry;

  sw_canvas_begin (&canvas, cr, width, height, look);
  sw_pan_geometry (forecast->sketch, width, height, &geometry);
  draw_pan_itself (&canvas, &geometry);
  draw_skein (&canvas, forecast, &geometry);
  if (forecast->sketch->lay.runs == 1)
    draw_ring_ends (&canvas, &geometry);
  sw_ruler_draw (&canvas, SW_RULER_BELOW, &geometry.ruler_x, geometry.scale);
  sw_ruler_draw (&canvas, SW_RULER_LEFT, &geometry.ruler_y, geometry.scale);
  if (look->marks)
    sw_pan_marks_draw (&canvas, &geometry, forecast->sketch);
  sw_canvas_end (&canvas);
}
