/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

typedef enum
{
  SW_FILE_DEED_READ,
  SW_FILE_DEED_WRITE,
} SwFileDeed;

/**
 * sw_file_error_in_words:
 * @error: (inout): what went wrong with @file
 *
 * Turns an error of the system into a SW_DOCUMENT_ERROR whose sentence names
 * the file and says what to do. Other sentences (SW_FILE_ERROR) get the file's
 * name put before them. That a deed was cancelled stays as it is.
 */
void sw_file_error_in_words (GError **error, SwFileDeed deed, GFile *file);

/* Returns: (transfer full): the file's name as a person knows it */
char *sw_file_display_name (GFile *file) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
