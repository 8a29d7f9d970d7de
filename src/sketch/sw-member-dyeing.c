/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-member-private.h"

#include <glib/gi18n-lib.h>

/*
 * The dyeing: the bath, the dyes and the steps. Defaults are common practice
 * (no source): a shallow hot bath with a few spoons of vinegar. The limits
 * are wider than any practice and only keep out nonsense.
 *
 * Columns: name, label, unit, kind, place; then least, most, default.
 */

static const char *const acids[] = { "acetic", "citric", NULL };
static const char *const acid_labels[] = { N_ ("Vinegar (acetic acid)"), N_ ("Citric acid"), NULL };

static const SwMember bath_members[] = {
  { "water_ml", N_ ("Water in the pan"), "mL", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwBathSettings, water_ml), 10, 200000, 1400 },
  { "alkalinity_meq_per_l", N_ ("Alkalinity of the water"), "meq/L", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwBathSettings, alkalinity_meq_per_l), 0, 20, 1.5 },
  /* Translators: off means that carbon dioxide leaves the open bath */
  { "keep_carbonate", N_ ("Covered, carbonate stays"), "", SW_KIND_FLAG, G_STRUCT_OFFSET (SwBathSettings, keep_carbonate), .max = 1 },
  { "acid", N_ ("Acid"), "", SW_KIND_CHOICE, G_STRUCT_OFFSET (SwBathSettings, acid), .fallback = SW_ACID_ACETIC, .choices = acids, .choice_labels = acid_labels },
  /* Translators: strength of the acid, grams in 100 mL */
  { "acid_percent", N_ ("Strength of the acid"), "%", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwBathSettings, acid_percent), 0.1, 100, 5 },
  { "acid_ml", N_ ("Acid at the start"), "mL", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwBathSettings, acid_ml), 0, 20000, 60 },
  { "temperature_c", N_ ("Temperature of the bath"), "°C", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwBathSettings, temperature_c), 1, 105, 90 },
  /* Translators: how fast dye spreads sideways in the pan */
  { "spread_cm2_per_min", N_ ("Spread in the bath"), "cm²/min", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwBathSettings, spread_cm2_per_min), 0, 5, 0.15 },
};

const SwMemberTable sw_bath_table = { "bath", G_STRUCT_OFFSET (SwSketch, bath), G_STRUCT_OFFSET (SwBathSettings, extras), bath_members, G_N_ELEMENTS (bath_members) };

static const char *const dye_classes[] = {
  "unknown", "levelling", "fast-acid", "milling", "super-milling", "metal-complex-1-1", "metal-complex-2-1", NULL
};
/* Translators: classes of acid dyes, as in textile dyeing handbooks */
static const char *const dye_class_labels[] = {
  N_ ("Not known"), N_ ("Levelling"), N_ ("Fast acid"), N_ ("Milling"), N_ ("Super-milling"), N_ ("1:1 metal complex"), N_ ("2:1 metal complex"), NULL
};

static const SwSample dye_fallback = { SW_SAMPLE_SRGB, { 178.0, 48.0, 92.0 } };

static const SwMember dye_members[] = {
  { "name", N_ ("Name"), "", SW_KIND_TEXT, G_STRUCT_OFFSET (SwDye, name), .max = 200 },
  { "dye_class", N_ ("Class of dye"), "", SW_KIND_CHOICE, G_STRUCT_OFFSET (SwDye, dye_class), .fallback = SW_DYE_CLASS_UNKNOWN, .choices = dye_classes, .choice_labels = dye_class_labels },
  /* Translators: time after which half the dye is on the fibre */
  { "half_time_min", N_ ("Half-time"), N_ ("min"), SW_KIND_NUMBER, G_STRUCT_OFFSET (SwDye, half_time_min), 0.05, 240, 3 },
  /* Translators: share (0 to 1) of the dye that goes on to the fibre faster than the rest */
  { "quick_share", N_ ("Share that strikes quickly"), "", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwDye, quick_share), 0, 1, 0 },
  { "quick_half_time_min", N_ ("Half-time of the quick share"), N_ ("min"), SW_KIND_NUMBER, G_STRUCT_OFFSET (SwDye, quick_half_time_min), 0.01, 240, 1 },
  { "activation_kj_per_mol", N_ ("Activation energy"), "kJ/mol", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwDye, activation_kj_per_mol), 0, 200, 75 },
  /* Translators: how far this dye spreads compared with others; 1 is usual */
  { "spread", N_ ("Spread of this dye"), "", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwDye, spread), 0, 20, 1 },
  /* Translators: dye dissolved in water, grams in 100 mL */
  { "stock_percent", N_ ("Strength of the stock"), "%", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwDye, stock_percent), 0.01, 20, 1 },
  /* Translators: how deep the dyed sample is: dye as a percentage of the weight of fibre */
  { "sample_depth_percent", N_ ("Depth of the sample"), "%", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwDye, sample_depth_percent), 0.01, 20, 1 },
  { "sample", N_ ("Colour of the sample"), "", SW_KIND_COLOUR, G_STRUCT_OFFSET (SwDye, sample), .colour_fallback = &dye_fallback },
  /* Translators: what one gram of the dye powder costs; in the dyer's own currency */
  { "price_per_g", N_ ("Price of a gram"), "", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwDye, price_per_g), 0, 100000, 0 },
};

