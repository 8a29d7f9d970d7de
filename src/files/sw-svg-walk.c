/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "files/sw-colourway.h"
#include "files/sw-json-print.h"
#include "files/sw-svg-private.h"
#include "files/sw-svg.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/*
 * From the elements of a drawing to closed outlines in the pan. The walk
 * collects them in px; where the skein lies is known only at its end, so
 * that they are brought to cm then.
 */

#define CURVE_STEP_PX 2.0
#define LEAST_CM2 0.05 /* smaller shapes are marks of the pen, no pours */
#define MOST_RINGS 200 /* of one path whose holes are looked for */

typedef struct
{
  GHashTable *classes;
  SwSvgShapes *shapes;
  double width, height; /* px: of the page */
  gboolean framed;      /* the lay's own outline is in the drawing */
  double left, top, right, bottom;
  gsize room; /* points that may still be made */
  GError **error;
} Walk;

static gboolean
refuse (const Walk *walk, xmlNode *node, const char *what)
{
  const char *id = sw_svg_attribute (node, "id");

  g_set_error (walk->error, SW_FILE_ERROR, SW_FILE_ERROR_MEMBER,
               /* Translators: %s: kind of element, its id (may be empty), which of its attributes ("transform"), %ld its line in the file */
               _ ("The %s “%s” on line %ld has an attribute “%s” that cannot be read. Draw that shape anew, or save the drawing again as plain SVG."),
               (const char *) node->name, id != NULL ? id : "", xmlGetLineNo (node), what);
  return FALSE;
}

static gboolean
is_named (xmlNode *node, const char *id)
{
  return g_strcmp0 (sw_svg_attribute (node, "id"), id) == 0;
}

/* An inherited property, from the element or the nearest around it that has it. */
static char *
inherited (const Walk *walk, xmlNode *node, const char *name)
{
  for (; node != NULL && node->type == XML_ELEMENT_NODE; node = node->parent)
    {
      char *value = sw_svg_property (node, walk->classes, name);

      if (value != NULL && !g_str_equal (g_strstrip (value), "inherit"))
        return value;
      g_free (value);
    }
  return NULL;
}

/* What it is filled with; with no filling, the colour of its outline. */
static void
find_colour (const Walk *walk, SwSvgShape *shape, gboolean *filled)
{
  g_autofree char *fill = inherited (walk, shape->node, "fill");
  g_autofree char *stroke = NULL;

  *filled = g_strcmp0 (fill, "none") != 0;
  shape->coloured = sw_svg_colour (fill, shape->colour);
  if (shape->coloured || fill == NULL)
    return;
  stroke = inherited (walk, shape->node, "stroke");
  shape->coloured = sw_svg_colour (stroke, shape->colour);
}

static gboolean
too_many_points (const Walk *walk)
{
  g_set_error (walk->error, SW_FILE_ERROR, SW_FILE_ERROR_SIZE, _ ("The drawing's outlines have more than %d points. Simplify its paths, or leave out what is no pour."), SW_SVG_MAX_POINTS);
  return FALSE;
}

/* Within the ring, by the number of its edges to the left. */
static gboolean
holds (const SwPoint *ring, gsize n, SwPoint point)
{
  gboolean inside = FALSE;

  for (gsize i = 0; i < n; i++)
    {
      const SwPoint a = ring[i], b = ring[(i + 1) % n];

      if ((a.y <= point.y) != (b.y <= point.y) && a.x + (b.x - a.x) * (point.y - a.y) / (b.y - a.y) < point.x)
        inside = !inside;
    }
  return inside;
}

static const SwPoint *
ring_of (const SwOutline *outline, guint i, gsize *n)
{
  const guint from = i > 0 ? g_array_index (outline->ends, guint, i - 1) : 0;

  *n = g_array_index (outline->ends, guint, i) - from;
  return &g_array_index (outline->points, SwPoint, from);
}

