/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-tile-plan.h"
#include "draw/sw-cloth-part.h"
#include "forecast/sw-latest.h"

G_BEGIN_DECLS

/* Pieces of a cloth painted beside the main thread, a few at a time. */

/* Pixels with a place for what a screen makes of them. */
typedef struct
{
  int width, height; /* no padding between lines */
  GBytes *bytes;     /* premultiplied CAIRO_FORMAT_ARGB32 */
  gpointer texture;  /* (nullable) (owned): of whoever shows it */
  GDestroyNotify free_texture;
} SwClothPixels;

/* @pixels: (transfer full): width x height, from g_malloc() */
SwClothPixels *sw_cloth_pixels_new (int width, int height, guint32 *pixels) G_GNUC_WARN_UNUSED_RESULT;
void sw_cloth_pixels_free (SwClothPixels *piece);

/**
 * SwClothJob: question and answer in one.
 * @whole: the quick picture is wanted, before all tiles
 * @places: of SwTilePlace: wanted, the most urgent first
 * @picture: the asker's number for forecast and size
 */
typedef struct
{
  SwForecast *forecast; /* (owned) */
  SwClothSize size;
  guint picture;
  gboolean whole;
  GArray *places; /* (owned) */

  SwClothPixels *whole_piece; /* (nullable): painted */
  GPtrArray *pieces;          /* painted: of the first of the places */
} SwClothJob;

SwClothJob *sw_cloth_job_new (SwForecast *forecast, const SwClothSize *size, guint picture) G_GNUC_WARN_UNUSED_RESULT;
void sw_cloth_job_free (SwClothJob *job);

/**
 * sw_cloth_job_run:
 * @until_us: g_get_monotonic_time() after which nothing more is begun; one piece is always painted
 * Paints as much as there is time for.
 */
void sw_cloth_job_run (SwClothJob *job, gint64 until_us, GCancellable *cancellable);

G_END_DECLS
