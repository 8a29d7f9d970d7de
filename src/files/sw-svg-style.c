/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-svg-private.h"

#include <math.h>
#include <pango/pango.h>
#include <string.h>

/*
 * As much of CSS as vector editors write: declarations in a style attribute,
 * and style sheets of classes ("a.b", ">" and media are not looked at).
 */

#define MOST_CLASSES 2000
#define SHEET_BYTES (256 * 1024)

/* The value of @name among "a: b; c: d"; the last one counts. */
static char *
declared (const char *declarations, const char *name)
{
  g_auto (GStrv) parts = g_strsplit (declarations, ";", 200);
  char *value = NULL;

  for (guint i = 0; parts[i] != NULL; i++)
    {
      char *colon = strchr (parts[i], ':');

      if (colon == NULL)
        continue;
      *colon = '\0';
      if (g_ascii_strcasecmp (g_strstrip (parts[i]), name) != 0)
        continue;
      g_free (value);
      value = g_strdup (g_strstrip (colon + 1));
    }
  return value;
}

static void
add_rule (GHashTable *classes, char *selectors, const char *declarations)
{
  g_auto (GStrv) names = g_strsplit (selectors, ",", 200);

  for (guint i = 0; names[i] != NULL; i++)
    {
      const char *name = g_strstrip (names[i]);
      const char *before = name[0] == '.' ? g_hash_table_lookup (classes, name + 1) : NULL;

      if (name[0] == '.' && g_hash_table_size (classes) < MOST_CLASSES && (before == NULL || strlen (before) < 4096))
        g_hash_table_insert (classes, g_strdup (name + 1), g_strconcat (before != NULL ? before : "", ";", declarations, NULL));
    }
}

static void
read_sheet (GHashTable *classes, char *sheet)
{
  char *at = sheet;

  for (char *open = strchr (at, '{'); open != NULL; open = strchr (at, '{'))
    {
      char *shut = strchr (open, '}');

      if (shut == NULL)
        return;
      *open = *shut = '\0';
      add_rule (classes, at, open + 1);
      at = shut + 1;
    }
}

static void
find_sheets (xmlNode *node, GHashTable *classes)
{
  for (; node != NULL; node = node->next)
    {
      if (node->type != XML_ELEMENT_NODE)
        continue;
      if (g_str_equal ((const char *) node->name, "style"))
        {
          xmlChar *sheet = xmlNodeGetContent (node);

          if (sheet != NULL && strlen ((const char *) sheet) <= SHEET_BYTES)
            read_sheet (classes, (char *) sheet);
          xmlFree (sheet);
        }
      else
        find_sheets (node->children, classes);
    }
}

GHashTable *
sw_svg_classes (xmlNode *root)
{
  GHashTable *classes = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);

  find_sheets (root, classes);
  return classes;
}

char *
sw_svg_property (xmlNode *node, GHashTable *classes, const char *name)
{
  const char *style = sw_svg_attribute (node, "style"), *class_names = sw_svg_attribute (node, "class");
  char *value = style != NULL ? declared (style, name) : NULL;
  g_auto (GStrv) words = value == NULL && class_names != NULL ? g_strsplit_set (class_names, " \t\n", 50) : NULL;

  for (guint i = 0; words != NULL && words[i] != NULL && value == NULL; i++)
    {
      const char *declarations = g_hash_table_lookup (classes, words[i]);

      value = declarations != NULL ? declared (declarations, name) : NULL;
    }
  return value != NULL ? value : g_strdup (sw_svg_attribute (node, name));
}

/* "rgb(1, 2, 3)" or in per cent; an alpha behind them does not matter. */
static gboolean
read_rgb (const char *text, double *code)
{
  const char *at = strchr (text, '(');

  if (at == NULL)
    return FALSE;
  at++;
  for (int i = 0; i < 3; i++)
    {
      if (!sw_svg_number (&at, &code[i]))
        return FALSE;
      if (*at == '%')
        {
          code[i] *= 2.55;
          at += 1 + strspn (at + 1, " \t,");
        }
      code[i] = CLAMP (round (code[i]), 0, 255);
    }
  return TRUE;
}

gboolean
sw_svg_colour (const char *text, double *code)
{
  PangoColor colour;

  if (text == NULL || strlen (text) > 100)
    return FALSE;
  if (g_ascii_strncasecmp (text, "rgb", 3) == 0)
    return read_rgb (text, code);
  if (!pango_color_parse (&colour, text))
    return FALSE;
  code[0] = colour.red >> 8;
  code[1] = colour.green >> 8;
  code[2] = colour.blue >> 8;
  return TRUE;
}
