/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/desk/sw-dye-edits.h"
#include "colour/sw-sample-forms.h"

#include "bath/sw-strike.h"
#include "tests/sw-test-sketch.h"

#include <string.h>

/* The dye pots: new, copied and deleted ones, how their colour is given, and whether the bath suits them. */

static void
apply (SwSketch *sketch, SwEdit *edit)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwEdit) inverse = NULL;

  g_assert_nonnull (edit);
  inverse = sw_edit_apply (edit, sketch, NULL, &error);
  g_assert_no_error (error);
  sw_edit_free (edit);
}

/* As many as there may be, and none like another while the colours last. */
static void
test_new (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  g_autoptr (GHashTable) codes = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < SW_MAX_DYES; i++)
    {
      const SwDye *dye;
      guint id;

      apply (sketch, sw_dye_edits_new (sketch, &id));
      dye = sw_sketch_find_dye (sketch, id);
      g_assert_nonnull (dye);
      g_assert_cmpstr (dye->name, !=, "");
      g_hash_table_add (codes, sw_sample_code (&dye->sample));
    }
  g_assert_cmpuint (g_hash_table_size (codes), ==, 10);
}

static void
test_duplicate (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  const SwDye *first = sketch->dyes->pdata[0];
  const SwDye *copy;
  guint id;

  apply (sketch, sw_dye_edits_duplicate (sketch, first->id, &id));
  copy = sketch->dyes->pdata[1];
  g_assert_cmpuint (copy->id, ==, id);
  g_assert_cmpuint (id, !=, first->id);
  g_assert_cmpstr (copy->name, ==, "Red, copy");
  g_assert_true (sw_sample_equal (&copy->sample, &first->sample));
  g_assert_null (sw_dye_edits_duplicate (sketch, 4711, &id));
}

/* What stands in the way of deleting a dye is named, and the edit takes it along. */
static void
test_delete (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  SwDye *ink = test_add_dye (sketch, "Ink", 30, 40, 90);
  SwDye *rust = test_add_dye (sketch, "Rust", 160, 80, 40);
  guint ink_id = ink->id, rust_id = rust->id;
  g_autofree char *none = sw_dye_pours_sentence (sketch, rust_id);
  g_autofree char *one = NULL;
  g_autofree char *two = NULL;
  g_autofree char *many = NULL;
  SwStep *canal;

  g_assert_null (none);
  test_add_band (sketch, rust, 5, 4, 5, 0.5);
  one = sw_dye_pours_sentence (sketch, rust_id);
  g_assert_cmpstr (one, ==, "1 pour uses it: 1 Band of Rust.");
  canal = test_add_band (sketch, ink, 15, 4, 5, 0.5);
  canal->name = (g_free (canal->name), g_strdup ("Canal"));
  test_add_step (sketch, SW_STEP_REST);
  test_add_band (sketch, ink, 25, 4, 5, 0.5);
  two = sw_dye_pours_sentence (sketch, ink_id);
  g_assert_cmpstr (two, ==, "2 pours use it: 2 Canal, 3 Band of Ink.");
  for (int i = 0; i < 3; i++)
    test_add_band (sketch, ink, 30, 4, 5, 0.5);
  many = sw_dye_pours_sentence (sketch, ink_id);
  g_assert_cmpstr (many, ==, "5 pours use it: 2 Canal, 3 Band of Ink, 4 Band of Ink, 5 Band of Ink and others.");

  apply (sketch, sw_dye_edits_delete (sketch, ink_id));
  g_assert_null (sw_sketch_find_dye (sketch, ink_id));
  g_assert_cmpuint (sketch->steps->len, ==, 2); /* the rust band and the rest */
  g_assert_true (sw_sketch_validate (sketch, NULL));
}

