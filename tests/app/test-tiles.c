/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sw-app-test.h"

#include "../sw-test-sketch.h"

#include "app/desk/sw-cloth-tiles.h"
#include "app/desk/sw-tile-cache.h"

#include <math.h>
#include <string.h>

/* The cache */

static guint n_freed;

static void
free_tile (gpointer tile)
{
  n_freed++;
}

static gboolean
has (SwTileCache *cache, guint picture, int column)
{
  return sw_tile_cache_get (cache, &(SwTileKey){ picture, column, 0 }) != NULL;
}

static void
put (SwTileCache *cache, guint picture, int column, gsize bytes)
{
  static int anything;

  sw_tile_cache_put (cache, &(SwTileKey){ picture, column, 0 }, &anything, bytes);
}

/* What was used longest ago goes first, and never is there more than may be. */
static void
test_cache (void)
{
  SwTileCache *cache = sw_tile_cache_new (100, free_tile);

  n_freed = 0;
  for (int i = 0; i < 4; i++)
    put (cache, 1, i, 25);
  g_assert_true (has (cache, 1, 0)); /* now 1 is the oldest */
  put (cache, 2, 0, 25);
  g_assert_false (has (cache, 1, 1));
  g_assert_true (has (cache, 1, 0) && has (cache, 1, 2) && has (cache, 1, 3) && has (cache, 2, 0));
  g_assert_cmpuint (sw_tile_cache_get_bytes (cache), ==, 100);

  put (cache, 2, 0, 30); /* in its own place; 0 is the oldest again */
  g_assert_false (has (cache, 1, 0));
  g_assert_cmpuint (sw_tile_cache_get_bytes (cache), ==, 80);
  put (cache, 3, 0, 101);
  g_assert_cmpuint (sw_tile_cache_get_n_tiles (cache), ==, 0);

  for (int i = 0; i < 4; i++)
    put (cache, 1 + (guint) i % 2, i, 25);
  sw_tile_cache_drop (cache, 1);
  g_assert_true (!has (cache, 1, 0) && !has (cache, 1, 2) && has (cache, 2, 1) && has (cache, 2, 3));
  sw_tile_cache_free (cache);
  g_assert_cmpuint (n_freed, ==, 4 + 2 + 1 + 4);
}

/* The plan */

static gboolean
meet (const SwTileBox *a, const SwTileBox *b)
{
  return a->x < b->x + b->width && b->x < a->x + a->width && a->y < b->y + b->height && b->y < a->y + a->height;
}

static SwTilePlace
place_at (GArray *places, guint i)
{
  return g_array_index (places, SwTilePlace, i);
}

/* Wherever one looks: each tile that is seen is wanted once and first, and nothing that neither is nor may be seen. */
static void
test_plan_covers (void)
{
  const SwTileBox picture = { -24, -40, 768 + 48, 5000 + 80 };

  for (int turn = 0; turn < 200; turn++)
    {
      const SwTileBox seen = { g_test_rand_int_range (-900, 900), g_test_rand_int_range (-900, 5400), 700, 500 };
      const SwTileBox ahead = { seen.x - 350, seen.y - 250, 1400, 1000 };
      g_autoptr (GHashTable) found = g_hash_table_new (g_int64_hash, g_int64_equal);
      guint n_seen, n = 0;
      g_autoptr (GArray) places = sw_tile_plan (&picture, &seen, &ahead, 1000, &n_seen);

      for (guint i = 0; i < places->len; i++)
        {
          const SwTileBox box = sw_tile_box (place_at (places, i));

          g_assert_true (meet (&box, &picture));
          g_assert_true (meet (&box, &ahead));
          g_assert_true (g_hash_table_add (found, &g_array_index (places, SwTilePlace, i)));
          g_assert_true (i >= n_seen || meet (&box, &seen));
        }
      for (int line = -4; line < 24; line++)
        for (int column = -4; column < 8; column++)
          {
            const SwTileBox box = sw_tile_box ((SwTilePlace){ column, line });

            n += meet (&box, &seen) && meet (&box, &picture);
          }
      /* A tile that touches both may yet hold nothing of what both hold. */
      g_assert_cmpuint (n_seen, <=, n);
      for (int y = MAX (seen.y, picture.y); y < MIN (seen.y + 500, picture.y + picture.height); y += 50)
        for (int x = MAX (seen.x, picture.x); x < MIN (seen.x + 700, picture.x + picture.width); x += 50)
          {
            gboolean covered = FALSE;

            for (guint i = 0; i < n_seen; i++)
              {
                const SwTileBox box = sw_tile_box (place_at (places, i)), dot = { x, y, 1, 1 };

                covered |= meet (&box, &dot);
              }
            g_assert_true (covered);
          }
    }
}

