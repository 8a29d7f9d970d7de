/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-colourway.h"
#include "files/sw-svg-private.h"
#include "files/sw-svg.h"

#include "colour/sw-colour-name.h"
#include "colour/sw-sample-forms.h"
#include "draw/sw-pour-new.h"
#include "sheet/sw-step-title.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* From the shapes of a drawing to pours: kind, place, dye, and what their data say. */

#define SAME_CODES 4.0 /* of 255: colours that an editor's rounding may have parted */
#define MOST_NAME 200

typedef struct
{
  const SwSketch *sketch;
  SwTraced *traced;
  guint next_id;
  GError **error;
} Reader;

static void
traced_pour_clear (gpointer data)
{
  g_clear_pointer (&((SwTracedPour *) data)->pour, sw_step_free);
}

static SwTraced *
traced_new (void)
{
  SwTraced *traced = g_new0 (SwTraced, 1);

  traced->dyes = g_ptr_array_new_with_free_func ((GDestroyNotify) sw_dye_free);
  traced->pours = g_array_new (FALSE, FALSE, sizeof (SwTracedPour));
  g_array_set_clear_func (traced->pours, traced_pour_clear);
  return traced;
}

void
sw_traced_free (SwTraced *traced)
{
  if (traced == NULL)
    return;
  g_ptr_array_unref (traced->dyes);
  g_array_unref (traced->pours);
  g_free (traced);
}

/* Names */

/* What an editor calls the thing for people: its title, its layer's label, or the id. */
static char *
name_of (xmlNode *node, gboolean also_id)
{
  const char *name = NULL;

  for (xmlNode *child = node->children; child != NULL; child = child->next)
    if (child->type == XML_ELEMENT_NODE && g_str_equal ((const char *) child->name, "title"))
      {
        xmlChar *title = xmlNodeGetContent (child);
        char *copy = g_strstrip (g_utf8_make_valid (title != NULL ? (const char *) title : "", -1));

        xmlFree (title);
        if (copy[0] != '\0')
          return copy;
        g_free (copy);
      }
  for (xmlAttr *attribute = node->properties; attribute != NULL && name == NULL; attribute = attribute->next)
    if (attribute->ns != NULL && g_str_equal ((const char *) attribute->name, "label") && attribute->children != NULL)
      name = (const char *) attribute->children->content;
  if (name == NULL)
    name = sw_svg_attribute (node, "data-name");
  if (name == NULL && also_id)
    name = sw_svg_attribute (node, "id");
  return name != NULL ? g_strstrip (g_strdup (name)) : NULL;
}

static gboolean
same_words (const char *a, const char *b)
{
  g_autofree char *folded_a = g_utf8_casefold (a, -1);
  g_autofree char *folded_b = g_utf8_casefold (b, -1);

  return g_str_equal (folded_a, folded_b);
}

static const SwDye *
dye_named (const GPtrArray *dyes, const char *name)
{
  for (guint i = 0; name != NULL && i < dyes->len; i++)
    {
      const SwDye *dye = g_ptr_array_index (dyes, i);

      if (dye->name[0] != '\0' && same_words (dye->name, name))
        return dye;
    }
  return NULL;
}

static const SwDye *
dye_coloured (const GPtrArray *dyes, const double *code)
{
  for (guint i = 0; i < dyes->len; i++)
    {
      const SwDye *dye = g_ptr_array_index (dyes, i);
      const SwSrgb is = sw_sample_srgb (&dye->sample);

      if (fabs (255 * is.r - code[0]) <= SAME_CODES && fabs (255 * is.g - code[1]) <= SAME_CODES && fabs (255 * is.b - code[2]) <= SAME_CODES)
        return dye;
    }
  return NULL;
}

/* A group of a dye that has no name of its own, as we wrote it. */
static const SwDye *
dye_numbered (const SwSketch *sketch, xmlNode *node, const char *name)
{
  const char *text = sw_svg_attribute (node, "data-dye");
  const SwDye *dye = NULL;
  guint64 id;

  if (text != NULL && g_ascii_string_to_unsigned (text, 10, 1, SW_ID_MAX, &id, NULL))
    dye = sw_sketch_find_dye (sketch, (guint) id);
  return dye != NULL && g_strcmp0 (name, sw_dye_title (dye)) == 0 ? dye : NULL;
}

