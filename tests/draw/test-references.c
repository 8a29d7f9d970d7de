/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw-fixture.h"

#include <glib/gstdio.h>
#include <stdlib.h>

/*
 * Pictures against those kept in tests/draw/references, by eye: both are
 * averaged over squares of 4 pixels, as light, and the squares' CIEDE2000
 * told. A rounding elsewhere moves a pixel, a wrong stitch a square.
 *
 * A failure leaves PICTURE-painted.png, PICTURE-kept.png and
 * PICTURE-difference.png in references-failed beside the test program. With
 * STRANDWISE_KEEP_REFERENCES=1 the pictures painted now are kept instead:
 * look at each before committing it.
 */

#define SQUARE 4
#define MOST_MEAN 0.5 /* half of what an eye sees between two patches side by side */
#define MOST_FAR 5.0  /* of all but one square in a hundred */
#define WIDTH 240
#define HEIGHT 160

static const struct
{
  const char *name;
  FixtureDraw draw;
  SwFabric fabric;
  gboolean purl_side;
  double stitch_px;
  SwItem item;
  SwVessel vessel;
  gboolean wet;
  SwArrangement arrangement;
} scenes[] = {
  { "stockinette-6", sw_draw_cloth, SW_FABRIC_STOCKINETTE, FALSE, 6, 0 },
  { "stockinette-24", sw_draw_cloth, SW_FABRIC_STOCKINETTE, FALSE, 24, 0 },
  { "stockinette-70", sw_draw_cloth, SW_FABRIC_STOCKINETTE, FALSE, 70, 0 },
  { "stockinette-purl-side", sw_draw_cloth, SW_FABRIC_STOCKINETTE, TRUE, 24, 0 },
  { "garter", sw_draw_cloth, SW_FABRIC_GARTER, FALSE, 24, 0 },
  { "seed", sw_draw_cloth, SW_FABRIC_SEED, FALSE, 24, 0 },
  { "rib", sw_draw_cloth, SW_FABRIC_RIB, FALSE, 24, 0 },
  { "sock", sw_draw_item, SW_FABRIC_STOCKINETTE, FALSE, 0, SW_ITEM_SOCK },
  { "hat", sw_draw_item, SW_FABRIC_STOCKINETTE, FALSE, 0, SW_ITEM_HAT },
  { "mitten", sw_draw_item, SW_FABRIC_GARTER, FALSE, 0, SW_ITEM_MITTEN },
  { "skein", sw_draw_skein },
  { "skein-wet", sw_draw_skein, .vessel = SW_VESSEL_STEEL, .wet = TRUE },
  { "hank", sw_draw_hank },
  { "listing-hanks", sw_draw_listing, .arrangement = SW_ARRANGEMENT_HANKS },
  { "listing-whole", sw_draw_listing, .arrangement = SW_ARRANGEMENT_WHOLE },
};

static cairo_surface_t *
paint_scene (gsize i)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = NULL;
  SwLook look = sw_look_plain;

  sketch->cloth.fabric = scenes[i].fabric;
  sketch->listing.wet = scenes[i].wet;
  sketch->listing.arrangement = scenes[i].arrangement;
  sketch->listing.palette = FALSE; /* letters are the machine's */
  forecast = fixture_forecast (sketch);
  look.stitch_px = scenes[i].stitch_px;
  look.purl_side = scenes[i].purl_side;
  look.item = scenes[i].item;
  look.vessel = scenes[i].vessel;
  return fixture_paint (scenes[i].draw, forecast, WIDTH, HEIGHT, &look);
}

static int
compare_doubles (const void *a, const void *b)
{
  const double p = *(const double *) a, q = *(const double *) b;

  return p < q ? -1 : p > q;
}

