/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-sheet-text.h"

#include "files/sw-table.h"
#include "sheet/sw-cost.h"
#include "sheet/sw-day.h"
#include "sheet/sw-sheet-lay.h"
#include "sheet/sw-sheet-remarks.h"
#include "sheet/sw-step-title.h"

#include <glib/gi18n-lib.h>

#define INDENT 2

/* The page as it is written. */
typedef struct
{
  GString *out;
  const SwSheetAccount *account;
  const SwSheet *sheet;
  const SwSketch *sketch;
  SwMeasureSystem system;
} Page;

static void
add_heading (Page *page, const char *heading)
{
  g_string_append_printf (page->out, "\n%s\n", heading);
}

/* A sentence on a line of its own; takes it over. */
static void
add_sentence (Page *page, char *sentence)
{
  g_string_append_printf (page->out, "%*s%s\n", INDENT, "", sentence);
  g_free (sentence);
}

/* A cell that is made for it; takes it over. */
static void
add_cell (SwTable *table, char *cell)
{
  sw_table_add (table, cell);
  g_free (cell);
}

static const char *
dye_name (const Page *page, guint dye)
{
  return sw_dye_title (page->sketch->dyes->pdata[dye]);
}

static void
add_title (Page *page)
{
  const SwYarn *yarn = &page->sketch->yarn;
  const char *fibre = sw_record_find_member (SW_RECORD_YARN, "fibre")->choice_labels[yarn->fibre];
  g_autofree char *mass = sw_mass_text (page->sheet->fibre_g, page->system);
  g_autofree char *one = sw_mass_text (yarn->mass_g, page->system);
  /* Translators: how many skeins are dyed at once */
  g_autofree char *skeins = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d skein", "%d skeins", (gulong) page->sheet->skeins), (int) page->sheet->skeins);
  g_autofree char *pans = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d pan", "%d pans", (gulong) page->sheet->pans), (int) page->sheet->pans);

  g_string_append_printf (page->out, "%s\n", page->sketch->title[0] != '\0' ? page->sketch->title : _ ("Untitled"));
  /* Translators: "4 skeins", "2 pans", mass of all, fibre, mass of one: "4 skeins in 2 pans: 400 g of Merino, 100 g a skein" */
  g_string_append_printf (page->out, _ ("%1$s in %2$s: %3$s of %4$s, %5$s a skein"), skeins, pans, mass, _ (fibre), one);
  g_string_append_c (page->out, '\n');
}

static void
add_remarks (Page *page)
{
  g_autoptr (GArray) remarks = sw_sheet_remarks (page->sheet);

  if (remarks->len > 0)
    add_heading (page, _ ("Think of this first"));
  for (guint i = 0; i < remarks->len; i++)
    add_sentence (page, sw_sheet_remark_text (page->sheet, &g_array_index (remarks, SwRemark, i), page->system));
}

static void
add_stocks (Page *page)
{
  g_autoptr (SwTable) table = sw_table_new ("lrrrr");

  add_heading (page, _ ("Weigh and dissolve"));
  sw_table_add (table, _ ("dye"));
  /* Translators: dye powder that is weighed */
  sw_table_add (table, _ ("powder"));
  /* Translators: water is added to the powder until the stock has that volume */
  sw_table_add (table, _ ("made up to"));
  /* Translators: of the stock, what is poured */
  sw_table_add (table, _ ("poured"));
  /* Translators: dye as a percentage of the weight of fibre */
  sw_table_add (table, _ ("depth"));
  for (gsize i = 0; i < page->sheet->n_dyes; i++)
    {
      const SwSheetDye *dye = &page->sheet->dyes[i];

      if (!(dye->stock_ml.exact > 0.0))
        continue;
      sw_table_add (table, dye_name (page, dye->dye));
      add_cell (table, sw_dye_text (dye->weigh_g.rounded));
      add_cell (table, sw_volume_text (dye->stock_ml.rounded, page->system));
      add_cell (table, sw_volume_text (dye->poured_ml.rounded, page->system));
      sw_table_add_format (table, "%.2f %%", dye->depth_percent);
    }
  sw_table_print (table, INDENT, page->out);

  for (gsize i = 0; i < page->sheet->n_dyes; i++)
    if (page->sheet->dyes[i].dry_g.exact > 0.0)
      {
        g_autofree char *grams = sw_dye_text (page->sheet->dyes[i].dry_g.rounded);

        /* Translators: dye, grams: weighed apart, since it is strewn dry */
        add_sentence (page, g_strdup_printf (_ ("%s: %s more, to be scattered dry"), dye_name (page, page->sheet->dyes[i].dye), grams));
      }
}

