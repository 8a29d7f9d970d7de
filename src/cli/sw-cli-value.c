/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "cli/sw-cli-value.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Pictures of more than this to a side are a slip of the finger. */
#define MOST_PIXELS 8000

/* Widths the forecast's variogram reaches. */
#define NARROWEST 3
#define WIDEST 600

gboolean
sw_cli_missing (const char *option, GError **error)
{
  g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE, _ ("%s is missing (see %s --help)."), option, g_get_prgname ());
  return FALSE;
}

/* The whole of @text must be one finite number; blanks round it do not matter. */
static gboolean
read_number (const char *text, double *number)
{
  g_autofree char *stripped = g_strstrip (g_strdup (text));
  char *end;

  /* Hexadecimal, "inf" and "nan" would pass the converter, and are nobody's way to write an amount. */
  if (stripped[0] == '\0' || strspn (stripped, "0123456789+-.eE") != strlen (stripped))
    return FALSE;
  *number = g_ascii_strtod (stripped, &end);
  return *end == '\0' && isfinite (*number);
}

static gboolean
check_number (const char *option, const char *text, double least, double most, double *number, GError **error)
{
  double value;

  if (!read_number (text, &value))
    {
      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_NUMBER,
                   /* Translators: an option and what was typed for it */
                   _ ("%s: “%s” is not a number, write it with a point as in 2.5."), option, text);
      return FALSE;
    }
  if (value < least || value > most)
    {
      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_NUMBER,
                   /* Translators: an option, the number typed for it, and the limits it may have */
                   _ ("%s: %.10g is not between %.10g and %.10g."), option, value, least, most);
      return FALSE;
    }
  *number = value;
  return TRUE;
}

gboolean
sw_cli_numbers (const SwCliNumber *rows, gsize n, GError **error)
{
  for (const SwCliNumber *row = rows; row < rows + n; row++)
    {
      if (row->text == NULL && row->optional)
        continue;
      if (row->text == NULL)
        return sw_cli_missing (row->option, error);
      if (!check_number (row->option, row->text, row->least, row->most, row->number, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
sw_cli_whole (const char *option, const char *text, gint64 least, gint64 most, gint64 *whole, GError **error)
{
  double number;

  if (text == NULL)
    return TRUE;
  if (!check_number (option, text, (double) least, (double) most, &number, error))
    return FALSE;
  if (number != floor (number))
    {
      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_NUMBER, _ ("%s: %.10g is not a whole number."), option, number);
      return FALSE;
    }
  *whole = (gint64) number;
  return TRUE;
}

gboolean
sw_cli_widths (const char *from_text, const char *to_text, gsize *from, gsize *to, GError **error)
{
  gint64 narrowest = (gint64) *from, widest = (gint64) *to;

  if (!sw_cli_whole ("--from", from_text, NARROWEST, WIDEST, &narrowest, error) || !sw_cli_whole ("--to", to_text, NARROWEST, WIDEST, &widest, error))
    return FALSE;
  if (narrowest > widest)
    {
      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_NUMBER, _ ("--from %d is above --to %d."), (int) narrowest, (int) widest);
      return FALSE;
    }
  *from = (gsize) narrowest;
  *to = (gsize) widest;
  return TRUE;
}

gboolean
sw_cli_list (const char *option, const char *text, gsize n, const double *least, const double *most, double *numbers, GError **error)
{
  g_auto (GStrv) parts = g_strsplit (text, ",", -1);

  if (g_strv_length (parts) != n)
    {
      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_NUMBER,
                   g_dngettext (GETTEXT_PACKAGE,
                                /* Translators: an option and what was typed for it */
                                "%s: “%s” should be %u number.",
                                "%s: “%s” should be %u numbers with commas between them.", n),
                   option, text, (guint) n);
      return FALSE;
    }
  for (gsize i = 0; i < n; i++)
    if (!check_number (option, parts[i], least[i], most[i], &numbers[i], error))
      return FALSE;
  return TRUE;
}

gboolean
sw_cli_choice (const char *option, const char *text, const char *const *choices, int *choice, GError **error)
{
  g_autofree char *all = NULL;

  if (text == NULL)
    return TRUE;
  for (int i = 0; choices[i] != NULL; i++)
    if (g_str_equal (choices[i], text))
      {
        *choice = i;
        return TRUE;
      }
  all = g_strjoinv (", ", (char **) choices);
  g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE,
               /* Translators: an option, what was typed for it, and the words it may have */
               _ ("%s: “%s” is none of %s."), option, text, all);
  return FALSE;
}

gboolean
sw_cli_size (const char *text, int *width, int *height, GError **error)
{
  g_auto (GStrv) parts = NULL;
  double number;
  gint64 w, h;

  if (text == NULL)
    return TRUE;
  parts = g_strsplit (text, "x", -1);
  if (g_strv_length (parts) != 2 || !read_number (parts[0], &number) || !read_number (parts[1], &number))
    {
      g_set_error (error, SW_CLI_ERROR, SW_CLI_ERROR_USAGE,
                   _ ("--size: “%s” is no size, write it as in 800x600."), text);
      return FALSE;
    }
  if (!sw_cli_whole ("--size", parts[0], 1, MOST_PIXELS, &w, error) || !sw_cli_whole ("--size", parts[1], 1, MOST_PIXELS, &h, error))
    return FALSE;
  *width = (int) w;
  *height = (int) h;
  return TRUE;
}
