/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-json.h"
#include "cli/sw-cli-run.h"
#include "cli/sw-cli-stream.h"
#include "forecast/sw-remarks.h"

#include <glib/gi18n-lib.h>

/* Allowed, and yet worth a second look. */
static void
tell_remarks (const SwSketch *sketch, JsonBuilder *report, GString *words)
{
  g_autoptr (GPtrArray) remarks = sw_sketch_remarks (sketch);

  json_builder_set_member_name (report, "remarks");
  json_builder_begin_array (report);
  for (guint i = 0; i < remarks->len; i++)
    {
      json_builder_add_string_value (report, remarks->pdata[i]);
      g_string_append_printf (words, "  %s\n", (const char *) remarks->pdata[i]);
    }
  json_builder_end_array (report);
}

/* A file is fine when everything the program can do with it can be done: it is forecast, and the forecast dropped. */
static void
check_one (SwCall *call, const char *name, JsonBuilder *report, GString *words)
{
  g_autoptr (GError) fault = NULL;
  g_autoptr (SwForecast) forecast = sw_cli_run (name, &fault);
  g_autofree char *shown = sw_cli_display_name (name);

  json_builder_begin_object (report);
  sw_cli_json_text (report, "file", shown);
  json_builder_set_member_name (report, "ok");
  json_builder_add_boolean_value (report, forecast != NULL);
  if (forecast != NULL)
    {
      sw_cli_json_text (report, "title", forecast->sketch->title);
      /* Translators: %s is a file's name */
      g_string_append_printf (words, _ ("%s: fine"), shown);
      g_string_append_c (words, '\n');
      tell_remarks (forecast->sketch, report, words);
    }
  else
    {
      SwExit exit_code = sw_cli_say (fault);

      sw_cli_json_text (report, "fault", fault->message);
      call->exit_code = MAX (call->exit_code, exit_code);
    }
  json_builder_end_object (report);
}

gboolean
sw_cli_check (SwCall *call, GError **error)
{
  gboolean json = FALSE;
  g_auto (GStrv) files = NULL;
  g_autoptr (JsonBuilder) report = json_builder_new ();
  g_autoptr (GString) words = g_string_new (NULL);
  const GOptionEntry entries[] = {
    { "json", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_NONE, &json, N_ ("Print a JSON list, one object for each file"), NULL },
    G_OPTION_ENTRY_NULL,
  };

  if (!sw_cli_parse (call, entries, 1, G_MAXUINT, &files, error))
    return FALSE;

  json_builder_begin_array (report);
  for (gsize i = 0; files[i] != NULL; i++)
    check_one (call, files[i], report, words);
  json_builder_end_array (report);
  return json ? sw_cli_print_json (report, error) : sw_cli_print_words (words->str, error);
}