/* Of the shape or the groups around it, the innermost that is called like a dye. */
static const SwDye *
dye_by_name (const Reader *r, xmlNode *node)
{
  for (; node->parent != NULL && node->parent->type == XML_ELEMENT_NODE; node = node->parent)
    {
      g_autofree char *name = name_of (node, TRUE);
      const SwDye *dye = dye_named (r->sketch->dyes, name);

      if (dye == NULL)
        dye = dye_numbered (r->sketch, node, name);
      if (dye == NULL)
        dye = dye_named (r->traced->dyes, name);
      if (dye != NULL)
        return dye;
    }
  return NULL;
}

/* "Layer 1", "g12", "path7": what editors call things by themselves. */
static gboolean
is_made_up (const char *name)
{
  static const char *const words[] = { "layer", "group", "g", "path", "rect", "ellipse", "svg", NULL };
  const gsize n = strcspn (name, " -_0123456789");
  g_autofree char *word = g_ascii_strdown (name, (gssize) n);

  return g_strv_contains (words, word) && name[n + strspn (name + n, " -_0123456789")] == '\0';
}

/* What a new dye is called: as the nearest group with a name that a person gave it. */
static char *
name_for_new (xmlNode *node, const SwSample *sample)
{
  for (node = node->parent; node != NULL && node->type == XML_ELEMENT_NODE && node->parent != NULL && node->parent->type == XML_ELEMENT_NODE; node = node->parent)
    {
      g_autofree char *name = g_str_equal ((const char *) node->name, "g") ? name_of (node, FALSE) : NULL;
      const char *id = sw_svg_attribute (node, "id");

      if (name != NULL && name[0] != '\0' && strlen (name) <= MOST_NAME && !is_made_up (name) && g_strcmp0 (id, SW_SVG_SECOND_FACE) != 0 && g_strcmp0 (id, "first-face") != 0)
        return g_steal_pointer (&name);
    }
  return sw_colour_name (sw_sample_lab (sample));
}

static const SwDye *
make_dye (Reader *r, const SwSvgShape *shape)
{
  SwDye *dye;

  if (r->sketch->dyes->len + r->traced->dyes->len >= SW_MAX_DYES)
    {
      g_set_error (r->error, SW_FILE_ERROR, SW_FILE_ERROR_SIZE, _ ("The drawing has so many colours that there would be more than %d dyes. Fill shapes of one dye with one colour, or group them under its name."), SW_MAX_DYES);
      return NULL;
    }
  while (sw_sketch_find_dye (r->sketch, r->next_id) != NULL || sw_sketch_find_step (r->sketch, r->next_id) != NULL || sw_sketch_find_batch (r->sketch, r->next_id) != NULL)
    r->next_id++;
  dye = sw_dye_new (r->next_id++);
  if (shape->coloured)
    dye->sample = (SwSample){ SW_SAMPLE_SRGB, { shape->colour[0], shape->colour[1], shape->colour[2] } };
  g_free (dye->name);
  dye->name = name_for_new (shape->node, &dye->sample);
  g_ptr_array_add (r->traced->dyes, dye);
  return dye;
}

/* By name, else by colour; a shape without either is of the first dye. */
static const SwDye *
dye_of (Reader *r, const SwSvgShape *shape)
{
  const SwDye *dye = dye_by_name (r, shape->node);

  if (dye == NULL && shape->coloured)
    dye = dye_coloured (r->sketch->dyes, shape->colour);
  if (dye == NULL && shape->coloured)
    dye = dye_coloured (r->traced->dyes, shape->colour);
  if (dye == NULL && !shape->coloured && r->sketch->dyes->len > 0)
    dye = g_ptr_array_index (r->sketch->dyes, 0);
  return dye != NULL ? dye : make_dye (r, shape);
}

/* Data */

/* The kind that the shape's own data tell, or its name: "speckle"; -1. */
static int
told_kind (xmlNode *node)
{
  const char *word = sw_svg_attribute (node, "data-kind");
  int kind = word != NULL ? sw_step_kind_from_name (word) : -1;
  g_autofree char *name = kind < 0 ? name_of (node, TRUE) : NULL;
  g_autofree char *lower = name != NULL ? g_ascii_strdown (name, -1) : NULL;

  if (kind < 0 && lower != NULL && g_str_has_prefix (lower, sw_step_kind_name (SW_STEP_SPECKLE)))
    kind = SW_STEP_SPECKLE;
  return kind >= 0 && (SW_STEP_BIT (kind) & SW_STEP_POURS) != 0 ? kind : -1;
}

