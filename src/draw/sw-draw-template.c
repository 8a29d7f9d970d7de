/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-template.h"

#include "colour/sw-sample-forms.h"
#include "draw/sw-canvas.h"
#include "draw/sw-pan-copies.h"
#include "sheet/sw-step-title.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MM SW_POINTS_PER_MM
#define BADGE (4.2 * MM)
#define NUMBER_PT 14.0
#define NAME_PT 10.0
#define LABEL_PT 11.0
#define MARK (3.5 * MM) /* radius of a mark on a seam */
#define TINT 0.22

typedef struct
{
  SwCanvas canvas;
  cairo_t *cr;
  const SwSketch *sketch;
  const SwTemplate *layout;
  SwPanGeometry copy; /* of the drawing, which may lie in the pan more than once */
  gsize row, column;
  SwBox tile;
} Page;

static void
stroke (const Page *p, double width, double grey)
{
  cairo_set_source_rgb (p->cr, grey, grey, grey);
  cairo_set_line_width (p->cr, width);
  cairo_stroke (p->cr);
}

static void
trace_box (const Page *p, const SwBox *box)
{
  cairo_rectangle (p->cr, box->x, box->y, box->width, box->height);
}

static void
write_text (const Page *p, const char *text, double x, double y, double at_x, double at_y, double size)
{
  cairo_set_source_rgb (p->cr, 0, 0, 0);
  sw_canvas_text (&p->canvas, text, x, y, at_x, at_y, size, NULL);
}

/* The drawing */

/* A tint of the dye's colour, and an outline: whole on the first face, in dashes on the second, dots for specks. */
static void
draw_pour (const Page *p, const SwStep *step)
{
  static const double dashes[] = { 5 * 72 / 25.4, 2.5 * 72 / 25.4 }, dots[] = { 0.8 * 72 / 25.4, 1.6 * 72 / 25.4 };
  const SwDye *dye = sw_sketch_find_dye (p->sketch, step->dye);
  const SwSrgb colour = sw_sample_srgb (&dye->sample);
  const gboolean second = sw_pan_pour_on_second (p->sketch, step->id);

  cairo_new_path (p->cr);
  sw_pan_trace_pour (p->cr, &p->copy, p->sketch, step);
  cairo_set_source_rgba (p->cr, colour.r, colour.g, colour.b, second ? TINT / 2 : TINT);
  cairo_fill_preserve (p->cr);
  if (step->kind == SW_STEP_SPECKLE)
    cairo_set_dash (p->cr, dots, 2, 0);
  else if (second)
    cairo_set_dash (p->cr, dashes, 2, 0);
  stroke (p, 0.4 * MM, 0.15);
  cairo_set_dash (p->cr, NULL, 0, 0);
}

/* Number and name of a pour as they stand on the page: the number in a ring, the dye's name below. */
static SwBox
label_box (const Page *p, const SwStep *step, double x, double y)
{
  double width, height;

  sw_canvas_text_size (&p->canvas, sw_dye_title (sw_sketch_find_dye (p->sketch, step->dye)), NAME_PT, &width, &height);
  width = MAX (width + 4, 2 * BADGE);
  return (SwBox){ x - width / 2, y - BADGE, width, 2 * BADGE + 1 + height };
}

/* The middle of the longest part of the line at @y that the pour covers on this page's part of the skein. */
static gboolean
middle_of_line (const Page *p, double y, double *x)
{
  const SwBox *skein = &p->layout->geometry.skein;
  const double left = MAX (p->tile.x, skein->x), right = MIN (p->tile.x + p->tile.width, skein->x + skein->width);
  double from = left, longest = 0;

  for (double at = left; at <= right; at += 2)
    {
      if (!cairo_in_fill (p->cr, at, y))
        from = at + 2;
      else if (at - from > longest)
        {
          longest = at - from;
          *x = (from + at) / 2;
        }
    }
  return longest > 2 * BADGE;
}

