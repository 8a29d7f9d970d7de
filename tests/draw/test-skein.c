/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw-fixture.h"

#include "colour/sw-mix.h"
#include "draw/sw-pan-geometry.h"
#include "draw/sw-skein-light.h"
#include "draw/sw-skein-raster.h"
#include "draw/sw-skein-shape.h"
#include "draw/sw-weave.h"

#include <math.h>

/* The skein in the pan: its colours, its faces, its shape. */

/* The mean of the picture over a part of the laid skein, cm. */
static SwLab
mean_of (const SwForecast *forecast, int width, const SwLook *look, double x_cm, double y_cm, double w_cm, double h_cm)
{
  cairo_surface_t *surface = fixture_paint (sw_draw_pan, forecast, width, width / 3, look);
  SwPanGeometry geometry;
  double x0, y0, x1, y1;
  SwLab mean;

  sw_pan_geometry (forecast->sketch, width, width / 3, &geometry);
  sw_pan_to_px (&geometry, x_cm, y_cm + h_cm, &x0, &y0);
  sw_pan_to_px (&geometry, x_cm + w_cm, y_cm, &x1, &y1);
  mean = fixture_mean (surface, (int) x0, (int) y0, (int) (x1 - x0), (int) (y1 - y0));
  cairo_surface_destroy (surface);
  return mean;
}

static SwLook
bare_look (void)
{
  SwLook look = sw_look_plain;

  look.marks = FALSE;
  return look;
}

/* The forecast's own colour of the face at one place. */
static SwLab
face_at (const SwForecast *forecast, gboolean second, double x_cm, double y_cm)
{
  enum
  {
    NX = 240,
    NY = 32
  };
  g_autofree float *xyz = g_new (float, 3 * NX * NY);
  const int i = (int) (x_cm / sw_sketch_lay_length (forecast->sketch) * NX), j = (int) (y_cm / sw_sketch_lay_width (forecast->sketch) * NY);
  const int at = j * NX + i;

  sw_forecast_face (forecast, second, NX, NY, xyz, xyz + NX * NY, xyz + 2 * NX * NY);
  return sw_lab_from_xyz ((SwXyz){ (double) xyz[at], (double) xyz[NX * NY + at], (double) xyz[2 * NX * NY + at] });
}

/* Light and shade leave the colour alone, at every size. */
static void
test_mean_colour (void)
{
  static const int widths[] = { 300, 700, 1300, 2600 };
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  SwDye *dye = test_add_dye (sketch, "Red", 178, 60, 52);
  const SwLook look = bare_look ();

  for (int dyed = 0; dyed < 2; dyed++)
    {
      g_autoptr (SwForecast) forecast = NULL;

      if (dyed)
        {
          test_add_band (sketch, dye, 30, 200, 120, 1);
          test_add_step (sketch, SW_STEP_SET)->minutes = 60;
        }
      forecast = fixture_forecast (sketch);
      for (gsize i = 0; i < G_N_ELEMENTS (widths); i++)
        {
          const double difference = sw_ciede2000 (mean_of (forecast, widths[i], &look, 8, 0.8, 44, 6.4), face_at (forecast, FALSE, 30, 4));

          g_test_message ("%s, %d px: %.2f", dyed ? "red" : "undyed", widths[i], difference);
          g_assert_cmpfloat (difference, <, 2);
        }
    }
}

static void
test_undyed_is_warm_white (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  g_autoptr (SwForecast) forecast = fixture_forecast (sketch);
  const SwLook look = bare_look ();
  const SwLab mean = mean_of (forecast, 900, &look, 10, 2, 40, 4);

  g_assert_cmpfloat (mean.l, >, 80);
  g_assert_cmpfloat (mean.b, >, 2);
  g_assert_cmpfloat (mean.b, >, fabs (mean.a));
}

/* A band pushed right through, in the middle: the same on both faces and from both ends; left alone, the second face stays paler. */
static void
test_faces (void)
{
  SwLook first = bare_look (), second = bare_look ();

  second.second_face = TRUE;
  for (int through = 0; through < 2; through++)
    {
      g_autoptr (SwSketch) sketch = test_bare_sketch (2);
      SwDye *dye = test_add_dye (sketch, "Blue", 30, 80, 140);
      g_autoptr (SwForecast) forecast = NULL;
      SwLab up, down, left, right;

      test_add_band (sketch, dye, 30, 12, 40, through);
      test_add_step (sketch, SW_STEP_SET)->minutes = 30;
      forecast = fixture_forecast (sketch);
      up = mean_of (forecast, 900, &first, 26, 2, 8, 4);
      down = mean_of (forecast, 900, &second, 26, 2, 8, 4);
      if (through)
        g_assert_cmpfloat (sw_ciede2000 (up, down), <, 0.5);
      else
        g_assert_cmpfloat (down.l, >, up.l + 10);
      left = mean_of (forecast, 2400, &first, 20, 1, 6, 6);
      right = mean_of (forecast, 2400, &first, 34, 1, 6, 6);
      g_assert_cmpfloat (sw_ciede2000 (left, right), <, 2); /* alike but for whole pixels and the weave's own play */
    }
}

