/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* The .colourway file: JSON, described in docs/file-format.md and data/colourway.schema.json. */

#define SW_COLOURWAY_VERSION 1
#define SW_COLOURWAY_MAX_BYTES (8 * 1024 * 1024)

#define SW_FILE_ERROR (sw_file_error_quark ())
GQuark sw_file_error_quark (void);
typedef enum
{
  SW_FILE_ERROR_SYNTAX,  /* not JSON; line and column in the sentence */
  SW_FILE_ERROR_VERSION, /* made by a newer Strandwise */
  SW_FILE_ERROR_MEMBER,  /* a member is missing, of the wrong kind or out of range; its path is in the sentence */
  SW_FILE_ERROR_SIZE,
  SW_FILE_ERROR_PICTURE, /* a picture that could not be drawn or written */
  SW_FILE_ERROR_MARK,    /* the maker's mark, which a picture can do without */
  SW_FILE_ERROR_REFUSED, /* a drawing that asks for what no layout needs */
} SwFileError;

/**
 * sw_colourway_parse:
 * @bytes: (array length=n): UTF-8
 * Returns: (transfer full): the sketch, validated; members it does not know are kept in it
 */
SwSketch *sw_colourway_parse (const char *bytes, gsize n, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_colourway_print:
 * Returns: (transfer full): the file's text: stable order, stable numbers, ends with a newline
 */
char *sw_colourway_print (const SwSketch *sketch) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_colourway_load: the path of the maker's mark is made whole: see sw_mark_path_find()
 * @etag: (out) (optional): the entity tag of what was read, for sw_colourway_save(); NULL if the place has none
 * @error: SW_FILE_ERROR, or G_IO_ERROR if it could not be read
 */
SwSketch *sw_colourway_load (GFile *file, char **etag, GCancellable *cancellable, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_colourway_save:
 * @etag: (inout) (optional): the entity tag it was loaded with, NULL to overwrite; the new one
 * The maker's mark is told from the file's folder: see sw_mark_path_keep().
 * Writes beside the file and renames: the old file stays as it was if anything fails.
 */
gboolean sw_colourway_save (const SwSketch *sketch, GFile *file, char **etag, GCancellable *cancellable, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
