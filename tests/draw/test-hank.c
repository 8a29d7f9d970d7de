/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hank-fixture.h"

#include "draw/sw-exposure.h"
#include "draw/sw-hank-shape.h"
#include "draw/sw-wet.h"
#include "sketch/sw-chance.h"

#include <math.h>

/* The hank as a camera sees it: its colours, its shape, its light. */

/* Yarns from nearly white to nearly black, grey and vivid: CIELAB, own inventions. */
static const double yarns[][3] = { { 92, 0, 8 }, { 89, 0.5, 9 }, { 70, -30, 20 }, { 55, 60, 25 }, { 45, 15, -45 }, { 75, 10, 75 }, { 20, 8, -12 }, { 10, 0, 0 } };

static void
test_hank_colour (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (yarns); i++)
    {
      g_autoptr (SwForecast) forecast = plain_forecast (yarns[i]);
      g_autoptr (SwHank) hank = laid_hank (forecast, 0, -0.7);

      for (double px = 8; px <= 40; px *= 2.2)
        {
          cairo_surface_t *surface = whole_hank (hank, px);
          const double off = sw_ciede2000 (fixture_opaque_mean (surface), fixture_strand_colour (forecast));

          g_test_message ("L* %.0f at %.0f px/cm: %.2f", yarns[i][0], px, off);
          /* The largest seen is 0.6. */
          g_assert_cmpfloat (off, <, 1);
          cairo_surface_destroy (surface);
        }
    }
}

/* A part of the picture is that part of the whole picture: nothing depends on where the painting is cut. */
static void
test_hank_part (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = fixture_forecast (sketch);
  g_autoptr (SwHank) hank = laid_hank (forecast, 1, 0.3);
  cairo_surface_t *whole = raster_hank (hank, 20, 0, -60, 300, 200), *part = raster_hank (hank, 20, 77, -15, 130, 90);
  int unlike = 0;

  for (int j = 0; j < 90; j++)
    for (int i = 0; i < 130; i++)
      {
        const guint8 *a = cairo_image_surface_get_data (whole) + (j + 45) * cairo_image_surface_get_stride (whole) + 4 * (i + 77);
        const guint8 *b = cairo_image_surface_get_data (part) + j * cairo_image_surface_get_stride (part) + 4 * i;

        for (int k = 0; k < 4; k++)
          if (ABS (a[k] - b[k]) > 3)
            {
              unlike++;
              break;
            }
      }
  /* Samples at the very edge of a strand may fall to either side by rounding. */
  g_assert_cmpint (unlike, <, 130 * 90 / 100);
  cairo_surface_destroy (whole);
  cairo_surface_destroy (part);
}

static void
test_shape (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  SwHankShape shape, tighter;

  sketch->yarn.mass_g = 100;
  sketch->yarn.metres_per_100_g = 400;
  sketch->reel.circumference_cm = 150;
  sw_hank_shape_init (&shape, sketch);
  /* Half the loop is the rope; folded it is shorter than half of that. 100 g of sock yarn: about 27 by 5 cm (common practice, no source). */
  g_assert_cmpfloat_with_epsilon (shape.rope_cm, 75, 1e-9);
  g_assert_cmpfloat (shape.length_cm, <, 37.5);
  g_assert_cmpfloat (shape.length_cm, >, 20);
  g_assert_cmpfloat (4 * shape.radius_cm, >, 4);
  g_assert_cmpfloat (4 * shape.radius_cm, <, 8);
  /* What is not wound round the other half stays in each. */
  g_assert_cmpfloat_with_epsilon (shape.plied + shape.left, sketch->listing.twist_turns / 2, 1e-9);
  /* A loop too long to hold is laid round itself: the same yarn, as thick and as long a hank as one of that shorter loop. */
  {
    g_autoptr (SwSketch) longer = sw_sketch_copy (sketch);
    SwHankShape folded;

    longer->reel.circumference_cm = 8 * 150;
    sw_hank_shape_init (&folded, longer);
    g_assert_cmpint (folded.rounds, ==, 8);
    g_assert_cmpint (shape.rounds, ==, 1);
    g_assert_cmpfloat_with_epsilon (folded.length_cm, shape.length_cm, 1e-6);
    g_assert_cmpfloat_with_epsilon (folded.radius_cm, shape.radius_cm, 1e-6);
  }
  /* More turns take up more length. */
  sketch->listing.twist_turns *= 1.5;
  sw_hank_shape_init (&tighter, sketch);
  g_assert_cmpfloat (tighter.length_cm, <, shape.length_cm);
  /* Strands all round the rope, none twice. */
  g_assert_cmpfloat_with_epsilon (shape.around * shape.strand_cm, 2 * G_PI * shape.radius_cm, shape.strand_cm);
}

