/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/sw-sheet-remarks.h"

#include "sheet/sw-day.h"
#include "tests/bath/bath-checks.h"
#include "tests/sw-test-sketch.h"

/* A dyeing that nothing is to be said of: what each test then spoils. */
static SwSketch *
sound_sketch (void)
{
  SwSketch *sketch = test_sketch (2);

  sketch->bath.water_ml = 900.0;
  sketch->lay.pan_length_cm = 65.0;
  sketch->lay.pan_width_cm = 10.0;
  ((SwDye *) sketch->dyes->pdata[0])->sample = (SwSample){ SW_SAMPLE_SRGB, { 60, 80, 140 } }; /* none much stronger than the other */
  return sketch;
}

/* Dye left in each step, as shares of what the pan got: only the end counts here. */
static SwSheet *
sheet_of (const SwSketch *sketch, double left_share)
{
  gsize n = sketch->steps->len * sketch->dyes->len;
  g_autofree double *left = g_new0 (double, n);
  g_autofree SwBathState *states = g_new (SwBathState, sketch->steps->len + 1);

  sw_schedule_run (sketch, states);
  for (guint i = 0; i < sketch->steps->len; i++)
    {
      const SwStep *step = sketch->steps->pdata[i];

      for (guint dye = 0; dye < sketch->dyes->len; dye++)
        if (sw_step_is_pour (step) && ((SwDye *) sketch->dyes->pdata[dye])->id == step->dye)
          left[n - sketch->dyes->len + dye] += left_share * sw_schedule_pour_grams (sketch, step);
    }
  return sw_sheet_new (sketch, &(const SwSheetBath){ states, left });
}

static const SwRemark *
find (const GArray *remarks, SwRemarkKind kind)
{
  for (guint i = 0; i < remarks->len; i++)
    if (g_array_index (remarks, SwRemark, i).kind == kind)
      return &g_array_index (remarks, SwRemark, i);
  return NULL;
}

/* Makes the one remark, with a sentence that says @words; and takes it back when the sketch is sound. */
static SwRemark
assert_remark (const SwSketch *sketch, double left_share, SwRemarkKind kind, const char *words)
{
  g_autoptr (SwSheet) sheet = sheet_of (sketch, left_share);
  g_autoptr (GArray) remarks = sw_sheet_remarks (sheet);
  const SwRemark *remark = find (remarks, kind);
  g_autofree char *text = NULL;

  g_assert_nonnull (remark);
  text = sw_sheet_remark_text (sheet, remark, SW_MEASURE_METRIC);
  g_test_message ("%s", text);
  g_assert_nonnull (strstr (text, words));
  return *remark;
}

static void
assert_no_remark (const SwSketch *sketch, double left_share, SwRemarkKind kind)
{
  g_autoptr (SwSheet) sheet = sheet_of (sketch, left_share);
  g_autoptr (GArray) remarks = sw_sheet_remarks (sheet);

  g_assert_null (find (remarks, kind));
}

static void
test_sound (void)
{
  g_autoptr (SwSketch) sketch = sound_sketch ();
  g_autoptr (SwSheet) sheet = sheet_of (sketch, 0.0);
  g_autoptr (GArray) remarks = sw_sheet_remarks (sheet);

  for (guint i = 0; i < remarks->len; i++)
    {
      g_autofree char *text = sw_sheet_remark_text (sheet, &g_array_index (remarks, SwRemark, i), SW_MEASURE_METRIC);

      g_test_message ("%s", text);
    }
  g_assert_cmpuint (remarks->len, ==, 0);
}

/* Wool takes 6 % at most (common practice): 0.7 g is in the sketch, and 30 mL of 20 % stock are 6 g more. */
static void
test_depth (void)
{
  g_autoptr (SwSketch) sketch = sound_sketch ();
  SwRemark remark;

  ((SwDye *) sketch->dyes->pdata[0])->stock_percent = 20.0;
  remark = assert_remark (sketch, 0.0, SW_REMARK_DEPTH, "depth of 9.25 %");
  assert_near (remark.is, 45.0 * 0.2 + 0.25, 1e-9);
  assert_near (remark.limit, 6.0, 1e-9);
}

