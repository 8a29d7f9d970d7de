/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/**
 * sw_json_print:
 * @node: not deeper than SW_JSON_MAX_DEPTH
 *
 * Returns: (transfer full): the text, laid out to be read and compared by
 *   line: two spaces in, a member on each line, but lists of plain values on
 *   one. Ends with a newline. (json-glib puts each number of a spectrum on a
 *   line of its own.)
 */
char *sw_json_print (JsonNode *node) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_json_print_compact:
 * Returns: (transfer full): the same on one line without spaces
 */
char *sw_json_print_compact (JsonNode *node) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_json_number:
 * Returns: (transfer full): the fewest of 15, 16 or 17 digits that read back
 *   as the same double, whatever the locale
 */
char *sw_json_number (double number) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