static double
away (SwTilePlace place, double x, double y)
{
  const SwTileBox box = sw_tile_box (place);

  return hypot (box.x + box.width / 2.0 - x, box.y + box.height / 2.0 - y);
}

/* From the middle of what is seen outwards; ahead, no more than are asked for. */
static void
test_plan_order (void)
{
  const SwTileBox picture = { 0, 0, 9000, 9000 }, seen = { 3000, 4000, 1200, 900 }, ahead = { 2000, 3000, 3200, 2900 };
  guint n_seen, n_all;
  g_autoptr (GArray) all = sw_tile_plan (&picture, &seen, &ahead, 1000, &n_all), few = sw_tile_plan (&picture, &seen, &ahead, 7, &n_seen);

  for (guint i = 1; i < n_all; i++)
    g_assert_cmpfloat (away (place_at (all, i - 1), 3600, 4450), <=, away (place_at (all, i), 3600, 4450));
  g_assert_cmpuint (n_seen, ==, n_all);
  g_assert_cmpuint (few->len, ==, n_seen + 7);
  g_assert_cmpmem (few->data, few->len * sizeof (SwTilePlace), all->data, few->len * sizeof (SwTilePlace));
  /* Those ahead begin next to what is seen. */
  g_assert_cmpfloat (away (place_at (all, n_all), 3600, 4450), <, away (place_at (all, all->len - 1), 3600, 4450));
}

/* The cloth's tiles */

typedef struct
{
  SwClothTiles *tiles;
  SwForecast *forecast[2]; /* of the same yarn with other amounts */
  guint n_ready;
} Fixture;

static void
ready_cb (gpointer user_data)
{
  Fixture *fixture = user_data;

  fixture->n_ready++;
}

static SwForecast *
forecast_of (const SwSketch *sketch)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (GError) error = NULL;
  SwForecast *forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);

  g_assert_no_error (error);
  return forecast;
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);

  fixture->tiles = sw_cloth_tiles_new (ready_cb, fixture);
  fixture->forecast[0] = forecast_of (sketch);
  ((SwDye *) g_ptr_array_index (sketch->dyes, 0))->sample.numbers[0] += 60;
  fixture->forecast[1] = forecast_of (sketch);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  sw_cloth_tiles_free (fixture->tiles);
  sw_forecast_unref (fixture->forecast[0]);
  sw_forecast_unref (fixture->forecast[1]);
}

#define WIDTH 520
#define HEIGHT 380

static SwClothSight
sight_of (SwForecast *forecast, double stitch, int left, int top)
{
  return (SwClothSight){ .forecast = forecast, .size = sw_cloth_size (forecast, stitch, FALSE), .left = left, .top = top, .width = WIDTH, .height = HEIGHT };
}

