/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/sw-recipe.h"

#include "sheet/sw-step-title.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Between what a line is about and its amount; never in an amount. */
#define COLON ": "

/* A recipe as it is written: labels that occur again are numbered. */
typedef struct
{
  GString *text;
  GHashTable *times; /* of label: how often it was used */
} Recipe;

/* As in files: with a point, whatever the locale. */
static char *
number (double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  return g_strdup (g_ascii_formatd (text, sizeof text, "%.6g", value));
}

/* A name on one line. */
static char *
one_line (const char *text)
{
  char *line = g_strdup (text);

  return g_strdelimit (line, "\n\r", ' ');
}

static void
add_line (Recipe *recipe, const char *label, const char *amount)
{
  g_autofree char *plain = one_line (label);
  int times = GPOINTER_TO_INT (g_hash_table_lookup (recipe->times, plain)) + 1;

  g_hash_table_insert (recipe->times, g_strdup (plain), GINT_TO_POINTER (times));
  g_string_append (recipe->text, plain);
  if (times > 1)
    g_string_append_printf (recipe->text, " (%d)", times);
  if (*amount != '\0')
    g_string_append_printf (recipe->text, COLON "%s", amount);
  g_string_append_c (recipe->text, '\n');
}

static void
add_number (Recipe *recipe, const char *label, double value)
{
  g_autofree char *text = number (value);

  add_line (recipe, label, text);
}

static char *
millilitres (double ml)
{
  g_autofree char *text = number (ml);

  return g_strdup_printf (_ ("%s mL"), text);
}

static char *
grams (double g)
{
  g_autofree char *text = number (g);

  return g_strdup_printf (_ ("%s g"), text);
}

static char *
grams_of_crystals (double g)
{
  g_autofree char *text = number (g);

  /* Translators: citric acid that is weighed dry */
  return g_strdup_printf (_ ("%s g of crystals"), text);
}

/* An amount for the fullest pan and, if there are such, for the others. */
static char *
for_pans (const SwSheet *sheet, SwAmount fuller, SwAmount lesser, char *(*words) (double) )
{
  g_autofree char *first = words (fuller.rounded);
  g_autofree char *second = words (lesser.rounded);

  if (sheet->lesser == 0)
    return g_steal_pointer (&first);
  /* Translators: an amount for a full pan, and for a pan that holds a skein less */
  return g_strdup_printf (_ ("%s, %s in pans with a skein less"), first, second);
}

static char *
acid_amount (const SwSheet *sheet, SwAmount ml, SwAmount crystals_g, SwAmount lesser_ml, SwAmount lesser_g, double percent)
{
  gboolean dry = crystals_g.exact > 0.0;
  g_autofree char *amount = dry ? for_pans (sheet, crystals_g, lesser_g, grams_of_crystals) : for_pans (sheet, ml, lesser_ml, millilitres);
  g_autofree char *strength = number (percent);

  if (dry)
    return g_steal_pointer (&amount);
  /* Translators: how much acid, and its strength: "30 mL (5 %)" */
  return g_strdup_printf (_ ("%s (%s %%)"), amount, strength);
}

static void
add_bath (Recipe *recipe, const SwSheet *sheet)
{
  const SwSheetLiquor *liquor = &sheet->liquor, *lesser = &sheet->lesser_liquor;
  g_autofree char *water = for_pans (sheet, liquor->water_ml, lesser->water_ml, millilitres);
  g_autofree char *acid = acid_amount (sheet, liquor->acid_ml, liquor->crystals_g, lesser->acid_ml, lesser->crystals_g, sheet->sketch->bath.acid_percent);

  add_number (recipe, _ ("Skeins"), (double) sheet->skeins);
  add_number (recipe, _ ("Pans"), (double) sheet->pans);
  /* Translators: grams of yarn */
  add_number (recipe, _ ("Yarn, g"), sheet->fibre_g);
  add_line (recipe, _ ("Water, a pan"), water);
  add_line (recipe, _ ("Acid, a pan"), acid);
}

static void
add_stocks (Recipe *recipe, const SwSheet *sheet)
{
  for (gsize i = 0; i < sheet->n_dyes; i++)
    {
      const SwSheetDye *dye = &sheet->dyes[i];
      const char *name = sw_dye_title (sheet->sketch->dyes->pdata[dye->dye]);
      /* Translators: %s is a dye's name */
      g_autofree char *label = g_strdup_printf (_ ("Stock of %s"), name);
      g_autofree char *powder = number (dye->weigh_g.rounded), *volume = number (dye->stock_ml.rounded);
      /* Translators: grams of powder in so many millilitres of stock */
      g_autofree char *amount = g_strdup_printf (_ ("%s g in %s mL"), powder, volume);

      if (dye->stock_ml.exact > 0.0)
        add_line (recipe, label, amount);
    }
}

static void
add_wait (Recipe *recipe, const char *title, const SwStep *step)
{
  g_autofree char *minutes = number (step->minutes), *celsius = number (step->temperature_c);
  g_autofree char *amount = g_strdup_printf (_ ("%s min at %s °C"), minutes, celsius);

  add_line (recipe, title, amount);
}

