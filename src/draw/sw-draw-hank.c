/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-ground.h"
#include "draw/sw-hank.h"

#include <math.h>

#define MARGIN 0.09 /* of the shorter side, all round */

/* It lies along the longer side; upright with its fold at the top. */
void
sw_draw_hank (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look)
{
  g_autoptr (SwHank) hank = sw_hank_new (forecast, 0, width >= height ? 0 : -G_PI_2, look->mark);
  const SwBox box = sw_hank_get_box (hank);
  const double margin = MARGIN * MIN (width, height);
  const double scale = MIN ((width - 2 * margin) / box.width, (height - 2 * margin) / box.height);
  SwCanvas canvas;

  sw_hanks_lay (&hank, 1, &(double){ 0 }, &(double){ 0 });
  sw_canvas_begin (&canvas, cr, width, height, look);
  sw_ground_draw (&canvas, sw_ground_for (forecast->sketch, look));
  if (scale > 0)
    sw_hanks_draw (&hank, 1, &canvas, round (width / 2 - (box.x + box.width / 2) * scale), round (height / 2 - (box.y + box.height / 2) * scale), scale);
  sw_canvas_end (&canvas);
}
