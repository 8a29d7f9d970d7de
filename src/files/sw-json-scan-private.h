/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What the guard's two halves share: how far the scan has come, and how it fails. Strings, numbers and words below; lists and objects in the guard. */

typedef enum
{
  SW_JSON_FAULT_EMPTY,
  SW_JSON_FAULT_NUL,
  SW_JSON_FAULT_UTF8,
  SW_JSON_FAULT_BEGIN,
  SW_JSON_FAULT_VALUE,
  SW_JSON_FAULT_NOT_FINITE,
  SW_JSON_FAULT_NUMBER,
  SW_JSON_FAULT_UNCLOSED,
  SW_JSON_FAULT_CONTROL,
  SW_JSON_FAULT_ESCAPE,
  SW_JSON_FAULT_SURROGATE,
  SW_JSON_FAULT_NAME,
  SW_JSON_FAULT_COLON,
  SW_JSON_FAULT_COMMA_OBJECT,
  SW_JSON_FAULT_COMMA_ARRAY,
  SW_JSON_FAULT_TRAILING,
  SW_JSON_FAULT_REST,
  SW_JSON_FAULT_DEPTH,
  SW_JSON_FAULT_VALUES,
} SwJsonFault;

typedef struct
{
  const char *text;
  const char *at;
  GString *path; /* of the value that is being scanned */
  guint n_values;
  const char *wanted; /* path to look for, or NULL */
  const char *found;
  GError *error;
} SwJsonScan;

/* Fails at the byte to which the scan has come. Always returns FALSE. */
gboolean sw_json_scan_fail (SwJsonScan *scan, SwJsonFault fault);

/* It is JSON, but the member at @at cannot be kept as it is; @sentence says why. Always returns FALSE. */
gboolean sw_json_scan_fail_member (SwJsonScan *scan, const char *at, const char *sentence);

/* Line of @at, from 1, and where it begins. */
guint sw_json_scan_line (const char *text, const char *at, const char **start);

void sw_json_scan_space (SwJsonScan *scan);

/* From the opening quote to behind the closing one. */
gboolean sw_json_scan_string (SwJsonScan *scan);

/* Scans a string. Returns: (transfer full): what it holds, escapes resolved; NULL if the scan failed */
char *sw_json_scan_name (SwJsonScan *scan);

/* A number that json-glib keeps as it is. */
gboolean sw_json_scan_number (SwJsonScan *scan);

/* true, false or null. */
gboolean sw_json_scan_word (SwJsonScan *scan);

G_END_DECLS
