/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "colour/sw-sample-forms.h"

#include "colour/sw-recover.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

SwXyz
sw_sample_xyz (const SwSample *sample)
{
  const double *n = sample->numbers;

  switch (sample->kind)
    {
    case SW_SAMPLE_SRGB:
      return sw_xyz_from_srgb ((SwSrgb){ n[0] / 255, n[1] / 255, n[2] / 255 });
    case SW_SAMPLE_LAB:
      return sw_xyz_from_lab ((SwLab){ n[0], n[1], n[2] });
    case SW_SAMPLE_REFLECTANCE:
    default:
      return sw_xyz_from_reflectance (n);
    }
}

SwLab
sw_sample_lab (const SwSample *sample)
{
  if (sample->kind == SW_SAMPLE_LAB)
    return (SwLab){ sample->numbers[0], sample->numbers[1], sample->numbers[2] };
  return sw_lab_from_xyz (sw_sample_xyz (sample));
}

SwSrgb
sw_sample_srgb (const SwSample *sample)
{
  if (sample->kind == SW_SAMPLE_SRGB)
    return (SwSrgb){ sample->numbers[0] / 255, sample->numbers[1] / 255, sample->numbers[2] / 255 };
  return sw_srgb_from_xyz (sw_sample_xyz (sample));
}

SwSample
sw_sample_from_srgb (SwSrgb srgb)
{
  /* Whole codes: that is what the screen shows and the code says. */
  return (SwSample){ SW_SAMPLE_SRGB, { round (srgb.r * 255), round (srgb.g * 255), round (srgb.b * 255) } };
}

char *
sw_sample_code (const SwSample *sample)
{
  SwSample codes = sw_sample_from_srgb (sw_sample_srgb (sample));

  return g_strdup_printf ("#%02x%02x%02x", (guint) codes.numbers[0], (guint) codes.numbers[1], (guint) codes.numbers[2]);
}

gboolean
sw_sample_from_code (const char *text, SwSample *sample, GError **error)
{
  g_autofree char *code = g_strstrip (g_strdup (text));
  const char *digits = code[0] == '#' ? code + 1 : code;
  gsize n = strlen (digits), each = n / 3;

  if ((n != 3 && n != 6) || strspn (digits, "0123456789abcdefABCDEF") != n)
    {
      g_set_error (error, SW_COLOUR_ERROR, SW_COLOUR_ERROR_TEXT, _ ("“%s” is not a colour code. Write six digits or letters a to f, like #b2305c."), text);
      return FALSE;
    }
  *sample = (SwSample){ SW_SAMPLE_SRGB, { 0 } };
  for (gsize i = 0; i < 3; i++)
    {
      int high = g_ascii_xdigit_value (digits[i * each]);
      int low = g_ascii_xdigit_value (digits[i * each + each - 1]);

      sample->numbers[i] = high * 16 + low;
    }
  return TRUE;
}

gboolean
sw_sample_from_lab (SwLab lab, SwSample *sample, GError **error)
{
  SwSample given = { SW_SAMPLE_LAB, { lab.l, lab.a, lab.b } };
  double reflectance[SW_BANDS];

  if (!sw_sample_reflectance (&given, reflectance, error))
    return FALSE;
  *sample = given;
  return TRUE;
}

gboolean
sw_sample_from_spectrum (const char *text, SwSample *sample, GError **error)
{
  SwSample given = { SW_SAMPLE_REFLECTANCE, { 0 } };

  if (!sw_spectrum_from_text (text, given.numbers, error))
    return FALSE;
  /* A bright sample may measure a little over 1; the sketch holds real reflectances. */
  for (int i = 0; i < SW_BANDS; i++)
    given.numbers[i] = CLAMP (given.numbers[i], 0, 1);
  *sample = given;
  return TRUE;
}

const char *
sw_sample_origin (const SwSample *sample)
{
  switch (sample->kind)
    {
    case SW_SAMPLE_SRGB:
      return _ ("Chosen on the screen");
    case SW_SAMPLE_LAB:
      return _ ("Given as CIELAB");
    case SW_SAMPLE_REFLECTANCE:
    default:
      return _ ("From a measured spectrum");
    }
}