/* A volume with the spoons that hold about as much. */
static char *
with_spoons (const Page *page, double ml)
{
  g_autofree char *volume = sw_volume_text (ml, page->system), *spoons = sw_spoons_text (ml, page->system);

  /* Translators: a volume, and about the same in kitchen measures: "60 mL (4 tbsp)" */
  return g_strdup_printf (_ ("%s (%s)"), volume, spoons);
}

static char *
acid_cell (const Page *page, SwAmount ml, SwAmount crystals_g)
{
  g_autofree char *grams = NULL, *volume = NULL;

  if (!(crystals_g.exact > 0.0))
    return with_spoons (page, ml.rounded);
  grams = sw_dye_text (crystals_g.rounded);
  volume = sw_volume_text (ml.rounded, page->system);
  /* Translators: citric acid by weight, dissolved in so much water: "3 g in 60 mL of water" */
  return g_strdup_printf (_ ("%s in %s of water"), grams, volume);
}

static char *
acid_label (const Page *page)
{
  const SwBathSettings *bath = &page->sketch->bath;
  const char *name = _ (sw_record_find_member (SW_RECORD_BATH, "acid")->choice_labels[bath->acid]);

  if (page->sheet->liquor.crystals_g.exact > 0.0)
    return g_strdup (name);
  /* Translators: an acid and its strength in per cent */
  return g_strdup_printf (_ ("%s, %.4g %%"), name, bath->acid_percent);
}

static char *
target_cell (const Page *page, const SwSheetLiquor *liquor)
{
  if (liquor->target_acid_ml < 0.0)
    return g_strdup (_ ("too weak an acid for it"));
  return acid_cell (page, (SwAmount){ liquor->target_acid_ml, liquor->target_acid_ml }, (SwAmount){ liquor->target_crystals_g, liquor->target_crystals_g });
}

/* One row of what goes into a pan, for each kind of pan. */
typedef char *(*LiquorCell) (const Page *page, const SwSheetLiquor *liquor);

static void
add_liquor_row (Page *page, SwTable *table, const char *label, LiquorCell cell)
{
  sw_table_add (table, label);
  add_cell (table, cell (page, &page->sheet->liquor));
  if (page->sheet->lesser > 0)
    add_cell (table, cell (page, &page->sheet->lesser_liquor));
}

static char *
yarn_cell (const Page *page, const SwSheetLiquor *liquor)
{
  return sw_mass_text (liquor->fibre_g, page->system);
}

static char *
water_cell (const Page *page, const SwSheetLiquor *liquor)
{
  return with_spoons (page, liquor->water_ml.rounded);
}

static char *
acid_liquor_cell (const Page *page, const SwSheetLiquor *liquor)
{
  return acid_cell (page, liquor->acid_ml, liquor->crystals_g);
}

static char *
ph_cell (const Page *page, const SwSheetLiquor *liquor)
{
  return g_strdup_printf ("%.1f", liquor->start_ph);
}

static char *
ratio_cell (const Page *page, const SwSheetLiquor *liquor)
{
  /* Translators: millilitres of liquor to a gram of yarn */
  return g_strdup_printf (_ ("%.3g mL per g"), liquor->ratio);
}

static char *
cover_cell (const Page *page, const SwSheetLiquor *liquor)
{
  return sw_volume_text (sw_round_to (liquor->cover_ml, 10.0), page->system);
}

static char *
ratio_water_cell (const Page *page, const SwSheetLiquor *liquor)
{
  return sw_volume_text (sw_round_to (liquor->ratio_water_ml, 10.0), page->system);
}

/* "2 pans of 3 skeins". */
static char *
pan_kind (gsize pans, gsize skeins)
{
  g_autofree char *content = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d skein", "%d skeins", (gulong) skeins), (int) skeins);

  /* Translators: how many pans that hold so many skeins: "2 pans with 3 skeins" */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d pan with %s", "%d pans with %s", (gulong) pans), (int) pans, content);
}

