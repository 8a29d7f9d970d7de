/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-draw-sheet.h"

#include "draw/sw-canvas.h"
#include "draw/sw-draw-pan.h"
#include "draw/sw-pan-copies.h"
#include "draw/sw-ruler.h"
#include "draw/sw-sheet-layout.h"
#include "sheet/sw-sheet-lay.h"

#include <pango/pangocairo.h>

#define RULER 24.0
#define PIXELS_PER_POINT 3.0 /* of the skein: 216 to an inch */

static void
draw_text (cairo_t *cr, const SwSheetLayout *self, const SwSheetItem *item)
{
  const gboolean title = item == &g_array_index (self->items, SwSheetItem, 0);
  const char *tag = title ? "H1" : item->heading ? "H2"
                                                 : "P";

  cairo_set_source_rgb (cr, item->grey, item->grey, item->grey);
  cairo_move_to (cr, item->box.x, item->box.y);
  cairo_tag_begin (cr, tag, "");
  pango_cairo_show_layout (cr, item->text);
  cairo_tag_end (cr, tag);
}

static void
draw_line (cairo_t *cr, const SwSheetLayout *self, const SwSheetItem *item)
{
  const double y = item->box.y + item->box.height / 2;

  cairo_move_to (cr, item->box.x, y);
  cairo_line_to (cr, item->box.x + item->box.width, y);
  cairo_set_source_rgb (cr, item->grey, item->grey, item->grey);
  cairo_set_line_width (cr, item->box.height);
  cairo_stroke (cr);
}

static void
draw_tick (cairo_t *cr, const SwSheetLayout *self, const SwSheetItem *item)
{
  cairo_rectangle (cr, item->box.x + 0.5, item->box.y + 0.5, item->box.width - 1, item->box.height - 1);
  cairo_set_source_rgb (cr, 0, 0, 0);
  cairo_set_line_width (cr, 1);
  cairo_stroke (cr);
}

static void
draw_swatch (cairo_t *cr, const SwSheetLayout *self, const SwSheetItem *item)
{
  cairo_rectangle (cr, item->box.x + 0.4, item->box.y + 0.4, item->box.width - 0.8, item->box.height - 0.8);
  cairo_set_source_rgb (cr, item->rgb[0], item->rgb[1], item->rgb[2]);
  cairo_fill_preserve (cr);
  cairo_set_source_rgb (cr, 0.3, 0.3, 0.3);
  cairo_set_line_width (cr, 0.8);
  cairo_stroke (cr);
}

/* As the numbers on the pan look. */
static void
draw_badge (cairo_t *cr, const SwSheetLayout *self, const SwSheetItem *item)
{
  SwCanvas canvas;
  char number[16];

  g_snprintf (number, sizeof number, "%u", item->number);
  sw_canvas_begin_over (&canvas, cr, self->width, self->height, &sw_look_plain);
  cairo_arc (cr, item->box.x + item->box.width / 2, item->box.y + item->box.height / 2, item->box.width / 2, 0, 2 * G_PI);
  cairo_set_source_rgb (cr, 0.13, 0.13, 0.13);
  cairo_fill (cr);
  cairo_set_source_rgb (cr, 1, 1, 1);
  sw_canvas_text (&canvas, number, item->box.x + item->box.width / 2, item->box.y + item->box.height / 2, 0.5, 0.5, item->number < 100 ? 11 : 8, NULL);
  sw_canvas_end (&canvas);
}

/* Of a box of @width x @height: pan and skein in its middle. */
static void
find_geometry (const SwSheetLayout *self, const SwSheetItem *item, double width, double height, SwPanGeometry *geometry)
{
  const SwSketch *sketch = self->forecast->sketch;
  const double length = sw_sketch_lay_length (sketch) * item->scale, across = (item->laid > 0 ? sketch->lay.width_cm * (double) item->laid : sw_sketch_lay_width (sketch)) * item->scale;
  const double pan_length = sketch->lay.pan_length_cm * item->scale, pan_width = sketch->lay.pan_width_cm * item->scale;

  *geometry = (SwPanGeometry){
    .pan = { (width - pan_length) / 2, (height - pan_width) / 2, pan_length, pan_width },
    .skein = { (width - length) / 2, (height - across) / 2, length, across },
    .scale = item->scale,
  };
}

