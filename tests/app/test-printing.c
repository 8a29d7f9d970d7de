/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sw-app-test.h"

#include "app/sheet/sw-sheet-printing.h"
#include "app/desk/sw-templates.h"

/*
 * The demo's dye sheet through the toolkit's own printing into a PDF. Its pages
 * are as many as the layout says, and of the size that was asked for: A4 of
 * ISO 216, US Letter of ANSI/ASME Y14.1, in points.
 */

static const struct
{
  const char *name;
  SwPaper paper;
  const char *box; /* of its pages in a PDF, whose single precision falls short of 612 */
} papers[] = {
  { "a4", SW_PAPER_A4, "[ 0 0 595.27" },
  { "letter", SW_PAPER_LETTER, "[ 0 0 611.9999" },
};

static gsize
count (const char *text, gsize n, const char *what)
{
  gsize found = 0, length = strlen (what);

  for (gsize i = 0; i + length <= n; i++)
    found += memcmp (text + i, what, length) == 0;
  return found;
}

static void
test_printed (gconstpointer data)
{
  const int paper = GPOINTER_TO_INT (data);
  g_autofree char *folder = sw_test_folder ();
  g_autofree char *path = g_build_filename (folder, "sheet.pdf", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwSketch) sketch = sw_template_demo (&error);
  g_autoptr (SwForecaster) forecaster = sw_forecaster_new ();
  g_autoptr (SwForecast) forecast = sw_forecaster_run (forecaster, sketch, NULL, &error);
  g_autoptr (GtkPrintOperation) operation = NULL;
  g_autofree char *pdf = NULL;
  GtkPrintOperationResult result;
  gsize n;
  int pages;

  g_assert_no_error (error);
  operation = sw_sheet_printing_new (forecast, papers[paper].paper, paper == 1);
  gtk_print_operation_set_export_filename (operation, path);
  result = gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpint (result, ==, GTK_PRINT_OPERATION_RESULT_APPLY);
  g_object_get (operation, "n-pages", &pages, NULL);
  g_assert_cmpint (pages, >=, 1);

  g_file_get_contents (path, &pdf, &n, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (count (pdf, n, "/Type /Page %"), ==, (gsize) pages);
  g_assert_cmpuint (count (pdf, n, papers[paper].box), >=, (gsize) pages);
  sw_test_remove (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  if (!gtk_init_check ())
    {
      g_test_message ("There is no display, which the toolkit's printing wants");
      return 77;
    }
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    {
      g_autofree char *path = g_strdup_printf ("/printing/%s", papers[i].name);

      g_test_add_data_func (path, GINT_TO_POINTER (i), test_printed);
    }
  return g_test_run ();
}
