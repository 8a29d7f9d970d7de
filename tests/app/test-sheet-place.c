/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sw-app-test.h"

#include "app/desk/sw-sheet-edits.h"
#include "app/desk/sw-sheet-words.h"
#include "app/desk/sw-subject.h"
#include "app/desk/sw-field.h"

#include <string.h>

/* The dye sheet as the window shows it, and what its buttons do to the drawing. */

static SwSheet *
sheet_of (SwDocument *document)
{
  return sw_sheet_new (sw_document_get_sketch (document), NULL);
}

/* The acid advised brings the pH that was asked for, as one step that can be taken back. */
static void
test_use_acid (void)
{
  static const double wanted[] = { 3.5, 4.0, 5.0, 6.0 };
  guint ids[5];
  SwDocument *document = sw_test_document (ids);

  for (gsize i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      const double before = sw_document_get_sketch (document)->bath.acid_ml;
      g_autoptr (SwSheet) sheet = NULL;
      g_autoptr (SwSheet) after = NULL;
      GError *error = NULL;

      sw_test_edit (document, sw_test_set_number (SW_RECORD_SHEET, 0, "target_ph", wanted[i]), "pH");
      sheet = sheet_of (document);
      g_assert_true (sw_sheet_use_acid (document, sheet, &error));
      g_assert_no_error (error);
      after = sheet_of (document);
      g_assert_cmpfloat_with_epsilon (after->liquor.start_ph, wanted[i], 0.01);
      g_assert_cmpstr (sw_document_get_undo_name (document), ==, "Use Acid for the pH");
      g_assert_true (sw_document_undo (document, &error));
      g_assert_cmpfloat (sw_document_get_sketch (document)->bath.acid_ml, ==, before);
      g_assert_true (sw_document_redo (document, &error));
    }
  sw_test_finalize (document);
}

/* A ratio asked for is reached to the step of a jug and never missed from below; without one the skeins are covered. */
static void
test_use_water (void)
{
  static const double wanted[] = { 8, 15, 30, 0 };
  guint ids[5];
  SwDocument *document = sw_test_document (ids);

  for (gsize i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      g_autoptr (SwSheet) sheet = NULL;
      g_autoptr (SwSheet) after = NULL;
      GError *error = NULL;

      sw_test_edit (document, sw_test_set_number (SW_RECORD_SHEET, 0, "liquor_ratio", wanted[i]), "Ratio");
      sheet = sheet_of (document);
      g_assert_true (sw_sheet_use_water (document, sheet, &error));
      g_assert_no_error (error);
      after = sheet_of (document);
      if (wanted[i] > 0)
        {
          g_assert_cmpfloat (after->liquor.ratio, >=, wanted[i] * (1 - 1e-9));
          g_assert_cmpfloat (after->liquor.ratio, <, wanted[i] + 10.0 / after->liquor.fibre_g);
        }
      else
        {
          g_assert_cmpfloat (after->liquor.water_ml.exact, >=, after->liquor.cover_ml * (1 - 1e-9));
          g_assert_cmpfloat (after->liquor.water_ml.exact, <, after->liquor.cover_ml + 10);
        }
    }
  sw_test_finalize (document);
}

static const struct
{
  gint64 skeins, pans;
  double in_pan;
  const char *words;
} spreads[] = {
  { 0, 0, 1, "1 skein, 100 g: 1 pan of 1" },
  { 4, 0, 2, "4 skeins, 400 g: 2 pans of 2" },
  { 5, 0, 2, "5 skeins, 500 g: 2 pans of 2, 1 pan of 1" },
  { 7, 3, 3, "7 skeins, 700 g: 1 pan of 3, 2 pans of 2" },
};

static void
test_spread (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (spreads); i++)
    {
      g_autoptr (SwSketch) sketch = sw_sketch_new ();
      g_autoptr (SwSheet) sheet = NULL;
      g_autofree char *words = NULL;

      sketch->yarn.mass_g = 100;
      sketch->lay.skeins = (gint64) spreads[i].in_pan;
      sketch->sheet.skeins = spreads[i].skeins;
      sketch->sheet.pans = spreads[i].pans;
      sheet = sw_sheet_new (sketch, NULL);
      words = sw_sheet_spread (sheet, SW_SYSTEM_METRIC);
      g_assert_cmpstr (words, ==, spreads[i].words);
    }
}

/* Every remark stands in one place, and in that one only. */
static void
test_remarks (void)
{
  guint ids[5];
  SwDocument *document = sw_test_document (ids);
  g_autoptr (SwSheet) sheet = NULL;
  g_autoptr (GArray) remarks = NULL;
  guint shown = 0;

  sw_test_edit (document, sw_test_set_number (SW_RECORD_STEP, ids[2], "amount_ml", 0.1), "Hardly any");
  sw_test_edit (document, sw_test_set_number (SW_RECORD_LAY, 0, "pan_width_cm", 5), "Narrow");
  sheet = sheet_of (document);
  remarks = sw_sheet_remarks (sheet);
  g_assert_cmpuint (remarks->len, >=, 3);
  for (guint i = 0; i < remarks->len; i++)
    {
      const SwRemark *remark = &g_array_index (remarks, SwRemark, i);
      SwRemarkPlace place = sw_remark_place (remark);
      guint which = place == SW_REMARK_PLACE_STEP ? remark->step : place == SW_REMARK_PLACE_DYE ? (guint) remark->dye
                                                                                                : 0;
      g_autofree char *there = sw_sheet_remarks_at (sheet, remarks, place, which, SW_MEASURE_METRIC);
      g_autofree char *sentence = sw_sheet_remark_text (sheet, remark, SW_MEASURE_METRIC);

      g_assert_nonnull (there);
      g_assert_nonnull (strstr (there, sentence));
      shown++;
    }
  g_assert_cmpuint (shown, ==, remarks->len);
  g_assert_null (sw_sheet_remarks_at (sheet, remarks, SW_REMARK_PLACE_STEP, 9999, SW_MEASURE_METRIC));
  sw_test_finalize (document);
}

/* Fields of the sheet whose 0 is no amount say what it stands for, and take it back when emptied. */
static void
test_fields (void)
{
  static const char *const names[] = { "skeins", "pans", "weigh_step_g", "measure_step_ml", "target_ph", "liquor_ratio" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      const SwMember *member = sw_record_find_member (SW_RECORD_SHEET, names[i]);
      SwValue zero = member->kind == SW_KIND_WHOLE ? sw_value_whole (0) : sw_value_number (0), parsed;
      g_autofree char *text = sw_field_text (member, &zero, SW_SYSTEM_METRIC);
      GError *error = NULL;

      g_assert_cmpstr (text, ==, "");
      g_assert_nonnull (sw_field_zero (member));
      g_assert_true (sw_field_parse (member, "", &zero, SW_SYSTEM_METRIC, &parsed, &error));
      g_assert_no_error (error);
      g_assert_true (sw_value_equal (&parsed, &zero));
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet-place/use-acid", test_use_acid);
  g_test_add_func ("/sheet-place/use-water", test_use_water);
  g_test_add_func ("/sheet-place/spread", test_spread);
  g_test_add_func ("/sheet-place/remarks", test_remarks);
  g_test_add_func ("/sheet-place/fields", test_fields);
  return g_test_run ();
}
