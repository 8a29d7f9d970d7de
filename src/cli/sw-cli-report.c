/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-json.h"
#include "cli/sw-cli-run.h"
#include "files/sw-table.h"

#include "draw/sw-pan-geometry.h"
#include "forecast/sw-colour-words.h"
#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>

#define INDENT 2

/*
 * The forecast for people: what a dyer asks in the order of asking. How much
 * dye went where, what the bath was like, how the yarn repeats, whether it
 * pools, how long its stripes are.
 */

static void
add_heading (GString *out, const char *heading)
{
  g_string_append_printf (out, "\n%s\n", heading);
}

static void
add_yarn (GString *out, const SwForecast *forecast)
{
  const SwYarn *yarn = &forecast->sketch->yarn;
  const char *fibre = sw_record_find_member (SW_RECORD_YARN, "fibre")->choice_labels[yarn->fibre];
  gint64 skeins = forecast->sketch->lay.skeins;

  g_string_append_printf (out, "%s\n", forecast->sketch->title[0] != '\0' ? forecast->sketch->title : _ ("Untitled"));
  /* Translators: a fibre, the mass of one skein and its put-up */
  g_string_append_printf (out, _ ("%s, %.6g g a skein, %.6g m in 100 g"), _ (fibre), yarn->mass_g, yarn->metres_per_100_g);
  g_string_append_c (out, '\n');
  g_string_append_printf (out, g_dngettext (GETTEXT_PACKAGE, "%d skein in the pan", "%d skeins in the pan", (gulong) skeins), (int) skeins);
  g_string_append_c (out, '\n');
}

static void
add_dyes (GString *out, const SwForecast *forecast)
{
  g_autoptr (SwTable) table = sw_table_new ("lrrrr");

  add_heading (out, _ ("Dyes"));
  if (forecast->n_dyes == 0)
    {
      g_string_append_printf (out, "%*s%s\n", INDENT, "", _ ("None: the yarn stays undyed."));
      return;
    }
  sw_table_add (table, _ ("dye"));
  /* Translators: grams of dye poured into the pan; on the fibre at the end; in the liquor at the end */
  sw_table_add (table, _ ("poured g"));
  sw_table_add (table, _ ("struck g"));
  sw_table_add (table, _ ("left g"));
  sw_table_add (table, _ ("struck %"));
  for (int i = 0; i < forecast->n_dyes; i++)
    {
      const SwDyeForecast *dye = &forecast->dyes[i];

      sw_table_add (table, dye->name[0] != '\0' ? dye->name : _ ("Unnamed"));
      sw_table_add_format (table, "%.4f", dye->poured_g);
      sw_table_add_format (table, "%.4f", dye->struck_g);
      sw_table_add_format (table, "%.4f", dye->left_g + 0.0);
      if (dye->poured_g > 0.0)
        sw_table_add_format (table, "%.1f", 100.0 * dye->struck_g / dye->poured_g);
      else
        sw_table_add (table, "–");
    }
  sw_table_print (table, INDENT, out);
}

static const char *const step_words[] = {
  [SW_STEP_BAND] = N_ ("band"),
  [SW_STEP_SPLOTCH] = N_ ("splotch"),
  [SW_STEP_SPECKLE] = N_ ("speckle zone"),
  [SW_STEP_REST] = N_ ("rest"),
  [SW_STEP_FLIP] = N_ ("flip"),
  [SW_STEP_ACID] = N_ ("acid"),
  [SW_STEP_WATER] = N_ ("water"),
  /* Translators: the final heat */
  [SW_STEP_SET] = N_ ("set"),
};

static void
add_state (SwTable *table, const SwBathState *state)
{
  sw_table_add_format (table, "%.6g", state->minutes);
  sw_table_add_format (table, "%.0f", state->temperature_c);
  sw_table_add_format (table, "%.0f", state->liquor_ml);
  sw_table_add_format (table, "%.2f", state->ph);
}

static void
add_step (SwTable *table, gsize number, const SwSketch *sketch, const SwStep *step)
{
  const SwDye *dye = sw_step_is_pour (step) ? sw_sketch_find_dye (sketch, step->dye) : NULL;

  sw_table_add_format (table, "%" G_GSIZE_FORMAT, number);
  sw_table_add (table, step->name[0] != '\0' ? step->name : _ (step_words[step->kind]));
  if (sw_step_is_pour (step))
    sw_table_add_format (table, "%u", sw_pan_pour_number (sketch, step->id));
  else
    sw_table_add (table, "");
  sw_table_add (table, dye != NULL ? dye->name : "");
}

