/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/desk/sw-pan-overlay.h"

#include <math.h>

/* What lies over the picture of the pan: pixels where they belong, and none elsewhere. */

#define WIDTH 700
#define HEIGHT 400

static const double accent[] = { 0.2, 0.5, 0.9 };

/* 75 x 10 cm with a splotch in its middle. */
static SwSketch *
one_splotch (void)
{
  static const SwPourPlace place = { SW_STEP_SPLOTCH, 37, 5, 20, 6, 25 };
  SwSketch *sketch = sw_sketch_new ();
  SwStep *step = sw_step_new (2, SW_STEP_SPLOTCH);

  sketch->reel.circumference_cm = 150;
  sketch->lay.runs = 2;
  sketch->lay.width_cm = 10;
  g_ptr_array_add (sketch->dyes, sw_dye_new (1));
  step->dye = 1;
  sw_pour_place_put (&place, step);
  g_ptr_array_add (sketch->steps, step);
  return sketch;
}

static SwPanOverlay
overlay_of (const SwSketch *sketch, SwPanGeometry *geometry, double zoom)
{
  SwPanZoom at = { zoom, 37, 5 };

  sw_pan_geometry_zoomed (sketch, WIDTH, HEIGHT, &at, geometry);
  return (SwPanOverlay){ .sketch = sketch, .geometry = geometry, .accent = { accent[0], accent[1], accent[2] } };
}

static cairo_surface_t *
painted (const SwPanOverlay *overlay)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);

  sw_pan_overlay_draw (cr, overlay, WIDTH, HEIGHT);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static guint32
pixel (cairo_surface_t *surface, double x, double y)
{
  const guint8 *line = cairo_image_surface_get_data (surface) + (int) y * cairo_image_surface_get_stride (surface);

  return ((const guint32 *) (gconstpointer) line)[(int) x];
}

static gsize
count_painted (cairo_surface_t *surface, int x0, int y0, int x1, int y1)
{
  gsize n = 0;

  for (int y = y0; y < y1; y++)
    for (int x = x0; x < x1; x++)
      n += pixel (surface, x, y) != 0 ? 1 : 0;
  return n;
}

/* Nothing selected, nothing in hand: an outline and a number, the rest is clear. */
static void
test_at_rest (void)
{
  g_autoptr (SwSketch) sketch = one_splotch ();
  SwPanGeometry geometry;
  const SwPanOverlay overlay = overlay_of (sketch, &geometry, 1);
  cairo_surface_t *surface = painted (&overlay);
  const SwPourPlace place = sw_pour_place (sketch->steps->pdata[0]);
  const SwExtent extent = sw_pour_extent (sketch, &place);
  double x0, y0, x1, y1;
  gsize around;

  sw_pan_to_px (&geometry, extent.x0, extent.y1, &x0, &y0);
  sw_pan_to_px (&geometry, extent.x1, extent.y0, &x1, &y1);
  around = count_painted (surface, (int) x0 - 14, (int) y0 - 14, (int) x1 + 14, (int) y1 + 14);
  g_assert_cmpuint (around, >, 200);
  g_assert_cmpuint (count_painted (surface, 0, 0, WIDTH, HEIGHT), ==, around);
  sw_pan_to_px (&geometry, place.x, place.y, &x0, &y0);
  g_assert_cmphex (pixel (surface, x0, y0), ==, 0);
  cairo_surface_destroy (surface);
}

/* Each handle is a white knob where a press would take it; the one in hand is filled. */
static void
test_handles (void)
{
  g_autoptr (SwSketch) sketch = one_splotch ();
  SwPanGeometry geometry;
  const guint selected[] = { 2 };
  SwPanOverlay overlay = overlay_of (sketch, &geometry, 1);
  const SwPourPlace place = sw_pour_place (sketch->steps->pdata[0]);
  const SwGrips grips = sw_pan_overlay_grips (&geometry);
  cairo_surface_t *surface;

  overlay.selected = selected;
  overlay.n_selected = 1;
  overlay.grips = 2;
  overlay.held = SW_HANDLE_END;
  surface = painted (&overlay);
  for (SwHandle handle = SW_HANDLE_START; handle < SW_N_HANDLES; handle++)
    {
      double x_cm, y_cm, x, y;

      sw_handle_place (sketch, &place, handle, &grips, &x_cm, &y_cm);
      g_assert_cmpint (sw_handle_at (sketch, &place, &grips, x_cm, y_cm), ==, handle);
      sw_pan_to_px (&geometry, x_cm, y_cm, &x, &y);
      g_assert_cmphex (pixel (surface, x, y), ==, handle == SW_HANDLE_END ? 0xff3380e6u : 0xffffffffu);
    }
  cairo_surface_destroy (surface);
}

/* Zoomed in, outlines end where the rulers begin, which lie over the pan then. */
static void
test_rulers_stay_clear (void)
{
  g_autoptr (SwSketch) sketch = one_splotch ();
  SwPanGeometry geometry;
  const guint selected[] = { 2 };
  SwPanOverlay overlay = overlay_of (sketch, &geometry, 8);
  SwBox room;
  cairo_surface_t *surface;

  overlay.selected = selected;
  overlay.n_selected = 1;
  room = sw_pan_room (&geometry, WIDTH, HEIGHT);
  g_assert_cmpfloat (room.x, >, 0);
  g_assert_cmpfloat (room.height, <, HEIGHT);
  surface = painted (&overlay);
  g_assert_cmpuint (count_painted (surface, (int) room.x + 1, 0, WIDTH, (int) room.height), >, 200);
  g_assert_cmpuint (count_painted (surface, 0, 0, (int) room.x, HEIGHT), ==, 0);
  g_assert_cmpuint (count_painted (surface, 0, (int) ceil (room.height), WIDTH, HEIGHT), ==, 0);
  cairo_surface_destroy (surface);
}