/* Round the fold the strands leave an eye: no place of the skin there comes to its middle, and the halves beside it have not grown into each other. */
static void
test_fold (void)
{
  for (int turns = 4; turns <= 16; turns += 3)
    {
      g_autoptr (SwSketch) sketch = sw_sketch_new ();
      double bend = INFINITY, middle = 0;
      SwHankShape shape;
      SwBundle bundle;
      int n = 0;

      sketch->listing.twist_turns = turns;
      sw_hank_shape_init (&shape, sketch);
      sw_hank_shape_bundle (&shape, 5, &bundle);
      for (int pass = 0; pass < 2; pass++)
        for (int i = 0; i < bundle.n_rings * (bundle.n_around + 1); i++)
          {
            const float *point = bundle.points + 3 * i;

            if ((double) point[0] < shape.length_cm)
              continue;
            middle += pass == 0 ? (double) point[1] : 0;
            n += pass == 0;
            if (pass == 1)
              bend = MIN (bend, hypot ((double) point[0] - shape.length_cm, (double) point[1] - middle / n));
          }
      g_assert_cmpfloat (bend, >, 0.05 * shape.radius_cm);
      g_assert_cmpfloat (bend, <, 0.4 * shape.radius_cm);
      sw_bundle_clear (&bundle);
    }
}

/* The paper round the hank's middle is neutral, is where nothing is without it, and takes words. */
static void
test_label (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  double before = 0;

  g_free (sketch->listing.caption);
  sketch->listing.caption = g_strdup ("MM MM MM MM");
  for (int label = SW_LABEL_GREY; label >= SW_LABEL_WHITE; label--)
    for (int words = 0; words < 2; words++)
      {
        g_autoptr (SwForecast) forecast = NULL;
        cairo_surface_t *surface;
        SwLab middle;
        double light;

        sketch->listing.label = (SwLabel) label;
        sketch->listing.label_words = words;
        forecast = fixture_forecast (sketch);
        surface = fixture_paint (sw_draw_hank, forecast, 1000, 260, &sw_look_plain);
        middle = fixture_mean (surface, 504, 110, 24, 40);
        light = middle.l;
        g_assert_cmpfloat (hypot (middle.a, middle.b), <, 0.5);
        if (words)
          g_assert_cmpfloat (light, <, before - 1); /* ink */
        else
          g_assert_cmpfloat (light, >, before + 5); /* white after grey */
        before = words ? before : light;
        cairo_surface_destroy (surface);
      }
}

/* Hanks on one table shade each other: the one that lies away from the light is darker beside its neighbour than alone. */
static void
test_neighbours (void)
{
  g_autoptr (SwForecast) forecast = plain_forecast (yarns[2]);
  SwHank *pair[2];
  double x[2] = { 0, 0 }, y[2] = { 0, 0 }, light[2];

  for (int together = 0; together < 2; together++)
    {
      SwBox box;
      float sky, lamp;

      for (int i = 0; i < 2; i++)
        pair[i] = sw_hank_new (forecast, i, -G_PI_2, NULL);
      box = sw_hank_get_box (pair[0]);
      x[1] = box.width * (together ? 1.02 : 3);
      sw_hanks_lay (pair, 2, x, y);
      sw_relief_at (&pair[1]->table->relief, (float) (x[1] + sw_hank_get_box (pair[1]).x + 0.06 * box.width), (float) (box.y + box.height / 2), &sky, &lamp);
      light[together] = (double) (SW_RELIEF_SKY * sky + SW_RELIEF_LAMP * lamp);
      sw_hank_free (pair[0]);
      sw_hank_free (pair[1]);
    }
  g_assert_cmpfloat (light[1], <, light[0] - 0.05);
}

/* Two strands of one rope lie inside its own length of path, whatever the yarn. */
static void
test_bundle (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();

  for (double turns = 3; turns <= 24; turns += 7)
    {
      SwHankShape shape;
      SwBundle bundle;
      float least[3], most[3];

      sketch->listing.twist_turns = turns;
      sw_hank_shape_init (&shape, sketch);
      sw_hank_shape_bundle (&shape, 5, &bundle);
      sw_bundle_extents (&bundle, least, most);
      for (int i = 0; i < 3 * bundle.n_rings * (bundle.n_around + 1); i++)
        {
          g_assert_true (isfinite (bundle.points[i]));
          g_assert_cmpfloat (fabs ((double) bundle.normals[i]), <, 1.001);
        }
      g_assert_cmpfloat ((double) bundle.along[bundle.n_rings - 1], <, 1.05 * shape.rope_cm);
      g_assert_cmpfloat ((double) (most[0] - least[0]), >, shape.length_cm);
      sw_bundle_clear (&bundle);
    }
}

/* Once round the loop is where one was; a quarter on, other colours lead. (Half a loop on the two halves of the rope change places.) */
static void
test_start (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  SwLab ends[3];

  for (int i = 0; i < 3; i++)
    {
      static const double shares[] = { 0, 0.25, 1 };
      g_autoptr (SwForecast) forecast = NULL;
      g_autoptr (SwHank) hank = NULL;
      cairo_surface_t *surface;

      sketch->listing.twist_start_cm = shares[i] * sketch->reel.circumference_cm;
      forecast = fixture_forecast (sketch);
      hank = laid_hank (forecast, 0, 0);
      surface = whole_hank (hank, 12);
      ends[i] = fixture_mean (surface, cairo_image_surface_get_width (surface) - 30, cairo_image_surface_get_height (surface) / 2 - 8, 16, 16);
      cairo_surface_destroy (surface);
    }
  g_assert_cmpfloat (sw_ciede2000 (ends[0], ends[2]), <, 0.5);
  g_assert_cmpfloat (sw_ciede2000 (ends[0], ends[1]), >, 4);
}