static void
add_bath (GString *out, const SwForecast *forecast)
{
  const SwSketch *sketch = forecast->sketch;
  g_autoptr (SwTable) table = sw_table_new ("rlrlrrrr");

  add_heading (out, _ ("Bath"));
  sw_table_add (table, "");
  sw_table_add (table, _ ("step"));
  /* Translators: the number that a pour bears in the picture of the pan */
  sw_table_add (table, _ ("pour"));
  sw_table_add (table, _ ("dye"));
  sw_table_add (table, _ ("minutes"));
  sw_table_add (table, "°C");
  /* Translators: the water with what is in it, in millilitres */
  sw_table_add (table, _ ("liquor mL"));
  sw_table_add (table, "pH");
  sw_table_add (table, "");
  sw_table_add (table, _ ("at the start"));
  sw_table_add (table, "");
  sw_table_add (table, "");
  add_state (table, &forecast->states[0]);
  for (gsize i = 0; i < forecast->n_steps; i++)
    {
      add_step (table, i + 1, sketch, sketch->steps->pdata[i]);
      add_state (table, &forecast->states[i + 1]);
    }
  sw_table_print (table, INDENT, out);
  g_string_append_printf (out, "%*s", INDENT, "");
  g_string_append_printf (out, _ ("%.1f %% of the dye is on the yarn by the end."), forecast->clear_percent);
  g_string_append_c (out, '\n');
}

static void
add_strand (GString *out, const SwForecast *forecast)
{
  add_heading (out, _ ("Strand"));
  g_string_append_printf (out, "%*s", INDENT, "");
  g_string_append_printf (out, _ ("%.1f m in %.1f wraps, %.6g cm a wrap"), forecast->strand_length_cm / 100.0, forecast->wraps, forecast->repeat_cm);
  g_string_append_printf (out, "\n%*s", INDENT, "");
  g_string_append_printf (out, _ ("%.3f cm of yarn in a stitch, %.0f stitches in the skein"), forecast->stitch_length_cm, (double) forecast->n_stitches);
  g_string_append_printf (out, "\n%*s", INDENT, "");
  g_string_append_printf (out, _ ("The colours come round every %.1f stitches."), forecast->repeat_cm / forecast->stitch_length_cm);
  g_string_append_c (out, '\n');
}

static void
add_pooling (GString *out, const SwForecast *forecast)
{
  g_autofree char *sentence = sw_pooling_sentence (&forecast->pooling);

  add_heading (out, _ ("Pooling"));
  g_string_append_printf (out, "%*s%s\n", INDENT, "", sentence);
}

static void
add_stripes (GString *out, const SwForecast *forecast)
{
  g_autoptr (SwTable) table = sw_table_new ("llrrrr");
  g_auto (GStrv) names = sw_forecast_stripe_names (forecast);

  /* Translators: lengths of one colour along the strand */
  add_heading (out, _ ("Stripes"));
  sw_table_add (table, _ ("colour"));
  sw_table_add (table, "");
  sw_table_add (table, _ ("share %"));
  sw_table_add (table, "cm");
  sw_table_add (table, _ ("stitches"));
  sw_table_add (table, _ ("rows"));
  for (gsize i = 0; i < forecast->n_stripes; i++)
    {
      const SwStripe *stripe = &forecast->stripes[i];
      SwLab lab = { (double) stripe->l, (double) stripe->a, (double) stripe->b };
      g_autofree char *hex = sw_cli_hex (sw_srgb_from_xyz (sw_xyz_from_lab (lab)));

      sw_table_add (table, names[i]);
      sw_table_add (table, hex);
      sw_table_add_format (table, "%.1f", 100.0 * stripe->share);
      sw_table_add_format (table, "%.1f", stripe->mean_stitches * forecast->stitch_length_cm);
      sw_table_add_format (table, "%.1f", stripe->mean_stitches);
      sw_table_add_format (table, "%.2f", stripe->mean_stitches / (double) forecast->layout.width);
    }
  sw_table_print (table, INDENT, out);
}

char *
sw_cli_report (const SwForecast *forecast)
{
  static void (*const parts[]) (GString *, const SwForecast *) = {
    add_yarn,
    add_dyes,
    add_bath,
    add_strand,
    add_pooling,
    add_stripes,
  };
  GString *out = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    parts[i](out, forecast);
  return g_string_free (out, FALSE);
}
