/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sheet/sw-sheet-table.h"

struct _SwSheetTable
{
  AdwBin parent_instance;

  GtkListBox *list;
  GtkSizeGroup *columns[SW_SHEET_MAX_CELLS];
  char *headers[SW_SHEET_MAX_CELLS];
  guint n_columns;
  gboolean has_headers;
  GPtrArray *lines; /* of SwSheetLine, not owned */
  guint n_shown;    /* between begin and end */
  guint chosen;
};

G_DEFINE_FINAL_TYPE (SwSheetTable, sw_sheet_table, ADW_TYPE_BIN)

static guint chosen_signal;

static void
row_selected_cb (SwSheetTable *self, GtkListBoxRow *row)
{
  guint id = row != NULL ? sw_sheet_line_get_id (SW_SHEET_LINE (row)) : 0;

  if (id == 0 || id == self->chosen)
    return;
  self->chosen = id;
  g_signal_emit (self, chosen_signal, 0, id);
}

static void
sw_sheet_table_finalize (GObject *object)
{
  SwSheetTable *self = SW_SHEET_TABLE (object);

  for (guint i = 0; i < SW_SHEET_MAX_CELLS; i++)
    {
      g_clear_object (&self->columns[i]);
      g_free (self->headers[i]);
    }
  g_ptr_array_unref (self->lines);

  G_OBJECT_CLASS (sw_sheet_table_parent_class)->finalize (object);
}

static void
sw_sheet_table_class_init (SwSheetTableClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sw_sheet_table_finalize;

  chosen_signal = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
}

static void
sw_sheet_table_init (SwSheetTable *self)
{
  self->lines = g_ptr_array_new ();
  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_SINGLE);
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "boxed-list");
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "sheet-table");
  g_signal_connect_swapped (self->list, "row-selected", G_CALLBACK (row_selected_cb), self);
  adw_bin_set_child (ADW_BIN (self), GTK_WIDGET (self->list));
}

void
sw_sheet_table_set_headers (SwSheetTable *self, const char *first, const char *const *headers, guint n)
{
  GtkWidget *line;

  g_return_if_fail (SW_IS_SHEET_TABLE (self) && n <= SW_SHEET_MAX_CELLS && self->n_columns == 0);

  self->n_columns = n;
  for (guint i = 0; i < n; i++)
    {
      self->columns[i] = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
      self->headers[i] = g_strdup (headers[i]);
      self->has_headers |= *headers[i] != '\0';
    }
  if (!self->has_headers)
    return;
  line = sw_sheet_line_new (self->columns, n);
  sw_sheet_line_show_headers (SW_SHEET_LINE (line), first, headers);
  gtk_list_box_append (self->list, line);
}

void
sw_sheet_table_set_name (SwSheetTable *self, const char *name)
{
  g_return_if_fail (SW_IS_SHEET_TABLE (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

void
sw_sheet_table_begin (SwSheetTable *self)
{
  g_return_if_fail (SW_IS_SHEET_TABLE (self));
  self->n_shown = 0;
}

void
sw_sheet_table_add (SwSheetTable *self, const SwSheetWords *words)
{
  GtkWidget *line;

  g_return_if_fail (SW_IS_SHEET_TABLE (self));

  if (self->n_shown == self->lines->len)
    {
      line = sw_sheet_line_new (self->columns, self->n_columns);
      gtk_list_box_append (self->list, line);
      g_ptr_array_add (self->lines, line);
    }
  line = self->lines->pdata[self->n_shown++];
  sw_sheet_line_show (SW_SHEET_LINE (line), words, (const char *const *) self->headers);
}

void
sw_sheet_table_end (SwSheetTable *self)
{
  g_return_if_fail (SW_IS_SHEET_TABLE (self));

  while (self->lines->len > self->n_shown)
    gtk_list_box_remove (self->list, g_ptr_array_steal_index (self->lines, self->lines->len - 1));
  gtk_widget_set_visible (GTK_WIDGET (self), self->n_shown > 0);
  sw_sheet_table_choose (self, self->chosen);
}

void
sw_sheet_table_choose (SwSheetTable *self, guint id)
{
  g_return_if_fail (SW_IS_SHEET_TABLE (self));

  self->chosen = id;
  for (guint i = 0; i < self->lines->len; i++)
    if (id != 0 && sw_sheet_line_get_id (self->lines->pdata[i]) == id)
      {
        gtk_list_box_select_row (self->list, self->lines->pdata[i]);
        return;
      }
  gtk_list_box_unselect_all (self->list);
}
