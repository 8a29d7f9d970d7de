/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-json.h"
#include "cli/sw-cli-stream.h"
#include "cli/sw-cli-value.h"

#include "colour/sw-mix.h"
#include "colour/sw-recover.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* The sums on spectra. Without --json they print a table that can be read back as a spectrum. */

#define FIRST_NM 380
#define STEP_NM 10

/* Which members a sum prints. */
typedef enum
{
  SHOW_REFLECTANCE = 1 << 0,
  SHOW_XYZ = 1 << 1,
  SHOW_SRGB = 1 << 2,
} Show;

static gboolean
print_json (const double *reflectance, SwXyz xyz, Show show, GError **error)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_object (builder);
  if (show & SHOW_REFLECTANCE)
    sw_cli_json_numbers (builder, "reflectance", reflectance, SW_BANDS, SW_DIGITS_SUM);
  if (show & SHOW_XYZ)
    sw_cli_json_xyz (builder, xyz, SW_DIGITS_SUM);
  sw_cli_json_lab (builder, sw_lab_from_xyz (xyz), SW_DIGITS_SUM);
  if (show & SHOW_SRGB)
    {
      sw_cli_json_srgb (builder, sw_srgb_from_xyz (xyz));
      json_builder_set_member_name (builder, "in_gamut");
      json_builder_add_boolean_value (builder, sw_xyz_in_gamut (xyz));
    }
  json_builder_end_object (builder);
  return sw_cli_print_json (builder, error);
}

/* Figures, then the spectrum; the figures are remarks to whoever reads the spectrum. */
static gboolean
print_words (const double *reflectance, SwXyz xyz, Show show, GError **error)
{
  g_autoptr (GString) out = g_string_new (NULL);
  SwLab lab = sw_lab_from_xyz (xyz);
  g_autofree char *hex = sw_cli_hex (sw_srgb_from_xyz (xyz));
  const char *remark = show & SHOW_REFLECTANCE ? "# " : "";

  g_string_append_printf (out, "%sXYZ %.4f %.4f %.4f\n", remark, xyz.x, xyz.y, xyz.z);
  g_string_append_printf (out, "%sL*a*b* %.3f %.3f %.3f\n", remark, lab.l, lab.a, lab.b);
  if (sw_xyz_in_gamut (xyz))
    g_string_append_printf (out, "%ssRGB %s\n", remark, hex);
  else
    {
      g_string_append (out, remark);
      /* Translators: the colour is more vivid than a screen can show */
      g_string_append_printf (out, _ ("sRGB %s, less vivid than it is"), hex);
      g_string_append_c (out, '\n');
    }
  if (show & SHOW_REFLECTANCE)
    {
      g_string_append (out, "nm,reflectance\n");
      for (int band = 0; band < SW_BANDS; band++)
        g_string_append_printf (out, "%d,%.6f\n", FIRST_NM + STEP_NM * band, reflectance[band]);
    }
  return sw_cli_print_words (out->str, error);
}

static gboolean
print_colour (gboolean json, const double *reflectance, Show show, GError **error)
{
  SwXyz xyz = sw_xyz_from_reflectance (reflectance);

  return json ? print_json (reflectance, xyz, show, error) : print_words (reflectance, xyz, show, error);
}

gboolean
sw_cli_calc_colour (SwCall *call, GError **error)
{
  gboolean json = FALSE;
  g_autofree char *file = NULL;
  double reflectance[SW_BANDS];
  const GOptionEntry entries[] = {
    { "reflectance", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_FILENAME, &file, N_ ("Lines of wavelength in nm and reflectance, 0 to 1; - is standard input"), "FILE.csv" },
    SW_CLI_JSON_ENTRY (&json),
    G_OPTION_ENTRY_NULL,
  };

  if (!sw_cli_parse (call, entries, 0, 0, NULL, error))
    return FALSE;
  if (file == NULL)
    return sw_cli_missing ("--reflectance", error);
  return sw_cli_read_spectrum (file, reflectance, error) && print_colour (json, reflectance, SHOW_XYZ | SHOW_SRGB, error);
}

