/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sheet/sw-recipe.h"

#include "sheet/sw-recipe-data.h"
#include "sheet/sw-step-title.h"
#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Between what a line is about and its amount; never in an amount. */
#define COLON ": "

/* --- Amounts in words --- */

/* A number for a full pan, and perhaps one for a pan with a skein less. */
static char *
for_pans (const char *numbers, char *(*words) (const char *) )
{
  g_auto (GStrv) parts = g_strsplit (numbers, "/", 2);
  g_autofree char *first = words (parts[0] != NULL ? parts[0] : "");
  g_autofree char *second = NULL;

  if (parts[0] == NULL || parts[1] == NULL)
    return g_steal_pointer (&first);
  second = words (parts[1]);
  /* Translators: an amount for a full pan, and for a pan that holds a skein less */
  return g_strdup_printf (_ ("%s, %s in pans with a skein less"), first, second);
}

static char *
one_ml (const char *number)
{
  return g_strdup_printf (_ ("%s mL"), number);
}

static char *
one_g (const char *number)
{
  return g_strdup_printf (_ ("%s g"), number);
}

static char *
one_crystals (const char *number)
{
  /* Translators: citric acid that is weighed dry */
  return g_strdup_printf (_ ("%s g of crystals"), number);
}

static char *
count_words (char *const *numbers)
{
  return g_strdup (numbers[0]);
}

static char *
ml_words (char *const *numbers)
{
  return for_pans (numbers[0], one_ml);
}

static char *
g_words (char *const *numbers)
{
  return for_pans (numbers[0], one_g);
}

static char *
crystals_words (char *const *numbers)
{
  return for_pans (numbers[0], one_crystals);
}

static char *
acid_words (char *const *numbers)
{
  g_autofree char *amount = ml_words (numbers);

  /* Translators: how much acid, and its strength: "30 mL (5 %)" */
  return g_strdup_printf (_ ("%s (%s %%)"), amount, numbers[1]);
}

static char *
stock_words (char *const *numbers)
{
  /* Translators: grams of powder in so many millilitres of stock */
  return g_strdup_printf (_ ("%s g in %s mL"), numbers[0], numbers[1]);
}

static char *
wait_words (char *const *numbers)
{
  return g_strdup_printf (_ ("%s min at %s °C"), numbers[0], numbers[1]);
}

static const struct
{
  const char *name;
  guint numbers;
  char *(*words) (char *const *numbers);
} forms[] = {
  { "count", 1, count_words },
  { "ml", 1, ml_words },
  { "g", 1, g_words },
  { "crystals", 1, crystals_words },
  { "acid", 2, acid_words },
  { "stock", 2, stock_words },
  { "wait", 2, wait_words },
};

/* "" for what has none, or is of a form that is not known here. */
static char *
amount_words (char *const *line)
{
  g_auto (GStrv) numbers = g_strsplit (line[SW_RECIPE_NUMBERS], " ", -1);

  for (gsize i = 0; i < G_N_ELEMENTS (forms); i++)
    if (g_str_equal (line[SW_RECIPE_FORM], forms[i].name) && g_strv_length (numbers) >= forms[i].numbers)
      return forms[i].words (numbers);
  return g_strdup ("");
}

/* --- What a line is about --- */

static const struct
{
  const char *what, *label;
} labels[] = {
  { "skeins", N_ ("Skeins") },
  { "pans", N_ ("Pans") },
  /* Translators: grams of yarn */
  { "yarn_g", N_ ("Yarn, g") },
  { "water", N_ ("Water, a pan") },
  { "acid", N_ ("Acid, a pan") },
};

static char *
label_words (char *const *line)
{
  for (gsize i = 0; i < G_N_ELEMENTS (labels); i++)
    if (g_str_equal (line[SW_RECIPE_WHAT], labels[i].what))
      return g_strdup (_ (labels[i].label));
  if (g_str_equal (line[SW_RECIPE_WHAT], "stock"))
    /* Translators: %s is a dye's name */
    return g_strdup_printf (_ ("Stock of %s"), sw_dye_name_title (line[SW_RECIPE_DYE]));
  return sw_step_title_of (sw_step_kind_from_name (line[SW_RECIPE_KIND]), line[SW_RECIPE_NAME], line[SW_RECIPE_DYE]);
}

/* Labels of all lines; those that occur again are numbered. */
static GPtrArray *
all_labels (const GPtrArray *lines)
{
  GPtrArray *all = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GHashTable) times = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < lines->len; i++)
    {
      char *label = label_words (lines->pdata[i]);
      const int n = GPOINTER_TO_INT (g_hash_table_lookup (times, label)) + 1;

      g_hash_table_insert (times, g_strdup (label), GINT_TO_POINTER (n));
      g_ptr_array_add (all, n > 1 ? g_strdup_printf ("%s (%d)", label, n) : g_strdup (label));
      g_free (label);
    }
  return all;
}

