/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <gio/gio.h>

G_BEGIN_DECLS

/**
 * sw_maker_mark_read:
 * @path: of a PNG or JPEG, UTF-8
 * @error: SW_FILE_ERROR_MARK with a sentence that names @path
 *
 * Returns: (transfer full): the maker's own picture, for SwLook.mark
 */
cairo_surface_t *sw_maker_mark_read (const char *path, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
