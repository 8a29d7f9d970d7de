/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw-fixture.h"

#include "draw/sw-canvas.h"
#include "draw/sw-laid.h"
#include "draw/sw-linear.h"
#include "draw/sw-liquor.h"
#include "draw/sw-relief.h"
#include "draw/sw-shadow.h"
#include "draw/sw-wet.h"

#include <math.h>

#define MOST_WET 3.0 /* CIEDE2000: gloss lightens the darkest yarns by most; the largest seen is 2.6 */

/* The laid skein as a camera sees it: its colours, its outline. */

/* Yarns from nearly white to nearly black, grey and vivid: CIELAB, own inventions. */
static const double yarns[][3] = { { 92, 0, 8 }, { 89, 0.5, 9 }, { 70, -30, 20 }, { 55, 60, 25 }, { 45, 15, -45 }, { 75, 10, 75 }, { 20, 8, -12 }, { 10, 0, 0 } };

static SwForecast *
plain_forecast (const double *lab)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);

  sketch->yarn.undyed = (SwSample){ .kind = SW_SAMPLE_LAB, .numbers = { lab[0], lab[1], lab[2] } };
  return fixture_forecast (sketch);
}

static cairo_surface_t *
raster_laid (SwLaid *laid, const SwSketch *sketch, int nx)
{
  const int ny = (int) (nx * sw_sketch_lay_width (sketch) / sw_sketch_lay_length (sketch));
  const SwFaceWindow window = { nx, ny, 0, 0, nx, ny };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, nx, ny);

  sw_laid_raster (laid, &window, cairo_image_surface_get_stride (surface) / 4, (guint32 *) (gpointer) cairo_image_surface_get_data (surface));
  cairo_surface_mark_dirty (surface);
  return surface;
}

/* A flat bundle, and a rope that goes to and fro. */
static void
test_colour (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (yarns); i++)
    for (int rope = 0; rope <= (i % 2 == 0); rope++)
      {
        const double *lab = yarns[i];
        g_autoptr (SwSketch) sketch = test_bare_sketch (rope ? 4 : 2);
        g_autoptr (SwForecast) forecast = NULL;
        g_autoptr (SwLaid) laid = NULL;

        sketch->yarn.undyed = (SwSample){ .kind = SW_SAMPLE_LAB, .numbers = { lab[0], lab[1], lab[2] } };
        sketch->lay.folding = rope ? SW_FOLDING_SIDE_BY_SIDE : SW_FOLDING_STACKED;
        forecast = fixture_forecast (sketch);
        laid = sw_laid_new (forecast, FALSE);
        for (int nx = 300; nx <= 1500; nx *= 5)
          {
            cairo_surface_t *surface = raster_laid (laid, forecast->sketch, nx);
            const double off = sw_ciede2000 (fixture_opaque_mean (surface), fixture_strand_colour (forecast));

            g_test_message ("L* %.0f at %d px: %.2f", lab[0], nx, off);
            g_assert_cmpfloat (off, <, 2);
            cairo_surface_destroy (surface);
          }
      }
}

/* Wet yarn has the colour that water makes of it, but for a little gloss. */
static void
test_wet (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (yarns); i++)
    {
      g_autoptr (SwSketch) sketch = test_bare_sketch (2);
      g_autoptr (SwForecast) forecast = NULL;
      g_autoptr (SwLaid) laid = NULL;
      cairo_surface_t *surface;
      SwLinear linear;
      SwSrgb dry;
      SwLab wet, drawn;
      double off;

      sketch->yarn.undyed = (SwSample){ .kind = SW_SAMPLE_LAB, .numbers = { yarns[i][0], yarns[i][1], yarns[i][2] } };
      sketch->listing.wet = TRUE;
      forecast = fixture_forecast (sketch);
      laid = sw_laid_new (forecast, FALSE);
      surface = raster_laid (laid, sketch, 700);
      drawn = fixture_opaque_mean (surface);
      sw_linear_init (&linear);
      dry = sw_srgb_from_xyz (sw_xyz_from_lab (fixture_strand_colour (forecast)));
      {
        const float light[] = { sw_wet (linear.decode[lrint (255 * CLAMP (dry.r, 0, 1))]), sw_wet (linear.decode[lrint (255 * CLAMP (dry.g, 0, 1))]), sw_wet (linear.decode[lrint (255 * CLAMP (dry.b, 0, 1))]) };
        const guint32 pixel = sw_linear_pixel (&linear, light);

        wet = sw_lab_from_xyz (sw_xyz_from_srgb ((SwSrgb){ (pixel >> 16 & 0xff) / 255.0, (pixel >> 8 & 0xff) / 255.0, (pixel & 0xff) / 255.0 }));
      }
      off = sw_ciede2000 (drawn, wet);
      g_test_message ("L* %.0f: %.2f", yarns[i][0], off);
      g_assert_cmpfloat (off, <, MOST_WET);
      g_assert_cmpfloat (drawn.l, <, yarns[i][0] + 1);
      cairo_surface_destroy (surface);
    }
}