/* A ring within a larger ring of the same path is a hole in it. */
static gboolean
is_hole (const SwOutline *outline, guint i, double area)
{
  gsize n, n_other;
  const SwPoint *ring = ring_of (outline, i, &n);

  for (guint other = 0; outline->ends->len <= MOST_RINGS && other < outline->ends->len; other++)
    {
      const SwPoint *around = ring_of (outline, other, &n_other);
      SwMoments moments;

      if (other != i && sw_moments_of_ring (around, n_other, &moments) && moments.area > area && holds (around, n_other, ring[0]))
        return TRUE;
    }
  return FALSE;
}

static void
add_rings (const Walk *walk, xmlNode *node, const SwOutline *outline)
{
  SwSvgShape shape = { .node = node };
  gboolean filled;

  find_colour (walk, &shape, &filled);
  for (guint i = 0; i < outline->ends->len; i++)
    {
      gsize n;
      const SwPoint *ring = ring_of (outline, i, &n);

      if ((!filled && !g_array_index (outline->closed, gboolean, i)) || !sw_moments_of_ring (ring, n, &shape.moments))
        {
          walk->shapes->n_left_out++;
          continue;
        }
      if (is_hole (outline, i, shape.moments.area))
        continue;
      shape.ring = g_array_sized_new (FALSE, FALSE, sizeof (SwPoint), (guint) n);
      g_array_append_vals (shape.ring, ring, (guint) n);
      g_array_append_val (walk->shapes->shapes, shape);
    }
}

static gboolean
add_path (Walk *walk, xmlNode *node, const char *d, const cairo_matrix_t *matrix, const char *what)
{
  SwOutline outline;
  gboolean read;

  sw_outline_init (&outline);
  read = sw_svg_path (d, matrix, CURVE_STEP_PX, &walk->room, &outline);
  if (read)
    add_rings (walk, node, &outline);
  sw_outline_clear (&outline);
  if (!read && walk->room == 0)
    return too_many_points (walk);
  return read || refuse (walk, node, what);
}

/* Shapes */

/* A number of the element in user units; @fallback if it is not given. */
static gboolean
read_length (const Walk *walk, xmlNode *node, const char *name, double whole, double fallback, double *number)
{
  const char *text = sw_svg_attribute (node, name);

  *number = fallback;
  return text == NULL || g_str_equal (text, "auto") || sw_svg_length (text, whole, number) || refuse (walk, node, name);
}

static char *
rectangle_path (double x, double y, double width, double height, double rx, double ry)
{
  const double numbers[] = { x + rx, y, width - 2 * rx, rx, ry, rx, ry, height - 2 * ry, rx, ry, -rx, ry, -(width - 2 * rx), rx, ry, -rx, -ry, -(height - 2 * ry), rx, ry, rx, -ry };
  static const char *const before[] = { "M", ",", "h", "a", " ", " 0 0 1 ", ",", "v", "a", " ", " 0 0 1 ", ",", "h", "a", " ", " 0 0 1 ", ",", "v", "a", " ", " 0 0 1 ", "," };
  GString *path = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      g_autofree char *text = sw_json_number (numbers[i]);

      g_string_append_printf (path, "%s%s", before[i], text);
    }
  return g_string_free (g_string_append (path, "z"), FALSE);
}

/* The outline of the lay in the frame that the drawing was made on. */
static void
take_frame (Walk *walk, double x, double y, double width, double height, const cairo_matrix_t *matrix)
{
  double x2 = x + width, y2 = y + height;

  cairo_matrix_transform_point (matrix, &x, &y);
  cairo_matrix_transform_point (matrix, &x2, &y2);
  walk->framed = TRUE;
  walk->left = MIN (x, x2);
  walk->right = MAX (x, x2);
  walk->top = MIN (y, y2);
  walk->bottom = MAX (y, y2);
}

