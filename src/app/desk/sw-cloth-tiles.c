/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-cloth-tiles.h"

#include "app/desk/sw-tile-cache.h"
#include "draw/sw-cloth-raster.h"

#include <math.h>
#include <string.h>

/* Tiles are kept up to this, or for so many views if those are larger. */
#define MOST_BYTES ((gsize) 96 << 20)
#define MOST_VIEWS 3

#define TILE_BYTES (sizeof (guint32) * SW_TILE_PX * SW_TILE_PX)

/* Sizes of one forecast whose tiles are kept, for a hand that zooms to and fro. */
#define MOST_LEVELS 6

/* What the worker does in one go: so long may a newer wish have to wait. */
#define GO_US 6000
#define MOST_IN_A_GO 32

/* A forecast that takes longer is shown by its quick picture. */
#define PATIENCE_US 150000

/* One size of one forecast. */
typedef struct
{
  SwClothSize size;
  guint picture;     /* its number in the cache */
  gboolean prepared; /* its stitches: tiles come quickly */
} Level;

/* One forecast: what is shown of it, or is to be. */
typedef struct
{
  SwClothSight sight; /* its forecast is owned; NULL: there is none */
  gint64 since;
  SwClothPixels *whole;      /* (nullable) */
  Level levels[MOST_LEVELS]; /* the one that is seen first */
  int n_levels;
} View;

struct _SwClothTiles
{
  SwClothTilesReady ready;
  gpointer user_data;
  SwLatest *latest;
  SwTileCache *cache;
  guint last_picture, painted;

  View shown, next;
  SwClothSight wanted; /* its forecast is owned */

  /* what stands in for tiles of another size: a piece of the shown forecast's cloth */
  SwClothPixels *still; /* (nullable) */
  SwTileBox still_box;  /* in the cloth at still_size */
  SwClothSize still_size;
};

static void ask (SwClothTiles *self);

/* Sights */

static void
sight_set (SwClothSight *to, const SwClothSight *from)
{
  SwForecast *before = to->forecast;

  *to = *from;
  if (to->forecast != NULL)
    sw_forecast_ref (to->forecast);
  if (before != NULL)
    sw_forecast_unref (before);
}

static SwTileBox
seen_of (const SwClothSight *sight)
{
  return (SwTileBox){ -sight->left, -sight->top, sight->width, sight->height };
}

/* The cloth with the selvedges, heads and feet that reach beyond its cells. */
static SwTileBox
picture_of (const SwClothSight *sight)
{
  const int beside = (int) ceil (0.3 * sight->size.stitch), above = (int) ceil (sight->size.row);
  double width, height;

  sw_cloth_size_extent (sight->forecast, &sight->size, &width, &height);
  return (SwTileBox){ -beside, -above, (int) ceil (width) + 2 * beside, (int) ceil (height) + 2 * above };
}

/* Half a view more on all sides. */
static SwTileBox
ahead_of (const SwClothSight *sight)
{
  const int x = sight->width / 2, y = sight->height / 2;

  return (SwTileBox){ -sight->left - x, -sight->top - y, sight->width + 2 * x, sight->height + 2 * y };
}

static GArray *
plan (const SwClothSight *sight, gboolean ahead, guint *n_seen)
{
  const SwTileBox picture = picture_of (sight), seen = seen_of (sight), more = ahead_of (sight);

  return sw_tile_plan (&picture, &seen, ahead ? &more : NULL, MOST_BYTES / TILE_BYTES / 2, n_seen);
}

/* Views */

static SwClothPixels *
tile_at (SwClothTiles *self, const View *view, SwTilePlace place)
{
  return sw_tile_cache_get (self->cache, &(SwTileKey){ view->levels[0].picture, place.column, place.line });
}

static Level
new_level (SwClothTiles *self, const SwClothSize *size)
{
  const View *shown = &self->shown;
  const gboolean as_shown = shown->n_levels > 0 && sw_cloth_size_equal (&shown->levels[0].size, size) && shown->levels[0].prepared;

  return (Level){ *size, ++self->last_picture, as_shown || size->stitch < SW_CLOTH_AVERAGE_BELOW };
}

