/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-edit.h"

G_BEGIN_DECLS

/* Edits of the list of steps, as a list asks for them: pure values, to be applied by the document. */

/**
 * sw_step_edits_new:
 * @dye: of a pour; not looked at for the other kinds
 * @after: id of the step it comes after; 0 for where a new step usually goes:
 *   a pour after the others of the first face, all else at the end, but before a last setting by heat
 * @id: (out): the new step's
 *
 * A pour lies in the middle of the skein, no larger than that, and of a usual amount.
 */
SwEdit *sw_step_edits_new (const SwSketch *sketch, SwStepKind kind, guint dye, guint after, guint *id) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_step_edits_duplicate:
 * @ids: (array length=n)
 * @new_ids: (out caller-allocates) (array length=n): of the copies, in the order of the dyeing; 0 where an id was none
 *
 * The copies follow the last of the steps, in the order of the dyeing. Copied
 * pours lie a little aside, so that they can be seen.
 * Returns: (transfer full) (nullable): NULL if none of the steps is there
 */
SwEdit *sw_step_edits_duplicate (const SwSketch *sketch, const guint *ids, gsize n, guint *new_ids) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full) (nullable): NULL if none of the steps is there */
SwEdit *sw_step_edits_delete (const SwSketch *sketch, const guint *ids, gsize n) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_step_edits_move:
 * @before: position, in the list as it is now, that the steps are put in front of; the list's length for the end
 *
 * The steps come together and keep their order.
 * Returns: (transfer full) (nullable): NULL if that is how they lie already
 */
SwEdit *sw_step_edits_move (const SwSketch *sketch, const guint *ids, gsize n, guint before) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_step_edits_shift:
 * @up: towards the start of the dyeing
 * Each of the steps goes one place on, as far as there is room.
 * Returns: (transfer full) (nullable): NULL if none can
 */
SwEdit *sw_step_edits_shift (const SwSketch *sketch, const guint *ids, gsize n, gboolean up) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