static void
draw_walls (const SwCanvas *canvas, const SwBox *pan)
{
  cairo_rectangle (canvas->cr, pan->x, pan->y, pan->width, pan->height);
  cairo_set_source_rgb (canvas->cr, 0.35, 0.35, 0.35);
  cairo_set_line_width (canvas->cr, 1.2);
  cairo_stroke (canvas->cr);
}

/* A pan of the batch: the drawing again and again, or as much of it as there are skeins. */
static void
draw_copies (cairo_t *cr, const SwSheetLayout *self, gsize laid, const SwPanGeometry *whole, double width, double height, const SwLook *look)
{
  const gsize copies = sw_sheet_copies (self->sheet, laid);

  cairo_save (cr);
  cairo_rectangle (cr, whole->skein.x, whole->skein.y, whole->skein.width, whole->skein.height);
  cairo_clip (cr);
  for (gsize copy = 0; copy < copies; copy++)
    {
      SwPanGeometry geometry;

      sw_pan_copy_geometry (whole, self->forecast->sketch, copy, &geometry);
      sw_draw_pan_parts (cr, self->forecast, &geometry, SW_PAN_SKEIN | SW_PAN_MARKS, width, height, look);
    }
  cairo_restore (cr);
}

static void
draw_pan (cairo_t *cr, const SwSheetLayout *self, const SwSheetItem *item)
{
  const double width = item->box.width, height = item->box.height - (item->ruled ? RULER : 0);
  SwLook look = sw_look_plain;
  SwPanGeometry geometry;
  SwCanvas canvas;

  look.second_face = item->second;
  look.inches = self->options.us;
  look.scale = PIXELS_PER_POINT;
  find_geometry (self, item, width, height, &geometry);
  cairo_save (cr);
  cairo_translate (cr, item->box.x, item->box.y);
  sw_canvas_begin_over (&canvas, cr, width, height, &look);
  draw_walls (&canvas, &geometry.pan);
  sw_canvas_end (&canvas);
  if (item->laid > 0)
    draw_copies (cr, self, item->laid, &geometry, width, height, &look);
  else
    sw_draw_pan_parts (cr, self->forecast, &geometry, SW_PAN_SKEIN | SW_PAN_MARKS, width, height, &look);
  if (item->ruled)
    {
      const SwBox ruler = { geometry.skein.x, height + 2, geometry.skein.width, RULER - 4 };

      sw_canvas_begin_over (&canvas, cr, width, height + RULER, &look);
      sw_ruler_draw (&canvas, SW_RULER_BELOW, &ruler, item->scale);
      sw_canvas_end (&canvas);
    }
  cairo_restore (cr);
}

void
sw_draw_sheet_page (cairo_t *cr, const SwSheetLayout *self, gsize page)
{
  static void (*const paint[]) (cairo_t * cr, const SwSheetLayout *self, const SwSheetItem *item) = {
    [SW_SHEET_TEXT] = draw_text,
    [SW_SHEET_LINE] = draw_line,
    [SW_SHEET_TICK] = draw_tick,
    [SW_SHEET_SWATCH] = draw_swatch,
    [SW_SHEET_BADGE] = draw_badge,
    [SW_SHEET_PAN] = draw_pan,
  };

  g_return_if_fail (page < self->n_pages);

  for (guint i = 0; i < self->items->len; i++)
    {
      const SwSheetItem *item = &g_array_index (self->items, SwSheetItem, i);

      if (item->page != page)
        continue;
      cairo_save (cr);
      paint[item->kind](cr, self, item);
      cairo_restore (cr);
    }
}
