/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/desk/sw-dyeing-words.h"
#include "app/desk/sw-settings-words.h"
#include "app/desk/sw-yarn-weights.h"

#include "tests/sw-test-sketch.h"
#include "tests/colour/published-table.h"

#include <string.h>

#define NBSP "\u00a0"

/* What the panes say of the running forecast, the settings and the usual weights of yarn. */

static SwForecast *
forecast_of (const SwSketch *sketch)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (GError) error = NULL;
  SwForecast *forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);

  g_assert_no_error (error);
  return forecast;
}

/* 0.45 g of a dye that half strikes in the 3 minutes that the rest takes at the reference: pH 4, 90 C, superwash. */
static void
test_account (void)
{
  const SwAccount half = { 1, 0.45, 0.225, 0.225 };
  const SwAccount nearly = { 1, 1.0, 0.996, 0.004 };
  const SwAccount all = { 1, 1.0, 1.0, 0.0 };
  g_autofree char *half_words = sw_account_words (&half);
  g_autofree char *nearly_words = sw_account_words (&nearly);
  g_autofree char *all_words = sw_account_words (&all);

  g_assert_true (g_str_has_prefix (half_words, "50" NBSP "% struck, 0.2"));
  g_assert_true (g_str_has_prefix (nearly_words, "99" NBSP "% struck, ")); /* never all while some is left */
  g_assert_cmpstr (all_words, ==, "100" NBSP "% struck, 0" NBSP "g left");
}