/* A slow dye and a minute of rest before the flip; a half-time of rest is enough. */
static void
test_short_rest (void)
{
  g_autoptr (SwSketch) sketch = sound_sketch ();
  SwStep *rest = sketch->steps->pdata[2];
  SwRemark remark;

  ((SwDye *) sketch->dyes->pdata[0])->half_time_min = 0.2;
  ((SwDye *) sketch->dyes->pdata[1])->half_time_min = 8.0;
  rest->minutes = 1.0;
  remark = assert_remark (sketch, 0.0, SW_REMARK_SHORT_REST, "Band of Blue");
  g_assert_cmpuint (remark.step, ==, ((SwStep *) sketch->steps->pdata[1])->id);
  g_assert_cmpfloat (remark.is, <, 20.0);

  rest->minutes = 30.0;
  assert_no_remark (sketch, 0.0, SW_REMARK_SHORT_REST);
}

/* Pours made in one go count as one, and what nothing follows has all the time of the set. */
static void
test_one_go (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  SwDye *red = test_add_dye (sketch, "Red", 178, 60, 52);

  red->half_time_min = 8.0;
  test_add_band (sketch, red, 10.0, 5.0, 20.0, 0.9);
  test_add_band (sketch, red, 20.0, 5.0, 20.0, 0.9);
  test_add_step (sketch, SW_STEP_SET)->minutes = 30.0;
  assert_no_remark (sketch, 0.0, SW_REMARK_SHORT_REST);
  test_add_step (sketch, SW_STEP_FLIP);
  assert_no_remark (sketch, 0.0, SW_REMARK_SHORT_REST);
}

static void
test_swamped (void)
{
  g_autoptr (SwSketch) sketch = sound_sketch ();
  SwRemark remark;

  ((SwDye *) sketch->dyes->pdata[0])->sample = (SwSample){ SW_SAMPLE_SRGB, { 250, 220, 190 } };
  ((SwDye *) sketch->dyes->pdata[1])->sample = (SwSample){ SW_SAMPLE_SRGB, { 25, 20, 35 } };
  remark = assert_remark (sketch, 0.0, SW_REMARK_SWAMPED, "swamps Red");
  g_assert_cmpint (remark.dye, ==, 1);
  g_assert_cmpint (remark.other_dye, ==, 0);
  g_assert_cmpfloat (remark.is, >, 90.0);
  assert_near (remark.limit, 100.0 * 25.0 / 70.0, 1e-6); /* by weight it is the lesser */

  /* A strong dye in traces swamps nothing. */
  ((SwStep *) sketch->steps->pdata[1])->amount_ml = 0.01;
  assert_no_remark (sketch, 0.0, SW_REMARK_SWAMPED);
}

static void
test_pan (void)
{
  g_autoptr (SwSketch) sketch = sound_sketch ();
  g_autoptr (SwSheet) sheet = NULL;
  g_autofree char *inches = NULL;
  SwRemark remark;

  sketch->lay.pan_length_cm = 50.0;
  remark = assert_remark (sketch, 0.0, SW_REMARK_PAN_SMALL, "lies 60 cm by 8 cm, and the pan is 50 cm by");
  assert_near (remark.is, 60.0, 1e-9);
  sheet = sheet_of (sketch, 0.0);
  inches = sw_sheet_remark_text (sheet, &remark, SW_MEASURE_US);
  g_assert_nonnull (strstr (inches, "lies 23.62 in by 3.15 in, and the pan is 19.69 in by"));
  g_assert_null (strstr (inches, " cm"));
  sketch->lay.pan_length_cm = 65.0;
  assert_no_remark (sketch, 0.0, SW_REMARK_PAN_SMALL);

  /* The batch's fullest pan counts, not the drawing's. */
  sketch->sheet.skeins = 2;
  sketch->sheet.pans = 1;
  remark = assert_remark (sketch, 0.0, SW_REMARK_PAN_SMALL, "lies 60 cm by 16 cm");
  assert_near (remark.is, 16.0, 1e-9);
}

static void
test_liquor (void)
{
  g_autoptr (SwSketch) sketch = sound_sketch ();

  sketch->bath.water_ml = 3000.0;
  assert_remark (sketch, 0.0, SW_REMARK_RUNS_OVER, "run over");
  sketch->bath.water_ml = 200.0;
  assert_remark (sketch, 0.0, SW_REMARK_NOT_COVERED, "would cover them");
}

