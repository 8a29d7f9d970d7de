/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sheet/sw-sheet-line.h"

#include "app/parts/sw-swatch.h"

#include <glib/gi18n-lib.h>

struct _SwSheetLine
{
  GtkListBoxRow parent_instance;

  guint id;
  guint n_cells;
  GtkWidget *cells[SW_SHEET_MAX_CELLS];

  GtkBox *line;
  GtkImage *icon;
  SwSwatch *swatch;
  GtkLabel *title;
  GtkLabel *detail;
  GtkWidget *remark_box;
  GtkLabel *remark;
};

G_DEFINE_FINAL_TYPE (SwSheetLine, sw_sheet_line, GTK_TYPE_LIST_BOX_ROW)

static void
sw_sheet_line_class_init (SwSheetLineClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (SW_TYPE_SWATCH);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-sheet-line.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSheetLine, line);
  gtk_widget_class_bind_template_child (widget_class, SwSheetLine, icon);
  gtk_widget_class_bind_template_child (widget_class, SwSheetLine, swatch);
  gtk_widget_class_bind_template_child (widget_class, SwSheetLine, title);
  gtk_widget_class_bind_template_child (widget_class, SwSheetLine, detail);
  gtk_widget_class_bind_template_child (widget_class, SwSheetLine, remark_box);
  gtk_widget_class_bind_template_child (widget_class, SwSheetLine, remark);
}

static void
sw_sheet_line_init (SwSheetLine *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
sw_sheet_line_new (GtkSizeGroup *const *columns, guint n)
{
  SwSheetLine *self = g_object_new (SW_TYPE_SHEET_LINE, NULL);

  self->n_cells = n;
  for (guint i = 0; i < n; i++)
    {
      self->cells[i] = gtk_label_new (NULL);
      gtk_label_set_xalign (GTK_LABEL (self->cells[i]), 1);
      gtk_widget_add_css_class (self->cells[i], "numeric");
      gtk_size_group_add_widget (columns[i], self->cells[i]);
      gtk_box_append (self->line, self->cells[i]);
    }
  return GTK_WIDGET (self);
}

static void
set_text (GtkLabel *label, const char *text)
{
  gtk_label_set_text (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL && *text != '\0');
}

static void
show_front (SwSheetLine *self, const SwSheetWords *words)
{
  gtk_widget_set_visible (GTK_WIDGET (self->swatch), words->sample != NULL);
  sw_swatch_set_sample (self->swatch, words->sample);
  sw_swatch_set_text (self->swatch, words->mark);
  gtk_widget_set_visible (GTK_WIDGET (self->icon), words->sample == NULL && words->icon != NULL);
  if (words->icon != NULL)
    gtk_image_set_from_icon_name (self->icon, words->icon);
  set_text (self->title, words->title);
  set_text (self->detail, words->detail);
}

/* The line read out: its title, then each figure with what it is. */
static void
tell_accessible (SwSheetLine *self, const SwSheetWords *words, const char *const *headers)
{
  g_autoptr (GString) said = g_string_new (words->title);

  for (guint i = 0; i < self->n_cells; i++)
    if (words->cells[i] != NULL && *words->cells[i] != '\0')
      {
        if (headers != NULL && headers[i] != NULL && *headers[i] != '\0')
          /* Translators: part of a line read out: what a figure is, and the figure: "; To weigh: 1.2 g" */
          g_string_append_printf (said, _ ("; %1$s: %2$s"), headers[i], words->cells[i]);
        else
          /* Translators: part of a line read out: a figure */
          g_string_append_printf (said, _ ("; %s"), words->cells[i]);
      }
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, said->str,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words->remark != NULL ? words->remark : words->detail != NULL ? words->detail
                                                                                                                                     : "",
                                  -1);
}

static void
set_class (GtkWidget *widget, const char *name, gboolean has)
{
  if (has)
    gtk_widget_add_css_class (widget, name);
  else
    gtk_widget_remove_css_class (widget, name);
}

void
sw_sheet_line_show (SwSheetLine *self, const SwSheetWords *words, const char *const *headers)
{
  g_return_if_fail (SW_IS_SHEET_LINE (self));

  self->id = words->id;
  show_front (self, words);
  for (guint i = 0; i < self->n_cells; i++)
    gtk_label_set_text (GTK_LABEL (self->cells[i]), words->cells[i] != NULL ? words->cells[i] : "");
  set_text (self->remark, words->remark);
  gtk_widget_set_visible (self->remark_box, words->remark != NULL);
  set_class (GTK_WIDGET (self), "sum", words->strong);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (self), words->id != 0);
  gtk_list_box_row_set_selectable (GTK_LIST_BOX_ROW (self), words->id != 0);
  tell_accessible (self, words, headers);
}

void
sw_sheet_line_show_headers (SwSheetLine *self, const char *first, const char *const *headers)
{
  SwSheetWords words = { .title = first };

  g_return_if_fail (SW_IS_SHEET_LINE (self));

  for (guint i = 0; i < self->n_cells; i++)
    words.cells[i] = headers[i];
  gtk_widget_add_css_class (GTK_WIDGET (self), "headers");
  gtk_widget_set_focusable (GTK_WIDGET (self), FALSE);
  sw_sheet_line_show (self, &words, NULL);
}

guint
sw_sheet_line_get_id (SwSheetLine *self)
{
  g_return_val_if_fail (SW_IS_SHEET_LINE (self), 0);
  return self->id;
}
