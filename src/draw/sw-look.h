/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cloth/sw-item.h"
#include "forecast/sw-forecast.h"

#include <cairo.h>

G_BEGIN_DECLS

/*
 * A renderer takes a cairo_t, a forecast, a size and a look. It does not know
 * whether it paints a window, a PNG or a page; it clips to its box and leaves
 * the context as it found it.
 */

/* What a laid skein lies in. */
typedef enum
{
  SW_VESSEL_NONE,
  SW_VESSEL_STEEL,
  SW_VESSEL_ENAMEL,
} SwVessel;

typedef struct
{
  gboolean dark;                 /* the ground around the drawing; always a hue-free grey */
  gboolean second_face;          /* pan: which face is up */
  gboolean inches;               /* rulers and lengths */
  guint selected;                /* step id drawn as selected; 0 none */
  gboolean marks;                /* pan: numbered outlines of the pours over the colour */
  SwVessel vessel;               /* skein: the pan that it lies in */
  double stitch_px;              /* cloth: width of one stitch; 0 fits the width of the cloth */
  gsize first_row, first_column; /* cloth: what is at the lower left */
  gboolean purl_side;            /* cloth: seen from behind */
  cairo_surface_t *mark;         /* listing: the maker's own picture; NULL: none */
  gboolean no_mark;              /* listing: nor is its file looked for */
  SwItem item;                   /* item: which */
  double scale;                  /* device pixels per px, for what is painted as pixels; 0 asks the context, and a page gets 2 */
  gsize from, to;                /* scan: narrowest and widest, stitches; 0 for SW_SCAN_FROM and SW_SCAN_TO */
} SwLook;

/* Widths that a scan shows if nobody says otherwise. */
#define SW_SCAN_FROM 10
#define SW_SCAN_TO 600

/* A plain look: light, first face, centimetres, marks on, the cloth fitted to the width. */
extern const SwLook sw_look_plain;

/*
 * What is painted as pixels (the skein's and the cloth's yarn) goes to a page
 * (SVG, PDF) as a picture of two pixels per unit; everything else stays lines
 * and glyphs. A widget that records its drawing gives its scale in the look.
 */
void sw_draw_pan (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look);
void sw_draw_strip (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look);
void sw_draw_cloth (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look);

/* As photographed, on the ground of the sketch's listing. The hank is twisted, and the skein wet, as the listing says. */
void sw_draw_skein (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look);
/* The picture of a shop's page, arranged as the listing says; any size, its shape too. */
void sw_draw_listing (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look);
void sw_draw_hank (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look);
/* The look's item, drawn flat from the strand; where the yarn does not suffice it breaks off and says so. */
void sw_draw_item (cairo_t *cr, const SwForecast *forecast, double width, double height, const SwLook *look);
/* What it says then; NULL if the yarn is enough. */
const char *sw_draw_item_remark (const SwForecast *forecast, const SwLook *look);

/* Pooling at every width from @from to @to, flat and round, with the present width marked. */
void sw_draw_scan (cairo_t *cr, const SwForecast *forecast, gsize from, gsize to, double width, double height, const SwLook *look);

G_END_DECLS
