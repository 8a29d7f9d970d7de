/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/sw-recipe-data.h"
#include "sheet/sw-recipe.h"

#include "tests/sw-test-sketch.h"

#include <locale.h>

static char *
recipe_of (const SwSketch *sketch)
{
  g_autoptr (SwSheet) sheet = sw_sheet_new (sketch, NULL);

  g_autofree char *data = sw_recipe_data (sheet);

  return sw_recipe_words (data);
}

static char *
data_of (const SwSketch *sketch)
{
  g_autoptr (SwSheet) sheet = sw_sheet_new (sketch, NULL);

  return sw_recipe_data (sheet);
}

static SwSketch *
named_sketch (void)
{
  SwSketch *sketch = test_sketch (2);
  SwStep *first = sketch->steps->pdata[0];

  g_free (first->name);
  first->name = g_strdup ("Coral band");
  return sketch;
}

static const char expected[] =
    "Skeins: 1\n"
    "Pans: 1\n"
    "Yarn, g: 100\n"
    "Water, a pan: 1400 mL\n"
    "Acid, a pan: 60 mL (5 %)\n"
    "Stock of Red: 0.5 g in 50 mL\n"
    "Stock of Blue: 0.28 g in 28 mL\n"
    "Coral band: 30 mL\n"
    "Band of Blue: 25 mL\n"
    "Rest: 10 min at 85 °C\n"
    "Flip\n"
    "Band of Red: 15 mL\n"
    "Set: 30 min at 95 °C\n";

static void
test_lines (void)
{
  g_autoptr (SwSketch) sketch = named_sketch ();
  g_autofree char *recipe = recipe_of (sketch);

  g_assert_cmpstr (recipe, ==, expected);
}

/* The same in every locale that is here: numbers are as in files. */
static void
test_locale (void)
{
  static const char *const locales[] = { "de_DE.UTF-8", "fr_FR.UTF-8", "C.UTF-8" };
  g_autoptr (SwSketch) sketch = named_sketch ();

  ((SwStep *) sketch->steps->pdata[0])->amount_ml = 12.5;
  for (gsize i = 0; i < G_N_ELEMENTS (locales); i++)
    {
      g_autofree char *recipe = NULL;

      if (setlocale (LC_NUMERIC, locales[i]) == NULL)
        g_test_message ("%s is not here", locales[i]);
      recipe = recipe_of (sketch);
      g_assert_nonnull (strstr (recipe, "Coral band: 12.5 mL\n"));
    }
  setlocale (LC_NUMERIC, "C");
}

/* Labels that occur again are numbered, so that each line has one. */
static void
test_again (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autofree char *recipe = recipe_of (sketch);

  g_assert_nonnull (strstr (recipe, "Band of Red: 30 mL\n"));
  g_assert_nonnull (strstr (recipe, "Band of Red (2): 15 mL\n"));
}

static void
assert_changes (const char *before, const char *after, const char *wanted)
{
  g_autofree char *changes = sw_recipe_changes_of_words (before, after);

  g_assert_cmpstr (changes, ==, wanted);
}

static void
test_changes (void)
{
  assert_changes (expected, expected, "");
  assert_changes ("Coral band: 10 mL\n", "Coral band: 12 mL\n", "Coral band: 12 mL, was 10 mL\n");
  assert_changes ("", "Flip\nRest: 10 min at 85 °C\n", "Flip: new\nRest: 10 min at 85 °C, new\n");
  assert_changes ("Flip\nRest: 10 min at 85 °C\n", "Flip\n", "Rest: left out\n");
  /* A name may hold a colon: the amount is what follows the last. */
  assert_changes ("Pour: the first: 3 mL\n", "Pour: the first: 4 mL\n", "Pour: the first: 4 mL, was 3 mL\n");
}

/* Of a whole edit: only what was touched. */
static void
test_of_an_edit (void)
{
  g_autoptr (SwSketch) sketch = named_sketch ();
  g_autofree char *before = data_of (sketch), *after = NULL, *changes = NULL;

  ((SwStep *) sketch->steps->pdata[2])->minutes = 12.0;
  after = data_of (sketch);
  changes = sw_recipe_changes (before, after);
  g_assert_cmpstr (changes, ==, "Rest: 12 min at 85 °C, was 10 min at 85 °C\n");
}

