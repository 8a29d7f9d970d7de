/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-member-private.h"

#include <glib/gi18n-lib.h>

/*
 * The dye day: how a batch is done, what it costs, and what became of it.
 * Times are common practice (no source); there is no usual price.
 *
 * Columns: name, label, unit, kind, place; then least, most, default.
 */

#define SHEET(field) G_STRUCT_OFFSET (SwSheetSettings, field)

static const char *const acid_forms[] = { "solution", "crystals", NULL };
static const char *const acid_form_labels[] = { N_ ("As a solution"), N_ ("As crystals"), NULL };

static const SwMember sheet_members[] = {
  /* Translators: how many skeins are dyed in one batch; 0 means as many as lie in the pan */
  { "skeins", N_ ("Skeins in the batch"), "", SW_KIND_WHOLE, SHEET (skeins), 0, 1000, 0, .above_zero = 1 },
  /* Translators: 0 means as many as the skeins need */
  { "pans", N_ ("Pans"), "", SW_KIND_WHOLE, SHEET (pans), 0, 1000, 0, .above_zero = 1 },
  /* Translators: how much more stock is made up than is poured */
  { "stock_margin_percent", N_ ("Stock to spare"), "%", SW_KIND_NUMBER, SHEET (stock_margin_percent), 0, 200, 10 },
  /* Translators: the smallest step of the dyer's scale; 0 means that nothing is rounded */
  { "weigh_step_g", N_ ("Scale reads to"), "g", SW_KIND_NUMBER, SHEET (weigh_step_g), 0, 10, 0.01, .above_zero = 0.0001 },
  /* Translators: the smallest step of the dyer's measuring cup or syringe; 0 means that nothing is rounded */
  { "measure_step_ml", N_ ("Measure reads to"), "mL", SW_KIND_NUMBER, SHEET (measure_step_ml), 0, 100, 0.5, .above_zero = 0.01 },
  /* Translators: 0 means that none was asked for */
  { "target_ph", N_ ("pH to reach"), "", SW_KIND_NUMBER, SHEET (target_ph), 0, 8, 0, .above_zero = 2 },
  /* Translators: millilitres of water to a gram of yarn; 0 means that none was asked for */
  { "liquor_ratio", N_ ("Liquor ratio"), N_ ("mL per g"), SW_KIND_NUMBER, SHEET (liquor_ratio), 0, 200, 0, .above_zero = 1 },
  { "acid_form", N_ ("Acid is measured"), "", SW_KIND_CHOICE, SHEET (acid_form), .fallback = SW_ACID_FORM_SOLUTION, .choices = acid_forms, .choice_labels = acid_form_labels },
  { "presoak_min", N_ ("Soaking before"), N_ ("min"), SW_KIND_NUMBER, SHEET (presoak_min), 0, 2880, 30 },
  { "presoak_c", N_ ("Water of the soak"), "°C", SW_KIND_NUMBER, SHEET (presoak_c), 1, 105, 35 },
  { "heat_min", N_ ("Heating the bath"), N_ ("min"), SW_KIND_NUMBER, SHEET (heat_min), 0, 600, 20 },
  { "pour_min", N_ ("Time for a pour"), N_ ("min"), SW_KIND_NUMBER, SHEET (pour_min), 0, 60, 1 },
  { "cool_min", N_ ("Cooling"), N_ ("min"), SW_KIND_NUMBER, SHEET (cool_min), 0, 2880, 120 },
  { "wash_min", N_ ("Washing"), N_ ("min"), SW_KIND_NUMBER, SHEET (wash_min), 0, 600, 5 },
  { "wash_c", N_ ("Water of the wash"), "°C", SW_KIND_NUMBER, SHEET (wash_c), 1, 105, 35 },
  { "rinses", N_ ("Rinses"), "", SW_KIND_WHOLE, SHEET (rinses), 0, 20, 2 },
  { "rinse_min", N_ ("Time for a rinse"), N_ ("min"), SW_KIND_NUMBER, SHEET (rinse_min), 0, 600, 3 },
  { "spin_min", N_ ("Spinning dry"), N_ ("min"), SW_KIND_NUMBER, SHEET (spin_min), 0, 600, 3 },
  { "dry_min", N_ ("Drying"), N_ ("min"), SW_KIND_NUMBER, SHEET (dry_min), 0, 20160, 1440 },
  /* Translators: three letters, such as EUR; empty means that of the locale */
  { "currency", N_ ("Currency"), "", SW_KIND_TEXT, SHEET (currency), .max = 40 },
  { "yarn_price", N_ ("Undyed yarn, a skein"), "", SW_KIND_NUMBER, SHEET (yarn_price), 0, 1000000, 0 },
  { "acid_price_per_l", N_ ("Acid, a litre"), "", SW_KIND_NUMBER, SHEET (acid_price_per_l), 0, 1000000, 0 },
  /* Translators: what goes with each skein that is sold */
  { "label_price", N_ ("Label and tie, a skein"), "", SW_KIND_NUMBER, SHEET (label_price), 0, 1000000, 0 },
  { "batch_price", N_ ("Heat and water, a batch"), "", SW_KIND_NUMBER, SHEET (batch_price), 0, 1000000, 0 },
  /* Translators: the time the dyer works, without waiting */
  { "hands_on_min", N_ ("Own work, a batch"), N_ ("min"), SW_KIND_NUMBER, SHEET (hands_on_min), 0, 20160, 0 },
  { "rate_per_hour", N_ ("Own work, an hour"), "", SW_KIND_NUMBER, SHEET (rate_per_hour), 0, 1000000, 0 },
  /* Translators: the share of the price that is more than the cost */
  { "margin_percent", N_ ("Margin in the price"), "%", SW_KIND_NUMBER, SHEET (margin_percent), 0, 95, 0 },
};

const SwMemberTable sw_sheet_table = { "sheet", G_STRUCT_OFFSET (SwSketch, sheet), SHEET (extras), sheet_members, G_N_ELEMENTS (sheet_members) };

#define BATCH(field) G_STRUCT_OFFSET (SwBatch, field)

static const SwMember batch_members[] = {
  { "date", N_ ("Day"), "", SW_KIND_TEXT, BATCH (date), .max = 40 },
  { "skeins", N_ ("Skeins"), "", SW_KIND_WHOLE, BATCH (skeins), 0, 1000, 1 },
  { "cost", N_ ("Cost of the batch"), "", SW_KIND_NUMBER, BATCH (cost), 0, 100000000, 0 },
  /* Translators: against the batch before */
  { "changes", N_ ("What was changed"), "", SW_KIND_TEXT, BATCH (changes), .max = 20000 },
  { "recipe", N_ ("Amounts"), "", SW_KIND_TEXT, BATCH (recipe), .max = 200000 },
  { "amounts", N_ ("Amounts"), "", SW_KIND_TEXT, BATCH (amounts), .max = 200000 },
  /* Translators: what was really done on the dye day, and when */
  { "log", N_ ("Log of the day"), "", SW_KIND_TEXT, BATCH (log), .max = 200000 },
  { "notes", N_ ("How it came out"), "", SW_KIND_TEXT, BATCH (notes), .max = 100000 },
  { "photos", N_ ("Photographs"), "", SW_KIND_TEXT, BATCH (photos), .max = 20000 },
};

const SwMemberTable sw_batch_table = { "batches", G_STRUCT_OFFSET (SwSketch, batches), BATCH (extras), batch_members, G_N_ELEMENTS (batch_members) };