const SwMemberTable sw_dye_table = { "dyes", G_STRUCT_OFFSET (SwSketch, dyes), G_STRUCT_OFFSET (SwDye, extras), dye_members, G_N_ELEMENTS (dye_members) };

#define ALL (SW_STEP_BIT (SW_N_STEP_KINDS) - 1u)
#define POURS SW_STEP_POURS
#define SPECKLE SW_STEP_BIT (SW_STEP_SPECKLE)
#define WAITS (SW_STEP_BIT (SW_STEP_REST) | SW_STEP_BIT (SW_STEP_SET))
#define ACID SW_STEP_BIT (SW_STEP_ACID)
#define ADDS (SW_STEP_BIT (SW_STEP_ACID) | SW_STEP_BIT (SW_STEP_WATER))

static const SwMember step_members[] = {
  { "name", N_ ("Name"), "", SW_KIND_TEXT, G_STRUCT_OFFSET (SwStep, name), .max = 200, .step_kinds = ALL },
  { "dye", N_ ("Dye"), "", SW_KIND_DYE, G_STRUCT_OFFSET (SwStep, dye), 1, SW_ID_MAX, 0, .step_kinds = POURS },
  { "amount_ml", N_ ("Amount of stock"), "mL", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwStep, amount_ml), 0, 20000, 20, .step_kinds = POURS },
  /* Translators: dye as a percentage of the weight of all the fibre in the pan; 0 means that the amount above counts */
  { "depth_percent", N_ ("Depth of the pour"), "%", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwStep, depth_percent), 0, 20, 0, .step_kinds = POURS, .above_zero = 0.0001 },
  /* Translators: how far a pour is pushed into the yarn: 0 left on top, 1 right through */
  { "worked_in", N_ ("Worked in"), "", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwStep, worked_in), 0, 1, 0.3, .step_kinds = POURS },
  /* Translators: place along the laid skein, from its left end */
  { "x_cm", N_ ("Place along"), "cm", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwStep, x_cm), -400, 800, 10, .step_kinds = POURS },
  /* Translators: place across the laid skein, from its near edge */
  { "y_cm", N_ ("Place across"), "cm", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwStep, y_cm), -400, 800, 4, .step_kinds = POURS },
  { "width_cm", N_ ("Width"), "cm", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwStep, width_cm), 0.1, 400, 6, .step_kinds = POURS },
  { "length_cm", N_ ("Length across"), "cm", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwStep, length_cm), 0, 400, 0, .above_zero = 0.1, .step_kinds = POURS },
  { "angle_deg", N_ ("Angle"), "°", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwStep, angle_deg), -180, 180, 0, .step_kinds = POURS },
  { "specks_per_100_cm2", N_ ("Specks"), N_ ("on 100 cm²"), SW_KIND_NUMBER, G_STRUCT_OFFSET (SwStep, specks_per_100_cm2), 0.1, 5000, 40, .step_kinds = SPECKLE },
  { "speck_mm", N_ ("Size of the specks"), "mm", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwStep, speck_mm), 0.2, 20, 2, .step_kinds = SPECKLE },
  /* Translators: how much the specks differ in size; 0 all alike */
  { "speck_variation", N_ ("Variation of the specks"), "", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwStep, speck_variation), 0, 1.5, 0.35, .step_kinds = SPECKLE },
  { "dry", N_ ("Dry grains"), "", SW_KIND_FLAG, G_STRUCT_OFFSET (SwStep, dry), .max = 1, .step_kinds = SPECKLE },
  { "grams", N_ ("Mass of dry dye"), "g", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwStep, grams), 0, 200, 0.1, .step_kinds = SPECKLE },
  { "minutes", N_ ("Time"), N_ ("min"), SW_KIND_NUMBER, G_STRUCT_OFFSET (SwStep, minutes), 0, 1440, 10, .step_kinds = WAITS },
  { "temperature_c", N_ ("Temperature"), "°C", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwStep, temperature_c), 1, 105, 85, .step_kinds = WAITS },
  { "volume_ml", N_ ("Volume"), "mL", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwStep, volume_ml), 0, 200000, 30, .step_kinds = ADDS },
  { "acid_percent", N_ ("Strength of the acid"), "%", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwStep, acid_percent), 0.1, 100, 5, .step_kinds = ACID },
};