static gboolean
overlap (const SwBox *a, const SwBox *b)
{
  return a->x < b->x + b->width && b->x < a->x + a->width && a->y < b->y + b->height && b->y < a->y + a->height;
}

static gboolean
is_free (const Page *p, const GArray *taken, const SwBox *box)
{
  for (guint i = 0; i < taken->len; i++)
    if (overlap (box, &g_array_index (taken, SwBox, i)))
      return FALSE;
  return box->y > p->tile.y && box->y + box->height < p->tile.y + p->tile.height;
}

/* Where on this page a pour's number stands: in what the page shows of the pour, beside earlier numbers. FALSE if it is elsewhere. */
static gboolean
place_label (const Page *p, const SwStep *step, const GArray *taken, double *x, double *y)
{
  static const double shares[] = { 0.5, 0.25, 0.75, 0.12, 0.62, 0.38, 0.87 };
  const SwBox *skein = &p->copy.skein;
  const double top = MAX (MAX (p->tile.y, skein->y), p->layout->geometry.skein.y), bottom = MIN (p->tile.y + p->tile.height, skein->y + skein->height);
  gboolean found = FALSE;

  cairo_new_path (p->cr);
  sw_pan_trace_pour (p->cr, &p->copy, p->sketch, step);
  for (gsize i = 0; i < G_N_ELEMENTS (shares); i++)
    {
      const double at_y = top + shares[i] * (bottom - top);
      double at_x = 0;
      SwBox box;

      if (!middle_of_line (p, at_y, &at_x))
        continue;
      box = label_box (p, step, at_x, at_y);
      if (found && !is_free (p, taken, &box))
        continue;
      *x = at_x;
      *y = at_y;
      found = TRUE;
      if (is_free (p, taken, &box))
        break;
    }
  cairo_new_path (p->cr);
  return found;
}

static void
draw_badge (const Page *p, const SwStep *step, double x, double y)
{
  char number[16];
  const char *name = sw_dye_title (sw_sketch_find_dye (p->sketch, step->dye));
  double width, height;

  g_snprintf (number, sizeof number, "%u", sw_pan_pour_number (p->sketch, step->id));
  cairo_new_path (p->cr);
  cairo_arc (p->cr, x, y, BADGE, 0, 2 * G_PI);
  cairo_set_source_rgb (p->cr, 1, 1, 1);
  cairo_fill_preserve (p->cr);
  stroke (p, 0.4 * MM, 0);
  write_text (p, number, x, y, 0.5, 0.5, NUMBER_PT);
  sw_canvas_text_size (&p->canvas, name, NAME_PT, &width, &height);
  cairo_rectangle (p->cr, x - width / 2 - 2, y + BADGE + 1, width + 4, height);
  cairo_set_source_rgba (p->cr, 1, 1, 1, 0.75);
  cairo_fill (p->cr);
  write_text (p, name, x, y + BADGE + 1, 0.5, 0, NAME_PT);
}

static void
draw_badges (const Page *p, GArray *taken)
{
  for (guint i = 0; i < p->sketch->steps->len; i++)
    {
      const SwStep *step = g_ptr_array_index (p->sketch->steps, i);
      double x, y;
      SwBox box;

      if (!sw_step_is_pour (step) || !place_label (p, step, taken, &x, &y))
        continue;
      box = label_box (p, step, x, y);
      g_array_append_val (taken, box);
      draw_badge (p, step, x, y);
    }
}

static void
draw_pours (const Page *p)
{
  cairo_save (p->cr);
  trace_box (p, &p->layout->geometry.skein);
  cairo_clip (p->cr);
  trace_box (p, &p->copy.skein);
  cairo_clip (p->cr);
  for (guint i = 0; i < p->sketch->steps->len; i++)
    if (sw_step_is_pour (p->sketch->steps->pdata[i]))
      draw_pour (p, p->sketch->steps->pdata[i]);
  cairo_restore (p->cr);
}

