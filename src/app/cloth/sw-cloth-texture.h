/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "forecast/sw-forecast.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/*
 * The part of the cloth that is seen, painted and kept. Scrolling moves what
 * is painted and paints only what comes into view.
 */
typedef struct _SwClothTexture SwClothTexture;

SwClothTexture *sw_cloth_texture_new (void) G_GNUC_WARN_UNUSED_RESULT;
void sw_cloth_texture_free (SwClothTexture *self);

/**
 * sw_cloth_texture_get:
 * @stitch, @row: device pixels of one stitch's width and one row's height
 * @purl_side: the cloth is seen from behind
 * @wanted: device pixels from the whole cloth's upper left corner; may reach beyond it
 * @held: (out caller-allocates): what the texture shows, holds @wanted
 * @fresh: (out): whether anything was painted
 * Returns: (transfer none): valid until the next call
 */
GdkTexture *sw_cloth_texture_get (SwClothTexture *self, SwForecast *forecast, double stitch, double row, gboolean purl_side, const GdkRectangle *wanted, GdkRectangle *held, gboolean *fresh);

G_END_DECLS