static gboolean
read_rect (Walk *walk, xmlNode *node, const cairo_matrix_t *matrix)
{
  g_autofree char *path = NULL;
  double x, y, width, height, rx, ry;

  if (!read_length (walk, node, "x", walk->width, 0, &x) || !read_length (walk, node, "y", walk->height, 0, &y) ||
      !read_length (walk, node, "width", walk->width, 0, &width) || !read_length (walk, node, "height", walk->height, 0, &height) ||
      !read_length (walk, node, "rx", walk->width, -1, &rx) || !read_length (walk, node, "ry", walk->height, rx, &ry))
    return FALSE;
  if (!(width > 0 && height > 0))
    return TRUE;
  if (is_named (node, "lay"))
    {
      take_frame (walk, x, y, width, height, matrix);
      return TRUE;
    }
  rx = CLAMP (rx < 0 ? ry : rx, 0, width / 2);
  ry = CLAMP (ry, 0, height / 2);
  path = rectangle_path (x, y, width, height, rx, ry);
  return add_path (walk, node, path, matrix, "size");
}

static gboolean
read_ellipse (Walk *walk, xmlNode *node, const cairo_matrix_t *matrix)
{
  const gboolean circle = g_str_equal ((const char *) node->name, "circle");
  SwSvgShape shape = { .node = node };
  gboolean filled;
  double x, y, rx, ry;

  if (!read_length (walk, node, "cx", walk->width, 0, &x) || !read_length (walk, node, "cy", walk->height, 0, &y) ||
      !read_length (walk, node, circle ? "r" : "rx", walk->width, -1, &rx) || !read_length (walk, node, circle ? "r" : "ry", walk->height, rx, &ry))
    return FALSE;
  rx = rx < 0 ? ry : rx;
  find_colour (walk, &shape, &filled);
  if (rx > 0 && ry > 0 && sw_moments_of_ellipse (x, y, rx, ry, matrix, &shape.moments))
    g_array_append_val (walk->shapes->shapes, shape);
  return TRUE;
}

static gboolean
read_polygon (Walk *walk, xmlNode *node, const cairo_matrix_t *matrix)
{
  const char *points = sw_svg_attribute (node, "points");
  const gboolean closed = g_str_equal ((const char *) node->name, "polygon");
  g_autofree char *path = NULL;

  if (points == NULL || points[strspn (points, " \t\r\n")] == '\0')
    return TRUE;
  path = g_strconcat ("M", points, closed ? "z" : NULL, NULL);
  return add_path (walk, node, path, matrix, "points");
}

static gboolean
read_path (Walk *walk, xmlNode *node, const cairo_matrix_t *matrix)
{
  const char *d = sw_svg_attribute (node, "d");

  return d == NULL || add_path (walk, node, d, matrix, "d");
}

static gboolean
leave_out (Walk *walk, xmlNode *node, const cairo_matrix_t *matrix)
{
  walk->shapes->n_left_out++;
  return TRUE;
}

/* Groups */

static gboolean
walk_children (Walk *walk, xmlNode *node, const cairo_matrix_t *matrix);

static gboolean
read_group (Walk *walk, xmlNode *node, const cairo_matrix_t *matrix)
{
  return walk_children (walk, node, matrix);
}

static gboolean
read_inner_svg (Walk *walk, xmlNode *node, const cairo_matrix_t *matrix)
{
  cairo_matrix_t inner = *matrix;
  double x, y, width, height;

  if (!read_length (walk, node, "x", walk->width, 0, &x) || !read_length (walk, node, "y", walk->height, 0, &y) ||
      !read_length (walk, node, "width", walk->width, walk->width, &width) || !read_length (walk, node, "height", walk->height, walk->height, &height))
    return FALSE;
  cairo_matrix_translate (&inner, x, y);
  return sw_svg_viewport (node, width, height, &inner) ? walk_children (walk, node, &inner) : refuse (walk, node, "viewBox");
}