const SwMemberTable sw_step_table = { "steps", G_STRUCT_OFFSET (SwSketch, steps), G_STRUCT_OFFSET (SwStep, extras), step_members, G_N_ELEMENTS (step_members) };

/* Where one kind's usual value is not the table's. */
static const struct
{
  SwStepKind kind;
  const char *member;
  double fallback;
} own_fallbacks[] = {
  { SW_STEP_SPLOTCH, "length_cm", 6 },
  { SW_STEP_SPECKLE, "width_cm", 20 },
  { SW_STEP_SPECKLE, "length_cm", 8 },
  { SW_STEP_SPECKLE, "amount_ml", 5 },
  { SW_STEP_SPECKLE, "worked_in", 0 },
  { SW_STEP_WATER, "volume_ml", 500 },
  { SW_STEP_SET, "minutes", 30 },
  { SW_STEP_SET, "temperature_c", 95 },
};

gboolean
sw_step_own_fallback (SwStepKind kind, const char *member, double *fallback)
{
  for (gsize i = 0; i < G_N_ELEMENTS (own_fallbacks); i++)
    if (own_fallbacks[i].kind == kind && g_str_equal (own_fallbacks[i].member, member))
      {
        *fallback = own_fallbacks[i].fallback;
        return TRUE;
      }
  return FALSE;
}

static const struct
{
  const char *name; /* in the file */
  const char *label;
} step_kinds[SW_N_STEP_KINDS] = {
  /* Translators: a pour of dye right across the skein */
  [SW_STEP_BAND] = { "band", N_ ("Band") },
  /* Translators: a roundish pour of dye */
  [SW_STEP_SPLOTCH] = { "splotch", N_ ("Splotch") },
  /* Translators: many small drops or grains of dye */
  [SW_STEP_SPECKLE] = { "speckle", N_ ("Speckles") },
  /* Translators: waiting between pours */
  [SW_STEP_REST] = { "rest", N_ ("Rest") },
  /* Translators: turning the skein over */
  [SW_STEP_FLIP] = { "flip", N_ ("Flip") },
  /* Translators: adding acid to the bath */
  [SW_STEP_ACID] = { "acid", N_ ("Acid") },
  /* Translators: adding water to the bath */
  [SW_STEP_WATER] = { "water", N_ ("Water") },
  /* Translators: the final heating that fixes the dye */
  [SW_STEP_SET] = { "set", N_ ("Set") },
};

const char *
sw_step_kind_name (SwStepKind kind)
{
  g_return_val_if_fail ((guint) kind < SW_N_STEP_KINDS, NULL);

  return step_kinds[kind].name;
}

const char *
sw_step_kind_label (SwStepKind kind)
{
  g_return_val_if_fail ((guint) kind < SW_N_STEP_KINDS, NULL);

  return _ (step_kinds[kind].label);
}

int
sw_step_kind_from_name (const char *name)
{
  for (int kind = 0; kind < SW_N_STEP_KINDS; kind++)
    if (g_strcmp0 (step_kinds[kind].name, name) == 0)
      return kind;
  return -1;
}
