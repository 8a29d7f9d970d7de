/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-look.h"
#include "draw/sw-pan-geometry.h"

G_BEGIN_DECLS

/* What every picture needs: its clip, its greys, its letters, and pixels painted sharp. */

/* All greys: chrome with a hue of its own would tint the colours beside it. */
typedef enum
{
  SW_INK_GROUND, /* around everything */
  SW_INK_FLOOR,  /* of the pan */
  SW_INK_PAPER,  /* beneath a chart's lines */
  SW_INK_WALL,
  SW_INK_FAINT, /* grid lines, small ticks */
  SW_INK_LINE,
  SW_INK_TEXT,
  SW_N_INKS,
} SwInk;

/* Letters in a picture for a shop: the first of these that is there, open and humanist; everything else is in "sans". */
#define SW_SHOP_FONT "Cantarell, Noto Sans, Open Sans, sans"

typedef struct
{
  cairo_t *cr;
  double width, height;
  const SwLook *look;
  /*< private >*/
  cairo_path_t *path;
  /*< public >*/
  const char *font; /* family; NULL: "sans" */
} SwCanvas;

/* Clips to 0, 0, @width, @height and fills it with the ground. The end leaves the context as the beginning found it, its path too. */
void sw_canvas_begin (SwCanvas *canvas, cairo_t *cr, double width, double height, const SwLook *look);

/* The same, over what is there already. */
void sw_canvas_begin_over (SwCanvas *canvas, cairo_t *cr, double width, double height, const SwLook *look);
void sw_canvas_end (SwCanvas *canvas);

/* The grey of an ink, 0 .. 1 in sRGB, for whoever paints beside a picture. */
double sw_ink_grey (SwInk ink, gboolean dark);

void sw_canvas_set_ink (const SwCanvas *canvas, SwInk ink);

#define SW_TEXT_PX 11.0

/**
 * sw_canvas_text:
 * @at_x, @at_y: where @x, @y is in the text's box: 0 left or top, 0.5 middle, 1 right or bottom
 * @box: (out) (optional): the text's box
 */
void sw_canvas_text (const SwCanvas *canvas, const char *text, double x, double y, double at_x, double at_y, double size, SwBox *box);
void sw_canvas_text_size (const SwCanvas *canvas, const char *text, double size, double *width, double *height);

/* Words broken into lines of @width at most; from the left. */
void sw_canvas_words (const SwCanvas *canvas, const char *words, double x, double y, double size, double width);
void sw_canvas_words_size (const SwCanvas *canvas, const char *words, double size, double width, double *wide, double *high);

void sw_canvas_rounded (const SwCanvas *canvas, const SwBox *box, double radius);

/* A line on the middle of device pixels, so that it is sharp: one px wide. */
void sw_canvas_line (const SwCanvas *canvas, double x1, double y1, double x2, double y2);

/**
 * SwRaster: pixels of a box of the picture at the device's own size; only those that are in the picture.
 * @x, @y: of its upper left, device pixels from the picture's upper left
 * @box_x, @box_y, @box_width, @box_height: of the whole box, though part of it be outside the picture
 */
typedef struct
{
  int x, y, width, height;
  int box_x, box_y, box_width, box_height;
  int stride;      /* in pixels */
  double scale;    /* device pixels per px */
  guint32 *pixels; /* premultiplied CAIRO_FORMAT_ARGB32 */
  cairo_surface_t *surface;
} SwRaster;

/* @box is cut to the picture. Returns: FALSE if nothing of it is left */
gboolean sw_raster_begin (SwRaster *raster, const SwCanvas *canvas, const SwBox *box);

/* Paints it and lets go of it. */
void sw_raster_end (SwRaster *raster, const SwCanvas *canvas);

G_END_DECLS
