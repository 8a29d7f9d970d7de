/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-json-guard-private.h"

#include "files/sw-colourway.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <json-glib/json-glib.h>
#include <math.h>
#include <string.h>

/* Characters of a name that a path shows. */
#define SHOWN_CHARS 60

typedef enum
{
  FAULT_EMPTY,
  FAULT_NUL,
  FAULT_UTF8,
  FAULT_BEGIN,
  FAULT_VALUE,
  FAULT_NOT_FINITE,
  FAULT_NUMBER,
  FAULT_UNCLOSED,
  FAULT_CONTROL,
  FAULT_ESCAPE,
  FAULT_SURROGATE,
  FAULT_NAME,
  FAULT_COLON,
  FAULT_COMMA_OBJECT,
  FAULT_COMMA_ARRAY,
  FAULT_TRAILING,
  FAULT_REST,
  FAULT_DEPTH,
  FAULT_VALUES,
} Fault;

/* Why, and what now, after the line and the column. */
static const struct
{
  SwFileError code;
  const char *sentence;
} faults[] = {
  [FAULT_EMPTY] = { SW_FILE_ERROR_SYNTAX, N_ ("The file is empty, but a colourway begins with “{”. Go back to an earlier copy of it.") },
  [FAULT_NUL] = { SW_FILE_ERROR_SYNTAX, N_ ("There is a zero byte, which no text holds. Go back to an earlier copy of the file, or save it as UTF-8 text.") },
  [FAULT_UTF8] = { SW_FILE_ERROR_SYNTAX, N_ ("The text is not UTF-8 here. Save it as UTF-8 in a text editor, or go back to an earlier copy.") },
  [FAULT_BEGIN] = { SW_FILE_ERROR_SYNTAX, N_ ("This is not a colourway, which begins with “{”. Open another file, or go back to an earlier copy.") },
  [FAULT_VALUE] = { SW_FILE_ERROR_SYNTAX, N_ ("A value should begin here: a number, a text in double quotes, true, false, null, “{” or “[”. Write one, or delete the member.") },
  [FAULT_NOT_FINITE] = { SW_FILE_ERROR_SYNTAX, N_ ("Infinity and “not a number” are no amounts. Write an ordinary number, or delete the member to use its usual value.") },
  [FAULT_NUMBER] = { SW_FILE_ERROR_SYNTAX, N_ ("This is not how a number is written. Write it like 12, 0.5 or 1.5e-3: digits on both sides of the point, no leading zeros, no plus sign.") },
  [FAULT_UNCLOSED] = { SW_FILE_ERROR_SYNTAX, N_ ("The file ends in the middle. It may have been cut short: go back to an earlier copy, or close the open text, list or object.") },
  [FAULT_CONTROL] = { SW_FILE_ERROR_SYNTAX, N_ ("A text runs over the end of its line or holds a control character. Close it with a double quote, or write \\n for a new line and \\t for a tab.") },
  [FAULT_ESCAPE] = { SW_FILE_ERROR_SYNTAX, N_ ("A backslash in a text stands before something it does not go with. Write \\\\ for a backslash, \\\" for a quote, \\n for a new line.") },
  [FAULT_SURROGATE] = { SW_FILE_ERROR_SYNTAX, N_ ("This \\u code is no character. Write the character itself instead.") },
  [FAULT_NAME] = { SW_FILE_ERROR_SYNTAX, N_ ("A member's name in double quotes should stand here. Write one, or take away the comma before it.") },
  [FAULT_COLON] = { SW_FILE_ERROR_SYNTAX, N_ ("A colon should stand between a member's name and its value. Write it.") },
  [FAULT_COMMA_OBJECT] = { SW_FILE_ERROR_SYNTAX, N_ ("After a member comes a comma or “}”. Write the one that is missing.") },
  [FAULT_COMMA_ARRAY] = { SW_FILE_ERROR_SYNTAX, N_ ("After a value of a list comes a comma or “]”. Write the one that is missing.") },
  [FAULT_TRAILING] = { SW_FILE_ERROR_SYNTAX, N_ ("A comma should stand between two values, and nothing follows this one. Take away the comma.") },
  [FAULT_REST] = { SW_FILE_ERROR_SYNTAX, N_ ("The colourway has ended, yet more text follows. Take away what comes after its last “}”.") },
  [FAULT_DEPTH] = { SW_FILE_ERROR_SIZE, N_ ("Lists and objects lie in one another too deep for a colourway. Take away what does not belong in it.") },
  [FAULT_VALUES] = { SW_FILE_ERROR_SIZE, N_ ("There are too many values for a colourway. Take away what does not belong in it.") },
};