static void
add_liquor (Page *page)
{
  const SwSheet *sheet = page->sheet;
  g_autoptr (SwTable) table = sw_table_new (sheet->lesser > 0 ? "lll" : "ll");
  g_autofree char *acid = acid_label (page);
  g_autofree char *lay = NULL;

  add_heading (page, _ ("Into each pan"));
  sw_table_add (table, "");
  add_cell (table, pan_kind (sheet->fuller_pans, sheet->fullest));
  if (sheet->lesser > 0)
    add_cell (table, pan_kind (sheet->pans - sheet->fuller_pans, sheet->lesser));
  add_liquor_row (page, table, _ ("yarn"), yarn_cell);
  add_liquor_row (page, table, _ ("water"), water_cell);
  add_liquor_row (page, table, acid, acid_liquor_cell);
  /* Translators: of the bath before the first pour */
  add_liquor_row (page, table, _ ("pH at the start"), ph_cell);
  /* Translators: millilitres of liquor to a gram of yarn */
  add_liquor_row (page, table, _ ("liquor"), ratio_cell);
  /* Translators: how much liquor just covers the yarn in the pan */
  add_liquor_row (page, table, _ ("just covered by"), cover_cell);
  if (page->sketch->sheet.liquor_ratio > 0.0)
    /* Translators: water that makes the liquor ratio which the dyer asked for */
    add_liquor_row (page, table, _ ("water for the ratio wanted"), ratio_water_cell);
  if (page->sketch->sheet.target_ph > 0.0)
    /* Translators: acid that makes the pH which the dyer asked for */
    add_liquor_row (page, table, _ ("acid for the pH wanted"), target_cell);
  sw_table_print (table, INDENT, page->out);

  lay = sw_sheet_lay_text (sheet);
  if (lay != NULL)
    add_sentence (page, g_steal_pointer (&lay));
  if (sheet->liquor.crystals_g.exact > 0.0 || sheet->liquor.target_crystals_g > 0.0)
    add_sentence (page, g_strdup (_ ("Crystals: citric acid without water. Of the monohydrate take more by 9 %.")));
}

static const SwSheetPour *
pour_of (const Page *page, const SwDeed *deed)
{
  return deed->pour > 0 ? &page->sheet->pours[deed->pour - 1] : NULL;
}

static const SwSheetStep *
step_of (const Page *page, const SwDeed *deed)
{
  for (gsize i = 0; i < page->sheet->n_steps; i++)
    if (page->sheet->steps[i].step == deed->step)
      return &page->sheet->steps[i];
  return NULL;
}

static char *
deed_cell (const Page *page, const SwDeed *deed)
{
  const SwStep *step = sw_sketch_find_step (page->sketch, deed->step);
  const SwSheetPour *pour = pour_of (page, deed);
  g_autofree char *title = NULL;

  if (pour == NULL)
    return g_strdup (step != NULL && step->name[0] != '\0' ? step->name : sw_deed_label (deed->kind));
  title = sw_step_title (page->sketch, step);
  /* Translators: number of a pour, its name, its dye */
  return g_strdup_printf (_ ("%u  %s, %s"), pour->number, title, dye_name (page, pour->dye));
}

/* How much of it, in a pan with most skeins or one less. */
static char *
amount_cell (const Page *page, const SwDeed *deed, gboolean lesser)
{
  const SwSheetPour *pour = pour_of (page, deed);
  const SwSheetStep *row = step_of (page, deed);

  if (pour != NULL && pour->dry)
    return sw_dye_text (lesser ? pour->lesser_dye_g.rounded : pour->dye_g.rounded);
  if (pour != NULL)
    return with_spoons (page, lesser ? pour->lesser_stock_ml.rounded : pour->stock_ml.rounded);
  if (row != NULL && row->added_ml.exact > 0.0)
    return acid_cell (page, lesser ? row->lesser_added_ml : row->added_ml, lesser ? row->lesser_crystals_g : row->crystals_g);
  return g_strdup ("");
}

static void
add_deed (const Page *page, SwTable *table, const SwDeed *deed)
{
  const SwSheetStep *row = step_of (page, deed);
  long start = (long) deed->start_min;

  sw_table_add_format (table, "%ld:%02ld", start / 60, start % 60);
  add_cell (table, deed_cell (page, deed));
  add_cell (table, amount_cell (page, deed, FALSE));
  if (page->sheet->lesser > 0)
    add_cell (table, amount_cell (page, deed, TRUE));
  add_cell (table, deed->minutes > 0.0 ? sw_minutes_text (deed->minutes) : g_strdup (""));
  add_cell (table, deed->temperature_c > 0.0 ? sw_temperature_text (deed->temperature_c, page->system) : g_strdup (""));
  add_cell (table, row != NULL ? g_strdup_printf ("%.1f", row->ph) : g_strdup (""));
}

