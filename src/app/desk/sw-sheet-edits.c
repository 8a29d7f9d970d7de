/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-sheet-edits.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* A jug shows no less. */
#define WATER_STEP_ML 10.0

static gboolean
set_bath (SwDocument *document, const char *name, double number, const char *edit_name, GError **error)
{
  const SwMember *member = sw_record_find_member (SW_RECORD_BATH, name);
  SwValue value = sw_value_number (CLAMP (number, member->min, member->max));

  return sw_document_edit (document, sw_edit_set (SW_RECORD_BATH, 0, name, &value), edit_name, error);
}

gboolean
sw_sheet_use_acid (SwDocument *document, const SwSheet *sheet, GError **error)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (document) && sheet != NULL, FALSE);

  /* Translators: an edit, shown beside Undo: the acid that gives the wanted pH is put into the bath */
  return set_bath (document, "acid_ml", sheet->liquor.target_acid_ml, _ ("Use Acid for the pH"), error);
}

double
sw_sheet_wanted_water (const SwSheet *sheet)
{
  double wanted = sheet->liquor.ratio_water_ml > 0 ? sheet->liquor.ratio_water_ml : sheet->liquor.cover_ml;

  return ceil (wanted / WATER_STEP_ML - 1e-9) * WATER_STEP_ML;
}

gboolean
sw_sheet_use_water (SwDocument *document, const SwSheet *sheet, GError **error)
{
  g_return_val_if_fail (SW_IS_DOCUMENT (document) && sheet != NULL, FALSE);

  return set_bath (document, "water_ml", sw_sheet_wanted_water (sheet),
                   sheet->liquor.ratio_water_ml > 0
                       /* Translators: an edit, shown beside Undo: the water for the wanted liquor ratio */
                       ? _ ("Use Water for the Ratio")
                       /* Translators: an edit, shown beside Undo: as much water as covers the skeins */
                       : _ ("Just Cover the Skeins"),
                   error);
}
