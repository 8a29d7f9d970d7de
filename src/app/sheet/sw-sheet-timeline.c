/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sheet/sw-sheet-timeline.h"

#include "app/parts/sw-expander-name.h"
#include "app/parts/sw-field-row.h"
#include "app/sheet/sw-sheet-deed-row.h"
#include "sheet/sw-measure.h"

#include <glib/gi18n-lib.h>

struct _SwSheetTimeline
{
  AdwBin parent_instance;

  SwSubject *subject;
  gboolean choosing;

  GtkLabel *summary;
  GtkListBox *deeds;
  AdwExpanderRow *times;
};

G_DEFINE_FINAL_TYPE (SwSheetTimeline, sw_sheet_timeline, ADW_TYPE_BIN)

static guint step_chosen_signal;

static void
row_selected_cb (SwSheetTimeline *self, GtkListBoxRow *row)
{
  if (row != NULL && !self->choosing)
    g_signal_emit (self, step_chosen_signal, 0, sw_sheet_deed_row_get_step (SW_SHEET_DEED_ROW (row)));
}

static void
sw_sheet_timeline_dispose (GObject *object)
{
  g_clear_object (&SW_SHEET_TIMELINE (object)->subject);

  G_OBJECT_CLASS (sw_sheet_timeline_parent_class)->dispose (object);
}

static void
sw_sheet_timeline_class_init (SwSheetTimelineClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_sheet_timeline_dispose;

  step_chosen_signal = g_signal_new ("step-chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-sheet-timeline.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSheetTimeline, summary);
  gtk_widget_class_bind_template_child (widget_class, SwSheetTimeline, deeds);
  gtk_widget_class_bind_template_child (widget_class, SwSheetTimeline, times);
  gtk_widget_class_bind_template_callback (widget_class, row_selected_cb);
}

static void
sw_sheet_timeline_init (SwSheetTimeline *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
sw_sheet_timeline_set_subject (SwSheetTimeline *self, SwSubject *subject)
{
  /* A deed that takes no time is not in the list, and is brought back here. */
  static const char *const names[] = { "presoak_min", "heat_min", "pour_min", "cool_min", "wash_min", "rinses", "rinse_min", "spin_min", "dry_min" };

  g_return_if_fail (SW_IS_SHEET_TIMELINE (self) && self->subject == NULL);

  self->subject = g_object_ref (subject);
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    adw_expander_row_add_row (self->times, sw_field_row_new (subject, sw_record_find_member (SW_RECORD_SHEET, names[i])));
  sw_expander_tell_name (self->times);
}

/* Rows that are still about their deed stay, so that a field that is being typed into keeps the keys. */
static void
show_deed (SwSheetTimeline *self, const SwSketch *sketch, int i, const SwDeed *deed)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->deeds, i);

  if (row == NULL || !sw_sheet_deed_row_is_of (SW_SHEET_DEED_ROW (row), deed))
    {
      if (row != NULL)
        gtk_list_box_remove (self->deeds, GTK_WIDGET (row));
      row = GTK_LIST_BOX_ROW (sw_sheet_deed_row_new (self->subject, deed));
      gtk_list_box_insert (self->deeds, GTK_WIDGET (row), i);
    }
  sw_sheet_deed_row_show (SW_SHEET_DEED_ROW (row), sketch, deed);
}

/* Until the skeins hang: drying is nobody's work. */
static void
show_summary (SwSheetTimeline *self, const SwDeed *day, gsize n)
{
  double until = 0, own = 0;
  g_autofree char *all = NULL, *work = NULL, *words = NULL;

  for (gsize i = 0; i < n; i++)
    {
      if (day[i].kind != SW_DEED_DRY)
        until = MAX (until, day[i].start_min + day[i].minutes);
      if (!day[i].waits)
        own += day[i].minutes;
    }
  all = sw_minutes_text (until);
  work = sw_minutes_text (own);
  /* Translators: how long the day is, and how much of it is pouring */
  words = g_strdup_printf (_ ("%1$s until the skeins hang, %2$s of them pouring. Weighing, turning and washing up come on top."), all, work);
  gtk_label_set_text (self->summary, words);
}

void
sw_sheet_timeline_show (SwSheetTimeline *self, const SwSheet *sheet)
{
  g_autofree SwDeed *day = NULL;
  GtkListBoxRow *row;
  gsize n;

  g_return_if_fail (SW_IS_SHEET_TIMELINE (self));

  day = sw_day_new (sheet->sketch, &n);
  self->choosing = TRUE;
  for (gsize i = 0; i < n; i++)
    show_deed (self, sheet->sketch, (int) i, &day[i]);
  while ((row = gtk_list_box_get_row_at_index (self->deeds, (int) n)) != NULL)
    gtk_list_box_remove (self->deeds, GTK_WIDGET (row));
  self->choosing = FALSE;
  show_summary (self, day, n);
}

void
sw_sheet_timeline_choose (SwSheetTimeline *self, guint step)
{
  GtkListBoxRow *row;

  g_return_if_fail (SW_IS_SHEET_TIMELINE (self));

  self->choosing = TRUE;
  gtk_list_box_unselect_all (self->deeds);
  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->deeds, i)) != NULL; i++)
    if (step != 0 && sw_sheet_deed_row_get_step (SW_SHEET_DEED_ROW (row)) == step)
      gtk_list_box_select_row (self->deeds, row);
  self->choosing = FALSE;
}
