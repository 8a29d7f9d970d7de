/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-sheet-layout.h"

#include "sheet/sw-step-title.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define LEFT (22 * SW_POINTS_PER_MM) /* room for holes */
#define RIGHT (12 * SW_POINTS_PER_MM)
#define TOP (12 * SW_POINTS_PER_MM)
#define BOTTOM (16 * SW_POINTS_PER_MM) /* the page's number is in it */
#define FOOT (12.5 * SW_POINTS_PER_MM) /* that number, from the lower edge */

static const struct
{
  double size;
  PangoWeight weight;
  double grey;
} styles[SW_N_STYLES] = {
  [SW_STYLE_TITLE] = { 20, PANGO_WEIGHT_BOLD, 0 },
  [SW_STYLE_HEADING] = { 12.5, PANGO_WEIGHT_BOLD, 0 },
  [SW_STYLE_AMOUNT] = { 13.5, PANGO_WEIGHT_BOLD, 0 },
  [SW_STYLE_STRONG] = { 11, PANGO_WEIGHT_BOLD, 0 },
  [SW_STYLE_BODY] = { 11, PANGO_WEIGHT_NORMAL, 0 },
  [SW_STYLE_ASIDE] = { 9.5, PANGO_WEIGHT_NORMAL, 0.25 },
};

static PangoLayout *
set_text (const SwSheetLayout *self, const char *text, SwSheetStyle style, double width, int at)
{
  PangoLayout *layout = pango_layout_new (self->context);
  PangoFontDescription *font = pango_font_description_from_string ("sans");

  pango_font_description_set_absolute_size (font, styles[style].size * PANGO_SCALE);
  pango_font_description_set_weight (font, styles[style].weight);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  if (width > 0)
    pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_alignment (layout, at > 0 ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT);
  pango_layout_set_text (layout, text, -1);
  return layout;
}

double
sw_sheet_text_width (const SwSheetLayout *self, const char *text, SwSheetStyle style)
{
  g_autoptr (PangoLayout) layout = set_text (self, text, style, 0, 0);
  int width;

  pango_layout_get_size (layout, &width, NULL);
  return ceil ((double) width / PANGO_SCALE);
}

SwSheetItem *
sw_sheet_add (SwSheetLayout *self, SwSheetItemKind kind, double x, double y, double width, double height)
{
  const SwSheetItem item = { .kind = kind, .page = self->page, .box = { self->content.x + x, y, width, height }, .grey = 0.45 };

  g_array_append_val (self->items, item);
  return &g_array_index (self->items, SwSheetItem, self->items->len - 1);
}

double
sw_sheet_add_text (SwSheetLayout *self, const char *text, SwSheetStyle style, double x, double y, double width, int at)
{
  PangoLayout *layout = set_text (self, text, style, width, at);
  SwSheetItem *item;
  int height;

  pango_layout_get_size (layout, NULL, &height);
  item = sw_sheet_add (self, SW_SHEET_TEXT, x, y, width, (double) height / PANGO_SCALE);
  item->text = layout;
  item->grey = styles[style].grey;
  item->heading = style == SW_STYLE_TITLE || style == SW_STYLE_HEADING;
  return item->box.height;
}

void
sw_sheet_add_cell (SwSheetLayout *self, const char *text, SwSheetStyle style, double x, double width, int at)
{
  sw_sheet_add_text (self, text, style, x, 0, width, at);
  g_array_index (self->items, SwSheetItem, self->items->len - 1).on_line = TRUE;
}

static double
base_line (const SwSheetItem *item)
{
  return (double) pango_layout_get_baseline (item->text) / PANGO_SCALE;
}

/* Letters of all sizes on one line; ticks, swatches and numbers in the middle of the letters. */
static void
align_row (SwSheetLayout *self)
{
  double line = 0;

  for (guint i = self->row; i < self->items->len; i++)
    {
      const SwSheetItem *item = &g_array_index (self->items, SwSheetItem, i);

      if (item->on_line && item->text != NULL)
        line = MAX (line, base_line (item));
    }
  for (guint i = self->row; i < self->items->len; i++)
    {
      SwSheetItem *item = &g_array_index (self->items, SwSheetItem, i);

      if (item->on_line)
        item->box.y += item->text != NULL ? line - base_line (item) : MAX (line - 4 - item->box.height / 2, 0);
    }
}

void
sw_sheet_begin_row (SwSheetLayout *self)
{
  self->row = self->items->len;
}

static void
lay_running_head (SwSheetLayout *self);

