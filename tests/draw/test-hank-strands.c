/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hank-fixture.h"

#include "draw/sw-shadow.h"

/* A hank seen near by: strands one by one, smooth edges, no two alike. */

#define FINER 4
#define MOST_OFF 1.5 /* the largest seen is 1.0; with one look at a pixel it is 4 */
#define MOST_FAR 0.02
#define LEAST_ROUGH 0.5 /* 0.68 is seen */

static void
add_pixel (SwXyz *sum, cairo_surface_t *surface, int x, int y)
{
  const SwXyz pixel = fixture_pixel (surface, x, y);

  *sum = (SwXyz){ sum->x + pixel.x, sum->y + pixel.y, sum->z + pixel.z };
}

/* As if each pixel were the mean of many: the picture is one four times as large, reduced. Along what steps a hard edge would be far off. */
static void
test_smooth (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = fixture_forecast (sketch);
  g_autoptr (SwHank) hank = laid_hank (forecast, 0, 0.2);

  for (double px = 20; px <= 90; px *= 2)
    {
      const int width = 120, height = 80, left = 0, top = (int) (-0.5 * px);
      cairo_surface_t *picture = raster_hank (hank, px, left, top, width, height), *fine = raster_hank (hank, FINER * px, FINER * left, FINER * top, FINER * width, FINER * height);
      double sum = 0, far = 0;

      for (int j = 0; j < height; j++)
        for (int i = 0; i < width; i++)
          {
            SwXyz mean = { 0, 0, 0 };
            double off;

            for (int k = 0; k < FINER * FINER; k++)
              add_pixel (&mean, fine, FINER * i + k % FINER, FINER * j + k / FINER);
            off = sw_ciede2000 (sw_lab_from_xyz ((SwXyz){ mean.x / (FINER * FINER), mean.y / (FINER * FINER), mean.z / (FINER * FINER) }), sw_lab_from_xyz (fixture_pixel (picture, i, j)));
            sum += off;
            far += off > 8;
          }
      g_test_message ("%.0f px/cm: mean %.2f, %.1f %% beyond 8", px, sum / (width * height), 100 * far / (width * height));
      g_assert_cmpfloat (sum / (width * height), <, MOST_OFF);
      g_assert_cmpfloat (far / (width * height), <, MOST_FAR);
      cairo_surface_destroy (picture);
      cairo_surface_destroy (fine);
    }
}

/* A strand that has dived is seen no more: its neighbours have closed over it. */
static void
test_dive (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = fixture_forecast (sketch);
  g_autoptr (SwHank) hank = laid_hank (forecast, 0, 0);
  const SwSkinView view = { (float) hank->box.x, (float) hank->box.y, 0.02f, (int) (hank->box.width / 0.02), (int) (hank->box.height / 0.02) };
  const int n = view.width * view.height, pieces = hank->strands.n_rings - 1;
  g_autofree SwSkinSample *samples = g_new (SwSkinSample, n);
  double deep = 0, seen_deep = 0, seen = 0;

  sw_skin_clear (&view, samples);
  sw_hank_strands_raster (&hank->strands, hank->grain, &view, samples);
  for (int k = 0; k < hank->yarn.n; k++)
    for (int i = 0; i < SW_HANK_PLACES; i++)
      deep += fabsf (hank->yarn.sunk[k * SW_HANK_PLACES + i]) > 0.9f;
  for (int i = 0; i < n; i++)
    if (samples[i].patch >= 0)
      {
        const float along = hank->bundle.along[samples[i].patch % pieces] / hank->bundle.along[pieces];

        seen++;
        seen_deep += fabsf (hank->yarn.sunk[samples[i].patch / pieces * SW_HANK_PLACES + MIN ((int) (along * SW_HANK_PLACES), SW_HANK_PLACES - 1)]) > 0.9f;
      }
  g_test_message ("deep: %.4f of the strands, %.5f of what is seen", deep / (hank->yarn.n * SW_HANK_PLACES), seen_deep / seen);
  g_assert_cmpfloat (deep, >, 0.005 * hank->yarn.n * SW_HANK_PLACES);
  g_assert_cmpfloat (seen_deep / seen, <, 0.25 * deep / (hank->yarn.n * SW_HANK_PLACES));
}