static void
test_running (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  const SwStep *first = sketch->steps->pdata[0];
  const SwStep *last = sketch->steps->pdata[sketch->steps->len - 1];
  g_autoptr (SwForecast) forecast = forecast_of (sketch);
  g_autoptr (GArray) at_first = sw_dyeing_accounts (forecast, first->id);
  g_autoptr (GArray) at_last = sw_dyeing_accounts (forecast, last->id);
  g_autofree char *brief = sw_dyeing_short (forecast, last->id);
  g_autofree char *sentence = sw_dyeing_sentence (forecast, last->id, SW_SYSTEM_METRIC);

  /* Only the first dye is in the pan after the first pour, and nothing of it has had time. */
  g_assert_cmpuint (at_first->len, ==, 1);
  g_assert_cmpuint (g_array_index (at_first, SwAccount, 0).dye, ==, first->dye);
  g_assert_cmpfloat (sw_dyeing_struck_share (at_first), ==, 0);
  g_assert_cmpuint (at_last->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    g_assert_cmpfloat_with_epsilon (g_array_index (at_last, SwAccount, i).poured_g, forecast->dyes[i].poured_g, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_dyeing_struck_share (at_last) * 100, forecast->clear_percent, 1e-9);
  g_assert_true (g_str_has_prefix (brief, "pH" NBSP));
  g_assert_true (g_str_has_suffix (brief, NBSP "% struck"));
  g_assert_true (g_str_has_prefix (sentence, "Then pH" NBSP));
  g_assert_nonnull (strstr (sentence, " Red: "));
  g_assert_nonnull (strstr (sentence, " Blue: "));
}

/* Before the first forecast, and for a step that it does not know yet, nothing is made up. */
static void
test_not_yet (void)
{
  g_autoptr (SwSketch) sketch = test_sketch (2);
  g_autoptr (SwForecast) forecast = forecast_of (sketch);
  g_autoptr (GArray) none = sw_dyeing_accounts (NULL, 3);
  g_autoptr (GArray) unknown = sw_dyeing_accounts (forecast, 4711);
  g_autofree char *brief = sw_dyeing_short (NULL, 3);
  g_autofree char *sentence = sw_dyeing_sentence (forecast, 4711, SW_SYSTEM_METRIC);

  g_assert_cmpuint (none->len + unknown->len, ==, 0);
  g_assert_cmpfloat (sw_dyeing_struck_share (none), ==, -1);
  g_assert_cmpstr (brief, ==, "");
  g_assert_cmpstr (sentence, ==, "");
}

static void
test_bath_after_acid (void)
{
  g_autoptr (SwSketch) sketch = test_bare_sketch (2);
  SwStep *water = test_add_step (sketch, SW_STEP_WATER);
  g_autoptr (SwForecast) forecast = NULL;
  g_autofree char *metric = NULL;
  g_autofree char *us = NULL;
  g_autofree char *brief = NULL;

  sketch->bath.water_ml = 1000;
  sketch->bath.acid_ml = 0;
  sketch->bath.temperature_c = 85;
  water->volume_ml = 1000;
  forecast = forecast_of (sketch);
  metric = sw_dyeing_bath (forecast, water->id, SW_SYSTEM_METRIC);
  us = sw_dyeing_bath (forecast, water->id, SW_SYSTEM_US);
  brief = sw_dyeing_short (forecast, water->id);
  g_assert_true (g_str_has_suffix (metric, ", 85" NBSP "°C, 2" NBSP "L"));
  g_assert_true (g_str_has_suffix (us, ", 185" NBSP "°F, 8.45" NBSP "cup")); /* 2000 mL over 236.588 */
  g_assert_null (strstr (brief, "struck"));                                  /* no dye is in it */
}

static void
test_summaries (void)
{
  g_autoptr (SwSketch) sketch = sw_sketch_new ();
  g_autofree char *yarn = sw_yarn_summary (sketch, SW_SYSTEM_METRIC);
  g_autofree char *yarn_us = sw_yarn_summary (sketch, SW_SYSTEM_US);
  g_autofree char *reel = sw_reel_summary (sketch, SW_SYSTEM_METRIC);
  g_autofree char *lay = sw_lay_summary (sketch, SW_SYSTEM_METRIC);
  g_autofree char *bath = sw_bath_summary (sketch, NULL, SW_SYSTEM_METRIC);
  g_autofree char *by_hand = NULL;
  g_autofree char *opened = NULL;

  g_assert_cmpstr (yarn, ==, "Superwash wool, 100" NBSP "g, 400" NBSP "m per 100" NBSP "g");
  g_assert_cmpstr (yarn_us, ==, "Superwash wool, 3.53" NBSP "oz, 437" NBSP "yd per 100" NBSP "g");
  g_assert_cmpstr (reel, ==, "150" NBSP "cm round, wound with a guide");
  g_assert_cmpstr (lay, ==, "1 skein in 2 runs, 75" NBSP "cm by 8" NBSP "cm");
  g_assert_cmpstr (bath, ==, "1.4" NBSP "L, 90" NBSP "°C");

  sketch->reel.winding = SW_WINDING_BY_HAND;
  sketch->lay.runs = 1;
  sketch->lay.skeins = 3;
  by_hand = sw_reel_summary (sketch, SW_SYSTEM_METRIC);
  opened = sw_lay_summary (sketch, SW_SYSTEM_METRIC);
  g_assert_cmpstr (by_hand, ==, "150" NBSP "cm round, wound by hand");
  g_assert_cmpstr (opened, ==, "3 skeins, not folded, 150" NBSP "cm by 24" NBSP "cm");
}

/* The skein is 60 cm by 8 cm. A pour is outside when no part of its outline is on it. */
static void
test_outside (void)
{
  static const struct
  {
    SwStepKind kind;
    double x, y, width, length, angle;
    gboolean outside;
  } rows[] = {
    { SW_STEP_BAND, 30, 4, 6, 0, 0, FALSE },
    { SW_STEP_BAND, 64, 4, 6, 0, 0, TRUE },
    { SW_STEP_BAND, 62, 4, 6, 0, 0, FALSE },
    { SW_STEP_BAND, 66, 4, 6, 0, 45, FALSE }, /* its slant brings it back by 4 cm */
    { SW_STEP_BAND, 68, 4, 6, 0, 45, TRUE },
    { SW_STEP_BAND, 30, 40, 6, 0, 0, FALSE }, /* right across, wherever its middle is */
    { SW_STEP_BAND, 30, 40, 6, 5, 0, TRUE },
    { SW_STEP_SPLOTCH, 62, 4, 6, 2, 0, FALSE },
    { SW_STEP_SPLOTCH, 62, 4, 6, 2, 90, TRUE }, /* turned, it is 2 cm along */
    { SW_STEP_SPECKLE, -9, 4, 20, 8, 0, FALSE },
    { SW_STEP_SPECKLE, -11, 4, 20, 8, 0, TRUE },
    { SW_STEP_SPECKLE, 30, -5, 20, 8, 0, TRUE },
    { SW_STEP_SPECKLE, 30, -5, 20, 8, 45, FALSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (SwSketch) sketch = test_bare_sketch (2);
      SwStep *step = test_add_step (sketch, rows[i].kind);
      g_autoptr (GArray) outside = NULL;
      g_autofree char *sentence = NULL;

      step->x_cm = rows[i].x;
      step->y_cm = rows[i].y;
      step->width_cm = rows[i].width;
      step->length_cm = rows[i].length;
      step->angle_deg = rows[i].angle;
      outside = sw_pours_outside (sketch);
      sentence = sw_pours_outside_sentence (sketch);
      g_test_message ("row %" G_GSIZE_FORMAT, i);
      g_assert_cmpuint (outside->len, ==, rows[i].outside);
      g_assert_cmpstr (sentence, ==, rows[i].outside ? "1 pour lies beside the skein: its dye goes into the whole bath." : NULL);
    }
}

/* Each usual weight lies within the published ranges. Source: Craft Yarn Council's www.YarnStandards.com. */
static void
test_yarn_weights (void)
{
  g_auto (PublishedTable) table = published_table_open ("yarn_weights.csv");

  g_assert_cmpuint (sw_n_yarn_weights, ==, 7);
  for (guint i = 0; i < sw_n_yarn_weights; i++)
    {
      const SwYarnWeight *weight = &sw_yarn_weights[i];
      const char *least = published_table_text (&table, i, "m_per_100g_min");
      const char *most = published_table_text (&table, i, "m_per_100g_max");
      g_autofree char *name = g_ascii_strdown (weight->name, -1);

      g_assert_cmpstr (name, ==, published_table_text (&table, i, "name"));
      g_assert_cmpfloat (weight->stitches_per_10cm, >=, published_table_number (&table, i, "stitches_per_10cm_min"));
      g_assert_cmpfloat (weight->stitches_per_10cm, <=, published_table_number (&table, i, "stitches_per_10cm_max"));
      if (*least != '\0')
        g_assert_cmpfloat (weight->metres_per_100_g, >=, g_ascii_strtod (least, NULL));
      if (*most != '\0')
        g_assert_cmpfloat (weight->metres_per_100_g, <=, g_ascii_strtod (most, NULL));
      /* The ranges meet: what is known as this weight is what the table calls so. */
      g_assert_cmpuint (sw_yarn_weight_of (weight->metres_per_100_g), ==, i);
      if (*least != '\0')
        g_assert_cmpuint (sw_yarn_weight_of (g_ascii_strtod (least, NULL) + 0.6), ==, i);
      if (*most != '\0')
        g_assert_cmpuint (sw_yarn_weight_of (g_ascii_strtod (most, NULL) - 0.6), ==, i);
    }
}

static void
test_yarn_weight_edit (void)
{
  for (gsize i = 0; i < sw_n_yarn_weights; i++)
    {
      g_autoptr (SwSketch) sketch = sw_sketch_new ();
      g_autoptr (SwEdit) edit = sw_yarn_weight_edit (i);
      g_autoptr (GError) error = NULL;
      g_autoptr (SwEdit) inverse = NULL;

      sketch->cloth.rows_per_10cm = 40;
      sketch->cloth.stitch_length_cm = 1.2;
      inverse = sw_edit_apply (edit, sketch, NULL, &error);
      g_assert_no_error (error);
      g_assert_cmpfloat (sketch->yarn.metres_per_100_g, ==, sw_yarn_weights[i].metres_per_100_g);
      g_assert_cmpfloat (sketch->cloth.stitches_per_10cm, ==, sw_yarn_weights[i].stitches_per_10cm);
      g_assert_cmpfloat (sketch->cloth.rows_per_10cm + sketch->cloth.stitch_length_cm, ==, 0);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/app/pane-words/account", test_account);
  g_test_add_func ("/app/pane-words/running", test_running);
  g_test_add_func ("/app/pane-words/not-yet", test_not_yet);
  g_test_add_func ("/app/pane-words/bath-after-water", test_bath_after_acid);
  g_test_add_func ("/app/pane-words/summaries", test_summaries);
  g_test_add_func ("/app/pane-words/outside", test_outside);
  g_test_add_func ("/app/pane-words/yarn-weights", test_yarn_weights);
  g_test_add_func ("/app/pane-words/yarn-weight-edit", test_yarn_weight_edit);
  return g_test_run ();
}