/* The size that is seen comes first, with the tiles it has if it was seen before. */
static void
view_set_size (SwClothTiles *self, View *view, const SwClothSize *size)
{
  Level level;
  int at = 0;

  while (at < view->n_levels && !sw_cloth_size_equal (&view->levels[at].size, size))
    at++;
  level = at < view->n_levels ? view->levels[at] : new_level (self, size);
  if (at == MOST_LEVELS)
    sw_tile_cache_drop (self->cache, view->levels[--at].picture);
  else if (at == view->n_levels)
    view->n_levels++;
  memmove (&view->levels[1], &view->levels[0], sizeof level * (gsize) at);
  view->levels[0] = level;
}

static void
view_set (SwClothTiles *self, View *view, const SwClothSight *sight)
{
  if (view->sight.forecast == NULL)
    view->since = g_get_monotonic_time ();
  sight_set (&view->sight, sight);
  view_set_size (self, view, &sight->size);
}

static void
view_clear (SwClothTiles *self, View *view)
{
  for (int i = 0; i < view->n_levels; i++)
    sw_tile_cache_drop (self->cache, view->levels[i].picture);
  g_clear_pointer (&view->sight.forecast, sw_forecast_unref);
  g_clear_pointer (&view->whole, sw_cloth_pixels_free);
  *view = (View){ .n_levels = 0 };
}

static gboolean
is_complete (SwClothTiles *self, const View *view)
{
  guint n;
  g_autoptr (GArray) places = plan (&view->sight, FALSE, &n);

  for (guint i = 0; i < n; i++)
    if (tile_at (self, view, g_array_index (places, SwTilePlace, i)) == NULL)
      return FALSE;
  return TRUE;
}

/* The one that is worked on. */
static View *
active (SwClothTiles *self)
{
  return self->next.sight.forecast != NULL ? &self->next : &self->shown;
}

/* Standing in */

static void
still_clear (SwClothTiles *self)
{
  g_clear_pointer (&self->still, sw_cloth_pixels_free);
}

/* Lays one tile into @pixels, which show @box. */
static void
lay_tile (const SwClothPixels *tile, SwTilePlace place, const SwTileBox *box, guint32 *pixels)
{
  const SwTileBox from = sw_tile_box (place);
  const int left = MAX (from.x, box->x), right = MIN (from.x + from.width, box->x + box->width);
  const int top = MAX (from.y, box->y), bottom = MIN (from.y + from.height, box->y + box->height);
  const guint32 *source = g_bytes_get_data (tile->bytes, NULL);

  for (int y = top; y < bottom && left < right; y++)
    memcpy (pixels + (gsize) (y - box->y) * (gsize) box->width + (left - box->x),
            source + (gsize) (y - from.y) * (gsize) from.width + (left - from.x), sizeof *pixels * (gsize) (right - left));
}

/* Keeps what is seen as one piece, so that no joins show when it is enlarged. Less than all of it is not worth keeping. */
static void
still_take (SwClothTiles *self)
{
  const View *view = &self->shown;
  guint n;
  g_autoptr (GArray) places = plan (&view->sight, FALSE, &n);
  const SwTileBox box = seen_of (&view->sight);
  guint32 *pixels;

  if (n == 0 || !is_complete (self, view))
    return;
  still_clear (self);
  pixels = g_new0 (guint32, (gsize) box.width * (gsize) box.height);
  for (guint i = 0; i < n; i++)
    {
      const SwTilePlace place = g_array_index (places, SwTilePlace, i);

      lay_tile (tile_at (self, view, place), place, &box, pixels);
    }
  self->still = sw_cloth_pixels_new (box.width, box.height, pixels);
  self->still_box = box;
  self->still_size = view->sight.size;
}

/* What follows what */

static void
show_next (SwClothTiles *self)
{
  view_clear (self, &self->shown);
  still_clear (self);
  self->shown = self->next;
  self->next = (View){ .n_levels = 0 };
}

/* Takes up what is wanted, as far as it may be by now. */
static void
follow (SwClothTiles *self)
{
  const SwClothSight *wanted = &self->wanted;
  View *next = &self->next;

  if (next->sight.forecast != NULL && (is_complete (self, next) || (next->whole != NULL && g_get_monotonic_time () - next->since > PATIENCE_US)))
    show_next (self);
  if (self->shown.sight.forecast == NULL || wanted->forecast == self->shown.sight.forecast)
    {
      view_clear (self, next);
      if (self->shown.sight.forecast != NULL && !sw_cloth_size_equal (&self->shown.sight.size, &wanted->size))
        still_take (self);
      view_set (self, &self->shown, wanted);
    }
  else if (next->sight.forecast == NULL || next->sight.forecast == wanted->forecast)
    view_set (self, next, wanted);
  ask (self);
}

