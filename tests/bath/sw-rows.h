/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <math.h>
#include <string.h>

/*
 * Reading the tables of tests/reference: rows of cells, and the "D=0.15;k=0.2"
 * that some of them hold.
 */

#define SW_ROW_CELLS 8

typedef struct
{
  char *cells[SW_ROW_CELLS];
} SwRow;

static inline void
sw_row_free (SwRow *row)
{
  for (int i = 0; i < SW_ROW_CELLS; i++)
    g_free (row->cells[i]);
  g_free (row);
}

/* A comma parts cells unless it is quoted; no cell holds a quote itself. */
static inline SwRow *
sw_row_parse (const char *line)
{
  SwRow *row = g_new0 (SwRow, 1);

  for (int i = 0; i < SW_ROW_CELLS && *line != '\0'; i++)
    {
      gboolean quoted = *line == '"';
      const char *from = quoted ? line + 1 : line;
      const char *to = from + strcspn (from, quoted ? "\"" : ",");

      row->cells[i] = g_strndup (from, (gsize) (to - from));
      line = to + strcspn (to, ",");
      line += *line == ',';
    }

  return row;
}

/* (element-type SwRow): all rows but the heading */
static inline GPtrArray *
sw_rows_load (const char *name)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "reference", name, NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) lines = NULL;
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_row_free);

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  lines = g_strsplit (g_strstrip (text), "\n", -1);
  for (guint i = 1; lines[i] != NULL; i++)
    g_ptr_array_add (rows, sw_row_parse (g_strchomp (lines[i])));
  g_assert_cmpuint (rows->len, >, 0);

  return rows;
}

static inline double
sw_row_number (const SwRow *row, int cell)
{
  char *end;
  double number = g_ascii_strtod (row->cells[cell], &end);

  g_assert_true (end != row->cells[cell]);
  return number;
}

/* The number after "name=" in a cell of "a=1;b=2". */
static inline double
sw_row_input (const SwRow *row, int cell, const char *name)
{
  g_auto (GStrv) parts = g_strsplit (row->cells[cell], ";", -1);

  for (guint i = 0; parts[i] != NULL; i++)
    if (g_str_has_prefix (parts[i], name) && parts[i][strlen (name)] == '=')
      return g_ascii_strtod (parts[i] + strlen (name) + 1, NULL);

  g_error ("no %s in %s", name, row->cells[cell]);
}

/* |a - b| <= tolerance, with the numbers in the message. */
#define sw_assert_near(a, b, tolerance)                                                                                  \
  G_STMT_START                                                                                                           \
  {                                                                                                                      \
    double got_ = (a), wanted_ = (b), tolerance_ = (tolerance);                                                          \
    if (!(fabs (got_ - wanted_) <= tolerance_))                                                                          \
      {                                                                                                                  \
        g_autofree char *message_ = g_strdup_printf (#a ": %.12g, wanted %.12g within %.3g", got_, wanted_, tolerance_); \
        g_assertion_message (G_LOG_DOMAIN, __FILE__, __LINE__, G_STRFUNC, message_);                                     \
      }                                                                                                                  \
  }                                                                                                                      \
  G_STMT_END
