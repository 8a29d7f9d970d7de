/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-run.h"
#include "cli/sw-cli-stream.h"
#include "cli/sw-cli-value.h"

#include "forecast/sw-listing-words.h"

#include <glib/gi18n-lib.h>

/* The text of a shop's page, or what its picture shows. */
gboolean
sw_cli_words (SwCall *call, GError **error)
{
  static const char *const systems[] = { "metric", "us", NULL };
  gboolean alt = FALSE;
  int system = 0;
  g_auto (GStrv) files = NULL;
  g_autofree char *units = NULL;
  g_autoptr (SwForecast) forecast = NULL;
  g_autofree char *words = NULL;
  g_autofree char *out = NULL;
  const GOptionEntry entries[] = {
    { "alt", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_NONE, &alt, N_ ("Instead, the alternative text: what the listing's picture shows"), NULL },
    { "units", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &units, N_ ("Grams and metres, or ounces and yards"), "metric|us" },
    G_OPTION_ENTRY_NULL,
  };

  if (!sw_cli_parse (call, entries, 1, 1, &files, error) || !sw_cli_choice ("--units", units, systems, &system, error))
    return FALSE;
  forecast = sw_cli_run (files[0], error);
  if (forecast == NULL)
    return FALSE;
  words = alt ? sw_listing_alt (forecast) : sw_listing_words (forecast, system == 1);
  out = g_strconcat (words, g_str_has_suffix (words, "\n") ? "" : "\n", NULL);
  return sw_cli_print_words (out, error);
}
