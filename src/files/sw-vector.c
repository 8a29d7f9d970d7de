/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-vector-private.h"

#include "files/sw-colourway.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <glib/gi18n-lib.h>
#include <string.h>

#define POINTS_PER_PX 0.75 /* 72 over 96 */

struct _SwVector
{
  SwFormat format;
  char *title, *description;
  GByteArray *bytes;
  cairo_surface_t *surface;
  cairo_t *cr;
};

static cairo_status_t
write_cb (void *closure, const unsigned char *data, unsigned int n)
{
  g_byte_array_append (closure, data, n);
  return CAIRO_STATUS_SUCCESS;
}

SwVector *
sw_vector_new (SwFormat format, int width, int height, const char *title, const char *description)
{
  SwVector *vector = g_new0 (SwVector, 1);

  vector->format = format;
  vector->title = g_strdup (title);
  vector->description = g_strdup (description);
  vector->bytes = g_byte_array_new ();
  if (format == SW_FORMAT_PDF)
    {
      vector->surface = cairo_pdf_surface_create_for_stream (write_cb, vector->bytes, width * POINTS_PER_PX, height * POINTS_PER_PX);
      cairo_pdf_surface_set_metadata (vector->surface, CAIRO_PDF_METADATA_TITLE, title);
      cairo_pdf_surface_set_metadata (vector->surface, CAIRO_PDF_METADATA_SUBJECT, description);
      cairo_pdf_surface_set_metadata (vector->surface, CAIRO_PDF_METADATA_CREATOR, "Strandwise");
      cairo_pdf_surface_set_metadata (vector->surface, CAIRO_PDF_METADATA_CREATE_DATE, ""); /* else the bytes tell the time */
    }
  else
    {
      vector->surface = cairo_svg_surface_create_for_stream (write_cb, vector->bytes, width, height);
      cairo_svg_surface_set_document_unit (vector->surface, CAIRO_SVG_UNIT_PX);
    }
  vector->cr = cairo_create (vector->surface);
  if (format == SW_FORMAT_PDF)
    cairo_scale (vector->cr, POINTS_PER_PX, POINTS_PER_PX);
  return vector;
}

cairo_t *
sw_vector_get_cairo (SwVector *vector)
{
  return vector->cr;
}

/* One id, by the order in which ids of its kind are met. */
static gboolean
renumber_cb (const GMatchInfo *match, GString *result, gpointer user_data)
{
  GHashTable *numbers = user_data;
  g_autofree char *before = g_match_info_fetch (match, 1);
  g_autofree char *id = g_match_info_fetch (match, 2);
  guint number = GPOINTER_TO_UINT (g_hash_table_lookup (numbers, id));

  if (number == 0)
    {
      number = g_hash_table_size (numbers) + 1;
      g_hash_table_insert (numbers, g_steal_pointer (&id), GUINT_TO_POINTER (number));
    }
  g_string_append_printf (result, "%si%u", before, number);
  return FALSE;
}

/*
 * cairo numbers an SVG's parts by a count that goes on as long as the program
 * runs, so the second picture would not have the bytes of the first. Ids
 * stand in id="...", "#..." and url(#...) only; the pictures' base64 has
 * neither quotes nor #.
 */
static char *
renumber (const char *svg)
{
  g_autoptr (GRegex) regex = g_regex_new ("(id=\"|\"#|url\\(#)([^\")]+)", 0, 0, NULL);
  g_autoptr (GHashTable) numbers = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  return g_regex_replace_eval (regex, svg, -1, 0, 0, renumber_cb, numbers, NULL);
}

/* Gives the SVG a title and a description that screen readers and file managers find. */
static GBytes *
finish_svg (SwVector *vector)
{
  g_autofree char *raw = g_strndup ((const char *) vector->bytes->data, vector->bytes->len);
  g_autofree char *svg = renumber (raw);
  const char *root = svg != NULL ? strstr (svg, "<svg ") : NULL;
  const char *inside = root != NULL ? strchr (root, '>') : NULL;
  g_autofree char *words = g_markup_printf_escaped ("\n<title>%s</title>\n<desc>%s</desc>", vector->title, vector->description);
  GString *all;

  if (inside == NULL)
    return NULL;
  all = g_string_new_len (svg, inside + 1 - svg);
  g_string_append (all, words);
  g_string_append (all, inside + 1);
  return g_string_free_to_bytes (all);
}

static void
vector_free (SwVector *vector)
{
  cairo_destroy (vector->cr);
  cairo_surface_destroy (vector->surface);
  g_byte_array_unref (vector->bytes);
  g_free (vector->title);
  g_free (vector->description);
  g_free (vector);
}

GBytes *
sw_vector_finish (SwVector *vector, GError **error)
{
  GBytes *bytes = NULL;
  cairo_status_t status;

  cairo_show_page (vector->cr);
  status = cairo_status (vector->cr);
  cairo_surface_finish (vector->surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (vector->surface);
  if (status == CAIRO_STATUS_SUCCESS && vector->format == SW_FORMAT_PDF)
    bytes = g_byte_array_free_to_bytes (g_byte_array_ref (vector->bytes));
  else if (status == CAIRO_STATUS_SUCCESS)
    bytes = finish_svg (vector);
  if (bytes == NULL)
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_PICTURE, _ ("The picture could not be drawn: %s. Try a smaller size."), cairo_status_to_string (status));
  vector_free (vector);
  return bytes;
}
