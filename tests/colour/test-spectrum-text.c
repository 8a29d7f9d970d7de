/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "colour/sw-spectrum.h"
#include "tests/colour/published-table.h"

#include <math.h>

/* Texts that give 0.2 at 380 nm, 0.5 at 550 nm and 0.6 at 730 nm. */
static const struct
{
  const char *name, *text;
} good[] = {
  { "commas", "380,0.2\n550,0.5\n730,0.6\n" },
  { "semicolons", "380;0.2\n550;0.5\n730;0.6\n" },
  { "tabs", "380\t0.2\n550\t0.5\n730\t0.6" },
  { "blanks", "  380   0.2  \n550 0.5\n730 0.6\n" },
  { "comma-and-blank", "380, 0.2\n550 , 0.5\n730 ,0.6\n" },
  { "heading", "nm,reflectance\n380,0.2\n550,0.5\n730,0.6\n" },
  { "heading-like-a-number", "nanometres infinite\n380,0.2\n550,0.5\n730,0.6\n" },
  { "comments", "# measured on a rainy day, 12 March\n\n380,0.2\n# the middle\n550,0.5\n730,0.6\n\n" },
  { "comment-heading-comment", "#one\nwavelength reflectance\n#two\n380,0.2\n550,0.5\n730,0.6\n" },
  { "carriage-returns", "nm,R\r\n380,0.2\r\n550,0.5\r\n730,0.6\r\n" },
  { "byte-order-mark", "\xef\xbb\xbf"
                       "380,0.2\n550,0.5\n730,0.6\n" },
  { "wider", "360,0.1\n370,0.15\n380,0.2\n550,0.5\n730,0.6\n780,0.9\n" },
  { "exponents", "3.8e2,2e-1\n5.5e2,5.0e-1\n7.3e2,6e-1\n" },
};

static void
test_good (gconstpointer data)
{
  const char *text = data;
  g_autoptr (GError) error = NULL;
  double reflectance[SW_BANDS];

  g_assert_true (sw_spectrum_from_text (text, reflectance, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (reflectance[0], 0.2, 1e-12);
  g_assert_cmpfloat_with_epsilon (reflectance[17], 0.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (reflectance[35], 0.6, 1e-12);
  /* A third of the way from 550 to 730 nm. */
  g_assert_cmpfloat_with_epsilon (reflectance[23], 0.5 + 0.1 / 3, 1e-12);
}

typedef struct
{
  const char *name, *text, *says, *also_says;
} Bad;

static const Bad bad[] = {
  { "empty", "", "visible light", "450 nm" },
  { "only-comments", "# nothing\n#\n", "visible light", "450 nm" },
  { "one-line", "500,0.5\n", "visible light", "450 nm" },
  { "too-narrow", "480,0.5\n730,0.5\n", "visible light", "450 nm" },
  { "infrared", "800,0.5\n900,0.5\n", "visible light", "650 nm" },
  { "percent", "nm,R\n380,20\n550,50\n730,60\n", "Line 2 ", "Divide" },
  { "late-percent", "380,0.2\n550,1.4e2\n730,60\n", "Line 2 ", "Divide" },
  { "above-1.2", "380,0.2\n550,1.3\n730,0.6\n", "Line 2 ", "calibration" },
  { "negative", "380,0.2\n550,0.5\n730,-0.01\n", "Line 3 ", "below 0" },
  { "nan", "380,0.2\n550,nan\n730,0.6\n", "Line 2 ", "not a number" },
  { "infinity", "380,0.2\n550,inf\n730,0.6\n", "Line 2 ", "not a number" },
  { "overflow", "380,0.2\n550,1e999\n730,0.6\n", "Line 2 ", "too large" },
  { "wavelength-nan", "380,0.2\nnan,0.5\n730,0.6\n", "Line 2 ", "does not start with a number" },
  { "wavelength-zero", "0,0.2\n550,0.5\n730,0.6\n", "Line 1 ", "wavelength" },
  { "wavelength-negative", "-380,0.2\n550,0.5\n730,0.6\n", "Line 1 ", "wavelength" },
  { "unsorted", "380,0.2\n730,0.6\n550,0.5\n", "Line 3 ", "Sort" },
  { "twice", "380,0.2\n550,0.5\n550,0.5\n730,0.6\n", "Line 3 ", "Sort" },
  { "no-reflectance", "380,0.2\n550\n730,0.6\n", "Line 2 ", "no reflectance" },
  { "word", "380,0.2\n550,half\n730,0.6\n", "Line 2 ", "not a number" },
  { "two-headings", "nm,R\nnanometres,share\n380,0.2\n", "Line 2 ", "does not start with a number" },
  { "heading-in-the-middle", "380,0.2\nnm,R\n", "Line 2 ", "does not start with a number" },
  { "decimal-comma", "380;0,2\n550;0,5\n730;0,6\n", "Line 1 ", "with a point" },
  { "three-columns", "380,0.2,0.3\n", "Line 1 ", "more on it" },
};

static void
test_bad (gconstpointer data)
{
  const Bad *row = data;
  g_autoptr (GError) error = NULL;
  double reflectance[SW_BANDS];

  g_assert_false (sw_spectrum_from_text (row->text, reflectance, &error));
  g_assert_error (error, SW_COLOUR_ERROR, SW_COLOUR_ERROR_TEXT);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, row->says));
  g_assert_nonnull (strstr (error->message, row->also_says));
  g_assert_true (g_str_has_suffix (error->message, "."));
}

static void
test_long_line (void)
{
  g_autoptr (GString) text = g_string_new ("380,0.2\n");
  g_autoptr (GError) error = NULL;
  double reflectance[SW_BANDS];

  for (int i = 0; i < 100000; i++)
    g_string_append_c (text, ' ');
  g_assert_false (sw_spectrum_from_text (text->str, reflectance, &error));
  g_assert_error (error, SW_COLOUR_ERROR, SW_COLOUR_ERROR_TEXT);
  g_assert_nonnull (strstr (error->message, "Line 2 "));
}

static void
test_many_lines (void)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GError) error = NULL;
  double reflectance[SW_BANDS];

  for (int i = 0; i < 4097; i++)
    g_string_append_printf (text, "%d.%d,0.5\n", 380 + i / 10, i % 10);
  g_assert_false (sw_spectrum_from_text (text->str, reflectance, &error));
  g_assert_error (error, SW_COLOUR_ERROR, SW_COLOUR_ERROR_TEXT);
  g_assert_nonnull (strstr (error->message, "4097"));
}

