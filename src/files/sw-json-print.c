/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-json-print.h"

#include <math.h>

#define INDENT 2

/* Indentation of what is not broken into lines. */
#define COMPACT (-1)

static void print_node (GString *out, JsonNode *node, int indent);

char *
sw_json_number (double number)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  static const char *const formats[] = { "%.15g", "%.16g", "%.17g" };

  g_return_val_if_fail (isfinite (number), g_strdup ("0"));

  number += 0.0; /* -0 is 0 */
  for (gsize i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      g_ascii_formatd (text, sizeof text, formats[i], number);
      if (g_ascii_strtod (text, NULL) == number)
        break;
    }
  return g_strdup (text);
}

static void
print_string (GString *out, const char *text)
{
  g_autoptr (JsonNode) node = json_node_init_string (json_node_alloc (), text);
  g_autofree char *quoted = json_to_string (node, FALSE);

  /* json-glib 1.6 escapes the control characters but for the last, U+001F. */
  for (const char *p = quoted; *p != '\0'; p++)
    if (*p == 0x1f)
      g_string_append (out, "\\u001f");
    else
      g_string_append_c (out, *p);
}

static void
print_plain (GString *out, JsonNode *node)
{
  GType type = json_node_get_value_type (node);

  if (JSON_NODE_HOLDS_NULL (node))
    g_string_append (out, "null");
  else if (type == G_TYPE_STRING)
    print_string (out, json_node_get_string (node));
  else if (type == G_TYPE_BOOLEAN)
    g_string_append (out, json_node_get_boolean (node) ? "true" : "false");
  else if (type == G_TYPE_DOUBLE)
    {
      g_autofree char *number = sw_json_number (json_node_get_double (node));

      g_string_append (out, number);
    }
  else
    g_string_append_printf (out, "%" G_GINT64_FORMAT, json_node_get_int (node));
}

/* Whether it stays on one line: plain values, lists of them, and an object of one such member (a colour). */
static gboolean
is_short (JsonNode *node)
{
  if (JSON_NODE_HOLDS_ARRAY (node))
    {
      JsonArray *array = json_node_get_array (node);

      for (guint i = 0; i < json_array_get_length (array); i++)
        {
          JsonNode *element = json_array_get_element (array, i);

          if (JSON_NODE_HOLDS_ARRAY (element) || JSON_NODE_HOLDS_OBJECT (element))
            return FALSE;
        }
    }
  else if (JSON_NODE_HOLDS_OBJECT (node))
    {
      JsonObjectIter iter;
      const char *name; /* json-glib 1.6 insists on giving it */
      JsonNode *member;

      if (json_object_get_size (json_node_get_object (node)) > 1)
        return FALSE;
      json_object_iter_init_ordered (&iter, json_node_get_object (node));
      while (json_object_iter_next_ordered (&iter, &name, &member))
        if (JSON_NODE_HOLDS_OBJECT (member) || !is_short (member))
          return FALSE;
    }
  return TRUE;
}

/* Between brackets: breaks the line, or a space on a line that stays whole. */
static void
print_break (GString *out, int indent, gboolean broken, const char *otherwise)
{
  if (broken)
    g_string_append_printf (out, "\n%*s", indent, "");
  else if (indent != COMPACT)
    g_string_append (out, otherwise);
}

static void
print_object (GString *out, JsonObject *object, int indent, gboolean broken)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *member;
  gboolean first = TRUE;
  int inner = broken ? indent + INDENT : indent;

  if (json_object_get_size (object) == 0)
    {
      g_string_append (out, "{}");
      return;
    }
  g_string_append_c (out, '{');
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &member))
    {
      if (!first)
        g_string_append_c (out, ',');
      print_break (out, inner, broken, " ");
      first = FALSE;
      print_string (out, name);
      g_string_append (out, indent == COMPACT ? ":" : ": ");
      print_node (out, member, inner);
    }
  print_break (out, indent, broken, " ");
  g_string_append_c (out, '}');
}

static void
print_array (GString *out, JsonArray *array, int indent, gboolean broken)
{
  guint n = json_array_get_length (array);
  int inner = broken ? indent + INDENT : indent;

  g_string_append_c (out, '[');
  for (guint i = 0; i < n; i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      print_break (out, inner, broken, i > 0 ? " " : "");
      print_node (out, json_array_get_element (array, i), inner);
    }
  print_break (out, indent, broken, "");
  g_string_append_c (out, ']');
}

static void
print_node (GString *out, JsonNode *node, int indent)
{
  gboolean broken = indent != COMPACT && !is_short (node);

  if (JSON_NODE_HOLDS_OBJECT (node))
    print_object (out, json_node_get_object (node), indent, broken);
  else if (JSON_NODE_HOLDS_ARRAY (node))
    print_array (out, json_node_get_array (node), indent, broken);
  else
    print_plain (out, node);
}

char *
sw_json_print (JsonNode *node)
{
  GString *out = g_string_new (NULL);

  print_node (out, node, 0);
  g_string_append_c (out, '\n');
  return g_string_free (out, FALSE);
}

char *
sw_json_print_compact (JsonNode *node)
{
  GString *out = g_string_new (NULL);

  print_node (out, node, COMPACT);
  return g_string_free (out, FALSE);
}
