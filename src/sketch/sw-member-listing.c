/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-member-private.h"

#include <glib/gi18n-lib.h>

/*
 * The shop's page: how the hank is twisted, what is in the picture, and what
 * is said beside it.
 *
 * Columns: name, label, unit, kind, place; then least, most, default.
 */

#define LISTING(field) G_STRUCT_OFFSET (SwListingSettings, field)

static const char *const arrangements[] = { "hank", "hanks", "hank-cloth", "skein-cloth", "whole", NULL };
static const char *const arrangement_labels[] = {
  N_ ("Hank"),
  /* Translators: several hanks of one batch, side by side */
  N_ ("Hanks of a batch"), N_ ("Hank and cloth"), N_ ("Laid skein and cloth"),
  /* Translators: all of cloth, laid skein and hank in one picture */
  N_ ("Cloth, skein and hank"), NULL
};

static const char *const labels[] = { "none", "white", "grey", NULL };
/* Translators: the paper band round a hank of yarn */
static const char *const label_labels[] = { N_ ("None"), N_ ("White paper"), N_ ("Grey paper"), NULL };

static const char *const shapes[] = { "square", "4:5", "wide", NULL };
/* Translators: shapes of a picture */
static const char *const shape_labels[] = { N_ ("Square"), N_ ("Upright, 4:5"), N_ ("Wide, 3:2"), NULL };

static const char *const grounds[] = { "white", "pale", "grey", "charcoal", NULL };
/* Translators: plain grounds of a photograph */
static const char *const ground_labels[] = { N_ ("White"), N_ ("Pale grey"), N_ ("Mid grey"), N_ ("Charcoal"), NULL };

static const char *const cares[] = { "unsaid", "hand-wash", "hand-wash-cool", "machine-wool", NULL };
/* Translators: how a knitted thing is to be washed, as its maker chooses to say */
static const char *const care_labels[] = { N_ ("Not said"), N_ ("Hand wash, lukewarm"), N_ ("Hand wash, cold"), N_ ("Machine, wool programme"), NULL };

static const SwMember listing_members[] = {
  /* Translators: where along the loop a hank is held while it is twisted: that place becomes its end */
  { "twist_start_cm", N_ ("Twist begins at"), "cm", SW_KIND_NUMBER, LISTING (twist_start_cm), 0, 1000, 0 },
  /* Translators: how often the loop is turned before it is folded into a hank */
  { "twist_turns", N_ ("Turns of the twist"), "", SW_KIND_NUMBER, LISTING (twist_turns), 3, 24, 9 },
  { "arrangement", N_ ("Arrangement"), "", SW_KIND_CHOICE, LISTING (arrangement), .fallback = SW_ARRANGEMENT_HANK_CLOTH, .choices = arrangements, .choice_labels = arrangement_labels },
  { "hanks", N_ ("Hanks in the picture"), "", SW_KIND_WHOLE, LISTING (hanks), 2, 8, 3 },
  /* Translators: the paper band round a hank of yarn */
  { "label", N_ ("Label band"), "", SW_KIND_CHOICE, LISTING (label), .fallback = SW_LABEL_NONE, .choices = labels, .choice_labels = label_labels },
  /* Translators: whether caption, maker’s name and mark are printed on the paper band round the hank */
  { "label_words", N_ ("Words and mark on the label"), "", SW_KIND_FLAG, LISTING (label_words), .max = 1 },
  /* Translators: whether the picture of a laid skein shows it wet */
  { "wet", N_ ("Laid skein is wet"), "", SW_KIND_FLAG, LISTING (wet), .max = 1 },
  /* Translators: whether the main colours stand in the picture with their names */
  { "palette", N_ ("Palette"), "", SW_KIND_FLAG, LISTING (palette), .max = 1, .fallback = 1 },
  /* Translators: whether a small line in the picture says that it is a “Drawn forecast, not a photograph” */
  { "drawn_line", N_ ("Say that it is drawn"), "", SW_KIND_FLAG, LISTING (drawn_line), .max = 1, .fallback = 1 },
  { "shape", N_ ("Shape"), "", SW_KIND_CHOICE, LISTING (shape), .fallback = SW_SHAPE_SQUARE, .choices = shapes, .choice_labels = shape_labels },
  /* Translators: the longer side of a picture */
  { "longest_px", N_ ("Longer side"), N_ ("px"), SW_KIND_WHOLE, LISTING (longest_px), 400, 4000, 2000 },
  { "ground", N_ ("Ground"), "", SW_KIND_CHOICE, LISTING (ground), .fallback = SW_GROUND_PALE, .choices = grounds, .choice_labels = ground_labels },
  { "caption", N_ ("Caption"), "", SW_KIND_TEXT, LISTING (caption), .max = 400 },
  /* Translators: of whom dyed the yarn, or of the workshop: text in the picture and for the shop’s page */
  { "maker", N_ ("Maker’s name"), "", SW_KIND_TEXT, LISTING (maker), .max = 200 },
  /* Translators: the path of a picture, such as the sign of a workshop */
  { "mark", N_ ("Picture file of the mark"), "", SW_KIND_TEXT, LISTING (mark), .max = 4000 },
  { "care", N_ ("Care"), "", SW_KIND_CHOICE, LISTING (care), .fallback = SW_CARE_UNSAID, .choices = cares, .choice_labels = care_labels },
  { "care_words", N_ ("Care in own words"), "", SW_KIND_TEXT, LISTING (care_words), .max = 2000 },
  /* Translators: text of a shop’s page; empty means that the program writes it */
  { "words", N_ ("Words"), "", SW_KIND_TEXT, LISTING (words), .max = 40000 },
};

const SwMemberTable sw_listing_table = { "listing", G_STRUCT_OFFSET (SwSketch, listing), LISTING (extras), listing_members, G_N_ELEMENTS (listing_members) };
