/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sheet/sw-sheet-cost.h"

#include "app/parts/sw-field-row.h"
#include "app/parts/sw-member-control.h"
#include "app/sheet/sw-sheet-table.h"
#include "app/parts/sw-swatch.h"
#include "sheet/sw-cost.h"
#include "sheet/sw-money.h"
#include "sheet/sw-step-title.h"

#include <glib/gi18n-lib.h>

struct _SwSheetCost
{
  AdwBin parent_instance;

  SwSubject *subject;
  GArray *dye_ids;     /* of guint: of the rows below */
  GPtrArray *dye_rows; /* not owned */

  SwSheetTable *result;
  GtkLabel *missing;
  AdwPreferencesGroup *prices;
  AdwPreferencesGroup *dyes;
  AdwPreferencesGroup *work;
};

G_DEFINE_FINAL_TYPE (SwSheetCost, sw_sheet_cost, ADW_TYPE_BIN)

static void
sw_sheet_cost_dispose (GObject *object)
{
  g_clear_object (&SW_SHEET_COST (object)->subject);

  G_OBJECT_CLASS (sw_sheet_cost_parent_class)->dispose (object);
}

static void
sw_sheet_cost_finalize (GObject *object)
{
  g_array_unref (SW_SHEET_COST (object)->dye_ids);
  g_ptr_array_unref (SW_SHEET_COST (object)->dye_rows);

  G_OBJECT_CLASS (sw_sheet_cost_parent_class)->finalize (object);
}

static void
sw_sheet_cost_class_init (SwSheetCostClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_sheet_cost_dispose;
  G_OBJECT_CLASS (klass)->finalize = sw_sheet_cost_finalize;

  g_type_ensure (SW_TYPE_SHEET_TABLE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-sheet-cost.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSheetCost, result);
  gtk_widget_class_bind_template_child (widget_class, SwSheetCost, missing);
  gtk_widget_class_bind_template_child (widget_class, SwSheetCost, prices);
  gtk_widget_class_bind_template_child (widget_class, SwSheetCost, dyes);
  gtk_widget_class_bind_template_child (widget_class, SwSheetCost, work);
}

static void
sw_sheet_cost_init (SwSheetCost *self)
{
  /* Translators: headers of figures: for the batch, for one skein */
  const char *headers[] = { _ ("Batch"), _ ("Skein") };

  self->dye_ids = g_array_new (FALSE, FALSE, sizeof (guint));
  self->dye_rows = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  sw_sheet_table_set_headers (self->result, "", headers, G_N_ELEMENTS (headers));
  sw_sheet_table_set_name (self->result, _ ("Cost"));
}

static void
add_fields (SwSheetCost *self, AdwPreferencesGroup *group, const char *const *names, gsize n)
{
  for (gsize i = 0; i < n; i++)
    adw_preferences_group_add (group, sw_field_row_new (self->subject, sw_record_find_member (SW_RECORD_SHEET, names[i])));
}

void
sw_sheet_cost_set_subject (SwSheetCost *self, SwSubject *subject)
{
  static const char *const prices[] = { "currency", "yarn_price", "acid_price_per_l", "label_price", "batch_price" };
  static const char *const work[] = { "hands_on_min", "rate_per_hour", "margin_percent" };

  g_return_if_fail (SW_IS_SHEET_COST (self) && self->subject == NULL);

  self->subject = g_object_ref (subject);
  add_fields (self, self->prices, prices, G_N_ELEMENTS (prices));
  add_fields (self, self->work, work, G_N_ELEMENTS (work));
}

/* Prices of the dyes that are poured */

static void
add_dye (SwSheetCost *self, const SwDye *dye)
{
  const SwMember *member = sw_record_find_member (SW_RECORD_DYE, "price_per_g");
  g_autoptr (SwSubject) subject = sw_subject_new (sw_subject_get_document (self->subject), SW_RECORD_DYE);
  g_autofree char *title = g_markup_escape_text (sw_dye_title (dye), -1);
  GtkWidget *row = g_object_new (ADW_TYPE_PREFERENCES_ROW, "title", title, "activatable", FALSE, "focusable", FALSE, NULL);
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *swatch = g_object_new (SW_TYPE_SWATCH, NULL);
  GtkWidget *name = gtk_label_new (sw_dye_title (dye));
  GtkWidget *control;

  sw_subject_set_ids (subject, &dye->id, 1);
  control = sw_member_control_new (subject, member);
  gtk_widget_set_valign (control, GTK_ALIGN_CENTER);
  sw_member_control_set_label (SW_MEMBER_CONTROL (control), sw_dye_title (dye));
  sw_swatch_set_sample (SW_SWATCH (swatch), &dye->sample);
  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_box_append (GTK_BOX (line), swatch);
  gtk_box_append (GTK_BOX (line), name);
  gtk_box_append (GTK_BOX (line), control);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), line);
  gtk_widget_add_css_class (row, "field-row");
  adw_preferences_group_add (self->dyes, row);
  g_ptr_array_add (self->dye_rows, row);
}

