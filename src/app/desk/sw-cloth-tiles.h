/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-cloth-job.h"

G_BEGIN_DECLS

/*
 * What a window shows of a cloth that is scrolled and zoomed: tiles painted
 * beside the main thread and kept, up to a limit of memory.
 *
 * Within one forecast there is always something to see: until its tiles are
 * there, what was seen at another size stands in for them, enlarged or
 * reduced, and beside that the whole cloth in few pixels; tiles come the
 * nearest first. Tiles of two forecasts are never shown together: of a new
 * one nothing is seen until all that is seen of it is there, and then all of
 * it. If that takes too long, its quick picture comes first. A forecast on its
 * way is finished though a newer one has come, so that a hand that does not
 * rest keeps seeing pictures.
 */
typedef struct _SwClothTiles SwClothTiles;

/* In the main thread: there is more to show. */
typedef void (*SwClothTilesReady) (gpointer user_data);

SwClothTiles *sw_cloth_tiles_new (SwClothTilesReady ready, gpointer user_data) G_GNUC_WARN_UNUSED_RESULT;
void sw_cloth_tiles_free (SwClothTiles *self);

/**
 * SwClothSight: what is looked at, device pixels.
 * @left, @top: of the whole cloth's upper left corner in the view
 * @width, @height: of the view, > 0
 * @edit_time: of the newest edit in the forecast
 */
typedef struct
{
  SwForecast *forecast;
  gint64 edit_time;
  SwClothSize size;
  int left, top, width, height;
} SwClothSight;

/* Returns: whether it is another sight than before; else it does nothing. The cloth has rows. */
gboolean sw_cloth_tiles_look (SwClothTiles *self, const SwClothSight *sight);

/**
 * sw_cloth_tiles_wait:
 * @until_us: g_get_monotonic_time() at which to give up
 * Waits for what was last looked at, if it may be there soon: stitches of a new size take their time to prepare.
 * Returns: FALSE if something is still missing
 */
gboolean sw_cloth_tiles_wait (SwClothTiles *self, gint64 until_us);

/* Whether all that was last looked at is shown, as sharp as it gets. */
gboolean sw_cloth_tiles_is_sharp (SwClothTiles *self);

/* Where a piece is shown, device pixels of the view. */
typedef struct
{
  SwClothPixels *piece; /* valid until the main loop runs */
  double x, y, width, height;
  gboolean turned; /* its left side is shown on the right */
} SwClothShown;

/**
 * sw_cloth_tiles_show:
 * @sight: (out caller-allocates): what it is of: for a moment it may be what was looked at before
 * Returns: (transfer full) (nullable): of SwClothShown, from below upwards; NULL before the first
 */
GArray *sw_cloth_tiles_show (SwClothTiles *self, SwClothSight *sight);

/* Bytes of memory in tiles, and how many tiles were painted since the beginning. */
gsize sw_cloth_tiles_get_bytes (const SwClothTiles *self);
guint sw_cloth_tiles_get_painted (const SwClothTiles *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwClothTiles, sw_cloth_tiles_free)

G_END_DECLS
