/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sheet/sw-sheet-amounts.h"

#include "app/sheet/sw-sheet-table.h"
#include "app/desk/sw-sheet-words.h"
#include "sheet/sw-step-title.h"
#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>

struct _SwSheetAmounts
{
  AdwBin parent_instance;

  GtkWidget *remark_box;
  GtkLabel *remark;
  SwSheetTable *dyes;
  SwSheetTable *liquor;
  SwSheetTable *steps;
  GtkLabel *clear;
  GtkLabel *per_pan;
  AdwExpanderRow *cautions;
  guint caution_bits; /* shown */
  GPtrArray *caution_rows;
};

G_DEFINE_FINAL_TYPE (SwSheetAmounts, sw_sheet_amounts, ADW_TYPE_BIN)

static guint step_chosen_signal;

static void
step_chosen_cb (SwSheetAmounts *self, guint id)
{
  g_signal_emit (self, step_chosen_signal, 0, id);
}

static void
sw_sheet_amounts_finalize (GObject *object)
{
  g_ptr_array_unref (SW_SHEET_AMOUNTS (object)->caution_rows);

  G_OBJECT_CLASS (sw_sheet_amounts_parent_class)->finalize (object);
}

static void
sw_sheet_amounts_class_init (SwSheetAmountsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = sw_sheet_amounts_finalize;

  step_chosen_signal = g_signal_new ("step-chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);

  g_type_ensure (SW_TYPE_SHEET_TABLE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-sheet-amounts.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSheetAmounts, remark_box);
  gtk_widget_class_bind_template_child (widget_class, SwSheetAmounts, remark);
  gtk_widget_class_bind_template_child (widget_class, SwSheetAmounts, dyes);
  gtk_widget_class_bind_template_child (widget_class, SwSheetAmounts, liquor);
  gtk_widget_class_bind_template_child (widget_class, SwSheetAmounts, steps);
  gtk_widget_class_bind_template_child (widget_class, SwSheetAmounts, clear);
  gtk_widget_class_bind_template_child (widget_class, SwSheetAmounts, per_pan);
  gtk_widget_class_bind_template_child (widget_class, SwSheetAmounts, cautions);
  gtk_widget_class_bind_template_callback (widget_class, step_chosen_cb);
}

static void
sw_sheet_amounts_init (SwSheetAmounts *self)
{
  /* Translators: headers of figures: grams of powder, of water, the stock they make */
  const char *dyes[] = { _ ("To weigh"), _ ("Water"), _ ("Stock"), _ ("Poured") };
  const char *liquor[] = { "" };
  /* Translators: headers of figures: millilitres, the same in spoons, grams of dye, pH after the step, dye still in the bath */
  const char *steps[] = { _ ("Amount"), _ ("Spoons"), _ ("Dye"), _ ("pH"), _ ("In the bath") };

  gtk_widget_init_template (GTK_WIDGET (self));
  self->caution_rows = g_ptr_array_new ();
  sw_sheet_table_set_headers (self->dyes, _ ("Dye"), dyes, G_N_ELEMENTS (dyes));
  sw_sheet_table_set_headers (self->liquor, "", liquor, G_N_ELEMENTS (liquor));
  sw_sheet_table_set_headers (self->steps, _ ("Step"), steps, G_N_ELEMENTS (steps));
  sw_sheet_table_set_name (self->dyes, _ ("Dyes of the batch"));
  sw_sheet_table_set_name (self->liquor, _ ("Water and acid in a pan"));
  sw_sheet_table_set_name (self->steps, _ ("Steps in a pan"));
}

/* Dyes */

static void
add_dye (SwSheetAmounts *self, const SwSheet *sheet, const SwSheetDye *dye, const GArray *remarks, SwMeasureSystem measures)
{
  const SwDye *of = sheet->sketch->dyes->pdata[dye->dye];
  const gboolean dry = dye->stock_ml.rounded <= 0;
  g_autofree char *detail = sw_sheet_dye_detail (dye);
  g_autofree char *remark = sw_sheet_remarks_at (sheet, remarks, SW_REMARK_PLACE_DYE, dye->dye, measures);
  g_autofree char *weigh = sw_dye_text (dye->weigh_g.rounded);
  g_autofree char *grains = dye->dry_g.rounded > 0 ? sw_dye_text (dye->dry_g.rounded) : NULL;
  /* Translators: dry grains of dye that are scattered, beside what is dissolved: "1.2 g + 0.3 g dry" */
  g_autofree char *both = grains != NULL && !dry ? g_strdup_printf (_ ("%1$s + %2$s dry"), weigh, grains) : NULL;
  g_autofree char *water = sw_volume_text (dye->water_ml, measures);
  g_autofree char *volume = sw_volume_text (dye->stock_ml.rounded, measures);
  /* Translators: a volume of stock and its strength: "60 mL, 1 %" */
  g_autofree char *stock = g_strdup_printf (_ ("%1$s, %2$.3g %%"), volume, dye->strength_percent);
  g_autofree char *poured = dry ? sw_dye_text (dye->poured_g.rounded) : sw_volume_text (dye->poured_ml.rounded, measures);
  SwSheetWords words = { .sample = &of->sample, .title = sw_dye_title (of), .detail = detail, .remark = remark };

  words.cells[0] = both != NULL ? both : dry && grains != NULL ? grains
                                                               : weigh;
  words.cells[1] = dry ? NULL : water;
  words.cells[2] = dry ? _ ("dry") : stock;
  words.cells[3] = poured;
  sw_sheet_table_add (self->dyes, &words);
}

static void
show_dyes (SwSheetAmounts *self, const SwSheet *sheet, const GArray *remarks, SwMeasureSystem measures)
{
  sw_sheet_table_begin (self->dyes);
  for (gsize i = 0; i < sheet->n_dyes; i++)
    add_dye (self, sheet, &sheet->dyes[i], remarks, measures);
  sw_sheet_table_end (self->dyes);
}

/* Liquor */

static void
add_liquor (SwSheetAmounts *self, const char *title, const char *detail, const char *figure, const char *remark)
{
  SwSheetWords words = { .title = title, .detail = detail, .cells = { figure }, .remark = remark };

  sw_sheet_table_add (self->liquor, &words);
}

static char *
acid_name (const SwSketch *sketch)
{
  const SwMember *member = sw_record_find_member (SW_RECORD_BATH, "acid");

  /* Translators: an acid and its strength: "Acetic acid, 5 %" */
  return g_strdup_printf (_ ("%1$s, %2$.3g %%"), _ (member->choice_labels[sketch->bath.acid]), sketch->bath.acid_percent);
}

static void
add_water (SwSheetAmounts *self, const SwSheet *sheet, const char *remark, SwMeasureSystem measures)
{
  const SwSheetLiquor *liquor = &sheet->liquor;
  g_autofree char *water = sw_volume_text (liquor->water_ml.rounded, measures);
  g_autofree char *cover = sw_volume_text (sw_round_to (liquor->cover_ml, 10), measures);
  g_autofree char *holds = sw_volume_text (sw_round_to (liquor->pan_ml, 10), measures);
  /* Translators: a liquor ratio, and two volumes */
  g_autofree char *detail = g_strdup_printf (_ ("1 : %1$.3g · %2$s cover the skeins · the pan holds %3$s"), liquor->ratio, cover, holds);

  /* Translators: the water in the pan at the start, with what the yarn holds */
  add_liquor (self, _ ("Water"), detail, water, remark);
}

static void
add_acid (SwSheetAmounts *self, const SwSheet *sheet, SwMeasureSystem measures)
{
  const SwSheetLiquor *liquor = &sheet->liquor;
  g_autofree char *name = acid_name (sheet->sketch);
  g_autofree char *volume = sw_volume_text (liquor->acid_ml.rounded, measures);
  g_autofree char *spoons = sw_spoons_text (liquor->acid_ml.rounded, measures);
  g_autofree char *crystals = sw_dye_text (liquor->crystals_g.rounded);
  g_autofree char *detail = NULL;

  if (liquor->acid_ml.exact <= 0)
    {
      add_liquor (self, _ ("No acid at the start"), NULL, NULL, NULL);
      return;
    }
  if (liquor->crystals_g.rounded > 0)
    /* Translators: the water in which citric acid is dissolved: "dissolved in 40 mL of water" */
    detail = g_strdup_printf (_ ("crystals, dissolved in %s of water"), volume);
  add_liquor (self, name, detail != NULL ? detail : spoons, detail != NULL ? crystals : volume, NULL);
}

static void
show_liquor (SwSheetAmounts *self, const SwSheet *sheet, const GArray *remarks, SwMeasureSystem measures)
{
  g_autofree char *remark = sw_sheet_remarks_at (sheet, remarks, SW_REMARK_PLACE_LIQUOR, 0, measures);
  g_autofree char *ph = g_strdup_printf ("%.1f", sheet->liquor.start_ph);
  g_autofree char *heat = sw_temperature_text (sheet->sketch->bath.temperature_c, measures);
  /* Translators: a temperature */
  g_autofree char *detail = g_strdup_printf (_ ("at %s"), heat);

  sw_sheet_table_begin (self->liquor);
  add_water (self, sheet, remark, measures);
  add_acid (self, sheet, measures);
  add_liquor (self, _ ("pH at the start"), detail, ph, NULL);
  sw_sheet_table_end (self->liquor);
}

/* Steps */

static void
add_step (SwSheetAmounts *self, const SwSheet *sheet, gsize i, const GArray *remarks, SwSystem system)
{
  const SwSheetStep *row = &sheet->steps[i];
  const SwMeasureSystem measures = sw_sheet_measures (system);
  const SwStep *step = sw_sketch_find_step (sheet->sketch, row->step);
  const SwSheetPour *pour = sw_sheet_find_pour (sheet, row->step);
  const SwDye *dye = pour != NULL ? sheet->sketch->dyes->pdata[pour->dye] : NULL;
  const double ml = pour != NULL ? pour->stock_ml.rounded : row->added_ml.rounded;
  g_autofree char *title = sw_step_title (sheet->sketch, step);
  g_autofree char *detail = sw_sheet_step_detail (sheet, i, system);
  g_autofree char *remark = sw_sheet_remarks_at (sheet, remarks, SW_REMARK_PLACE_STEP, row->step, measures);
  g_autofree char *icon = g_strdup_printf ("strandwise-%s-symbolic", sw_step_kind_name (step->kind));
  g_autofree char *number = pour != NULL ? g_strdup_printf ("%u", pour->number) : NULL;
  g_autofree char *amount = ml > 0 ? sw_volume_text (ml, measures) : NULL;
  g_autofree char *spoons = ml > 0 ? sw_spoons_text (ml, measures) : NULL;
  g_autofree char *grams = pour != NULL ? sw_dye_text (pour->dye_g.rounded) : NULL;
  g_autofree char *ph = g_strdup_printf ("%.1f", row->ph);
  g_autofree char *left = row->left_percent >= 0 ? g_strdup_printf ("%.0f\u00a0%%", row->left_percent) : NULL;
  SwSheetWords words = { .id = row->step, .icon = icon, .sample = dye != NULL ? &dye->sample : NULL, .mark = number, .title = title, .detail = detail, .remark = remark };

  words.cells[0] = pour != NULL && pour->dry ? _ ("dry") : amount;
  words.cells[1] = spoons;
  words.cells[2] = grams;
  words.cells[3] = ph;
  words.cells[4] = left;
  sw_sheet_table_add (self->steps, &words);
}

static void
show_steps (SwSheetAmounts *self, const SwSheet *sheet, const GArray *remarks, SwSystem system)
{
  g_autofree char *clear = sheet->clear_percent >= 99.5
                               /* Translators: all the dye has left the bath for the yarn */
                               ? g_strdup (_ ("At the end the bath is clear: all the dye is on the fibre."))
                               : sheet->clear_percent >= 0
                                     /* Translators: how much of the dye is on the yarn after the last step */
                                     ? g_strdup_printf (_ ("At the end %.0f %% of the dye is on the fibre, and the bath holds the rest."), sheet->clear_percent)
                                     : NULL;

  sw_sheet_table_begin (self->steps);
  for (gsize i = 0; i < sheet->n_steps; i++)
    add_step (self, sheet, i, remarks, system);
  sw_sheet_table_end (self->steps);
  gtk_label_set_text (self->clear, clear != NULL ? clear : "");
  gtk_widget_set_visible (GTK_WIDGET (self->clear), clear != NULL);
}

/* Cautions */

static void
add_caution (SwSheetAmounts *self, SwCaution caution)
{
  GtkWidget *row = adw_action_row_new ();

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), sw_caution_title (caution));
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), sw_caution_text (caution));
  adw_expander_row_add_row (self->cautions, row);
  g_ptr_array_add (self->caution_rows, row);
}

