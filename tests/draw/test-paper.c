/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * The dye sheet and the full-size template as pages: nothing lies over
 * anything else or off the page, nothing is left out, and lengths are true.
 * Paper sizes are those of ISO 216 (A4: 210 x 297 mm) and ANSI/ASME Y14.1
 * (A: 8.5 x 11 in).
 */
#include "../sw-test-sketch.h"

#include "draw/sw-draw-sheet.h"
#include "draw/sw-pan-copies.h"
#include "draw/sw-sheet-layout.h"
#include "draw/sw-template.h"
#include "files/sw-colourway.h"
#include "forecast/sw-repeat.h"
#include "sheet/sw-day.h"

#include <math.h>
#include <string.h>

#define MM (72 / 25.4)

typedef struct
{
  SwForecast *forecast;
  SwSheet *sheet;
} Fixture;

static SwSketch *
long_sketch (void)
{
  SwSketch *sketch = test_sketch (2);
  SwDye *dye = sketch->dyes->pdata[0];

  g_free (sketch->title);
  sketch->title = g_strdup ("A colourway with a name that would not fit on one line of any page that a printer holds");
  g_free (dye->name);
  dye->name = g_strdup ("Donaudampfschiffahrtsgesellschaftsblau, the deeper of the two that the shop sells");
  for (int i = 0; i < 40; i++)
    {
      SwStep *band = test_add_band (sketch, sketch->dyes->pdata[i % 2], 5 + i, 4, 2.5 + i, 0.5);

      if (i % 3 == 0)
        {
          g_free (band->name);
          band->name = g_strdup ("the edge of the sky where it meets the roofs of the far side of the valley in the morning");
        }
    }
  test_add_step (sketch, SW_STEP_ACID);
  test_add_step (sketch, SW_STEP_WATER);
  test_add_step (sketch, SW_STEP_SET);
  sketch->sheet.yarn_price = 9.5;
  sketch->sheet.margin_percent = 30;
  return sketch;
}

static SwSketch *
batch_sketch (void)
{
  SwSketch *sketch = test_sketch (2);

  sketch->lay.skeins = 2;
  sketch->sheet.skeins = 7;
  sketch->sheet.pans = 4;
  return sketch;
}

/* One pan, one face, four pours: the day of a plain colourway is on one page. */
static SwSketch *
simple_sketch (void)
{
  SwSketch *sketch = test_bare_sketch (2);
  const SwDye *dye = test_add_dye (sketch, "Red", 178, 60, 52);

  for (int i = 0; i < 4; i++)
    test_add_band (sketch, dye, 10 + 12 * i, 8, 10, 0.5);
  test_add_step (sketch, SW_STEP_REST);
  test_add_step (sketch, SW_STEP_SET);
  return sketch;
}

static SwSketch *
plain_sketch (void)
{
  return test_sketch (2);
}

static SwSketch *
empty_sketch (void)
{
  return sw_sketch_new ();
}

static const struct
{
  const char *name;
  SwSketch *(*make) (void);
  gsize least_pages, most_pages;
} sketches[] = {
  { "simple", simple_sketch, 1, 1 },
  { "plain", plain_sketch, 1, 2 },
  { "batch", batch_sketch, 1, 2 },
  { "long", long_sketch, 3, 6 },
  { "empty", empty_sketch, 1, 1 },
};

static Fixture fixtures[G_N_ELEMENTS (sketches)];

static gboolean
overlap (const SwBox *a, const SwBox *b)
{
  const double slack = 0.5;

  return a->x + slack < b->x + b->width && b->x + slack < a->x + a->width && a->y + slack < b->y + b->height && b->y + slack < a->y + a->height;
}

/* What is set in a text's box reaches no further than the box; a single word too long for it is broken. */
static void
assert_text_within (const SwSheetItem *item)
{
  PangoRectangle ink;

  pango_layout_get_extents (item->text, NULL, &ink);
  g_assert_cmpfloat (ink.x / (double) PANGO_SCALE, >=, -0.1);
  g_assert_cmpfloat ((ink.x + ink.width) / (double) PANGO_SCALE, <=, item->box.width + 0.1);
  g_assert_cmpfloat (ink.height / (double) PANGO_SCALE, <=, item->box.height + 0.1);
  g_assert_cmpint (pango_layout_get_unknown_glyphs_count (item->text), ==, 0);
}

