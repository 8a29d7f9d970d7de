/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw-fixture.h"

#include "draw/sw-canvas.h"
#include "draw/sw-cloth-piece.h"
#include "draw/sw-ground.h"
#include "draw/sw-listing-layout.h"

#include <math.h>
#include <stdlib.h>

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
check_layout (const SwListingSettings *listing, const SwListingFoot *foot, double width, double height)
{
  SwListingLayout layout;
  const SwBox *feet[5];

  sw_listing_layout (listing, foot, 0.17, width, height, &layout);
  feet[0] = &layout.stage;
  feet[1] = &layout.palette;
  feet[2] = &layout.caption;
  feet[3] = &layout.mark;
  feet[4] = &layout.small;
  for (int i = 0; i < 5; i++)
    {
      g_assert_true (feet[i]->width <= 0 || within (feet[i], &layout.safe));
      for (int j = 0; j < i; j++)
        g_assert_true (apart (feet[i], feet[j]));
    }
  g_assert_true ((layout.palette.width > 0) == listing->palette);
  /* On a label they are not beneath; where no hank is, there is no label. */
  g_assert_true ((layout.caption.width > 0) == (listing->caption[0] != '\0' && !(listing->label_words && layout.n_hanks > 0)));
  g_assert_true ((layout.mark.width > 0) == (foot->mark_aspect > 0 && !(listing->label_words && layout.n_hanks > 0)));
  g_assert_true ((layout.small.width > 0) == foot->small);
  if (layout.caption.width > 0 && foot->caption_lines == 2)
    {
      const SwListingFoot one = { foot->mark_aspect, 1, foot->name_lines, foot->small };
      SwListingLayout less;

      sw_listing_layout (listing, &one, 0.17, width, height, &less);
      g_assert_cmpfloat_with_epsilon (layout.caption.height, 2 * less.caption.height, 1e-6);
    }
  if (layout.mark.width > 0)
    g_assert_cmpfloat_with_epsilon (layout.mark.width / layout.mark.height, foot->mark_aspect, 1e-6);
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
        for (int words = 0; words < 32; words++)
          {
            g_autoptr (SwSketch) sketch = sw_sketch_new ();
            const SwListingFoot foot = { marks[mark], words & 2 ? 1 + (words >> 3 & 1) : 0, 1 + (words >> 3 & 1), (words & 16) != 0 };

            sketch->listing.arrangement = (SwArrangement) arrangement;
            sketch->listing.palette = words & 1;
            sketch->listing.label = words & 4 ? SW_LABEL_WHITE : SW_LABEL_NONE;
            sketch->listing.label_words = (words & 4) != 0;
            if (words & 2)
              {
                g_free (sketch->listing.caption);
                sketch->listing.caption = g_strdup ("Words");
              }
            check_layout (&sketch->listing, &foot, sizes[size][0], sizes[size][1]);
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

/* Three hanks use a square's room in both directions: pale yarn on charcoal shows where they are. */
static void
test_room (void)
{
  for (int palette = 0; palette < 2; palette++)
    {
      g_autoptr (SwSketch) sketch = sw_sketch_new ();
      g_autoptr (SwForecast) forecast = NULL;
      cairo_surface_t *surface;
      int left = 400, top = 400, right = 0, bottom = 0, most;

      sketch->listing.arrangement = SW_ARRANGEMENT_HANKS;
      sketch->listing.hanks = 3;
      sketch->listing.palette = palette;
      sketch->listing.ground = SW_GROUND_CHARCOAL;
      forecast = fixture_forecast (sketch);
      surface = fixture_paint (sw_draw_listing, forecast, 400, 400, &sw_look_plain);
      most = palette ? 280 : 400; /* rows above the chips */
      for (int j = 0; j < most; j++)
        for (int i = 0; i < 400; i++)
          if (fixture_pixel (surface, i, j).y > 30)
            {
              left = MIN (left, i);
              right = MAX (right, i);
              top = MIN (top, j);
              bottom = MAX (bottom, j);
            }
      g_test_message ("%d x %d", right - left, bottom - top);
      g_assert_cmpint (right - left, >, 400 * 0.53);
      g_assert_cmpint (bottom - top, >, 400 * 0.53);
      g_assert_cmpint (MAX (right - left, bottom - top), >, 400 * 0.8);
      cairo_surface_destroy (surface);
    }
}

static int
grey_at (cairo_surface_t *surface, int x, int y)
{
  return cairo_image_surface_get_data (surface)[y * cairo_image_surface_get_stride (surface) + 4 * x];
}

/* Share of the way from the light to the shade: where between the two circles the one lies that passes through the place, sought by halving. */
static double
falloff (double width, double height, double x, double y)
{
  const double reach = hypot (width, height);
  double low = 0, high = 1;

  for (int i = 0; i < 50; i++)
    {
      const double t = (low + high) / 2, away = hypot (x - (0.32 + 0.04 * t) * width, y - (0.28 + 0.06 * t) * height);

      if (away < (0.1 + 0.75 * t) * reach)
        high = t;
      else
        low = t;
    }
  return low;
}

/* The light falls off without contours: neighbours differ by a code at most, no step goes on from line to line, and means are where they belong. */
static void
test_ground_smooth (void)
{
  enum
  {
    WIDTH = 900,
    HEIGHT = 600,
    SQUARE = 60,
  };

  for (int ground = SW_GROUND_WHITE; ground <= SW_GROUND_CHARCOAL; ground++)
    {
      cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
      cairo_t *cr = cairo_create (surface);
      SwCanvas canvas;
      static const double ends[][2] = { { 1, 0.965 }, { 0.945, 0.885 }, { 0.725, 0.65 }, { 0.27, 0.205 } };
      int longest = 0, lightest = 0, darkest = 255;

      sw_canvas_begin (&canvas, cr, WIDTH, HEIGHT, &sw_look_plain);
      sw_ground_draw (&canvas, (SwGround) ground);
      sw_canvas_end (&canvas);
      cairo_surface_flush (surface);
      for (int x = 0; x + 1 < WIDTH; x++)
        for (int y = 0, run = 0, last = 0; y < HEIGHT; y++)
          {
            const int here = grey_at (surface, x, y), step = grey_at (surface, x + 1, y) - here;

            g_assert_cmpint (ABS (step), <=, 1);
            if (y > 0)
              g_assert_cmpint (ABS (here - grey_at (surface, x, y - 1)), <=, 1);
            run = step != 0 && step == last ? run + 1 : step != 0;
            last = step;
            longest = MAX (longest, run);
            lightest = MAX (lightest, here);
            darkest = MIN (darkest, here);
          }
      g_test_message ("from %d to %d, %d alike in a line", lightest, darkest, longest);
      /* A step goes on by chance in one line of four; 4^-16 is once in 4 000 million. */
      g_assert_cmpint (longest, <, 16);
      g_assert_cmpint (lightest - darkest, >, 5);
      for (int top = 0; top < HEIGHT; top += SQUARE)
        for (int left = 0; left < WIDTH; left += SQUARE)
          {
            double drawn = 0, meant = 0;

            for (int y = top; y < top + SQUARE; y++)
              for (int x = left; x < left + SQUARE; x++)
                {
                  drawn += grey_at (surface, x, y);
                  meant += falloff (WIDTH, HEIGHT, x + 0.5, y + 0.5);
                }
            drawn /= SQUARE * SQUARE;
            meant = ends[ground][0] + (ends[ground][1] - ends[ground][0]) * meant / (SQUARE * SQUARE);
            g_assert_cmpfloat_with_epsilon (drawn, 255 * meant, 0.06);
          }
      cairo_destroy (cr);
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

/* A share of the pixels of a box, ordered by their luminance, as linear light: the mean between two quantiles. */
static SwXyz
lit_between (cairo_surface_t *surface, int left, int top, int width, int height, double from, double to)
{
  g_autoptr (GArray) pixels = g_array_new (FALSE, FALSE, sizeof (SwXyz));
  SwXyz sum = { 0, 0, 0 };
  guint first, last;

  for (int y = top; y < top + height; y++)
    for (int x = left; x < left + width; x++)
      {
        const guint8 *pixel = cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface) + 4 * x;
        const SwXyz xyz = sw_xyz_from_srgb ((SwSrgb){ pixel[2] / 255.0, pixel[1] / 255.0, pixel[0] / 255.0 });
        guint at = 0;

        while (at < pixels->len && g_array_index (pixels, SwXyz, at).y < xyz.y)
          at++;
        g_array_insert_val (pixels, at, xyz);
      }
  first = (guint) (from * pixels->len);
  last = (guint) (to * pixels->len);
  for (guint i = first; i < last; i++)
    {
      sum.x += g_array_index (pixels, SwXyz, i).x / (last - first);
      sum.y += g_array_index (pixels, SwXyz, i).y / (last - first);
      sum.z += g_array_index (pixels, SwXyz, i).z / (last - first);
    }
  return sum;
}

/* A chip has the colour of the yarn at its clean places, neither as dull as its mean nor as white as its hairs. */
static void
test_chip (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  g_autoptr (SwForecast) forecast = NULL;
  cairo_surface_t *surface;
  SwXyz clean, mean, chip;
  const SwDye *dye = test_add_dye (sketch, "Rust", 176, 70, 36);

  test_add_band (sketch, dye, sw_sketch_lay_length (sketch) / 2, 3 * sw_sketch_lay_length (sketch), 200, 0.9);
  test_add_step (sketch, SW_STEP_SET)->minutes = 60;
  sketch->listing.arrangement = SW_ARRANGEMENT_SKEIN_CLOTH;
  forecast = fixture_forecast (sketch);
  surface = fixture_paint (sw_draw_listing, forecast, 800, 800, &sw_look_plain);
  clean = lit_between (surface, 380, 120, 60, 60, 0.65, 0.90);
  mean = lit_between (surface, 380, 120, 60, 60, 0, 1);
  chip = lit_between (surface, 60, 664, 8, 8, 0, 1);
  cairo_surface_destroy (surface);
  g_test_message ("chip %.2f from the clean places, %.2f from the mean", sw_ciede2000 (sw_lab_from_xyz (chip), sw_lab_from_xyz (clean)), sw_ciede2000 (sw_lab_from_xyz (chip), sw_lab_from_xyz (mean)));
  g_assert_cmpfloat (sw_ciede2000 (sw_lab_from_xyz (chip), sw_lab_from_xyz (clean)), <, 3);
  g_assert_cmpfloat (chip.y, >, 1.08 * mean.y);
}

/* The text, the line that it is drawn and the maker's name show in the picture. */
static void
test_words_show (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autofree char *before = g_strdup ("");
  const char *const captions[] = { "", "Two Tides", "Two Tides" };

  for (int i = 0; i < 4; i++)
    {
      g_autoptr (SwForecast) forecast = NULL;
      cairo_surface_t *surface;
      char *sum;

      g_free (sketch->listing.caption);
      sketch->listing.caption = g_strdup (captions[MIN (i, 2)]);
      sketch->listing.drawn_line = i != 2;
      if (i == 3)
        {
          g_free (sketch->listing.maker);
          sketch->listing.maker = g_strdup ("Anna");
        }
      forecast = fixture_forecast (sketch);
      surface = fixture_paint (sw_draw_listing, forecast, 300, 300, &sw_look_plain);
      sum = g_compute_checksum_for_data (G_CHECKSUM_SHA256, cairo_image_surface_get_data (surface), (gsize) cairo_image_surface_get_stride (surface) * 300);
      g_assert_cmpstr (sum, !=, before);
      g_free (before);
      before = sum;
      cairo_surface_destroy (surface);
    }
}

/* Red in the two lowest rows and blue above them. */
static void
dye_rows (SwForecast *forecast, float *xyz)
{
  const SwXyz red = sw_xyz_from_srgb ((SwSrgb){ 0.7, 0.1, 0.1 }), blue = sw_xyz_from_srgb ((SwSrgb){ 0.1, 0.1, 0.7 });
  const gsize n = 2 * forecast->n_stitches;

  for (gsize i = 0; i < n; i++)
    {
      const SwXyz *dye = i / 2 < sw_layout_stitch (&forecast->layout, 2, 0) && i / 2 < sw_layout_stitch (&forecast->layout, 2, forecast->layout.width - 1) ? &red : &blue;

      xyz[i] = (float) dye->x;
      xyz[n + i] = (float) dye->y;
      xyz[2 * n + i] = (float) dye->z;
    }
  forecast->leg_x = xyz;
  forecast->leg_y = xyz + n;
  forecast->leg_z = xyz + 2 * n;
  forecast->skeins[0] = (SwSkeinLegs){ forecast->n_stitches, xyz, xyz + n, xyz + 2 * n };
}

/* Red and blue from the lower edge up, a letter for each stretch. */
static char *
stripes_at (cairo_surface_t *surface, int x, int size)
{
  GString *stripes = g_string_new (NULL);

  for (int y = size - 1; y >= size / 4; y--)
    {
      const guint8 *line = cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface);
      const guint32 pixel = ((const guint32 *) (gconstpointer) line)[x];
      const int red = (int) (pixel >> 16 & 0xff), blue = (int) (pixel & 0xff);
      const char is = red > blue + 30 ? 'r' : 'b';

      if (abs (red - blue) > 30 && (stripes->len == 0 || stripes->str[stripes->len - 1] != is))
        g_string_append_c (stripes, is);
    }
  return g_string_free (stripes, FALSE);
}

/* Plain knit curls forward: below what shows of the lowest rows lies the back of those above, and then they go on. Garter stitch lies flat. */
static void
test_curl (void)
{
  static const struct
  {
    SwFabric fabric;
    const char *stripes;
  } kinds[] = { { SW_FABRIC_STOCKINETTE, "brb" }, { SW_FABRIC_GARTER, "rb" } };

  for (gsize kind = 0; kind < G_N_ELEMENTS (kinds); kind++)
    {
      g_autoptr (SwSketch) sketch = test_sketch (2);
      g_autoptr (SwForecast) forecast = NULL;
      g_autofree float *xyz = NULL;
      SwForecast dyed;
      cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 400, 400);
      cairo_t *cr = cairo_create (surface);
      const SwClothPiece piece = { 100, 330, 220, 280, 0, -INFINITY, INFINITY };
      SwCanvas canvas;
      int so = 0;

      sketch->cloth.fabric = kinds[kind].fabric;
      forecast = fixture_forecast (sketch);
      xyz = g_new (float, 6 * forecast->n_stitches);
      dyed = *forecast;
      dye_rows (&dyed, xyz);
      sw_canvas_begin (&canvas, cr, 400, 400, &sw_look_plain);
      sw_cloth_piece_draw (&canvas, &dyed, &piece, 40);
      sw_canvas_end (&canvas);
      cairo_destroy (cr);
      for (int x = 150; x < 270; x++)
        {
          g_autofree char *stripes = stripes_at (surface, x, 400);

          so += g_str_equal (stripes, kinds[kind].stripes);
        }
      g_test_message ("fabric %d: %d of 120 columns are %s", (int) kinds[kind].fabric, so, kinds[kind].stripes);
      g_assert_cmpint (so, >, 60); /* stitches reach into the rows below and above */
      cairo_surface_destroy (surface);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/listing/layout", test_layout);
  g_test_add_func ("/listing/grounds", test_grounds);
  g_test_add_func ("/listing/ground-smooth", test_ground_smooth);
  g_test_add_func ("/listing/settings", test_settings_show);
  g_test_add_func ("/listing/chip", test_chip);
  g_test_add_func ("/listing/words", test_words_show);
  g_test_add_func ("/listing/room", test_room);
  g_test_add_func ("/listing/curl", test_curl);
  return g_test_run ();
}
