/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sw-app-test.h"

#include "app/desk/sw-cloth-edit.h"
#include "app/desk/sw-cloth-gauges.h"
#include "app/desk/sw-cloth-scan.h"
#include "cloth/sw-usual-widths.h"
#include "app/desk/sw-cloth-words.h"
#include "app/desk/sw-templates.h"

#include <math.h>
#include <string.h>

static SwForecast *
demo_forecast (void)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (SwSketch) sketch = sw_template_demo (&error);
  SwForecast *forecast;

  g_assert_no_error (error);
  forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);
  g_assert_no_error (error);
  return forecast;
}

/* Each class starts within its published range, and is found again from there. */
static void
test_gauges (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "reference", "yarn_weights.csv", NULL);
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  gsize n = 0;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  lines = g_strsplit (g_strstrip (text), "\n", -1);
  for (char **line = lines + 1; *line != NULL; line++, n++)
    {
      g_auto (GStrv) cells = g_strsplit (*line, ",", -1);
      const SwGaugeClass *class = &sw_gauge_classes[n];

      g_assert_cmpuint (n, <, SW_N_GAUGE_CLASSES);
      g_assert_cmpfloat (class->least, ==, g_ascii_strtod (cells[2], NULL));
      g_assert_cmpfloat (class->most, ==, g_ascii_strtod (cells[3], NULL));
      g_assert_cmpfloat (class->stitches_per_10cm * 1.016, >=, class->least);
      g_assert_cmpfloat (class->stitches_per_10cm * 1.016, <=, class->most);
      g_assert_cmpint (sw_gauge_class_of (class->stitches_per_10cm), ==, (int) n);
    }
  g_assert_cmpuint (n, ==, SW_N_GAUGE_CLASSES);
  g_assert_cmpint (sw_gauge_class_of (60), ==, -1);
}

static void
test_gauge_edit (void)
{
  guint ids[5];
  SwDocument *document = sw_test_document (ids);
  const SwClothSettings *cloth;

  sw_test_edit (document, sw_test_set_number (SW_RECORD_CLOTH, 0, "stitch_length_cm", 1.1), "measure");
  sw_test_edit (document, sw_gauge_class_edit (3), "weight");
  cloth = &sw_document_get_sketch (document)->cloth;
  g_assert_cmpfloat (cloth->stitches_per_10cm, ==, sw_gauge_classes[3].stitches_per_10cm);
  g_assert_cmpfloat (cloth->stitch_length_cm, ==, 0);
  g_assert_true (sw_document_undo (document, NULL));
  g_assert_cmpfloat (sw_document_get_sketch (document)->cloth.stitch_length_cm, ==, 1.1);
  sw_test_finalize (document);
}

/* The widths that sock and hat patterns are written in (common practice, no source). */
static void
test_usual_widths (void)
{
  const gsize sock[] = { 56, 60, 64, 72 };
  SwUsualWidths usual[SW_N_USUAL];

  for (gsize i = 0; i < G_N_ELEMENTS (sock); i++)
    g_assert_cmpstr (sw_usual_piece (30, SW_WORKED_ROUND, sock[i]), ==, "sock");
  g_assert_null (sw_usual_piece (30, SW_WORKED_ROUND, 66));
  g_assert_null (sw_usual_piece (30, SW_WORKED_FLAT, 64));
  g_assert_cmpstr (sw_usual_piece (20, SW_WORKED_ROUND, 80), ==, "hat");
  g_assert_cmpstr (sw_usual_piece (20, SW_WORKED_ROUND, 96), ==, "hat");
  g_assert_cmpstr (sw_usual_piece (20, SW_WORKED_ROUND, 112), ==, "hat");

  for (double gauge = 4; gauge <= 60; gauge += 1)
    {
      sw_usual_widths (gauge, usual);
      for (gsize i = 0; i < SW_N_USUAL; i++)
        for (gsize j = 1; j < usual[i].n; j++)
          g_assert_cmpuint (usual[i].widths[j], >, usual[i].widths[j - 1]);
    }
}

