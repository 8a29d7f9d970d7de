/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-ground.h"
#include "draw/sw-laid.h"
#include "draw/sw-liquor.h"

#define MARGIN 0.06 /* of the shorter side */
#define RIM_CM 2.4  /* wall and lip of a vessel, and the shadow beside it */

/* The laid skeins on the ground or in a pan, without rulers or marks. */
void
sw_draw_skein (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look)
{
  const SwSketch *sketch = forecast->sketch;
  const double length = sw_sketch_lay_length (sketch), across = sw_sketch_lay_width (sketch), margin = MARGIN * MIN (width, height);
  const gboolean in_pan = look->vessel != SW_VESSEL_NONE;
  const double pan_length = in_pan ? MAX (sketch->lay.pan_length_cm, length) : length, pan_width = in_pan ? MAX (sketch->lay.pan_width_cm, across) : across;
  const double rim = in_pan ? RIM_CM : 0;
  const double scale = MIN ((width - 2 * margin) / (pan_length + 2 * rim), (height - 2 * margin) / (pan_width + 2 * rim));
  const SwBox pan = { (width - pan_length * scale) / 2, (height - pan_width * scale) / 2, pan_length * scale, pan_width * scale };
  const SwBox skein = { (width - length * scale) / 2, (height - across * scale) / 2, length * scale, across * scale };
  SwCanvas canvas;

  sw_canvas_begin (&canvas, cr, width, height, look);
  sw_ground_draw (&canvas, sw_ground_for (sketch, look));
  if (scale > 0)
    {
      g_autoptr (SwLaid) laid = sw_laid_new (forecast, look->second_face);

      sw_vessel_draw (&canvas, look->vessel, &pan, scale);
      if (in_pan && sketch->listing.wet)
        sw_liquor_draw (&canvas, sw_laid_get_relief (laid), &pan, skein.x, skein.y, scale, (guint64) sketch->seed);
      sw_laid_draw (laid, &canvas, &skein);
    }
  sw_canvas_end (&canvas);
}
