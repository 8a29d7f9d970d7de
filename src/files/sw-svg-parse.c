/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-colourway.h"
#include "files/sw-svg-private.h"
#include "files/sw-svg.h"

#include <glib/gi18n-lib.h>
#include <libxml/parser.h>
#include <libxml/parserInternals.h>
#include <string.h>

/*
 * Drawings come from anywhere. The parser stops at the first declaration of
 * an entity or of anything else that a document type may declare, and counts
 * as it goes, so that a file cannot grow in memory or reach for other files.
 * A bare document type, which older editors write, declares nothing.
 */

typedef struct
{
  startElementNsSAX2Func start;
  endElementNsSAX2Func end;
  guint n_elements, depth;
  GError *error;
} Guard;

/* The first refusal counts. */
static void
stop (xmlParserCtxt *parser, Guard *guard, int code, char *sentence)
{
  if (guard->error == NULL)
    guard->error = g_error_new_literal (SW_FILE_ERROR, code, sentence);
  g_free (sentence);
  xmlStopParser (parser);
}

static void
start_cb (void *data, const xmlChar *name, const xmlChar *prefix, const xmlChar *uri, int n_spaces, const xmlChar **spaces, int n_attributes, int n_defaulted, const xmlChar **attributes)
{
  xmlParserCtxt *parser = data;
  Guard *guard = parser->_private;

  if (++guard->n_elements > SW_SVG_MAX_ELEMENTS)
    stop (parser, guard, SW_FILE_ERROR_SIZE, g_strdup_printf (_ ("The drawing has more than %d elements. Save only the layer with the pours."), SW_SVG_MAX_ELEMENTS));
  else if (++guard->depth > SW_SVG_MAX_DEPTH)
    stop (parser, guard, SW_FILE_ERROR_SIZE, g_strdup_printf (_ ("The drawing's groups are more than %d deep. Ungroup some of them, and save it again."), SW_SVG_MAX_DEPTH));
  else
    guard->start (data, name, prefix, uri, n_spaces, spaces, n_attributes, n_defaulted, attributes);
}

static void
end_cb (void *data, const xmlChar *name, const xmlChar *prefix, const xmlChar *uri)
{
  xmlParserCtxt *parser = data;
  Guard *guard = parser->_private;

  guard->depth--;
  guard->end (data, name, prefix, uri);
}

static void
declared (void *data)
{
  xmlParserCtxt *parser = data;

  stop (parser, parser->_private, SW_FILE_ERROR_REFUSED,
        g_strdup (_ ("The drawing declares entities or elements of its own, which a layout has no need of. Save it again as plain SVG.")));
}

static void
entity_cb (void *data, const xmlChar *name, int type, const xmlChar *public_id, const xmlChar *system_id, xmlChar *content)
{
  declared (data);
}

static void
attribute_cb (void *data, const xmlChar *element, const xmlChar *name, int type, int def, const xmlChar *value, xmlEnumeration *tree)
{
  xmlFreeEnumeration (tree);
  declared (data);
}

static void
element_cb (void *data, const xmlChar *name, int type, xmlElementContent *content)
{
  declared (data);
}

static void
notation_cb (void *data, const xmlChar *name, const xmlChar *public_id, const xmlChar *system_id)
{
  declared (data);
}

static void
unparsed_cb (void *data, const xmlChar *name, const xmlChar *public_id, const xmlChar *system_id, const xmlChar *notation)
{
  declared (data);
}

/* What a parameter entity or an outer subset would be fetched by. */
static xmlParserInput *
resolve_cb (void *data, const xmlChar *public_id, const xmlChar *system_id)
{
  return NULL;
}

static void
outer_subset_cb (void *data, const xmlChar *name, const xmlChar *public_id, const xmlChar *system_id)
{
}

static void
set_guard (xmlParserCtxt *parser, Guard *guard)
{
  xmlSAXHandler *sax = parser->sax;

  *guard = (Guard){ sax->startElementNs, sax->endElementNs, 0, 0, NULL };
  parser->_private = guard;
  sax->startElementNs = start_cb;
  sax->endElementNs = end_cb;
  sax->entityDecl = entity_cb;
  sax->attributeDecl = attribute_cb;
  sax->elementDecl = element_cb;
  sax->notationDecl = notation_cb;
  sax->unparsedEntityDecl = unparsed_cb;
  sax->resolveEntity = resolve_cb;
  sax->externalSubset = outer_subset_cb;
}

static gboolean
is_svg (xmlDoc *document)
{
  xmlNode *root = xmlDocGetRootElement (document);

  return root != NULL && g_str_equal ((const char *) root->name, "svg") &&
         (root->ns == NULL || g_str_equal ((const char *) root->ns->href, "http://www.w3.org/2000/svg"));
}

/* What can be told before parsing. */
static gboolean
check_bytes (const char *bytes, gsize n, GError **error)
{
  static const char packed[] = { 0x1f, (char) 0x8b };

  if (n > SW_SVG_MAX_BYTES)
    {
      g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_SIZE, _ ("The drawing is larger than %d MB. Leave out pictures in it, and save it again."), SW_SVG_MAX_BYTES / 1024 / 1024);
      return FALSE;
    }
  if (n >= sizeof packed && memcmp (bytes, packed, sizeof packed) == 0)
    {
      g_set_error_literal (error, SW_FILE_ERROR, SW_FILE_ERROR_SYNTAX, _ ("The drawing is compressed. Save it again as plain SVG, not as SVGZ."));
      return FALSE;
    }
  return TRUE;
}

xmlDoc *
sw_svg_parse (const char *bytes, gsize n, GError **error)
{
  xmlParserCtxt *parser;
  xmlDoc *document;
  Guard guard;

  if (!check_bytes (bytes, n, error))
    return NULL;
  parser = xmlNewParserCtxt ();
  set_guard (parser, &guard);
  document = xmlCtxtReadMemory (parser, bytes, (int) n, NULL, NULL, XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING | XML_PARSE_NOCDATA);
  if (guard.error != NULL)
    g_propagate_error (error, guard.error);
  else if (document == NULL)
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_SYNTAX, _ ("This is no drawing: it stops being XML on line %d. Save it again as plain SVG."), MAX (parser->lastError.line, 1));
  else if (!is_svg (document))
    g_set_error (error, SW_FILE_ERROR, SW_FILE_ERROR_SYNTAX, _ ("This is no drawing: its first element is “%s”, not “svg” of SVG's own namespace."), (const char *) xmlDocGetRootElement (document)->name);
  if (document != NULL && (guard.error != NULL || !is_svg (document)))
    g_clear_pointer (&document, xmlFreeDoc);
  xmlFreeParserCtxt (parser);
  return document;
}