static void
show_cautions (SwSheetAmounts *self, const SwSketch *sketch)
{
  const guint bits = sw_cautions_for_sketch (sketch);

  if (bits == self->caution_bits)
    return;
  self->caution_bits = bits;
  for (guint i = 0; i < self->caution_rows->len; i++)
    adw_expander_row_remove (self->cautions, self->caution_rows->pdata[i]);
  g_ptr_array_set_size (self->caution_rows, 0);
  for (SwCaution caution = 0; caution < SW_N_CAUTIONS; caution++)
    if (bits & (1u << caution))
      add_caution (self, caution);
}

void
sw_sheet_amounts_show (SwSheetAmounts *self, const SwSheet *sheet, SwSystem system)
{
  g_autoptr (GArray) remarks = sw_sheet_remarks (sheet);
  g_autofree char *general = sw_sheet_remarks_at (sheet, remarks, SW_REMARK_PLACE_SHEET, 0, sw_sheet_measures (system));
  g_autofree char *spread = sw_sheet_spread (sheet, system);

  g_return_if_fail (SW_IS_SHEET_AMOUNTS (self));

  gtk_widget_set_visible (self->remark_box, general != NULL);
  gtk_label_set_text (self->remark, general != NULL ? general : "");
  gtk_label_set_text (self->per_pan, spread);
  show_dyes (self, sheet, remarks, sw_sheet_measures (system));
  show_liquor (self, sheet, remarks, sw_sheet_measures (system));
  show_steps (self, sheet, remarks, system);
  show_cautions (self, sheet->sketch);
}

void
sw_sheet_amounts_choose (SwSheetAmounts *self, guint step)
{
  g_return_if_fail (SW_IS_SHEET_AMOUNTS (self));
  sw_sheet_table_choose (self->steps, step);
}
