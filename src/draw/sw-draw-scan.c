/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-canvas.h"
#include "draw/sw-scan-geometry.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef struct
{
  const SwCanvas *canvas;
  const SwForecast *forecast;
  SwScanGeometry geometry;
  gsize n;
  SwPooling *results[2]; /* by SwWorked */
} Scan;

static const char *const worked_words[] = {
  [SW_WORKED_FLAT] = NC_ ("scan", "flat"),
  [SW_WORKED_ROUND] = NC_ ("scan", "in the round"),
};

/* Translators: what colours do in cloth at a width, in the key of the width scan chart. */
static const char *const verdict_words[] = {
  [SW_VERDICT_COLUMNS] = NC_ ("scan", "columns"),
  [SW_VERDICT_DRIFTS] = NC_ ("scan", "drifts"),
  [SW_VERDICT_STRIPES] = NC_ ("scan", "stripes"),
};

static const SwVerdict patterns[] = { SW_VERDICT_COLUMNS, SW_VERDICT_DRIFTS, SW_VERDICT_STRIPES };

static const double dashes[] = { 5, 2.5 };

static void
draw_plot (const Scan *scan)
{
  const SwCanvas *canvas = scan->canvas;
  const SwBox *plot = &scan->geometry.plot;
  const double right = plot->x + plot->width, bottom = plot->y + plot->height;

  cairo_rectangle (canvas->cr, plot->x, plot->y, plot->width, plot->height);
  sw_canvas_set_ink (canvas, SW_INK_PAPER);
  cairo_fill (canvas->cr);
  for (int i = 0; i <= 4; i++)
    {
      const double y = sw_scan_to_y (&scan->geometry, i / 4.0);
      char text[8];

      sw_canvas_set_ink (canvas, i == 0 ? SW_INK_LINE : SW_INK_FAINT);
      sw_canvas_line (canvas, plot->x, y, right, y);
      if (i % 2 == 1)
        continue;
      g_snprintf (text, sizeof text, "%.1f", i / 4.0);
      sw_canvas_set_ink (canvas, SW_INK_TEXT);
      sw_canvas_text (canvas, text, plot->x - 6, y, 1, 0.5, SW_TEXT_PX, NULL);
    }
  sw_canvas_set_ink (canvas, SW_INK_TEXT);
  /* Translators: the chart's lower axis. */
  sw_canvas_text (canvas, C_ ("scan", "width in stitches"), plot->x + plot->width / 2, bottom + 20, 0.5, 0, SW_TEXT_PX, NULL);
  cairo_save (canvas->cr);
  cairo_translate (canvas->cr, 4, plot->y + plot->height / 2);
  cairo_rotate (canvas->cr, -G_PI_2);
  /* Translators: the chart's side axis: how far colours stand above one another, 0 chance .. 1 the same. */
  sw_canvas_text (canvas, C_ ("scan", "stacking"), 0, 0, 0.5, 0, SW_TEXT_PX, NULL);
  cairo_restore (canvas->cr);
}

static void
draw_widths (const Scan *scan)
{
  const SwCanvas *canvas = scan->canvas;
  const SwScanGeometry *geometry = &scan->geometry;
  const gsize step = sw_scan_step (geometry);
  const double bottom = geometry->plot.y + geometry->plot.height;

  for (gsize width = (geometry->from + step - 1) / step * step; width <= geometry->to; width += step)
    {
      const double x = sw_scan_to_x (geometry, (double) width);
      char text[24];

      g_snprintf (text, sizeof text, "%" G_GSIZE_FORMAT, width);
      sw_canvas_set_ink (canvas, SW_INK_LINE);
      sw_canvas_line (canvas, x, bottom, x, bottom + 4);
      sw_canvas_set_ink (canvas, SW_INK_TEXT);
      sw_canvas_text (canvas, text, x, bottom + 5, 0.5, 0, SW_TEXT_PX, NULL);
    }
}

static void
trace_line (const Scan *scan, SwWorked worked)
{
  for (gsize i = 0; i < scan->n; i++)
    cairo_line_to (scan->canvas->cr, sw_scan_to_x (&scan->geometry, (double) (scan->geometry.from + i)),
                   sw_scan_to_y (&scan->geometry, scan->results[worked][i].stack));
}

