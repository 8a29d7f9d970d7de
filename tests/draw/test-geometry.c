/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw-fixture.h"

#include "bath/sw-deposit.h"
#include "draw/sw-cloth-geometry.h"
#include "draw/sw-pan-geometry.h"
#include "draw/sw-ruler.h"
#include "draw/sw-scan-geometry.h"
#include "draw/sw-strip-geometry.h"

#include <math.h>

/* Where is what: px and cm, px and stitches, px and widths, and what lies under the pointer. */

static void
test_pan_round_trip (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  static const double sizes[][2] = { { 1200, 400 }, { 300, 900 }, { 120, 80 }, { 4, 3 } };

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (int k = 0; k < 20; k++)
      {
        SwPanGeometry geometry;
        const double x_cm = g_test_rand_double_range (-5, 70), y_cm = g_test_rand_double_range (-5, 20);
        double x, y, back_x, back_y;

        sw_pan_geometry (sketch, sizes[i][0], sizes[i][1], &geometry);
        sw_pan_to_px (&geometry, x_cm, y_cm, &x, &y);
        sw_pan_to_cm (&geometry, x, y, &back_x, &back_y);
        g_assert_cmpfloat_with_epsilon (back_x, x_cm, 1e-9);
        g_assert_cmpfloat_with_epsilon (back_y, y_cm, 1e-9);
      }
}

/* To scale, all of it in the picture, the near edge below the far one. */
static void
test_pan_to_scale (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  SwPanGeometry geometry;
  double x0, y0, x1, y1;

  sw_pan_geometry (sketch, 1200, 400, &geometry);
  g_assert_cmpfloat_with_epsilon (geometry.pan.width / geometry.pan.height, sketch->lay.pan_length_cm / sketch->lay.pan_width_cm, 1e-9);
  g_assert_cmpfloat_with_epsilon (geometry.skein.width / geometry.pan.width, 60.0 / 130.0, 1e-9);
  g_assert_cmpfloat (geometry.pan.x, >, 0);
  g_assert_cmpfloat (geometry.pan.y + geometry.pan.height, <, geometry.ruler_x.y);
  g_assert_cmpfloat (geometry.ruler_x.y + geometry.ruler_x.height, <=, 400);
  g_assert_cmpfloat (geometry.ruler_y.x, >=, 0);
  sw_pan_to_px (&geometry, 0, 0, &x0, &y0);
  sw_pan_to_px (&geometry, 60, 8, &x1, &y1);
  g_assert_cmpfloat (x1, >, x0);
  g_assert_cmpfloat (y1, <, y0);

  /* A skein that does not fit its pan is still all in the picture. */
  sketch->lay.pan_length_cm = 20;
  sw_pan_geometry (sketch, 1200, 400, &geometry);
  g_assert_cmpfloat (geometry.skein.x, >=, 0);
  g_assert_cmpfloat (geometry.skein.x + geometry.skein.width, <=, 1200);
}

/* The pours of the table below on a skein of 60 x 8 cm. */
static SwSketch *
hit_sketch (void)
{
  SwSketch *sketch = test_bare_sketch (2);
  SwDye *dye = test_add_dye (sketch, "Red", 178, 60, 52);
  SwStep *step;

  test_add_band (sketch, dye, 10, 4, 10, 0)->angle_deg = 45; /* 1: leans right on the far side */
  step = test_add_band (sketch, dye, 30, 6, 10, 0);          /* 2: only the far half */
  step->y_cm = 6;
  step->length_cm = 4;
  step = test_add_step (sketch, SW_STEP_SPLOTCH); /* 3: over 2, stands upright once turned */
  step->dye = dye->id;
  step->x_cm = 30;
  step->y_cm = 4;
  step->width_cm = 6;
  step->length_cm = 2;
  step->angle_deg = 90;
  test_add_step (sketch, SW_STEP_FLIP);
  step = test_add_speckles (sketch, dye, -1); /* 4: on the second face, 48 x 6.4 about the middle */
  step->angle_deg = 0;
  return sketch;
}

static const struct
{
  double x_cm, y_cm;
  gboolean second;
  guint number; /* 0 none */
} hits[] = {
  { 10, 4, FALSE, 1 },
  { 13.9, 7.9, FALSE, 1 }, /* 10 + 3.9 in the middle at 7.9 */
  { 10, 7.9, FALSE, 0 },   /* the band has leant away */
  { 6.1, 0.1, FALSE, 1 },
  { 28, 7.5, FALSE, 2 },
  { 28, 3.5, FALSE, 0 },
  { 30, 6.5, FALSE, 3 }, /* 3 cm up the turned splotch, on top of 2 */
  { 30, 7.2, FALSE, 2 }, /* just beyond it */
  { 32.5, 4.2, FALSE, 2 },
  { 50, 4, FALSE, 0 },
  { 10, 4, TRUE, 4 },
  { 30, 0.5, TRUE, 0 },
  { 53.9, 7.1, TRUE, 4 },
  { 54.1, 7.1, TRUE, 0 },
  { -3, 4, FALSE, 0 },
};

