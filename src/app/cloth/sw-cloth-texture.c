/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/cloth/sw-cloth-texture.h"

#include "draw/sw-cloth-raster.h"

#include <math.h>
#include <string.h>

/* Painted ahead on all sides while scrolling, device pixels: preparing a painting costs more than these few lines. */
#define AHEAD 160

/* A stitch's loop reaches into its neighbours' columns. */
#define NEIGHBOURS 2

struct _SwClothTexture
{
  SwForecast *forecast;
  double stitch, row;
  gboolean purl_side;
  GdkRectangle held;
  guint32 *pixels; /* held.width x held.height, owned by the bytes of the texture */
  GdkTexture *texture;
};

SwClothTexture *
sw_cloth_texture_new (void)
{
  return g_new0 (SwClothTexture, 1);
}

static void
let_go (SwClothTexture *self)
{
  g_clear_object (&self->texture);
  g_clear_pointer (&self->forecast, sw_forecast_unref);
  self->pixels = NULL;
}

void
sw_cloth_texture_free (SwClothTexture *self)
{
  let_go (self);
  g_free (self);
}

/* Paints @box of the cloth into @pixels, which show @held. */
static void
paint (SwForecast *forecast, double stitch, double row, gboolean purl_side, const GdkRectangle *box, const GdkRectangle *held, guint32 *pixels)
{
  const gsize rows = sw_layout_rows (&forecast->layout), columns = forecast->layout.width;
  const double first = floor (box->x / stitch) - NEIGHBOURS, last = ceil ((box->x + box->width) / stitch) + NEIGHBOURS;
  guint32 *corner = pixels + (gsize) (box->y - held->y) * (gsize) held->width + (box->x - held->x);
  SwClothGeometry geometry = { .stitch = stitch, .row = row, .rows = rows, .purl_side = purl_side };

  if (box->width <= 0 || box->height <= 0)
    return;
  geometry.first_column = (gsize) CLAMP (first, 0, (double) columns);
  geometry.columns = (gsize) CLAMP (last, (double) geometry.first_column, (double) columns) - geometry.first_column;
  geometry.cloth = (SwBox){ (double) geometry.first_column * stitch, 0, (double) geometry.columns * stitch, (double) rows * row };
  if (geometry.columns > 0 && rows > 0)
    sw_cloth_raster (forecast, &geometry, 1, box->x, box->y, box->width, box->height, held->width, corner);
}

/* What is common to the old picture and the new @box is copied; what lies above, below, left and right of it is painted. */
static void
carry_over (SwClothTexture *self, const GdkRectangle *common, const GdkRectangle *box, guint32 *pixels)
{
  const int below = common->y + common->height, right = common->x + common->width;
  const GdkRectangle parts[] = {
    { box->x, box->y, box->width, common->y - box->y },
    { box->x, below, box->width, box->y + box->height - below },
    { box->x, common->y, common->x - box->x, common->height },
    { right, common->y, box->x + box->width - right, common->height },
  };

  for (int y = common->y; y < below; y++)
    memcpy (pixels + (gsize) (y - box->y) * (gsize) box->width + (common->x - box->x),
            self->pixels + (gsize) (y - self->held.y) * (gsize) self->held.width + (common->x - self->held.x),
            (gsize) common->width * sizeof (guint32));
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    paint (self->forecast, self->stitch, self->row, self->purl_side, &parts[i], box, pixels);
}

static GdkRectangle
with_margin (const GdkRectangle *box, int margin)
{
  return (GdkRectangle){ box->x - margin, box->y - margin, box->width + 2 * margin, box->height + 2 * margin };
}

static gboolean
contains (const GdkRectangle *outer, const GdkRectangle *inner)
{
  return inner->x >= outer->x && inner->y >= outer->y &&
         inner->x + inner->width <= outer->x + outer->width && inner->y + inner->height <= outer->y + outer->height;
}

GdkTexture *
sw_cloth_texture_get (SwClothTexture *self, SwForecast *forecast, double stitch, double row, gboolean purl_side, const GdkRectangle *wanted, GdkRectangle *held, gboolean *fresh)
{
  const gboolean same = self->texture != NULL && self->forecast == forecast && self->stitch == stitch && self->row == row && self->purl_side == purl_side;
  g_autoptr (GBytes) bytes = NULL;
  GdkRectangle common, box = *wanted;
  guint32 *pixels;
  gsize size;

  g_return_val_if_fail (wanted->width > 0 && wanted->height > 0, NULL);

  *fresh = !(same && contains (&self->held, wanted));
  if (!*fresh)
    {
      *held = self->held;
      return self->texture;
    }

  if (same)
    box = with_margin (wanted, AHEAD);
  size = (gsize) box.width * (gsize) box.height * sizeof (guint32);
  pixels = g_malloc0 (size);
  if (same && gdk_rectangle_intersect (&self->held, &box, &common))
    carry_over (self, &common, &box, pixels);
  else
    paint (forecast, stitch, row, purl_side, &box, &box, pixels);

  sw_forecast_ref (forecast);
  let_go (self);
  self->forecast = forecast;
  self->stitch = stitch;
  self->row = row;
  self->purl_side = purl_side;
  self->held = *held = box;
  self->pixels = pixels;
  bytes = g_bytes_new_take (pixels, size);
  self->texture = gdk_memory_texture_new (box.width, box.height, GDK_MEMORY_DEFAULT, bytes, (gsize) box.width * sizeof (guint32));
  return self->texture;
}