/* In the round: a filled hill with a solid ridge. Flat: a dashed line over it. The way the cloth is worked is the stronger. */
static void
draw_lines (const Scan *scan)
{
  cairo_t *cr = scan->canvas->cr;
  const double bottom = sw_scan_to_y (&scan->geometry, 0), grey = scan->canvas->look->dark ? 1 : 0;
  const gboolean flat = scan->forecast->layout.worked == SW_WORKED_FLAT;

  cairo_new_path (cr);
  cairo_move_to (cr, sw_scan_to_x (&scan->geometry, (double) scan->geometry.from), bottom);
  trace_line (scan, SW_WORKED_ROUND);
  cairo_line_to (cr, sw_scan_to_x (&scan->geometry, (double) scan->geometry.to), bottom);
  cairo_close_path (cr);
  cairo_set_source_rgba (cr, grey, grey, grey, 0.13);
  cairo_fill (cr);

  sw_canvas_set_ink (scan->canvas, SW_INK_TEXT);
  cairo_set_line_width (cr, flat ? 0.9 : 1.3);
  trace_line (scan, SW_WORKED_ROUND);
  cairo_stroke (cr);
  sw_canvas_set_ink (scan->canvas, SW_INK_LINE);
  cairo_set_line_width (cr, flat ? 1.5 : 1);
  cairo_set_dash (cr, dashes, 2, 0);
  trace_line (scan, SW_WORKED_FLAT);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  cairo_set_line_width (cr, 1);
}

/* A verdict's sign: upright bars for columns, leaning ones for drifts, lying ones for stripes. 9 px square. */
static void
draw_sign (const SwCanvas *canvas, SwVerdict verdict, double x, double y)
{
  cairo_t *cr = canvas->cr;

  cairo_save (cr);
  cairo_translate (cr, x, y);
  if (verdict == SW_VERDICT_STRIPES)
    cairo_rotate (cr, G_PI_2);
  else if (verdict == SW_VERDICT_DRIFTS)
    cairo_rotate (cr, G_PI / 5);
  for (int i = -1; i <= 1; i++)
    {
      cairo_move_to (cr, 3.2 * i, -4.5);
      cairo_line_to (cr, 3.2 * i, 4.5);
    }
  cairo_restore (cr);
  cairo_set_line_width (cr, 1.5);
  cairo_stroke (cr);
  cairo_set_line_width (cr, 1);
}

static double
draw_key_text (const SwCanvas *canvas, const char *text, double x, double y)
{
  SwBox box;

  sw_canvas_set_ink (canvas, SW_INK_TEXT);
  sw_canvas_text (canvas, text, x, y, 0, 0.5, SW_TEXT_PX, &box);
  return box.x + box.width;
}

static void
draw_key (const Scan *scan)
{
  const SwCanvas *canvas = scan->canvas;
  double x = scan->geometry.plot.x, y = 12;

  for (int i = SW_WORKED_ROUND; i >= SW_WORKED_FLAT; i--)
    {
      sw_canvas_set_ink (canvas, i == SW_WORKED_ROUND ? SW_INK_TEXT : SW_INK_LINE);
      cairo_set_dash (canvas->cr, dashes, i == SW_WORKED_ROUND ? 0 : 2, 0);
      cairo_set_line_width (canvas->cr, 1.5);
      sw_canvas_line (canvas, x, y, x + 24, y);
      cairo_set_dash (canvas->cr, NULL, 0, 0);
      x = draw_key_text (canvas, g_dpgettext2 (NULL, "scan", worked_words[i]), x + 30, y) + 18;
    }
  if (scan->geometry.key_lines > 1)
    {
      x = scan->geometry.plot.x;
      y += 16;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (patterns); i++)
    {
      sw_canvas_set_ink (canvas, SW_INK_TEXT);
      draw_sign (canvas, patterns[i], x + 6, y);
      x = draw_key_text (canvas, g_dpgettext2 (NULL, "scan", verdict_words[patterns[i]]), x + 16, y) + 18;
    }
}

static gboolean
overlaps (const SwBox *a, const SwBox *b)
{
  return a->x < b->x + b->width && b->x < a->x + a->width && a->y < b->y + b->height && b->y < a->y + a->height;
}

/* The highest that either line is between @from_x and @to_x. */
static double
highest_between (const Scan *scan, double from_x, double to_x)
{
  double y = scan->geometry.plot.y + scan->geometry.plot.height;

  for (gsize i = 0; i < scan->n; i++)
    {
      const double x = sw_scan_to_x (&scan->geometry, (double) (scan->geometry.from + i));

      if (x >= from_x && x <= to_x)
        for (SwWorked worked = SW_WORKED_FLAT; worked <= SW_WORKED_ROUND; worked++)
          y = MIN (y, sw_scan_to_y (&scan->geometry, scan->results[worked][i].stack));
    }
  return y;
}

