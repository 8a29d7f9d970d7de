/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/sw-sheet-text.h"

#include "files/sw-json-print.h"
#include "sheet/sw-cost.h"
#include "sheet/sw-day-clock.h"
#include "sheet/sw-sheet-remarks.h"
#include "sheet/sw-step-title.h"

#define MILLIONTH 1e-6

static void
add_number (JsonBuilder *builder, const char *member, double number)
{
  json_builder_set_member_name (builder, member);
  json_builder_add_double_value (builder, sw_round_to (number, MILLIONTH) + 0.0);
}

/* Below 0 stands for what is not known. */
static void
add_known (JsonBuilder *builder, const char *member, double number)
{
  if (number >= 0.0)
    {
      add_number (builder, member, number);
      return;
    }
  json_builder_set_member_name (builder, member);
  json_builder_add_null_value (builder);
}

static void
add_whole (JsonBuilder *builder, const char *member, gint64 whole)
{
  json_builder_set_member_name (builder, member);
  json_builder_add_int_value (builder, whole);
}

static void
add_text (JsonBuilder *builder, const char *member, const char *text)
{
  json_builder_set_member_name (builder, member);
  json_builder_add_string_value (builder, text);
}

static void
add_flag (JsonBuilder *builder, const char *member, gboolean flag)
{
  json_builder_set_member_name (builder, member);
  json_builder_add_boolean_value (builder, flag);
}

/* @member as it is drawn, and "rounded_" before it as scale and measure show it. */
static void
add_amount (JsonBuilder *builder, const char *member, SwAmount amount)
{
  g_autofree char *rounded = g_strconcat ("rounded_", member, NULL);

  add_number (builder, member, amount.exact);
  add_number (builder, rounded, amount.rounded);
}

static void
begin_list (JsonBuilder *builder, const char *member)
{
  json_builder_set_member_name (builder, member);
  json_builder_begin_array (builder);
}

static const SwDye *
dye_at (const SwSheet *sheet, guint index)
{
  return sheet->sketch->dyes->pdata[index];
}