/* More than its title and the like. */
static gboolean
shows_something (const xmlNode *use)
{
  static const char *const words[] = { "title", "desc", "metadata", NULL };

  for (const xmlNode *child = use->children; child != NULL; child = child->next)
    if (child->type == XML_ELEMENT_NODE && !g_strv_contains (words, (const char *) child->name))
      return TRUE;
  return FALSE;
}

/* What sw_svg_fill_clones() has put into it lies where it says. */
static gboolean
read_clone (Walk *walk, xmlNode *node, const cairo_matrix_t *matrix)
{
  cairo_matrix_t inner = *matrix;
  double x, y;

  if (!shows_something (node))
    return leave_out (walk, node, matrix);
  if (!read_length (walk, node, "x", walk->width, 0, &x) || !read_length (walk, node, "y", walk->height, 0, &y))
    return FALSE;
  cairo_matrix_translate (&inner, x, y);
  return walk_children (walk, node, &inner);
}

static const struct
{
  const char *name;
  gboolean (*read) (Walk *walk, xmlNode *node, const cairo_matrix_t *matrix);
} elements[] = {
  { "g", read_group },
  { "a", read_group },
  { "switch", read_group },
  { "svg", read_inner_svg },
  { "rect", read_rect },
  { "circle", read_ellipse },
  { "ellipse", read_ellipse },
  { "polygon", read_polygon },
  { "polyline", read_polygon },
  { "path", read_path },
  { "line", leave_out },
  { "use", read_clone },
  { "image", leave_out },
};

/* Hidden things are not meant, and of the frame only the lay is looked at. */
static gboolean
is_meant (const Walk *walk, xmlNode *node)
{
  g_autofree char *display = sw_svg_property (node, walk->classes, "display");
  g_autofree char *visibility = sw_svg_property (node, walk->classes, "visibility");

  if (is_named (node, "lay"))
    return TRUE;
  return g_strcmp0 (display, "none") != 0 && g_strcmp0 (visibility, "hidden") != 0 && !is_named (node, "pan") && !is_named (node, "numbers");
}

static gboolean
walk_element (Walk *walk, xmlNode *node, const cairo_matrix_t *matrix)
{
  const char *transform = sw_svg_attribute (node, "transform");
  cairo_matrix_t own = *matrix;

  for (gsize i = 0; i < G_N_ELEMENTS (elements); i++)
    if (g_str_equal ((const char *) node->name, elements[i].name))
      {
        if (!is_meant (walk, node))
          return TRUE;
        if (transform != NULL && !sw_svg_transform (transform, &own))
          return refuse (walk, node, "transform");
        return elements[i].read (walk, node, &own);
      }
  return TRUE;
}

static gboolean
walk_children (Walk *walk, xmlNode *node, const cairo_matrix_t *matrix)
{
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    if (child->type == XML_ELEMENT_NODE && !walk_element (walk, child, matrix))
      return FALSE;
  return TRUE;
}

/* To the pan */

/* From px to cm, the near edge of the lay at 0. */
static void
pan_matrix (const Walk *walk, const SwSketch *sketch, cairo_matrix_t *matrix)
{
  const double length = sw_sketch_lay_length (sketch), across = sw_sketch_lay_width (sketch);
  double scale_x = 1 / (10 * SW_SVG_PX_PER_MM), scale_y = scale_x;
  double left = walk->width / 2 - length / scale_x / 2, bottom = walk->height / 2 + across / scale_y / 2;

  if (walk->framed)
    {
      const double by_x = length / MAX (walk->right - walk->left, 1e-6), by_y = across / MAX (walk->bottom - walk->top, 1e-6);

      left = walk->left;
      bottom = walk->bottom;
      /* An editor may have changed the scale, but not the proportions: else the lay itself is another by now. */
      if (fabs (by_x / by_y - 1) < 0.02)
        {
          scale_x = by_x;
          scale_y = by_y;
        }
    }
  cairo_matrix_init (matrix, scale_x, 0, 0, -scale_y, -left * scale_x, bottom * scale_y);
}

