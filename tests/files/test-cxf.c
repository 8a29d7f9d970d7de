/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-spectrum.h"
#include "files/sw-colourway.h"
#include "files/sw-cxf.h"

#include <math.h>
#include <string.h>

/*
 * Files as ISO 17972-1 has them, written for this test: the elements and
 * attributes are the standard's as public readers of it take them (the
 * standard itself was not at hand), the numbers are a ramp that anyone can
 * check.
 */

#define HEAD "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<cc:CxF xmlns:cc=\"http://colorexchangeformat.com/CxF3-core\">\n"
#define TAIL "</cc:CxF>\n"
#define OBJECT(attributes, values)                                                                                 \
  "<cc:Resources><cc:ObjectCollection><cc:Object ObjectType=\"Standard\" Name=\"Moss\" Id=\"o1\"><cc:ColorValues>" \
  "<cc:ReflectanceSpectrum " attributes ">" values "</cc:ReflectanceSpectrum></cc:ColorValues></cc:Object></cc:ObjectCollection>"
#define SPECIFICATION(range)                                                                                                                       \
  "<cc:ColorSpecificationCollection><cc:ColorSpecification Id=\"other\"><cc:MeasurementSpec><cc:WavelengthRange StartWL=\"300\" Increment=\"1\"/>" \
  "</cc:MeasurementSpec></cc:ColorSpecification><cc:ColorSpecification Id=\"c1\"><cc:MeasurementSpec>" range                                       \
  "</cc:MeasurementSpec></cc:ColorSpecification></cc:ColorSpecificationCollection>"

/* From 0.10 at 400 nm by 0.01 every 10 nm. */
#define RAMP \
  "0.10 0.11 0.12 0.13 0.14 0.15 0.16 0.17\n 0.18 0.19 0.20\t0.21 0.22 0.23 0.24 0.25 0.26 0.27 0.28 0.29 0.30 0.31 0.32 0.33 0.34 0.35 0.36 0.37 0.38 0.39 0.40"

static const char *const ramps[] = {
  HEAD OBJECT ("StartWL=\"400\"", RAMP) "</cc:Resources>" TAIL,
  HEAD OBJECT ("ColorSpecification=\"c1\"", RAMP) SPECIFICATION ("<cc:WavelengthRange StartWL=\"400\" Increment=\"10\"/>") "</cc:Resources>" TAIL,
  HEAD OBJECT ("ColorSpecification=\"c1\" StartWL=\"400\"", RAMP) SPECIFICATION ("<cc:WavelengthRange StartWL=\"380\" Increment=\"10\"/>") "</cc:Resources>" TAIL,
  /* the first of two, and another prefix */
  "\xef\xbb\xbf <x:CxF xmlns:x=\"http://colorexchangeformat.com/CxF3-core\"><x:ReflectanceSpectrum StartWL=\"400\">" RAMP
  "</x:ReflectanceSpectrum><x:ReflectanceSpectrum StartWL=\"400\">0.9 0.9</x:ReflectanceSpectrum></x:CxF>",
};

static void
test_ramps (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (ramps); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *text = NULL;
      double reflectance[SW_BANDS];

      g_assert_true (sw_cxf_is_likely (ramps[i], strlen (ramps[i])));
      text = sw_cxf_spectrum (ramps[i], strlen (ramps[i]), &error);
      g_assert_no_error (error);
      g_assert_true (sw_spectrum_from_text (text, reflectance, &error));
      g_assert_no_error (error);
      for (int band = 0; band < SW_BANDS; band++) /* 380 to 730 nm; the ends are held */
        g_assert_cmpfloat_with_epsilon (reflectance[band], CLAMP (0.10 + 0.01 * (band - 2), 0.10, 0.40), 1e-9);
    }
}

/* Five nanometres from one value to the next: every second one is a band of ours. */
static void
test_step (void)
{
  g_autoptr (GString) file = g_string_new (HEAD "<cc:ReflectanceSpectrum ColorSpecification=\"c1\">");
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  double reflectance[SW_BANDS];

  for (int i = 0; i <= 70; i++)
    {
      char number[G_ASCII_DTOSTR_BUF_SIZE];

      g_string_append_printf (file, "%s ", g_ascii_formatd (number, sizeof number, "%.4f", 0.2 + 0.004 * i));
    }
  g_string_append (file, "</cc:ReflectanceSpectrum>" SPECIFICATION ("<cc:WavelengthRange Increment=\"5\" StartWL=\"380\"/>") TAIL);
  text = sw_cxf_spectrum (file->str, file->len, &error);
  g_assert_no_error (error);
  g_assert_true (sw_spectrum_from_text (text, reflectance, &error));
  g_assert_no_error (error);
  for (int band = 0; band < SW_BANDS; band++)
    g_assert_cmpfloat_with_epsilon (reflectance[band], 0.2 + 0.008 * band, 1e-9);
}

