/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sw-sheet-layout.h"

#include "colour/sw-sample-forms.h"
#include "sheet/sw-step-title.h"
#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>

/* What is weighed and measured before the first pour: dyes and their stocks, water and acid. */

#define SWATCH 12.0
#define NAME_AT 20.0
#define WEIGH 88.0
#define WATER 92.0
#define STOCK 118.0

static double
name_width (const SwSheetLayout *self)
{
  return self->content.width - NAME_AT - WEIGH - WATER - STOCK;
}

static void
add_dye_cells (SwSheetLayout *self, const char *name, const char *weigh, const char *water, const char *stock, SwSheetStyle style, SwSheetStyle weigh_style)
{
  double x = NAME_AT + name_width (self);

  sw_sheet_add_cell (self, name, style, NAME_AT, name_width (self) - 4, 0);
  sw_sheet_add_cell (self, weigh, weigh_style, x, WEIGH - 4, 1);
  x += WEIGH;
  sw_sheet_add_cell (self, water, style, x, WATER - 4, 1);
  x += WATER;
  sw_sheet_add_cell (self, stock, style, x, STOCK, 1);
}

static void
add_swatch (SwSheetLayout *self, const SwDye *dye)
{
  const SwSrgb colour = sw_sample_srgb (&dye->sample);
  SwSheetItem *item = sw_sheet_add (self, SW_SHEET_SWATCH, 0, 0, SWATCH, SWATCH);

  item->rgb[0] = colour.r;
  item->rgb[1] = colour.g;
  item->rgb[2] = colour.b;
  item->on_line = TRUE;
}

static void
lay_stock (SwSheetLayout *self, const SwSheetDye *row, const SwDye *dye)
{
  g_autofree char *weigh = sw_dye_text (row->weigh_g.rounded);
  g_autofree char *water = sw_volume_text (row->water_ml, self->system);
  g_autofree char *volume = sw_volume_text (row->stock_ml.rounded, self->system);
  /* Translators: an amount of stock and its strength: "38.5 mL of 1 %" */
  g_autofree char *stock = g_strdup_printf (_ ("%s of %.3g %%"), volume, row->strength_percent);

  sw_sheet_begin_row (self);
  add_swatch (self, dye);
  add_dye_cells (self, sw_dye_title (dye), weigh, water, stock, SW_STYLE_BODY, SW_STYLE_AMOUNT);
  sw_sheet_end_row (self, sw_sheet_gap (self), 0);
}

static void
lay_dry (SwSheetLayout *self, const SwSheetDye *row, const SwDye *dye)
{
  g_autofree char *weigh = sw_dye_text (row->dry_g.rounded);

  sw_sheet_begin_row (self);
  add_swatch (self, dye);
  /* Translators: instead of the water and the stock of a dye that is scattered as powder */
  add_dye_cells (self, sw_dye_title (dye), weigh, "", _ ("dry grains"), SW_STYLE_BODY, SW_STYLE_AMOUNT);
  sw_sheet_end_row (self, sw_sheet_gap (self), 0);
}

static void
lay_dyes (SwSheetLayout *self)
{
  const SwSketch *sketch = self->forecast->sketch;

  if (self->sheet->n_dyes == 0)
    return;
  sw_sheet_add_heading (self, _ ("Dyes for the whole batch"), 40);
  sw_sheet_begin_row (self);
  /* Translators: heads of columns: the dye; powder to weigh; water to dissolve it in; the stock that makes */
  add_dye_cells (self, _ ("Dye"), _ ("Weigh"), _ ("in water"), _ ("makes stock"), SW_STYLE_ASIDE, SW_STYLE_ASIDE);
  sw_sheet_end_row (self, 1, 20);
  for (gsize i = 0; i < self->sheet->n_dyes; i++)
    {
      const SwSheetDye *row = &self->sheet->dyes[i];
      const SwDye *dye = g_ptr_array_index (sketch->dyes, row->dye);

      if (row->stock_ml.rounded > 0)
        lay_stock (self, row, dye);
      if (row->dry_g.exact > 0)
        lay_dry (self, row, dye);
    }
}

/* Water and acid */

#define LABEL 190.0
#define AMOUNT 90.0

static void
lay_liquid (SwSheetLayout *self, const char *label, const char *amount, const char *aside)
{
  sw_sheet_begin_row (self);
  sw_sheet_add_cell (self, label, SW_STYLE_BODY, 0, LABEL - 6, 0);
  sw_sheet_add_cell (self, amount, SW_STYLE_AMOUNT, LABEL, AMOUNT, 1);
  sw_sheet_add_cell (self, aside, SW_STYLE_BODY, LABEL + AMOUNT + 14, self->content.width - LABEL - AMOUNT - 14, 0);
  sw_sheet_end_row (self, sw_sheet_gap (self), 0);
}