/* Spent liquor has no hue, lies round the yarn and leaves the rest of the pan dry, but for drops. */
static void
test_liquor (void)
{
  enum
  {
    PER_CM = 16,
    ROOM = 5,
  };

  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  g_autoptr (SwForecast) forecast = fixture_forecast (sketch);
  g_autoptr (SwLaid) laid = sw_laid_new (forecast, FALSE);
  const SwRelief *relief = sw_laid_get_relief (laid);
  const int width = (int) ((sw_sketch_lay_length (sketch) + 2 * ROOM) * PER_CM), height = (int) ((sw_sketch_lay_width (sketch) + 2 * ROOM) * PER_CM);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);
  SwCanvas canvas;
  guint32 plain;
  int far_off = 0, far_wet = 0, edge = 0, edge_wet = 0;

  sw_canvas_begin (&canvas, cr, width, height, &sw_look_plain);
  plain = ((const guint32 *) (gconstpointer) cairo_image_surface_get_data (surface))[0];
  sw_liquor_draw (&canvas, relief, &(SwBox){ 0, 0, width, height }, ROOM * PER_CM, ROOM * PER_CM, PER_CM, 3);
  sw_canvas_end (&canvas);
  cairo_surface_flush (surface);
  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      {
        const guint32 pixel = ((const guint32 *) (gconstpointer) (cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface)))[x];
        const int i = (int) lrint ((x + 0.5 - ROOM * PER_CM) / PER_CM / (double) relief->step - (double) (relief->left / relief->step)), j = (int) lrint ((y + 0.5 - ROOM * PER_CM) / PER_CM / (double) relief->step - (double) (relief->top / relief->step));
        const gboolean wet = (pixel & 0xffffff) != (plain & 0xffffff);

        g_assert_cmpuint (pixel >> 16 & 0xff, ==, pixel >> 8 & 0xff);
        g_assert_cmpuint (pixel >> 8 & 0xff, ==, pixel & 0xff);
        if (y < 2 * PER_CM || x < 2 * PER_CM || y >= height - 2 * PER_CM || x >= width - 2 * PER_CM)
          {
            far_off++;
            far_wet += wet;
          }
        else if (i > 0 && j > 0 && i + 1 < relief->width && j + 1 < relief->height && relief->heights[j * relief->width + i] > 0.05f)
          {
            edge++;
            edge_wet += wet;
          }
      }
  g_test_message ("wet: %d of %d far off, %d of %d beneath yarn", far_wet, far_off, edge_wet, edge);
  g_assert_cmpint (far_wet, <, far_off / 50);
  g_assert_cmpint (edge_wet, >, edge * 95 / 100);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static gboolean
is_yarn (cairo_surface_t *surface, int x, int y)
{
  const guint8 *line = cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface);

  return x >= 0 && y >= 0 && x < cairo_image_surface_get_width (surface) && y < cairo_image_surface_get_height (surface) && ((const guint32 *) (gconstpointer) line)[x] >> 24 >= 128;
}