static void
check_boxes (const SwSheetLayout *layout)
{
  double width, height;

  sw_paper_size (layout->options.paper, &width, &height);
  for (guint i = 0; i < layout->items->len; i++)
    {
      const SwSheetItem *item = &g_array_index (layout->items, SwSheetItem, i);

      g_assert_cmpuint (item->page, <, layout->n_pages);
      g_assert_cmpfloat (item->box.x, >=, 20 * MM); /* holes are punched at 12 mm and are 6 mm wide (ISO 838) */
      g_assert_cmpfloat (item->box.x + item->box.width, <=, width - 10 * MM);
      g_assert_cmpfloat (item->box.y, >=, 10 * MM);
      g_assert_cmpfloat (item->box.y + item->box.height, <=, height - 7 * MM);
      if (item->text != NULL)
        assert_text_within (item);
      for (guint k = 0; k < i; k++)
        {
          const SwSheetItem *other = &g_array_index (layout->items, SwSheetItem, k);

          if (other->page == item->page && item->kind != SW_SHEET_LINE && other->kind != SW_SHEET_LINE)
            g_assert_false (overlap (&item->box, &other->box));
        }
    }
}

static guint
count_items (const SwSheetLayout *layout, SwSheetItemKind kind)
{
  guint n = 0;

  for (guint i = 0; i < layout->items->len; i++)
    n += g_array_index (layout->items, SwSheetItem, i).kind == kind ? 1 : 0;
  return n;
}

static char *
all_words (const SwSheetLayout *layout)
{
  GString *words = g_string_new (NULL);

  for (guint i = 0; i < layout->items->len; i++)
    {
      const SwSheetItem *item = &g_array_index (layout->items, SwSheetItem, i);

      if (item->text != NULL)
        g_string_append_printf (words, "%s\n", pango_layout_get_text (item->text));
    }
  return g_string_free (words, FALSE);
}

/* Every deed has its box to tick, every pour its number and its amount, once each. */
static void
check_whole (const SwSheetLayout *layout, const Fixture *fixture)
{
  g_autofree char *words = all_words (layout);
  gsize n;
  g_autofree SwDeed *deeds = sw_day_new (fixture->sheet->sketch, &n);
  gsize rinses = 0, in_pans = 0;

  for (gsize i = 0; i < n; i++)
    rinses += deeds[i].kind == SW_DEED_RINSE ? 1 : 0;
  for (gsize i = 0; i < n; i++)
    in_pans += sw_deed_is_in_pan (deeds[i].kind) ? 1 : 0;
  g_assert_cmpuint (count_items (layout, SW_SHEET_TICK), >=, n - (rinses > 1 ? rinses - 1 : 0) + in_pans * (fixture->sheet->pans - 1));
  g_assert_cmpuint (count_items (layout, SW_SHEET_TICK), <=, n + in_pans * (fixture->sheet->pans - 1));
  g_assert_cmpuint (count_items (layout, SW_SHEET_BADGE), ==, fixture->sheet->n_pours);
  g_assert_cmpuint (count_items (layout, SW_SHEET_SWATCH), >=, fixture->sheet->n_dyes);
  for (gsize i = 0; i < fixture->sheet->n_pours; i++)
    {
      g_autofree char *amount = sw_volume_text (fixture->sheet->pours[i].stock_ml.rounded, layout->system);

      g_assert_nonnull (strstr (words, amount));
    }
  for (gsize i = 0; i < fixture->sheet->n_dyes; i++)
    {
      g_autofree char *weigh = sw_dye_text (fixture->sheet->dyes[i].weigh_g.rounded);

      g_assert_nonnull (strstr (words, weigh));
    }
  if (fixture->sheet->lesser > 0)
    {
      g_assert_nonnull (strstr (words, "in a pan with 1 skein"));
      g_assert_nonnull (strstr (words, "1 pan lies the same without the farthest skein."));
    }
}

