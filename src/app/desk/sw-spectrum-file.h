/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "colour/sw-sample-forms.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* A file longer than this holds no spectrum of one sample. */
#define SW_SPECTRUM_FILE_MOST (1 << 20)

/**
 * sw_spectrum_file_load_async:
 * Reads a colour from a file of "nm,reflectance" lines, see sw_spectrum_from_text(), or of CxF3, see sw_cxf_spectrum().
 */
void sw_spectrum_file_load_async (GFile *file, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer user_data);

/**
 * sw_spectrum_file_load_finish:
 * @sample: (out caller-allocates)
 * @error: SW_COLOUR_ERROR or SW_DOCUMENT_ERROR with a sentence that names the file
 */
gboolean sw_spectrum_file_load_finish (GAsyncResult *result, SwSample *sample, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