/* What was poured at the near edge is at the lower edge of the picture. */
static void
test_near_is_below (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  SwDye *dye = test_add_dye (sketch, "Blue", 30, 80, 140);
  SwStep *step = test_add_band (sketch, dye, 30, 100, 30, 0);
  g_autoptr (SwForecast) forecast = NULL;
  const SwLook look = bare_look ();

  step->y_cm = 1;
  step->length_cm = 2;
  test_add_step (sketch, SW_STEP_SET)->minutes = 30;
  forecast = fixture_forecast (sketch);
  g_assert_cmpfloat (mean_of (forecast, 900, &look, 20, 0.4, 20, 1).l, <, mean_of (forecast, 900, &look, 20, 6.4, 20, 1).l - 15);
}

/* A speck of a millimetre stays a speck in the picture. */
static void
test_specks_are_sharp (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  SwDye *dye = test_add_dye (sketch, "Blue", 30, 80, 140);
  SwStep *step = test_add_speckles (sketch, dye, -1);
  g_autoptr (SwForecast) forecast = NULL;
  const SwLook look = bare_look ();
  cairo_surface_t *surface;
  SwPanGeometry geometry;
  int dark = 0, all = 0;

  step->specks_per_100_cm2 = 40;
  step->speck_mm = 1.5;
  step->amount_ml = 0.35; /* what 190 drops of 1.5 mm hold */
  test_add_step (sketch, SW_STEP_SET)->minutes = 30;
  forecast = fixture_forecast (sketch);
  surface = fixture_paint (sw_draw_pan, forecast, 2000, 400, &look);
  sw_pan_geometry (sketch, 2000, 400, &geometry);
  for (int y = (int) geometry.skein.y + 12; y < (int) (geometry.skein.y + geometry.skein.height) - 12; y++)
    for (int x = (int) geometry.skein.x + 40; x < (int) (geometry.skein.x + geometry.skein.width) - 40; x++, all++)
      if (fixture_pixel (surface, x, y).y < 35)
        dark++;
  g_test_message ("%d of %d pixels are dark", dark, all);
  g_assert_cmpint (dark, >, all / 200);
  g_assert_cmpint (dark, <, all / 4);
  cairo_surface_destroy (surface);
}

static double
changed_share (cairo_surface_t *a, cairo_surface_t *b)
{
  const int width = cairo_image_surface_get_width (a), height = cairo_image_surface_get_height (a);
  int changed = 0;

  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      if (fabs (fixture_pixel (a, x, y).y - fixture_pixel (b, x, y).y) > 0.5)
        changed++;
  return changed / (double) (width * height);
}

/* Marks are lines, not areas; the selected pour's are stronger; those beneath are fainter than those on top. */
static void
test_marks (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = fixture_forecast (sketch);
  const SwStep *pour = g_ptr_array_index (sketch->steps, 0);
  SwLook look = bare_look ();
  cairo_surface_t *bare = fixture_paint (sw_draw_pan, forecast, 900, 260, &look), *marked, *selected;

  look.marks = TRUE;
  marked = fixture_paint (sw_draw_pan, forecast, 900, 260, &look);
  look.selected = pour->id;
  selected = fixture_paint (sw_draw_pan, forecast, 900, 260, &look);
  g_assert_cmpfloat (changed_share (bare, marked), >, 0.002);
  g_assert_cmpfloat (changed_share (bare, marked), <, 0.05);
  g_assert_cmpfloat (changed_share (marked, selected), >, 0.0005);
  g_assert_cmpfloat (changed_share (bare, selected), >, changed_share (bare, marked));
  cairo_surface_destroy (bare);
  cairo_surface_destroy (marked);
  cairo_surface_destroy (selected);
}

