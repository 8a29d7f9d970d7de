/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw-fixture.h"

#include "draw/sw-cloth-geometry.h"
#include "draw/sw-stitch-drift.h"
#include "draw/sw-stitch-mask.h"

#include <math.h>

/* The cloth keeps the colours of the strand, at every size. */

/* Colours whose mean would suffer most from a wrong shade or a wrong average: sRGB codes, invented. */
static const struct
{
  const char *name;
  double r, g, b;
} colours[] = {
  { "brick", 178, 74, 52 },
  { "mustard", 214, 164, 48 },
  { "night", 24, 34, 70 },
  { "undyed", 232, 224, 206 },
  { "moss", 84, 104, 50 },
};

static SwXyz
xyz_of (gsize i)
{
  return sw_xyz_from_srgb ((SwSrgb){ colours[i].r / 255, colours[i].g / 255, colours[i].b / 255 });
}

typedef struct
{
  SwForecast *base;
  SwForecast forecast; /* with its own legs */
  float *xyz;
} Dyed;

/* A forecast whose legs take the colours @first and @second in runs of @run legs. */
static void
dyed_init (Dyed *dyed, gsize first, gsize second, gsize run)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  gsize n;

  dyed->base = fixture_forecast (sketch);
  dyed->forecast = *dyed->base;
  n = 2 * dyed->forecast.n_stitches;
  dyed->xyz = g_new (float, 3 * n);
  for (gsize i = 0; i < n; i++)
    {
      const SwXyz xyz = xyz_of (i / run % 2 == 0 ? first : second);

      dyed->xyz[i] = (float) xyz.x;
      dyed->xyz[n + i] = (float) xyz.y;
      dyed->xyz[2 * n + i] = (float) xyz.z;
    }
  dyed->forecast.leg_x = dyed->xyz;
  dyed->forecast.leg_y = dyed->xyz + n;
  dyed->forecast.leg_z = dyed->xyz + 2 * n;
  dyed->forecast.skeins[0] = (SwSkeinLegs){ dyed->forecast.n_stitches, dyed->xyz, dyed->xyz + n, dyed->xyz + 2 * n };
}

static void
dyed_clear (Dyed *dyed)
{
  g_free (dyed->xyz);
  sw_forecast_unref (dyed->base);
}

/* The mean over whole stitches, clear of the picture's edges. */
static SwLab
mean_of_side (const SwForecast *forecast, double stitch_px, gsize first_row, gboolean purl_side)
{
  SwLook look = sw_look_plain;
  SwClothGeometry geometry;
  SwLab mean;
  cairo_surface_t *surface;
  int rows, columns;
  SwBox box;

  look.stitch_px = stitch_px;
  look.first_row = first_row;
  look.first_column = 5;
  look.purl_side = purl_side;
  sw_cloth_geometry (forecast, 400, 400, &look, &geometry);
  surface = fixture_paint (sw_draw_cloth, forecast, 400, 400, &look);
  rows = MAX ((int) (300 / geometry.row), 1);
  columns = MAX ((int) (300 / geometry.stitch), 1);
  columns = MIN (columns, (int) geometry.columns - 1) & ~1; /* as many of both colours */
  sw_cloth_stitch_box (&geometry, first_row + (gsize) rows, 5, &box);
  mean = fixture_mean (surface, 0, (int) round (box.y), (int) round (columns * geometry.stitch), (int) round (rows * geometry.row));
  cairo_surface_destroy (surface);
  return mean;
}

static SwLab
mean_at (const SwForecast *forecast, double stitch_px, gsize first_row)
{
  return mean_of_side (forecast, stitch_px, first_row, FALSE);
}

static const double sizes[] = { 2, 3, 4, 5.3, 8, 12.5, 20, 31, 45, 60 };

