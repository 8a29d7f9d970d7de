/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A table of text for a terminal: columns as wide as their widest cell. */
typedef struct _SwTable SwTable;

/**
 * sw_table_new:
 * @alignment: a letter for each column: 'l' left, 'r' right
 */
SwTable *sw_table_new (const char *alignment) G_GNUC_WARN_UNUSED_RESULT;
void sw_table_free (SwTable *table);

/* The next cell, row by row. */
void sw_table_add (SwTable *table, const char *cell);
void sw_table_add_format (SwTable *table, const char *format, ...) G_GNUC_PRINTF (2, 3);

/* Appends the table, each line after @indent blanks. */
void sw_table_print (const SwTable *table, guint indent, GString *out);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwTable, sw_table_free)

G_END_DECLS