static void
map_shape (SwSvgShape *shape, const cairo_matrix_t *matrix)
{
  SwMoments *m = &shape->moments;

  for (guint i = 0; shape->ring != NULL && i < shape->ring->len; i++)
    {
      SwPoint *point = &g_array_index (shape->ring, SwPoint, i);

      cairo_matrix_transform_point (matrix, &point->x, &point->y);
    }
  cairo_matrix_transform_point (matrix, &m->x, &m->y);
  m->area *= fabs (matrix->xx * matrix->yy);
  m->xx *= matrix->xx * matrix->xx;
  m->xy *= matrix->xx * matrix->yy;
  m->yy *= matrix->yy * matrix->yy;
}

/* About how far it reaches from its middle. */
static gboolean
is_on_skein (const SwSvgShape *shape, const SwSketch *sketch)
{
  const SwMoments *m = &shape->moments;
  const double reach_x = 2 * sqrt (m->xx), reach_y = 2 * sqrt (m->yy);

  return m->x + reach_x > 0 && m->x - reach_x < sw_sketch_lay_length (sketch) && m->y + reach_y > 0 && m->y - reach_y < sw_sketch_lay_width (sketch);
}

static void
map_shapes (const Walk *walk, const SwSketch *sketch)
{
  GArray *shapes = walk->shapes->shapes;
  cairo_matrix_t matrix;

  pan_matrix (walk, sketch, &matrix);
  for (guint i = 0; i < shapes->len;)
    {
      SwSvgShape *shape = &g_array_index (shapes, SwSvgShape, i);

      map_shape (shape, &matrix);
      if (shape->moments.area >= LEAST_CM2 && (is_on_skein (shape, sketch) || sw_svg_attribute (shape->node, "data-kind") != NULL))
        {
          i++;
          continue;
        }
      g_array_remove_index (shapes, i);
      walk->shapes->n_left_out++;
    }
}

/* The page in px; without a size of its own it is its viewBox. */
static gboolean
read_page (Walk *walk, xmlNode *root, cairo_matrix_t *matrix)
{
  const char *box = sw_svg_attribute (root, "viewBox");
  double numbers[4] = { 0, 0, 300, 150 }; /* what CSS gives a picture without a size */

  for (int i = 0; box != NULL && i < 4; i++)
    if (!sw_svg_number (&box, &numbers[i]))
      return refuse (walk, root, "viewBox");
  walk->width = numbers[2];
  walk->height = numbers[3];
  if (!read_length (walk, root, "width", numbers[2], numbers[2], &walk->width) || !read_length (walk, root, "height", numbers[3], numbers[3], &walk->height))
    return FALSE;
  cairo_matrix_init_identity (matrix);
  return sw_svg_viewport (root, walk->width, walk->height, matrix) || refuse (walk, root, "viewBox");
}

static void
clear_shape (gpointer data)
{
  g_clear_pointer (&((SwSvgShape *) data)->ring, g_array_unref);
}

gboolean
sw_svg_walk (xmlNode *root, const SwSketch *sketch, SwSvgShapes *shapes, GError **error)
{
  Walk walk = { .classes = sw_svg_classes (root), .shapes = shapes, .room = SW_SVG_MAX_POINTS, .error = error };
  cairo_matrix_t matrix;
  gboolean done;

  *shapes = (SwSvgShapes){ g_array_new (FALSE, FALSE, sizeof (SwSvgShape)), 0 };
  g_array_set_clear_func (shapes->shapes, clear_shape);
  done = read_page (&walk, root, &matrix) && walk_children (&walk, root, &matrix);
  if (done)
    map_shapes (&walk, sketch);
  g_hash_table_unref (walk.classes);
  return done;
}

void
sw_svg_shapes_clear (SwSvgShapes *shapes)
{
  g_array_unref (shapes->shapes);
}
