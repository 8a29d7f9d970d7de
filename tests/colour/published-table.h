/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <string.h>

/* A table of tests/reference/: comma separated, its first line the names of the columns. For test programs, so any fault aborts. */

typedef struct
{
  GPtrArray *rows; /* of char **, the heading first */
} PublishedTable;

/* A comma parts cells unless it stands within quotes; no cell of ours holds a quote itself. */
static inline char **
published_table_split (const char *line)
{
  g_autoptr (GStrvBuilder) cells = g_strv_builder_new ();
  g_autoptr (GString) cell = g_string_new (NULL);
  gboolean quoted = FALSE;

  for (; *line != '\0'; line++)
    if (*line == '"')
      quoted = !quoted;
    else if (*line == ',' && !quoted)
      {
        g_strv_builder_add (cells, cell->str);
        g_string_truncate (cell, 0);
      }
    else
      g_string_append_c (cell, *line);
  g_strv_builder_add (cells, cell->str);

  return g_strv_builder_end (cells);
}

static inline PublishedTable
published_table_open (const char *file_name)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "reference", file_name, NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) lines = NULL;
  PublishedTable table = { g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev) };

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  lines = g_strsplit (g_strchomp (text), "\n", -1);
  for (char **line = lines; *line != NULL; line++)
    g_ptr_array_add (table.rows, published_table_split (g_strchomp (*line)));
  g_assert_cmpuint (table.rows->len, >, 1);
  return table;
}

static inline void
published_table_close (PublishedTable *table)
{
  g_ptr_array_unref (table->rows);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (PublishedTable, published_table_close)

static inline guint
published_table_n_rows (const PublishedTable *table)
{
  return table->rows->len - 1;
}

static inline const char *
published_table_text (const PublishedTable *table, guint row, const char *column)
{
  char **heading = g_ptr_array_index (table->rows, 0);
  char **cells = g_ptr_array_index (table->rows, row + 1);
  guint i = 0;

  while (heading[i] != NULL && g_strcmp0 (heading[i], column) != 0)
    i++;
  if (heading[i] == NULL)
    g_error ("No column %s", column);
  g_assert_cmpuint (g_strv_length (cells), ==, g_strv_length (heading));
  return cells[i];
}

/* Returns: 0 for an empty cell */
static inline double
published_table_number (const PublishedTable *table, guint row, const char *column)
{
  return g_ascii_strtod (published_table_text (table, row, column), NULL);
}

/* One column downwards, for the tables with a row per band. */
static inline void
published_table_column (const PublishedTable *table, const char *column, double *values, guint n)
{
  g_assert_cmpuint (published_table_n_rows (table), ==, n);
  for (guint row = 0; row < n; row++)
    values[row] = published_table_number (table, row, column);
}
