/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <gio/gio.h>

G_BEGIN_DECLS

/**
 * sw_jpeg_encode:
 * @surface: CAIRO_FORMAT_RGB24
 * @title, @description: UTF-8
 *
 * Returns: (transfer full): a JPEG of quality 92 whose colours are as fine as
 *   its greys, with an sRGB profile, pixels of 1/96 in and the words as XMP;
 *   no time. NULL with @error
 */
GBytes *sw_jpeg_encode (cairo_surface_t *surface, const char *title, const char *description, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_jpeg_decode:
 * Returns: (transfer full): the picture, opaque; NULL with @error, whose sentence is the library's
 */
cairo_surface_t *sw_jpeg_decode (const guint8 *data, gsize n, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
