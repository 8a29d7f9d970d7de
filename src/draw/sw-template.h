/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-pan-geometry.h"
#include "draw/sw-paper.h"

#include <cairo.h>

G_BEGIN_DECLS

/*
 * The pan full size, over as many pages as it takes: to lay under a glass, or
 * beside the pan. Pages overlap; marks on the seams say how they join.
 */

/**
 * SwTemplate: how the drawing is cut into pages; all in points.
 * @width, @height: of a page, which may lie on its side
 * @area: of the page that shows the drawing
 * @step_x, @step_y: how far the drawing moves from page to page
 * @geometry: of the fullest pan of the batch, its upper left at 0, 0 of the first page's area; the skein is all that lies in it
 * @copies: how often the drawing lies in it
 */
typedef struct
{
  double width, height;
  SwBox area;
  gsize columns, rows;
  double step_x, step_y;
  SwPanGeometry geometry;
  gsize copies;
} SwTemplate;

#define SW_TEMPLATE_OVERLAP (10 * SW_POINTS_PER_MM)

void sw_template_layout (const SwSketch *sketch, SwPaper paper, SwTemplate *layout);
gsize sw_template_pages (const SwTemplate *layout);

/* What of the whole drawing a page shows, in the drawing's own points. */
SwBox sw_template_tile (const SwTemplate *layout, gsize page);

/**
 * sw_draw_template_page:
 * @cr: in points from the page's upper left
 * @page: row by row, from 0
 */
void sw_draw_template_page (cairo_t *cr, const SwSketch *sketch, const SwTemplate *layout, gsize page);

G_END_DECLS