/* What is called otherwise is the same; what has another number is not, and what is gone is told. */
static void
test_data (void)
{
  g_autoptr (SwSketch) sketch = named_sketch ();
  SwStep *first = sketch->steps->pdata[0];
  SwDye *red = sketch->dyes->pdata[0];
  g_autofree char *before = data_of (sketch), *renamed = NULL, *after = NULL, *same = NULL, *changes = NULL;

  g_assert_cmpint (sw_recipe_count (before, "skeins"), ==, 1);
  g_assert_cmpint (sw_recipe_count (before, "nonsense"), ==, 0);
  g_free (first->name);
  first->name = g_strdup ("Band\tof \"coral\"\nfirst: 3 mL");
  g_free (red->name);
  red->name = g_strdup ("");
  renamed = data_of (sketch);
  same = sw_recipe_changes (before, renamed);
  g_assert_cmpstr (same, ==, "");

  first->amount_ml = 12;
  g_ptr_array_remove_index (sketch->steps, 3);
  sketch->sheet.skeins = 2;
  after = data_of (sketch);
  changes = sw_recipe_changes (before, after);
  g_assert_true (g_str_has_prefix (changes, "Skeins: 2, was 1\nPans: 2, was 1\nYarn, g: 200, was 100\nStock of a dye without a name: "));
  g_assert_nonnull (strstr (changes, "\nBand of \"coral\" first: 3 mL: 12 mL, was 30 mL\n"));
  g_assert_true (g_str_has_suffix (changes, "\nFlip: left out\n"));
  g_assert_null (strstr (changes, "Rest"));
}

/* Whatever is read from a file is no danger: lines of another shape are passed over. */
static void
test_bad_data (void)
{
  static const char *const bad[] = { "", "\n\n", "skeins", "skeins\t0\t\tcount\t1\t\t\textra\n", "step\t1\tnonsense\tml\t\t\t\n", "acid\t0\t\tacid\t5\t\t\n", "x\t\t\t\t\t\t" };

  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    for (gsize k = 0; k < G_N_ELEMENTS (bad); k++)
      {
        g_autofree char *words = sw_recipe_words (bad[i]), *changes = sw_recipe_changes (bad[i], bad[k]);

        g_assert_true (g_utf8_validate (words, -1, NULL));
        g_assert_true (i != k || *changes == '\0');
      }
}

/* Words of a file of an earlier version, written in another language: only the numbers tell. */
static void
test_other_language (void)
{
  static const char german[] = "Stränge: 1\nPfannen: 1\nKoralle: 10 mL\nWenden\nRuhen: 10 min bei 85 °C\n";

  assert_changes (german, "Skeins: 1\nPans: 1\nKoralle: 10 mL\nFlip\nRest: 10 min at 85 °C\n", "");
  assert_changes (german, "Skeins: 1\nPans: 1\nKoralle: 12.5 mL\nFlip\nRest: 10 min at 85 °C\n", "Koralle: 12.5 mL, was 10 mL\n");
  assert_changes (german, "Skeins: 1\nPans: 1\nRest: 10 min at 85 °C\n", "");
}

/* Uneven pans, crystals and dry grains have their words too. */
static void
test_uneven (void)
{
  g_autoptr (SwSketch) sketch = named_sketch ();
  SwStep *specks = test_add_speckles (sketch, sketch->dyes->pdata[0], 1);
  g_autofree char *recipe = NULL;

  specks->dry = TRUE;
  specks->grams = 0.2;
  sketch->lay.skeins = 2;
  sketch->lay.pan_width_cm = 20.0;
  sketch->sheet.skeins = 3;
  sketch->bath.acid = SW_ACID_CITRIC;
  sketch->sheet.acid_form = SW_ACID_FORM_CRYSTALS;
  recipe = recipe_of (sketch);
  g_assert_nonnull (strstr (recipe, "Acid, a pan: 3 g of crystals, 1.5 g of crystals in pans with a skein less\n"));
  g_assert_nonnull (strstr (recipe, "Coral band: 30 mL, 15 mL in pans with a skein less\n"));
  g_assert_nonnull (strstr (recipe, "Speckles of Red: 0.2 g, 0.1 g in pans with a skein less\n"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet/recipe/lines", test_lines);
  g_test_add_func ("/sheet/recipe/locale", test_locale);
  g_test_add_func ("/sheet/recipe/again", test_again);
  g_test_add_func ("/sheet/recipe/changes", test_changes);
  g_test_add_func ("/sheet/recipe/of-an-edit", test_of_an_edit);
  g_test_add_func ("/sheet/recipe/uneven", test_uneven);
  g_test_add_func ("/sheet/recipe/data", test_data);
  g_test_add_func ("/sheet/recipe/bad-data", test_bad_data);
  g_test_add_func ("/sheet/recipe/other-language", test_other_language);
  return g_test_run ();
}