/* Where one skein ends and the next begins, if they are not all in the drawing. */
static void
draw_lanes (const Page *p)
{
  const SwBox *skein = &p->layout->geometry.skein;
  const double lane = p->sketch->lay.width_cm * p->layout->geometry.scale;

  for (double y = skein->y + skein->height - lane; p->layout->copies > 1 && y > skein->y + 1; y -= lane)
    {
      cairo_move_to (p->cr, skein->x, y);
      cairo_line_to (p->cr, skein->x + skein->width, y);
      stroke (p, 0.3 * MM, 0);
    }
}

static void
draw_drawing (Page *p)
{
  g_autoptr (GArray) taken = g_array_new (FALSE, FALSE, sizeof (SwBox));

  trace_box (p, &p->layout->geometry.pan);
  stroke (p, 0.6 * MM, 0.35);
  for (gsize copy = 0; copy < p->layout->copies; copy++)
    {
      sw_pan_copy_geometry (&p->layout->geometry, p->sketch, copy, &p->copy);
      draw_pours (p);
    }
  draw_lanes (p);
  trace_box (p, &p->layout->geometry.skein);
  stroke (p, 0.3 * MM, 0);
  for (gsize copy = 0; copy < p->layout->copies; copy++)
    {
      sw_pan_copy_geometry (&p->layout->geometry, p->sketch, copy, &p->copy);
      draw_badges (p, taken);
    }
}

/* Seams */

static void
draw_mark (const Page *p, double x, double y)
{
  cairo_new_path (p->cr);
  cairo_arc (p->cr, x, y, 0.6 * MARK, 0, 2 * G_PI);
  stroke (p, 0.2 * MM, 0);
  cairo_move_to (p->cr, x - MARK, y);
  cairo_line_to (p->cr, x + MARK, y);
  cairo_move_to (p->cr, x, y - MARK);
  cairo_line_to (p->cr, x, y + MARK);
  stroke (p, 0.2 * MM, 0);
}

static void
draw_seam_line (const Page *p, double x1, double y1, double x2, double y2)
{
  const double dashes[] = { 2 * MM, 2 * MM };

  cairo_set_dash (p->cr, dashes, 2, 0);
  cairo_move_to (p->cr, x1, y1);
  cairo_line_to (p->cr, x2, y2);
  stroke (p, 0.15 * MM, 0.45);
  cairo_set_dash (p->cr, NULL, 0, 0);
}

/* A seam lies in the middle of what two pages both show; the same marks are on both. */
static void
draw_upright_seam (const Page *p, double x)
{
  const SwBox *tile = &p->tile;

  draw_seam_line (p, x, tile->y, x, tile->y + tile->height);
  draw_mark (p, x, tile->y + 0.12 * tile->height);
  draw_mark (p, x, tile->y + 0.88 * tile->height);
}

static void
draw_level_seam (const Page *p, double y)
{
  const SwBox *tile = &p->tile;

  draw_seam_line (p, tile->x, y, tile->x + tile->width, y);
  draw_mark (p, tile->x + 0.12 * tile->width, y);
  draw_mark (p, tile->x + 0.88 * tile->width, y);
}

static void
draw_seams (const Page *p)
{
  const double half = SW_TEMPLATE_OVERLAP / 2;

  if (p->column > 0)
    draw_upright_seam (p, p->tile.x + half);
  if (p->column + 1 < p->layout->columns)
    draw_upright_seam (p, p->tile.x + p->tile.width - half);
  if (p->row > 0)
    draw_level_seam (p, p->tile.y + half);
  if (p->row + 1 < p->layout->rows)
    draw_level_seam (p, p->tile.y + p->tile.height - half);
}

/* The foot of the page */

/* A ruler to hold a real one against: @n units of @unit points from @x. */
static void
draw_check (const Page *p, double x, double y, double unit, int n, gboolean below, const char *label)
{
  const double down = below ? 1 : -1;

  cairo_move_to (p->cr, x, y);
  cairo_line_to (p->cr, x + n * unit, y);
  for (int i = 0; i <= n; i++)
    {
      cairo_move_to (p->cr, x + i * unit, y);
      cairo_line_to (p->cr, x + i * unit, y + down * (i == 0 || i == n ? 4 : 2.5) * MM);
    }
  stroke (p, 0.2 * MM, 0);
  write_text (p, label, x + n * unit - 1 * MM, y + down * 2.8 * MM, 1, below ? 0 : 1, NAME_PT);
}