/* How far the outline's upper edge is from its own mean over a strand's length to both sides, px. */
static double
roughness (cairo_surface_t *surface)
{
  const int width = cairo_image_surface_get_width (surface), height = cairo_image_surface_get_height (surface);
  g_autofree double *edge = g_new (double, width);
  double sum = 0, n = 0;

  for (int i = 0; i < width; i++)
    {
      int j = 0;

      while (j < height && (cairo_image_surface_get_data (surface) + j * cairo_image_surface_get_stride (surface))[4 * i + 3] < 128)
        j++;
      edge[i] = j;
    }
  for (int i = width / 4; i < width * 3 / 4; i++)
    {
      const double bow = (edge[i - 12] + edge[i + 12]) / 2 - edge[i];

      if (edge[i] < height && fabs (bow) < 6) /* not where the halves meet */
        {
          const double curved = (edge[i - 6] + edge[i + 6]) / 2 - edge[i] - bow / 4; /* 0 on any parabola */

          sum += curved * curved;
          n++;
        }
    }
  return sqrt (sum / n);
}

/* The outline is where single strands have it, not one clean curve. */
static void
test_outline (void)
{
  g_autoptr (SwForecast) forecast = plain_forecast ((const double[]){ 70, -30, 20 });
  g_autoptr (SwHank) hank = laid_hank (forecast, 0, 0);
  cairo_surface_t *surface = whole_hank (hank, 60);
  const double rough = roughness (surface);

  g_test_message ("%.3f px", rough);
  g_assert_cmpfloat (rough, >, LEAST_ROUGH);
  g_assert_cmpfloat (rough, <, 0.5 * hank->shape.strand_cm * 60);
  cairo_surface_destroy (surface);
}

/* The share of pixels of either that only one of them covers. */
static double
unlike (cairo_surface_t *a, cairo_surface_t *b)
{
  const int width = MIN (cairo_image_surface_get_width (a), cairo_image_surface_get_width (b)), height = MIN (cairo_image_surface_get_height (a), cairo_image_surface_get_height (b));
  double only = 0, any = 0;

  for (int j = 0; j < height; j++)
    for (int i = 0; i < width; i++)
      {
        const gboolean in_a = (cairo_image_surface_get_data (a) + j * cairo_image_surface_get_stride (a))[4 * i + 3] > 127;
        const gboolean in_b = (cairo_image_surface_get_data (b) + j * cairo_image_surface_get_stride (b))[4 * i + 3] > 127;

        only += in_a != in_b;
        any += in_a || in_b;
      }
  return only / any;
}

/* The hanks of a batch are no copies; each is the same whenever it is drawn. */
static void
test_batch (void)
{
  g_autoptr (SwForecast) forecast = plain_forecast ((const double[]){ 70, -30, 20 });
  cairo_surface_t *surfaces[5];
  double lengths[4];

  for (int i = 0; i < 5; i++)
    {
      g_autoptr (SwHank) hank = laid_hank (forecast, i % 4, 0);

      surfaces[i] = whole_hank (hank, 14);
      lengths[i % 4] = hank->shape.length_cm;
    }
  for (int i = 0; i < 4; i++)
    for (int j = 0; j < i; j++)
      {
        g_test_message ("%d and %d: %.3f", j, i, unlike (surfaces[i], surfaces[j]));
        g_assert_cmpfloat (unlike (surfaces[i], surfaces[j]), >, 0.03);
        g_assert_cmpfloat (fabs (lengths[i] - lengths[j]), >, 0.01);
        /* But they are hanks of one yarn, turned by one pair of hands. */
        g_assert_cmpfloat (fabs (lengths[i] / lengths[j] - 1), <, 0.06);
      }
  g_assert_cmpint (cairo_image_surface_get_height (surfaces[0]), ==, cairo_image_surface_get_height (surfaces[4]));
  g_assert_cmpmem (cairo_image_surface_get_data (surfaces[0]), cairo_image_surface_get_stride (surfaces[0]) * cairo_image_surface_get_height (surfaces[0]), cairo_image_surface_get_data (surfaces[4]),
                   cairo_image_surface_get_stride (surfaces[4]) * cairo_image_surface_get_height (surfaces[4]));
  for (int i = 0; i < 5; i++)
    cairo_surface_destroy (surfaces[i]);
}