static void
test_sheet (gconstpointer data)
{
  const gsize i = GPOINTER_TO_SIZE (data);

  for (SwPaper paper = SW_PAPER_A4; paper < SW_N_PAPERS; paper++)
    for (int us = 0; us < 2; us++)
      {
        const SwSheetOptions options = { paper, us == 1 };
        g_autoptr (SwSheetLayout) layout = sw_sheet_layout_new (fixtures[i].forecast, fixtures[i].sheet, &options);

        g_assert_cmpuint (sw_sheet_pages (layout), >=, sketches[i].least_pages);
        g_assert_cmpuint (sw_sheet_pages (layout), <=, sketches[i].most_pages);
        check_boxes (layout);
        check_whole (layout, &fixtures[i]);
      }
}

/* Painted as it was laid out: there is ink where the boxes are and none at the edges. */
static void
test_painted (void)
{
  const SwSheetOptions options = { SW_PAPER_A4, FALSE };
  g_autoptr (SwSheetLayout) layout = sw_sheet_layout_new (fixtures[0].forecast, fixtures[0].sheet, &options);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 595, 842);
  cairo_t *cr = cairo_create (surface);
  guint dark = 0;

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  sw_draw_sheet_page (cr, layout, 0);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_flush (surface);
  for (int y = 0; y < 842; y++)
    {
      const guint32 *row = (const guint32 *) (gconstpointer) (cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface));

      for (int x = 0; x < 595; x++)
        {
          const gboolean inked = (row[x] & 0xffffff) != 0xffffff;

          dark += inked ? 1 : 0;
          if (x < 56 || x > 595 - 30 || y < 28 || y > 842 - 20)
            g_assert_false (inked);
        }
    }
  g_assert_cmpuint (dark, >, 10000);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* The template */

static const struct
{
  double pan_length, pan_width;
  gint64 runs;
} pans[] = { { 80, 20, 2 }, { 20, 12, 8 }, { 35, 30, 4 }, { 130, 60, 1 }, { 30, 25, 2 } };

/* Pages cover all of the pan and the skein, and each seam is on two pages. */
static void
test_tiles (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (pans); i++)
    for (SwPaper paper = SW_PAPER_A4; paper < SW_N_PAPERS; paper++)
      {
        g_autoptr (SwSketch) sketch = test_bare_sketch (pans[i].runs);
        SwTemplate layout;
        SwBox first, last;

        sketch->lay.pan_length_cm = pans[i].pan_length;
        sketch->lay.pan_width_cm = pans[i].pan_width;
        sw_template_layout (sketch, paper, &layout);
        first = sw_template_tile (&layout, 0);
        last = sw_template_tile (&layout, sw_template_pages (&layout) - 1);
        g_assert_cmpfloat (layout.geometry.pan.x, >=, first.x);
        g_assert_cmpfloat (layout.geometry.skein.x, >=, first.x);
        g_assert_cmpfloat (layout.geometry.pan.y, >=, first.y);
        g_assert_cmpfloat (layout.geometry.pan.x + layout.geometry.pan.width, <=, last.x + last.width);
        g_assert_cmpfloat (layout.geometry.skein.x + layout.geometry.skein.width, <=, last.x + last.width);
        g_assert_cmpfloat (layout.geometry.pan.y + layout.geometry.pan.height, <=, last.y + last.height);
        g_assert_cmpfloat_with_epsilon (layout.geometry.pan.width, pans[i].pan_length * 10 * MM, 1e-9);
        g_assert_cmpfloat_with_epsilon (layout.geometry.skein.height, 80 * MM, 1e-9);
        for (gsize page = 1; page < sw_template_pages (&layout); page++)
          {
            const SwBox before = sw_template_tile (&layout, page - 1), tile = sw_template_tile (&layout, page);

            if (page % layout.columns > 0)
              g_assert_cmpfloat_with_epsilon (before.x + before.width - tile.x, 10 * MM, 1e-9);
          }
      }
}

