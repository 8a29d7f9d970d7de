/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/sheet/sw-sheet-printing.h"

#include "forecast/sw-repeat.h"

typedef struct
{
  SwForecast *forecast;
  SwSheet *sheet;
  SwSheetOptions options;
  SwSheetLayout *layout; /* once the paper is known */
} Job;

static void
job_free (gpointer data, GClosure *closure)
{
  Job *job = data;

  sw_sheet_layout_free (job->layout);
  sw_sheet_free (job->sheet);
  sw_forecast_unref (job->forecast);
  g_free (job);
}

/* Of the two papers that the sheet is made for, the one more like the printer's. */
static SwPaper
paper_of (GtkPrintContext *context)
{
  const double ratio = gtk_print_context_get_height (context) / gtk_print_context_get_width (context);
  double width, height, letter_width, letter_height;

  sw_paper_size (SW_PAPER_A4, &width, &height);
  sw_paper_size (SW_PAPER_LETTER, &letter_width, &letter_height);
  return ratio > (height / width + letter_height / letter_width) / 2 ? SW_PAPER_A4 : SW_PAPER_LETTER;
}

static void
begin_print_cb (GtkPrintOperation *operation, GtkPrintContext *context, Job *job)
{
  job->options.paper = paper_of (context);
  g_clear_pointer (&job->layout, sw_sheet_layout_free);
  job->layout = sw_sheet_layout_new (job->forecast, job->sheet, &job->options);
  gtk_print_operation_set_n_pages (operation, (int) sw_sheet_pages (job->layout));
}

/* On other paper, as large as it fits. */
static void
draw_page_cb (GtkPrintOperation *operation, GtkPrintContext *context, int page, Job *job)
{
  cairo_t *cr = gtk_print_context_get_cairo_context (context);
  double width, height, fit;

  sw_paper_size (job->options.paper, &width, &height);
  fit = MIN (gtk_print_context_get_width (context) / width, gtk_print_context_get_height (context) / height);
  if (fit < 0.99 || fit > 1.01)
    cairo_scale (cr, fit, fit);
  sw_draw_sheet_page (cr, job->layout, (gsize) page);
}

static GtkPageSetup *
page_setup_for (SwPaper paper)
{
  GtkPageSetup *setup = gtk_page_setup_new ();
  GtkPaperSize *size = gtk_paper_size_new (paper == SW_PAPER_LETTER ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);

  gtk_page_setup_set_paper_size_and_default_margins (setup, size);
  gtk_paper_size_free (size);
  return setup;
}

GtkPrintOperation *
sw_sheet_printing_new (SwForecast *forecast, SwPaper paper, gboolean us)
{
  GtkPrintOperation *operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = page_setup_for (paper);
  Job *job = g_new0 (Job, 1);

  job->forecast = sw_forecast_ref (forecast);
  job->sheet = sw_forecast_sheet (forecast);
  job->options.us = us;
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_use_full_page (operation, TRUE); /* the sheet has margins of its own */
  g_signal_connect_data (operation, "begin-print", G_CALLBACK (begin_print_cb), job, job_free, G_CONNECT_DEFAULT);
  g_signal_connect (operation, "draw-page", G_CALLBACK (draw_page_cb), job);
  return operation;
}
