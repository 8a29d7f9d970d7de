/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw-fixture.h"

#include <string.h>

/* What holds for every picture: same bytes twice, nothing outside its box, the context as it was, any size. */

static SwForecast *forecast;

static gboolean
same_pixels (cairo_surface_t *a, cairo_surface_t *b)
{
  const gsize n = (gsize) cairo_image_surface_get_stride (a) * (gsize) cairo_image_surface_get_height (a);

  return memcmp (cairo_image_surface_get_data (a), cairo_image_surface_get_data (b), n) == 0;
}

static void
test_twice (gconstpointer data)
{
  const gsize i = GPOINTER_TO_SIZE (data);
  SwLook look = sw_look_plain;

  for (int dark = 0; dark < 2; dark++)
    {
      cairo_surface_t *a, *b;

      look.dark = dark;
      look.inches = dark;
      a = fixture_paint (fixture_pictures[i].draw, forecast, 400, 220, &look);
      b = fixture_paint (fixture_pictures[i].draw, forecast, 400, 220, &look);
      g_assert_true (same_pixels (a, b));
      cairo_surface_destroy (a);
      cairo_surface_destroy (b);
    }
}

#define AROUND 12

static void
test_clip (gconstpointer data)
{
  const gsize i = GPOINTER_TO_SIZE (data);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 300 + 2 * AROUND, 160 + 2 * AROUND);
  cairo_t *cr = cairo_create (surface);
  SwLook look = sw_look_plain;

  look.stitch_px = 9;
  cairo_translate (cr, AROUND, AROUND);
  fixture_pictures[i].draw (cr, forecast, 300, 160, &look);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  for (int y = 0; y < 160 + 2 * AROUND; y++)
    for (int x = 0; x < 300 + 2 * AROUND; x++)
      {
        const guint8 *line = cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface);
        const guint32 pixel = ((const guint32 *) (gconstpointer) line)[x];
        const gboolean inside = x >= AROUND && x < 300 + AROUND && y >= AROUND && y < 160 + AROUND;

        g_assert_cmphex (pixel >> 24, ==, inside ? 0xff : 0);
      }
  cairo_surface_destroy (surface);
}

/* Everything of the context that a renderer might change. */
static void
test_context (gconstpointer data)
{
  const gsize i = GPOINTER_TO_SIZE (data);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 300, 200);
  cairo_t *cr = cairo_create (surface);
  cairo_pattern_t *source = cairo_pattern_create_rgb (0.1, 0.2, 0.3);
  const double dash[] = { 3, 1 };
  double x1, y1, x2, y2, clip[4], dash_after[2], offset;
  cairo_matrix_t before, after;

  cairo_scale (cr, 1.5, 1.5);
  cairo_set_source (cr, source);
  cairo_set_line_width (cr, 7);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_SQUARE);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_BEVEL);
  cairo_set_dash (cr, dash, 2, 0.5);
  cairo_set_operator (cr, CAIRO_OPERATOR_ADD);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  cairo_move_to (cr, 11, 12);
  cairo_line_to (cr, 31, 42);
  cairo_get_matrix (cr, &before);

  fixture_pictures[i].draw (cr, forecast, 200, 130, &sw_look_plain);

  cairo_get_matrix (cr, &after);
  g_assert_cmpmem (&before, sizeof before, &after, sizeof after);
  g_assert_true (cairo_get_source (cr) == source);
  g_assert_cmpfloat (cairo_get_line_width (cr), ==, 7);
  g_assert_cmpint (cairo_get_line_cap (cr), ==, CAIRO_LINE_CAP_SQUARE);
  g_assert_cmpint (cairo_get_line_join (cr), ==, CAIRO_LINE_JOIN_BEVEL);
  g_assert_cmpint (cairo_get_operator (cr), ==, CAIRO_OPERATOR_ADD);
  g_assert_cmpint (cairo_get_fill_rule (cr), ==, CAIRO_FILL_RULE_EVEN_ODD);
  g_assert_cmpint (cairo_get_dash_count (cr), ==, 2);
  cairo_get_dash (cr, dash_after, &offset);
  g_assert_cmpmem (dash, sizeof dash, dash_after, sizeof dash_after);
  cairo_path_extents (cr, &x1, &y1, &x2, &y2);
  g_assert_cmpfloat_with_epsilon (x1, 11, 0.01);
  g_assert_cmpfloat_with_epsilon (y2, 42, 0.01);
  cairo_get_current_point (cr, &x1, &y1);
  g_assert_cmpfloat_with_epsilon (x1, 31, 0.01);
  cairo_clip_extents (cr, &clip[0], &clip[1], &clip[2], &clip[3]);
  g_assert_cmpfloat_with_epsilon (clip[2], 200, 0.01);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_pattern_destroy (source);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
test_sizes (gconstpointer data)
{
  static const int sizes[][2] = { { 1, 1 }, { 2, 300 }, { 300, 2 }, { 17, 23 }, { 90, 60 }, { 1500, 200 } };
  const gsize i = GPOINTER_TO_SIZE (data);

  for (gsize s = 0; s < G_N_ELEMENTS (sizes); s++)
    for (int scale = 0; scale < 3; scale++)
      {
        SwLook look = sw_look_plain;

        look.scale = scale;
        look.selected = 4;
        look.second_face = scale == 1;
        cairo_surface_destroy (fixture_paint (fixture_pictures[i].draw, forecast, sizes[s][0], sizes[s][1], &look));
      }
}

/* Whatever surrounds the colour has no hue of its own. */
static void
test_grounds_are_grey (gconstpointer data)
{
  const gsize i = GPOINTER_TO_SIZE (data);

  for (int dark = 0; dark < 2; dark++)
    {
      SwLook look = sw_look_plain;
      cairo_surface_t *surface;
      guint32 pixel;

      look.dark = dark;
      surface = fixture_paint (fixture_pictures[i].draw, forecast, 400, 220, &look);
      pixel = *(const guint32 *) (gconstpointer) cairo_image_surface_get_data (surface);
      g_assert_cmphex (pixel >> 16 & 0xff, ==, pixel & 0xff);
      g_assert_cmphex (pixel >> 8 & 0xff, ==, pixel & 0xff);
      if (dark)
        g_assert_cmphex (pixel & 0xff, <, 0x60);
      else
        g_assert_cmphex (pixel & 0xff, >, 0x90);
      cairo_surface_destroy (surface);
    }
}

static const struct
{
  const char *name;
  GTestDataFunc test;
} checks[] = {
  { "twice", test_twice },
  { "clip", test_clip },
  { "context", test_context },
  { "sizes", test_sizes },
  { "grounds-are-grey", test_grounds_are_grey },
};

int
main (int argc, char **argv)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  int result;

  g_test_init (&argc, &argv, NULL);
  forecast = fixture_forecast (sketch);
  for (gsize i = 0; i < G_N_ELEMENTS (fixture_pictures); i++)
    for (gsize c = 0; c < G_N_ELEMENTS (checks); c++)
      {
        g_autofree char *path = g_strdup_printf ("/pictures/%s/%s", fixture_pictures[i].name, checks[c].name);

        g_test_add_data_func (path, GSIZE_TO_POINTER (i), checks[c].test);
      }
  result = g_test_run ();
  sw_forecast_unref (forecast);
  return result;
}