/* No yarn in the corners that a fold or a turn rounds off; an opened ring has none such. */
static void
test_shape (void)
{
  static const struct
  {
    gint64 runs;
    SwFolding folding;
    gboolean corner, middle_gap;
  } rows[] = {
    { 1, SW_FOLDING_STACKED, TRUE, FALSE },
    { 2, SW_FOLDING_STACKED, FALSE, FALSE },
    { 2, SW_FOLDING_SIDE_BY_SIDE, FALSE, TRUE },
    { 4, SW_FOLDING_SIDE_BY_SIDE, FALSE, TRUE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (SwSketch) sketch = test_bare_sketch (rows[i].runs);
      SwSkeinShape shape;
      double length, across;

      sketch->lay.folding = rows[i].folding;
      sketch->lay.skeins = 2;
      sw_skein_shape_init (&shape, sketch);
      length = sw_sketch_lay_length (sketch);
      across = sw_sketch_lay_width (sketch);
      for (int corner = 0; corner < 4; corner++)
        {
          const double x = corner % 2 ? length - 0.05 : 0.05, y = corner / 2 ? across - 0.05 : 0.05;

          g_assert_cmpint (sw_skein_shape_at (&shape, x, y).inside > 0, ==, rows[i].corner);
        }
      g_assert_cmpfloat (sw_skein_shape_at (&shape, length / 2, 2).inside, >=, 0);
      g_assert_cmpint ((double) sw_skein_shape_at (&shape, length / 2, 4).inside < 1e-4, ==, rows[i].middle_gap);
      g_assert_cmpfloat_with_epsilon ((double) sw_skein_shape_at (&shape, length / 2, 8).inside, 0, 1e-4); /* between the skeins */
    }
}

/* A strand keeps its number where it goes into the turn: no jump from one pixel to the next. */
static void
test_turns_are_smooth (void)
{
  static const gint64 runs[] = { 2, 4, 8 };

  for (gsize k = 0; k < G_N_ELEMENTS (runs); k++)
    {
      g_autoptr (SwSketch) sketch = test_bare_sketch (runs[k]);
      SwSkeinShape shape;

      sketch->lay.folding = SW_FOLDING_SIDE_BY_SIDE;
      sw_skein_shape_init (&shape, sketch);
      for (double y = 0.05; y < 8; y += 0.1)
        for (double x = 0; x < sw_sketch_lay_length (sketch) - 0.01; x += 0.01)
          {
            const SwSkeinPoint a = sw_skein_shape_at (&shape, x, y), b = sw_skein_shape_at (&shape, x + 0.01, y);

            if (a.inside > 0 && b.inside > 0 && fabs (x - sw_sketch_lay_length (sketch) / 2) > 0.02)
              g_assert_cmpfloat (fabs ((double) (a.strand - b.strand)), <, 0.05);
          }
    }
}

/* The weave's light is 1 in the mean and fades out, rather than beats, where strands are finer than pixels. */
static void
test_weave (void)
{
  static const double scales[] = { 4, 12, 30, 90, 300 };

  for (gsize i = 0; i < G_N_ELEMENTS (scales); i++)
    {
      SwWeave weave;
      double sum = 0, square = 0;
      const int n = 600;

      sw_weave_init (&weave, 0.09, 4, scales[i], 0, n);
      for (int j = 0; j < n; j++)
        {
          const double y = 20.0 * j / n; /* cm: enough strands for a mean */
          const SwWeaveRow row = sw_weave_row (y);

          for (int x = 0; x < n; x++)
            {
              const double light = (double) sw_weave_at (&weave, &row, x, (float) y).light;

              sum += light;
              square += light * light;
            }
        }
      sw_weave_clear (&weave);
      sum /= n * n;
      g_assert_cmpfloat_with_epsilon (sum, 1, 0.04);
      if (i == 0)
        g_assert_cmpfloat (sqrt (MAX (square / (n * n) - sum * sum, 0)), <, 0.08);
    }
}

/* A part of the skein is painted as it is within the whole, but for strands that take their colour from beyond the edge. */
static void
test_window (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  SwDye *dye = test_add_dye (sketch, "Red", 178, 60, 52);
  const SwFaceWindow whole = { 640, 96, 0, 0, 640, 96 };
  g_autofree guint32 *all = g_new (guint32, 640 * 96);
  g_autoptr (SwForecast) forecast = NULL;

  test_add_band (sketch, dye, 12, 8, 20, 0.5);
  test_add_speckles (sketch, dye, 0);
  test_add_step (sketch, SW_STEP_SET)->minutes = 30;
  forecast = fixture_forecast (sketch);
  sw_skein_raster (forecast, FALSE, &whole, 640, all);
  for (int trial = 0; trial < 20; trial++)
    {
      SwFaceWindow window = { 640, 96, g_test_rand_int_range (0, 500), g_test_rand_int_range (0, 50), 0, 0 };
      g_autofree guint32 *part = NULL;
      gsize differ = 0;

      window.width = g_test_rand_int_range (40, 640 - window.left + 1);
      window.height = g_test_rand_int_range (30, 96 - window.near + 1);
      part = g_new (guint32, (gsize) (window.width * window.height));
      sw_skein_raster (forecast, FALSE, &window, window.width, part);
      for (int j = 4; j < window.height - 4; j++)
        for (int i = 4; i < window.width - 4; i++)
          {
            const guint32 a = part[j * window.width + i], b = all[(96 - window.near - window.height + j) * 640 + window.left + i];

            for (int shift = 0; shift < 32; shift += 8)
              if (ABS ((int) (a >> shift & 0xff) - (int) (b >> shift & 0xff)) > 2)
                {
                  differ++;
                  break;
                }
          }
      /* Sums begun elsewhere round another way: a strand's edge may fall to the next pixel. */
      g_assert_cmpuint (differ, <=, (gsize) (window.width * window.height) / 200);
    }
}

/* What sw_skein_raster() draws, by a light that was made for it alone. */
static guint32 *
drawn_afresh (const SwForecast *forecast, const SwFaceWindow *window)
{
  const gsize n = (gsize) (window->width * window->height);
  g_autoptr (SwSkeinLight) light = sw_skein_light_new (forecast->sketch, window);
  g_autofree float *xyz = g_new (float, 3 * n);
  g_autofree guint32 *face = g_new (guint32, n);
  guint32 *pixels = g_new (guint32, n);

  sw_forecast_face_window (forecast, FALSE, window, xyz, xyz + n, xyz + 2 * n);
  sw_pixels_from_xyz (xyz, xyz + n, xyz + 2 * n, 1, n, face);
  sw_skein_light_shade (light, face, window->width, pixels);
  return pixels;
}

/* What a person may do between two pictures; the strands are wide enough to show their plies. All but the first ask for another light. */
static void
change_something (SwSketch *sketch, SwStep *band, SwFaceWindow *window, int change)
{
  switch (change)
    {
    case 1:
      band->x_cm += 6;
      break;
    case 2:
      sketch->yarn.plies = 2;
      break;
    case 3:
      sketch->yarn.metres_per_100_g = 120;
      break;
    case 4:
      sketch->lay.width_cm *= 1.3;
      break;
    case 5:
      sketch->lay.folding = sketch->lay.folding == SW_FOLDING_STACKED ? SW_FOLDING_SIDE_BY_SIDE : SW_FOLDING_STACKED;
      break;
    case 6:
      sketch->lay.skeins = 2;
      break;
    case 7:
      *window = (SwFaceWindow){ 4800, 960, 640, 200, 400, 96 };
      break;
    case 8:
      *window = (SwFaceWindow){ 4800, 960, 640, 220, 400, 60 };
      break;
    case 9:
      *window = (SwFaceWindow){ 5200, 960, 640, 220, 400, 60 };
      break;
    case 10: /* as two pictures before */
      *window = (SwFaceWindow){ 4800, 960, 640, 220, 400, 60 };
      break;
    default:
      break;
    }
}

/* Light is kept from picture to picture: each must be, to the byte, what it is when nothing was kept, whatever has changed since the last. */
static void
test_kept_light (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  SwDye *dye = test_add_dye (sketch, "Red", 178, 60, 52);
  SwStep *band = test_add_band (sketch, dye, 12, 8, 20, 0.5);
  SwFaceWindow window = { 4800, 960, 600, 200, 480, 96 };
  g_autofree guint32 *last = g_new0 (guint32, 480 * 96), *kept = g_new (guint32, 480 * 96);

  test_add_step (sketch, SW_STEP_SET)->minutes = 30;
  for (int change = 0; change <= 10; change++)
    {
      g_autoptr (SwForecast) forecast = NULL;
      g_autofree guint32 *fresh = NULL;
      gsize size;

      change_something (sketch, band, &window, change);
      forecast = fixture_forecast (sketch);
      fresh = drawn_afresh (forecast, &window);
      size = (gsize) (window.width * window.height) * sizeof *fresh;
      sw_skein_raster (forecast, FALSE, &window, window.width, kept);
      g_assert_cmpmem (kept, size, fresh, size);
      g_assert_cmpint (memcmp (kept, last, size), !=, 0); /* each change is to be seen */
      memcpy (last, kept, size);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/skein/mean-colour", test_mean_colour);
  g_test_add_func ("/skein/undyed-is-warm-white", test_undyed_is_warm_white);
  g_test_add_func ("/skein/faces", test_faces);
  g_test_add_func ("/skein/near-is-below", test_near_is_below);
  g_test_add_func ("/skein/specks-are-sharp", test_specks_are_sharp);
  g_test_add_func ("/skein/kept-light", test_kept_light);
  g_test_add_func ("/skein/marks", test_marks);
  g_test_add_func ("/skein/shape", test_shape);
  g_test_add_func ("/skein/turns-are-smooth", test_turns_are_smooth);
  g_test_add_func ("/skein/weave", test_weave);
  g_test_add_func ("/skein/window", test_window);
  return g_test_run ();
}
