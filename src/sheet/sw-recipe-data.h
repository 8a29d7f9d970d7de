/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sheet/sw-sheet.h"

G_BEGIN_DECLS

/*
 * A recipe as data, in no language: a line for each amount, of fields between
 * tabs: what, id, kind, form, numbers, name, dye. Numbers are as in files
 * (never by locale), with a space between them; "30/15" is for a full pan and
 * one that holds a skein less.
 */

typedef enum
{
  SW_RECIPE_WHAT,    /* "skeins", "pans", "yarn_g", "water", "acid", "stock" or "step" */
  SW_RECIPE_ID,      /* of the dye or step; 0 */
  SW_RECIPE_KIND,    /* of the step; "" */
  SW_RECIPE_FORM,    /* of the numbers: "count", "ml", "g", "crystals", "acid", "stock", "wait" or "none" */
  SW_RECIPE_NUMBERS, /* mL, g, per cent, min, degrees Celsius */
  SW_RECIPE_NAME,    /* of the step, as the dyer gave it; "" */
  SW_RECIPE_DYE,     /* its name; "" */
  SW_RECIPE_FIELDS,
} SwRecipeField;

/* Returns: (transfer full) */
char *sw_recipe_data (const SwSheet *sheet) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_recipe_read:
 * Returns: (transfer full): of GStrv, each of SW_RECIPE_FIELDS fields; lines of any other shape are passed over
 */
GPtrArray *sw_recipe_read (const char *data) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer none) (nullable): the line about the same thing */
char **sw_recipe_find (const GPtrArray *lines, char *const *line);

/* A whole number that the recipe has by that name, "skeins" or "pans"; 0 if it has none. */
gint64 sw_recipe_count (const char *data, const char *what);

G_END_DECLS
