/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-sheet-words.h"

#include "app/desk/sw-sheet-edits.h"

#include <glib/gi18n-lib.h>
#include <math.h>

SwMeasureSystem
sw_sheet_measures (SwSystem system)
{
  return system == SW_SYSTEM_US ? SW_MEASURE_US : SW_MEASURE_METRIC;
}

static char *
pans_text (gsize pans, gsize skeins)
{
  if (pans == 1)
    /* Translators: one pan, with so many skeins in it */
    return g_strdup_printf (ngettext ("1 pan of %u", "1 pan of %u", skeins), (guint) skeins);
  /* Translators: so many pans, with so many skeins in each */
  return g_strdup_printf (ngettext ("%1$u pan of %2$u", "%1$u pans of %2$u", pans), (guint) pans, (guint) skeins);
}

char *
sw_sheet_spread (const SwSheet *sheet, SwSystem system)
{
  g_autofree char *mass = sw_mass_text (sheet->fibre_g, sw_sheet_measures (system));
  g_autofree char *skeins = g_strdup_printf (ngettext ("%u skein", "%u skeins", sheet->skeins), (guint) sheet->skeins);
  g_autofree char *full = pans_text (sheet->fuller_pans, sheet->fullest);
  g_autofree char *rest = NULL;

  if (sheet->lesser == 0)
    /* Translators: "4 skeins, 400 g: 2 pans of 2" */
    return g_strdup_printf (_ ("%1$s, %2$s: %3$s"), skeins, mass, full);
  rest = pans_text (sheet->pans - sheet->fuller_pans, sheet->lesser);
  /* Translators: "5 skeins, 500 g: 2 pans of 2, 1 pan of 1" */
  return g_strdup_printf (_ ("%1$s, %2$s: %3$s, %4$s"), skeins, mass, full, rest);
}

char *
sw_sheet_target_acid (const SwSheet *sheet, SwSystem system)
{
  const SwSheetLiquor *liquor = &sheet->liquor;
  const double ph = sheet->sketch->sheet.target_ph;
  g_autofree char *volume = sw_volume_text (liquor->target_acid_ml, sw_sheet_measures (system));
  g_autofree char *crystals = sw_dye_text (liquor->target_crystals_g);

  if (ph <= 0)
    return g_strdup ("");
  if (liquor->target_acid_ml < 0)
    /* Translators: %.1f is a pH */
    return g_strdup_printf (_ ("Acid of this strength cannot bring the water to pH %.1f."), ph);
  if (liquor->target_crystals_g > 0)
    /* Translators: grams of citric acid, a pH, a volume */
    return g_strdup_printf (_ ("%1$s of crystals in %3$s of water bring pH %2$.1f."), crystals, ph, volume);
  /* Translators: a volume of acid, a pH */
  return g_strdup_printf (_ ("%1$s of the acid bring pH %2$.1f."), volume, ph);
}

char *
sw_sheet_target_water (const SwSheet *sheet, SwSystem system)
{
  const SwSheetLiquor *liquor = &sheet->liquor;
  g_autofree char *wanted = sw_volume_text (sw_sheet_wanted_water (sheet), sw_sheet_measures (system));
  g_autofree char *now = sw_volume_text (liquor->water_ml.exact, sw_sheet_measures (system));

  if (liquor->ratio_water_ml > 0)
    /* Translators: volumes, and the ratio in mL of liquor to 1 g of fibre */
    return g_strdup_printf (_ ("%1$s of water make 1 : %3$.3g. There are %2$s."), wanted, now, sheet->sketch->sheet.liquor_ratio);
  /* Translators: two volumes */
  return g_strdup_printf (_ ("%1$s of water just cover the skeins. There are %2$s."), wanted, now);
}

char *
sw_sheet_dye_detail (const SwSheetDye *dye)
{
  if (dye->strength_share < 0)
    /* Translators: depth of a dye on the weight of fibre */
    return g_strdup_printf (_ ("%.2g %% of the fibre"), dye->depth_percent);
  /* Translators: depth of a dye on the weight of fibre, its share of all the colour's strength, and of all the dye's weight */
  return g_strdup_printf (_ ("%1$.2g %% of the fibre · %2$.0f %% of the strength, %3$.0f %% of the weight"),
                          dye->depth_percent, 100 * dye->strength_share, 100 * dye->mass_share);
}

const SwSheetPour *
sw_sheet_find_pour (const SwSheet *sheet, guint step)
{
  for (gsize i = 0; i < sheet->n_pours; i++)
    if (sheet->pours[i].step == step)
      return &sheet->pours[i];
  return NULL;
}