/* From peak to peak and back; every stop is higher than what stands beside it. */
static void
test_peaks (void)
{
  g_autoptr (SwForecast) forecast = demo_forecast ();
  SwClothScan scan = { 0 };
  gsize width = 20, n = 0, next;

  sw_cloth_scan_of (&scan, forecast, 20, 320);
  g_assert_cmpuint (sw_cloth_scan_at (&scan, 64)->width, ==, 64);
  g_assert_cmpuint (sw_cloth_scan_at (&scan, 5)->width, ==, 20);
  g_assert_cmpuint (sw_cloth_scan_at (&scan, 5000)->width, ==, 320);
  g_assert_cmpfloat (sw_cloth_scan_at (&scan, forecast->layout.width)->stack, ==, forecast->pooling.stack);

  while ((next = sw_cloth_scan_next_peak (&scan, width, 1)) != width)
    {
      const double stack = sw_cloth_scan_at (&scan, next)->stack;

      g_assert_cmpuint (next, >, width);
      g_assert_cmpfloat (stack, >=, sw_cloth_scan_at (&scan, next - 1)->stack);
      g_assert_cmpfloat (stack, >=, sw_cloth_scan_at (&scan, next + 1)->stack);
      if (n++ > 0)
        g_assert_cmpuint (sw_cloth_scan_next_peak (&scan, next, -1), ==, width);
      width = next;
    }
  g_assert_cmpuint (n, >, 2);
  sw_cloth_scan_clear (&scan);
}

/* Whichever control turns it, a change of width is one named step; the limits hold. */
static void
test_width (void)
{
  guint ids[5];
  SwDocument *document = sw_test_document (ids);
  const gint64 before = sw_document_get_sketch (document)->cloth.width_stitches;

  for (int i = 1; i <= 5; i++)
    g_assert_true (sw_cloth_set_width (document, (double) before + i, NULL));
  g_assert_cmpint (sw_document_get_sketch (document)->cloth.width_stitches, ==, before + 5);
  g_assert_true (sw_document_undo (document, NULL));
  g_assert_cmpint (sw_document_get_sketch (document)->cloth.width_stitches, ==, before);

  g_assert_true (sw_cloth_set_width (document, -40, NULL));
  g_assert_cmpint (sw_document_get_sketch (document)->cloth.width_stitches, ==, 3);
  g_assert_cmpstr (sw_document_get_undo_name (document), ==, sw_cloth_width_step ());
  g_assert_true (sw_document_undo (document, NULL));
  g_assert_cmpstr (sw_document_get_redo_name (document), ==, sw_cloth_width_step ());
  sw_test_finalize (document);
}

static void
test_words (void)
{
  g_autoptr (SwForecast) forecast = demo_forecast ();
  SwPooling pooling = forecast->pooling;
  g_autofree char *metric = sw_cloth_width (forecast, 64, SW_SYSTEM_METRIC);
  g_autofree char *us = sw_cloth_width (forecast, 64, SW_SYSTEM_US);
  g_autofree char *drift = NULL, *plain = NULL, *words = NULL;

  g_assert_true (g_str_has_prefix (metric, "64 stitches, ") && g_str_has_suffix (metric, "cm"));
  g_assert_true (g_str_has_suffix (us, "in"));

  pooling.verdict = SW_VERDICT_DRIFTS;
  pooling.worked = SW_WORKED_ROUND;
  pooling.stitch_step = -2;
  pooling.angle_deg = -33.4;
  pooling.stack = 0.456;
  drift = sw_cloth_drift (&pooling);
  g_assert_nonnull (strstr (drift, "33° to the left"));
  words = sw_cloth_scan_words (&pooling, "sock");
  g_assert_nonnull (strstr (words, "46 %"));
  g_assert_nonnull (strstr (words, "sock"));
  pooling.verdict = SW_VERDICT_SCATTERS;
  plain = sw_cloth_drift (&pooling);
  g_assert_cmpstr (plain, ==, "");

  g_assert_cmpfloat_with_epsilon (sw_cloth_rounded (12.34, 0.1), 12.3, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_cloth_rounded (0.004, 0.01), 0.01, 1e-12);
  g_assert_cmpfloat (sw_cloth_rounded (0, 0.1), ==, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/app/cloth-desk/gauges", test_gauges);
  g_test_add_func ("/app/cloth-desk/gauge-edit", test_gauge_edit);
  g_test_add_func ("/app/cloth-desk/usual-widths", test_usual_widths);
  g_test_add_func ("/app/cloth-desk/peaks", test_peaks);
  g_test_add_func ("/app/cloth-desk/width", test_width);
  g_test_add_func ("/app/cloth-desk/words", test_words);
  return g_test_run ();
}
