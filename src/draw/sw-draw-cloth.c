/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-canvas.h"
#include "draw/sw-cloth-raster.h"

#include <glib/gi18n-lib.h>

/* How far a selvedge stands out, stitches. */
#define SELVEDGE 0.3

/* A soft shade on the ground, so that the cloth lies on it. */
static void
draw_shade (const SwCanvas *canvas, const SwBox *cloth)
{
  for (int i = 6; i >= 1; i--)
    {
      const SwBox box = { cloth->x - i + 1, cloth->y - i + 2, cloth->width + 2 * i - 2, cloth->height + 2 * i };

      sw_canvas_rounded (canvas, &box, i + 1);
      cairo_set_source_rgba (canvas->cr, 0, 0, 0, 0.035);
      cairo_fill (canvas->cr);
    }
}

void
sw_draw_cloth (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look)
{
  SwCanvas canvas;
  SwClothGeometry geometry;
  SwRaster raster;

  sw_canvas_begin (&canvas, cr, width, height, look);
  sw_cloth_geometry (forecast, width, height, look, &geometry);
  if (geometry.rows == 0)
    {
      sw_canvas_set_ink (&canvas, SW_INK_TEXT);
      /* Translators: shown in place of the cloth. */
      sw_canvas_text (&canvas, _ ("The strand is too short for one row"), width / 2, height / 2, 0.5, 0.5, 1.2 * SW_TEXT_PX, NULL);
    }
  else
    {
      /* The lowest row's feet, the highest row's heads and the selvedges reach beyond their cells. */
      const double beside = SELVEDGE * geometry.stitch;
      const SwBox box = { geometry.cloth.x - beside, geometry.cloth.y - geometry.row, geometry.cloth.width + 2 * beside, geometry.cloth.height + 2 * geometry.row };

      draw_shade (&canvas, &geometry.cloth);
      if (sw_raster_begin (&raster, &canvas, &box))
        {
          sw_cloth_raster (forecast, &geometry, raster.scale, raster.x, raster.y, raster.width, raster.height, raster.stride, raster.pixels);
          sw_raster_end (&raster, &canvas);
        }
    }
  sw_canvas_end (&canvas);
}
