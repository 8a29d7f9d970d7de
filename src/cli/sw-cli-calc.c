/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-json.h"
#include "cli/sw-cli-stream.h"
#include "cli/sw-cli-value.h"

#include "bath/sw-ph.h"
#include "bath/sw-strike.h"
#include "cloth/sw-gauge.h"
#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* The sums of one number: limits are wider than any practice and only keep out slips of the pen. */

const SwCommand sw_cli_calc_commands[] = {
  { "stitch-length", "", N_ ("Yarn in one stitch, from the gauge"), sw_cli_calc_stitch_length, NULL },
  { "ph", "", N_ ("pH of acid in water of some alkalinity"), sw_cli_calc_ph, NULL },
  { "strike", "", N_ ("How fast a dye strikes"), sw_cli_calc_strike, NULL },
  { "difference", "", N_ ("Difference of two colours, CIEDE2000"), sw_cli_calc_difference, NULL },
  { "colour", "", N_ ("Colour of a measured reflectance"), sw_cli_calc_colour, NULL },
  { "spectrum", "", N_ ("The smoothest reflectance of a colour"), sw_cli_calc_spectrum, NULL },
  { "mix", "", N_ ("Colour of a mixture of dyes on a yarn"), sw_cli_calc_mix, NULL },
  { NULL },
};

/* An object of one number, or the sentence. */
static gboolean
print_sum (gboolean json, const char *member, double value, const char *sentence, GError **error)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();
  g_autofree char *line = g_strconcat (sentence, "\n", NULL);

  if (!json)
    return sw_cli_print_words (line, error);
  json_builder_begin_object (builder);
  sw_cli_json_number (builder, member, value, SW_DIGITS_SUM);
  json_builder_end_object (builder);
  return sw_cli_print_json (builder, error);
}

gboolean
sw_cli_calc_stitch_length (SwCall *call, GError **error)
{
  gboolean json = FALSE;
  g_autofree char *wales_text = NULL;
  g_autofree char *courses_text = NULL;
  g_autofree char *state_text = NULL;
  g_autofree char *sentence = NULL;
  double wales, courses, length;
  int state = SW_STATE_DRY;
  const GOptionEntry entries[] = {
    { "wales-per-cm", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &wales_text, N_ ("Stitches to a centimetre of width"), "N" },
    { "courses-per-cm", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &courses_text, N_ ("Rows to a centimetre of height"), "N" },
    { "state", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &state_text, N_ ("How the cloth was relaxed; dry if not given"), "dry|wet" },
    SW_CLI_JSON_ENTRY (&json),
    G_OPTION_ENTRY_NULL,
  };

  if (!sw_cli_parse (call, entries, 0, 0, NULL, error))
    return FALSE;
  const SwCliNumber numbers[] = {
    { "--wales-per-cm", wales_text, 0.1, 100, &wales, FALSE },
    { "--courses-per-cm", courses_text, 0.1, 100, &courses, FALSE },
  };
  if (!sw_cli_numbers (numbers, G_N_ELEMENTS (numbers), error) || !sw_cli_choice ("--state", state_text, sw_record_find_member (SW_RECORD_CLOTH, "state")->choices, &state, error))
    return FALSE;

  length = sw_stitch_length (wales, courses, (SwFabricState) state);
  sentence = g_strdup_printf (_ ("%.3f cm of yarn in a stitch"), length);
  return print_sum (json, "stitch_length_cm", length, sentence, error);
}

gboolean
sw_cli_calc_ph (SwCall *call, GError **error)
{
  static const SwAcidSystem *const systems[] = { [SW_ACID_ACETIC] = &sw_acetic_acid, [SW_ACID_CITRIC] = &sw_citric_acid };
  gboolean json = FALSE;
  g_autofree char *acid_text = NULL;
  g_autofree char *molar_text = NULL;
  g_autofree char *alkalinity_text = NULL;
  g_autofree char *carbonate_text = NULL;
  g_autofree char *sentence = NULL;
  double molar, alkalinity, carbonate = 0.0, ph;
  int acid = -1;
  const GOptionEntry entries[] = {
    { "acid", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &acid_text, N_ ("Which acid"), "acetic|citric" },
    { "molar", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &molar_text, N_ ("Acid, mol in a litre"), "M" },
    { "alkalinity", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &alkalinity_text, N_ ("Alkalinity of the water, eq in a litre"), "EQ_PER_L" },
    { "carbonate", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &carbonate_text, N_ ("Carbonate that stays in the bath, mol in a litre; 0 if not given"), "M" },
    SW_CLI_JSON_ENTRY (&json),
    G_OPTION_ENTRY_NULL,
  };

  if (!sw_cli_parse (call, entries, 0, 0, NULL, error))
    return FALSE;
  const SwCliNumber numbers[] = {
    { "--molar", molar_text, 0, 20, &molar, FALSE },
    { "--alkalinity", alkalinity_text, 0, 5, &alkalinity, FALSE },
    { "--carbonate", carbonate_text, 0, 5, &carbonate, TRUE },
  };
  if (acid_text == NULL)
    return sw_cli_missing ("--acid", error);
  if (!sw_cli_choice ("--acid", acid_text, sw_record_find_member (SW_RECORD_BATH, "acid")->choices, &acid, error) || !sw_cli_numbers (numbers, G_N_ELEMENTS (numbers), error))
    return FALSE;

  ph = sw_ph (systems[acid], molar, alkalinity, carbonate);
  sentence = g_strdup_printf (_ ("pH %.2f at 25 °C"), ph);
  return print_sum (json, "ph", ph, sentence, error);
}

