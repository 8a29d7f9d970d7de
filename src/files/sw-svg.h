/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sheet/sw-sheet.h"
#include "sketch/sw-edit.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/*
 * The layout as a drawing that any vector editor opens, and a drawing traced
 * on it as pours again: docs/svg.md. 1 user unit is 1 mm, pan and skein are
 * to scale, each pour is an element of its own within the group of its dye.
 */

#define SW_SVG_MAX_BYTES (8 * 1024 * 1024)
#define SW_SVG_MAX_ELEMENTS 20000
#define SW_SVG_MAX_DEPTH 64
#define SW_SVG_MAX_POINTS 200000 /* of all outlines, curves made into lines */
#define SW_SVG_MAX_POURS 500     /* that one drawing brings */

/**
 * sw_svg_write:
 * @sketch: valid
 * @sheet: (nullable): of that sketch, for the amounts as they are measured out
 * @us: in the descriptions, US customary units
 * Returns: (transfer full): the file's text
 */
char *sw_svg_write (const SwSketch *sketch, const SwSheet *sheet, gboolean us) G_GNUC_WARN_UNUSED_RESULT;

/**
 * SwTracedPour: one shape of a drawing.
 * @pour: without id unless it is a pour of the sketch that came back; its dye
 *   is one of the sketch's or of the new ones
 * @number: place among the pours as the drawing told it, G_MAXUINT if it did not
 */
typedef struct
{
  SwStep *pour;
  gboolean second_face;
  guint number;
} SwTracedPour;

/**
 * SwTraced: a drawing as pours.
 * @dyes: of SwDye: not in the sketch yet; with ids that are free in it
 * @pours: of SwTracedPour, in the order in which they are to be poured
 * @n_left_out: shapes that are no pours: open lines, and what lies beside the skein
 */
typedef struct
{
  GPtrArray *dyes;
  GArray *pours;
  guint n_left_out;
} SwTraced;

/**
 * sw_svg_read:
 * @bytes: (array length=n): from anywhere
 * @sketch: valid: whose lay was drawn on and whose dyes are meant
 * @error: SW_FILE_ERROR with a sentence: no SVG, too large, too deep, with
 *   entities of its own, numbers that are none, nothing in it that is a pour
 *
 * Nothing but @bytes is read: no entity, no picture, no address.
 */
SwTraced *sw_svg_read (const char *bytes, gsize n, const SwSketch *sketch, GError **error) G_GNUC_WARN_UNUSED_RESULT;
void sw_traced_free (SwTraced *traced);

/**
 * sw_svg_load:
 * Returns: (transfer full): a file's bytes for sw_svg_read(); of one that is too large, one more than that takes
 * @error: G_IO_ERROR
 */
GBytes *sw_svg_load (GFile *file, GCancellable *cancellable, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_traced_edit:
 * @sketch: the one it was read for
 * Returns: (transfer full) (nullable): all of it as one edit: new dyes, new
 *   pours among those of their face (with a flip if there is none yet), and
 *   known pours moved to where the drawing has them; NULL if nothing differs
 */
SwEdit *sw_traced_edit (const SwTraced *traced, const SwSketch *sketch) G_GNUC_WARN_UNUSED_RESULT;

/* How many of the pours are new, and how many of the known ones have moved or got another dye. */
guint sw_traced_n_new (const SwTraced *traced);
guint sw_traced_n_moved (const SwTraced *traced, const SwSketch *sketch);

/**
 * sw_traced_words:
 * @before: the sketch it was read for
 * @after: the same with sw_traced_edit() applied
 * @most: names told in a line; of what is more, only the number
 * Returns: (transfer full) (element-type utf8): translated lines, at least one: which pours are new, moved, of another
 *   size, turned, of another dye, or kept though they are not in the drawing; new dyes, and how much was left out
 */
GPtrArray *sw_traced_words (const SwTraced *traced, const SwSketch *before, const SwSketch *after, guint most) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwTraced, sw_traced_free)

G_END_DECLS
