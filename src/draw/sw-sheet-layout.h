/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-draw-sheet.h"
#include "draw/sw-pan-geometry.h"
#include "sheet/sw-measure.h"

#include <pango/pangocairo.h>

G_BEGIN_DECLS

/* The dye sheet's pages as boxes: made by the parts of the sheet, painted by sw_draw_sheet_page(), measured by tests. */

typedef enum
{
  SW_SHEET_TEXT,
  SW_SHEET_LINE,   /* as thick as its box is high */
  SW_SHEET_TICK,   /* a box to tick */
  SW_SHEET_SWATCH, /* a dye's colour */
  SW_SHEET_BADGE,  /* a pour's number */
  SW_SHEET_PAN,    /* the pan to scale */
} SwSheetItemKind;

typedef enum
{
  SW_STYLE_TITLE,
  SW_STYLE_HEADING,
  SW_STYLE_AMOUNT,
  SW_STYLE_STRONG,
  SW_STYLE_BODY,
  SW_STYLE_ASIDE, /* beside something more important: captions, column heads, the foot */
  SW_N_STYLES,
} SwSheetStyle;

/**
 * SwSheetItem:
 * @box: on its page, points
 * @text: set in its style, as wide as @box at most; NULL for what is no text
 */
typedef struct
{
  SwSheetItemKind kind;
  gsize page;
  SwBox box;
  PangoLayout *text;
  double grey;      /* of text and lines */
  gboolean heading; /* of the document, for readers of PDF */
  gboolean on_line; /* shares the row's base line */
  double rgb[3];    /* swatch */
  guint number;     /* badge */
  gboolean second;  /* pan: which face is up */
  gboolean ruled;   /* pan: with a ruler below */
  gsize laid;       /* pan: skeins in it; 0: as drawn, with its numbers */
  double scale;     /* pan: points per cm */
} SwSheetItem;

struct _SwSheetLayout
{
  SwForecast *forecast;
  const SwSheet *sheet;
  SwSheetOptions options;
  SwMeasureSystem system;
  double width, height; /* of the page */
  SwBox content;
  GArray *items; /* of SwSheetItem */
  gsize n_pages;

  /* while it is made */
  PangoContext *context;
  int closeness; /* 0 .. SW_SHEET_CLOSEST: how much is done to save a page */
  gsize page;
  double y;
  guint row; /* first item of the row under way */
};

#define SW_SHEET_CLOSEST 2

/* A row: items are placed with y from its top, then it goes where there is room. */
void sw_sheet_begin_row (SwSheetLayout *self);

/* @gap: white below it. @follows: what must fit on the same page besides. */
void sw_sheet_end_row (SwSheetLayout *self, double gap, double follows);

SwSheetItem *sw_sheet_add (SwSheetLayout *self, SwSheetItemKind kind, double x, double y, double width, double height);

/* @x: from the content's left. @at: 0 from the left, 1 to the right. Returns: its height */
double sw_sheet_add_text (SwSheetLayout *self, const char *text, SwSheetStyle style, double x, double y, double width, int at);

/* The same on the row's base line. */
void sw_sheet_add_cell (SwSheetLayout *self, const char *text, SwSheetStyle style, double x, double width, int at);

double sw_sheet_text_width (const SwSheetLayout *self, const char *text, SwSheetStyle style);

/* A section's heading, with room for @follows below it on the page. */
void sw_sheet_add_heading (SwSheetLayout *self, const char *text, double follows);

/* White between rows, by how close it must be. */
double sw_sheet_gap (const SwSheetLayout *self);

/* The parts, from the head down; each in a file of its own. */
void sw_sheet_lay_head (SwSheetLayout *self);
void sw_sheet_lay_pan (SwSheetLayout *self);
void sw_sheet_lay_amounts (SwSheetLayout *self);
void sw_sheet_lay_steps (SwSheetLayout *self);
void sw_sheet_lay_remarks (SwSheetLayout *self);
void sw_sheet_lay_cautions (SwSheetLayout *self);
void sw_sheet_lay_cost (SwSheetLayout *self);
void sw_sheet_lay_notes (SwSheetLayout *self);

G_END_DECLS
