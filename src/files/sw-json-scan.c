/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-json-scan-private.h"

#include "files/sw-colourway.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <json-glib/json-glib.h>
#include <math.h>
#include <string.h>

/* Why, and what now, after the line and the column. */
static const struct
{
  SwFileError code;
  const char *sentence;
} faults[] = {
  [SW_JSON_FAULT_EMPTY] = { SW_FILE_ERROR_SYNTAX, N_ ("The file is empty, but a colourway begins with “{”. Go back to an earlier copy of it.") },
  [SW_JSON_FAULT_NUL] = { SW_FILE_ERROR_SYNTAX, N_ ("There is a zero byte, which no text holds. Go back to an earlier copy of the file, or save it as UTF-8 text.") },
  [SW_JSON_FAULT_UTF8] = { SW_FILE_ERROR_SYNTAX, N_ ("The text is not UTF-8 here. Save it as UTF-8 in a text editor, or go back to an earlier copy.") },
  [SW_JSON_FAULT_BEGIN] = { SW_FILE_ERROR_SYNTAX, N_ ("This is not a colourway, which begins with “{”. Open another file, or go back to an earlier copy.") },
  [SW_JSON_FAULT_VALUE] = { SW_FILE_ERROR_SYNTAX, N_ ("A value should begin here: a number, a text in double quotes, true, false, null, “{” or “[”. Write one, or delete the member.") },
  [SW_JSON_FAULT_NOT_FINITE] = { SW_FILE_ERROR_SYNTAX, N_ ("Infinity and “not a number” are no amounts. Write an ordinary number, or delete the member to use its usual value.") },
  [SW_JSON_FAULT_NUMBER] = { SW_FILE_ERROR_SYNTAX, N_ ("This is not how a number is written. Write it like 12, 0.5 or 1.5e-3: digits on both sides of the point, no leading zeros, no plus sign.") },
  [SW_JSON_FAULT_UNCLOSED] = { SW_FILE_ERROR_SYNTAX, N_ ("The file ends in the middle. It may have been cut short: go back to an earlier copy, or close the open text, list or object.") },
  [SW_JSON_FAULT_CONTROL] = { SW_FILE_ERROR_SYNTAX, N_ ("A text runs over the end of its line or holds a control character. Close it with a double quote, or write \\n for a new line and \\t for a tab.") },
  [SW_JSON_FAULT_ESCAPE] = { SW_FILE_ERROR_SYNTAX, N_ ("A backslash in a text stands before something it does not go with. Write \\\\ for a backslash, \\\" for a quote, \\n for a new line.") },
  [SW_JSON_FAULT_SURROGATE] = { SW_FILE_ERROR_SYNTAX, N_ ("This \\u code is no character. Write the character itself instead.") },
  [SW_JSON_FAULT_NAME] = { SW_FILE_ERROR_SYNTAX, N_ ("A member's name in double quotes should stand here. Write one, or take away the comma before it.") },
  [SW_JSON_FAULT_COLON] = { SW_FILE_ERROR_SYNTAX, N_ ("A colon should stand between a member's name and its value. Write it.") },
  [SW_JSON_FAULT_COMMA_OBJECT] = { SW_FILE_ERROR_SYNTAX, N_ ("After a member comes a comma or “}”. Write the one that is missing.") },
  [SW_JSON_FAULT_COMMA_ARRAY] = { SW_FILE_ERROR_SYNTAX, N_ ("After a value of a list comes a comma or “]”. Write the one that is missing.") },
  [SW_JSON_FAULT_TRAILING] = { SW_FILE_ERROR_SYNTAX, N_ ("A comma should stand between two values, and nothing follows this one. Take away the comma.") },
  [SW_JSON_FAULT_REST] = { SW_FILE_ERROR_SYNTAX, N_ ("The colourway has ended, yet more text follows. Take away what comes after its last “}”.") },
  [SW_JSON_FAULT_DEPTH] = { SW_FILE_ERROR_SIZE, N_ ("Lists and objects lie in one another too deep for a colourway. Take away what does not belong in it.") },
  [SW_JSON_FAULT_VALUES] = { SW_FILE_ERROR_SIZE, N_ ("There are too many values for a colourway. Take away what does not belong in it.") },
};

guint
sw_json_scan_line (const char *text, const char *at, const char **start)
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