/* How many separate things are drawn; pixels that touch at a corner belong together. */
static int
count_pieces (cairo_surface_t *surface)
{
  const int width = cairo_image_surface_get_width (surface), height = cairo_image_surface_get_height (surface);
  g_autofree gboolean *seen = g_new0 (gboolean, (gsize) (width * height));
  g_autofree int *stack = g_new (int, (gsize) (width * height));
  int pieces = 0;

  for (int start = 0; start < width * height; start++)
    {
      int n = 0;

      if (seen[start] || !is_yarn (surface, start % width, start / width))
        continue;
      pieces++;
      seen[start] = TRUE;
      stack[n++] = start;
      while (n > 0)
        {
          const int at = stack[--n];

          for (int k = 0; k < 9; k++)
            {
              const int x = at % width + k % 3 - 1, y = at / width + k / 3 - 1;

              if (!is_yarn (surface, x, y) || seen[y * width + x])
                continue;
              seen[y * width + x] = TRUE;
              stack[n++] = y * width + x;
            }
        }
    }
  return pieces;
}

/* A skein is one thing: where a tie pulls it in nothing stays behind. */
static void
test_whole (void)
{
  static const struct
  {
    gint64 runs;
    SwFolding folding;
    double width_cm;
  } lays[] = {
    { 2, SW_FOLDING_STACKED, 8 },
    { 2, SW_FOLDING_STACKED, 20 },
    { 4, SW_FOLDING_STACKED, 8 },
    { 1, SW_FOLDING_STACKED, 8 },
    { 2, SW_FOLDING_SIDE_BY_SIDE, 10 },
    { 8, SW_FOLDING_SIDE_BY_SIDE, 24 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (lays); i++)
    {
      g_autoptr (SwSketch) sketch = test_bare_sketch (lays[i].runs);
      g_autoptr (SwForecast) forecast = NULL;
      g_autoptr (SwLaid) laid = NULL;

      sketch->lay.folding = lays[i].folding;
      sketch->lay.width_cm = lays[i].width_cm;
      forecast = fixture_forecast (sketch);
      laid = sw_laid_new (forecast, FALSE);
      for (int nx = 500; nx <= 1600; nx += 1100)
        {
          cairo_surface_t *surface = raster_laid (laid, sketch, nx);

          g_assert_cmpint (count_pieces (surface), ==, 1);
          cairo_surface_destroy (surface);
        }
    }
}

/* A folded loop has round ends, at which no two wraps turn at one place; an opened ring is cut straight. */
static void
test_ends (void)
{
  for (gint64 runs = 1; runs <= 2; runs++)
    {
      g_autoptr (SwSketch) sketch = test_bare_sketch (runs);
      g_autoptr (SwForecast) forecast = fixture_forecast (sketch);
      g_autoptr (SwLaid) laid = sw_laid_new (forecast, FALSE);
      const int nx = 1500;
      cairo_surface_t *surface = raster_laid (laid, sketch, nx);
      const int ny = cairo_image_surface_get_height (surface), near_end = (int) (0.8 * nx / sw_sketch_lay_length (sketch));
      int wide = 0, at_end = 0, steps = 0, last = -1;

      for (int y = 0; y < ny; y++)
        {
          int x = 0;

          wide += is_yarn (surface, nx / 2, y);
          at_end += is_yarn (surface, near_end, y);
          while (x < nx && !is_yarn (surface, x, y))
            x++;
          if (y > ny / 3 && y < 2 * ny / 3)
            steps += x != last;
          last = x;
        }
      g_assert_cmpint (wide, >, ny * 85 / 100);
      if (runs == 1)
        g_assert_cmpint (at_end, >, wide * 95 / 100);
      else
        {
          g_assert_cmpint (at_end, <, wide * 85 / 100);
          g_assert_cmpint (at_end, >, wide * 3 / 10);
          g_assert_cmpint (steps, >, ny / 12);
        }
      cairo_surface_destroy (surface);
    }
}

/* Wraps run along the picture: a pixel is more like its neighbour in the line than like the one after it, also where wraps are about as fine as pixels. */
static void
test_streaks (void)
{
  g_autoptr (SwForecast) forecast = plain_forecast (yarns[0]);
  g_autoptr (SwLaid) laid = sw_laid_new (forecast, FALSE);

  for (int nx = 320; nx <= 1100; nx += 130)
    {
      cairo_surface_t *surface = raster_laid (laid, forecast->sketch, nx);
      const int ny = cairo_image_surface_get_height (surface);
      double next = 0, after = 0;
      int odd = 0, n = 0;

      for (int y = ny / 4; y < 3 * ny / 4; y++)
        for (int x = nx / 8; x < 7 * nx / 8; x++)
          {
            const double here = fixture_pixel (surface, x, y).y, to_next = here - fixture_pixel (surface, x + 1, y).y, to_after = here - fixture_pixel (surface, x + 2, y).y;

            next += fabs (to_next);
            after += fabs (to_after);
            odd += fabs (to_next) > 8 && fabs (to_after) < 2;
            n++;
          }
      g_test_message ("%d px: %.3f to the next, %.3f to the one after, %d of %d dotted", nx, next / n, after / n, odd, n);
      g_assert_cmpfloat (next, <, 0.9 * after);
      g_assert_cmpint (odd, <, n / 200);
      cairo_surface_destroy (surface);
    }
}

/* A part of the laid skein is that part of the whole. */
static void
test_part (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = fixture_forecast (sketch);
  g_autoptr (SwLaid) laid = sw_laid_new (forecast, FALSE);
  cairo_surface_t *whole = raster_laid (laid, sketch, 900);
  const int ny = cairo_image_surface_get_height (whole);
  const SwFaceWindow window = { 900, ny, 133, 21, 410, 50 };
  g_autofree guint32 *part = g_new (guint32, 410 * 50);
  int unlike = 0;

  sw_laid_raster (laid, &window, 410, part);
  /* Colours are taken from a little aside, which may be beyond the edge. */
  for (int j = 4; j < 46; j++)
    for (int i = 10; i < 400; i++)
      {
        const guint8 *line = cairo_image_surface_get_data (whole) + (ny - 21 - 50 + j) * cairo_image_surface_get_stride (whole);

        unlike += part[j * 410 + i] != ((const guint32 *) (gconstpointer) line)[133 + i];
      }
  g_test_message ("%d pixels unlike", unlike);
  g_assert_cmpint (unlike, <=, 390 * 42 / 500);
  cairo_surface_destroy (whole);
}

/* Two bars whose edges waver lie beside each other: the gap between them is in shade from end to end, and evenly so. */
static void
test_gap (void)
{
  enum
  {
    WIDTH = 800,
    HEIGHT = 300,
  };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);
  int lightest = 0, darkest = 255, beside;
  SwCanvas canvas;
  SwRelief relief;

  sw_relief_init (&relief, 0, 0, WIDTH / 40.0, HEIGHT / 40.0, 0.11, 0);
  for (int j = 0; j < relief.height; j++)
    for (int i = 0; i < relief.width; i++)
      {
        const double x = (double) (relief.left + relief.step * (float) i), y = (double) (relief.top + relief.step * (float) j), off = y - HEIGHT / 80.0;

        if (x > 2 && x < WIDTH / 40.0 - 2 && fabs (off) > 0.14 + 0.09 * sin (2 * x) && fabs (off) < 2)
          relief.heights[j * relief.width + i] = 1.2f;
      }
  sw_relief_light (&relief, 2.5);
  sw_canvas_begin (&canvas, cr, WIDTH, HEIGHT, &sw_look_plain);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  sw_shadow_draw (&relief, &canvas, 0, 0, 40);
  sw_canvas_end (&canvas);
  cairo_surface_flush (surface);
  for (int x = 4 * 40; x < WIDTH - 4 * 40; x++)
    {
      const int grey = cairo_image_surface_get_data (surface)[HEIGHT / 2 * cairo_image_surface_get_stride (surface) + 4 * x];

      lightest = MAX (lightest, grey);
      darkest = MIN (darkest, grey);
    }
  beside = cairo_image_surface_get_data (surface)[20 * cairo_image_surface_get_stride (surface) + 4 * (WIDTH / 2)];
  g_test_message ("gap from %d to %d, beside the bars %d", darkest, lightest, beside);
  g_assert_cmpint (lightest - darkest, <, 25);
  g_assert_cmpint (lightest, <, beside - 40);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  sw_relief_clear (&relief);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/laid/colour", test_colour);
  g_test_add_func ("/laid/wet", test_wet);
  g_test_add_func ("/laid/liquor", test_liquor);
  g_test_add_func ("/laid/whole", test_whole);
  g_test_add_func ("/laid/gap", test_gap);
  g_test_add_func ("/laid/ends", test_ends);
  g_test_add_func ("/laid/streaks", test_streaks);
  g_test_add_func ("/laid/part", test_part);
  return g_test_run ();
}