/* What the view shows, where tiles are shown unscaled. */
static guint32 *
compose (SwClothTiles *tiles, gboolean *scaled)
{
  SwClothSight sight;
  g_autoptr (GArray) pieces = sw_cloth_tiles_show (tiles, &sight);
  guint32 *pixels = g_new0 (guint32, WIDTH * HEIGHT);

  *scaled = FALSE;
  for (guint n = 0; pieces != NULL && n < pieces->len; n++)
    {
      const SwClothShown *shown = &g_array_index (pieces, SwClothShown, n);
      const guint32 *from = g_bytes_get_data (shown->piece->bytes, NULL);
      const int left = (int) shown->x, top = (int) shown->y;

      if (shown->turned || shown->width != shown->piece->width || shown->height != shown->piece->height)
        {
          *scaled = TRUE;
          continue;
        }
      for (int j = MAX (0, -top); j < MIN (shown->piece->height, HEIGHT - top); j++)
        for (int i = MAX (0, -left); i < MIN (shown->piece->width, WIDTH - left); i++)
          pixels[(top + j) * WIDTH + left + i] = from[j * shown->piece->width + i];
    }
  return pixels;
}

/* The view shows exactly what the cloth, painted at once, has there. */
static void
assert_sharp (SwClothTiles *tiles, const SwClothSight *sight)
{
  gboolean scaled;
  g_autofree guint32 *seen = compose (tiles, &scaled), *whole = g_new (guint32, WIDTH * HEIGHT);

  g_assert_false (scaled);
  sw_cloth_part (sight->forecast, &sight->size, -sight->left, -sight->top, WIDTH, HEIGHT, WIDTH, whole);
  g_assert_cmpmem (seen, WIDTH * HEIGHT * sizeof *seen, whole, WIDTH * HEIGHT * sizeof *whole);
}

static void
look (Fixture *fixture, const SwClothSight *sight)
{
  sw_cloth_tiles_look (fixture->tiles, sight);
  sw_test_wait (sw_cloth_tiles_is_sharp (fixture->tiles));
}

/* At every place and size, from beyond the edges too. */
static void
test_sharp (Fixture *fixture, gconstpointer data)
{
  static const double sizes[] = { 1.5, 3, 4, 9.1, 12, 30, 80 };

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (int place = 0; place < 3; place++)
      {
        SwClothSight sight = sight_of (fixture->forecast[0], sizes[i], 24 - 170 * place, 30 - 400 * place);

        sight.size.purl_side = place == 2;
        look (fixture, &sight);
        assert_sharp (fixture->tiles, &sight);
        g_assert_cmpuint (sw_cloth_tiles_get_bytes (fixture->tiles), <=, 96 << 20);
      }
}

static void
settle (Fixture *fixture)
{
  guint before;

  do
    {
      before = sw_cloth_tiles_get_painted (fixture->tiles);
      sw_test_idle (60);
    }
  while (sw_cloth_tiles_get_painted (fixture->tiles) != before);
}

/* What was painted is painted once: back and forth costs nothing, nor does the size before. */
static void
test_kept (Fixture *fixture, gconstpointer data)
{
  const SwClothSight here = sight_of (fixture->forecast[0], 20, 0, -300), near_by = sight_of (fixture->forecast[0], 20, -100, -380), larger = sight_of (fixture->forecast[0], 30, 0, -450);
  guint painted;

  look (fixture, &here);
  settle (fixture);
  painted = sw_cloth_tiles_get_painted (fixture->tiles);
  look (fixture, &near_by);
  g_assert_cmpuint (sw_cloth_tiles_get_painted (fixture->tiles), ==, painted); /* it was painted ahead */
  look (fixture, &larger);
  settle (fixture);
  painted = sw_cloth_tiles_get_painted (fixture->tiles);
  sw_cloth_tiles_look (fixture->tiles, &here);
  g_assert_true (sw_cloth_tiles_is_sharp (fixture->tiles));
  assert_sharp (fixture->tiles, &here);
  settle (fixture);
  g_assert_cmpuint (sw_cloth_tiles_get_painted (fixture->tiles), ==, painted);
}