typedef struct
{
  const char *text;
  const char *at;
  GString *path; /* of the value that is being scanned */
  guint n_values;
  const char *wanted; /* path to look for, or NULL */
  const char *found;
  GError *error;
} Scan;

static gboolean scan_value (Scan *scan, guint depth);

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

/* Line of @at, from 1, and where it begins. */
static guint
line_of (const char *text, const char *at, const char **start)
{
  guint line = 1;

  *start = text;
  for (const char *p = text; p < at; p++)
    if (*p == '\n')
      {
        line++;
        *start = p + 1;
      }
  return line;
}

/* At the byte where the scan has come to. */
static gboolean
fail (Scan *scan, Fault fault)
{
  const char *start;
  guint line = line_of (scan->text, scan->at, &start);
  guint column = (guint) g_utf8_strlen (start, scan->at - start) + 1;

  /* Translators: where in the file, then a sentence that says what is wrong there and what to do. */
  g_set_error (&scan->error, SW_FILE_ERROR, faults[fault].code, _ ("Line %u, column %u: %s"), line, column, _ (faults[fault].sentence));
  return FALSE;
}

/* It is JSON, but the member at @at cannot be kept as it is. */
static gboolean
fail_member (Scan *scan, const char *at, const char *sentence)
{
  const char *start;

  /* Translators: the place in the file, like steps[3].width_cm, its line, then a sentence that says what is wrong there and what to do */
  g_set_error (&scan->error, SW_FILE_ERROR, SW_FILE_ERROR_MEMBER, _ ("%s (line %u): %s"), scan->path->str, line_of (scan->text, at, &start), sentence);
  return FALSE;
}

static void
skip_space (Scan *scan)
{
  scan->at += strspn (scan->at, " \t\r\n");
}

/* Four hexadecimal digits, or -1. */
static int
hex_unit (const char *at)
{
  int unit = 0;

  for (int i = 0; i < 4; i++)
    {
      int digit = g_ascii_xdigit_value (at[i]);

      if (digit < 0)
        return -1;
      unit = 16 * unit + digit;
    }
  return unit;
}

/* After "\u"; a text of C cannot hold U+0000, and half a surrogate pair is no character. */
static gboolean
scan_unicode_escape (Scan *scan)
{
  int unit = hex_unit (scan->at);

  if (unit < 0)
    return fail (scan, FAULT_ESCAPE);
  if (unit == 0 || (unit >= 0xdc00 && unit <= 0xdfff))
    return fail (scan, FAULT_SURROGATE);
  scan->at += 4;
  if (unit >= 0xd800 && unit <= 0xdbff)
    {
      int low = strncmp (scan->at, "\\u", 2) == 0 ? hex_unit (scan->at + 2) : -1;

      if (low < 0xdc00 || low > 0xdfff)
        return fail (scan, FAULT_SURROGATE);
      scan->at += 6;
    }
  return TRUE;
}

/* From the opening quote to behind the closing one. */
static gboolean
scan_string (Scan *scan)
{
  scan->at++;
  while (*scan->at != '"')
    {
      if (*scan->at == '\0')
        return fail (scan, FAULT_UNCLOSED);
      if ((guchar) *scan->at < 0x20)
        return fail (scan, FAULT_CONTROL);
      if (*scan->at++ != '\\')
        continue;
      if (*scan->at == 'u')
        {
          scan->at++;
          if (!scan_unicode_escape (scan))
            return FALSE;
        }
      else if (*scan->at != '\0' && strchr ("\"\\/bfnrt", *scan->at) != NULL)
        scan->at++;
      else
        return fail (scan, FAULT_ESCAPE);
    }
  scan->at++;
  return TRUE;
}