/* CIEDE2000 under 1 at any size: no dyer sees less. */
static void
test_mean_colour (void)
{
  double worst = 0;

  for (gsize c = 0; c < G_N_ELEMENTS (colours); c++)
    {
      Dyed dyed;

      dyed_init (&dyed, c, c, 1);
      for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
        {
          const double difference = sw_ciede2000 (mean_at (&dyed.forecast, sizes[i], 12), sw_lab_from_xyz (xyz_of (c)));

          g_test_message ("%s at %g px: %.2f", colours[c].name, sizes[i], difference);
          g_assert_cmpfloat (difference, <, 1);
          worst = MAX (worst, difference);
        }
      dyed_clear (&dyed);
    }
  g_test_message ("worst: %.2f", worst);
}

/* All fabrics, from both sides. */
static void
test_fabrics (void)
{
  static const double few[] = { 3, 6, 15, 40, 80 };
  const SwXyz undyed = xyz_of (3), brick = xyz_of (0);

  for (int fabric = 0; fabric < SW_N_FABRICS; fabric++)
    for (int side = 0; side < 2; side++)
      for (gsize i = 0; i < 2 * G_N_ELEMENTS (few); i++)
        {
          const SwXyz xyz = i % 2 == 0 ? undyed : brick;
          Dyed dyed;
          SwSketch *own;
          double difference;

          dyed_init (&dyed, i % 2 == 0 ? 3 : 0, i % 2 == 0 ? 3 : 0, 1);
          own = sw_sketch_copy (dyed.forecast.sketch);
          own->cloth.fabric = (SwFabric) fabric;
          dyed.forecast.sketch = own;
          difference = sw_ciede2000 (mean_of_side (&dyed.forecast, few[i / 2], 12, side == 1), sw_lab_from_xyz (xyz));
          g_test_message ("fabric %d, side %d at %g px: %.2f", fabric, side, few[i / 2], difference);
          g_assert_cmpfloat (difference, <, 1);
          sw_sketch_free (own);
          dyed_clear (&dyed);
        }
}

/* Two colours leg by leg mix as light, not as codes, and alike at every size. */
static void
test_zooms_agree (void)
{
  Dyed dyed;
  const SwXyz a = xyz_of (2), b = xyz_of (3);
  const SwLab half = sw_lab_from_xyz ((SwXyz){ (a.x + b.x) / 2, (a.y + b.y) / 2, (a.z + b.z) / 2 });

  dyed_init (&dyed, 2, 3, 2);
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      const double difference = sw_ciede2000 (mean_at (&dyed.forecast, sizes[i], 12), half);

      g_test_message ("%g px: %.2f", sizes[i], difference);
      g_assert_cmpfloat (difference, <, 2);
    }
  dyed_clear (&dyed);
}

/* Below the size where legs are drawn, one colour is flat: nothing beats with the pixels. */
static void
test_no_moire (void)
{
  static const double small[] = { 0.37, 0.9, 1.7, 2.3, 3.1, 3.9 };
  Dyed dyed;

  dyed_init (&dyed, 0, 0, 1);
  for (gsize i = 0; i < G_N_ELEMENTS (small); i++)
    {
      SwLook look = sw_look_plain;
      SwClothGeometry geometry;
      cairo_surface_t *surface;
      SwXyz first;

      look.stitch_px = small[i];
      sw_cloth_geometry (&dyed.forecast, 200, 200, &look, &geometry);
      surface = fixture_paint (sw_draw_cloth, &dyed.forecast, 200, 200, &look);
      first = fixture_pixel (surface, 100, 100);
      for (int y = (int) ceil (MAX (geometry.cloth.y, 0)) + 1; y < (int) MIN (geometry.cloth.y + geometry.cloth.height, 200) - 1; y++)
        for (int x = (int) ceil (geometry.cloth.x) + 1; x < (int) MIN (geometry.cloth.x + geometry.cloth.width, 200) - 1; x++)
          g_assert_cmpfloat_with_epsilon (fixture_pixel (surface, x, y).y, first.y, 0.3);
      cairo_surface_destroy (surface);
    }
  dyed_clear (&dyed);
}