static gboolean
same_sight (const SwClothSight *a, const SwClothSight *b)
{
  return a->forecast == b->forecast && sw_cloth_size_equal (&a->size, &b->size) && a->left == b->left && a->top == b->top &&
         a->width == b->width && a->height == b->height;
}

gboolean
sw_cloth_tiles_look (SwClothTiles *self, const SwClothSight *sight)
{
  const gsize view_bytes = ((gsize) sight->width / SW_TILE_PX + 2) * ((gsize) sight->height / SW_TILE_PX + 2) * TILE_BYTES;

  g_return_val_if_fail (sight->forecast != NULL && sight->width > 0 && sight->height > 0, FALSE);

  if (same_sight (&self->wanted, sight))
    return FALSE;
  sight_set (&self->wanted, sight);
  sw_tile_cache_set_most_bytes (self->cache, MAX (MOST_BYTES, MOST_VIEWS * view_bytes));
  follow (self);
  return TRUE;
}

/* The worker */

static gpointer
run_worker (gpointer question, gpointer user_data, GCancellable *cancellable, GError **error)
{
  SwClothJob *asked = question, *answer = sw_cloth_job_new (asked->forecast, &asked->size, asked->picture);

  answer->whole = asked->whole;
  g_array_append_vals (answer->places, asked->places->data, asked->places->len);
  sw_cloth_job_run (answer, g_get_monotonic_time () + GO_US, cancellable);
  return answer;
}

/* What a job painted goes to its forecast's view; if that is gone meanwhile, nowhere. */
static void
keep (SwClothTiles *self, SwClothJob *job)
{
  View *view = job->forecast == self->shown.sight.forecast ? &self->shown : job->forecast == self->next.sight.forecast ? &self->next
                                                                                                                       : NULL;
  Level *level = NULL;

  if (view == NULL)
    return;
  if (job->whole_piece != NULL)
    {
      g_clear_pointer (&view->whole, sw_cloth_pixels_free);
      view->whole = g_steal_pointer (&job->whole_piece);
    }
  for (int i = 0; i < view->n_levels; i++)
    if (view->levels[i].picture == job->picture)
      level = &view->levels[i];
  if (level == NULL)
    return;
  level->prepared |= job->pieces->len > 0;
  g_ptr_array_set_free_func (job->pieces, NULL);
  for (guint i = 0; i < job->pieces->len; i++)
    {
      const SwTilePlace place = g_array_index (job->places, SwTilePlace, i);

      sw_tile_cache_put (self->cache, &(SwTileKey){ job->picture, place.column, place.line }, g_ptr_array_index (job->pieces, i), TILE_BYTES);
    }
}

static void
answered_cb (gpointer data, const GError *error, gpointer user_data)
{
  SwClothTiles *self = user_data;
  SwClothJob *job = data;

  self->painted += job->pieces->len;
  keep (self, job);
  sw_cloth_job_free (job);
  follow (self);
  self->ready (self->user_data);
}

/* The quick picture is made before the tiles if those will take long or are there. */
static gboolean
wants_whole (SwClothTiles *self, const View *view)
{
  const gboolean soon = view == &self->next && view->levels[0].prepared;

  return view->whole == NULL && (!soon || g_get_monotonic_time () - view->since > PATIENCE_US);
}

/* Asks for what is missing, the nearest first; what was asked before and not begun is forgotten. */
static void
ask (SwClothTiles *self)
{
  const View *view = active (self);
  SwClothJob *job;
  guint n_seen;
  g_autoptr (GArray) places = NULL;

  if (view->sight.forecast == NULL || sw_latest_is_busy (self->latest))
    return;
  places = plan (&view->sight, view == &self->shown, &n_seen);
  job = sw_cloth_job_new (view->sight.forecast, &view->sight.size, view->levels[0].picture);
  job->whole = wants_whole (self, view);
  for (guint i = 0; i < places->len && job->places->len < MOST_IN_A_GO; i++)
    {
      const SwTilePlace place = g_array_index (places, SwTilePlace, i);

      if (tile_at (self, view, place) == NULL)
        g_array_append_val (job->places, place);
    }
  if (job->whole || job->places->len > 0)
    sw_latest_ask (self->latest, job);
  else
    sw_cloth_job_free (job);
}

