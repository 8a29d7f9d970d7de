/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <math.h>
#include <string.h>

/* Rows of a table of tests/reference, each a vector of cells: rows[0] is the heading. */
typedef struct
{
  char ***rows;
  guint n_rows;
} ReferenceTable;

/* A comma parts cells unless it is quoted; no cell holds a quote itself. */
static inline char **
reference_row (const char *line)
{
  GPtrArray *cells = g_ptr_array_new ();

  while (TRUE)
    {
      gboolean quoted = *line == '"';
      gsize length = strcspn (line + quoted, quoted ? "\"" : ",");

      g_ptr_array_add (cells, g_strndup (line + quoted, length));
      line += length + (quoted ? 2 : 0);
      if (*line != ',')
        break;
      line++;
    }

  g_ptr_array_add (cells, NULL);
  return (char **) g_ptr_array_free (cells, FALSE);
}

static inline char *
reference_text (const char *name)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "reference", name, NULL);
  char *text = NULL;
  GError *error = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  return text;
}

static inline ReferenceTable
reference_table (const char *name)
{
  g_autofree char *text = reference_text (name);
  g_auto (GStrv) lines = g_strsplit (g_strstrip (text), "\n", -1);
  ReferenceTable table = { .n_rows = g_strv_length (lines) };

  g_assert_cmpuint (table.n_rows, >, 1);
  table.rows = g_new (char **, table.n_rows);
  for (guint i = 0; i < table.n_rows; i++)
    table.rows[i] = reference_row (g_strchomp (lines[i]));

  return table;
}

static inline void
reference_table_clear (ReferenceTable *table)
{
  for (guint i = 0; i < table->n_rows; i++)
    g_strfreev (table->rows[i]);
  g_free (table->rows);
}

/* A cell by its column's heading. */
static inline const char *
reference_cell (const ReferenceTable *table, guint row, const char *column)
{
  for (guint i = 0; table->rows[0][i] != NULL; i++)
    if (strcmp (table->rows[0][i], column) == 0)
      return table->rows[row][i];

  g_error ("no column %s", column);
}

static inline double
reference_number (const ReferenceTable *table, guint row, const char *column)
{
  const char *cell = reference_cell (table, row, column);
  char *end;
  double number = g_ascii_strtod (cell, &end);

  if (end == cell)
    g_error ("no number in column %s: '%s'", column, cell);
  return number;
}