void
sw_sheet_end_row (SwSheetLayout *self, double gap, double follows)
{
  double height = 0;

  align_row (self);
  for (guint i = self->row; i < self->items->len; i++)
    {
      const SwBox *box = &g_array_index (self->items, SwSheetItem, i).box;

      height = MAX (height, box->y + box->height);
    }
  if (self->y + height + follows > self->content.y + self->content.height && self->y > self->content.y)
    {
      const guint row = self->row, n = self->items->len;

      self->page++;
      self->y = self->content.y;
      lay_running_head (self);
      self->row = row;
      for (guint i = row; i < n; i++)
        g_array_index (self->items, SwSheetItem, i).page = self->page;
      /* What was added for the new page stands behind the row and has its place already. */
      for (guint i = row; i < n; i++)
        g_array_index (self->items, SwSheetItem, i).box.y += self->y;
    }
  else
    for (guint i = self->row; i < self->items->len; i++)
      g_array_index (self->items, SwSheetItem, i).box.y += self->y;
  self->y += height + gap;
  self->row = self->items->len;
}

/* From the second page on, whose sheet it is. */
static void
lay_running_head (SwSheetLayout *self)
{
  const char *title = self->forecast->sketch->title;
  const double height = sw_sheet_add_text (self, title[0] != '\0' ? title : _ ("Untitled colourway"), SW_STYLE_STRONG, 0, self->y, self->content.width, 0);

  self->y += height + 4;
  sw_sheet_add (self, SW_SHEET_LINE, 0, self->y, self->content.width, 0.7);
  self->y += 8;
}

void
sw_sheet_add_heading (SwSheetLayout *self, const char *text, double follows)
{
  sw_sheet_begin_row (self);
  sw_sheet_add_text (self, text, SW_STYLE_HEADING, 0, sw_sheet_gap (self), self->content.width, 0);
  sw_sheet_end_row (self, self->closeness == SW_SHEET_CLOSEST ? 0 : 2, follows);
}

double
sw_sheet_gap (const SwSheetLayout *self)
{
  static const double gaps[] = { 6, 3, 1 };

  return gaps[self->closeness];
}

/* "Page 1 of 2" needs to know how many there are. */
static void
number_pages (SwSheetLayout *self)
{
  for (gsize page = 0; page < self->n_pages; page++)
    {
      /* Translators: at the foot of a printed page: its number, how many there are */
      g_autofree char *words = g_strdup_printf (_ ("Page %d of %d"), (int) page + 1, (int) self->n_pages);

      self->page = page;
      sw_sheet_add_text (self, words, SW_STYLE_ASIDE, 0, self->height - FOOT, self->content.width, 1);
    }
}

static void
clear_item (gpointer data)
{
  g_clear_object (&((SwSheetItem *) data)->text);
}

static void
lay_all (SwSheetLayout *self, int closeness)
{
  g_array_set_size (self->items, 0);
  self->closeness = closeness;
  self->page = 0;
  self->y = self->content.y;
  self->row = 0;
  sw_sheet_lay_head (self);
  sw_sheet_lay_pan (self);
  sw_sheet_lay_remarks (self); /* before anything is weighed */
  sw_sheet_lay_amounts (self);
  sw_sheet_lay_steps (self);
  sw_sheet_lay_cautions (self);
  sw_sheet_lay_cost (self);
  sw_sheet_lay_notes (self);
  self->n_pages = self->page + 1;
}

/* As open as it can be without a page more than the closest takes. */
static void
lay_on_fewest (SwSheetLayout *self)
{
  gsize fewest;
  int closeness = 0;

  lay_all (self, SW_SHEET_CLOSEST);
  fewest = self->n_pages;
  do
    lay_all (self, closeness);
  while (self->n_pages > fewest && ++closeness <= SW_SHEET_CLOSEST);
  number_pages (self);
}

/* Letters as on paper: not fitted to any screen's pixels. */
static PangoContext *
paper_context (void)
{
  PangoContext *context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
  return context;
}

SwSheetLayout *
sw_sheet_layout_new (SwForecast *forecast, const SwSheet *sheet, const SwSheetOptions *options)
{
  SwSheetLayout *self;

  g_return_val_if_fail (forecast != NULL && sheet != NULL && options != NULL, NULL);

  self = g_new0 (SwSheetLayout, 1);
  self->forecast = sw_forecast_ref (forecast);
  self->sheet = sheet;
  self->options = *options;
  self->system = options->us ? SW_MEASURE_US : SW_MEASURE_METRIC;
  sw_paper_size (options->paper, &self->width, &self->height);
  self->content = (SwBox){ LEFT, TOP, self->width - LEFT - RIGHT, self->height - TOP - BOTTOM };
  self->items = g_array_new (FALSE, FALSE, sizeof (SwSheetItem));
  g_array_set_clear_func (self->items, clear_item);
  self->context = paper_context ();
  lay_on_fewest (self);
  return self;
}

void
sw_sheet_layout_free (SwSheetLayout *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->items);
  g_object_unref (self->context);
  sw_forecast_unref (self->forecast);
  g_free (self);
}

gsize
sw_sheet_pages (const SwSheetLayout *self)
{
  return self->n_pages;
}
