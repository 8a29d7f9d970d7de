/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-member-private.h"

#include <glib/gi18n-lib.h>

/*
 * What is settled before and after the dyeing: the yarn, how it was wound and
 * laid, and the cloth. Defaults are common practice (no source): a 100 g
 * skein of sock yarn off a metre-and-a-half reel, doubled in the pan. The
 * limits are wider than any practice and only keep out nonsense.
 *
 * Columns: name, label, unit, kind, place; then least, most, default.
 */

static const SwMember sketch_members[] = {
  { "title", N_ ("Title"), "", SW_KIND_TEXT, G_STRUCT_OFFSET (SwSketch, title), .max = 200 },
  { "notes", N_ ("Notes"), "", SW_KIND_TEXT, G_STRUCT_OFFSET (SwSketch, notes), .max = 100000 },
  /* Translators: the number from which chance (where droplets fall, how wraps wander) is drawn */
  { "seed", N_ ("Seed of chance"), "", SW_KIND_WHOLE, G_STRUCT_OFFSET (SwSketch, seed), 0, 4294967295.0, 1 },
};

const SwMemberTable sw_sketch_table = { "", 0, G_STRUCT_OFFSET (SwSketch, extras), sketch_members, G_N_ELEMENTS (sketch_members) };

static const char *const fibres[] = { "superwash-wool", "wool", "superwash-nylon", "nylon", "silk", NULL };
static const char *const fibre_labels[] = {
  N_ ("Superwash wool"),
  /* Translators: wool that can felt, not treated to be machine washable */
  N_ ("Untreated wool"),
  N_ ("Superwash wool with nylon"),
  N_ ("Nylon"),
  N_ ("Silk"),
  NULL,
};

/* Wool before dyeing is a warm off-white (CIELAB, from memory; a measured one replaces it). */
static const SwSample undyed_fallback = { SW_SAMPLE_LAB, { 89.0, 0.5, 9.0 } };

static const SwMember yarn_members[] = {
  { "name", N_ ("Name"), "", SW_KIND_TEXT, G_STRUCT_OFFSET (SwYarn, name), .max = 200 },
  { "fibre", N_ ("Fibre"), "", SW_KIND_CHOICE, G_STRUCT_OFFSET (SwYarn, fibre), .fallback = SW_FIBRE_SUPERWASH_WOOL, .choices = fibres, .choice_labels = fibre_labels },
  /* Translators: of one skein of yarn */
  { "mass_g", N_ ("Mass of a skein"), "g", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwYarn, mass_g), 1, 5000, 100 },
  /* Translators: metres of yarn in 100 g */
  { "metres_per_100_g", N_ ("Put-up"), N_ ("m per 100 g"), SW_KIND_NUMBER, G_STRUCT_OFFSET (SwYarn, metres_per_100_g), 10, 5000, 400 },
  { "plies", N_ ("Plies"), "", SW_KIND_WHOLE, G_STRUCT_OFFSET (SwYarn, plies), 1, 24, 4 },
  { "undyed", N_ ("Colour before dyeing"), "", SW_KIND_COLOUR, G_STRUCT_OFFSET (SwYarn, undyed), .colour_fallback = &undyed_fallback },
};

const SwMemberTable sw_yarn_table = { "yarn", G_STRUCT_OFFSET (SwSketch, yarn), G_STRUCT_OFFSET (SwYarn, extras), yarn_members, G_N_ELEMENTS (yarn_members) };

static const char *const windings[] = { "traversed", "by-hand", NULL };
static const char *const winding_labels[] = {
  /* Translators: a guide sweeps to and fro over the reel while it winds */
  N_ ("With a guide"),
  N_ ("By hand"),
  NULL,
};

static const SwMember reel_members[] = {
  { "circumference_cm", N_ ("Circumference of the reel"), "cm", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwReelSettings, circumference_cm), 20, 6400, 150 },
  /* Translators: how much longer the last wrap of a skein is than the first, as a fraction */
  { "growth", N_ ("Growth of the wraps"), "", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwReelSettings, growth), 0, 0.25, 0 },
  { "winding", N_ ("Winding"), "", SW_KIND_CHOICE, G_STRUCT_OFFSET (SwReelSettings, winding), .fallback = SW_WINDING_TRAVERSED, .choices = windings, .choice_labels = winding_labels },
  { "wraps_per_sweep", N_ ("Wraps in one sweep of the guide"), "", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwReelSettings, wraps_per_sweep), 1, 200, 12 },
  /* Translators: how far the strands stray sideways from their order, as a fraction of the bundle */
  { "wander", N_ ("Wander of the strand"), "", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwReelSettings, wander), 0, 0.5, 0.06 },
};

const SwMemberTable sw_reel_table = { "reel", G_STRUCT_OFFSET (SwSketch, reel), G_STRUCT_OFFSET (SwReelSettings, extras), reel_members, G_N_ELEMENTS (reel_members) };

static const char *const foldings[] = { "stacked", "side-by-side", NULL };
/* Translators: how the runs of a folded skein lie in the pan */
static const char *const folding_labels[] = { N_ ("On top of each other"), N_ ("Side by side"), NULL };