/* Yarns that no shop sells are drawn all the same: hardly a stitch, a single thick wrap, very many thin ones. */
static void
test_odd (void)
{
  static const struct
  {
    double mass_g, metres_per_100_g, circumference_cm;
  } odd[] = { { 1, 30, 60 }, { 1, 400, 150 }, { 100, 20, 400 }, { 500, 1200, 90 }, { 100, 400, 1200 } };

  for (gsize i = 0; i < G_N_ELEMENTS (odd); i++)
    {
      g_autoptr (SwSketch) sketch = test_bare_sketch (2);
      g_autoptr (SwForecast) forecast = NULL;
      cairo_surface_t *surface;

      sketch->yarn.mass_g = odd[i].mass_g;
      sketch->yarn.metres_per_100_g = odd[i].metres_per_100_g;
      sketch->reel.circumference_cm = odd[i].circumference_cm;
      sketch->lay.runs = odd[i].circumference_cm > 700 ? 4 : 2;
      sketch->cloth.stitch_length_cm = 0;
      sketch->cloth.start_cm = i == 0 ? 28.5 : 0;
      sketch->listing.arrangement = SW_ARRANGEMENT_WHOLE;
      forecast = fixture_forecast (sketch);
      surface = fixture_paint (sw_draw_listing, forecast, 160, 160, &sw_look_plain);
      cairo_surface_destroy (surface);
      surface = fixture_paint (sw_draw_hank, forecast, 300, 100, &sw_look_plain);
      g_assert_cmpfloat (sw_ciede2000 (fixture_mean (surface, 0, 0, 300, 6), fixture_mean (surface, 30, 40, 240, 20)), >, 0.5); /* something is there */
      cairo_surface_destroy (surface);
    }
}

/* The exposure keeps the mean where there is room, and never reaches white. */
static void
test_exposure (void)
{
  guint counts[SW_EXPOSURE_LIGHTS] = { 0 };
  g_autofree SwExposure *exposure = NULL;

  for (guint i = 0; i < 20000; i++)
    {
      const double even = sw_chance_even (sw_chance_mix (3, i));

      counts[sw_exposure_bin ((float) (2 * even))]++; /* even from 0 to 2: a mean of 1 */
    }
  exposure = sw_exposure_new (counts);
  for (double most = 0.02; most < 0.9; most += 0.05)
    {
      double sum = 0, n = 0, before = 0;

      for (int i = 0; i < SW_EXPOSURE_LIGHTS; i++)
        {
          const double factor = (double) sw_exposure_factor (exposure, (float) most, (float) ((i + 0.5) * (double) SW_EXPOSURE_MOST / SW_EXPOSURE_LIGHTS));

          g_assert_cmpfloat (factor, >=, before);
          g_assert_cmpfloat (factor * most, <, 1.05); /* tones are tabled in steps */
          sum += factor * counts[i];
          n += counts[i];
          before = factor;
        }
      g_assert_cmpfloat_with_epsilon (sum / n, 1, 0.01);
    }
}

/* Wet yarn is darker, the middle tones most, and neither black nor a mirror changes. */
static void
test_wet (void)
{
  double before = -1;

  for (double dry = 0; dry <= 1; dry += 0.01)
    {
      const double wet = (double) sw_wet ((float) dry);

      g_assert_cmpfloat (wet, >, before);
      g_assert_cmpfloat (wet, <=, dry + 1e-6);
      before = wet;
    }
  g_assert_cmpfloat_with_epsilon ((double) sw_wet (0), 0, 1e-6);
  /* By hand: R = 0.5, a = 0.5: 1 - 0.02 - 0.98 x 0.5 / (1 - 0.474 x 0.5) */
  g_assert_cmpfloat_with_epsilon ((double) sw_wet (0.5f), 0.98 - 0.49 / 0.763, 1e-4);
  g_assert_cmpfloat (0.5 - (double) sw_wet (0.5f), >, 0.95 - (double) sw_wet (0.95f));
  g_assert_cmpfloat (0.5 - (double) sw_wet (0.5f), >, 0.05 - (double) sw_wet (0.05f));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hank/colour", test_hank_colour);
  g_test_add_func ("/hank/part", test_hank_part);
  g_test_add_func ("/hank/shape", test_shape);
  g_test_add_func ("/hank/fold", test_fold);
  g_test_add_func ("/hank/label", test_label);
  g_test_add_func ("/hank/neighbours", test_neighbours);
  g_test_add_func ("/hank/bundle", test_bundle);
  g_test_add_func ("/hank/start", test_start);
  g_test_add_func ("/hank/odd", test_odd);
  g_test_add_func ("/light/exposure", test_exposure);
  g_test_add_func ("/light/wet", test_wet);
  return g_test_run ();
}