static gboolean
set_member (const Reader *r, SwStep *step, const SwMember *member, const char *text)
{
  g_autoptr (GError) error = NULL;
  const char *at = text;
  SwValue value = { .kind = member->kind };
  gboolean read = TRUE;

  if (member->kind == SW_KIND_FLAG)
    value = sw_value_flag (g_str_equal (text, "true"));
  else if (member->kind == SW_KIND_TEXT)
    value = sw_value_text (text);
  else
    read = member->kind == SW_KIND_NUMBER && sw_svg_number (&at, &value.as.number) && *at == '\0';
  if (read && sw_member_set (member, step, &value, &error))
    {
      sw_value_clear (&value);
      return TRUE;
    }
  if (read)
    sw_value_clear (&value);
  g_set_error (r->error, SW_FILE_ERROR, SW_FILE_ERROR_MEMBER,
               /* Translators: %s: name of an attribute, its value, and (perhaps empty) a sentence about it */
               _ ("A shape's %s is “%.40s”. %s"), member->name, text, error != NULL ? error->message : _ ("It must be a number."));
  return FALSE;
}

static gboolean
read_data (const Reader *r, xmlNode *node, SwStep *step)
{
  gsize n;
  const SwMember *members = sw_record_members (SW_RECORD_STEP, &n);

  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *name = sw_svg_data_name (members[i].name);
      const char *text = sw_svg_attribute (node, name);

      if (text != NULL && members[i].kind != SW_KIND_DYE && sw_member_applies (&members[i], step->kind) && !set_member (r, step, &members[i], text))
        return FALSE;
    }
  return TRUE;
}

/* Places */

/* A band that was right across keeps being so, and the line it slants about, while it still reaches across. */
static void
keep_whole (const SwStep *told, double across, SwPourPlace *place)
{
  const double near = place->y - place->length / 2, far = place->y + place->length / 2;

  if (told->length_cm > 0 || !sw_fit_spans (near, far, across))
    return;
  place->x += (told->y_cm - place->y) * tan (place->angle * G_PI / 180);
  place->y = told->y_cm;
  place->length = 0;
}

static void
find_place (const Reader *r, const SwSvgShape *shape, int kind, const SwStep *told, SwPourPlace *place)
{
  const double across = sw_sketch_lay_width (r->sketch);

  if (kind == SW_STEP_BAND)
    {
      sw_fit_band (&shape->moments, place);
      if (sw_svg_attribute (shape->node, "data-length-cm") != NULL)
        keep_whole (told, across, place);
    }
  else if (kind >= 0)
    sw_fit_turned (&shape->moments, (SwStepKind) kind, told->angle_deg, place);
  else if (shape->ring == NULL)
    sw_fit_turned (&shape->moments, SW_STEP_SPLOTCH, 0, place);
  else
    sw_fit_nearest ((const SwPoint *) (gpointer) shape->ring->data, shape->ring->len, &shape->moments, across, place);
  sw_pour_place_tidy (place);
  place->angle += 0.0; /* -0 is 0 */
}

/* Pours */

/* The pour of the sketch that the shape is, come back from an editor; NULL if it is a new one. */
static const SwStep *
known_pour (const Reader *r, xmlNode *node, int kind)
{
  const char *id = sw_svg_attribute (node, "id");
  guint64 number;
  const SwStep *step;

  if (id == NULL || kind < 0 || !g_str_has_prefix (id, "pour-") || !g_ascii_string_to_unsigned (id + strlen ("pour-"), 10, 1, SW_ID_MAX, &number, NULL))
    return NULL;
  step = sw_sketch_find_step (r->sketch, (guint) number);
  if (step == NULL || (int) step->kind != kind)
    return NULL;
  for (guint i = 0; i < r->traced->pours->len; i++)
    if (g_array_index (r->traced->pours, SwTracedPour, i).pour->id == number)
      return NULL;
  return step;
}

static gboolean
on_second_face (xmlNode *node)
{
  for (; node != NULL && node->type == XML_ELEMENT_NODE; node = node->parent)
    {
      const char *id = sw_svg_attribute (node, "id");

      if (g_strcmp0 (id, SW_SVG_SECOND_FACE) == 0)
        return TRUE;
    }
  return FALSE;
}