/* @map: (nullable): gets each square's difference as a grey, white from MOST_FAR on. Returns: the mean */
static double
compare (cairo_surface_t *a, cairo_surface_t *b, double *far, cairo_surface_t *map)
{
  double differences[WIDTH / SQUARE * (HEIGHT / SQUARE)], sum = 0;
  const gsize n = G_N_ELEMENTS (differences);
  gsize k = 0;

  for (int y = 0; y < HEIGHT; y += SQUARE)
    for (int x = 0; x < WIDTH; x += SQUARE, k++)
      {
        differences[k] = sw_ciede2000 (fixture_mean (a, x, y, SQUARE, SQUARE), fixture_mean (b, x, y, SQUARE, SQUARE));
        sum += differences[k];
        if (map != NULL)
          {
            cairo_t *cr = cairo_create (map);
            const double grey = MIN (differences[k] / MOST_FAR, 1);

            cairo_set_source_rgb (cr, grey, grey, grey);
            cairo_rectangle (cr, x, y, SQUARE, SQUARE);
            cairo_fill (cr);
            cairo_destroy (cr);
          }
      }
  qsort (differences, n, sizeof (double), compare_doubles);
  *far = differences[n - 1 - n / 100];
  return sum / (double) n;
}

static void
leave_behind (const char *name, const char *what, cairo_surface_t *surface)
{
  g_autofree char *dir = g_test_build_filename (G_TEST_BUILT, "references-failed", NULL);
  g_autofree char *file = g_strdup_printf ("%s/%s-%s.png", dir, name, what);

  g_mkdir_with_parents (dir, 0755);
  cairo_surface_write_to_png (surface, file);
  g_test_message ("see %s", file);
}

static void
test_scene (gconstpointer data)
{
  const gsize i = GPOINTER_TO_SIZE (data);
  g_autofree char *name = g_strdup_printf ("%s.png", scenes[i].name);
  g_autofree char *file = g_test_build_filename (G_TEST_DIST, "draw", "references", name, NULL);
  cairo_surface_t *painted = paint_scene (i), *kept, *map;
  double mean, far;

  if (g_getenv ("STRANDWISE_KEEP_REFERENCES") != NULL)
    g_assert_cmpint (cairo_surface_write_to_png (painted, file), ==, CAIRO_STATUS_SUCCESS);
  kept = cairo_image_surface_create_from_png (file);
  g_assert_cmpint (cairo_surface_status (kept), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpint (cairo_image_surface_get_width (kept), ==, WIDTH);
  g_assert_cmpint (cairo_image_surface_get_height (kept), ==, HEIGHT);
  map = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  mean = compare (painted, kept, &far, map);
  g_test_message ("%s: %.2f in the mean, all but one in a hundred squares within %.2f", scenes[i].name, mean, far);
  if (mean > MOST_MEAN || far > MOST_FAR)
    {
      leave_behind (scenes[i].name, "painted", painted);
      leave_behind (scenes[i].name, "kept", kept);
      leave_behind (scenes[i].name, "difference", map);
    }
  g_assert_cmpfloat (mean, <=, MOST_MEAN);
  g_assert_cmpfloat (far, <=, MOST_FAR);
  cairo_surface_destroy (painted);
  cairo_surface_destroy (kept);
  cairo_surface_destroy (map);
}

/* The measure tells any two of the pictures apart, and a picture that lies a stitch aside. */
static void
test_measure (void)
{
  cairo_surface_t *surfaces[G_N_ELEMENTS (scenes)], *aside;
  double far;
  cairo_t *cr;

  for (gsize i = 0; i < G_N_ELEMENTS (scenes); i++)
    surfaces[i] = paint_scene (i);
  for (gsize i = 0; i < G_N_ELEMENTS (scenes); i++)
    for (gsize j = 0; j < G_N_ELEMENTS (scenes); j++)
      if (i != j)
        g_assert_cmpfloat (compare (surfaces[i], surfaces[j], &far, NULL), >, 2 * MOST_MEAN);
  aside = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cr = cairo_create (aside);
  cairo_set_source_surface (cr, surfaces[1], 24, 0);
  cairo_set_operator (cr, CAIRO_OPERATOR_SOURCE);
  cairo_paint (cr);
  cairo_destroy (cr);
  cairo_surface_flush (aside);
  g_assert_cmpfloat (compare (surfaces[1], aside, &far, NULL), >, MOST_MEAN);
  cairo_surface_destroy (aside);
  for (gsize i = 0; i < G_N_ELEMENTS (scenes); i++)
    cairo_surface_destroy (surfaces[i]);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/references/measure", test_measure);
  for (gsize i = 0; i < G_N_ELEMENTS (scenes); i++)
    {
      g_autofree char *path = g_strdup_printf ("/references/%s", scenes[i].name);

      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_scene);
    }
  return g_test_run ();
}
