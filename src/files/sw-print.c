/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-print.h"

#include "files/sw-colourway.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>

typedef struct
{
  GByteArray *bytes;
  cairo_surface_t *surface;
  cairo_t *cr;
} Printer;

static cairo_status_t
write_cb (void *closure, const unsigned char *data, unsigned int n)
{
  g_byte_array_append (closure, data, n);
  return CAIRO_STATUS_SUCCESS;
}

static void
printer_open (Printer *printer, double width, double height, const SwSketch *sketch, const char *subject)
{
  printer->bytes = g_byte_array_new ();
  printer->surface = cairo_pdf_surface_create_for_stream (write_cb, printer->bytes, width, height);
  cairo_pdf_surface_set_metadata (printer->surface, CAIRO_PDF_METADATA_TITLE, sketch->title[0] != '\0' ? sketch->title : _ ("Untitled colourway"));
  cairo_pdf_surface_set_metadata (printer->surface, CAIRO_PDF_METADATA_SUBJECT, subject);
  cairo_pdf_surface_set_metadata (printer->surface, CAIRO_PDF_METADATA_CREATOR, "Strandwise");
  cairo_pdf_surface_set_metadata (printer->surface, CAIRO_PDF_METADATA_CREATE_DATE, ""); /* else the bytes tell the time */
  printer->cr = cairo_create (printer->surface);
}

/* Returns: (transfer full): the file; NULL with @error */
static GBytes *
printer_close (Printer *printer, GError **error)
{
  cairo_status_t status = cairo_status (printer->cr);

  cairo_destroy (printer->cr);
  cairo_surface_finish (printer->surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (printer->surface);
  cairo_surface_destroy (printer->surface);
  if (status == CAIRO_STATUS_SUCCESS)
    return g_byte_array_free_to_bytes (printer->bytes);
  g_byte_array_unref (printer->bytes);
  g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_PICTURE, _ ("The pages could not be drawn: %s."), cairo_status_to_string (status));
  return NULL;
}

GBytes *
sw_print_sheet_pdf (SwForecast *forecast, const SwSheet *sheet, const SwSheetOptions *options, GError **error)
{
  g_autoptr (SwSheetLayout) layout = sw_sheet_layout_new (forecast, sheet, options);
  double width, height;
  Printer printer;

  sw_paper_size (options->paper, &width, &height);
  printer_open (&printer, width, height, forecast->sketch, _ ("Dye sheet: amounts and steps"));
  for (gsize page = 0; page < sw_sheet_pages (layout); page++)
    {
      cairo_tag_begin (printer.cr, "Document", ""); /* so that readers take the text in order */
      sw_draw_sheet_page (printer.cr, layout, page);
      cairo_tag_end (printer.cr, "Document");
      cairo_show_page (printer.cr);
    }
  return printer_close (&printer, error);
}

GBytes *
sw_print_template_pdf (const SwSketch *sketch, SwPaper paper, GError **error)
{
  SwTemplate layout;
  Printer printer;

  sw_template_layout (sketch, paper, &layout);
  printer_open (&printer, layout.width, layout.height, sketch, _ ("The pan from above, full size"));
  for (gsize page = 0; page < sw_template_pages (&layout); page++)
    {
      sw_draw_template_page (printer.cr, sketch, &layout, page);
      cairo_show_page (printer.cr);
    }
  return printer_close (&printer, error);
}