/* Zoomed or turned, something of the same forecast is shown at once, where it belongs. */
static void
test_stands_in (Fixture *fixture, gconstpointer data)
{
  SwClothSight before = sight_of (fixture->forecast[0], 20, -40, -300), after = sight_of (fixture->forecast[0], 33, -66, -495), sight;
  g_autoptr (GArray) pieces = NULL;
  const SwClothShown *still;
  double width, height;

  look (fixture, &before);
  settle (fixture);
  after.size.purl_side = TRUE;
  sw_cloth_tiles_look (fixture->tiles, &after);
  pieces = sw_cloth_tiles_show (fixture->tiles, &sight);
  g_assert_cmpuint (pieces->len, ==, 2); /* all of the cloth in few pixels, and what was seen before */
  still = &g_array_index (pieces, SwClothShown, 0);
  sw_cloth_size_extent (after.forecast, &after.size, &width, &height);
  g_assert_true (still->turned);
  g_assert_cmpfloat_with_epsilon (still->x, -66, 1e-6);
  g_assert_cmpfloat_with_epsilon (still->width, width, 1e-6);
  g_assert_cmpfloat_with_epsilon (still->height, height, 1e-6);
  still = &g_array_index (pieces, SwClothShown, 1);
  g_assert_true (still->turned);
  /* From the right edge it lies as far as it lay from the left. */
  g_assert_cmpfloat_with_epsilon (still->x - sight.left, width - (40 + WIDTH) * 33.0 / 20, 0.01);
  g_assert_cmpfloat_with_epsilon (still->y - sight.top, 300 * after.size.row / before.size.row, 1e-6);
  sw_test_wait (sw_cloth_tiles_is_sharp (fixture->tiles));
  assert_sharp (fixture->tiles, &after);
}

/* Nearer, what was seen before covers all that is seen: the whole cloth need not be drawn beneath it. */
static void
test_nearer (Fixture *fixture, gconstpointer data)
{
  SwClothSight before = sight_of (fixture->forecast[0], 20, -40, -300), after = sight_of (fixture->forecast[0], 40, -300, -700), sight;
  g_autoptr (GArray) pieces = NULL;
  const SwClothShown *still;

  look (fixture, &before);
  settle (fixture);
  sw_cloth_tiles_look (fixture->tiles, &after);
  pieces = sw_cloth_tiles_show (fixture->tiles, &sight);
  g_assert_cmpuint (pieces->len, ==, 1);
  still = &g_array_index (pieces, SwClothShown, 0);
  g_assert_false (still->turned);
  g_assert_cmpfloat_with_epsilon (still->x, -300 + 2 * 40, 1e-6);
  g_assert_cmpfloat_with_epsilon (still->y, -700 + 2 * 300, 0.01);
  g_assert_cmpfloat_with_epsilon (still->width, 2 * WIDTH, 1e-6);
  g_assert_cmpfloat_with_epsilon (still->height, 2 * HEIGHT, 0.01);
}

/* At any moment of a change all that is shown is of one forecast, and nothing is missing. */
static void
test_no_mixture (Fixture *fixture, gconstpointer data)
{
  SwClothSight sight = sight_of (fixture->forecast[0], 12, -10, -200);
  guint32 *whole[2] = { g_new (guint32, WIDTH * HEIGHT), g_new (guint32, WIDTH * HEIGHT) };
  guint n_changes = 0;

  for (int i = 0; i < 2; i++)
    sw_cloth_part (fixture->forecast[i], &sight.size, 10, 200, WIDTH, HEIGHT, WIDTH, whole[i]);
  g_assert_true (memcmp (whole[0], whole[1], WIDTH * HEIGHT * sizeof (guint32)) != 0);
  look (fixture, &sight);
  for (int turn = 1; turn <= 20; turn++)
    {
      sight.forecast = fixture->forecast[turn % 2];
      sw_cloth_tiles_look (fixture->tiles, &sight);
      for (int round = 0; round < 400; round++)
        {
          gboolean scaled;
          g_autofree guint32 *seen = compose (fixture->tiles, &scaled);
          SwClothSight shown;

          g_array_unref (sw_cloth_tiles_show (fixture->tiles, &shown));
          /* A busy machine may be too slow for its patience: then the quick picture is shown. */
          if (!scaled)
            g_assert_cmpmem (seen, WIDTH * HEIGHT * sizeof *seen, whole[shown.forecast == fixture->forecast[1]], WIDTH * HEIGHT * sizeof *seen);
          if (sw_cloth_tiles_is_sharp (fixture->tiles))
            break;
          sw_test_turn ();
        }
      n_changes += sw_cloth_tiles_is_sharp (fixture->tiles);
    }
  g_assert_cmpuint (n_changes, >, 15);
  g_free (whole[0]);
  g_free (whole[1]);
}