/* What the pans with one skein less get; NULL if there are none. */
static char *
lesser_text (const SwSheet *sheet, double amount, gboolean mass, SwSystem system)
{
  g_autofree char *text = NULL;

  if (sheet->lesser == 0 || amount <= 0)
    return NULL;
  text = mass ? sw_dye_text (amount) : sw_volume_text (amount, sw_sheet_measures (system));
  /* Translators: an amount for the pans that hold fewer skeins: "8 mL in a pan of 1" */
  return g_strdup_printf (ngettext ("%1$s in a pan of %2$u", "%1$s in a pan of %2$u", sheet->lesser), text, (guint) sheet->lesser);
}

static char *
join (char *first, char *second)
{
  g_autofree char *a = first, *b = second;

  if (a == NULL || b == NULL)
    return a != NULL ? g_steal_pointer (&a) : g_steal_pointer (&b);
  /* Translators: two short remarks on one line */
  return g_strdup_printf (_ ("%1$s · %2$s"), a, b);
}

static char *
pour_detail (const SwSheet *sheet, const SwSheetPour *pour, SwSystem system)
{
  /* Translators: depth of a pour on the weight of fibre in the pan */
  char *depth = g_strdup_printf (_ ("%.2g %% of the fibre"), pour->depth_percent);

  if (pour->dry)
    return join (depth, lesser_text (sheet, pour->lesser_dye_g.rounded, TRUE, system));
  return join (depth, lesser_text (sheet, pour->lesser_stock_ml.rounded, FALSE, system));
}

static char *
wait_detail (const SwStep *step, SwSystem system)
{
  g_autofree char *time = sw_minutes_text (step->minutes);
  g_autofree char *heat = sw_temperature_text (step->temperature_c, sw_sheet_measures (system));

  /* Translators: a time and a temperature: "10 min at 85 °C" */
  return g_strdup_printf (_ ("%1$s at %2$s"), time, heat);
}

char *
sw_sheet_step_detail (const SwSheet *sheet, gsize index, SwSystem system)
{
  const SwSheetStep *sheet_step = &sheet->steps[index];
  const SwStep *step = sw_sketch_find_step (sheet->sketch, sheet_step->step);
  const SwSheetPour *pour = sw_sheet_find_pour (sheet, sheet_step->step);
  g_autofree char *crystals = NULL;

  if (pour != NULL)
    return pour_detail (sheet, pour, system);
  if (step->kind == SW_STEP_REST || step->kind == SW_STEP_SET)
    return wait_detail (step, system);
  if (sheet_step->crystals_g.rounded > 0)
    {
      crystals = sw_dye_text (sheet_step->crystals_g.rounded);
      /* Translators: citric acid weighed dry */
      return join (g_strdup_printf (_ ("%s of crystals dissolved in it"), crystals), lesser_text (sheet, sheet_step->lesser_crystals_g.rounded, TRUE, system));
    }
  if (step->kind == SW_STEP_ACID)
    /* Translators: strength of an acid */
    return join (g_strdup_printf (_ ("of %.3g %%"), step->acid_percent), lesser_text (sheet, sheet_step->lesser_added_ml.rounded, FALSE, system));
  return lesser_text (sheet, sheet_step->lesser_added_ml.rounded, FALSE, system);
}

SwRemarkPlace
sw_remark_place (const SwRemark *remark)
{
  if (remark->kind == SW_REMARK_PAN_SMALL || remark->kind == SW_REMARK_RUNS_OVER || remark->kind == SW_REMARK_NOT_COVERED)
    return SW_REMARK_PLACE_LIQUOR;
  if (remark->step != 0)
    return SW_REMARK_PLACE_STEP;
  return remark->dye >= 0 ? SW_REMARK_PLACE_DYE : SW_REMARK_PLACE_SHEET;
}

char *
sw_sheet_remarks_at (const SwSheet *sheet, const GArray *remarks, SwRemarkPlace place, guint which, SwMeasureSystem system)
{
  g_autoptr (GString) text = NULL;

  for (guint i = 0; i < remarks->len; i++)
    {
      const SwRemark *remark = &g_array_index (remarks, SwRemark, i);
      g_autofree char *sentence = NULL;

      if (sw_remark_place (remark) != place || (place == SW_REMARK_PLACE_STEP && remark->step != which) ||
          (place == SW_REMARK_PLACE_DYE && (guint) remark->dye != which))
        continue;
      sentence = sw_sheet_remark_text (sheet, remark, system);
      if (text == NULL)
        text = g_string_new (sentence);
      else
        g_string_append_printf (text, "\n%s", sentence);
    }
  return text != NULL ? g_string_free (g_steal_pointer (&text), FALSE) : NULL;
}