/* A guide runs through the pan at its line; a mark of the ruler needs none. */
static void
test_guides (void)
{
  static const SwSnapKind kinds[] = { SW_SNAP_NONE, SW_SNAP_RULER, SW_SNAP_EDGE, SW_SNAP_POUR };

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autoptr (SwSketch) sketch = one_splotch ();
      SwPanGeometry geometry;
      SwPanOverlay overlay = overlay_of (sketch, &geometry, 1);
      cairo_surface_t *surface;
      double x, y;

      overlay.guides[SW_AXIS_ALONG] = (SwSnapHit){ kinds[i], 0, 60 };
      surface = painted (&overlay);
      sw_pan_to_px (&geometry, 60, 0, &x, &y);
      for (double at = geometry.pan.y + 2; at < geometry.pan.y + geometry.pan.height - 2; at += 7)
        g_assert_cmpint (pixel (surface, x, at) != 0, ==, kinds[i] == SW_SNAP_EDGE || kinds[i] == SW_SNAP_POUR);
      cairo_surface_destroy (surface);
    }
}

/* The measure is near the hand, never under it, and wholly in the picture. */
static void
test_measure (void)
{
  static const double hands[][2] = { { 350, 200 }, { 2, 2 }, { 698, 398 }, { 350, 1 } };

  for (gsize i = 0; i < G_N_ELEMENTS (hands); i++)
    {
      g_autoptr (SwSketch) sketch = one_splotch ();
      SwPanGeometry geometry;
      SwPanOverlay overlay = overlay_of (sketch, &geometry, 1);
      cairo_surface_t *with, *without = painted (&overlay);
      int x0 = WIDTH, x1 = 0, y0 = HEIGHT, y1 = 0;

      overlay.measure = "12.5 cm wide";
      overlay.hand_x = hands[i][0];
      overlay.hand_y = hands[i][1];
      with = painted (&overlay);
      for (int y = 0; y < HEIGHT; y++)
        for (int x = 0; x < WIDTH; x++)
          if (pixel (with, x, y) != pixel (without, x, y))
            {
              x0 = MIN (x0, x);
              x1 = MAX (x1, x);
              y0 = MIN (y0, y);
              y1 = MAX (y1, y);
            }
      g_assert_cmpint (x1 - x0, >, 60);
      g_assert_cmpint (y1 - y0, <, 40);
      g_assert_cmpint (x0, >, 0);
      g_assert_cmpint (x1, <, WIDTH - 1);
      g_assert_true (hands[i][1] < y0 || hands[i][1] > y1);
      g_assert_cmpfloat (fabs ((y0 + y1) / 2.0 - hands[i][1]), <, 60);
      cairo_surface_destroy (with);
      cairo_surface_destroy (without);
    }
}

/* Nothing is drawn outside of the band that a frame paints anew, and the band is not simply the whole picture. */
static void
test_band (void)
{
  gsize whole = 0;

  for (int trial = 0; trial < 200; trial++)
    {
      g_autoptr (SwSketch) sketch = one_splotch ();
      SwStep *step = sketch->steps->pdata[0];
      const guint selected[] = { step->id };
      SwPanGeometry geometry;
      SwPanOverlay overlay = overlay_of (sketch, &geometry, g_test_rand_double_range (0.5, 3));
      cairo_surface_t *surface;
      SwBox band;

      step->kind = (SwStepKind[]){ SW_STEP_BAND, SW_STEP_SPLOTCH, SW_STEP_SPECKLE }[trial % 3];
      step->x_cm = g_test_rand_double_range (-5, 80);
      step->y_cm = g_test_rand_double_range (-5, 15);
      step->angle_deg = g_test_rand_double_range (-60, 60);
      overlay.selected = selected;
      overlay.n_selected = (gsize) trial % 2;
      overlay.grips = trial % 4 < 2 ? step->id : 0;
      overlay.measure = trial % 5 == 0 ? "12.5 cm × 3.0 cm" : NULL;
      overlay.hand_in = trial % 3 == 0;
      overlay.hand_x = g_test_rand_double_range (0, WIDTH);
      overlay.hand_y = g_test_rand_double_range (0, HEIGHT);
      overlay.guides[SW_AXIS_ALONG] = (SwSnapHit){ trial % 7 == 0 ? SW_SNAP_EDGE : SW_SNAP_NONE, 0, 20 };
      surface = painted (&overlay);
      band = sw_pan_overlay_band (&overlay, WIDTH, HEIGHT);
      g_assert_cmpuint (count_painted (surface, 0, 0, WIDTH, (int) band.y), ==, 0);
      g_assert_cmpuint (count_painted (surface, 0, (int) (band.y + band.height), WIDTH, HEIGHT), ==, 0);
      whole += band.height >= HEIGHT ? 1 : 0;
      cairo_surface_destroy (surface);
    }
  g_assert_cmpuint (whole, <, 100);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pan-overlay/at-rest", test_at_rest);
  g_test_add_func ("/pan-overlay/handles", test_handles);
  g_test_add_func ("/pan-overlay/rulers-stay-clear", test_rulers_stay_clear);
  g_test_add_func ("/pan-overlay/guides", test_guides);
  g_test_add_func ("/pan-overlay/measure", test_measure);
  g_test_add_func ("/pan-overlay/band", test_band);
  return g_test_run ();
}