static void
add_dyes (JsonBuilder *builder, const SwSheet *sheet)
{
  begin_list (builder, "dyes");
  for (gsize i = 0; i < sheet->n_dyes; i++)
    {
      const SwSheetDye *dye = &sheet->dyes[i];

      json_builder_begin_object (builder);
      add_whole (builder, "dye", dye_at (sheet, dye->dye)->id);
      add_text (builder, "name", sw_dye_title (dye_at (sheet, dye->dye)));
      add_amount (builder, "poured_ml", dye->poured_ml);
      add_amount (builder, "poured_g", dye->poured_g);
      add_amount (builder, "stock_ml", dye->stock_ml);
      add_amount (builder, "weigh_g", dye->weigh_g);
      add_number (builder, "strength_percent", dye->strength_percent);
      add_amount (builder, "dry_g", dye->dry_g);
      add_number (builder, "depth_percent", dye->depth_percent);
      add_known (builder, "left_percent", dye->left_percent);
      add_known (builder, "strength_share", dye->strength_share);
      add_number (builder, "mass_share", dye->mass_share);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static void
add_pours (JsonBuilder *builder, const SwSheet *sheet, gboolean lesser)
{
  begin_list (builder, "pours");
  for (gsize i = 0; i < sheet->n_pours; i++)
    {
      const SwSheetPour *pour = &sheet->pours[i];

      json_builder_begin_object (builder);
      add_whole (builder, "number", pour->number);
      add_whole (builder, "step", pour->step);
      add_whole (builder, "dye", dye_at (sheet, pour->dye)->id);
      add_flag (builder, "dry", pour->dry);
      add_flag (builder, "by_depth", pour->by_depth);
      add_amount (builder, "stock_ml", lesser ? pour->lesser_stock_ml : pour->stock_ml);
      add_amount (builder, "dye_g", lesser ? pour->lesser_dye_g : pour->dye_g);
      add_number (builder, "depth_percent", pour->depth_percent);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

/* Acid and water of later steps. */
static void
add_added (JsonBuilder *builder, const SwSheet *sheet, gboolean lesser)
{
  begin_list (builder, "added");
  for (gsize i = 0; i < sheet->n_steps; i++)
    {
      const SwSheetStep *row = &sheet->steps[i];
      const SwStep *step = sheet->sketch->steps->pdata[i];

      if (step->kind != SW_STEP_ACID && step->kind != SW_STEP_WATER)
        continue;
      json_builder_begin_object (builder);
      add_whole (builder, "step", row->step);
      add_text (builder, "kind", sw_step_kind_name (step->kind));
      add_amount (builder, "volume_ml", lesser ? row->lesser_added_ml : row->added_ml);
      add_amount (builder, "crystals_g", lesser ? row->lesser_crystals_g : row->crystals_g);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static void
add_pan_kind (JsonBuilder *builder, const SwSheet *sheet, gboolean lesser)
{
  const SwSheetLiquor *liquor = lesser ? &sheet->lesser_liquor : &sheet->liquor;

  json_builder_begin_object (builder);
  add_whole (builder, "pans", (gint64) (lesser ? sheet->pans - sheet->fuller_pans : sheet->fuller_pans));
  add_whole (builder, "skeins", (gint64) (lesser ? sheet->lesser : sheet->fullest));
  add_number (builder, "fibre_g", liquor->fibre_g);
  add_amount (builder, "water_ml", liquor->water_ml);
  add_amount (builder, "acid_ml", liquor->acid_ml);
  add_amount (builder, "crystals_g", liquor->crystals_g);
  add_number (builder, "start_ph", liquor->start_ph);
  add_number (builder, "liquor_ml_per_g", liquor->ratio);
  add_number (builder, "cover_ml", liquor->cover_ml);
  add_number (builder, "lay_cover_ml", liquor->lay_cover_ml);
  add_number (builder, "pan_ml", liquor->pan_ml);
  add_number (builder, "ratio_water_ml", liquor->ratio_water_ml);
  add_known (builder, "target_acid_ml", liquor->target_acid_ml);
  add_number (builder, "target_crystals_g", liquor->target_crystals_g);
  add_pours (builder, sheet, lesser);
  add_added (builder, sheet, lesser);
  json_builder_end_object (builder);
}

static void
add_steps (JsonBuilder *builder, const SwSheet *sheet)
{
  begin_list (builder, "steps");
  for (gsize i = 0; i < sheet->n_steps; i++)
    {
      const SwStep *step = sheet->sketch->steps->pdata[i];
      g_autofree char *title = sw_step_title (sheet->sketch, step);

      json_builder_begin_object (builder);
      add_whole (builder, "step", step->id);
      add_text (builder, "kind", sw_step_kind_name (step->kind));
      add_text (builder, "title", title);
      add_number (builder, "ph", sheet->steps[i].ph);
      add_number (builder, "temperature_c", sheet->steps[i].temperature_c);
      add_known (builder, "left_percent", sheet->steps[i].left_percent);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static void
add_day (JsonBuilder *builder, const SwSheet *sheet)
{
  gsize n;
  g_autofree SwDeed *deeds = sw_day_new (sheet->sketch, &n);

  begin_list (builder, "day");
  for (gsize i = 0; i < n; i++)
    {
      json_builder_begin_object (builder);
      add_text (builder, "deed", sw_deed_kind_name (deeds[i].kind));
      add_whole (builder, "step", deeds[i].step);
      add_whole (builder, "pour", deeds[i].pour);
      add_number (builder, "start_min", deeds[i].start_min);
      add_number (builder, "minutes", deeds[i].minutes);
      add_number (builder, "temperature_c", deeds[i].temperature_c);
      add_flag (builder, "waits", deeds[i].waits);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static void
add_cost (JsonBuilder *builder, const SwSheet *sheet)
{
  SwCost cost;

  sw_cost_of (sheet, &cost);
  json_builder_set_member_name (builder, "cost");
  json_builder_begin_object (builder);
  add_text (builder, "currency", sheet->sketch->sheet.currency);
  add_number (builder, "yarn", cost.yarn);
  add_number (builder, "dye", cost.dye);
  add_number (builder, "acid", cost.acid);
  add_number (builder, "label", cost.label);
  add_number (builder, "batch", cost.batch);
  add_number (builder, "work", cost.work);
  add_number (builder, "total", cost.total);
  add_number (builder, "per_skein", cost.per_skein);
  add_number (builder, "price", cost.price);
  json_builder_end_object (builder);
}

static void
add_remarks (JsonBuilder *builder, const SwSheet *sheet)
{
  g_autoptr (GArray) remarks = sw_sheet_remarks (sheet);
  guint bits = sw_cautions_for_sketch (sheet->sketch);

  begin_list (builder, "remarks");
  for (guint i = 0; i < remarks->len; i++)
    {
      const SwRemark *remark = &g_array_index (remarks, SwRemark, i);
      g_autofree char *text = sw_sheet_remark_text (sheet, remark, SW_MEASURE_METRIC);

      json_builder_begin_object (builder);
      add_text (builder, "remark", sw_sheet_remark_name (remark->kind));
      add_whole (builder, "step", remark->step);
      add_text (builder, "text", text);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);

  begin_list (builder, "cautions");
  for (SwCaution caution = 0; caution < SW_N_CAUTIONS; caution++)
    if ((bits & (1u << caution)) != 0)
      json_builder_add_string_value (builder, sw_caution_text (caution));
  json_builder_end_array (builder);
}

static void
add_range (JsonBuilder *builder, const char *member, const SwRange *range)
{
  json_builder_set_member_name (builder, member);
  json_builder_begin_object (builder);
  add_number (builder, "least", range->least);
  add_number (builder, "mean", range->mean);
  add_number (builder, "most", range->most);
  json_builder_end_object (builder);
}

static void
add_repeat (JsonBuilder *builder, const SwRepeat *repeat)
{
  json_builder_set_member_name (builder, "repeat");
  json_builder_begin_object (builder);
  add_whole (builder, "skeins", (gint64) repeat->n_seeds);
  begin_list (builder, "colours");
  for (gsize i = 0; i < repeat->n_colours; i++)
    {
      json_builder_begin_object (builder);
      add_text (builder, "name", repeat->colours[i]);
      add_range (builder, "share", &repeat->shares[i]);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
  add_range (builder, "stack", &repeat->stack);
  add_range (builder, "mean_ciede2000", &repeat->mean_difference);
  add_number (builder, "twist_start_cm", repeat->twist_start_cm);
  json_builder_end_object (builder);
}

static void
add_slips (JsonBuilder *builder, const SwSheet *sheet, const GArray *slips)
{
  begin_list (builder, "slips");
  for (guint i = 0; i < slips->len; i++)
    {
      const SwSlipEffect *effect = &g_array_index (slips, SwSlipEffect, i);

      json_builder_begin_object (builder);
      add_text (builder, "slip", sw_slip_name (effect->slip));
      add_whole (builder, "step", effect->step);
      add_whole (builder, "dye", effect->dye >= 0 ? dye_at (sheet, (guint) effect->dye)->id : 0);
      add_number (builder, "mean_ciede2000", effect->mean);
      add_number (builder, "most_ciede2000", effect->most);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

char *
sw_sheet_json (const SwSheetAccount *account)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();
  g_autoptr (JsonNode) root = NULL;
  const SwSheet *sheet;

  g_return_val_if_fail (account != NULL && account->sheet != NULL, NULL);

  sheet = account->sheet;
  json_builder_begin_object (builder);
  add_text (builder, "title", sheet->sketch->title);
  add_whole (builder, "skeins", (gint64) sheet->skeins);
  add_whole (builder, "pans", (gint64) sheet->pans);
  add_number (builder, "fibre_g", sheet->fibre_g);
  add_dyes (builder, sheet);
  begin_list (builder, "pan_kinds");
  for (int lesser = 0; lesser <= (sheet->lesser > 0); lesser++)
    add_pan_kind (builder, sheet, lesser);
  json_builder_end_array (builder);
  add_amount (builder, "water_ml", sheet->water_ml);
  add_amount (builder, "acid_ml", sheet->acid_ml);
  add_amount (builder, "crystals_g", sheet->crystals_g);
  add_known (builder, "clear_percent", sheet->clear_percent);
  add_steps (builder, sheet);
  add_day (builder, sheet);
  add_cost (builder, sheet);
  add_remarks (builder, sheet);
  if (account->repeat != NULL)
    add_repeat (builder, account->repeat);
  if (account->slips != NULL)
    add_slips (builder, sheet, account->slips);
  json_builder_end_object (builder);
  root = json_builder_get_root (builder);
  return sw_json_print (root);
}
