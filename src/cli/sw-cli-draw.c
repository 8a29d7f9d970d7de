/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-run.h"
#include "cli/sw-cli-stream.h"
#include "cli/sw-cli-value.h"

#include "files/sw-picture.h"

#include <glib/gi18n-lib.h>

/* What was typed. */
typedef struct
{
  char *output, *format, *face, *size, *units, *stitch_px, *side;
  gboolean dark, no_marks;
} Typed;

static void
typed_clear (Typed *typed)
{
  g_free (typed->output);
  g_free (typed->format);
  g_free (typed->face);
  g_free (typed->size);
  g_free (typed->units);
  g_free (typed->stitch_px);
  g_free (typed->side);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Typed, typed_clear)

/* What it means. */
typedef struct
{
  SwPicture picture;
  SwFormat format;
  int width, height; /* 0: as suits the picture */
  SwLook look;
} Order;

static const char *const format_names[] = { [SW_FORMAT_PNG] = "png", [SW_FORMAT_SVG] = "svg", [SW_FORMAT_PDF] = "pdf", NULL };

static gboolean
read_picture (const char *word, SwPicture *picture, GError **error)
{
  const char *names[SW_N_PICTURES + 1] = { NULL };
  int choice = 0;

  for (int i = 0; i < SW_N_PICTURES; i++)
    names[i] = sw_picture_name ((SwPicture) i);
  /* Translators: what kind of picture; begins a sentence such as “Picture: “sock” is none of pan, strip, cloth, scan” */
  if (!sw_cli_choice (_ ("Picture"), word, names, &choice, error))
    return FALSE;
  *picture = (SwPicture) choice;
  return TRUE;
}

static gboolean
read_format (const Typed *typed, SwFormat *format, GError **error)
{
  int choice = sw_format_from_file_name (typed->output);

  if (!sw_cli_choice ("--format", typed->format, format_names, &choice, error))
    return FALSE;
  if (choice < 0)
    {
      g_autofree char *shown = g_filename_display_name (typed->output);

      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE,
                   /* Translators: %s is a file's name or “-” */
                   _ ("%s: Say which kind of picture by the ending .png, .svg or .pdf, or by --format."), shown);
      return FALSE;
    }
  *format = (SwFormat) choice;
  return TRUE;
}

static gboolean
read_look (const Typed *typed, SwLook *look, GError **error)
{
  static const char *const faces[] = { "first", "second", NULL };
  static const char *const sides[] = { "knit", "purl", NULL };
  static const char *const units[] = { "cm", "in", NULL };
  const SwCliNumber stitch = { "--stitch-px", typed->stitch_px, 2, 120, &look->stitch_px, TRUE };
  int face = 0, unit = 0, side = 0;

  *look = sw_look_plain;
  if (!sw_cli_choice ("--face", typed->face, faces, &face, error) || !sw_cli_choice ("--side", typed->side, sides, &side, error) || !sw_cli_choice ("--units", typed->units, units, &unit, error) || !sw_cli_numbers (&stitch, 1, error))
    return FALSE;
  look->second_face = face == 1;
  look->purl_side = side == 1;
  look->inches = unit == 1;
  look->dark = typed->dark;
  look->marks = !typed->no_marks;
  return TRUE;
}

static gboolean
read_order (const Typed *typed, const char *picture, Order *order, GError **error)
{
  if (!read_picture (picture, &order->picture, error))
    return FALSE;
  if (typed->output == NULL)
    return sw_cli_missing ("-o", error);
  return read_format (typed, &order->format, error) && read_look (typed, &order->look, error) && sw_cli_size (typed->size, &order->width, &order->height, error);
}

static GBytes *
draw (const Order *order, const char *name, GError **error)
{
  g_autoptr (SwForecast) forecast = sw_cli_run (name, error);
  int width = order->width, height = order->height;
  GBytes *bytes;

  if (forecast == NULL)
    return NULL;
  if (width == 0)
    sw_picture_usual_size (order->picture, forecast, &width, &height);
  sw_cli_progress (_ ("Drawing…"));
  bytes = sw_picture_render (order->picture, order->format, forecast, width, height, &order->look, error);
  sw_cli_progress (NULL);
  return bytes;
}

gboolean
sw_cli_draw (SwCall *call, GError **error)
{
  g_auto (Typed) typed = { NULL };
  g_auto (GStrv) arguments = NULL;
  g_autoptr (GBytes) bytes = NULL;
  Order order = { 0 };
  const GOptionEntry entries[] = {
    { "output", 'o', G_OPTION_FLAG_NONE, G_OPTION_ARG_FILENAME, &typed.output, N_ ("Where the picture goes; - is standard output"), "OUT" },
    { "format", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.format, N_ ("Kind of picture; else by the ending of OUT"), "png|svg|pdf" },
    { "size", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.size, N_ ("Width and height in px, 1/96 in on paper"), "WxH" },
    { "face", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.face, N_ ("Pan: the face that is up"), "first|second" },
    { "units", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.units, N_ ("Units of rulers and lengths"), "cm|in" },
    { "stitch-px", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.stitch_px, N_ ("Cloth: width of a stitch, 2 to 120 px; else the whole width is shown"), "N" },
    { "side", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_STRING, &typed.side, N_ ("Cloth: the side that is seen"), "knit|purl" },
    { "no-marks", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_NONE, &typed.no_marks, N_ ("Pan: without the numbered outlines of the pours"), NULL },
    { "dark", '\0', G_OPTION_FLAG_NONE, G_OPTION_ARG_NONE, &typed.dark, N_ ("On a dark ground"), NULL },
    G_OPTION_ENTRY_NULL,
  };

  if (!sw_cli_parse (call, entries, 2, 2, &arguments, error) || !read_order (&typed, arguments[0], &order, error))
    return FALSE;
  bytes = draw (&order, arguments[1], error);
  return bytes != NULL && sw_cli_write (typed.output, bytes, error);
}
