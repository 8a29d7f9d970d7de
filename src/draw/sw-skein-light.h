/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/*
 * What a picture of the laid skeins owes to how the wraps lie and not to their
 * colours: where each pixel takes its colour from, and its light. It is worked
 * out once for a lay, a yarn and a size, and kept from one picture to the next
 * as prepared stitches are: while a pour is under the hand only colours change.
 * What is drawn does not depend on whether it was kept.
 */
typedef struct _SwSkeinLight SwSkeinLight;

/**
 * sw_skein_light_new:
 * @window: pixels over the laid length and width of all the skeins, and which of them are wanted
 */
SwSkeinLight *sw_skein_light_new (const SwSketch *sketch, const SwFaceWindow *window) G_GNUC_WARN_UNUSED_RESULT;

/* The same, kept or new. */
SwSkeinLight *sw_skein_light_get (const SwSketch *sketch, const SwFaceWindow *window) G_GNUC_WARN_UNUSED_RESULT;
void sw_skein_light_unref (SwSkeinLight *self);

/**
 * sw_skein_light_shade: never changes it, so that any number of threads may
 * @face: the window's colours as 0xffRRGGBB, the near edge first
 * @stride: pixels from one line of @pixels to the next
 * @pixels: (out caller-allocates): premultiplied CAIRO_FORMAT_ARGB32, the far edge first
 */
void sw_skein_light_shade (const SwSkeinLight *self, const guint32 *face, int stride, guint32 *pixels);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwSkeinLight, sw_skein_light_unref)

G_END_DECLS