static void
test_class (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  const SwDye *dye = sketch->dyes->pdata[0];

  for (int dye_class = SW_DYE_CLASS_UNKNOWN; dye_class <= SW_DYE_CLASS_METAL_COMPLEX_2_1; dye_class++)
    {
      apply (sketch, sw_dye_edits_class (dye->id, dye_class));
      g_assert_cmpint (dye->dye_class, ==, dye_class);
      g_assert_cmpfloat (dye->half_time_min, ==, sw_dye_class_facts (dye_class)->half_time_min);
    }
}

/* Broadbent 2001, Basic Principles of Textile Coloration, table 13.1: levelling dyes at pH 2-4, milling dyes at pH 5-7. */
static void
test_window_words (void)
{
  g_autofree char *levelling = sw_dye_window_words (SW_DYE_CLASS_LEVELLING);
  g_autofree char *milling = sw_dye_window_words (SW_DYE_CLASS_MILLING);

  g_assert_cmpstr (levelling, ==, "Usually dyed at pH 2 to 4.");
  g_assert_cmpstr (milling, ==, "Usually dyed at pH 5 to 7.");
  g_assert_null (sw_dye_window_words (SW_DYE_CLASS_UNKNOWN));
}

static SwForecast *
forecast_of (const SwSketch *sketch)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (GError) error = NULL;
  SwForecast *forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);

  g_assert_no_error (error);
  return forecast;
}

/* A bath with vinegar, near pH 3, is right for a levelling dye and too acid for a milling dye; plain water is the reverse. */
static void
test_window_warning (void)
{
  static const struct
  {
    double acid_ml;
    SwDyeClass dye_class;
    const char *warning; /* how it begins; NULL: none */
  } rows[] = {
    { 60, SW_DYE_CLASS_LEVELLING, NULL },
    { 60, SW_DYE_CLASS_MILLING, "The bath is at pH 3" },
    { 60, SW_DYE_CLASS_UNKNOWN, NULL },
    { 0, SW_DYE_CLASS_LEVELLING, "The bath is at pH " },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (SwSketch) sketch = test_sketch (2);
      SwDye *dye = sketch->dyes->pdata[0];
      g_autoptr (SwForecast) forecast = NULL;
      g_autofree char *warning = NULL;

      sketch->bath.acid_ml = rows[i].acid_ml;
      dye->dye_class = rows[i].dye_class;
      forecast = forecast_of (sketch);
      warning = sw_dye_window_warning (forecast, dye->id);
      if (rows[i].warning == NULL)
        g_assert_null (warning);
      else
        {
          g_assert_nonnull (warning);
          g_test_message ("%s", warning);
          g_assert_true (g_str_has_prefix (warning, rows[i].warning));
          g_assert_true (strstr (warning, rows[i].acid_ml > 0 ? "more acid" : "less acid") != NULL);
        }
    }
}

/* A dye that is not poured is not in any bath, and no forecast is no warning. */
static void
test_window_not_poured (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  SwDye *spare = test_add_dye (sketch, "Spare", 90, 90, 90);
  g_autoptr (SwForecast) forecast = NULL;

  spare->dye_class = SW_DYE_CLASS_SUPER_MILLING;
  forecast = forecast_of (sketch);
  g_assert_null (sw_dye_window_warning (forecast, spare->id));
  g_assert_null (sw_dye_window_warning (NULL, spare->id));
}

static void
test_codes (void)
{
  static const struct
  {
    const char *text;
    double rgb[3];
    const char *shown;
  } rows[] = {
    { "#b2305c", { 178, 48, 92 }, "#b2305c" },
    { "B2305C", { 178, 48, 92 }, "#b2305c" },
    { " #fff ", { 255, 255, 255 }, "#ffffff" },
    { "0a3", { 0, 170, 51 }, "#00aa33" },
  };
  const char *const refused[] = { "", "#12345", "#12345g", "teal", "#1234567" };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *shown = NULL;
      SwSample sample;

      g_assert_true (sw_sample_from_code (rows[i].text, &sample, &error));
      g_assert_no_error (error);
      g_assert_cmpint (sample.kind, ==, SW_SAMPLE_SRGB);
      g_assert_cmpmem (sample.numbers, sizeof rows[i].rgb, rows[i].rgb, sizeof rows[i].rgb);
      shown = sw_sample_code (&sample);
      g_assert_cmpstr (shown, ==, rows[i].shown);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (GError) error = NULL;
      SwSample sample;

      g_assert_false (sw_sample_from_code (refused[i], &sample, &error));
      g_assert_error (error, SW_COLOUR_ERROR, SW_COLOUR_ERROR_TEXT);
    }
}