static void
add_step (Recipe *recipe, const SwSheet *sheet, gsize index, const SwSheetPour *pour)
{
  const SwStep *step = sheet->sketch->steps->pdata[index];
  const SwSheetStep *row = &sheet->steps[index];
  g_autofree char *title = sw_step_title (sheet->sketch, step);
  g_autofree char *amount = NULL;

  switch (step->kind)
    {
    case SW_STEP_BAND:
    case SW_STEP_SPLOTCH:
    case SW_STEP_SPECKLE:
      amount = pour->dry ? for_pans (sheet, pour->dye_g, pour->lesser_dye_g, grams) : for_pans (sheet, pour->stock_ml, pour->lesser_stock_ml, millilitres);
      break;
    case SW_STEP_REST:
    case SW_STEP_SET:
      add_wait (recipe, title, step);
      return;
    case SW_STEP_ACID:
      amount = acid_amount (sheet, row->added_ml, row->crystals_g, row->lesser_added_ml, row->lesser_crystals_g, step->acid_percent);
      break;
    case SW_STEP_WATER:
      amount = for_pans (sheet, row->added_ml, row->lesser_added_ml, millilitres);
      break;
    case SW_STEP_FLIP:
    default:
      amount = g_strdup ("");
    }
  add_line (recipe, title, amount);
}

char *
sw_sheet_recipe (const SwSheet *sheet)
{
  g_autoptr (GHashTable) times = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  Recipe recipe = { g_string_new (NULL), times };
  gsize pour = 0;

  g_return_val_if_fail (sheet != NULL, NULL);

  add_bath (&recipe, sheet);
  add_stocks (&recipe, sheet);
  for (gsize i = 0; i < sheet->n_steps; i++)
    {
      gboolean pours = sw_step_is_pour (sheet->sketch->steps->pdata[i]);

      add_step (&recipe, sheet, i, pours ? &sheet->pours[pour] : NULL);
      pour += pours;
    }
  return g_string_free (recipe.text, FALSE);
}

/* --- What differs --- */

/* The amount of a line; "" if it has none. @label gets the rest. */
static char *
split_line (const char *line, char **label)
{
  const char *colon = g_strrstr (line, COLON);

  *label = colon != NULL ? g_strndup (line, (gsize) (colon - line)) : g_strdup (line);
  return g_strdup (colon != NULL ? colon + strlen (COLON) : "");
}

static GHashTable *
lines_of (char **lines)
{
  GHashTable *amounts = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);

  for (gsize i = 0; lines[i] != NULL; i++)
    {
      char *label, *amount;

      if (*lines[i] == '\0')
        continue;
      amount = split_line (lines[i], &label);
      g_hash_table_insert (amounts, label, amount);
    }
  return amounts;
}

/* One line of what is done now, against what was. */
static void
compare_line (GString *changes, const char *line, GHashTable *before)
{
  g_autofree char *label = NULL;
  g_autofree char *amount = split_line (line, &label);
  const char *was = g_hash_table_lookup (before, label);

  if (was == NULL && *amount == '\0')
    /* Translators: a step of the dyeing that is done for the first time */
    g_string_append_printf (changes, _ ("%s: new"), label);
  else if (was == NULL)
    /* Translators: a step of the dyeing that is done for the first time, and its amount */
    g_string_append_printf (changes, _ ("%s: %s, new"), label, amount);
  else if (!g_str_equal (was, amount))
    /* Translators: what is measured, how much now, how much it was the last time */
    g_string_append_printf (changes, _ ("%s: %s, was %s"), label, amount, was);
  else
    return;
  g_string_append_c (changes, '\n');
}

char *
sw_recipe_changes (const char *before, const char *after)
{
  GString *changes = g_string_new (NULL);
  g_auto (GStrv) lines_before = NULL, lines_after = NULL;
  g_autoptr (GHashTable) amounts_before = NULL, amounts_after = NULL;

  g_return_val_if_fail (before != NULL && after != NULL, NULL);

  lines_before = g_strsplit (before, "\n", -1);
  lines_after = g_strsplit (after, "\n", -1);
  amounts_before = lines_of (lines_before);
  amounts_after = lines_of (lines_after);
  for (gsize i = 0; lines_after[i] != NULL; i++)
    if (*lines_after[i] != '\0')
      compare_line (changes, lines_after[i], amounts_before);
  for (gsize i = 0; lines_before[i] != NULL; i++)
    {
      g_autofree char *label = NULL;
      g_autofree char *amount = split_line (lines_before[i], &label);

      if (*lines_before[i] == '\0' || g_hash_table_contains (amounts_after, label))
        continue;
      /* Translators: a step of the last dyeing that is not done now */
      g_string_append_printf (changes, _ ("%s: left out"), label);
      g_string_append_c (changes, '\n');
    }
  return g_string_free (changes, FALSE);
}