/* Other loads of a pan than the drawn one are shown, each as wide across as its skeins. */
static void
test_loads (void)
{
  static const struct
  {
    gint64 drawn, skeins, pans;
    gsize loads[2]; /* skeins in each that is shown */
  } batches[] = { { 1, 1, 1, { 0 } }, { 1, 3, 1, { 3 } }, { 1, 5, 2, { 3, 2 } }, { 2, 7, 4, { 1 } }, { 3, 3, 3, { 1 } }, { 2, 500, 1, { 0 } } };

  for (gsize i = 0; i < G_N_ELEMENTS (batches); i++)
    {
      const SwSheetOptions options = { SW_PAPER_A4, FALSE };
      g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
      g_autoptr (SwSketch) sketch = simple_sketch ();
      g_autoptr (SwForecast) forecast = NULL;
      g_autoptr (SwSheet) sheet = NULL;
      g_autoptr (SwSheetLayout) layout = NULL;
      gsize n = 0;

      sketch->lay.skeins = batches[i].drawn;
      sketch->sheet.skeins = batches[i].skeins;
      sketch->sheet.pans = batches[i].pans;
      forecast = sw_forecaster_run (forecaster, sketch, NULL, NULL);
      sheet = sw_forecast_sheet (forecast);
      layout = sw_sheet_layout_new (forecast, sheet, &options);
      check_boxes (layout);
      for (guint k = 0; k < layout->items->len; k++)
        {
          const SwSheetItem *item = &g_array_index (layout->items, SwSheetItem, k);

          if (item->kind != SW_SHEET_PAN || item->laid == 0)
            continue;
          g_assert_cmpuint (n, <, G_N_ELEMENTS (batches[i].loads));
          g_assert_cmpuint (item->laid, ==, batches[i].loads[n]);
          g_assert_cmpfloat (item->box.height, >=, sketch->lay.width_cm * (double) item->laid * item->scale);
          n++;
        }
      g_assert_true (n == G_N_ELEMENTS (batches[i].loads) || batches[i].loads[n] == 0);
    }
}

/* The template is as wide across as all skeins of the fullest pan, and the drawing covers it from the near edge on without a gap. */
static void
test_template_of_batch (void)
{
  static const struct
  {
    gint64 drawn, skeins, pans;
    double laid;
    gsize copies;
  } batches[] = { { 1, 1, 0, 1, 1 }, { 1, 5, 2, 3, 3 }, { 2, 7, 4, 2, 1 }, { 3, 8, 2, 4, 2 }, { 3, 1, 1, 1, 1 } };

  for (gsize i = 0; i < G_N_ELEMENTS (batches); i++)
    {
      g_autoptr (SwSketch) sketch = test_sketch (2);
      SwTemplate layout;
      double edge;

      sketch->lay.skeins = batches[i].drawn;
      sketch->sheet.skeins = batches[i].skeins;
      sketch->sheet.pans = batches[i].pans;
      sw_template_layout (sketch, SW_PAPER_A4, &layout);
      g_assert_cmpuint (layout.copies, ==, batches[i].copies);
      g_assert_cmpfloat_with_epsilon (layout.geometry.skein.height, batches[i].laid * sketch->lay.width_cm * 10 * MM, 1e-9);
      edge = layout.geometry.skein.y + layout.geometry.skein.height;
      for (gsize copy = 0; copy < layout.copies; copy++)
        {
          SwPanGeometry geometry;

          sw_pan_copy_geometry (&layout.geometry, sketch, copy, &geometry);
          g_assert_cmpfloat_with_epsilon (geometry.skein.y + geometry.skein.height, edge, 1e-9);
          edge = geometry.skein.y;
        }
      g_assert_cmpfloat (edge, <=, layout.geometry.skein.y + 1e-9);
    }
}

static void
make_fixtures (void)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();

  for (gsize i = 0; i < G_N_ELEMENTS (sketches); i++)
    {
      g_autoptr (SwSketch) sketch = sketches[i].make ();
      g_autoptr (GError) error = NULL;

      fixtures[i].forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);
      g_assert_no_error (error);
      fixtures[i].sheet = sw_forecast_sheet (fixtures[i].forecast);
    }
}

static void
clear_fixtures (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (sketches); i++)
    {
      sw_sheet_free (fixtures[i].sheet);
      sw_forecast_unref (fixtures[i].forecast);
    }
}

int
main (int argc, char **argv)
{
  int result;

  g_test_init (&argc, &argv, NULL);
  make_fixtures ();
  for (gsize i = 0; i < G_N_ELEMENTS (sketches); i++)
    {
      g_autofree char *path = g_strdup_printf ("/paper/sheet/%s", sketches[i].name);

      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_sheet);
    }
  g_test_add_func ("/paper/painted", test_painted);
  g_test_add_func ("/paper/tiles", test_tiles);
  g_test_add_func ("/paper/loads", test_loads);
  g_test_add_func ("/paper/template-of-batch", test_template_of_batch);
  result = g_test_run ();
  clear_fixtures ();
  return result;
}
