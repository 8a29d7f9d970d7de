/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-colourway.h"
#include "files/sw-svg-private.h"
#include "files/sw-svg.h"

#include <glib/gi18n-lib.h>

/*
 * What an editor calls a clone: an element that shows another one of the same
 * drawing once more. Before the walk each gets a copy of what it shows as its
 * child, so that colours, names and transforms are found as for any group.
 * The limits of the parser hold for the drawing with its clones, too.
 */

typedef struct
{
  GHashTable *by_id; /* of what was there before the first copy */
  guint n_elements;
  GError **error;
} Expander;

static gboolean
is_element (const xmlNode *node, const char *name)
{
  return node->type == XML_ELEMENT_NODE && g_str_equal ((const char *) node->name, name);
}

/* Elements in @node, itself among them, and how many levels of them; no deeper than the parser lets them be. */
static guint
measure (xmlNode *node, guint *levels)
{
  guint n = 1;

  *levels = 1;
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    if (child->type == XML_ELEMENT_NODE)
      {
        guint below;

        n += measure (child, &below);
        *levels = MAX (*levels, below + 1);
      }
  return n;
}

static guint
depth_of (const xmlNode *node)
{
  guint depth = 0;

  for (; node != NULL && node->type == XML_ELEMENT_NODE; node = node->parent)
    depth++;
  return depth;
}

static void
note_ids (Expander *expander, xmlNode *node)
{
  const char *id = sw_svg_attribute (node, "id");

  expander->n_elements++;
  if (id != NULL && !g_hash_table_contains (expander->by_id, id))
    g_hash_table_insert (expander->by_id, g_strdup (id), node);
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    if (child->type == XML_ELEMENT_NODE)
      note_ids (expander, child);
}

/* The plain form, or the older one of another namespace. (nullable) */
static xmlAttr *
reference_of (xmlNode *use)
{
  xmlAttr *plain = xmlHasNsProp (use, (const xmlChar *) "href", NULL);
  xmlAttr *older = xmlHasNsProp (use, (const xmlChar *) "href", (const xmlChar *) "http://www.w3.org/1999/xlink");

  return plain != NULL ? plain : older;
}

/* "#a" within this drawing; NULL for anything else. */
static xmlNode *
shown_by (const Expander *expander, const xmlAttr *reference)
{
  const char *href = reference != NULL && reference->children != NULL ? (const char *) reference->children->content : NULL;

  return href != NULL && href[0] == '#' ? g_hash_table_lookup (expander->by_id, href + 1) : NULL;
}

/* It shows itself, or what it is in a copy of. */
static gboolean
is_within (const xmlNode *use, const xmlNode *shown)
{
  for (const xmlNode *node = use; node != NULL; node = node->parent)
    if (node == shown || (node->type == XML_ELEMENT_NODE && node->_private == shown))
      return TRUE;
  return FALSE;
}

/* A copy is no pour that came back, nor the frame: its names stay only as names. */
static void
forget_ids (xmlNode *node)
{
  xmlAttr *id = xmlHasNsProp (node, (const xmlChar *) "id", NULL);

  if (id != NULL && sw_svg_attribute (node, "data-name") == NULL)
    xmlNewNsProp (node, NULL, (const xmlChar *) "data-name", (const xmlChar *) sw_svg_attribute (node, "id"));
  if (id != NULL)
    xmlRemoveProp (id);
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    if (child->type == XML_ELEMENT_NODE)
      forget_ids (child);
}

/* A symbol is shown like a drawing within the drawing, as large as the clone says. */
static void
fit_symbol (xmlNode *use, xmlNode *copy)
{
  static const char *const sides[] = { "width", "height" };

  if (is_element (copy, "symbol"))
    xmlNodeSetName (copy, (const xmlChar *) "svg");
  for (gsize i = 0; i < G_N_ELEMENTS (sides) && is_element (copy, "svg"); i++)
    {
      const char *side = sw_svg_attribute (use, sides[i]);

      if (side != NULL)
        xmlSetNsProp (copy, NULL, (const xmlChar *) sides[i], (const xmlChar *) side);
    }
}

static gboolean
has_room (Expander *expander, xmlNode *use, xmlNode *shown)
{
  guint levels;

  expander->n_elements += measure (shown, &levels);
  if (expander->n_elements > SW_SVG_MAX_ELEMENTS)
    g_set_error (expander->error, SW_FILE_ERROR, SW_FILE_ERROR_SIZE, _ ("The drawing has more than %d elements. Save only the layer with the pours."), SW_SVG_MAX_ELEMENTS);
  else if (depth_of (use) + levels > SW_SVG_MAX_DEPTH)
    g_set_error (expander->error, SW_FILE_ERROR, SW_FILE_ERROR_SIZE, _ ("The drawing's groups are more than %d deep. Ungroup some of them, and save it again."), SW_SVG_MAX_DEPTH);
  else
    return TRUE;
  return FALSE;
}

/* What shows nothing of this drawing stays empty, and is left out by the walk. What is filled refers to nothing any more: copies of it are full. */
static gboolean
fill_clone (Expander *expander, xmlNode *use)
{
  xmlAttr *reference = reference_of (use);
  xmlNode *shown = shown_by (expander, reference), *copy;

  if (shown == NULL || is_within (use, shown))
    return TRUE;
  if (!has_room (expander, use, shown))
    return FALSE;
  copy = xmlDocCopyNode (shown, use->doc, 1);
  forget_ids (copy);
  fit_symbol (use, copy);
  copy->_private = shown;
  xmlAddChild (use, copy);
  xmlRemoveProp (reference);
  return TRUE;
}

static gboolean
expand (Expander *expander, xmlNode *node)
{
  if (is_element (node, "use") && !fill_clone (expander, node))
    return FALSE;
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    if (child->type == XML_ELEMENT_NODE && !expand (expander, child))
      return FALSE;
  return TRUE;
}

gboolean
sw_svg_fill_clones (xmlNode *root, GError **error)
{
  Expander expander = { g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL), 0, error };
  gboolean done;

  note_ids (&expander, root);
  done = expand (&expander, root);
  g_hash_table_unref (expander.by_id);
  return done;
}
