/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <gio/gio.h>

G_BEGIN_DECLS

/**
 * sw_png_encode:
 * @surface: CAIRO_FORMAT_RGB24
 * @title: UTF-8
 * @description: UTF-8
 *
 * Returns: (transfer full): a PNG that says its colours are sRGB and its
 *   pixels 1/96 in, with the title and the description as text; no time. NULL with @error
 */
GBytes *sw_png_encode (cairo_surface_t *surface, const char *title, const char *description, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
