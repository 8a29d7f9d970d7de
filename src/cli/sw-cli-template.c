/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-batch.h"
#include "cli/sw-cli-paper.h"
#include "cli/sw-cli-stream.h"
#include "cli/sw-cli-value.h"

#include "files/sw-print.h"
#include "files/sw-svg.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static const char *const formats[] = { "pdf", "svg", NULL };
static const char *const systems[] = { "metric", "us", NULL };

/* What was typed. */
typedef struct
{
  char *output, *format, *paper, *units, *skeins, *pans;
} Typed;

static void
typed_clear (Typed *typed)
{
  g_free (typed->output);
  g_free (typed->format);
  g_free (typed->paper);
  g_free (typed->units);
  g_free (typed->skeins);
  g_free (typed->pans);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Typed, typed_clear)

/* What it means. */
typedef struct
{
  int format, system;
  SwPaper paper;
  SwCliBatch batch;
} Order;

gboolean
sw_cli_paper (const char *text, SwPaper *paper, GError **error)
{
  const char *names[SW_N_PAPERS + 1] = { NULL };
  int choice = (int) sw_paper_usual ();

  for (int i = 0; i < SW_N_PAPERS; i++)
    names[i] = sw_paper_name ((SwPaper) i);
  if (!sw_cli_choice ("--paper", text, names, &choice, error))
    return FALSE;
  *paper = (SwPaper) choice;
  return TRUE;
}

static gboolean
read_format (const Typed *typed, int *format, GError **error)
{
  const char *dot = strrchr (typed->output, '.');

  *format = -1;
  for (int i = 0; dot != NULL && formats[i] != NULL; i++)
    if (g_ascii_strcasecmp (dot + 1, formats[i]) == 0)
      *format = i;
  if (!sw_cli_choice ("--format", typed->format, formats, format, error))
    return FALSE;
  if (*format < 0)
    {
      g_autofree char *shown = g_filename_display_name (typed->output);

      /* Translators: %s is a file's name or “-” */
      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE, _ ("%s: Say which kind of template by the ending .pdf or .svg, or by --format."), shown);
      return FALSE;
    }
  return TRUE;
}

static gboolean
read_order (const Typed *typed, Order *order, GError **error)
{
  *order = (Order){ 0 };
  if (typed->output == NULL)
    return sw_cli_missing ("-o", error);
  return read_format (typed, &order->format, error) && sw_cli_paper (typed->paper, &order->paper, error) && sw_cli_choice ("--units", typed->units, systems, &order->system, error) &&
         sw_cli_batch (typed->skeins, typed->pans, &order->batch, error);
}

static GBytes *
draw (const SwSketch *sketch, const Order *order, GError **error)
{
  g_autoptr (SwSheet) sheet = NULL;
  char *text;

  if (order->format == 0)
    return sw_print_template_pdf (sketch, order->paper, error);
  sheet = sw_sheet_new (sketch, NULL);
  text = sw_svg_write (sketch, sheet, order->system == 1);
  return g_bytes_new_take (text, strlen (text));
}

gboolean
sw_cli_template (SwCall *call, GError **error)
{
  g_auto (Typed) typed = { NULL };
  g_auto (GStrv) files = NULL;
  g_autoptr (SwSketch) sketch = NULL;
  g_autoptr (GBytes) bytes = NULL;
  Order order;
  const GOptionEntry entries[] = {
    { "output", 'o', G_OPTION_FLAG_NONE, G_OPTION_ARG_FILENAME, &typed.output, N_ ("Where the template goes; - is standard output"), "OUT" },
    { "format", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.format, N_ ("Pages to print, or a drawing to trace on; else by the ending of OUT"), "pdf|svg" },
    { "skeins", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.skeins, N_ ("Skeins in the batch"), "N" },
    { "pans", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.pans, N_ ("Pans they are dyed in"), "P" },
    { "paper", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.paper, N_ ("Paper to print on; else as usual where you are"), "a4|letter" },
    { "units", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.units, N_ ("Units of the amounts in a drawing"), "metric|us" },
    G_OPTION_ENTRY_NULL,
  };

  if (!sw_cli_parse (call, entries, 1, 1, &files, error) || !read_order (&typed, &order, error))
    return FALSE;
  sketch = sw_cli_read_batch (files[0], &order.batch, error);
  if (sketch != NULL)
    bytes = draw (sketch, &order, error);
  return bytes != NULL && sw_cli_write (typed.output, bytes, error);
}
