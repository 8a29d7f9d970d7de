/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sw-app-test.h"

#include "app/desk/sw-batch-edits.h"
#include "app/desk/sw-field.h"
#include "sheet/sw-cost.h"

#include <string.h>

/* The memory of dyeings: noted from the sheet as it is, each a step that can be taken back. */

static const SwBatch *
batch (SwDocument *document, guint i)
{
  return sw_document_get_sketch (document)->batches->pdata[i];
}

static guint
note (SwDocument *document, const char *log, const char *date)
{
  g_autoptr (SwSheet) sheet = sw_sheet_new (sw_document_get_sketch (document), NULL);
  GError *error = NULL;
  guint id = 0;

  g_assert_true (sw_batch_note (document, sheet, log, date, &id, &error));
  g_assert_no_error (error);
  g_assert_nonnull (sw_sketch_find_batch (sw_document_get_sketch (document), id));
  return id;
}

static void
test_note (void)
{
  guint ids[5];
  SwDocument *document = sw_test_document (ids);
  g_autoptr (SwSheet) sheet = NULL;
  SwCost cost;

  sw_test_edit (document, sw_test_set_number (SW_RECORD_SHEET, 0, "yarn_price", 9.5), "Price");
  note (document, "2026-03-04 10:00 begun", "2026-03-04");
  sheet = sw_sheet_new (sw_document_get_sketch (document), NULL);
  sw_cost_of (sheet, &cost);
  g_assert_cmpstr (batch (document, 0)->date, ==, "2026-03-04");
  g_assert_cmpstr (batch (document, 0)->log, ==, "2026-03-04 10:00 begun");
  g_assert_cmpint (batch (document, 0)->skeins, ==, (gint64) sheet->skeins);
  g_assert_cmpfloat (batch (document, 0)->cost, ==, cost.total);
  g_assert_cmpfloat (cost.total, >, 0);
  g_assert_cmpuint (strlen (batch (document, 0)->recipe), >, 40);
  /* The first one differs from nothing. */
  g_assert_cmpstr (batch (document, 0)->changes, ==, "");

  /* The next one only in what was changed since. */
  note (document, NULL, "2026-06-04");
  g_assert_cmpstr (batch (document, 1)->changes, ==, "");
  sw_test_edit (document, sw_test_set_number (SW_RECORD_STEP, ids[2], "amount_ml", 17), "More");
  note (document, NULL, "2026-09-04");
  g_assert_nonnull (strstr (batch (document, 2)->changes, "17"));
  g_assert_cmpstr (batch (document, 2)->log, ==, "");

  g_assert_cmpstr (sw_document_get_undo_name (document), ==, "Note a Batch");
  g_assert_true (sw_document_undo (document, NULL));
  g_assert_cmpuint (sw_document_get_sketch (document)->batches->len, ==, 2);
  sw_test_finalize (document);
}

static void
test_delete (void)
{
  guint ids[5], first, second;
  SwDocument *document = sw_test_document (ids);
  GError *error = NULL;

  first = note (document, NULL, "2026-03-04");
  second = note (document, NULL, "2026-03-05");
  g_assert_true (sw_batch_delete (document, first, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (batch (document, 0)->id, ==, second);
  g_assert_true (sw_document_undo (document, NULL));
  g_assert_cmpuint (batch (document, 0)->id, ==, first);
  g_assert_cmpuint (batch (document, 1)->id, ==, second);
  g_assert_false (sw_batch_delete (document, 9999, &error));
  g_assert_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_TARGET);
  g_clear_error (&error);
  sw_test_finalize (document);
}

static void
test_photos (void)
{
  static const char *const two[] = { "file:///studio/one.jpg", "file:///studio/two.jpg", NULL };
  static const char *const again[] = { "file:///studio/two.jpg", "file:///studio/three.jpg", NULL };
  guint ids[5], id;
  SwDocument *document = sw_test_document (ids);
  GError *error = NULL;

  id = note (document, NULL, "2026-03-04");
  g_assert_true (sw_batch_add_photos (document, id, two, &error));
  g_assert_true (sw_batch_add_photos (document, id, again, &error));
  g_assert_cmpstr (batch (document, 0)->photos, ==, "file:///studio/one.jpg\nfile:///studio/two.jpg\nfile:///studio/three.jpg");
  g_assert_true (sw_batch_remove_photo (document, id, two[1], &error));
  g_assert_cmpstr (batch (document, 0)->photos, ==, "file:///studio/one.jpg\nfile:///studio/three.jpg");
  g_assert_true (sw_document_undo (document, NULL));
  g_assert_nonnull (strstr (batch (document, 0)->photos, "two.jpg"));
  g_assert_no_error (error);
  sw_test_finalize (document);
}

static void
test_start_from (void)
{
  guint ids[5], id;
  SwDocument *document = sw_test_document (ids);
  SwValue five = sw_value_whole (5), none = sw_value_whole (0);
  GError *error = NULL;

  sw_test_edit (document, sw_edit_set (SW_RECORD_SHEET, 0, "skeins", &five), "Five");
  id = note (document, NULL, "2026-03-04");
  sw_test_edit (document, sw_edit_set (SW_RECORD_SHEET, 0, "skeins", &none), "None");
  g_assert_true (sw_batch_start_from (document, id, &error));
  g_assert_no_error (error);
  g_assert_cmpint (sw_document_get_sketch (document)->sheet.skeins, ==, 5);
  sw_test_finalize (document);
}

/* A log longer than the file takes loses its end, not its sense: no half character. */
static void
test_long_log (void)
{
  guint ids[5];
  SwDocument *document = sw_test_document (ids);
  const SwMember *member = sw_record_find_member (SW_RECORD_BATCH, "log");
  g_autoptr (GString) log = g_string_new ("x");

  while ((double) log->len < member->max + 10)
    g_string_append (log, "ö");
  note (document, log->str, "2026-03-04");
  g_assert_cmpuint (strlen (batch (document, 0)->log), <=, (gsize) member->max);
  g_assert_cmpuint (strlen (batch (document, 0)->log), >, (gsize) member->max - 3);
  g_assert_true (g_utf8_validate (batch (document, 0)->log, -1, NULL));
  sw_test_finalize (document);
}

/* A price in a field is what was typed, to the coin. */
static void
test_prices (void)
{
  static const struct
  {
    double price;
    const char *text;
  } rows[] = { { 24.95, "24.95" }, { 0.085, "0.085" }, { 1200, "1200" }, { 12.5, "12.5" }, { 0, "0" }, { 199.99, "199.99" } };
  const SwMember *member = sw_record_find_member (SW_RECORD_SHEET, "yarn_price");

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      SwValue value = sw_value_number (rows[i].price), parsed;
      g_autofree char *text = sw_field_text (member, &value, SW_SYSTEM_METRIC);
      GError *error = NULL;

      g_assert_cmpstr (text, ==, rows[i].text);
      g_assert_true (sw_field_parse (member, text, &value, SW_SYSTEM_METRIC, &parsed, &error));
      g_assert_no_error (error);
      g_assert_cmpfloat (parsed.as.number, ==, rows[i].price);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/batches/note", test_note);
  g_test_add_func ("/batches/delete", test_delete);
  g_test_add_func ("/batches/photos", test_photos);
  g_test_add_func ("/batches/start-from", test_start_from);
  g_test_add_func ("/batches/long-log", test_long_log);
  g_test_add_func ("/batches/prices", test_prices);
  return g_test_run ();
}
