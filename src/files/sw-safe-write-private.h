/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/**
 * sw_safe_write:
 * @etag: (nullable): what the file must still be, or G_IO_ERROR_WRONG_ETAG
 * @new_etag: (out) (optional) (transfer full): NULL if the place has none
 *
 * Writes a new file beside @file, sees it on the disk and renames it into
 * place: after a failure, a crash or a full disk @file is as it was. A link
 * is followed, permissions are kept, a file that may not be written to is
 * left alone. (g_file_replace_contents() writes over the old file itself
 * where it cannot make a new one beside it, or is given a link.)
 *
 * Places without a path (remote ones) are left to GIO's own replacing.
 */
gboolean sw_safe_write (GFile *file, const char *text, gsize n, const char *etag, char **new_etag, GCancellable *cancellable, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
