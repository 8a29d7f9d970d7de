/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-json.h"
#include "cli/sw-cli-run.h"
#include "cli/sw-cli-stream.h"
#include "cli/sw-cli-value.h"

#include "forecast/sw-colour-words.h"
#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>

gboolean
sw_cli_set_width (SwSketch *sketch, const char *text, GError **error)
{
  const SwMember *member = sw_record_find_member (SW_RECORD_CLOTH, "width_stitches");
  gint64 width = 0;

  if (text == NULL)
    return TRUE;
  if (!sw_cli_whole ("--width", text, (gint64) member->min, (gint64) member->max, &width, error))
    return FALSE;
  sketch->cloth.width_stitches = width;
  return TRUE;
}

SwForecast *
sw_cli_run_sketch (const char *name, const SwSketch *sketch, GError **error)
{
  g_autoptr (SwForecaster) forecaster = NULL;
  g_autofree char *shown = sw_cli_display_name (name);
  g_autofree char *what = NULL;
  SwForecast *forecast;

  /* Translators: progress; %s is a file's name */
  what = g_strdup_printf (_ ("Forecasting %s…"), shown);
  sw_cli_progress (what);
  forecaster = sw_forecaster_new ();
  forecast = sw_forecaster_run (forecaster, sketch, NULL, error);
  sw_cli_progress (NULL);
  if (forecast == NULL)
    g_prefix_error (error, "%s: ", shown);
  return forecast;
}

SwForecast *
sw_cli_run (const char *name, GError **error)
{
  g_autoptr (SwSketch) sketch = sw_cli_read_sketch (name, error);

  return sketch != NULL ? sw_cli_run_sketch (name, sketch, error) : NULL;
}

const char *
sw_cli_worked_name (SwWorked worked)
{
  return sw_record_find_member (SW_RECORD_CLOTH, "worked")->choices[worked];
}