static void
test_pan_hits (void)
{
  g_autoptr (SwSketch) sketch = hit_sketch ();
  SwPanGeometry geometry;

  sw_pan_geometry (sketch, 900, 300, &geometry);
  for (gsize i = 0; i < G_N_ELEMENTS (hits); i++)
    {
      double x, y;
      guint id;

      sw_pan_to_px (&geometry, hits[i].x_cm, hits[i].y_cm, &x, &y);
      id = sw_pan_pour_at (&geometry, sketch, hits[i].second, x, y);
      g_test_message ("%g, %g", hits[i].x_cm, hits[i].y_cm);
      g_assert_cmpuint (id == 0 ? 0 : sw_pan_pour_number (sketch, id), ==, hits[i].number);
      if (id != 0)
        g_assert_cmpint (sw_pan_pour_on_second (sketch, id), ==, hits[i].second);
    }
}

/* Dye lies where the outline is: every cell that the bath fills or leaves clean agrees with the pointer and with the traced path. */
static void
test_pan_outline_is_the_bath (void)
{
  g_autoptr (SwSketch) sketch = hit_sketch ();
  const SwGrid grid = sw_grid_for (sw_sketch_lay_length (sketch), sw_sketch_lay_width (sketch), 2, 0.4, 1);
  g_autofree double *plane = g_new (double, sw_grid_cells (&grid));
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *cr = cairo_create (surface);
  SwPanGeometry geometry;
  int checked = 0;

  sw_pan_geometry (sketch, 900, 300, &geometry);
  for (guint s = 0; s < 3; s++)
    {
      g_autoptr (SwSketch) alone = sw_sketch_copy (sketch);
      const SwStep *step = g_ptr_array_index (sketch->steps, s);
      const SwOutline outline = { step->kind == SW_STEP_SPLOTCH, step->x_cm, step->y_cm, step->width_cm, step->length_cm, step->angle_deg };
      double full = 0;

      for (int i = 4; i >= 0; i--)
        if (i != (int) s)
          g_ptr_array_remove_index (alone->steps, (guint) i);
      sw_deposit_plane (&grid, &outline, 1, plane);
      cairo_new_path (cr);
      sw_pan_trace_pour (cr, &geometry, sketch, step);
      for (gsize i = 0; i < sw_grid_cells (&grid); i++)
        full = MAX (full, plane[i]);
      for (int j = 0; j < grid.ny; j++)
        for (int i = 0; i < grid.nx; i++)
          {
            const double share = plane[j * grid.nx + i] / full;
            double x, y;

            if (share > 0.01 && share < 0.99)
              continue;
            sw_pan_to_px (&geometry, (i + 0.5) * grid.lx / grid.nx, (j + 0.5) * grid.ly / grid.ny, &x, &y);
            g_assert_cmpuint (sw_pan_pour_at (&geometry, alone, FALSE, x, y), ==, share > 0.5 ? step->id : 0);
            g_assert_cmpint (cairo_in_fill (cr, x, y) != 0, ==, share > 0.5);
            checked++;
          }
    }
  g_assert_cmpint (checked, >, 5000);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
test_cloth_round_trip (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = fixture_forecast (sketch);
  static const double sizes[] = { 0, 0.7, 2, 8, 33.3, 60 };

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (gsize first = 0; first < 20; first += 19)
      {
        SwLook look = sw_look_plain;
        SwClothGeometry geometry;
        gsize row, column;
        SwBox box;

        look.stitch_px = sizes[i];
        look.first_row = look.first_column = first;
        sw_cloth_geometry (forecast, 640, 480, &look, &geometry);
        g_assert_cmpfloat_with_epsilon (geometry.row / geometry.stitch, forecast->row_height_cm / forecast->stitch_width_cm, 1e-12);
        for (gsize r = geometry.first_row; r < geometry.first_row + geometry.rows; r += 3)
          for (gsize c = geometry.first_column; c < geometry.first_column + geometry.columns; c += 5)
            {
              sw_cloth_stitch_box (&geometry, r, c, &box);
              g_assert_true (sw_cloth_stitch_at (&geometry, box.x + 0.3 * box.width, box.y + 0.9 * box.height, &row, &column));
              g_assert_cmpuint (row, ==, r);
              g_assert_cmpuint (column, ==, c);
            }
        g_assert_false (sw_cloth_stitch_at (&geometry, geometry.cloth.x - 1, 100, &row, &column));
        g_assert_false (sw_cloth_stitch_at (&geometry, 100, geometry.cloth.y + geometry.cloth.height + 1, &row, &column));
      }
}

static void
test_cloth_fits (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = fixture_forecast (sketch);
  SwLook look = sw_look_plain;
  SwClothGeometry geometry;

  sw_cloth_geometry (forecast, 640, 480, &look, &geometry);
  g_assert_cmpuint (geometry.columns, ==, 60);
  g_assert_cmpfloat_with_epsilon (geometry.cloth.x, 640 - geometry.cloth.x - geometry.cloth.width, 1e-9);
  g_assert_cmpfloat (geometry.cloth.y + geometry.cloth.height, <, 480);
  look.stitch_px = 40;
  look.first_row = 7;
  look.first_column = 3;
  sw_cloth_geometry (forecast, 640, 480, &look, &geometry);
  g_assert_cmpfloat (geometry.cloth.x, ==, 0);
  g_assert_cmpfloat_with_epsilon (geometry.cloth.y + geometry.cloth.height, 480, 1e-9);
  g_assert_cmpuint (geometry.columns, ==, 16);
}

static void
test_scan_round_trip (void)
{
  SwScanGeometry geometry;

  sw_scan_geometry (10, 600, 900, 320, &geometry);
  for (gsize width = 10; width <= 600; width++)
    g_assert_cmpuint (sw_scan_width_at (&geometry, sw_scan_to_x (&geometry, (double) width)), ==, width);
  g_assert_cmpuint (sw_scan_width_at (&geometry, -50), ==, 10);
  g_assert_cmpuint (sw_scan_width_at (&geometry, 5000), ==, 600);
  g_assert_cmpfloat (sw_scan_to_y (&geometry, 1), <, sw_scan_to_y (&geometry, 0.5));
  g_assert_cmpfloat (sw_scan_to_y (&geometry, 1), >=, geometry.plot.y);
  g_assert_cmpfloat_with_epsilon (sw_scan_to_y (&geometry, -0.2), geometry.plot.y + geometry.plot.height, 1e-9);
}

/* The highest within reach, by height; neither a lesser neighbour nor what has no pattern; of a plateau where colours stand straight up. */
static void
test_scan_peaks (void)
{
  SwPooling results[60];
  const SwPooling *peaks[SW_SCAN_MAX_PEAKS];

  for (gsize i = 0; i < 60; i++)
    results[i] = (SwPooling){ .width = 10 + i, .stack = 0.2, .verdict = SW_VERDICT_SCATTERS };
  results[10] = (SwPooling){ .width = 20, .stack = 0.7, .verdict = SW_VERDICT_DRIFTS, .stitch_step = 1 };
  results[12] = (SwPooling){ .width = 22, .stack = 0.8, .verdict = SW_VERDICT_COLUMNS };
  for (gsize i = 38; i <= 42; i++)
    results[i] = (SwPooling){ .width = 10 + i, .stack = 0.9, .verdict = SW_VERDICT_DRIFTS, .stitch_step = (int) i - 40 };
  results[40].verdict = SW_VERDICT_COLUMNS;
  g_assert_cmpuint (sw_scan_peaks (results, 60, 5, peaks), ==, 2);
  g_assert_cmpuint (peaks[0]->width, ==, 50);
  g_assert_cmpint (peaks[0]->verdict, ==, SW_VERDICT_COLUMNS);
  g_assert_cmpuint (peaks[1]->width, ==, 22);
  g_assert_cmpuint (sw_scan_peaks (results, 60, 1, peaks), ==, 5);
}

static void
test_strip_round_trip (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = fixture_forecast (sketch);
  SwStripGeometry geometry;

  sw_strip_geometry (forecast, 800, 90, &geometry);
  g_assert_cmpfloat_with_epsilon (sw_strip_to_px (&geometry, 0), geometry.strand.x, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_strip_to_px (&geometry, 120), geometry.strand.x + geometry.strand.width, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_strip_to_cm (&geometry, sw_strip_to_px (&geometry, 33.3)), 33.3, 1e-9);
  g_assert_cmpfloat (geometry.ruler.y + geometry.ruler.height, <=, 90);
}

/* Labels never crowd, small ticks never blur, and a step is whole in its unit. */
static void
test_ruler_steps (void)
{
  for (int inches = 0; inches < 2; inches++)
    for (double px = 0.4; px < 400; px *= 1.3)
      {
        const SwRulerSteps steps = sw_ruler_steps (px, inches);

        g_assert_cmpfloat (steps.step, >=, 1);
        g_assert_cmpfloat (steps.step, ==, floor (steps.step));
        g_assert_cmpint (steps.divisions, >=, 1);
        if (px > 1)
          g_assert_cmpfloat (steps.step * px, >=, 30);
        if (steps.divisions > 1 && px > 1)
          g_assert_cmpfloat (steps.step * px / steps.divisions, >=, 4);
      }
}

static SwBox
all_of (const SwPanGeometry *geometry)
{
  const double x0 = MIN (geometry->pan.x, geometry->skein.x), y0 = MIN (geometry->pan.y, geometry->skein.y);
  const double x1 = MAX (geometry->pan.x + geometry->pan.width, geometry->skein.x + geometry->skein.width);
  const double y1 = MAX (geometry->pan.y + geometry->pan.height, geometry->skein.y + geometry->skein.height);

  return (SwBox){ x0, y0, x1 - x0, y1 - y0 };
}

/* Zoomed, the place asked for is in the middle unless that would show more of what is around the pan than before; rulers stay in sight. */
static void
test_pan_zoom (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  SwPanGeometry fitted;

  sw_pan_geometry (sketch, 900, 500, &fitted);
  for (int trial = 0; trial < 200; trial++)
    {
      SwPanZoom zoom = { g_test_rand_double_range (1, 20), g_test_rand_double_range (-20, 90), g_test_rand_double_range (-20, 30) }, again;
      SwPanGeometry geometry, same;
      SwBox all;
      double x, y;

      sw_pan_geometry_zoomed (sketch, 900, 500, &zoom, &geometry);
      g_assert_cmpfloat_with_epsilon (geometry.scale, zoom.zoom * fitted.scale, 1e-9);
      g_assert_cmpfloat_with_epsilon (geometry.pan.width / geometry.pan.height, fitted.pan.width / fitted.pan.height, 1e-9);
      sw_pan_to_px (&geometry, zoom.x_cm, zoom.y_cm, &x, &y);
      g_assert_cmpfloat_with_epsilon (x, 450, 1e-6);
      g_assert_cmpfloat_with_epsilon (y, 250, 1e-6);

      all = all_of (&geometry);
      g_assert_true (all.width < 900 || (all.x <= fitted.pan.x + 1e-6 && all.x + all.width >= 900 - 16 - 1e-6));
      g_assert_true (all.height < 454 || (all.y <= 16 + 1e-6 && all.y + all.height >= 470 - 1e-6));
      g_assert_cmpfloat (geometry.ruler_x.y + geometry.ruler_x.height, <=, 500);
      g_assert_cmpfloat (geometry.ruler_y.x, >=, 0);
      g_assert_cmpfloat_with_epsilon (geometry.ruler_x.x, geometry.skein.x, 1e-9);
      g_assert_cmpfloat_with_epsilon (geometry.ruler_x.width, geometry.skein.width, 1e-9);

      again = zoom;
      sw_pan_geometry_zoomed (sketch, 900, 500, &again, &same);
      g_assert_cmpfloat_with_epsilon (same.skein.x, geometry.skein.x, 1e-6);
      g_assert_cmpfloat_with_epsilon (same.skein.y, geometry.skein.y, 1e-6);
    }
}

static void
test_pan_zoom_of_one_fits (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  SwPanZoom zoom = { 1, 3, 3 };
  SwPanGeometry fitted, geometry;

  sw_pan_geometry (sketch, 900, 500, &fitted);
  sw_pan_geometry_zoomed (sketch, 900, 500, &zoom, &geometry);
  g_assert_cmpmem (&fitted, sizeof fitted, &geometry, sizeof geometry);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/pan/round-trip", test_pan_round_trip);
  g_test_add_func ("/geometry/pan/to-scale", test_pan_to_scale);
  g_test_add_func ("/geometry/pan/hits", test_pan_hits);
  g_test_add_func ("/geometry/pan/outline-is-the-bath", test_pan_outline_is_the_bath);
  g_test_add_func ("/geometry/pan/zoom", test_pan_zoom);
  g_test_add_func ("/geometry/pan/zoom-of-one-fits", test_pan_zoom_of_one_fits);
  g_test_add_func ("/geometry/cloth/round-trip", test_cloth_round_trip);
  g_test_add_func ("/geometry/cloth/fits", test_cloth_fits);
  g_test_add_func ("/geometry/scan/round-trip", test_scan_round_trip);
  g_test_add_func ("/geometry/scan/peaks", test_scan_peaks);
  g_test_add_func ("/geometry/strip/round-trip", test_strip_round_trip);
  g_test_add_func ("/geometry/ruler/steps", test_ruler_steps);
  return g_test_run ();
}