static const struct
{
  const char *file, *sentence; /* what the sentence must name */
} bad[] = {
  { "<", "line" },
  { HEAD, "line" },
  { HEAD "<cc:ReflectanceSpectrum StartWL=\"400\">0.1", "line" },
  { HEAD TAIL, "no reflectance spectrum" },
  { "<CxF><ReflectanceSpectrum StartWL=\"400\">" RAMP "</ReflectanceSpectrum></CxF>", "no reflectance spectrum" },
  { "<svg xmlns=\"http://www.w3.org/2000/svg\"/>", "no reflectance spectrum" },
  { HEAD "<cc:ReflectanceSpectrum>" RAMP "</cc:ReflectanceSpectrum>" TAIL, "at which wavelength" },
  { HEAD "<cc:ReflectanceSpectrum StartWL=\"-400\">" RAMP "</cc:ReflectanceSpectrum>" TAIL, "at which wavelength" },
  { HEAD "<cc:ReflectanceSpectrum StartWL=\"blue\" ColorSpecification=\"none\">" RAMP "</cc:ReflectanceSpectrum>" TAIL, "at which wavelength" },
  { "<!DOCTYPE CxF [<!ENTITY a \"0.1 0.1\">]>" HEAD TAIL, "document type" },
  { "<!DOCTYPE CxF SYSTEM \"http://example.invalid/x.dtd\"><cc:CxF xmlns:cc=\"http://colorexchangeformat.com/CxF3-core\"/>", "document type" },
};

static void
test_bad (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (sw_cxf_spectrum (bad[i].file, strlen (bad[i].file), &error));
      g_assert_nonnull (error);
      g_assert_true (error->domain == SW_FILE_ERROR);
      g_test_message ("%s", error->message);
      g_assert_nonnull (strstr (error->message, bad[i].sentence));
    }
}

/* Values that are no reflectances are refused by whoever reads the lines, and many of them end somewhere. */
static void
test_values (void)
{
  g_autoptr (GString) many = g_string_new (HEAD "<cc:ReflectanceSpectrum StartWL=\"1\">");
  static const char *const values[] = { "", "0.1", "a b c", "0.1 0.2 9.9 0.3", "nan nan nan" };

  for (gsize i = 0; i < G_N_ELEMENTS (values); i++)
    {
      g_autofree char *file = g_strdup_printf (HEAD "<cc:ReflectanceSpectrum StartWL=\"400\">%s</cc:ReflectanceSpectrum>" TAIL, values[i]);
      g_autoptr (GError) error = NULL;
      g_autofree char *text = sw_cxf_spectrum (file, strlen (file), &error);
      double reflectance[SW_BANDS];

      g_assert_no_error (error);
      g_assert_false (sw_spectrum_from_text (text, reflectance, &error));
      g_assert_error (error, SW_COLOUR_ERROR, SW_COLOUR_ERROR_TEXT);
    }
  for (int i = 0; i < 100000; i++)
    g_string_append (many, "0.5 ");
  g_string_append (many, "</cc:ReflectanceSpectrum>" TAIL);
  {
    g_autoptr (GError) error = NULL;
    g_autofree char *text = sw_cxf_spectrum (many->str, many->len, &error);

    g_assert_no_error (error);
    g_assert_cmpuint (strlen (text), <, 100000);
  }
}

static void
test_likely (void)
{
  g_assert_false (sw_cxf_is_likely ("", 0));
  g_assert_false (sw_cxf_is_likely ("  \n", 3));
  g_assert_false (sw_cxf_is_likely ("400,0.1\n", 8));
  g_assert_true (sw_cxf_is_likely (" \n<a/>", 6));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cxf/ramps", test_ramps);
  g_test_add_func ("/cxf/step", test_step);
  g_test_add_func ("/cxf/bad", test_bad);
  g_test_add_func ("/cxf/values", test_values);
  g_test_add_func ("/cxf/likely", test_likely);
  return g_test_run ();
}