static gboolean
same_dyes (SwSheetCost *self, const SwSheet *sheet)
{
  if (self->dye_ids->len != sheet->n_dyes)
    return FALSE;
  for (guint i = 0; i < self->dye_ids->len; i++)
    if (g_array_index (self->dye_ids, guint, i) != ((const SwDye *) sheet->sketch->dyes->pdata[sheet->dyes[i].dye])->id)
      return FALSE;
  return TRUE;
}

static void
show_dyes (SwSheetCost *self, const SwSheet *sheet)
{
  if (same_dyes (self, sheet))
    return;
  for (guint i = 0; i < self->dye_rows->len; i++)
    adw_preferences_group_remove (self->dyes, self->dye_rows->pdata[i]);
  g_ptr_array_set_size (self->dye_rows, 0);
  g_array_set_size (self->dye_ids, 0);
  for (gsize i = 0; i < sheet->n_dyes; i++)
    {
      const SwDye *dye = sheet->sketch->dyes->pdata[sheet->dyes[i].dye];

      g_array_append_val (self->dye_ids, dye->id);
      add_dye (self, dye);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->dyes), sheet->n_dyes > 0);
}

/* Results */

static void
add_result (SwSheetCost *self, const SwSheet *sheet, const char *title, double batch, gboolean strong)
{
  const char *currency = sheet->sketch->sheet.currency;
  g_autofree char *all = sw_money_text (batch, currency);
  g_autofree char *one = sw_money_text (batch / (double) MAX (sheet->skeins, 1), currency);
  SwSheetWords words = { .title = title, .cells = { all, one }, .strong = strong };

  if (batch > 0)
    sw_sheet_table_add (self->result, &words);
}

static void
say (GString *text, gboolean is_missing, const char *sentence)
{
  if (!is_missing)
    return;
  if (text->len > 0)
    g_string_append_c (text, ' ');
  g_string_append (text, sentence);
}

static void
show_missing (SwSheetCost *self, const SwCost *cost)
{
  /* A cost of nothing would be a lie. */
  g_autoptr (GString) text = g_string_new (cost->total > 0 ? NULL : _ ("Give prices below to see what a skein costs."));
  g_autofree char *dyes = g_strdup_printf (ngettext ("%u dye has no price.", "%u dyes have no price.", cost->n_unpriced_dyes), cost->n_unpriced_dyes);

  say (text, cost->no_yarn_price, _ ("The undyed yarn has no price."));
  say (text, cost->n_unpriced_dyes > 0, dyes);
  say (text, cost->no_acid_price, _ ("The acid has no price."));
  say (text, cost->no_work, _ ("Your own work is not counted: give its minutes and what an hour is worth."));
  if (text->len > 0)
    say (text, TRUE, _ ("What has no price counts as nothing here."));
  gtk_label_set_text (self->missing, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->missing), text->len > 0);
}

void
sw_sheet_cost_show (SwSheetCost *self, const SwSheet *sheet)
{
  SwCost cost;
  g_autofree char *price = NULL;

  g_return_if_fail (SW_IS_SHEET_COST (self));

  sw_cost_of (sheet, &cost);
  show_dyes (self, sheet);
  sw_sheet_table_begin (self->result);
  add_result (self, sheet, _ ("Undyed yarn"), cost.yarn, FALSE);
  add_result (self, sheet, _ ("Dye"), cost.dye, FALSE);
  add_result (self, sheet, _ ("Acid"), cost.acid, FALSE);
  add_result (self, sheet, _ ("Labels and ties"), cost.label, FALSE);
  add_result (self, sheet, _ ("Heat and water"), cost.batch, FALSE);
  add_result (self, sheet, _ ("Own work"), cost.work, FALSE);
  add_result (self, sheet, _ ("Cost"), cost.total, TRUE);
  if (sheet->sketch->sheet.margin_percent > 0)
    {
      /* Translators: the price that leaves the margin */
      price = g_strdup_printf (_ ("Price with a margin of %.3g %%"), sheet->sketch->sheet.margin_percent);
      add_result (self, sheet, price, cost.price * (double) sheet->skeins, TRUE);
    }
  sw_sheet_table_end (self->result);
  show_missing (self, &cost);
}