static char *
acid_label (const SwSheetLayout *self)
{
  const SwSketch *sketch = self->forecast->sketch;
  const char *acid = _ (sw_record_find_member (SW_RECORD_BATH, "acid")->choice_labels[sketch->bath.acid]);

  if (self->sheet->liquor.crystals_g.exact > 0)
    /* Translators: acid weighed dry: "Citric acid, crystals" */
    return g_strdup_printf (_ ("%s, crystals"), acid);
  /* Translators: acid and its strength: "Vinegar (acetic acid), 5 %" */
  return g_strdup_printf (_ ("%s, %.3g %%"), acid, sketch->bath.acid_percent);
}

static void
lay_acid (SwSheetLayout *self)
{
  const SwSheetLiquor *liquor = &self->sheet->liquor;
  const double ml = liquor->acid_ml.rounded;
  g_autofree char *label = acid_label (self);
  g_autofree char *amount = NULL;
  g_autofree char *aside = NULL;

  if (liquor->crystals_g.exact > 0)
    {
      g_autofree char *water = sw_volume_text (ml, self->system);

      amount = sw_mass_text (liquor->crystals_g.rounded, SW_MEASURE_METRIC);
      /* Translators: crystals of acid are dissolved; %s is a volume */
      aside = g_strdup_printf (_ ("dissolved in %s of water"), water);
    }
  else
    {
      amount = sw_volume_text (ml, self->system);
      aside = sw_spoons_text (ml, self->system);
    }
  lay_liquid (self, label, amount, aside);
}

/* Acid that another pH would take. */
static void
lay_target (SwSheetLayout *self)
{
  const SwSheetLiquor *liquor = &self->sheet->liquor;
  /* Translators: label of an amount of acid: the pH that is wanted */
  g_autofree char *label = g_strdup_printf (_ ("Acid for pH %.1f"), self->forecast->sketch->sheet.target_ph);
  g_autofree char *amount = NULL;
  g_autofree char *aside = NULL;

  if (self->forecast->sketch->sheet.target_ph <= 0 || liquor->target_acid_ml < 0)
    return;
  amount = liquor->target_crystals_g > 0 ? sw_mass_text (liquor->target_crystals_g, SW_MEASURE_METRIC) : sw_volume_text (liquor->target_acid_ml, self->system);
  aside = liquor->target_crystals_g > 0 ? g_strdup ("") : sw_spoons_text (liquor->target_acid_ml, self->system);
  lay_liquid (self, label, amount, aside);
}

static void
lay_lesser (SwSheetLayout *self)
{
  const SwSheetLiquor *liquor = &self->sheet->lesser_liquor;
  g_autofree char *water = sw_volume_text (liquor->water_ml.rounded, self->system);
  g_autofree char *acid = liquor->crystals_g.exact > 0 ? sw_mass_text (liquor->crystals_g.rounded, SW_MEASURE_METRIC) : sw_volume_text (liquor->acid_ml.rounded, self->system);
  g_autofree char *words = NULL;

  if (self->sheet->lesser == 0)
    return;
  /* Translators: pans that hold fewer skeins than the others; the volumes or masses of water and of acid for each of them */
  words = g_strdup_printf (ngettext ("A pan with %d skein: %s of water, %s of acid.", "A pan with %d skeins: %s of water, %s of acid.", (gulong) self->sheet->lesser),
                           (int) self->sheet->lesser, water, acid);
  sw_sheet_begin_row (self);
  sw_sheet_add_text (self, words, SW_STYLE_BODY, 0, 0, self->content.width, 0);
  sw_sheet_end_row (self, sw_sheet_gap (self), 0);
}

static char *
liquor_heading (const SwSheetLayout *self)
{
  const SwSheet *sheet = self->sheet;

  if (sheet->pans == 1)
    return g_strdup (_ ("Water and acid"));
  return g_strdup_printf (ngettext ("Water and acid for a pan with %d skein", "Water and acid for a pan with %d skeins", (gulong) sheet->fullest), (int) sheet->fullest);
}

void
sw_sheet_lay_amounts (SwSheetLayout *self)
{
  const SwSheetLiquor *liquor = &self->sheet->liquor;
  g_autofree char *heading = liquor_heading (self);
  g_autofree char *water = sw_volume_text (liquor->water_ml.rounded, self->system);
  /* Translators: beside the water of the bath: its liquor ratio, mL to 1 g of fibre, and its pH with the acid in it */
  g_autofree char *aside = g_strdup_printf (_ ("liquor 1 : %.3g, pH %.1f with the acid"), liquor->ratio, liquor->start_ph);

  lay_dyes (self);
  sw_sheet_add_heading (self, heading, 40);
  lay_liquid (self, _ ("Water, with what the yarn holds"), water, aside);
  if (liquor->acid_ml.exact > 0)
    lay_acid (self);
  lay_target (self);
  lay_lesser (self);
}