/* Right beside the hank, on the side away from the light, its shadow is no paler than a little further off. */
static void
test_rim (void)
{
  g_autoptr (SwForecast) forecast = plain_forecast ((const double[]){ 70, -30, 20 });
  g_autoptr (SwHank) hank = laid_hank (forecast, 0, 0);
  const SwRelief *relief = &hank->table->relief;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, relief->width, relief->height);
  cairo_t *cr = cairo_create (surface);
  const SwCanvas canvas = { .cr = cr };
  const double px = 1 / (double) relief->step;
  int n = 0;

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  sw_shadow_draw (relief, &canvas, 0.5 - (double) relief->left * px, 0.5 - (double) relief->top * px, px);
  cairo_destroy (cr);
  for (int i = relief->width / 3; i < relief->width * 2 / 3; i++)
    {
      const guint8 *data = cairo_image_surface_get_data (surface) + 4 * i;
      const int stride = cairo_image_surface_get_stride (surface);
      int j = relief->height - 1;

      while (j > 0 && relief->heights[j * relief->width + i] <= relief->ground)
        j--;
      for (int k = -1; k <= 1; k++)
        g_assert_cmpint (data[(j + k) * stride], <=, data[(j + 6) * stride]);
      n++;
    }
  g_assert_cmpint (n, >, 40);
  cairo_surface_destroy (surface);
}

/* The paper's end is laid over its beginning: below the middle its shade is a step in the light, which has none above. */
static void
test_seam (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  double steps[2] = { 0, 0 };

  for (int label = SW_LABEL_WHITE; label <= SW_LABEL_GREY; label++)
    {
      g_autoptr (SwForecast) forecast = NULL;
      g_autoptr (SwHank) hank = NULL;
      cairo_surface_t *surface;
      SwBox box;
      double before = 0;

      sketch->listing.label = (SwLabel) label;
      forecast = fixture_forecast (sketch);
      hank = laid_hank (forecast, 0, 0);
      box = (SwBox){ 0.5 * (double) (hank->label.hold.from + hank->label.hold.to), 0, 0, 2 * hank->label.radius_cm };
      surface = raster_hank (hank, 60, (int) (60 * box.x) - 10, (int) (-30 * box.height), 20, (int) (60 * box.height));
      for (int j = cairo_image_surface_get_height (surface) / 8; j < cairo_image_surface_get_height (surface) * 7 / 8; j++)
        {
          const double light = fixture_mean (surface, 0, j, 20, 1).l;
          double *step = &steps[j > cairo_image_surface_get_height (surface) / 2];

          if (before > 0)
            *step = MAX (*step, before - light);
          before = light;
        }
      g_test_message ("steps %.2f above, %.2f below", steps[0], steps[1]);
      g_assert_cmpfloat (steps[0], <, 1);
      g_assert_cmpfloat (steps[1], >, 2);
      cairo_surface_destroy (surface);
      steps[0] = steps[1] = 0;
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hank-strands/smooth", test_smooth);
  g_test_add_func ("/hank-strands/dive", test_dive);
  g_test_add_func ("/hank-strands/outline", test_outline);
  g_test_add_func ("/hank-strands/batch", test_batch);
  g_test_add_func ("/hank-strands/rim", test_rim);
  g_test_add_func ("/hank-strands/seam", test_seam);
  return g_test_run ();
}