/* CIELAB of sRGB's red: L* 53.24, a* 80.09, b* 67.20 (the published primaries of IEC 61966-2-1 under D65). */
static void
test_lab (void)
{
  SwSample red = sw_sample_from_srgb ((SwSrgb){ 1, 0, 0 }), back;
  SwLab lab = sw_sample_lab (&red);
  g_autofree char *code = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpfloat_with_epsilon (lab.l, 53.24, 0.05);
  g_assert_cmpfloat_with_epsilon (lab.a, 80.09, 0.1);
  g_assert_cmpfloat_with_epsilon (lab.b, 67.20, 0.1);
  g_assert_true (sw_sample_from_lab ((SwLab){ 40, 30, -20 }, &back, &error));
  g_assert_no_error (error);
  g_assert_cmpint (back.kind, ==, SW_SAMPLE_LAB);
  lab = sw_sample_lab (&back);
  g_assert_cmpfloat (lab.l, ==, 40);

  g_assert_false (sw_sample_from_lab ((SwLab){ 95, 90, 90 }, &back, &error));
  g_assert_error (error, SW_COLOUR_ERROR, SW_COLOUR_ERROR_UNREACHABLE);
}

/* A spectrum is kept as it was measured. */
static void
test_spectrum (void)
{
  SwSample sample, none;
  SwLab lab;
  g_autoptr (GError) error = NULL;

  g_assert_true (sw_sample_from_spectrum ("nm,reflectance\n380,0.5\n730,0.5\n", &sample, &error));
  g_assert_no_error (error);
  g_assert_cmpint (sample.kind, ==, SW_SAMPLE_REFLECTANCE);
  for (int i = 0; i < SW_BANDS; i++)
    g_assert_cmpfloat (sample.numbers[i], ==, 0.5);
  /* An even half reflects as a grey of Y = 50: L* 76.07 by CIE 15. */
  lab = sw_sample_lab (&sample);
  g_assert_cmpfloat_with_epsilon (lab.l, 76.07, 0.01);
  g_assert_cmpfloat_with_epsilon (lab.a, 0, 1e-9);

  /* Brighter than white: held, so that the sketch takes it. */
  g_assert_true (sw_sample_from_spectrum ("400 1.1\n700 1.1\n", &sample, &error));
  g_assert_cmpfloat (sample.numbers[0], ==, 1);
  g_assert_false (sw_sample_from_spectrum ("nothing here", &none, &error));
  g_assert_error (error, SW_COLOUR_ERROR, SW_COLOUR_ERROR_TEXT);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/app/dye-pots/new", test_new);
  g_test_add_func ("/app/dye-pots/duplicate", test_duplicate);
  g_test_add_func ("/app/dye-pots/delete", test_delete);
  g_test_add_func ("/app/dye-pots/class", test_class);
  g_test_add_func ("/app/dye-pots/window-words", test_window_words);
  g_test_add_func ("/app/dye-pots/window-warning", test_window_warning);
  g_test_add_func ("/app/dye-pots/window-not-poured", test_window_not_poured);
  g_test_add_func ("/app/dye-pots/codes", test_codes);
  g_test_add_func ("/app/dye-pots/lab", test_lab);
  g_test_add_func ("/app/dye-pots/spectrum", test_spectrum);
  return g_test_run ();
}
