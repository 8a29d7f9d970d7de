/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "sketch/sw-member.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* What a member may hold, as sentences: one function a kind of value. */

static const char *
label_of (const SwMember *member)
{
  return _ (member->label);
}

static gboolean
refuse_outside (const SwMember *member, double number, GError **error)
{
  if (!isfinite (number))
    /* Translators: %s is a member such as "Mass of a skein" */
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("“%s” must be a number."), label_of (member));
  else if (member->above_zero > 0)
    /* Translators: 1 a member such as "Row gauge", 2 and 3 its limits, 4 what was given */
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("“%1$s” must be 0 or between %2$.10g and %3$.10g, but is %4$.10g."),
                 label_of (member), member->above_zero, member->max, number);
  else if (member->unit[0] == '\0')
    /* Translators: 1 a member such as "Skeins in the pan", 2 and 3 its limits, 4 what was given */
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("“%1$s” must be between %2$.10g and %3$.10g, but is %4$.10g."),
                 label_of (member), member->min, member->max, number);
  else
    /* Translators: 1 a member such as "Mass of a skein", 2 and 3 its limits, 4 its unit such as "g", 5 what was given */
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("“%1$s” must be between %2$.10g and %3$.10g %4$s, but is %5$.10g."),
                 label_of (member), member->min, member->max, _ (member->unit), number);
  return FALSE;
}

static gboolean
check_number (const SwMember *member, double number, GError **error)
{
  gboolean inside = isfinite (number) && number >= member->min && number <= member->max;
  gboolean in_gap = number > 0 && number < member->above_zero;

  return (inside && !in_gap) || refuse_outside (member, number, error);
}

static gboolean
check_whole (const SwMember *member, gint64 whole, GError **error)
{
  if (!check_number (member, (double) whole, error))
    return FALSE;

  if (member->doubling && (whole & (whole - 1)) != 0)
    {
      /* Translators: 1 "Runs of the folded skein", 2 what was given, 3 the most it may be */
      g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE,
                   _ ("“%1$s” is doubled at each fold: 1, 2, 4 and so on up to %3$d. It cannot be %2$d."),
                   label_of (member), (int) whole, (int) member->max);
      return FALSE;
    }
  return TRUE;
}

/* Control characters would break the pictures' XML; line ends and tabs are harmless. */
static gboolean
has_control (const char *text)
{
  for (const char *p = text; *p != '\0'; p++)
    if (((guchar) *p < 0x20 && strchr ("\t\n\r", *p) == NULL) || *p == 0x7f)
      return TRUE;
  return FALSE;
}

static gboolean
check_text (const SwMember *member, const char *text, GError **error)
{
  if (text == NULL || !g_utf8_validate (text, -1, NULL))
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_KIND, _ ("“%s” must be text in UTF-8."), label_of (member));
  else if ((double) strlen (text) > member->max)
    /* Translators: 1 a member such as "Title", 2 the most bytes, 3 how many it has */
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("“%1$s” may be %2$d bytes long, but is %3$lu."),
                 label_of (member), (int) member->max, (gulong) strlen (text));
  else if (has_control (text))
    g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("“%s” contains a control character, which cannot be shown."), label_of (member));
  else
    return TRUE;
  return FALSE;
}

static gboolean
check_choice (const SwMember *member, int choice, GError **error)
{
  int n = (int) g_strv_length ((char **) member->choices);

  if (choice >= 0 && choice < n)
    return TRUE;

  /* Translators: 1 a member such as "Fibre", 2 how many choices it has, 3 the number that was given */
  g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("“%1$s” has %2$d choices; there is no number %3$d."), label_of (member), n, choice);
  return FALSE;
}

static gboolean
refuse_colour (const SwMember *member, SwSampleKind kind, GError **error)
{
  switch (kind)
    {
    case SW_SAMPLE_SRGB:
      g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("“%s”: the sRGB numbers of a colour must be between 0 and 255."), label_of (member));
      break;
    case SW_SAMPLE_LAB:
      g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("“%s”: L* of a colour must be between 0 and 100, a* and b* between −150 and 150."), label_of (member));
      break;
    case SW_SAMPLE_REFLECTANCE:
      g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_RANGE, _ ("“%s”: a reflectance must be between 0 and 1 at every wavelength."), label_of (member));
      break;
    default:
      g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_KIND, _ ("“%s” must be a colour as sRGB, Lab or reflectance."), label_of (member));
      break;
    }
  return FALSE;
}

static gboolean
check_colour (const SwMember *member, const SwSample *colour, GError **error)
{
  static const struct
  {
    double first_min, first_max, min, max; /* of numbers[0], of the others */
  } limits[] = {
    [SW_SAMPLE_SRGB] = { 0, 255, 0, 255 },
    [SW_SAMPLE_LAB] = { 0, 100, -150, 150 },
    [SW_SAMPLE_REFLECTANCE] = { 0, 1, 0, 1 },
  };
  gsize n;

  if ((guint) colour->kind >= G_N_ELEMENTS (limits))
    return refuse_colour (member, colour->kind, error);

  n = sw_sample_numbers (colour->kind);
  for (gsize i = 0; i < n; i++)
    {
      double min = i == 0 ? limits[colour->kind].first_min : limits[colour->kind].min;
      double max = i == 0 ? limits[colour->kind].first_max : limits[colour->kind].max;

      if (!(colour->numbers[i] >= min && colour->numbers[i] <= max)) /* so that NaN is refused */
        return refuse_colour (member, colour->kind, error);
    }
  return TRUE;
}

static gboolean
check_dye (const SwMember *member, gint64 id, GError **error)
{
  if (id >= (gint64) member->min && id <= (gint64) member->max)
    return TRUE;

  g_set_error_literal (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_REFERENCE, _ ("A pour needs a dye. Choose one of the sketch's dyes."));
  return FALSE;
}

gboolean
sw_member_check (const SwMember *member, const SwValue *value, GError **error)
{
  g_return_val_if_fail (member != NULL && value != NULL, FALSE);

  if (value->kind != member->kind)
    {
      g_set_error (error, SW_SKETCH_ERROR, SW_SKETCH_ERROR_KIND, _ ("“%s” cannot hold a value of this kind."), label_of (member));
      return FALSE;
    }

  switch (member->kind)
    {
    case SW_KIND_NUMBER:
      return check_number (member, value->as.number, error);
    case SW_KIND_WHOLE:
      return check_whole (member, value->as.whole, error);
    case SW_KIND_TEXT:
      return check_text (member, value->as.text, error);
    case SW_KIND_CHOICE:
      return check_choice (member, value->as.choice, error);
    case SW_KIND_FLAG:
      return TRUE;
    case SW_KIND_COLOUR:
      return check_colour (member, &value->as.colour, error);
    case SW_KIND_DYE:
      return check_dye (member, value->as.whole, error);
    default:
      g_return_val_if_reached (FALSE);
    }
}