gboolean
sw_cloth_tiles_wait (SwClothTiles *self, gint64 until_us)
{
  while (!sw_cloth_tiles_is_sharp (self))
    if (active (self)->n_levels == 0 || !active (self)->levels[0].prepared || !sw_latest_is_busy (self->latest) || !sw_latest_wait (self->latest, until_us))
      return FALSE;
  return TRUE;
}

gboolean
sw_cloth_tiles_is_sharp (SwClothTiles *self)
{
  return self->shown.sight.forecast != NULL && same_sight (&self->shown.sight, &self->wanted) && is_complete (self, &self->shown);
}

/* Showing */

static void
show (GArray *pieces, const SwClothSight *sight, SwClothPixels *piece, double x, double y, double width, double height, gboolean turned)
{
  double all, high;
  SwClothShown shown = { piece, x, y, width, height, turned };

  sw_cloth_size_extent (sight->forecast, &sight->size, &all, &high);
  if (turned)
    shown.x = all - x - width;
  shown.x += sight->left;
  shown.y += sight->top;
  g_array_append_val (pieces, shown);
}

/* Whether a piece hides all that is seen of the cloth. */
static gboolean
hides_all (const SwClothShown *shown, const SwClothSight *sight)
{
  const SwTileBox picture = picture_of (sight);

  return shown->x <= MAX (0, sight->left + picture.x) && shown->y <= MAX (0, sight->top + picture.y) &&
         shown->x + shown->width >= MIN (sight->width, sight->left + picture.x + picture.width) &&
         shown->y + shown->height >= MIN (sight->height, sight->top + picture.y + picture.height);
}

static void
show_stand_ins (SwClothTiles *self, GArray *pieces)
{
  const View *view = &self->shown;
  const SwClothSight *sight = &view->sight;
  double width, height;

  sw_cloth_size_extent (sight->forecast, &sight->size, &width, &height);
  if (view->whole != NULL)
    show (pieces, sight, view->whole, 0, 0, width, height, sight->size.purl_side);
  if (self->still != NULL)
    {
      const double x = sight->size.stitch / self->still_size.stitch, y = sight->size.row / self->still_size.row;
      const SwTileBox *box = &self->still_box;

      show (pieces, sight, self->still, box->x * x, box->y * y, box->width * x, box->height * y, self->still_size.purl_side != sight->size.purl_side);
      if (pieces->len == 2 && hides_all (&g_array_index (pieces, SwClothShown, 1), sight))
        g_array_remove_index (pieces, 0);
    }
}

GArray *
sw_cloth_tiles_show (SwClothTiles *self, SwClothSight *sight)
{
  const View *view = &self->shown;
  g_autoptr (GArray) places = NULL;
  GArray *pieces;
  guint n;

  *sight = view->sight;
  if (sight->forecast == NULL)
    return NULL;
  pieces = g_array_new (FALSE, FALSE, sizeof (SwClothShown));
  if (is_complete (self, view))
    still_clear (self);
  else
    show_stand_ins (self, pieces);
  places = plan (sight, FALSE, &n);
  for (guint i = 0; i < n; i++)
    {
      const SwTilePlace place = g_array_index (places, SwTilePlace, i);
      const SwTileBox box = sw_tile_box (place);
      SwClothPixels *piece = tile_at (self, view, place);

      if (piece != NULL)
        show (pieces, sight, piece, box.x, box.y, box.width, box.height, FALSE);
    }
  return pieces;
}

gsize
sw_cloth_tiles_get_bytes (const SwClothTiles *self)
{
  return sw_tile_cache_get_bytes (self->cache);
}

guint
sw_cloth_tiles_get_painted (const SwClothTiles *self)
{
  return self->painted;
}

SwClothTiles *
sw_cloth_tiles_new (SwClothTilesReady ready, gpointer user_data)
{
  SwClothTiles *self = g_new0 (SwClothTiles, 1);

  self->ready = ready;
  self->user_data = user_data;
  self->cache = sw_tile_cache_new (MOST_BYTES, (GDestroyNotify) sw_cloth_pixels_free);
  self->latest = sw_latest_new (run_worker, answered_cb, self, (GDestroyNotify) sw_cloth_job_free, (GDestroyNotify) sw_cloth_job_free);
  return self;
}

void
sw_cloth_tiles_free (SwClothTiles *self)
{
  sw_latest_free (self->latest);
  view_clear (self, &self->shown);
  view_clear (self, &self->next);
  still_clear (self);
  g_clear_pointer (&self->wanted.forecast, sw_forecast_unref);
  sw_tile_cache_free (self->cache);
  g_free (self);
}