/* A hand that does not rest: a new forecast before the last was painted, over and over; pictures keep coming. */
static void
test_no_starving (Fixture *fixture, gconstpointer data)
{
  SwClothSight sight = sight_of (fixture->forecast[0], 12, -10, -200), shown;
  g_autoptr (GPtrArray) forecasts = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_forecast_unref);
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);
  g_autoptr (SwSketch) sketch = test_sketch (2);
  const gint64 deadline = g_get_monotonic_time () + 60 * G_USEC_PER_SEC;

  look (fixture, &sight);
  for (int i = 0; i < 12; i++)
    {
      ((SwDye *) g_ptr_array_index (sketch->dyes, 0))->sample.numbers[0] = 20 * i;
      g_ptr_array_add (forecasts, forecast_of (sketch));
    }
  for (gsize i = 0; g_hash_table_size (seen) < 4; i++)
    {
      g_assert_cmpint (g_get_monotonic_time (), <, deadline);
      g_array_unref (sw_cloth_tiles_show (fixture->tiles, &shown));
      sight.forecast = g_ptr_array_index (forecasts, i % forecasts->len);
      if (sight.forecast == shown.forecast) /* a newer one is another one */
        continue;
      sw_cloth_tiles_look (fixture->tiles, &sight);
      sw_test_turn ();
      g_array_unref (sw_cloth_tiles_show (fixture->tiles, &shown));
      g_hash_table_add (seen, shown.forecast);
    }
  sw_test_wait (sw_cloth_tiles_is_sharp (fixture->tiles));
  assert_sharp (fixture->tiles, &sight);
}

/* A frame may wait for tiles that come soon. */
static void
test_wait (Fixture *fixture, gconstpointer data)
{
  SwClothSight sight = sight_of (fixture->forecast[0], 10, 0, 0);

  look (fixture, &sight);
  settle (fixture);
  sight.top = -2500;
  sw_cloth_tiles_look (fixture->tiles, &sight);
  g_assert_false (sw_cloth_tiles_is_sharp (fixture->tiles));
  g_assert_true (sw_cloth_tiles_wait (fixture->tiles, g_get_monotonic_time () + 60 * G_USEC_PER_SEC));
  assert_sharp (fixture->tiles, &sight);
}

/* Freed with work under way. */
static void
test_gone (Fixture *fixture, gconstpointer data)
{
  const SwClothSight sight = sight_of (fixture->forecast[0], 60, 0, 0);
  SwClothTiles *other = sw_cloth_tiles_new (ready_cb, fixture);

  fixture->n_ready = 0;
  sw_cloth_tiles_look (other, &sight);
  sw_cloth_tiles_free (other);
  sw_test_idle (200);
  g_assert_cmpuint (fixture->n_ready, ==, 0);
}

#define add(name, function) g_test_add ("/app/tiles/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/app/tiles/cache", test_cache);
  g_test_add_func ("/app/tiles/plan-covers", test_plan_covers);
  g_test_add_func ("/app/tiles/plan-order", test_plan_order);
  add ("sharp", test_sharp);
  add ("kept", test_kept);
  add ("stands-in", test_stands_in);
  add ("nearer", test_nearer);
  add ("no-mixture", test_no_mixture);
  add ("no-starving", test_no_starving);
  add ("wait", test_wait);
  add ("gone", test_gone);
  return g_test_run ();
}