static void
test_left (void)
{
  g_autoptr (SwSketch) sketch = sound_sketch ();

  assert_remark (sketch, 0.2, SW_REMARK_LEFT, "20 % of");
  assert_no_remark (sketch, 0.02, SW_REMARK_LEFT);
}

/* A milling dye (pH 5 to 7, Broadbent 2001) in a bath of vinegar; a levelling one (2 to 4) is at home there. */
static void
test_ph_window (void)
{
  g_autoptr (SwSketch) sketch = sound_sketch ();
  SwDye *dye = sketch->dyes->pdata[0];
  SwRemark remark;

  dye->dye_class = SW_DYE_CLASS_MILLING;
  remark = assert_remark (sketch, 0.0, SW_REMARK_PH_WINDOW, "pH 5 or more");
  assert_near (remark.limit, 5.0, 1e-9);
  dye->dye_class = SW_DYE_CLASS_LEVELLING;
  assert_no_remark (sketch, 0.0, SW_REMARK_PH_WINDOW);

  sketch->bath.acid_ml = 0.0;
  sketch->bath.keep_carbonate = TRUE;
  assert_remark (sketch, 0.0, SW_REMARK_PH_WINDOW, "pH 4 or less");
}

/* Acid that finishes the dyeing is no fault. */
static void
test_acid_later (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  SwDye *dye = test_add_dye (sketch, "Milling", 178, 60, 52);

  dye->dye_class = SW_DYE_CLASS_MILLING;
  sketch->bath.acid_ml = 3.0;
  test_add_band (sketch, dye, 10.0, 5.0, 20.0, 0.9);
  test_add_step (sketch, SW_STEP_REST);
  test_add_step (sketch, SW_STEP_ACID)->volume_ml = 100.0;
  test_add_step (sketch, SW_STEP_SET);
  assert_no_remark (sketch, 0.0, SW_REMARK_PH_WINDOW);
}

static void
test_no_set (void)
{
  g_autoptr (SwSketch) sketch = sound_sketch ();

  g_ptr_array_remove_index (sketch->steps, sketch->steps->len - 1);
  assert_remark (sketch, 0.3, SW_REMARK_NO_SET, "sets the dye");
  assert_no_remark (sketch, 0.01, SW_REMARK_NO_SET); /* hot enough all along */
}

static void
test_rounded_away (void)
{
  g_autoptr (SwSketch) sketch = sound_sketch ();
  SwStep *specks = test_add_speckles (sketch, sketch->dyes->pdata[0], 1);

  specks->amount_ml = 0.2;
  assert_remark (sketch, 0.0, SW_REMARK_ROUNDED_AWAY, "0.2 mL is too little");
  sketch->sheet.measure_step_ml = 0.1;
  assert_no_remark (sketch, 0.0, SW_REMARK_ROUNDED_AWAY);
  specks->dry = TRUE;
  specks->grams = 0.004;
  assert_remark (sketch, 0.0, SW_REMARK_ROUNDED_AWAY, "0.004 g is too little");
  sketch->sheet.skeins = 50;
  sketch->sheet.pans = 1;
  sketch->lay.pan_width_cm = 500.0;
  assert_no_remark (sketch, 0.0, SW_REMARK_ROUNDED_AWAY);
}

static void
test_white_edges (void)
{
  g_autoptr (SwSketch) sketch = sound_sketch ();

  for (guint i = 0; i < sketch->steps->len; i++)
    ((SwStep *) sketch->steps->pdata[i])->worked_in = 0.2;
  assert_no_remark (sketch, 0.0, SW_REMARK_WHITE_EDGES); /* the second face gets its own */
  g_ptr_array_remove_index (sketch->steps, 3);           /* no flip */
  assert_remark (sketch, 0.0, SW_REMARK_WHITE_EDGES, "pale");
}

