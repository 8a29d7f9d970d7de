/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-value.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Figures that one line of a table may have. */
#define SW_SHEET_MAX_CELLS 6

/**
 * SwSheetWords: what a line of a table says. All of it is copied.
 * @id: told when the line is chosen; 0 if there is nothing to choose
 * @icon: (nullable): stands before the title where there is no sample
 * @sample: (nullable): colour of the swatch before the title
 * @mark: (nullable): number in the swatch
 * @cells: figures, from the left; NULL where there is none
 * @remark: (nullable): a sentence under the line that asks for care
 * @strong: the line sums up those above it
 */
typedef struct
{
  guint id;
  const char *icon;
  const SwSample *sample;
  const char *mark;
  const char *title;
  const char *detail;
  const char *cells[SW_SHEET_MAX_CELLS];
  const char *remark;
  gboolean strong;
} SwSheetWords;

/* SwSheetLine: one line of a table of amounts: what it is about, figures in columns, and a remark beneath. */
#define SW_TYPE_SHEET_LINE (sw_sheet_line_get_type ())
G_DECLARE_FINAL_TYPE (SwSheetLine, sw_sheet_line, SW, SHEET_LINE, GtkListBoxRow)

/**
 * sw_sheet_line_new:
 * @columns: (array length=n): size groups that keep the figures of all lines under each other
 */
GtkWidget *sw_sheet_line_new (GtkSizeGroup *const *columns, guint n);

/**
 * sw_sheet_line_show:
 * @headers: (array) (nullable): what each figure is, for a screen reader; those with no cell may be NULL
 */
void sw_sheet_line_show (SwSheetLine *self, const SwSheetWords *words, const char *const *headers);

/* The line that says what the columns are. */
void sw_sheet_line_show_headers (SwSheetLine *self, const char *first, const char *const *headers);

guint sw_sheet_line_get_id (SwSheetLine *self);

G_END_DECLS