gboolean
sw_cli_calc_spectrum (SwCall *call, GError **error)
{
  static const double least[] = { 0.0, 0.0, 0.0 }, most[] = { 255.0, 255.0, 255.0 };
  gboolean json = FALSE;
  g_autofree char *text = NULL;
  double codes[3], reflectance[SW_BANDS];
  const GOptionEntry entries[] = {
    { "srgb", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &text, N_ ("A colour in sRGB, each 0 to 255"), "R,G,B" },
    SW_CLI_JSON_ENTRY (&json),
    G_OPTION_ENTRY_NULL,
  };

  if (!sw_cli_parse (call, entries, 0, 0, NULL, error))
    return FALSE;
  if (text == NULL)
    return sw_cli_missing ("--srgb", error);
  if (!sw_cli_list ("--srgb", text, 3, least, most, codes, error))
    return FALSE;
  SwSrgb srgb = { codes[0] / 255.0, codes[1] / 255.0, codes[2] / 255.0 };
  if (!sw_recover_reflectance (sw_xyz_from_srgb (srgb), reflectance, error))
    {
      g_prefix_error (error, "--srgb: ");
      return FALSE;
    }
  return print_colour (json, reflectance, SHOW_REFLECTANCE, error);
}

/* "S.csv,DEPTH": the depth is what follows the last comma, since a file's name may have commas too. */
static gboolean
read_sample (const char *text, double *reflectance, double *depth, GError **error)
{
  const char *comma = strrchr (text, ',');
  g_autofree char *file = NULL;
  SwCliNumber number = { "--sample", NULL, 0.001, 100, depth, FALSE };

  if (comma == NULL)
    {
      g_autofree char *shown = g_filename_display_name (text);

      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE,
                   _ ("--sample: “%s” lacks the depth of the sample, write it as in S.csv,1."), shown);
      return FALSE;
    }
  file = g_strndup (text, (gsize) (comma - text));
  number.text = comma + 1;
  return sw_cli_numbers (&number, 1, error) && sw_cli_read_spectrum (file, reflectance, error);
}

static gboolean
read_dyes (char **samples, char **depth_texts, SwPalette *palette, double *depths, GError **error)
{
  gsize n = samples != NULL ? g_strv_length (samples) : 0;
  gsize n_depths = depth_texts != NULL ? g_strv_length (depth_texts) : 0;

  if (n != n_depths || n > SW_MAX_DYES)
    {
      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE,
                   /* Translators: the numbers are how often each option was given, and how often it may be */
                   _ ("--sample (%u) and --depth (%u) go in pairs, up to %u of them."), (guint) n, (guint) n_depths, (guint) SW_MAX_DYES);
      return FALSE;
    }
  for (gsize i = 0; i < n; i++)
    {
      const SwCliNumber depth = { "--depth", depth_texts[i], 0, 100, &depths[i], FALSE };
      double reflectance[SW_BANDS], sample_depth;

      if (!read_sample (samples[i], reflectance, &sample_depth, error) || !sw_cli_numbers (&depth, 1, error))
        return FALSE;
      sw_palette_add_dye (palette, reflectance, sample_depth);
    }
  return TRUE;
}

gboolean
sw_cli_calc_mix (SwCall *call, GError **error)
{
  gboolean json = FALSE;
  g_autofree char *yarn = NULL;
  g_auto (GStrv) samples = NULL;
  g_auto (GStrv) depth_texts = NULL;
  g_autofree SwPalette *palette = g_new0 (SwPalette, 1);
  double depths[SW_MAX_DYES], reflectance[SW_BANDS];
  const GOptionEntry entries[] = {
    { "yarn", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_FILENAME, &yarn, N_ ("Reflectance of the undyed yarn"), "Y.csv" },
    /* xgettext:no-c-format */
    { "sample", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_FILENAME_ARRAY, &samples, N_ ("Reflectance of a dyed sample, and its depth, % on weight of fibre; may be repeated"), "S.csv,DEPTH" },
    { "depth", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING_ARRAY, &depth_texts, N_ ("Depth of that dye in the mixture; once for each sample, in the same order"), "D" },
    SW_CLI_JSON_ENTRY (&json),
    G_OPTION_ENTRY_NULL,
  };

  if (!sw_cli_parse (call, entries, 0, 0, NULL, error))
    return FALSE;
  if (yarn == NULL)
    return sw_cli_missing ("--yarn", error);
  if (!sw_cli_read_spectrum (yarn, reflectance, error))
    return FALSE;
  sw_palette_set_yarn (palette, reflectance);
  if (!read_dyes (samples, depth_texts, palette, depths, error))
    return FALSE;
  sw_mix_reflectance (palette, depths, reflectance);
  return print_colour (json, reflectance, SHOW_REFLECTANCE | SHOW_SRGB, error);
}