char *
sw_recipe_words (const char *data)
{
  g_autoptr (GPtrArray) lines = NULL, names = NULL;
  GString *text = g_string_new (NULL);

  g_return_val_if_fail (data != NULL, NULL);

  lines = sw_recipe_read (data);
  names = all_labels (lines);
  for (guint i = 0; i < lines->len; i++)
    {
      g_autofree char *amount = amount_words (lines->pdata[i]);

      g_string_append (text, names->pdata[i]);
      if (*amount != '\0')
        g_string_append_printf (text, COLON "%s", amount);
      g_string_append_c (text, '\n');
    }
  return g_string_free (text, FALSE);
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

/* One amount of what is done now, against what was; NULL: nothing. */
static void
add_change (GString *changes, const char *label, const char *amount, const char *was)
{
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

static void
add_left_out (GString *changes, const char *label)
{
  /* Translators: a step of the last dyeing that is not done now */
  g_string_append_printf (changes, _ ("%s: left out"), label);
  g_string_append_c (changes, '\n');
}

char *
sw_recipe_changes (const char *before, const char *after)
{
  GString *changes = g_string_new (NULL);
  g_autoptr (GPtrArray) lines_before = NULL, lines_after = NULL, names_before = NULL, names_after = NULL;

  g_return_val_if_fail (before != NULL && after != NULL, NULL);

  lines_before = sw_recipe_read (before);
  lines_after = sw_recipe_read (after);
  names_before = all_labels (lines_before);
  names_after = all_labels (lines_after);
  for (guint i = 0; i < lines_after->len; i++)
    {
      char **line = lines_after->pdata[i], **was = sw_recipe_find (lines_before, line);
      g_autofree char *amount = amount_words (line), *old = was != NULL ? amount_words (was) : NULL;

      add_change (changes, names_after->pdata[i], amount, old);
    }
  for (guint i = 0; i < lines_before->len; i++)
    if (sw_recipe_find (lines_after, lines_before->pdata[i]) == NULL)
      add_left_out (changes, names_before->pdata[i]);
  return g_string_free (changes, FALSE);
}

/* --- Words that were kept without their data --- */

/* The first line of each recipe is of the same words, if they are of one language. */
static gboolean
of_one_language (char *const *before, char *const *after)
{
  g_autofree char *first = NULL, *second = NULL;

  g_free (split_line (before[0], &first));
  g_free (split_line (after[0], &second));
  return g_str_equal (first, second);
}

/* The numbers in an amount, one after the other. */
static char *
numbers_of (const char *amount)
{
  GString *numbers = g_string_new (NULL);

  for (; *amount != '\0'; amount++)
    g_string_append_c (numbers, g_ascii_isdigit (*amount) || *amount == '.' ? *amount : ' ');
  return g_string_free (numbers, FALSE);
}

static gboolean
same_numbers (const char *a, const char *b)
{
  g_autofree char *of_a = numbers_of (a), *of_b = numbers_of (b);
  g_auto (GStrv) first = g_strsplit (of_a, " ", -1), second = g_strsplit (of_b, " ", -1);
  char **x = first, **y = second;

  for (;; x++, y++)
    {
      while (*x != NULL && **x == '\0')
        x++;
      while (*y != NULL && **y == '\0')
        y++;
      if (*x == NULL || *y == NULL)
        return *x == *y;
      if (!g_str_equal (*x, *y))
        return FALSE;
    }
}

static void
compare_by_place (GString *changes, char *const *before, char *const *after)
{
  if (g_strv_length ((char **) before) != g_strv_length ((char **) after))
    return;
  for (gsize i = 0; after[i] != NULL; i++)
    {
      g_autofree char *label = NULL, *other = NULL;
      g_autofree char *amount = split_line (after[i], &label), *was = split_line (before[i], &other);

      if (!same_numbers (amount, was))
        add_change (changes, label, amount, was);
    }
}

static void
compare_by_label (GString *changes, char **before, char **after)
{
  g_autoptr (GHashTable) amounts_before = lines_of (before), amounts_after = lines_of (after);

  for (gsize i = 0; after[i] != NULL; i++)
    {
      g_autofree char *label = NULL;
      g_autofree char *amount = split_line (after[i], &label);

      if (*after[i] != '\0')
        add_change (changes, label, amount, g_hash_table_lookup (amounts_before, label));
    }
  for (gsize i = 0; before[i] != NULL; i++)
    {
      g_autofree char *label = NULL;
      g_autofree char *amount = split_line (before[i], &label);

      if (*before[i] != '\0' && !g_hash_table_contains (amounts_after, label))
        add_left_out (changes, label);
    }
}

char *
sw_recipe_changes_of_words (const char *before, const char *after)
{
  GString *changes = g_string_new (NULL);
  g_auto (GStrv) lines_before = NULL, lines_after = NULL;

  g_return_val_if_fail (before != NULL && after != NULL, NULL);

  lines_before = g_strsplit (before, "\n", -1);
  lines_after = g_strsplit (after, "\n", -1);
  if (*before == '\0' || *after == '\0' || of_one_language (lines_before, lines_after))
    compare_by_label (changes, lines_before, lines_after);
  else
    compare_by_place (changes, lines_before, lines_after);
  return g_string_free (changes, FALSE);
}
