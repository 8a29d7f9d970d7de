/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-json.h"
#include "cli/sw-cli-run.h"
#include "cli/sw-cli-stream.h"
#include "files/sw-table.h"
#include "cli/sw-cli-value.h"

#include "draw/sw-look.h"

#include <glib/gi18n-lib.h>

#define N_WORKED (SW_WORKED_ROUND + 1)

/* Every width from @from to @to, flat and in the round. */
typedef struct
{
  gsize from, to;
  SwPooling *results[N_WORKED];
} Scan;

static void
scan_fill (Scan *scan, const SwForecast *forecast)
{
  for (int worked = 0; worked < N_WORKED; worked++)
    {
      scan->results[worked] = g_new0 (SwPooling, scan->to - scan->from + 1);
      sw_forecast_scan (forecast, (SwWorked) worked, scan->from, scan->to, scan->results[worked]);
    }
}

static void
scan_clear (Scan *scan)
{
  for (int worked = 0; worked < N_WORKED; worked++)
    g_free (scan->results[worked]);
}

static gboolean
print_csv (const Scan *scan, GError **error)
{
  g_autoptr (GString) out = g_string_new ("width,worked,stack,row_step,stitch_step,verdict\n");

  for (gsize i = 0; i <= scan->to - scan->from; i++)
    for (int worked = 0; worked < N_WORKED; worked++)
      {
        const SwPooling *pooling = &scan->results[worked][i];

        g_string_append_printf (out, "%" G_GSIZE_FORMAT ",%s,%.3f,%d,%d,%s\n", pooling->width, sw_cli_worked_name (pooling->worked),
                                sw_cli_round (pooling->stack, SW_DIGITS_FIGURE), pooling->row_step, pooling->stitch_step, sw_verdict_name (pooling->verdict));
      }
  return sw_cli_print_data (out->str, error);
}

static void
add_result (JsonBuilder *builder, const SwPooling *pooling)
{
  json_builder_begin_object (builder);
  sw_cli_json_whole (builder, "width", (gint64) pooling->width);
  sw_cli_json_text (builder, "worked", sw_cli_worked_name (pooling->worked));
  sw_cli_json_number (builder, "stack", pooling->stack, SW_DIGITS_FIGURE);
  sw_cli_json_whole (builder, "row_step", pooling->row_step);
  sw_cli_json_whole (builder, "stitch_step", pooling->stitch_step);
  sw_cli_json_number (builder, "angle_deg", pooling->angle_deg, SW_DIGITS_FIGURE);
  sw_cli_json_text (builder, "verdict", sw_verdict_name (pooling->verdict));
  json_builder_end_object (builder);
}

static gboolean
print_json (const Scan *scan, GError **error)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_array (builder);
  for (gsize i = 0; i <= scan->to - scan->from; i++)
    for (int worked = 0; worked < N_WORKED; worked++)
      add_result (builder, &scan->results[worked][i]);
  json_builder_end_array (builder);
  return sw_cli_print_json (builder, error);
}

/* Where the stretch of one verdict that begins at @start ends, and the widths in it that stack most and least. */
static gsize
stretch_end (const SwPooling *results, gsize start, gsize n, gsize *most, gsize *least)
{
  gsize end = start;

  *most = *least = start;
  while (end + 1 < n && results[end + 1].verdict == results[start].verdict)
    {
      end++;
      if (results[end].stack > results[*most].stack)
        *most = end;
      if (results[end].stack < results[*least].stack)
        *least = end;
    }
  return end;
}

static void
add_stretches (SwTable *table, const SwPooling *results, gsize n)
{
  static const char *const words[] = {
    [SW_VERDICT_SCATTERS] = N_ ("scatters"),
    /* Translators: the colours stand in columns */
    [SW_VERDICT_COLUMNS] = N_ ("columns"),
    [SW_VERDICT_DRIFTS] = N_ ("drifts"),
    [SW_VERDICT_STRIPES] = N_ ("stripes"),
    [SW_VERDICT_EVEN] = N_ ("even"),
  };

  for (gsize start = 0, end, most, least; start < n; start = end + 1)
    {
      end = stretch_end (results, start, n, &most, &least);
      if (end > start)
        sw_table_add_format (table, "%" G_GSIZE_FORMAT "–%" G_GSIZE_FORMAT, results[start].width, results[end].width);
      else
        sw_table_add_format (table, "%" G_GSIZE_FORMAT, results[start].width);
      sw_table_add (table, _ (words[results[start].verdict]));
      sw_table_add_format (table, "%.2f", results[most].stack + 0.0);
      sw_table_add_format (table, "%" G_GSIZE_FORMAT, results[most].width);
      sw_table_add_format (table, "%" G_GSIZE_FORMAT, results[least].width);
    }
}

/* For people: neighbouring widths of one verdict together. */
static gboolean
print_words (const Scan *scan, GError **error)
{
  static const char *const headings[] = {
    [SW_WORKED_FLAT] = N_ ("Worked flat"),
    [SW_WORKED_ROUND] = N_ ("Worked in the round"),
  };
  g_autoptr (GString) out = g_string_new (NULL);

  for (int worked = 0; worked < N_WORKED; worked++)
    {
      g_autoptr (SwTable) table = sw_table_new ("rlrrr");

      g_string_append_printf (out, "%s%s\n", worked > 0 ? "\n" : "", _ (headings[worked]));
      sw_table_add (table, _ ("stitches"));
      sw_table_add (table, _ ("the colours"));
      /* Translators: how much the colours of one width stack, 0 chance to 1 all; then at which width most */
      sw_table_add (table, _ ("stack"));
      sw_table_add (table, _ ("most at"));
      /* Translators: at which width the colours stack least */
      sw_table_add (table, _ ("least at"));
      add_stretches (table, scan->results[worked], scan->to - scan->from + 1);
      sw_table_print (table, 2, out);
    }
  return sw_cli_print_words (out->str, error);
}

gboolean
sw_cli_scan (SwCall *call, GError **error)
{
  gboolean csv = FALSE, json = FALSE, written;
  g_autofree char *from_text = NULL;
  g_autofree char *to_text = NULL;
  g_auto (GStrv) files = NULL;
  g_autoptr (SwForecast) forecast = NULL;
  Scan scan = { .from = SW_SCAN_FROM, .to = SW_SCAN_TO };
  const GOptionEntry entries[] = {
    { "from", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &from_text, N_ ("Narrowest width in stitches, from 3; 10 if not given"), "A" },
    { "to", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &to_text, N_ ("Widest width in stitches, up to 600; 600 if not given"), "B" },
    { "csv", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_NONE, &csv, N_ ("Print lines of values with commas between them"), NULL },
    SW_CLI_JSON_ENTRY (&json),
    G_OPTION_ENTRY_NULL,
  };

  if (!sw_cli_parse (call, entries, 1, 1, &files, error) || !sw_cli_widths (from_text, to_text, &scan.from, &scan.to, error))
    return FALSE;
  if (csv && json)
    {
      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE, _ ("--csv and --json cannot both be given (see %s --help)."), g_get_prgname ());
      return FALSE;
    }
  forecast = sw_cli_run (files[0], error);
  if (forecast == NULL)
    return FALSE;

  scan_fill (&scan, forecast);
  written = json ? print_json (&scan, error) : csv ? print_csv (&scan, error)
                                                   : print_words (&scan, error);
  scan_clear (&scan);
  return written;
}