/* Wherever the picture begins and at any size, no pixel between stitches is left without yarn. */
static void
test_no_holes (void)
{
  Dyed dyed;
  const double whole = xyz_of (4).y;

  dyed_init (&dyed, 4, 4, 1);
  for (gsize first = 0; first < 5; first++)
    for (double px = 4; px <= 60; px *= 1.23)
      {
        SwLook look = sw_look_plain;
        SwClothGeometry geometry;
        cairo_surface_t *surface;
        const int from_x = first == 0 ? 150 : 0;
        int bottom;

        look.stitch_px = px;
        look.first_row = look.first_column = first;
        sw_cloth_geometry (&dyed.forecast, 300, 200, &look, &geometry);
        surface = fixture_paint (sw_draw_cloth, &dyed.forecast, 300, 200, &look);
        bottom = (int) MIN (floor (geometry.cloth.y + geometry.cloth.height), 200);
        g_test_message ("from row %" G_GSIZE_FORMAT " at %.2f px", first, px);
        for (int y = 0; y < bottom; y++)
          for (int x = from_x; x < from_x + (int) MIN (150, geometry.cloth.width / 2) - 1; x++)
            g_assert_cmpfloat (fixture_pixel (surface, x, y).y, >, 0.03 * whole);
        cairo_surface_destroy (surface);
      }
  dyed_clear (&dyed);
}

/* Every size from 2 to 60: on a light and on a dark ground the cloth's own pixels are the same, and those beside it are ground. */
static void
test_extents (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = NULL;

  sketch->cloth.width_stitches = 12;
  sketch->yarn.mass_g = 10;
  forecast = fixture_forecast (sketch);
  for (double px = 2; px <= 60; px += 1.45)
    {
      SwLook look = sw_look_plain;
      SwClothGeometry geometry;
      cairo_surface_t *light, *dark;
      int left, right, bottom;

      look.stitch_px = px;
      sw_cloth_geometry (forecast, 800, 120, &look, &geometry);
      light = fixture_paint (sw_draw_cloth, forecast, 800, 120, &look);
      look.dark = TRUE;
      dark = fixture_paint (sw_draw_cloth, forecast, 800, 120, &look);
      left = (int) floor (geometry.cloth.x);
      right = (int) ceil (geometry.cloth.x + geometry.cloth.width);
      bottom = (int) floor (geometry.cloth.y + geometry.cloth.height);
      g_assert_cmpfloat_with_epsilon (right - left, 12 * px, 2.01);
      for (int y = (int) ceil (MAX (geometry.cloth.y, 0)); y < bottom; y += 3)
        for (int x = 0; x < 800; x++)
          {
            const gboolean same = fixture_pixel (light, x, y).y == fixture_pixel (dark, x, y).y;

            if (x > left + 0.3 * px && x < right - 1 - 0.3 * px)
              g_assert_true (same);
            else if (x < left - 8 - 0.3 * px || x > right + 8 + 0.3 * px)
              g_assert_false (same);
          }
      cairo_surface_destroy (light);
      cairo_surface_destroy (dark);
    }
}