/* A published spectrum written as text, at its own ten nanometres and with each line doubled in between, reads back as itself. */
static void
test_published_spectrum (void)
{
  g_auto (PublishedTable) table = published_table_open ("spectra_reflectance.csv");
  g_autoptr (GString) text = g_string_new ("nm;reflectance\n");
  g_autoptr (GError) error = NULL;
  double published[SW_BANDS], reflectance[SW_BANDS];

  published_table_column (&table, "cie_tcs11", published, SW_BANDS);
  for (int band = 0; band < SW_BANDS; band++)
    {
      g_string_append_printf (text, "%d;%.17g\n", 380 + 10 * band, published[band]);
      if (band + 1 < SW_BANDS)
        g_string_append_printf (text, "%d;%.17g\n", 385 + 10 * band, (published[band] + published[band + 1]) / 2);
    }
  g_assert_true (sw_spectrum_from_text (text->str, reflectance, &error));
  g_assert_no_error (error);
  for (int band = 0; band < SW_BANDS; band++)
    g_assert_cmpfloat (reflectance[band], ==, published[band]);
}

/* Whatever is cut short or damaged gives an answer within bounds, or a sentence. */
static void
test_damaged (void)
{
  const char *whole = "# sample\nnm,R\n380,0.2\n450,0.25\n550,0.5\n650,0.7\n730,0.6\n";

  for (int i = 0; i < 3000; i++)
    {
      g_autofree char *text = g_strdup (whole);
      g_autoptr (GError) error = NULL;
      double reflectance[SW_BANDS];

      for (int hits = g_test_rand_int_range (1, 4); hits > 0; hits--)
        text[g_test_rand_int_range (0, (gint32) strlen (whole))] = (char) g_test_rand_int_range (0, 256);
      if (sw_spectrum_from_text (text, reflectance, &error))
        {
          g_assert_no_error (error);
          for (int band = 0; band < SW_BANDS; band++)
            g_assert_true (reflectance[band] >= 0 && reflectance[band] <= 1.2);
        }
      else
        g_assert_error (error, SW_COLOUR_ERROR, SW_COLOUR_ERROR_TEXT);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (good); i++)
    {
      g_autofree char *path = g_strconcat ("/colour/spectrum-text/good/", good[i].name, NULL);

      g_test_add_data_func (path, good[i].text, test_good);
    }
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autofree char *path = g_strconcat ("/colour/spectrum-text/bad/", bad[i].name, NULL);

      g_test_add_data_func (path, &bad[i], test_bad);
    }
  g_test_add_func ("/colour/spectrum-text/long-line", test_long_line);
  g_test_add_func ("/colour/spectrum-text/many-lines", test_many_lines);
  g_test_add_func ("/colour/spectrum-text/published-spectrum", test_published_spectrum);
  g_test_add_func ("/colour/spectrum-text/damaged", test_damaged);
  return g_test_run ();
}