gboolean
sw_json_scan_fail (SwJsonScan *scan, SwJsonFault fault)
{
  const char *start;
  guint line = sw_json_scan_line (scan->text, scan->at, &start);
  guint column = (guint) g_utf8_strlen (start, scan->at - start) + 1;

  /* Translators: where in the file, then a sentence that says what is wrong there and what to do. */
  g_set_error (&scan->error, SW_FILE_ERROR, faults[fault].code, _ ("Line %u, column %u: %s"), line, column, _ (faults[fault].sentence));
  return FALSE;
}

gboolean
sw_json_scan_fail_member (SwJsonScan *scan, const char *at, const char *sentence)
{
  const char *start;

  /* Translators: the place in the file, like steps[3].width_cm, its line, then a sentence that says what is wrong there and what to do */
  g_set_error (&scan->error, SW_FILE_ERROR, SW_FILE_ERROR_MEMBER, _ ("%s (line %u): %s"), scan->path->str, sw_json_scan_line (scan->text, at, &start), sentence);
  return FALSE;
}

void
sw_json_scan_space (SwJsonScan *scan)
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
scan_unicode_escape (SwJsonScan *scan)
{
  int unit = hex_unit (scan->at);

  if (unit < 0)
    return sw_json_scan_fail (scan, SW_JSON_FAULT_ESCAPE);
  if (unit == 0 || (unit >= 0xdc00 && unit <= 0xdfff))
    return sw_json_scan_fail (scan, SW_JSON_FAULT_SURROGATE);
  scan->at += 4;
  if (unit >= 0xd800 && unit <= 0xdbff)
    {
      int low = strncmp (scan->at, "\\u", 2) == 0 ? hex_unit (scan->at + 2) : -1;

      if (low < 0xdc00 || low > 0xdfff)
        return sw_json_scan_fail (scan, SW_JSON_FAULT_SURROGATE);
      scan->at += 6;
    }
  return TRUE;
}

gboolean
sw_json_scan_string (SwJsonScan *scan)
{
  scan->at++;
  while (*scan->at != '"')
    {
      if (*scan->at == '\0')
        return sw_json_scan_fail (scan, SW_JSON_FAULT_UNCLOSED);
      if ((guchar) *scan->at < 0x20)
        return sw_json_scan_fail (scan, SW_JSON_FAULT_CONTROL);
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
        return sw_json_scan_fail (scan, SW_JSON_FAULT_ESCAPE);
    }
  scan->at++;
  return TRUE;
}

char *
sw_json_scan_name (SwJsonScan *scan)
{
  const char *start = scan->at;
  g_autofree char *quoted = NULL;
  g_autoptr (JsonNode) node = NULL;

  if (*start != '"')
    {
      sw_json_scan_fail (scan, *start == '\0' ? SW_JSON_FAULT_UNCLOSED : SW_JSON_FAULT_NAME);
      return NULL;
    }
  if (!sw_json_scan_string (scan))
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

gboolean
sw_json_scan_number (SwJsonScan *scan)
{
  gboolean whole;
  const char *end = number_end (scan->at, &whole);
  gboolean fits;

  if (spells_no_number (scan->at))
    return sw_json_scan_fail (scan, SW_JSON_FAULT_NOT_FINITE);
  if (end == NULL || g_ascii_isalnum (*end) || *end == '.')
    return sw_json_scan_fail (scan, SW_JSON_FAULT_NUMBER);
  errno = 0;
  if (whole)
    {
      g_ascii_strtoll (scan->at, NULL, 10);
      fits = errno != ERANGE;
    }
  else
    fits = isfinite (g_ascii_strtod (scan->at, NULL));
  if (!fits)
    return sw_json_scan_fail_member (scan, scan->at, _ ("This number is too large to be kept. Write a smaller one, or delete the member to use its usual value."));
  scan->at = end;
  return TRUE;
}

gboolean
sw_json_scan_word (SwJsonScan *scan)
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
    return sw_json_scan_fail (scan, SW_JSON_FAULT_UNCLOSED);
  if (scan->n_values == 1)
    return sw_json_scan_fail (scan, SW_JSON_FAULT_BEGIN);
  return sw_json_scan_fail (scan, spells_no_number (scan->at) ? SW_JSON_FAULT_NOT_FINITE : SW_JSON_FAULT_VALUE);
}
