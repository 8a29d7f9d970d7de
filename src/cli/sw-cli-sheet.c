/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-batch.h"
#include "cli/sw-cli-paper.h"
#include "cli/sw-cli-run.h"
#include "cli/sw-cli-stream.h"
#include "cli/sw-cli-value.h"

#include "files/sw-print.h"
#include "files/sw-sheet-text.h"
#include "files/sw-svg.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Skeins that are tried to say how alike a batch comes out. */
#define SKEINS_TRIED 8

/* What was typed. */
typedef struct
{
  char *output, *format, *units, *paper, *skeins, *pans;
} Typed;

static void
typed_clear (Typed *typed)
{
  g_free (typed->output);
  g_free (typed->format);
  g_free (typed->units);
  g_free (typed->paper);
  g_free (typed->skeins);
  g_free (typed->pans);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Typed, typed_clear)

/* What it means. */
typedef struct
{
  int format;
  SwMeasureSystem system;
  SwPaper paper;
  SwCliBatch batch;
} Order;

static GBytes *
bytes_of (char *text)
{
  return g_bytes_new_take (text, strlen (text));
}

static GBytes *
make_text (SwForecast *forecast, const SwSheetAccount *account, const Order *order, GError **error)
{
  return bytes_of (sw_sheet_text (account, order->system));
}

static GBytes *
make_json (SwForecast *forecast, const SwSheetAccount *account, const Order *order, GError **error)
{
  return bytes_of (sw_sheet_json (account));
}

static GBytes *
make_pdf (SwForecast *forecast, const SwSheetAccount *account, const Order *order, GError **error)
{
  const SwSheetOptions options = { order->paper, order->system == SW_MEASURE_US };

  return sw_print_sheet_pdf (forecast, account->sheet, &options, error);
}

static GBytes *
make_svg (SwForecast *forecast, const SwSheetAccount *account, const Order *order, GError **error)
{
  return bytes_of (sw_svg_write (forecast->sketch, account->sheet, order->system == SW_MEASURE_US));
}

/* What the sheet can be, by the ending of its file. */
static const struct
{
  const char *name;
  GBytes *(*make) (SwForecast *forecast, const SwSheetAccount *account, const Order *order, GError **error);
  gboolean words; /* for people: to a terminal in its own encoding */
  gboolean tries; /* tells how alike skeins come out, for which several are forecast */
} formats[] = {
  { "txt", make_text, TRUE, TRUE },
  { "json", make_json, FALSE, TRUE },
  { "pdf", make_pdf, FALSE, FALSE },
  { "svg", make_svg, FALSE, FALSE },
};

/* Index of the format that a file's name ends in; -1 */
static int
format_from_name (const char *name)
{
  const char *dot = name != NULL ? strrchr (name, '.') : NULL;

  for (gsize i = 0; dot != NULL && i < G_N_ELEMENTS (formats); i++)
    if (g_ascii_strcasecmp (dot + 1, formats[i].name) == 0)
      return (int) i;
  return -1;
}

static gboolean
read_format (const Typed *typed, int *format, GError **error)
{
  const char *names[G_N_ELEMENTS (formats) + 1] = { NULL };

  for (gsize i = 0; i < G_N_ELEMENTS (formats); i++)
    names[i] = formats[i].name;
  *format = typed->output == NULL ? 0 : format_from_name (typed->output);
  if (!sw_cli_choice ("--format", typed->format, names, format, error))
    return FALSE;
  if (*format < 0)
    {
      g_autofree char *shown = g_filename_display_name (typed->output);
      g_autofree char *endings = g_strjoinv (", .", (char **) names);

      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE,
                   /* Translators: a file's name or “-”, and a list of endings: “txt, .json” */
                   _ ("%s: Say which kind of sheet by the ending (.%s), or by --format."), shown, endings);
      return FALSE;
    }
  return TRUE;
}

static gboolean
read_order (const Typed *typed, Order *order, GError **error)
{
  static const char *const systems[] = { "metric", "us", NULL };
  int system = SW_MEASURE_METRIC;

  if (!read_format (typed, &order->format, error) || !sw_cli_choice ("--units", typed->units, systems, &system, error) || !sw_cli_paper (typed->paper, &order->paper, error))
    return FALSE;
  order->system = (SwMeasureSystem) system;
  return sw_cli_batch (typed->skeins, typed->pans, &order->batch, error);
}

/* Several forecasts, to tell how alike skeins come out and what slips do. */
static gboolean
try_skeins (const SwSketch *sketch, SwRepeat **repeat, GArray **slips, GError **error)
{
  *repeat = sw_repeat_new (sketch, SKEINS_TRIED, NULL, error);
  if (*repeat != NULL)
    *slips = sw_slips_new (sketch, NULL, error);
  return *slips != NULL;
}

static GBytes *
make_sheet (const SwSketch *sketch, const Order *order, GError **error)
{
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwForecast) forecast = sw_forecaster_run (forecaster, sketch, NULL, error);
  g_autoptr (SwRepeat) repeat = NULL;
  g_autoptr (GArray) slips = NULL;
  g_autoptr (SwSheet) sheet = NULL;

  if (forecast == NULL || (formats[order->format].tries && !try_skeins (sketch, &repeat, &slips, error)))
    return NULL;
  sheet = sw_forecast_sheet (forecast);
  return formats[order->format].make (forecast, &(const SwSheetAccount){ sheet, repeat, slips }, order, error);
}

static gboolean
put_out (const char *output, GBytes *bytes, gboolean words, GError **error)
{
  g_autofree char *text = NULL;

  if (output != NULL && !g_str_equal (output, "-"))
    return sw_cli_write (output, bytes, error);
  if (!words)
    return sw_cli_write ("-", bytes, error);
  text = g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  return sw_cli_print_words (text, error);
}

gboolean
sw_cli_sheet (SwCall *call, GError **error)
{
  g_auto (Typed) typed = { NULL };
  g_auto (GStrv) files = NULL;
  g_autoptr (SwSketch) sketch = NULL;
  g_autoptr (GBytes) bytes = NULL;
  Order order = { 0 };
  const GOptionEntry entries[] = {
    { "output", 'o', G_OPTION_FLAG_NONE, G_OPTION_ARG_FILENAME, &typed.output, N_ ("Where the sheet goes; else standard output"), "OUT" },
    { "format", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.format, N_ ("Kind of sheet; else by the ending of OUT"), "txt|json|pdf|svg" },
    { "skeins", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.skeins, N_ ("Skeins in the batch"), "N" },
    { "pans", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.pans, N_ ("Pans they are dyed in"), "P" },
    { "units", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.units, N_ ("Units to measure in"), "metric|us" },
    { "paper", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.paper, N_ ("Paper of a PDF; else as usual where you are"), "a4|letter" },
    G_OPTION_ENTRY_NULL,
  };

  if (!sw_cli_parse (call, entries, 1, 1, &files, error) || !read_order (&typed, &order, error))
    return FALSE;
  sketch = sw_cli_read_batch (files[0], &order.batch, error);
  if (sketch == NULL)
    return FALSE;
  sw_cli_progress (_ ("Working out the dye sheet…"));
  bytes = make_sheet (sketch, &order, error);
  sw_cli_progress (NULL);
  if (bytes == NULL)
    {
      g_autofree char *shown = sw_cli_display_name (files[0]);

      g_prefix_error (error, "%s: ", shown);
      return FALSE;
    }
  return put_out (typed.output, bytes, formats[order.format].words, error);
}
