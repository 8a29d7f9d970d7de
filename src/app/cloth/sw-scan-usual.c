/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/cloth/sw-scan-usual.h"

#include "cloth/sw-usual-widths.h"
#include "draw/sw-canvas.h"

#include <glib/gi18n-lib.h>

#define BRACKET_Y 2
#define TICK_PX 4

/* A line from the narrowest to the widest size with a tick at each, its name in the middle below. */
static double
draw_piece (const SwCanvas *canvas, const SwUsualWidths *usual, const SwScanGeometry *geometry, double taken)
{
  const SwBox *plot = &geometry->plot;
  const char *name = g_dpgettext2 (NULL, "knitting", usual->label);
  const double least = sw_scan_to_x (geometry, (double) usual->widths[0]);
  const double most = MIN (sw_scan_to_x (geometry, (double) usual->widths[usual->n - 1]), plot->x + plot->width);
  double width, height, x;

  sw_canvas_text_size (canvas, name, SW_TEXT_PX, &width, &height);
  x = (least + most - width) / 2;
  x = MIN (x, plot->x + plot->width - width);
  if (x < taken)
    return taken;

  sw_canvas_set_ink (canvas, SW_INK_LINE);
  sw_canvas_line (canvas, least, BRACKET_Y, most, BRACKET_Y);
  for (gsize i = 0; i < usual->n; i++)
    if (usual->widths[i] <= geometry->to)
      {
        const double at = sw_scan_to_x (geometry, (double) usual->widths[i]);

        sw_canvas_line (canvas, at, BRACKET_Y, at, BRACKET_Y + TICK_PX);
      }
  sw_canvas_set_ink (canvas, SW_INK_TEXT);
  sw_canvas_text (canvas, name, x, BRACKET_Y + TICK_PX, 0, 0, SW_TEXT_PX, NULL);
  return x + width + 6;
}

void
sw_scan_usual_draw (cairo_t *cr, const SwForecast *forecast, const SwScanGeometry *geometry, double width, const SwLook *look)
{
  SwUsualWidths usual[SW_N_USUAL];
  double taken = geometry->plot.x;
  SwCanvas canvas;

  sw_canvas_begin (&canvas, cr, width, SW_SCAN_USUAL_PX, look);
  sw_usual_widths (10.0 / forecast->stitch_width_cm, usual);
  for (gsize i = 0; i < SW_N_USUAL; i++)
    if (usual[i].worked == forecast->layout.worked && usual[i].widths[0] >= geometry->from && usual[i].widths[0] <= geometry->to)
      taken = draw_piece (&canvas, &usual[i], geometry, taken);
  sw_canvas_end (&canvas);
}