/* The light of a fabric's stitches is their cover and their dye sums to nothing, whatever the size and place in the pixel; they cover their cells and little more. */
static void
test_mask_balance (void)
{
  for (double px = 4; px < 90; px *= 1.37)
    for (int fabric = 0; fabric < SW_N_FABRICS; fabric++)
      {
        const SwStitchStyle style = { .stitch = px, .row = 0.7 * px, .length = 3.8, .diameter = 0.4, .fabric = (SwFabric) fabric, .purl_side = fabric % 2 == 1, .plies = 1 + fabric, .quarters = fabric };
        g_autoptr (SwStitchMask) mask = sw_stitch_mask_new (&style);
        const double x = g_test_rand_double_range (0, 50), y = g_test_rand_double_range (0, 50);
        double light = 0, cover = 0, dye = 0;

        for (gsize stitch = 0; stitch < 4; stitch++)
          {
            int px_x, px_y;
            const SwStitchPatch *patch = sw_stitch_mask_patch (mask, stitch / 2, stitch % 2, 0, x, y, 0, &px_x, &px_y);

            g_assert_cmpint (abs (px_x - (int) x), <=, 1);
            for (guint i = 0; i < patch->seen.lines[patch->height]; i++)
              {
                const SwStitchFragment *f = &patch->seen.fragments[i];

                light += (double) f->light;
                cover += (double) f->cover;
                dye += (double) f->dye;
                g_assert_true (f->light >= 0 && f->cover >= 0 && f->cover <= 1.0001f);
                g_assert_true (f->x >= 0 && f->x < patch->width && f->segment <= sw_stitch_mask_get_segments (mask));
              }
          }
        g_assert_cmpfloat_with_epsilon (light / cover, 1, 0.01);
        g_assert_cmpfloat_with_epsilon (dye / cover, 0, 1e-4);
        g_assert_cmpfloat (cover / (4 * px * style.row), >, 0.97);
        g_assert_cmpfloat (cover / (4 * px * style.row), <, 1.25);
      }
}

/* The left leg of an even row is the strand's second (worked from right to left); changing one leg changes its place, and the strand half way to its neighbours. */
static void
test_leg_place (void)
{
  Dyed dyed;
  SwLook look = sw_look_plain;
  SwClothGeometry geometry;
  cairo_surface_t *before, *after;
  const gsize row = 2, column = 3;
  gsize stitch, n;
  SwXyz other = xyz_of (2);
  SwBox box;

  dyed_init (&dyed, 3, 3, 1);
  n = 2 * dyed.forecast.n_stitches;
  look.stitch_px = 20;
  before = fixture_paint (sw_draw_cloth, &dyed.forecast, 300, 200, &look);
  stitch = sw_layout_stitch (&dyed.forecast.layout, row, column);
  g_assert_false (sw_layout_rightward (&dyed.forecast.layout, row));
  dyed.xyz[2 * stitch + 1] = (float) other.x;
  dyed.xyz[n + 2 * stitch + 1] = (float) other.y;
  dyed.xyz[2 * n + 2 * stitch + 1] = (float) other.z;
  after = fixture_paint (sw_draw_cloth, &dyed.forecast, 300, 200, &look);

  sw_cloth_geometry (&dyed.forecast, 300, 200, &look, &geometry);
  sw_cloth_stitch_box (&geometry, row, column, &box);
  g_assert_cmpfloat (fixture_pixel (after, (int) (box.x + 0.25 * box.width), (int) (box.y + 0.4 * box.height)).y, <, 10);
  for (int y = 0; y < 200; y++)
    for (int x = 0; x < 300; x++)
      if (fixture_pixel (before, x, y).y != fixture_pixel (after, x, y).y)
        {
          g_assert_cmpfloat (x, >=, box.x - 0.7 * box.width);
          g_assert_cmpfloat (x, <=, box.x + 1.3 * box.width);
          g_assert_cmpfloat (y, >=, box.y - 0.8 * box.height);
          g_assert_cmpfloat (y, <=, box.y + 1.8 * box.height);
        }
  cairo_surface_destroy (before);
  cairo_surface_destroy (after);
  dyed_clear (&dyed);
}

