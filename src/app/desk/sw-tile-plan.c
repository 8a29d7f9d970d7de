/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-tile-plan.h"

/* Tiles from one place up to before another. */
typedef struct
{
  int left, top, right, bottom;
} Span;

typedef struct
{
  SwTilePlace place;
  gint64 distance; /* squared */
} Candidate;

SwTileBox
sw_tile_box (SwTilePlace place)
{
  return (SwTileBox){ place.column * SW_TILE_PX - SW_TILE_BEFORE, place.line * SW_TILE_PX - SW_TILE_BEFORE, SW_TILE_PX, SW_TILE_PX };
}

/* Of one axis: the tile that holds that pixel. */
static int
tile_at (int px)
{
  const int from = px + SW_TILE_BEFORE;

  return from >= 0 ? from / SW_TILE_PX : -((SW_TILE_PX - 1 - from) / SW_TILE_PX);
}

/* The tiles of what both boxes hold. */
static Span
span_of (const SwTileBox *a, const SwTileBox *b)
{
  const int left = MAX (a->x, b->x), right = MIN (a->x + a->width, b->x + b->width);
  const int top = MAX (a->y, b->y), bottom = MIN (a->y + a->height, b->y + b->height);

  if (left >= right || top >= bottom)
    return (Span){ 0, 0, 0, 0 };
  return (Span){ tile_at (left), tile_at (top), tile_at (right - 1) + 1, tile_at (bottom - 1) + 1 };
}

static gboolean
holds (const Span *span, int column, int line)
{
  return column >= span->left && column < span->right && line >= span->top && line < span->bottom;
}

static gint64
square (gint64 n)
{
  return n * n;
}

static gint64
from_middle (SwTilePlace place, const SwTileBox *seen)
{
  const SwTileBox box = sw_tile_box (place);

  return square (2 * box.x + box.width - 2 * seen->x - seen->width) + square (2 * box.y + box.height - 2 * seen->y - seen->height);
}

/* Of one axis: how far @from .. @to lies outside @low .. @high. */
static gint64
gap (int from, int to, int low, int high)
{
  return MAX (MAX (low - to, from - high), 0);
}

static gint64
from_edge (SwTilePlace place, const SwTileBox *seen)
{
  const SwTileBox box = sw_tile_box (place);

  return square (gap (box.x, box.x + box.width, seen->x, seen->x + seen->width)) + square (gap (box.y, box.y + box.height, seen->y, seen->y + seen->height));
}

static int
compare_distance (gconstpointer a, gconstpointer b)
{
  const Candidate *x = a, *y = b;

  if (x->distance != y->distance)
    return x->distance < y->distance ? -1 : 1;
  if (x->place.line != y->place.line)
    return x->place.line < y->place.line ? -1 : 1;
  return (x->place.column > y->place.column) - (x->place.column < y->place.column);
}

/* Appends the tiles of @span that are not in @but, the nearest first, @most of them. */
static void
append_span (GArray *places, const Span *span, const Span *but, gint64 (*distance) (SwTilePlace place, const SwTileBox *seen), const SwTileBox *seen, guint most)
{
  g_autoptr (GArray) candidates = g_array_new (FALSE, FALSE, sizeof (Candidate));

  for (int line = span->top; line < span->bottom; line++)
    for (int column = span->left; column < span->right; column++)
      if (but == NULL || !holds (but, column, line))
        {
          Candidate candidate = { .place = { column, line } };

          candidate.distance = distance (candidate.place, seen);
          g_array_append_val (candidates, candidate);
        }
  g_array_sort (candidates, compare_distance);
  for (guint i = 0; i < MIN (candidates->len, most); i++)
    g_array_append_val (places, g_array_index (candidates, Candidate, i).place);
}

GArray *
sw_tile_plan (const SwTileBox *picture, const SwTileBox *seen, const SwTileBox *ahead, guint most, guint *n_seen)
{
  GArray *places = g_array_new (FALSE, FALSE, sizeof (SwTilePlace));
  const Span inner = span_of (picture, seen);

  append_span (places, &inner, NULL, from_middle, seen, G_MAXUINT);
  *n_seen = places->len;
  if (ahead != NULL)
    {
      const Span outer = span_of (picture, ahead);

      append_span (places, &outer, &inner, from_edge, seen, most);
    }
  return places;
}
