/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-canvas.h"
#include "draw/sw-relief.h"
#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/*
 * The laid skeins as a camera sees them: wraps, ties, light from the upper
 * left, dry or wet. The canvas of the pan has its own plainer drawing, whose
 * colours are easier to read beneath marks.
 */
typedef struct _SwLaid SwLaid;

/* Wet if the sketch's listing says so. */
SwLaid *sw_laid_new (const SwForecast *forecast, gboolean second_face) G_GNUC_WARN_UNUSED_RESULT;
void sw_laid_free (SwLaid *self);

/* Heights of all that is laid, from its upper left; kept as long as @self is. */
const SwRelief *sw_laid_get_relief (const SwLaid *self);

/**
 * sw_laid_raster:
 * @window: pixels over the laid length and width of all the skeins, and which of them are painted
 * @pixels: (out caller-allocates): the window's pixels, premultiplied CAIRO_FORMAT_ARGB32, the far edge first
 *
 * The yarn without its ties. The mean of the light over it is 1 while it is dry.
 */
void sw_laid_raster (SwLaid *self, const SwFaceWindow *window, int stride, guint32 *pixels);

/* Shadow, skeins and ties into @box: the laid length and width. */
void sw_laid_draw (SwLaid *self, const SwCanvas *canvas, const SwBox *box);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwLaid, sw_laid_free)

G_END_DECLS
