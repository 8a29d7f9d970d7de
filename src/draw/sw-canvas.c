/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-canvas.h"

#include <math.h>
#include <pango/pangocairo.h>

/* Light and dark, sRGB codes over 255. */
static const double greys[2][SW_N_INKS] = {
  { 0.784, 0.706, 0.867, 0.545, 0.604, 0.302, 0.118 },
  { 0.180, 0.235, 0.129, 0.412, 0.376, 0.722, 0.918 },
};

/* No picture of pixels on a page is larger than this; it is then coarser than two to a unit. */
#define MAX_PAGE_PIXELS 48e6

void
sw_canvas_begin_over (SwCanvas *canvas, cairo_t *cr, double width, double height, const SwLook *look)
{
  *canvas = (SwCanvas){ cr, width, height, look, cairo_copy_path (cr) };
  cairo_save (cr);
  cairo_new_path (cr);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);
  cairo_set_operator (cr, CAIRO_OPERATOR_OVER);
  cairo_set_dash (cr, NULL, 0, 0);
  cairo_set_line_width (cr, 1);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_WINDING);
}

void
sw_canvas_begin (SwCanvas *canvas, cairo_t *cr, double width, double height, const SwLook *look)
{
  sw_canvas_begin_over (canvas, cr, width, height, look);
  sw_canvas_set_ink (canvas, SW_INK_GROUND);
  cairo_paint (cr);
}

void
sw_canvas_end (SwCanvas *canvas)
{
  cairo_restore (canvas->cr);
  cairo_new_path (canvas->cr);
  cairo_append_path (canvas->cr, canvas->path);
  cairo_path_destroy (canvas->path);
}

double
sw_ink_grey (SwInk ink, gboolean dark)
{
  return greys[dark ? 1 : 0][ink];
}

void
sw_canvas_set_ink (const SwCanvas *canvas, SwInk ink)
{
  const double grey = sw_ink_grey (ink, canvas->look->dark);

  cairo_set_source_rgb (canvas->cr, grey, grey, grey);
}

static PangoLayout *
layout_for (const SwCanvas *canvas, const char *text, double size)
{
  PangoLayout *layout = pango_cairo_create_layout (canvas->cr);
  PangoFontDescription *font = pango_font_description_new ();

  pango_font_description_set_family_static (font, canvas->font != NULL ? canvas->font : "sans");
  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_layout_set_text (layout, text, -1);
  pango_font_description_free (font);
  return layout;
}

static void
layout_size (PangoLayout *layout, double *width, double *height)
{
  int w, h;

  pango_layout_get_size (layout, &w, &h);
  *width = (double) w / PANGO_SCALE;
  *height = (double) h / PANGO_SCALE;
}

void
sw_canvas_text_size (const SwCanvas *canvas, const char *text, double size, double *width, double *height)
{
  g_autoptr (PangoLayout) layout = layout_for (canvas, text, size);

  layout_size (layout, width, height);
}

void
sw_canvas_text (const SwCanvas *canvas, const char *text, double x, double y, double at_x, double at_y, double size, SwBox *box)
{
  g_autoptr (PangoLayout) layout = layout_for (canvas, text, size);
  double width, height;

  layout_size (layout, &width, &height);
  if (box != NULL)
    *box = (SwBox){ x - at_x * width, y - at_y * height, width, height };
  cairo_move_to (canvas->cr, x - at_x * width, y - at_y * height);
  pango_cairo_show_layout (canvas->cr, layout);
  cairo_new_path (canvas->cr);
}

static PangoLayout *
broken_layout_for (const SwCanvas *canvas, const char *words, double size, double width)
{
  PangoLayout *layout = layout_for (canvas, words, size);

  pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD);
  return layout;
}

void
sw_canvas_words (const SwCanvas *canvas, const char *words, double x, double y, double size, double width)
{
  g_autoptr (PangoLayout) layout = broken_layout_for (canvas, words, size, width);

  cairo_move_to (canvas->cr, x, y);
  pango_cairo_show_layout (canvas->cr, layout);
  cairo_new_path (canvas->cr);
}