static void
add_day (Page *page)
{
  const SwSheet *sheet = page->sheet;
  g_autoptr (SwTable) table = sw_table_new (sheet->lesser > 0 ? "rlllrrr" : "rllrrr");
  gsize n;
  g_autofree SwDeed *deeds = sw_day_new (page->sketch, &n);

  /* Translators: the day on which it is dyed, from the first hour to the last */
  add_heading (page, _ ("The day"));
  /* Translators: hours and minutes since the beginning */
  sw_table_add (table, _ ("at"));
  sw_table_add (table, "");
  if (sheet->lesser > 0)
    {
      add_cell (table, pan_kind (sheet->fuller_pans, sheet->fullest));
      add_cell (table, pan_kind (sheet->pans - sheet->fuller_pans, sheet->lesser));
    }
  else
    sw_table_add (table, _ ("a pan"));
  sw_table_add (table, _ ("time"));
  sw_table_add (table, "");
  sw_table_add (table, _ ("pH"));
  for (gsize i = 0; i < n; i++)
    add_deed (page, table, &deeds[i]);
  sw_table_print (table, INDENT, page->out);
}

static void
add_outcome (Page *page)
{
  const SwSheet *sheet = page->sheet;

  if (sheet->clear_percent < 0.0 || sheet->n_pours == 0)
    return;
  add_heading (page, _ ("How the bath ends"));
  add_sentence (page, g_strdup_printf (_ ("%.1f %% of the dye is on the yarn by the end."), sheet->clear_percent));
  for (gsize i = 0; i < sheet->n_dyes; i++)
    if (sheet->dyes[i].left_percent >= 0.1)
      /* Translators: dye, percentage */
      add_sentence (page, g_strdup_printf (_ ("%s: %.1f %% is left in the bath."), dye_name (page, sheet->dyes[i].dye), sheet->dyes[i].left_percent));
}

static void
add_repeat (Page *page)
{
  const SwRepeat *repeat = page->account->repeat;
  g_autofree char *place = NULL;

  if (repeat == NULL)
    return;
  add_heading (page, _ ("How alike the skeins will be"));
  for (gsize i = 0; i < repeat->n_colours; i++)
    /* Translators: name of a colour, two percentages */
    add_sentence (page, g_strdup_printf (_ ("%s: %.0f to %.0f %% of the strand"), repeat->colours[i], 100.0 * repeat->shares[i].least, 100.0 * repeat->shares[i].most));
  /* Translators: CIEDE2000 is a measure of how far two colours are apart */
  add_sentence (page, g_strdup_printf (_ ("Mean colours of two skeins differ by %.1f at most (CIEDE2000)."), repeat->mean_difference.most));
  place = sw_length_text (repeat->twist_start_cm, page->system);
  /* Translators: %s is a length along the loop of the skein */
  add_sentence (page, g_strdup_printf (_ ("Begin the twist at %s along the loop, and the hanks match."), place));
}

/* Of the same slip up and down the one that changes more; NULL if it is not there. */
static const SwSlipEffect *
worse_of (const GArray *slips, SwSlip more, SwSlip less, guint step, int dye)
{
  const SwSlipEffect *worse = NULL;

  for (guint i = 0; i < slips->len; i++)
    {
      const SwSlipEffect *effect = &g_array_index (slips, SwSlipEffect, i);

      if ((effect->slip == more || effect->slip == less) && effect->step == step && effect->dye == dye && (worse == NULL || effect->most > worse->most))
        worse = effect;
    }
  return worse;
}

static int
worse_first (gconstpointer a, gconstpointer b)
{
  double x = (*(const SwSlipEffect *const *) a)->most, y = (*(const SwSlipEffect *const *) b)->most;

  return (x < y) - (x > y);
}

static void
add_slip_row (SwTable *table, char *what, const SwSlipEffect *effect)
{
  add_cell (table, what);
  sw_table_add_format (table, "%.2f", effect->mean);
  sw_table_add_format (table, "%.2f", effect->most);
}

/* Of many pours, those at which a millilitre counts most. */
#define MOST_SLIP_POURS 6

static void
add_pour_slips (Page *page, SwTable *table)
{
  g_autoptr (GPtrArray) pours = g_ptr_array_new ();

  for (gsize i = 0; i < page->sheet->n_pours; i++)
    {
      const SwSlipEffect *effect = worse_of (page->account->slips, SW_SLIP_POURED_MORE, SW_SLIP_POURED_LESS, page->sheet->pours[i].step, -1);

      if (effect != NULL)
        g_ptr_array_add (pours, (gpointer) effect);
    }
  g_ptr_array_sort (pours, worse_first);
  for (guint i = 0; i < MIN (pours->len, MOST_SLIP_POURS); i++)
    {
      const SwSlipEffect *effect = pours->pdata[i];
      g_autofree char *title = sw_step_title (page->sketch, sw_sketch_find_step (page->sketch, effect->step));

      /* Translators: %s is a pour */
      add_slip_row (table, g_strdup_printf (_ ("%s: 1 mL more or less"), title), effect);
    }
}

