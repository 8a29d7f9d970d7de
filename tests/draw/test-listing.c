/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw-fixture.h"

#include "draw/sw-ground.h"
#include "draw/sw-listing-layout.h"

/* The picture of a shop's page: everything has its place, and the ground no hue. */

static gboolean
within (const SwBox *inner, const SwBox *outer)
{
  return inner->x >= outer->x - 0.01 && inner->y >= outer->y - 0.01 && inner->x + inner->width <= outer->x + outer->width + 0.01 &&
         inner->y + inner->height <= outer->y + outer->height + 0.01;
}

static gboolean
apart (const SwBox *a, const SwBox *b)
{
  return a->width <= 0 || b->width <= 0 || a->x + a->width <= b->x + 0.01 || b->x + b->width <= a->x + 0.01 || a->y + a->height <= b->y + 0.01 || b->y + b->height <= a->y + 0.01;
}

static void
check_layout (const SwListingSettings *listing, double mark_aspect, double width, double height)
{
  SwListingLayout layout;
  const SwBox *feet[4];

  sw_listing_layout (listing, mark_aspect, width, height, &layout);
  feet[0] = &layout.stage;
  feet[1] = &layout.palette;
  feet[2] = &layout.caption;
  feet[3] = &layout.mark;
  for (int i = 0; i < 4; i++)
    {
      g_assert_true (feet[i]->width <= 0 || within (feet[i], &layout.safe));
      for (int j = 0; j < i; j++)
        g_assert_true (apart (feet[i], feet[j]));
    }
  g_assert_true ((layout.palette.width > 0) == listing->palette);
  /* On a label they are not beneath; where no hank is, there is no label. */
  g_assert_true ((layout.caption.width > 0) == (listing->caption[0] != '\0' && !(listing->label_words && layout.n_hanks > 0)));
  g_assert_true ((layout.mark.width > 0) == (mark_aspect > 0 && !(listing->label_words && layout.n_hanks > 0)));
  if (layout.mark.width > 0)
    g_assert_cmpfloat_with_epsilon (layout.mark.width / layout.mark.height, mark_aspect, 1e-6);
  g_assert_true (layout.skein.width <= 0 || within (&layout.skein, &layout.stage));
  for (int i = 0; i < layout.n_hanks; i++)
    g_assert_true (within (&layout.hank_room[i], &layout.stage));
  /* Cloth runs off to the right or above, never over the words. */
  g_assert_cmpfloat (layout.cloth.y + layout.cloth.height, <=, layout.stage.y + layout.stage.height + 0.01);
  g_assert_cmpfloat (layout.cloth.x, >=, 0);
}

static void
test_layout (void)
{
  static const int sizes[][2] = { { 1000, 1000 }, { 800, 1000 }, { 1500, 1000 }, { 4000, 4000 }, { 300, 1200 } };
  static const double marks[] = { 0, 1, 4, 0.4, 12 };

  for (int arrangement = SW_ARRANGEMENT_HANK; arrangement <= SW_ARRANGEMENT_WHOLE; arrangement++)
    for (gsize size = 0; size < G_N_ELEMENTS (sizes); size++)
      for (gsize mark = 0; mark < G_N_ELEMENTS (marks); mark++)
        for (int words = 0; words < 8; words++)
          {
            g_autoptr (SwSketch) sketch = sw_sketch_new ();

            sketch->listing.arrangement = (SwArrangement) arrangement;
            sketch->listing.palette = words & 1;
            sketch->listing.label = words & 4 ? SW_LABEL_WHITE : SW_LABEL_NONE;
            sketch->listing.label_words = (words & 4) != 0;
            if (words & 2)
              {
                g_free (sketch->listing.caption);
                sketch->listing.caption = g_strdup ("Words");
              }
            check_layout (&sketch->listing, marks[mark], sizes[size][0], sizes[size][1]);
          }
}

static void
test_grounds (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  double before = 2;

  for (int ground = SW_GROUND_WHITE; ground <= SW_GROUND_CHARCOAL; ground++)
    {
      g_autoptr (SwForecast) forecast = NULL;
      cairo_surface_t *surface;
      double grey;

      sketch->listing.ground = (SwGround) ground;
      forecast = fixture_forecast (sketch);
      surface = fixture_paint (sw_draw_hank, forecast, 400, 160, &sw_look_plain);
      for (int x = 0; x < 400; x += 7)
        {
          const guint8 *pixel = cairo_image_surface_get_data (surface) + 4 * x;

          g_assert_cmpuint (pixel[0], ==, pixel[1]);
          g_assert_cmpuint (pixel[1], ==, pixel[2]);
        }
      grey = cairo_image_surface_get_data (surface)[0] / 255.0;
      g_assert_cmpfloat (grey, <, before);
      /* Letters stand out from it: WCAG 2.1 asks for 4.5 : 1. */
      {
        const double light = sw_xyz_from_srgb ((SwSrgb){ grey, grey, grey }).y / 100, ink = sw_xyz_from_srgb ((SwSrgb){ sw_ground_ink ((SwGround) ground, FALSE), sw_ground_ink ((SwGround) ground, FALSE), sw_ground_ink ((SwGround) ground, FALSE) }).y / 100;

        g_assert_cmpfloat ((MAX (light, ink) + 0.05) / (MIN (light, ink) + 0.05), >, 4.5);
      }
      before = grey;
      cairo_surface_destroy (surface);
    }
}

/* Each arrangement, the mark and the twist change the picture. */
static void
test_settings_show (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autofree char *before = NULL;

  for (int arrangement = SW_ARRANGEMENT_HANK; arrangement <= SW_ARRANGEMENT_WHOLE; arrangement++)
    for (int turns = 0; turns < 2; turns++)
      {
        g_autoptr (SwForecast) forecast = NULL;
        cairo_surface_t *surface;
        char *sum;

        sketch->listing.arrangement = (SwArrangement) arrangement;
        sketch->listing.twist_turns = 9 + 4 * turns;
        forecast = fixture_forecast (sketch);
        surface = fixture_paint (sw_draw_listing, forecast, 240, 240, &sw_look_plain);
        sum = g_compute_checksum_for_data (G_CHECKSUM_SHA256, cairo_image_surface_get_data (surface), (gsize) cairo_image_surface_get_stride (surface) * 240);
        if (arrangement == SW_ARRANGEMENT_SKEIN_CLOTH && turns == 1)
          g_assert_cmpstr (sum, ==, before); /* no hank in it */
        else
          g_assert_cmpstr (sum, !=, before);
        g_free (before);
        before = sum;
        cairo_surface_destroy (surface);
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/listing/layout", test_layout);
  g_test_add_func ("/listing/grounds", test_grounds);
  g_test_add_func ("/listing/settings", test_settings_show);
  return g_test_run ();
}