/* Scans a string and gives its content, escapes resolved. */
static char *
scan_name (Scan *scan)
{
  const char *start = scan->at;
  g_autofree char *quoted = NULL;
  g_autoptr (JsonNode) node = NULL;

  if (*start != '"')
    {
      fail (scan, *start == '\0' ? FAULT_UNCLOSED : FAULT_NAME);
      return NULL;
    }
  if (!scan_string (scan))
    return NULL;
  quoted = g_strndup (start, (gsize) (scan->at - start));
  if (strchr (quoted, '\\') == NULL)
    return g_strndup (quoted + 1, strlen (quoted) - 2);
  node = json_from_string (quoted, &scan->error);
  return node != NULL ? json_node_dup_string (node) : NULL;
}

static gsize
count_digits (const char *at)
{
  return strspn (at, "0123456789");
}

/* RFC 8259, section 6. Returns: where the number ends, or NULL if it is none. */
static const char *
number_end (const char *at, gboolean *whole)
{
  gsize n;

  *whole = TRUE;
  if (*at == '-')
    at++;
  n = count_digits (at);
  if (n == 0 || (n > 1 && *at == '0'))
    return NULL;
  at += n;
  if (*at == '.')
    {
      *whole = FALSE;
      at++;
      n = count_digits (at);
      if (n == 0)
        return NULL;
      at += n;
    }
  if (*at == 'e' || *at == 'E')
    {
      *whole = FALSE;
      at++;
      if (*at == '+' || *at == '-')
        at++;
      n = count_digits (at);
      if (n == 0)
        return NULL;
      at += n;
    }
  return at;
}

/* "NaN", "Infinity" and their kin, which some programs write though JSON has no such thing. */
static gboolean
spells_no_number (const char *at)
{
  static const char *const words[] = { "nan", "inf", "+inf", "-inf", "-nan", "+nan", "1.#" };

  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    if (g_ascii_strncasecmp (at, words[i], strlen (words[i])) == 0)
      return TRUE;
  return FALSE;
}

static gboolean
scan_number (Scan *scan)
{
  gboolean whole;
  const char *end = number_end (scan->at, &whole);
  gboolean fits;

  if (spells_no_number (scan->at))
    return fail (scan, FAULT_NOT_FINITE);
  if (end == NULL || g_ascii_isalnum (*end) || *end == '.')
    return fail (scan, FAULT_NUMBER);
  errno = 0;
  if (whole)
    {
      g_ascii_strtoll (scan->at, NULL, 10);
      fits = errno != ERANGE;
    }
  else
    fits = isfinite (g_ascii_strtod (scan->at, NULL));
  if (!fits)
    return fail_member (scan, scan->at, _ ("This number is too large to be kept. Write a smaller one, or delete the member to use its usual value."));
  scan->at = end;
  return TRUE;
}

static gboolean
scan_word (Scan *scan)
{
  static const char *const words[] = { "true", "false", "null" };

  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    {
      gsize n = strlen (words[i]);

      if (strncmp (scan->at, words[i], n) == 0 && !g_ascii_isalnum (scan->at[n]))
        {
          scan->at += n;
          return TRUE;
        }
    }
  if (*scan->at == '\0')
    return fail (scan, FAULT_UNCLOSED);
  if (scan->n_values == 1)
    return fail (scan, FAULT_BEGIN);
  return fail (scan, spells_no_number (scan->at) ? FAULT_NOT_FINITE : FAULT_VALUE);
}