void
sw_canvas_words_size (const SwCanvas *canvas, const char *words, double size, double width, double *wide, double *high)
{
  g_autoptr (PangoLayout) layout = broken_layout_for (canvas, words, size, width);

  layout_size (layout, wide, high);
}

void
sw_canvas_rounded (const SwCanvas *canvas, const SwBox *box, double radius)
{
  cairo_t *cr = canvas->cr;
  const double r = MIN (radius, MIN (box->width, box->height) / 2);
  const double right = box->x + box->width, bottom = box->y + box->height;

  cairo_new_sub_path (cr);
  cairo_arc (cr, right - r, box->y + r, r, -G_PI_2, 0);
  cairo_arc (cr, right - r, bottom - r, r, 0, G_PI_2);
  cairo_arc (cr, box->x + r, bottom - r, r, G_PI_2, G_PI);
  cairo_arc (cr, box->x + r, box->y + r, r, G_PI, 1.5 * G_PI);
  cairo_close_path (cr);
}

void
sw_canvas_line (const SwCanvas *canvas, double x1, double y1, double x2, double y2)
{
  const double shift_x = x1 == x2 ? 0.5 : 0, shift_y = y1 == y2 ? 0.5 : 0;

  if (shift_x > 0)
    x1 = x2 = floor (x1);
  if (shift_y > 0)
    y1 = y2 = floor (y1);
  cairo_move_to (canvas->cr, x1 + shift_x, y1 + shift_y);
  cairo_line_to (canvas->cr, x2 + shift_x, y2 + shift_y);
  cairo_stroke (canvas->cr);
}

/* Device pixels per px. */
static double
device_scale (const SwCanvas *canvas)
{
  cairo_surface_t *target = cairo_get_group_target (canvas->cr);
  double dx = 1, dy = 0;

  if (canvas->look->scale > 0)
    return canvas->look->scale;
  if (cairo_surface_get_type (target) == CAIRO_SURFACE_TYPE_IMAGE)
    {
      double scale_x, scale_y;

      cairo_surface_get_device_scale (target, &scale_x, &scale_y);
      cairo_user_to_device_distance (canvas->cr, &dx, &dy);
      return CLAMP (hypot (dx, dy) * scale_x, 0.1, 10);
    }
  return CLAMP (sqrt (MAX_PAGE_PIXELS / (canvas->width * canvas->height)), 0.1, 2);
}

gboolean
sw_raster_begin (SwRaster *raster, const SwCanvas *canvas, const SwBox *box)
{
  const double scale = device_scale (canvas);
  const double left = MAX (box->x, 0), top = MAX (box->y, 0);
  const double right = MIN (box->x + box->width, canvas->width), bottom = MIN (box->y + box->height, canvas->height);

  if (!(right > left && bottom > top))
    return FALSE;
  *raster = (SwRaster){ .x = (int) floor (left * scale), .y = (int) floor (top * scale), .scale = scale };
  raster->width = (int) ceil (right * scale) - raster->x;
  raster->height = (int) ceil (bottom * scale) - raster->y;
  raster->box_x = (int) floor (box->x * scale);
  raster->box_y = (int) floor (box->y * scale);
  raster->box_width = (int) ceil ((box->x + box->width) * scale) - raster->box_x;
  raster->box_height = (int) ceil ((box->y + box->height) * scale) - raster->box_y;
  raster->surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, raster->width, raster->height);
  if (cairo_surface_status (raster->surface) != CAIRO_STATUS_SUCCESS)
    {
      cairo_surface_destroy (raster->surface);
      return FALSE;
    }
  raster->stride = cairo_image_surface_get_stride (raster->surface) / 4;
  raster->pixels = (guint32 *) (gpointer) cairo_image_surface_get_data (raster->surface);
  return TRUE;
}

void
sw_raster_end (SwRaster *raster, const SwCanvas *canvas)
{
  cairo_surface_mark_dirty (raster->surface);
  cairo_surface_set_device_scale (raster->surface, raster->scale, raster->scale);
  cairo_set_source_surface (canvas->cr, raster->surface, raster->x / raster->scale, raster->y / raster->scale);
  cairo_paint (canvas->cr);
  cairo_surface_destroy (raster->surface);
}