/* The purl side is the mirror image of the stitches: what changes with one of them lies as far from the right as it lay from the left. */
static void
test_sides (void)
{
  Dyed dyed;
  const SwXyz other = xyz_of (2);
  const gsize row = 3, column = 4;
  SwLook look = sw_look_plain;
  SwClothGeometry geometry;
  double middle[2];
  gsize stitch, n;

  dyed_init (&dyed, 3, 3, 1);
  dyed.forecast.layout.width = 13;
  n = 2 * dyed.forecast.n_stitches;
  look.stitch_px = 20;
  stitch = sw_layout_stitch (&dyed.forecast.layout, row, column);
  sw_cloth_geometry (&dyed.forecast, 400, 200, &look, &geometry);
  for (int side = 0; side < 2; side++)
    {
      cairo_surface_t *before, *after;
      double sum = 0, weighed = 0;

      look.purl_side = side == 1;
      for (gsize plane = 0; plane < 3; plane++)
        dyed.xyz[plane * n + 2 * stitch] = dyed.xyz[plane * n + 2 * stitch + 1] = dyed.xyz[plane * n];
      before = fixture_paint (sw_draw_cloth, &dyed.forecast, 400, 200, &look);
      for (gsize leg = 0; leg < 2; leg++)
        {
          dyed.xyz[2 * stitch + leg] = (float) other.x;
          dyed.xyz[n + 2 * stitch + leg] = (float) other.y;
          dyed.xyz[2 * n + 2 * stitch + leg] = (float) other.z;
        }
      after = fixture_paint (sw_draw_cloth, &dyed.forecast, 400, 200, &look);
      for (int y = 0; y < 200; y++)
        for (int x = 0; x < 400; x++)
          {
            const double change = fabs (fixture_pixel (before, x, y).y - fixture_pixel (after, x, y).y);

            sum += change;
            weighed += change * (x + 0.5);
          }
      g_assert_cmpfloat (sum, >, 100);
      middle[side] = weighed / sum;
      cairo_surface_destroy (before);
      cairo_surface_destroy (after);
    }
  g_assert_cmpfloat_with_epsilon (middle[0], geometry.cloth.x + (4 + 0.5) * 20, 3);
  g_assert_cmpfloat_with_epsilon (middle[1], geometry.cloth.x + (13 - 1 - 4 + 0.5) * 20, 3);
  dyed_clear (&dyed);
}

/* Stitches wander, but not far, not away from their neighbours, and not all to one side. */
static void
test_drift (void)
{
  double sum[2] = { 0 }, squares = 0, most = 0, apart = 0;

  for (gsize row = 0; row < 200; row++)
    for (gsize column = 0; column < 200; column++)
      {
        double at[2], beside[2], above[2];

        sw_stitch_drift (row, column, &at[0], &at[1]);
        sw_stitch_drift (row, column + 1, &beside[0], &beside[1]);
        sw_stitch_drift (row + 1, column, &above[0], &above[1]);
        for (int axis = 0; axis < 2; axis++)
          {
            sum[axis] += at[axis];
            squares += at[axis] * at[axis];
            most = MAX (most, fabs (at[axis]));
            apart = MAX (apart, MAX (fabs (beside[axis] - at[axis]), fabs (above[axis] - at[axis])));
          }
      }
  g_test_message ("%.3f at most, %.3f from a neighbour, %.3f in the mean square", most, apart, sqrt (squares / 80000));
  g_assert_cmpfloat (most, <=, SW_STITCH_DRIFT);
  g_assert_cmpfloat (apart, <, 0.06); /* less than the slack under a neighbour */
  g_assert_cmpfloat (sqrt (squares / 80000), >, 0.02);
  for (int axis = 0; axis < 2; axis++)
    g_assert_cmpfloat (fabs (sum[axis] / 40000), <, 0.005);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cloth/mean-colour", test_mean_colour);
  g_test_add_func ("/cloth/fabrics", test_fabrics);
  g_test_add_func ("/cloth/sides", test_sides);
  g_test_add_func ("/cloth/zooms-agree", test_zooms_agree);
  g_test_add_func ("/cloth/no-moire", test_no_moire);
  g_test_add_func ("/cloth/no-holes", test_no_holes);
  g_test_add_func ("/cloth/extents", test_extents);
  g_test_add_func ("/cloth/mask-balance", test_mask_balance);
  g_test_add_func ("/cloth/leg-place", test_leg_place);
  g_test_add_func ("/cloth/drift", test_drift);
  return g_test_run ();
}
