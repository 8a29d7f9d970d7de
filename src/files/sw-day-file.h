/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sheet/sw-day-clock.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/*
 * A dye day under way as a small file that a person can read, so that it
 * outlives the program: which deed is being done, when each timer ends by the
 * clock on the wall, what is paused, and what was done when.
 */

#define SW_DAY_FILE_VERSION 1
#define SW_DAY_FILE_MAX_BYTES (4 * 1024 * 1024)

/**
 * sw_day_file_print:
 * @document: (nullable): the colourway it belongs to, as an address; for whoever reads the file
 * Returns: (transfer full): JSON, ends with a newline
 */
char *sw_day_file_print (const SwDayClock *clock, const char *document) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_day_file_parse:
 * @bytes: (array length=n): followed by a NUL byte
 * @error: SW_FILE_ERROR
 * Returns: (transfer full): to be woken with sw_day_clock_wake()
 */
SwDayClock *sw_day_file_parse (const char *bytes, gsize n, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Writes beside the file and renames: after a crash there is the old state or the new one. */
gboolean sw_day_file_save (const SwDayClock *clock, const char *document, const char *path, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* @error: also G_FILE_ERROR_NOENT if there is none */
SwDayClock *sw_day_file_load (const char *path, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