/* What the rate means in time, too. */
static gboolean
print_rate (gboolean json, double rate, GError **error)
{
  g_autofree char *sentence = NULL;

  if (rate * 1e6 < G_LN2)
    sentence = g_strdup_printf (_ ("%.4g a minute: practically nothing strikes"), rate);
  else
    sentence = g_strdup_printf (_ ("%.4g a minute: half of the dye has struck after %.3g minutes"), rate, G_LN2 / rate);
  return print_sum (json, "rate_per_min", rate, sentence, error);
}

gboolean
sw_cli_calc_strike (SwCall *call, GError **error)
{
  gboolean json = FALSE;
  g_autofree char *half_time_text = NULL;
  g_autofree char *ph_text = NULL;
  g_autofree char *temperature_text = NULL;
  g_autofree char *fibre_text = NULL;
  g_autofree char *activation_text = NULL;
  double half_time, ph, temperature, activation;
  int fibre = -1;
  const SwMember *fibres = sw_record_find_member (SW_RECORD_YARN, "fibre");
  const GOptionEntry entries[] = {
    { "half-time", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &half_time_text, N_ ("Minutes until half has struck at pH 4, 90 °C, on superwash wool"), "MIN" },
    { "ph", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &ph_text, N_ ("pH of the bath"), "PH" },
    { "temp", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &temperature_text, N_ ("Temperature of the bath, °C"), "C" },
    { "fibre", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &fibre_text, N_ ("superwash-wool, wool, superwash-nylon, nylon or silk"), "FIBRE" },
    { "activation", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &activation_text, N_ ("Activation energy of the dye, kJ/mol; 75 if not given"), "KJ" },
    SW_CLI_JSON_ENTRY (&json),
    G_OPTION_ENTRY_NULL,
  };

  if (!sw_cli_parse (call, entries, 0, 0, NULL, error))
    return FALSE;
  activation = sw_record_find_member (SW_RECORD_DYE, "activation_kj_per_mol")->fallback;
  const SwCliNumber numbers[] = {
    { "--half-time", half_time_text, 0.001, 10000, &half_time, FALSE },
    { "--ph", ph_text, 0, 14, &ph, FALSE },
    { "--temp", temperature_text, 0, 130, &temperature, FALSE },
    { "--activation", activation_text, 0, 200, &activation, TRUE },
  };
  if (!sw_cli_numbers (numbers, G_N_ELEMENTS (numbers), error))
    return FALSE;
  if (fibre_text == NULL)
    return sw_cli_missing ("--fibre", error);
  if (!sw_cli_choice ("--fibre", fibre_text, fibres->choices, &fibre, error))
    return FALSE;
  return print_rate (json, sw_strike_rate (half_time, activation, ph, temperature, (SwFibre) fibre), error);
}

gboolean
sw_cli_calc_difference (SwCall *call, GError **error)
{
  static const double least[] = { 0.0, -200.0, -200.0 }, most[] = { 100.0, 200.0, 200.0 };
  gboolean json = FALSE;
  g_auto (GStrv) labs = NULL;
  g_autofree char *sentence = NULL;
  double a[3], b[3], difference;
  const GOptionEntry entries[] = {
    { "lab", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING_ARRAY, &labs, N_ ("A colour in CIELAB; to be given twice"), "L,a,b" },
    SW_CLI_JSON_ENTRY (&json),
    G_OPTION_ENTRY_NULL,
  };

  if (!sw_cli_parse (call, entries, 0, 0, NULL, error))
    return FALSE;
  if (labs == NULL || g_strv_length (labs) != 2)
    {
      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE, _ ("--lab has to be given twice, once for each colour (see %s --help)."), g_get_prgname ());
      return FALSE;
    }
  if (!sw_cli_list ("--lab", labs[0], 3, least, most, a, error) || !sw_cli_list ("--lab", labs[1], 3, least, most, b, error))
    return FALSE;

  difference = sw_ciede2000 ((SwLab){ a[0], a[1], a[2] }, (SwLab){ b[0], b[1], b[2] });
  sentence = g_strdup_printf (_ ("CIEDE2000 %.4f"), difference);
  return print_sum (json, "ciede2000", difference, sentence, error);
}