static void
add_dyes (JsonBuilder *builder, const SwForecast *forecast)
{
  json_builder_set_member_name (builder, "dyes");
  json_builder_begin_array (builder);
  for (int i = 0; i < forecast->n_dyes; i++)
    {
      const SwDyeForecast *dye = &forecast->dyes[i];

      json_builder_begin_object (builder);
      sw_cli_json_text (builder, "name", dye->name);
      sw_cli_json_number (builder, "poured_g", dye->poured_g, SW_DIGITS_MASS);
      sw_cli_json_number (builder, "struck_g", dye->struck_g, SW_DIGITS_MASS);
      sw_cli_json_number (builder, "left_g", dye->left_g, SW_DIGITS_MASS);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static void
add_state (JsonBuilder *builder, const SwBathState *state)
{
  sw_cli_json_number (builder, "minutes", state->minutes, SW_DIGITS_FIGURE);
  sw_cli_json_number (builder, "temperature_c", state->temperature_c, SW_DIGITS_FIGURE);
  sw_cli_json_number (builder, "liquor_ml", state->liquor_ml, SW_DIGITS_FIGURE);
  sw_cli_json_number (builder, "ph", state->ph, SW_DIGITS_FIGURE);
  sw_cli_json_text (builder, "face", state->second_face ? "second" : "first");
}

static void
add_bath (JsonBuilder *builder, const SwForecast *forecast)
{
  json_builder_set_member_name (builder, "bath");
  json_builder_begin_object (builder);
  sw_cli_json_number (builder, "ph_start", forecast->states[0].ph, SW_DIGITS_FIGURE);
  sw_cli_json_number (builder, "clear_percent", forecast->clear_percent, SW_DIGITS_FIGURE);
  sw_cli_json_number (builder, "liquor_start_ml", forecast->states[0].liquor_ml, SW_DIGITS_FIGURE);
  json_builder_set_member_name (builder, "steps");
  json_builder_begin_array (builder);
  for (gsize i = 0; i < forecast->n_steps; i++)
    {
      const SwStep *step = forecast->sketch->steps->pdata[i];

      json_builder_begin_object (builder);
      sw_cli_json_whole (builder, "id", step->id);
      sw_cli_json_text (builder, "kind", sw_step_kind_name (step->kind));
      add_state (builder, &forecast->states[i + 1]);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
  json_builder_end_object (builder);
}

static void
add_strand (JsonBuilder *builder, const SwForecast *forecast)
{
  sw_cli_json_number (builder, "strand_length_cm", forecast->strand_length_cm, SW_DIGITS_FIGURE);
  sw_cli_json_number (builder, "wraps", forecast->wraps, SW_DIGITS_FIGURE);
  sw_cli_json_number (builder, "repeat_cm", forecast->repeat_cm, SW_DIGITS_FIGURE);
  sw_cli_json_number (builder, "repeat_stitches", forecast->repeat_cm / forecast->stitch_length_cm, SW_DIGITS_FIGURE);
  sw_cli_json_number (builder, "stitch_length_cm", forecast->stitch_length_cm, SW_DIGITS_FIGURE);
  sw_cli_json_whole (builder, "stitches", (gint64) forecast->n_stitches);
}

static void
add_pooling (JsonBuilder *builder, const SwPooling *pooling)
{
  g_autofree char *sentence = sw_pooling_sentence (pooling);

  json_builder_set_member_name (builder, "pooling");
  json_builder_begin_object (builder);
  sw_cli_json_whole (builder, "width", (gint64) pooling->width);
  sw_cli_json_text (builder, "worked", sw_cli_worked_name (pooling->worked));
  sw_cli_json_number (builder, "stack", pooling->stack, SW_DIGITS_FIGURE);
  sw_cli_json_whole (builder, "row_step", pooling->row_step);
  sw_cli_json_whole (builder, "stitch_step", pooling->stitch_step);
  sw_cli_json_number (builder, "angle_deg", pooling->angle_deg, SW_DIGITS_FIGURE);
  sw_cli_json_text (builder, "verdict", sw_verdict_name (pooling->verdict));
  sw_cli_json_text (builder, "sentence", sentence);
  json_builder_end_object (builder);
}

static void
add_stripe (JsonBuilder *builder, const SwForecast *forecast, const SwStripe *stripe, const char *name)
{
  SwLab lab = { (double) stripe->l, (double) stripe->a, (double) stripe->b };
  g_autofree char *hex = sw_cli_hex (sw_srgb_from_xyz (sw_xyz_from_lab (lab)));

  json_builder_begin_object (builder);
  sw_cli_json_text (builder, "colour", hex);
  sw_cli_json_text (builder, "name", name);
  sw_cli_json_lab (builder, lab, SW_DIGITS_COLOUR);
  sw_cli_json_number (builder, "mean_cm", stripe->mean_stitches * forecast->stitch_length_cm, SW_DIGITS_FIGURE);
  sw_cli_json_number (builder, "mean_stitches", stripe->mean_stitches, SW_DIGITS_FIGURE);
  sw_cli_json_number (builder, "mean_rows", stripe->mean_stitches / (double) forecast->layout.width, SW_DIGITS_FIGURE);
  sw_cli_json_number (builder, "share", stripe->share, SW_DIGITS_FIGURE);
  sw_cli_json_whole (builder, "runs", (gint64) stripe->runs);
  json_builder_end_object (builder);
}

static void
add_stripes (JsonBuilder *builder, const SwForecast *forecast)
{
  g_auto (GStrv) names = sw_forecast_stripe_names (forecast);

  json_builder_set_member_name (builder, "stripes");
  json_builder_begin_array (builder);
  for (gsize i = 0; i < forecast->n_stripes; i++)
    add_stripe (builder, forecast, &forecast->stripes[i], names[i]);
  json_builder_end_array (builder);
}

static gboolean
print_json (const SwForecast *forecast, GError **error)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();
  const double cells[] = { forecast->grid.nx, forecast->grid.ny, forecast->grid.nz };

  json_builder_begin_object (builder);
  sw_cli_json_text (builder, "title", forecast->sketch->title);
  add_dyes (builder, forecast);
  add_strand (builder, forecast);
  add_pooling (builder, &forecast->pooling);
  add_stripes (builder, forecast);
  add_bath (builder, forecast);
  sw_cli_json_numbers (builder, "grid", cells, G_N_ELEMENTS (cells), SW_DIGITS_FIGURE);
  json_builder_end_object (builder);
  return sw_cli_print_json (builder, error);
}

gboolean
sw_cli_forecast (SwCall *call, GError **error)
{
  gboolean json = FALSE;
  g_auto (GStrv) files = NULL;
  g_autoptr (SwSketch) sketch = NULL;
  g_autoptr (SwForecast) forecast = NULL;
  g_autofree char *report = NULL;
  g_autofree char *width = NULL;
  const GOptionEntry entries[] = {
    SW_CLI_WIDTH_ENTRY (&width),
    SW_CLI_JSON_ENTRY (&json),
    G_OPTION_ENTRY_NULL,
  };

  if (!sw_cli_parse (call, entries, 1, 1, &files, error))
    return FALSE;
  sketch = sw_cli_read_sketch (files[0], error);
  if (sketch == NULL || !sw_cli_set_width (sketch, width, error))
    return FALSE;
  forecast = sw_cli_run_sketch (files[0], sketch, error);
  if (forecast == NULL)
    return FALSE;
  if (json)
    return print_json (forecast, error);
  report = sw_cli_report (forecast);
  return sw_cli_print_words (report, error);
}
