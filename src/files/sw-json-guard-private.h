/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Guards json-glib's parser. Version 1.6 parses by recursion without a limit,
 * takes comments and hexadecimal numbers for JSON, wraps whole numbers round
 * that are too large, and of two members of one name it silently keeps the
 * last. What passes here is JSON by RFC 8259 and holds nothing that the
 * parser would lose.
 */

#define SW_JSON_MAX_DEPTH 32
#define SW_JSON_MAX_VALUES 200000

/**
 * sw_json_guard:
 * @text: UTF-8 or not; @n bytes followed by a NUL byte
 * @error: SW_FILE_ERROR with the line and the column, counted from 1
 */
gboolean sw_json_guard (const char *text, gsize n, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_json_guard_line:
 * @text: what passed sw_json_guard()
 * @path: of a value: "steps[3].width_cm"; "" is the whole
 *
 * Returns: the line, from 1, on which that value begins; 0 if there is none.
 *   json-glib's nodes do not know their place, so it is looked for again.
 */
guint sw_json_guard_line (const char *text, const char *path);

/* Appends ".name" ("name" to an empty path), cut and cleaned so that it can stand in a sentence. */
void sw_json_path_append_name (GString *path, const char *name);
void sw_json_path_append_index (GString *path, guint index);

G_END_DECLS
