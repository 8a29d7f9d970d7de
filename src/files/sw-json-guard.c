/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-json-guard-private.h"

#include "files/sw-json-scan-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Characters of a name that a path shows. */
#define SHOWN_CHARS 60

static gboolean scan_value (SwJsonScan *scan, guint depth);

void
sw_json_path_append_name (GString *path, const char *name)
{
  gsize start;

  if (path->len > 0)
    g_string_append_c (path, '.');
  start = path->len;
  if (g_utf8_strlen (name, -1) <= SHOWN_CHARS)
    g_string_append (path, name);
  else
    {
      g_string_append_len (path, name, g_utf8_offset_to_pointer (name, SHOWN_CHARS) - name);
      g_string_append (path, "…");
    }
  for (char *p = path->str + start; *p != '\0'; p++)
    if (g_ascii_iscntrl (*p))
      *p = '?';
}

void
sw_json_path_append_index (GString *path, guint index)
{
  g_string_append_printf (path, "[%u]", index);
}

/* A member's name, which must be new in its object, and the colon. Appends the name to the path. */
static gboolean
scan_member_name (SwJsonScan *scan, GHashTable *names)
{
  const char *start = scan->at;
  char *name = sw_json_scan_name (scan);

  if (name == NULL)
    return FALSE;
  sw_json_path_append_name (scan->path, name);
  if (!g_hash_table_add (names, name))
    return sw_json_scan_fail_member (scan, start, _ ("This member is given a second time, and only one can count. Delete one of the two."));
  sw_json_scan_space (scan);
  if (*scan->at != ':')
    return sw_json_scan_fail (scan, *scan->at == '\0' ? SW_JSON_FAULT_UNCLOSED : SW_JSON_FAULT_COLON);
  scan->at++;
  return TRUE;
}

/* After an element: TRUE with @more telling a comma from the closing bracket. */
static gboolean
scan_separator (SwJsonScan *scan, char close, SwJsonFault missing, gboolean *more)
{
  sw_json_scan_space (scan);
  *more = *scan->at == ',';
  if (!*more && *scan->at != close)
    return sw_json_scan_fail (scan, *scan->at == '\0' ? SW_JSON_FAULT_UNCLOSED : missing);
  scan->at++;
  if (!*more)
    return TRUE;
  sw_json_scan_space (scan);
  if (*scan->at == close)
    {
      scan->at = scan->at - 1;
      return sw_json_scan_fail (scan, SW_JSON_FAULT_TRAILING);
    }
  return TRUE;
}

static gboolean
scan_object (SwJsonScan *scan, guint depth)
{
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  gsize path_length = scan->path->len;
  gboolean more;

  scan->at++;
  sw_json_scan_space (scan);
  if (*scan->at == '}')
    {
      scan->at++;
      return TRUE;
    }
  do
    {
      if (!scan_member_name (scan, names) || !scan_value (scan, depth + 1))
        return FALSE;
      g_string_truncate (scan->path, path_length);
      if (!scan_separator (scan, '}', SW_JSON_FAULT_COMMA_OBJECT, &more))
        return FALSE;
    }
  while (more);
  return TRUE;
}

static gboolean
scan_array (SwJsonScan *scan, guint depth)
{
  gsize path_length = scan->path->len;
  guint index = 0;
  gboolean more;

  scan->at++;
  sw_json_scan_space (scan);
  if (*scan->at == ']')
    {
      scan->at++;
      return TRUE;
    }
  do
    {
      sw_json_path_append_index (scan->path, index++);
      if (!scan_value (scan, depth + 1))
        return FALSE;
      g_string_truncate (scan->path, path_length);
      if (!scan_separator (scan, ']', SW_JSON_FAULT_COMMA_ARRAY, &more))
        return FALSE;
    }
  while (more);
  return TRUE;
}

static gboolean
scan_value (SwJsonScan *scan, guint depth)
{
  sw_json_scan_space (scan);
  if (depth > SW_JSON_MAX_DEPTH)
    return sw_json_scan_fail (scan, SW_JSON_FAULT_DEPTH);
  if (++scan->n_values > SW_JSON_MAX_VALUES)
    return sw_json_scan_fail (scan, SW_JSON_FAULT_VALUES);
  if (scan->found == NULL && scan->wanted != NULL && strcmp (scan->wanted, scan->path->str) == 0)
    scan->found = scan->at;
  switch (*scan->at)
    {
    case '{':
      return scan_object (scan, depth);
    case '[':
      return scan_array (scan, depth);
    case '"':
      return sw_json_scan_string (scan);
    case '-':
    case '+':
    case '.':
      return sw_json_scan_number (scan);
    default:
      return g_ascii_isdigit (*scan->at) ? sw_json_scan_number (scan) : sw_json_scan_word (scan);
    }
}

static gboolean
scan_text (SwJsonScan *scan, gsize n)
{
  const char *bad;

  if (!g_utf8_validate_len (scan->text, n, &bad))
    {
      scan->at = bad;
      return sw_json_scan_fail (scan, *bad == '\0' ? SW_JSON_FAULT_NUL : SW_JSON_FAULT_UTF8);
    }
  sw_json_scan_space (scan);
  if (*scan->at == '\0')
    return sw_json_scan_fail (scan, SW_JSON_FAULT_EMPTY);
  if (!scan_value (scan, 0))
    return FALSE;
  sw_json_scan_space (scan);
  return *scan->at == '\0' || sw_json_scan_fail (scan, SW_JSON_FAULT_REST);
}

gboolean
sw_json_guard (const char *text, gsize n, GError **error)
{
  g_autoptr (GString) path = g_string_new (NULL);
  SwJsonScan scan = { .text = text, .at = text, .path = path };

  if (scan_text (&scan, n))
    return TRUE;
  g_propagate_error (error, scan.error);
  return FALSE;
}

guint
sw_json_guard_line (const char *text, const char *path)
{
  g_autoptr (GString) at_path = g_string_new (NULL);
  SwJsonScan scan = { .text = text, .at = text, .path = at_path, .wanted = path };
  const char *start;

  if (!scan_value (&scan, 0))
    g_clear_error (&scan.error);
  return scan.found != NULL ? sw_json_scan_line (text, scan.found, &start) : 0;
}