static void
draw_checks (const Page *p)
{
  const double x = p->layout->width - p->layout->area.x - 103 * MM, y = p->layout->height - p->layout->area.x - 9 * MM;

  draw_check (p, x, y, 10 * MM, 10, FALSE, _ ("10 cm"));
  draw_check (p, x, y, 72, 4, TRUE, _ ("4 in"));
}

/* Which of the pages this is, as a small plan. */
static double
draw_plan (const Page *p, double x, double y)
{
  const double cell = MIN (5 * MM, 24 * MM / (double) MAX (p->layout->columns, p->layout->rows));
  const double rise = cell * p->layout->area.height / p->layout->area.width, fit = MIN (1, 15 * MM / (rise * (double) p->layout->rows));

  for (gsize row = 0; row < p->layout->rows; row++)
    for (gsize column = 0; column < p->layout->columns; column++)
      {
        cairo_rectangle (p->cr, x + (double) column * cell * fit, y + (double) row * rise * fit, cell * fit, rise * fit);
        if (row == p->row && column == p->column)
          {
            cairo_set_source_rgb (p->cr, 0.2, 0.2, 0.2);
            cairo_fill_preserve (p->cr);
          }
        stroke (p, 0.2 * MM, 0.2);
      }
  return (double) p->layout->columns * cell * fit;
}

/* The title as far as there is room, and which page this is. */
static void
draw_title (const Page *p, double y)
{
  const SwBox *area = &p->layout->area;
  const char *title = p->sketch->title[0] != '\0' ? p->sketch->title : _ ("Untitled colourway");
  /* Translators: a page of a drawing cut into pages: row, rows, column, columns */
  g_autofree char *place = g_strdup_printf (_ ("Row %d of %d, column %d of %d"), (int) p->row + 1, (int) p->layout->rows, (int) p->column + 1, (int) p->layout->columns);
  double width, height;

  write_text (p, place, area->x + area->width, y, 1, 0, LABEL_PT);
  sw_canvas_text_size (&p->canvas, place, LABEL_PT, &width, &height);
  cairo_save (p->cr);
  cairo_rectangle (p->cr, area->x, y, area->width - width - 4 * MM, 2 * height);
  cairo_clip (p->cr);
  write_text (p, title, area->x, y, 0, 0, LABEL_PT);
  cairo_restore (p->cr);
}

static void
draw_foot (const Page *p)
{
  const SwBox *area = &p->layout->area;
  const double top = area->y + area->height + 1 * MM, plan = top + 6 * MM;

  draw_title (p, top);
  /* Translators: beside a full-size drawing: how to print it */
  write_text (p, _ ("Full size: print at 100 %"), area->x + draw_plan (p, area->x, plan) + 4 * MM, plan, 0, 0, NAME_PT);
  draw_checks (p);
}

void
sw_draw_template_page (cairo_t *cr, const SwSketch *sketch, const SwTemplate *layout, gsize page)
{
  Page p = { .cr = cr, .sketch = sketch, .layout = layout, .row = page / layout->columns, .column = page % layout->columns };

  g_return_if_fail (page < sw_template_pages (layout));

  p.tile = sw_template_tile (layout, page);
  sw_canvas_begin_over (&p.canvas, cr, layout->width, layout->height, &sw_look_plain);
  cairo_save (cr);
  trace_box (&p, &layout->area);
  cairo_clip (cr);
  cairo_translate (cr, layout->area.x - p.tile.x, layout->area.y - p.tile.y);
  draw_drawing (&p);
  draw_seams (&p);
  cairo_restore (cr);
  trace_box (&p, &layout->area);
  stroke (&p, 0.1 * MM, 0.6);
  draw_foot (&p);
  sw_canvas_end (&p.canvas);
}