static guint
told_number (xmlNode *node)
{
  const char *text = sw_svg_attribute (node, "data-number");
  guint64 number;

  return text != NULL && g_ascii_string_to_unsigned (text, 10, 1, SW_MAX_STEPS, &number, NULL) ? (guint) number : G_MAXUINT;
}

/* A usual amount for what is not told. */
static void
complete_new (const Reader *r, xmlNode *node, const SwDye *dye, const SwPourPlace *place, SwStep *step)
{
  if (sw_svg_attribute (node, "data-amount-ml") == NULL)
    step->amount_ml = sw_pour_amount (r->sketch, dye, place);
  if (sw_svg_attribute (node, "data-worked-in") == NULL && step->kind != SW_STEP_SPECKLE)
    step->worked_in = SW_POUR_WORKED_IN;
}

static gboolean
read_shape (Reader *r, const SwSvgShape *shape)
{
  const int kind = told_kind (shape->node);
  const SwStep *known = known_pour (r, shape->node, kind);
  const SwDye *dye = dye_of (r, shape);
  g_autoptr (SwStep) told = known != NULL ? sw_step_copy (known) : sw_step_new (0, kind >= 0 ? (SwStepKind) kind : SW_STEP_BAND);
  SwTracedPour traced = { .second_face = on_second_face (shape->node), .number = told_number (shape->node) };
  SwPourPlace place;

  if (dye == NULL || (known == NULL && !read_data (r, shape->node, told)))
    return FALSE;
  find_place (r, shape, kind, told, &place);
  if (known == NULL && kind < 0)
    {
      sw_step_free (told);
      told = sw_step_new (0, place.kind);
    }
  sw_pour_place_put (&place, told);
  told->dye = dye->id;
  if (known == NULL)
    complete_new (r, shape->node, dye, &place, told);
  traced.pour = g_steal_pointer (&told);
  g_array_append_val (r->traced->pours, traced);
  return TRUE;
}

static int
compare_pours (gconstpointer a, gconstpointer b)
{
  const SwTracedPour *p = a, *q = b;

  if (p->second_face != q->second_face)
    return p->second_face ? 1 : -1;
  return p->number < q->number ? -1 : p->number > q->number;
}

static gboolean
read_shapes (Reader *r, const SwSvgShapes *shapes)
{
  r->traced->n_left_out = shapes->n_left_out;
  if (shapes->shapes->len == 0)
    {
      g_set_error_literal (r->error, SW_FILE_ERROR, SW_FILE_ERROR_MEMBER, _ ("There are no closed shapes on the skein in this drawing. Draw each pour as a closed shape over the outline of the lay."));
      return FALSE;
    }
  if (shapes->shapes->len > SW_SVG_MAX_POURS)
    {
      g_set_error (r->error, SW_FILE_ERROR, SW_FILE_ERROR_SIZE, _ ("The drawing has more than %d shapes on the skein. Leave out what is no pour."), SW_SVG_MAX_POURS);
      return FALSE;
    }
  for (guint i = 0; i < shapes->shapes->len; i++)
    if (!read_shape (r, &g_array_index (shapes->shapes, SwSvgShape, i)))
      return FALSE;
  g_array_sort (r->traced->pours, compare_pours); /* stable: as drawn, where no number tells */
  return TRUE;
}

SwTraced *
sw_svg_read (const char *bytes, gsize n, const SwSketch *sketch, GError **error)
{
  xmlDoc *document = sw_svg_parse (bytes, n, error);
  g_autoptr (SwTraced) traced = traced_new ();
  Reader reader = { sketch, traced, sw_sketch_fresh_id (sketch), error };
  SwSvgShapes shapes;
  gboolean done;

  if (document == NULL)
    return NULL;
  if (!sw_svg_fill_clones (xmlDocGetRootElement (document), error))
    {
      xmlFreeDoc (document);
      return NULL;
    }
  done = sw_svg_walk (xmlDocGetRootElement (document), sketch, &shapes, error) && read_shapes (&reader, &shapes);
  sw_svg_shapes_clear (&shapes);
  xmlFreeDoc (document);
  return done ? g_steal_pointer (&traced) : NULL;
}