/* A member's name, which must be new in its object, and the colon. Appends the name to the path. */
static gboolean
scan_member_name (Scan *scan, GHashTable *names)
{
  const char *start = scan->at;
  char *name = scan_name (scan);

  if (name == NULL)
    return FALSE;
  sw_json_path_append_name (scan->path, name);
  if (!g_hash_table_add (names, name))
    return fail_member (scan, start, _ ("This member is given a second time, and only one can count. Delete one of the two."));
  skip_space (scan);
  if (*scan->at != ':')
    return fail (scan, *scan->at == '\0' ? FAULT_UNCLOSED : FAULT_COLON);
  scan->at++;
  return TRUE;
}

/* After an element: TRUE with @more telling a comma from the closing bracket. */
static gboolean
scan_separator (Scan *scan, char close, Fault missing, gboolean *more)
{
  skip_space (scan);
  *more = *scan->at == ',';
  if (!*more && *scan->at != close)
    return fail (scan, *scan->at == '\0' ? FAULT_UNCLOSED : missing);
  scan->at++;
  if (!*more)
    return TRUE;
  skip_space (scan);
  if (*scan->at == close)
    {
      scan->at = scan->at - 1;
      return fail (scan, FAULT_TRAILING);
    }
  return TRUE;
}

static gboolean
scan_object (Scan *scan, guint depth)
{
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  gsize path_length = scan->path->len;
  gboolean more;

  scan->at++;
  skip_space (scan);
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
      if (!scan_separator (scan, '}', FAULT_COMMA_OBJECT, &more))
        return FALSE;
    }
  while (more);
  return TRUE;
}

static gboolean
scan_array (Scan *scan, guint depth)
{
  gsize path_length = scan->path->len;
  guint index = 0;
  gboolean more;

  scan->at++;
  skip_space (scan);
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
      if (!scan_separator (scan, ']', FAULT_COMMA_ARRAY, &more))
        return FALSE;
    }
  while (more);
  return TRUE;
}

static gboolean
scan_value (Scan *scan, guint depth)
{
  skip_space (scan);
  if (depth > SW_JSON_MAX_DEPTH)
    return fail (scan, FAULT_DEPTH);
  if (++scan->n_values > SW_JSON_MAX_VALUES)
    return fail (scan, FAULT_VALUES);
  if (scan->found == NULL && scan->wanted != NULL && strcmp (scan->wanted, scan->path->str) == 0)
    scan->found = scan->at;
  switch (*scan->at)
    {
    case '{':
      return scan_object (scan, depth);
    case '[':
      return scan_array (scan, depth);
    case '"':
      return scan_string (scan);
    case '-':
    case '+':
    case '.':
      return scan_number (scan);
    default:
      return g_ascii_isdigit (*scan->at) ? scan_number (scan) : scan_word (scan);
    }
}

static gboolean
scan_text (Scan *scan, gsize n)
{
  const char *bad;

  if (!g_utf8_validate_len (scan->text, n, &bad))
    {
      scan->at = bad;
      return fail (scan, *bad == '\0' ? FAULT_NUL : FAULT_UTF8);
    }
  skip_space (scan);
  if (*scan->at == '\0')
    return fail (scan, FAULT_EMPTY);
  if (!scan_value (scan, 0))
    return FALSE;
  skip_space (scan);
  return *scan->at == '\0' || fail (scan, FAULT_REST);
}

gboolean
sw_json_guard (const char *text, gsize n, GError **error)
{
  g_autoptr (GString) path = g_string_new (NULL);
  Scan scan = { .text = text, .at = text, .path = path };

  if (scan_text (&scan, n))
    return TRUE;
  g_propagate_error (error, scan.error);
  return FALSE;
}

guint
sw_json_guard_line (const char *text, const char *path)
{
  g_autoptr (GString) at_path = g_string_new (NULL);
  Scan scan = { .text = text, .at = text, .path = at_path, .wanted = path };
  const char *start;

  if (!scan_value (&scan, 0))
    g_clear_error (&scan.error);
  return scan.found != NULL ? line_of (text, scan.found, &start) : 0;
}
