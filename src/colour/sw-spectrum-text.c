/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "colour/sw-spectrum.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

G_DEFINE_QUARK (sw_colour_error, sw_colour_error)

/* A measurement by the nanometre from the ultraviolet to the infrared has fewer lines, and shorter ones. */
#define MAX_POINTS 4096
#define MAX_LINE 512

#define FIRST_NM 380.0
#define STEP_NM 10.0

/* A measurement has to reach this far on both sides: the dark ends may be guessed from it, the middle may not. */
#define NEED_FROM_NM 450.0
#define NEED_TO_NM 650.0

/* Brightened yarn can throw back a little more than it gets at one band. */
#define MAX_REFLECTANCE 1.2
#define LOOKS_LIKE_PERCENT 1.5

typedef struct
{
  double nm, reflectance;
} Point;

typedef struct
{
  Point points[MAX_POINTS];
  guint n_points;
  gboolean heading_seen;
} Reader;

static gboolean refuse (GError **error, const char *format, ...) G_GNUC_PRINTF (2, 3);

static gboolean
refuse (GError **error, const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_propagate_error (error, g_error_new_valist (SW_COLOUR_ERROR, SW_COLOUR_ERROR_TEXT, format, arguments));
  va_end (arguments);
  return FALSE;
}

static const char *
skip_separator (const char *at)
{
  while (*at == ' ' || *at == '\t' || *at == '\r')
    at++;
  if (*at == ',' || *at == ';')
    at++;
  while (*at == ' ' || *at == '\t' || *at == '\r')
    at++;
  return at;
}

/* Starts with a digit, unlike strtod's own idea of a number, for which a heading "nanometres" begins with one. */
static gboolean
read_number (const char **at, double *value)
{
  const char *digit = *at + (**at == '-' || **at == '+');
  char *end;

  if (!g_ascii_isdigit (*digit) && !(*digit == '.' && g_ascii_isdigit (digit[1])))
    return FALSE;
  *value = g_ascii_strtod (*at, &end);
  *at = skip_separator (end);
  return TRUE;
}

static gboolean
check_point (const Point *point, const Reader *reader, guint line, GError **error)
{
  if (!isfinite (point->nm) || !isfinite (point->reflectance))
    return refuse (error, _ ("Line %u of the spectrum has a number too large to be a wavelength or a reflectance. Write wavelengths in nanometres and reflectances from 0 to 1."), line);
  if (point->nm <= 0)
    return refuse (error, _ ("Line %u of the spectrum has a wavelength that is not above 0. Wavelengths are given in nanometres, for instance 550."), line);
  if (reader->n_points > 0 && point->nm <= reader->points[reader->n_points - 1].nm)
    return refuse (error, _ ("Line %u of the spectrum does not have a longer wavelength than the line before it. Sort the lines by wavelength and keep one line for each."), line);
  if (point->reflectance < 0)
    return refuse (error, _ ("Line %u of the spectrum has a reflectance below 0. Measure again, or set it to 0 if it is only noise of the instrument."), line);
  if (point->reflectance > LOOKS_LIKE_PERCENT)
    return refuse (error, _ ("Line %u of the spectrum has a reflectance above 1.5, so the file seems to be in per cent. Divide the reflectances by 100, so that a perfect white is 1."), line);
  if (point->reflectance > MAX_REFLECTANCE)
    return refuse (error, _ ("Line %u of the spectrum has a reflectance above 1.2, which no yarn without much brightener has. Check the white calibration of the measurement."), line);
  return TRUE;
}

/* A line of two numbers, a comment, nothing, or once, before the numbers, a heading. */
static gboolean
read_line (Reader *reader, const char *text, guint line, GError **error)
{
  Point point;

  text = skip_separator (text);
  if (*text == '\0' || *text == '#')
    return TRUE;
  if (!read_number (&text, &point.nm))
    {
      if (reader->n_points > 0 || reader->heading_seen)
        return refuse (error, _ ("Line %u of the spectrum does not start with a number. Each line needs a wavelength in nanometres and a reflectance from 0 to 1."), line);
      reader->heading_seen = TRUE;
      return TRUE;
    }
  if (*text == '\0')
    return refuse (error, _ ("Line %u of the spectrum has no reflectance after its wavelength. Each line needs a wavelength in nanometres and a reflectance from 0 to 1."), line);
  if (!read_number (&text, &point.reflectance))
    return refuse (error, _ ("Line %u of the spectrum has a reflectance that is not a number. Write it from 0 to 1, with a decimal point."), line);
  if (*text != '\0')
    return refuse (error, _ ("Line %u of the spectrum has more on it than a wavelength and a reflectance. Keep those two, and write decimals with a point."), line);
  if (!check_point (&point, reader, line, error))
    return FALSE;
  if (reader->n_points == MAX_POINTS)
    return refuse (error, _ ("The spectrum has too many lines, the first too many is line %u. Give one line for each nanometre at most."), line);

  reader->points[reader->n_points++] = point;
  return TRUE;
}

static gboolean
read_lines (Reader *reader, const char *text, GError **error)
{
  char copy[MAX_LINE];
  guint line = 1;

  if (g_str_has_prefix (text, "\xef\xbb\xbf"))
    text += 3;

  for (;; line++)
    {
      gsize length = strcspn (text, "\n");

      if (length >= sizeof copy && *text != '#')
        return refuse (error, _ ("Line %u of the spectrum is too long to be a wavelength and a reflectance. Check that this is a text file with one pair on each line."), line);
      if (*text != '#')
        {
          memcpy (copy, text, length);
          copy[length] = '\0';
          if (!read_line (reader, copy, line, error))
            return FALSE;
        }
      if (text[length] == '\0')
        return TRUE;
      text += length + 1;
    }
}

static void
resample (const Point *points, guint n_points, double *reflectance)
{
  guint right = 0;

  for (int band = 0; band < SW_BANDS; band++)
    {
      double nm = FIRST_NM + STEP_NM * band;

      while (right < n_points && points[right].nm < nm)
        right++;
      if (right == 0)
        reflectance[band] = points[0].reflectance;
      else if (right == n_points)
        reflectance[band] = points[n_points - 1].reflectance;
      else
        {
          const Point *a = &points[right - 1], *b = &points[right];
          double share = (nm - a->nm) / (b->nm - a->nm);

          reflectance[band] = (1 - share) * a->reflectance + share * b->reflectance;
        }
    }
}

gboolean
sw_spectrum_from_text (const char *text, double *reflectance, GError **error)
{
  g_autofree Reader *reader = NULL;

  g_return_val_if_fail (text != NULL, FALSE);
  g_return_val_if_fail (reflectance != NULL, FALSE);

  reader = g_new0 (Reader, 1);
  if (!read_lines (reader, text, error))
    return FALSE;

  if (reader->n_points < 2 || reader->points[0].nm > NEED_FROM_NM || reader->points[reader->n_points - 1].nm < NEED_TO_NM)
    {
      g_set_error_literal (error, SW_COLOUR_ERROR, SW_COLOUR_ERROR_TEXT,
                           _ ("The spectrum does not cover visible light. It needs lines from 450 nm or less to 650 nm or more; 400 to 700 nm by 10 is usual."));
      return FALSE;
    }

  resample (reader->points, reader->n_points, reflectance);
  return TRUE;
}