/* The gravest come first, and every kind has its word and its sentence. */
static void
test_order (void)
{
  g_autoptr (SwSketch) sketch = sound_sketch ();
  g_autoptr (SwSheet) sheet = NULL;
  g_autoptr (GArray) remarks = NULL;

  sketch->bath.water_ml = 3000.0;
  ((SwDye *) sketch->dyes->pdata[0])->dye_class = SW_DYE_CLASS_MILLING;
  sheet = sheet_of (sketch, 0.2);
  remarks = sw_sheet_remarks (sheet);
  g_assert_cmpuint (remarks->len, >=, 4);
  g_assert_cmpint (g_array_index (remarks, SwRemark, 0).kind, ==, SW_REMARK_RUNS_OVER);
  g_assert_cmpint (g_array_index (remarks, SwRemark, 1).kind, ==, SW_REMARK_LEFT);
  g_assert_cmpint (g_array_index (remarks, SwRemark, remarks->len - 1).kind, ==, SW_REMARK_PH_WINDOW);
  for (SwRemarkKind kind = 0; kind < SW_N_REMARKS; kind++)
    g_assert_cmpstr (sw_sheet_remark_name (kind), !=, NULL);
}

/* Where work can hurt, a caution stands; chromium and cobalt only with dyes that hold them. */
static void
test_cautions (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  guint all = (1u << SW_N_CAUTIONS) - 1u, metal = 1u << SW_CAUTION_METAL, dust = 1u << SW_CAUTION_DUST;
  SwStep *specks;

  g_assert_cmpuint (sw_cautions_for_sketch (sketch), ==, all & ~metal);
  g_assert_cmpuint (sw_cautions_for_deed (sketch, SW_DEED_STOCK, 0) & dust, ==, dust);
  g_assert_cmpuint (sw_cautions_for_deed (sketch, SW_DEED_POUR, 0) & dust, ==, 0);
  g_assert_cmpuint (sw_cautions_for_deed (sketch, SW_DEED_DRY, 0), ==, 0);
  specks = test_add_speckles (sketch, sketch->dyes->pdata[0], 1);
  specks->dry = TRUE;
  g_assert_cmpuint (sw_cautions_for_deed (sketch, SW_DEED_POUR, 0) & dust, ==, dust);
  g_assert_cmpuint (sw_cautions_for_deed (sketch, SW_DEED_POUR, specks->id) & dust, ==, dust);
  g_assert_cmpuint (sw_cautions_for_deed (sketch, SW_DEED_POUR, ((SwStep *) sketch->steps->pdata[0])->id) & dust, ==, 0); /* a wet pour */

  test_add_dye (sketch, "In the jar", 1, 2, 3)->dye_class = SW_DYE_CLASS_METAL_COMPLEX_2_1;
  g_assert_cmpuint (sw_cautions_for_sketch (sketch) & metal, ==, 0);
  ((SwDye *) sketch->dyes->pdata[1])->dye_class = SW_DYE_CLASS_METAL_COMPLEX_2_1;
  g_assert_cmpuint (sw_cautions_for_sketch (sketch), ==, all);
  g_assert_cmpuint (sw_cautions_for_deed (sketch, SW_DEED_RINSE, 0) & metal, ==, metal);
  for (SwCaution caution = 0; caution < SW_N_CAUTIONS; caution++)
    g_assert_cmpuint (strlen (sw_caution_title (caution)), <, strlen (sw_caution_text (caution)));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet/remarks/sound", test_sound);
  g_test_add_func ("/sheet/remarks/depth", test_depth);
  g_test_add_func ("/sheet/remarks/short-rest", test_short_rest);
  g_test_add_func ("/sheet/remarks/one-go", test_one_go);
  g_test_add_func ("/sheet/remarks/swamped", test_swamped);
  g_test_add_func ("/sheet/remarks/pan", test_pan);
  g_test_add_func ("/sheet/remarks/liquor", test_liquor);
  g_test_add_func ("/sheet/remarks/left", test_left);
  g_test_add_func ("/sheet/remarks/ph-window", test_ph_window);
  g_test_add_func ("/sheet/remarks/acid-later", test_acid_later);
  g_test_add_func ("/sheet/remarks/no-set", test_no_set);
  g_test_add_func ("/sheet/remarks/rounded-away", test_rounded_away);
  g_test_add_func ("/sheet/remarks/white-edges", test_white_edges);
  g_test_add_func ("/sheet/remarks/order", test_order);
  g_test_add_func ("/sheet/cautions", test_cautions);
  return g_test_run ();
}