static void
add_slips (Page *page)
{
  g_autoptr (SwTable) table = sw_table_new ("lrr");
  const GArray *slips = page->account->slips;
  const SwSlipEffect *rounded;

  if (slips == NULL)
    return;
  /* Translators: CIEDE2000 is a measure of how far two colours are apart */
  add_heading (page, _ ("What a slip does to the colour (CIEDE2000; 1 is hardly seen)"));
  sw_table_add (table, "");
  sw_table_add (table, _ ("on the whole"));
  /* Translators: in the hundredth of the stitches where it shows most */
  sw_table_add (table, _ ("at worst"));
  for (gsize i = 0; i < page->sheet->n_dyes; i++)
    {
      guint dye = page->sheet->dyes[i].dye;
      const SwSlipEffect *effect = worse_of (slips, SW_SLIP_WEIGHED_MORE, SW_SLIP_WEIGHED_LESS, 0, (int) dye);

      if (effect != NULL)
        /* Translators: %s is a dye */
        add_slip_row (table, g_strdup_printf (_ ("%s: 5 %% more or less weighed"), dye_name (page, dye)), effect);
    }
  add_pour_slips (page, table);
  rounded = worse_of (slips, SW_SLIP_ROUNDED, SW_SLIP_ROUNDED, 0, -1);
  if (rounded != NULL)
    add_slip_row (table, g_strdup (_ ("all as scale and measure round it")), rounded);
  sw_table_print (table, INDENT, page->out);
}

static void
add_cost (Page *page)
{
  SwCost cost;
  g_autoptr (SwTable) table = sw_table_new ("lr");
  const char *currency = page->sketch->sheet.currency;

  sw_cost_of (page->sheet, &cost);
  if (!(cost.total > 0.0))
    return;

  const struct
  {
    const char *label;
    double amount;
  } rows[] = {
    { _ ("yarn"), cost.yarn },
    { _ ("dye"), cost.dye },
    { _ ("acid"), cost.acid },
    /* Translators: label, tie and bag of the skeins */
    { _ ("labels"), cost.label },
    { _ ("heat and water"), cost.batch },
    { _ ("own work"), cost.work },
    { _ ("the batch"), cost.total },
    { _ ("a skein"), cost.per_skein },
    /* Translators: of a skein, so that the margin is in it */
    { _ ("price with the margin"), cost.price },
  };

  add_heading (page, _ ("Cost"));
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    if (rows[i].amount > 0.0)
      {
        sw_table_add (table, rows[i].label);
        sw_table_add_format (table, "%.2f%s%s", rows[i].amount, *currency != '\0' ? " " : "", currency);
      }
  sw_table_print (table, INDENT, page->out);
  if (cost.no_yarn_price)
    add_sentence (page, g_strdup (_ ("The yarn has no price yet.")));
  if (cost.n_unpriced_dyes > 0)
    add_sentence (page, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u dye has no price yet.", "%u dyes have no price yet.", cost.n_unpriced_dyes), cost.n_unpriced_dyes));
  if (cost.no_acid_price)
    add_sentence (page, g_strdup (_ ("The acid has no price yet.")));
  if (cost.no_work)
    add_sentence (page, g_strdup (_ ("Your own work is not counted yet.")));
}

static void
add_cautions (Page *page)
{
  guint bits = sw_cautions_for_sketch (page->sketch);

  add_heading (page, _ ("Take care"));
  for (SwCaution caution = 0; caution < SW_N_CAUTIONS; caution++)
    if ((bits & (1u << caution)) != 0)
      /* Translators: title of a caution and its text: "Dust: Weigh dry dye in still air." */
      add_sentence (page, g_strdup_printf (_ ("%s: %s"), sw_caution_title (caution), sw_caution_text (caution)));
}

char *
sw_sheet_text (const SwSheetAccount *account, SwMeasureSystem system)
{
  static void (*const parts[]) (Page *) = {
    add_title, add_remarks, add_stocks, add_liquor, add_day, add_outcome, add_repeat, add_slips, add_cost, add_cautions
  };
  Page page;

  g_return_val_if_fail (account != NULL && account->sheet != NULL, NULL);

  page = (Page){ g_string_new (NULL), account, account->sheet, account->sheet->sketch, system };
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    parts[i](&page);
  return g_string_free (page.out, FALSE);
}
