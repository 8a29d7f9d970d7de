/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Measured colours in the colour exchange format, CxF3 (ISO 17972-1), as
 * instruments and their programs write it. Only what is needed of it here is
 * read: one reflectance spectrum.
 */

/* Whether bytes begin as XML does, a byte order mark and blanks passed over. */
gboolean sw_cxf_is_likely (const char *bytes, gsize n);

/**
 * sw_cxf_spectrum:
 * @error: SW_FILE_ERROR with a sentence
 * Returns: (transfer full): the file's first reflectance spectrum as lines
 *   "nm,reflectance", for sw_spectrum_from_text()
 *
 * Nothing else is opened, and a document type is refused, so that no file can
 * grow in memory or reach for other files.
 */
char *sw_cxf_spectrum (const char *bytes, gsize n, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