static const SwMember lay_members[] = {
  { "skeins", N_ ("Skeins in the pan"), "", SW_KIND_WHOLE, G_STRUCT_OFFSET (SwLaySettings, skeins), 1, 20, 1 },
  /* Translators: into how many lengths the loop of yarn is folded */
  { "runs", N_ ("Runs of the folded skein"), "", SW_KIND_WHOLE, G_STRUCT_OFFSET (SwLaySettings, runs), 1, 16, 2, .doubling = TRUE },
  { "folding", N_ ("Folding"), "", SW_KIND_CHOICE, G_STRUCT_OFFSET (SwLaySettings, folding), .fallback = SW_FOLDING_STACKED, .choices = foldings, .choice_labels = folding_labels },
  { "width_cm", N_ ("Width of a skein as laid"), "cm", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwLaySettings, width_cm), 0.5, 100, 8 },
  { "depth_cm", N_ ("Depth of the skein as laid"), "cm", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwLaySettings, depth_cm), 0.2, 20, 2.5 },
  { "pan_length_cm", N_ ("Length of the pan"), "cm", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwLaySettings, pan_length_cm), 5, 400, 80 },
  { "pan_width_cm", N_ ("Width of the pan"), "cm", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwLaySettings, pan_width_cm), 5, 400, 20 },
};

const SwMemberTable sw_lay_table = { "lay", G_STRUCT_OFFSET (SwSketch, lay), G_STRUCT_OFFSET (SwLaySettings, extras), lay_members, G_N_ELEMENTS (lay_members) };

static const char *const states[] = { "dry", "wet", NULL };
/* Translators: how knitted fabric was brought to rest before measuring */
static const char *const state_labels[] = { N_ ("Relaxed dry"), N_ ("Relaxed wet"), NULL };

static const char *const fabrics[] = { "stockinette", "garter", "seed", "rib", NULL };
static const char *const fabric_labels[] = {
  /* Translators: four knitted fabrics: smooth with knit stitches on one side; ridges on both sides; knit and purl in turn both ways, also called moss stitch; columns of knit and purl in turn */
  N_ ("Stockinette"),
  N_ ("Garter stitch"),
  N_ ("Seed stitch"),
  N_ ("Rib, one by one"),
  NULL,
};

static const char *const workings[] = { "flat", "round", NULL };
/* Translators: how a piece is knitted */
static const char *const working_labels[] = { N_ ("Flat"), N_ ("In the round"), NULL };

static const SwMember cloth_members[] = {
  { "stitches_per_10cm", N_ ("Stitch gauge"), N_ ("stitches to 10 cm"), SW_KIND_NUMBER, G_STRUCT_OFFSET (SwClothSettings, stitches_per_10cm), 2, 150, 30 },
  { "rows_per_10cm", N_ ("Row gauge"), N_ ("rows to 10 cm"), SW_KIND_NUMBER, G_STRUCT_OFFSET (SwClothSettings, rows_per_10cm), 0, 250, 0, .above_zero = 2 },
  { "stitch_length_cm", N_ ("Yarn in one stitch"), "cm", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwClothSettings, stitch_length_cm), 0, 20, 0, .above_zero = 0.2 },
  { "state", N_ ("State of the cloth"), "", SW_KIND_CHOICE, G_STRUCT_OFFSET (SwClothSettings, state), .fallback = SW_STATE_DRY, .choices = states, .choice_labels = state_labels },
  { "fabric", N_ ("Fabric"), "", SW_KIND_CHOICE, G_STRUCT_OFFSET (SwClothSettings, fabric), .fallback = SW_FABRIC_STOCKINETTE, .choices = fabrics, .choice_labels = fabric_labels },
  { "worked", N_ ("Worked"), "", SW_KIND_CHOICE, G_STRUCT_OFFSET (SwClothSettings, worked), .fallback = SW_WORKED_ROUND, .choices = workings, .choice_labels = working_labels },
  { "width_stitches", N_ ("Width of the cloth"), N_ ("stitches"), SW_KIND_WHOLE, G_STRUCT_OFFSET (SwClothSettings, width_stitches), 3, 2000, 64 },
  /* Translators: which of the skeins in the pan is knitted, counted from 1 */
  { "skein", N_ ("Skein knitted"), "", SW_KIND_WHOLE, G_STRUCT_OFFSET (SwClothSettings, skein), 1, 20, 1 },
  /* Translators: length of yarn cut off before casting on */
  { "start_cm", N_ ("Start of the yarn"), "cm", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwClothSettings, start_cm), 0, 2000000, 0 },
  /* Translators: how many times the width of the cloth the cast-on takes in yarn */
  { "cast_on", N_ ("Yarn in the cast-on, in widths"), "", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwClothSettings, cast_on), 0, 20, 3 },
  { "turn_cm", N_ ("Extra yarn at each turn"), "cm", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwClothSettings, turn_cm), 0, 20, 0 },
  /* Translators: how many skeins are knitted in turn, a few rows from each, to even out their differences */
  { "alternate_skeins", N_ ("Skeins knitted in turn"), "", SW_KIND_WHOLE, G_STRUCT_OFFSET (SwClothSettings, alternate_skeins), 1, SW_MOST_ALTERNATE, 1 },
  /* Translators: how many rows are knitted from one skein before the next takes over */
  { "alternate_rows", N_ ("Rows from each skein"), N_ ("rows"), SW_KIND_WHOLE, G_STRUCT_OFFSET (SwClothSettings, alternate_rows), 1, 8, 2 },
  /* Translators: how much more yarn is cut off each next skein before it starts */
  { "alternate_shift_cm", N_ ("Later start of each next skein"), "cm", SW_KIND_NUMBER, G_STRUCT_OFFSET (SwClothSettings, alternate_shift_cm), 0, 100000, 0 },
};

const SwMemberTable sw_cloth_table = { "cloth", G_STRUCT_OFFSET (SwSketch, cloth), G_STRUCT_OFFSET (SwClothSettings, extras), cloth_members, G_N_ELEMENTS (cloth_members) };