/* A peak's sign and width above both lines, with a hair down to its place, unless something stands there already. */
static void
draw_peak (const Scan *scan, const SwPooling *peak, GArray *taken)
{
  const SwCanvas *canvas = scan->canvas;
  const SwBox *plot = &scan->geometry.plot;
  const double x = sw_scan_to_x (&scan->geometry, (double) peak->width), y = sw_scan_to_y (&scan->geometry, peak->stack);
  char text[24];
  double width, height;
  SwBox box;

  g_snprintf (text, sizeof text, "%" G_GSIZE_FORMAT, peak->width);
  sw_canvas_text_size (canvas, text, SW_TEXT_PX, &width, &height);
  box = (SwBox){ x - (width + 15) / 2, 0, width + 15, height + 2 };
  box.x = CLAMP (box.x, plot->x + 2, MAX (plot->x + plot->width - box.width - 2, plot->x + 2));
  box.y = MAX (highest_between (scan, box.x, box.x + box.width) - height - 3, plot->y + 2);
  for (guint i = 0; i < taken->len; i++)
    if (overlaps (&box, &g_array_index (taken, SwBox, i)))
      return;
  g_array_append_val (taken, box);
  if (y > box.y + box.height + 4)
    {
      sw_canvas_set_ink (canvas, SW_INK_LINE);
      cairo_set_line_width (canvas->cr, 1);
      sw_canvas_line (canvas, x, box.y + box.height, x, y);
    }
  sw_canvas_rounded (canvas, &box, 3);
  sw_canvas_set_ink (canvas, SW_INK_PAPER);
  cairo_fill (canvas->cr);
  sw_canvas_set_ink (canvas, SW_INK_TEXT);
  draw_sign (canvas, peak->verdict, box.x + 6, box.y + box.height / 2);
  sw_canvas_text (canvas, text, box.x + 14, box.y + box.height / 2, 0, 0.5, SW_TEXT_PX, NULL);
}

/* Those of the way the cloth is worked. */
static void
draw_peaks (const Scan *scan, GArray *taken)
{
  const double px = scan->geometry.plot.width / MAX ((double) (scan->n - 1), 1);
  const gsize spacing = (gsize) CLAMP (24 / px, 1, 200);
  const SwPooling *peaks[SW_SCAN_MAX_PEAKS];
  const gsize n = sw_scan_peaks (scan->results[scan->forecast->layout.worked], scan->n, spacing, peaks);

  for (gsize p = 0; p < n; p++)
    draw_peak (scan, peaks[p], taken);
}

/* The present width: a line through the chart, its name above and a dot where it meets the line it is worked in. */
static void
draw_present (const Scan *scan, GArray *taken)
{
  const SwCanvas *canvas = scan->canvas;
  const SwScanGeometry *geometry = &scan->geometry;
  const SwLayout *layout = &scan->forecast->layout;
  const double x = sw_scan_to_x (geometry, (double) layout->width);
  g_autofree char *text = NULL;
  double width, height, y;

  if (layout->width < geometry->from || layout->width > geometry->to)
    return;
  /* Translators: a width, above the chart. */
  text = g_strdup_printf (ngettext ("%d stitch", "%d stitches", layout->width), (int) layout->width);
  sw_canvas_text_size (canvas, text, SW_TEXT_PX, &width, &height);
  sw_canvas_set_ink (canvas, SW_INK_TEXT);
  cairo_set_line_width (canvas->cr, 1);
  sw_canvas_line (canvas, x, geometry->plot.y - 3, x, geometry->plot.y + geometry->plot.height);
  sw_canvas_text (canvas, text, CLAMP (x, geometry->plot.x + width / 2, MAX (geometry->plot.x + geometry->plot.width - width / 2, geometry->plot.x + width / 2)),
                  geometry->plot.y - 3, 0.5, 1, SW_TEXT_PX, NULL);
  y = sw_scan_to_y (geometry, scan->results[layout->worked][layout->width - geometry->from].stack);
  cairo_arc (canvas->cr, floor (x) + 0.5, y, 4, 0, 2 * G_PI);
  cairo_fill_preserve (canvas->cr);
  sw_canvas_set_ink (canvas, SW_INK_GROUND);
  cairo_set_line_width (canvas->cr, 1.5);
  cairo_stroke (canvas->cr);
  g_array_append_vals (taken, &(SwBox){ x - 6, y - 6, 12, 12 }, 1);
}

void
sw_draw_scan (cairo_t *cr, const SwForecast *forecast, gsize from, gsize to, double width, double height, const SwLook *look)
{
  SwCanvas canvas;
  Scan scan = { &canvas, forecast };
  g_autoptr (GArray) taken = g_array_new (FALSE, FALSE, sizeof (SwBox));

  g_return_if_fail (from >= 1 && from <= to);
  sw_canvas_begin (&canvas, cr, width, height, look);
  sw_scan_geometry (from, to, width, height, &scan.geometry);
  scan.n = to - from + 1;
  for (SwWorked worked = SW_WORKED_FLAT; worked <= SW_WORKED_ROUND; worked++)
    {
      scan.results[worked] = g_new0 (SwPooling, scan.n);
      sw_forecast_scan (forecast, worked, from, to, scan.results[worked]);
    }
  draw_plot (&scan);
  draw_widths (&scan);
  draw_lines (&scan);
  draw_present (&scan, taken);
  draw_peaks (&scan, taken);
  draw_key (&scan);
  for (SwWorked worked = SW_WORKED_FLAT; worked <= SW_WORKED_ROUND; worked++)
    g_free (scan.results[worked]);
  sw_canvas_end (&canvas);
}
