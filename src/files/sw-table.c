/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-table.h"

#include <stdarg.h>
#include <string.h>

struct _SwTable
{
  char *alignment;
  GPtrArray *cells; /* of char*, row by row */
};

SwTable *
sw_table_new (const char *alignment)
{
  SwTable *table = g_new0 (SwTable, 1);

  table->alignment = g_strdup (alignment);
  table->cells = g_ptr_array_new_with_free_func (g_free);
  return table;
}

void
sw_table_free (SwTable *table)
{
  g_free (table->alignment);
  g_ptr_array_unref (table->cells);
  g_free (table);
}

void
sw_table_add (SwTable *table, const char *cell)
{
  g_ptr_array_add (table->cells, g_strdup (cell));
}

void
sw_table_add_format (SwTable *table, const char *format, ...)
{
  va_list values;

  va_start (values, format);
  g_ptr_array_add (table->cells, g_strdup_vprintf (format, values));
  va_end (values);
}

/* Columns of the terminal that a text takes: a dye's name may be in any script. */
static guint
display_width (const char *text)
{
  guint width = 0;

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (!g_unichar_iszerowidth (c))
        width += g_unichar_iswide (c) ? 2 : 1;
    }
  return width;
}

static void
measure (const SwTable *table, gsize n, guint *widths)
{
  for (guint i = 0; i < table->cells->len; i++)
    widths[i % n] = MAX (widths[i % n], display_width (table->cells->pdata[i]));
}

/* Without blanks at its end. */
static void
end_line (GString *out)
{
  while (out->len > 0 && out->str[out->len - 1] == ' ')
    g_string_truncate (out, out->len - 1);
  g_string_append_c (out, '\n');
}

void
sw_table_print (const SwTable *table, guint indent, GString *out)
{
  gsize n = strlen (table->alignment);
  g_autofree guint *widths = g_new0 (guint, n);

  measure (table, n, widths);
  for (guint i = 0; i < table->cells->len; i++)
    {
      const char *cell = table->cells->pdata[i];
      gsize column = i % n;
      int blanks = (int) (widths[column] - display_width (cell));
      gboolean last = column == n - 1;

      g_string_append_printf (out, "%*s", (int) (column == 0 ? indent : 2), "");
      if (table->alignment[column] == 'r')
        g_string_append_printf (out, "%*s%s", blanks, "", cell);
      else
        g_string_append_printf (out, "%s%*s", cell, blanks, "");
      if (last)
        end_line (out);
    }
}
