/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/sw-pour-place.h"

#include <cairo.h>
#include <libxml/tree.h>

G_BEGIN_DECLS

/* Shared by the writer and the parts of the reader of SVG layouts. */

#define SW_SVG_SECOND_FACE "second-face" /* id of the group with the pours of the second face */
#define SW_SVG_PX_PER_MM (96 / 25.4)

/* "amount_ml" as an attribute: "data-amount-ml" */
char *sw_svg_data_name (const char *member) G_GNUC_WARN_UNUSED_RESULT;

/* Values of attributes */

/* Reads a number, and moves on past it and a comma or blanks. FALSE if there is none, or it is not finite or absurd. */
gboolean sw_svg_number (const char **at, double *number);

/**
 * sw_svg_length:
 * @whole: what 100 % is
 * @px: (out): in CSS px, or user units
 * Returns: FALSE with @px as it was if @text is no length; @text may be NULL
 */
gboolean sw_svg_length (const char *text, double whole, double *px);

/* @matrix: (inout): what @text does comes first, then what was there. */
gboolean sw_svg_transform (const char *text, cairo_matrix_t *matrix);

/* Of an svg element with or without a viewBox: from its own units to those around it. */
gboolean sw_svg_viewport (xmlNode *node, double width, double height, cairo_matrix_t *matrix);

/* An attribute of no namespace, (transfer none); NULL. */
const char *sw_svg_attribute (xmlNode *node, const char *name);

/* Outlines */

typedef struct
{
  double x, y;
} SwPoint;

/* Rings of points, one after the other. */
typedef struct
{
  GArray *points; /* of SwPoint */
  GArray *ends;   /* of guint: where each ring ends in @points */
  GArray *closed; /* of gboolean: whether it was closed, not only filled */
} SwOutline;

void sw_outline_init (SwOutline *outline);
void sw_outline_clear (SwOutline *outline);
void sw_outline_end_ring (SwOutline *outline, gboolean closed);

/**
 * sw_svg_path:
 * @d: path data
 * @matrix: onto the points
 * @step: curves become lines about this long, in the matrix's target unit
 * @room: how many points are left to make
 * Returns: FALSE if it cannot be read or @room is used up
 */
gboolean sw_svg_path (const char *d, const cairo_matrix_t *matrix, double step, gsize *room, SwOutline *outline);

/* Style */

/* Classes of a drawing's own style sheets: ".c { fill: red }" */
GHashTable *sw_svg_classes (xmlNode *root) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_svg_property:
 * Returns: (transfer full) (nullable): a presentation property of the element itself: its style, its class, its attribute
 */
char *sw_svg_property (xmlNode *node, GHashTable *classes, const char *name) G_GNUC_WARN_UNUSED_RESULT;

/* "#b2305c", "rgb(1, 2, 3)", "teal". @code: (out): red, green, blue, 0..255. FALSE for none and for what is no plain colour */
gboolean sw_svg_colour (const char *text, double *code);

/* From outlines to pours */

/**
 * SwMoments: of a filled outline, cm.
 * @xx, @xy, @yy: central second moments over the area
 */
typedef struct
{
  double area, x, y, xx, xy, yy;
} SwMoments;

/* FALSE if it encloses nothing. */
gboolean sw_moments_of_ring (const SwPoint *points, gsize n, SwMoments *moments);

/* Of an ellipse with half axes rx, ry, brought by @matrix to cm. */
gboolean sw_moments_of_ellipse (double x, double y, double rx, double ry, const cairo_matrix_t *matrix, SwMoments *moments);

/* The splotch or the speckle zone with these moments. Of the angles that say the same, the one nearest to @angle. */
void sw_fit_turned (const SwMoments *moments, SwStepKind kind, double angle, SwPourPlace *place);

/* The band with these moments, of its own length across. */
void sw_fit_band (const SwMoments *moments, SwPourPlace *place);

/**
 * sw_fit_nearest:
 * @points: (array length=n): an outline, cm
 * @moments: its own
 * @across: of the laid skeins, cm
 * Finds the band or splotch that covers most of what the outline does and
 * least of what it does not. A band that reaches across the skein goes right across.
 */
void sw_fit_nearest (const SwPoint *points, gsize n, const SwMoments *moments, double across, SwPourPlace *place);

/* Whether a band from @near to @far, cm, is meant to go right across. */
gboolean sw_fit_spans (double near, double far, double across);

/* One closed shape of a drawing. */
typedef struct
{
  xmlNode *node;
  SwMoments moments;
  GArray *ring;      /* of SwPoint, cm; NULL for an ellipse */
  double colour[3];  /* 0..255 */
  gboolean coloured; /* else it has none */
} SwSvgShape;

typedef struct
{
  GArray *shapes; /* of SwSvgShape */
  guint n_left_out;
} SwSvgShapes;

/* Walks the drawing. @sketch: whose lay it is; FALSE with SW_FILE_ERROR */
gboolean sw_svg_walk (xmlNode *root, const SwSketch *sketch, SwSvgShapes *shapes, GError **error);
void sw_svg_shapes_clear (SwSvgShapes *shapes);

/* How a pour that came back differs from what it was, by more than rounding does. */
typedef enum
{
  SW_TRACED_MOVED = 1 << 0,
  SW_TRACED_RESIZED = 1 << 1,
  SW_TRACED_TURNED = 1 << 2,
  SW_TRACED_REDYED = 1 << 3,
} SwTracedChange;

/* Returns: bits of SwTracedChange */
guint sw_traced_changes (const SwStep *before, const SwStep *after);

/* Parses, refusing what is hostile. Returns: (transfer full): to be freed with xmlFreeDoc(); NULL with SW_FILE_ERROR */
xmlDoc *sw_svg_parse (const char *bytes, gsize n, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_svg_fill_clones:
 * Each use element of the drawing gets a copy of what it shows as a child; without ids, which are names (data-name) in it.
 * One that shows itself, or anything outside the drawing, gets none.
 * Returns: FALSE with SW_FILE_ERROR if that makes the drawing too large or too deep
 */
gboolean sw_svg_fill_clones (xmlNode *root, GError **error);

G_END_DECLS
