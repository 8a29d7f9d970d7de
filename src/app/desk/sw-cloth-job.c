/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-cloth-job.h"

#include "draw/sw-cloth-raster.h"

#include <math.h>

/* The quick picture is averaged, so it needs no stitches prepared, and holds so many pixels at most. */
#define WHOLE_STITCH_PX (0.95 * SW_CLOTH_AVERAGE_BELOW)
#define WHOLE_MOST_PX (1 << 20)

SwClothPixels *
sw_cloth_pixels_new (int width, int height, guint32 *pixels)
{
  SwClothPixels *piece = g_new0 (SwClothPixels, 1);

  piece->width = width;
  piece->height = height;
  piece->bytes = g_bytes_new_take (pixels, sizeof *pixels * (gsize) width * (gsize) height);
  return piece;
}

void
sw_cloth_pixels_free (SwClothPixels *piece)
{
  if (piece->texture != NULL)
    piece->free_texture (piece->texture);
  g_bytes_unref (piece->bytes);
  g_free (piece);
}

SwClothJob *
sw_cloth_job_new (SwForecast *forecast, const SwClothSize *size, guint picture)
{
  SwClothJob *job = g_new0 (SwClothJob, 1);

  job->forecast = sw_forecast_ref (forecast);
  job->size = *size;
  job->picture = picture;
  job->places = g_array_new (FALSE, FALSE, sizeof (SwTilePlace));
  job->pieces = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_cloth_pixels_free);
  return job;
}

void
sw_cloth_job_free (SwClothJob *job)
{
  sw_forecast_unref (job->forecast);
  g_array_unref (job->places);
  g_clear_pointer (&job->whole_piece, sw_cloth_pixels_free);
  g_ptr_array_unref (job->pieces);
  g_free (job);
}

static SwClothPixels *
paint (const SwForecast *forecast, const SwClothSize *size, const SwTileBox *box)
{
  guint32 *pixels = g_new (guint32, (gsize) box->width * (gsize) box->height);

  sw_cloth_part (forecast, size, box->x, box->y, box->width, box->height, box->width, pixels);
  return sw_cloth_pixels_new (box->width, box->height, pixels);
}

/* All of the cloth, as seen from the knit side: whoever shows the purl side turns it over. */
static SwClothPixels *
paint_whole (const SwForecast *forecast)
{
  const double stitches = (double) forecast->layout.width * (double) sw_layout_rows (&forecast->layout);
  const double most = sqrt (WHOLE_MOST_PX * forecast->stitch_width_cm / (MAX (stitches, 1) * forecast->row_height_cm));
  const SwClothSize size = sw_cloth_size (forecast, MIN (most, WHOLE_STITCH_PX), FALSE);
  double width, height;

  sw_cloth_size_extent (forecast, &size, &width, &height);
  return paint (forecast, &size, &(SwTileBox){ 0, 0, MAX ((int) lround (width), 1), MAX ((int) lround (height), 1) });
}

void
sw_cloth_job_run (SwClothJob *job, gint64 until_us, GCancellable *cancellable)
{
  if (job->whole)
    job->whole_piece = paint_whole (job->forecast);
  for (guint i = 0; i < job->places->len; i++)
    {
      const SwTileBox box = sw_tile_box (g_array_index (job->places, SwTilePlace, i));

      if ((i > 0 || job->whole) && (g_get_monotonic_time () >= until_us || g_cancellable_is_cancelled (cancellable)))
        break;
      g_ptr_array_add (job->pieces, paint (job->forecast, &job->size, &box));
    }
}
