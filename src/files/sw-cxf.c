/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-cxf.h"

#include "files/sw-colourway.h"

#include <glib/gi18n-lib.h>
#include <libxml/parser.h>
#include <string.h>

#define SPACE "http://colorexchangeformat.com/CxF3-core"

/* From one wavelength to the next, nm, where the file leaves it unsaid: what instruments give (common practice, no source). */
#define USUAL_STEP 10

#define MOST_POINTS 2000

gboolean
sw_cxf_is_likely (const char *bytes, gsize n)
{
  static const char mark[] = { (char) 0xef, (char) 0xbb, (char) 0xbf };
  gsize at = n >= sizeof mark && memcmp (bytes, mark, sizeof mark) == 0 ? sizeof mark : 0;

  while (at < n && g_ascii_isspace (bytes[at]))
    at++;
  return at < n && bytes[at] == '<';
}

static gboolean
is_element (const xmlNode *node, const char *name)
{
  return node->type == XML_ELEMENT_NODE && node->ns != NULL && strcmp ((const char *) node->ns->href, SPACE) == 0 && strcmp ((const char *) node->name, name) == 0;
}

/* The next node within @top, in the order of the file. */
static xmlNode *
next_node (xmlNode *node, const xmlNode *top)
{
  if (node->children != NULL && node->type == XML_ELEMENT_NODE)
    return node->children;
  while (node != top && node->next == NULL)
    node = node->parent;
  return node != top ? node->next : NULL;
}

/* The first element of that name in @top; @id: (nullable): that it must have */
static xmlNode *
find (xmlNode *top, const char *name, const char *id)
{
  for (xmlNode *node = top; node != NULL; node = next_node (node, top))
    if (is_element (node, name))
      {
        xmlChar *own = id != NULL ? xmlGetNoNsProp (node, (const xmlChar *) "Id") : NULL;
        const gboolean found = id == NULL || (own != NULL && strcmp ((const char *) own, id) == 0);

        xmlFree (own);
        if (found)
          return node;
      }
  return NULL;
}

/* @number: left as it is where the attribute is not there or is no number */
static void
read_number (xmlNode *node, const char *attribute, double *number)
{
  xmlChar *text = xmlGetNoNsProp (node, (const xmlChar *) attribute);
  char *end = NULL;
  const double read = text != NULL ? g_ascii_strtod ((const char *) text, &end) : 0;

  if (end != NULL && end != (char *) text && read > 0)
    *number = read;
  xmlFree (text);
}

/* Where the spectrum begins and how far its values are apart: told by itself, or by the specification that it names. */
static gboolean
read_range (xmlNode *root, xmlNode *spectrum, double *from, double *step)
{
  xmlChar *name = xmlGetNoNsProp (spectrum, (const xmlChar *) "ColorSpecification");
  xmlNode *specification = name != NULL ? find (root, "ColorSpecification", (const char *) name) : NULL;
  xmlNode *range = specification != NULL ? find (specification, "WavelengthRange", NULL) : NULL;

  *from = 0;
  *step = USUAL_STEP;
  if (range != NULL)
    {
      read_number (range, "StartWL", from);
      read_number (range, "Increment", step);
    }
  read_number (spectrum, "StartWL", from);
  read_number (spectrum, "Increment", step);
  xmlFree (name);
  return *from > 0;
}

static char *
write_lines (const char *values, double from, double step)
{
  g_auto (GStrv) words = g_strsplit_set (values, " \t\r\n", -1);
  GString *lines = g_string_new (NULL);
  guint n = 0;

  for (guint i = 0; words[i] != NULL && n <= MOST_POINTS; i++)
    if (words[i][0] != '\0')
      {
        char nm[G_ASCII_DTOSTR_BUF_SIZE];

        g_string_append_printf (lines, "%s,%s\n", g_ascii_formatd (nm, sizeof nm, "%.6g", from + step * n), words[i]);
        n++;
      }
  return g_string_free (lines, FALSE);
}

static char *
spectrum_of (xmlDoc *document, GError **error)
{
  xmlNode *root = xmlDocGetRootElement (document);
  xmlNode *spectrum = root != NULL && is_element (root, "CxF") ? find (root, "ReflectanceSpectrum", NULL) : NULL;
  double from, step;
  xmlChar *values;
  char *lines;

  if (spectrum == NULL)
    {
      g_set_error_literal (error, SW_FILE_ERROR, SW_FILE_ERROR_MEMBER,
                           _ ("There is no reflectance spectrum of CxF3 in the file. Export it with spectra, not with colour numbers alone."));
      return NULL;
    }
  if (!read_range (root, spectrum, &from, &step))
    {
      g_set_error_literal (error, SW_FILE_ERROR, SW_FILE_ERROR_MEMBER, _ ("The file does not say at which wavelength its spectrum begins."));
      return NULL;
    }
  values = xmlNodeGetContent (spectrum);
  lines = write_lines ((const char *) values, from, step);
  xmlFree (values);
  return lines;
}

/* Nothing that a document type may declare has a place in such a file. */
static void
refuse_type (void *data, const xmlChar *name, const xmlChar *public_id, const xmlChar *system_id)
{
  xmlParserCtxt *parser = data;
  gboolean *refused = parser->_private;

  *refused = TRUE;
  xmlStopParser (parser);
}

char *
sw_cxf_spectrum (const char *bytes, gsize n, GError **error)
{
  xmlParserCtxt *parser;
  gboolean refused = FALSE;
  xmlDoc *document;
  char *lines = NULL;

  g_return_val_if_fail (bytes != NULL && n <= G_MAXINT, NULL);
  parser = xmlNewParserCtxt ();
  parser->sax->internalSubset = refuse_type;
  parser->_private = &refused;
  document = xmlCtxtReadMemory (parser, bytes, (int) n, NULL, NULL, XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING | XML_PARSE_NOCDATA);
  if (refused)
    g_set_error_literal (error, SW_FILE_ERROR, SW_FILE_ERROR_REFUSED, _ ("The file declares a document type, which a file of measured colours has no need of."));
  else if (document != NULL)
    lines = spectrum_of (document, error);
  else
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_SYNTAX, _ ("The file begins as XML but stops being it on line %d."), MAX (parser->lastError.line, 1));
  xmlFreeDoc (document);
  xmlFreeParserCtxt (parser);
  return lines;
}
