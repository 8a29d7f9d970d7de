/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/sw-recipe-data.h"

#include "sketch/sw-member.h"

/* One line as it is made; the rest of its fields stay empty. */
typedef struct
{
  const char *what;
  guint id;
  const char *kind, *form;
  char *numbers; /* taken over */
  const char *name, *dye;
} Line;

/* As in files: with a point, whatever the locale. */
static char *
number (double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  return g_strdup (g_ascii_formatd (text, sizeof text, "%.6g", value));
}

static char *
two_numbers (double a, double b)
{
  g_autofree char *first = number (a), *second = number (b);

  return g_strdup_printf ("%s %s", first, second);
}

/* For the fullest pan and, if there are such, for the others. */
static char *
for_pans (const SwSheet *sheet, SwAmount fuller, SwAmount lesser)
{
  g_autofree char *first = number (fuller.rounded), *second = number (lesser.rounded);

  return sheet->lesser > 0 ? g_strdup_printf ("%s/%s", first, second) : g_steal_pointer (&first);
}

/* A name that cannot be taken for the end of its field or line. */
static void
add_name (GString *data, const char *name)
{
  g_autofree char *plain = g_strdup (name != NULL ? name : "");

  g_string_append_c (data, '\t');
  g_string_append (data, g_strdelimit (plain, "\t\n\r", ' '));
}

static void
add_line (GString *data, const Line *line)
{
  g_string_append_printf (data, "%s\t%u\t%s\t%s\t%s", line->what, line->id, line->kind != NULL ? line->kind : "", line->form, line->numbers != NULL ? line->numbers : "");
  add_name (data, line->name);
  add_name (data, line->dye);
  g_string_append_c (data, '\n');
  g_free (line->numbers);
}

static void
add_acid (GString *data, const SwSheet *sheet, Line line, SwAmount ml, SwAmount crystals_g, SwAmount lesser_ml, SwAmount lesser_g, double percent)
{
  const gboolean dry = crystals_g.exact > 0.0;
  g_autofree char *volume = for_pans (sheet, ml, lesser_ml), *strength = number (percent);

  line.form = dry ? "crystals" : "acid";
  line.numbers = dry ? for_pans (sheet, crystals_g, lesser_g) : g_strdup_printf ("%s %s", volume, strength);
  add_line (data, &line);
}

static void
add_bath (GString *data, const SwSheet *sheet)
{
  const SwSheetLiquor *liquor = &sheet->liquor, *lesser = &sheet->lesser_liquor;

  add_line (data, &(const Line){ .what = "skeins", .form = "count", .numbers = number ((double) sheet->skeins) });
  add_line (data, &(const Line){ .what = "pans", .form = "count", .numbers = number ((double) sheet->pans) });
  add_line (data, &(const Line){ .what = "yarn_g", .form = "count", .numbers = number (sheet->fibre_g) });
  add_line (data, &(const Line){ .what = "water", .form = "ml", .numbers = for_pans (sheet, liquor->water_ml, lesser->water_ml) });
  add_acid (data, sheet, (Line){ .what = "acid" }, liquor->acid_ml, liquor->crystals_g, lesser->acid_ml, lesser->crystals_g, sheet->sketch->bath.acid_percent);
}

static void
add_stocks (GString *data, const SwSheet *sheet)
{
  for (gsize i = 0; i < sheet->n_dyes; i++)
    {
      const SwSheetDye *row = &sheet->dyes[i];
      const SwDye *dye = sheet->sketch->dyes->pdata[row->dye];

      if (row->stock_ml.exact > 0.0)
        add_line (data, &(const Line){ .what = "stock", .id = dye->id, .form = "stock", .numbers = two_numbers (row->weigh_g.rounded, row->stock_ml.rounded), .dye = dye->name });
    }
}

static void
add_step (GString *data, const SwSheet *sheet, gsize index, const SwSheetPour *pour)
{
  const SwStep *step = sheet->sketch->steps->pdata[index];
  const SwSheetStep *row = &sheet->steps[index];
  const SwDye *dye = sw_sketch_find_dye (sheet->sketch, step->dye);
  Line line = { .what = "step", .id = step->id, .kind = sw_step_kind_name (step->kind), .form = "none", .name = step->name, .dye = pour != NULL && dye != NULL ? dye->name : NULL };

  if (step->kind == SW_STEP_ACID)
    {
      add_acid (data, sheet, line, row->added_ml, row->crystals_g, row->lesser_added_ml, row->lesser_crystals_g, step->acid_percent);
      return;
    }
  if (pour != NULL)
    {
      line.form = pour->dry ? "g" : "ml";
      line.numbers = pour->dry ? for_pans (sheet, pour->dye_g, pour->lesser_dye_g) : for_pans (sheet, pour->stock_ml, pour->lesser_stock_ml);
    }
  else if (step->kind == SW_STEP_WATER)
    {
      line.form = "ml";
      line.numbers = for_pans (sheet, row->added_ml, row->lesser_added_ml);
    }
  else if (step->kind == SW_STEP_REST || step->kind == SW_STEP_SET)
    {
      line.form = "wait";
      line.numbers = two_numbers (step->minutes, step->temperature_c);
    }
  add_line (data, &line);
}

char *
sw_recipe_data (const SwSheet *sheet)
{
  GString *data;
  gsize pour = 0;

  g_return_val_if_fail (sheet != NULL, NULL);

  data = g_string_new (NULL);
  add_bath (data, sheet);
  add_stocks (data, sheet);
  for (gsize i = 0; i < sheet->n_steps; i++)
    add_step (data, sheet, i, sw_step_is_pour (sheet->sketch->steps->pdata[i]) ? &sheet->pours[pour++] : NULL);
  return g_string_free (data, FALSE);
}

GPtrArray *
sw_recipe_read (const char *data)
{
  GPtrArray *read = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  g_auto (GStrv) lines = g_strsplit (data, "\n", -1);

  for (gsize i = 0; lines[i] != NULL; i++)
    {
      char **fields = g_strsplit (lines[i], "\t", -1);

      if (g_strv_length (fields) == SW_RECIPE_FIELDS)
        g_ptr_array_add (read, fields);
      else
        g_strfreev (fields);
    }
  return read;
}

char **
sw_recipe_find (const GPtrArray *lines, char *const *line)
{
  for (guint i = 0; i < lines->len; i++)
    {
      char **other = lines->pdata[i];

      if (g_str_equal (other[SW_RECIPE_WHAT], line[SW_RECIPE_WHAT]) && g_str_equal (other[SW_RECIPE_ID], line[SW_RECIPE_ID]))
        return other;
    }
  return NULL;
}

gint64
sw_recipe_count (const char *data, const char *what)
{
  g_autoptr (GPtrArray) lines = sw_recipe_read (data);

  for (guint i = 0; i < lines->len; i++)
    {
      char *const *line = lines->pdata[i];

      if (g_str_equal (line[SW_RECIPE_WHAT], what))
        return g_ascii_strtoll (line[SW_RECIPE_NUMBERS], NULL, 10);
    }
  return 0;
}
