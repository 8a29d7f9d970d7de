/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/sw-cli.h"

#include "files/sw-svg.h"
#include "sketch/sw-sketch.h"

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/* What comes in and what goes out: files by name, and "-" for standard input and output. */

/**
 * sw_cli_read_sketch:
 * @name: a file's name or URI, or "-"
 * @error: its sentence begins with @name
 */
SwSketch *sw_cli_read_sketch (const char *name, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_cli_read_spectrum:
 * @name: as above, of a text of "nm,reflectance" lines
 * @reflectance: (out caller-allocates): SW_BANDS values
 */
gboolean sw_cli_read_spectrum (const char *name, double *reflectance, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_cli_read_drawing:
 * @name: as above, of an SVG drawing traced on the pan of @sketch
 */
SwTraced *sw_cli_read_drawing (const char *name, const SwSketch *sketch, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_cli_write:
 * @name: a file's name, or "-"
 *
 * A file that was there is replaced only when the new one is whole. What is
 * no plain file (a device, a pipe) is written to as it is.
 */
gboolean sw_cli_write (const char *name, GBytes *bytes, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Data for programs: UTF-8 as it is, whatever the locale. */
gboolean sw_cli_print_data (const char *text, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean sw_cli_print_json (JsonBuilder *builder, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Words for people, in the terminal's own encoding. */
gboolean sw_cli_print_words (const char *text, GError **error) G_GNUC_WARN_UNUSED_RESULT;
void sw_cli_say_words (const char *text);

/**
 * sw_cli_progress:
 * @what: (nullable): what is being done now, translated; NULL takes the line away again
 * Only when standard error is a terminal.
 */
void sw_cli_progress (const char *what);

/* What keeps a file from being read or written, in a dyer's words: a sentence without its full stop, as the system's are. */
typedef struct
{
  int code;          /* of GIOErrorEnum when reading, an errno when writing */
  const char *words; /* marked with N_() */
} SwCliReason;

/* The words for @code, translated, or @otherwise. */
const char *sw_cli_reason (const SwCliReason *reasons, gsize n, int code, const char *otherwise);

/* Display name of a file as typed: "standard input" for "-". */
char *sw_cli_display_name (const char *name) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
