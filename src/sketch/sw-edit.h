/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-member.h"

G_BEGIN_DECLS

/*
 * An edit is a value: what to change, on what. Applying one gives back its
 * inverse, so that undo is the same act as doing.
 */
typedef struct _SwEdit SwEdit;

/**
 * sw_edit_set:
 * @record: which kind of record
 * @id: the dye's, step's or batch's id; 0 for the records of which there is one
 * @member: its name
 * @value: copied
 */
SwEdit *sw_edit_set (SwRecord record, guint id, const char *member, const SwValue *value) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_edit_insert_dye:
 * @index: place in the list; -1 at the end
 * @dye: copied; an id of 0 asks for a fresh one. A step's members that its
 *   kind does not use are put back to their defaults
 */
SwEdit *sw_edit_insert_dye (int index, const SwDye *dye) G_GNUC_WARN_UNUSED_RESULT;
SwEdit *sw_edit_insert_step (int index, const SwStep *step) G_GNUC_WARN_UNUSED_RESULT;
SwEdit *sw_edit_insert_batch (int index, const SwBatch *batch) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_edit_remove: a dye that a pour still uses is refused when applied, with a sentence naming the pour
 */
SwEdit *sw_edit_remove (SwRecord record, guint id) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_edit_move: puts the dye, step or batch with that id at @index of its list, -1 at the end
 */
SwEdit *sw_edit_move (SwRecord record, guint id, int index) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_edit_group: several edits as one; applied in order, all or none
 * @edits: (array length=n): the edits are taken over, the array is not
 */
SwEdit *sw_edit_group (SwEdit **edits, gsize n) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_edit_apply:
 * @sketch: valid; it stays so
 * @touched: (out) (optional): id of the dye, step or batch that was made, changed or removed, 0 if none;
 *   of a group, the last one's
 * @error: SW_SKETCH_ERROR: beyond each member's limits, whatever sw_sketch_validate() would refuse
 *
 * Returns: (transfer full): the inverse; NULL with @error and @sketch unchanged
 */
SwEdit *sw_edit_apply (const SwEdit *edit, SwSketch *sketch, guint *touched, GError **error) G_GNUC_WARN_UNUSED_RESULT;

SwEdit *sw_edit_copy (const SwEdit *edit) G_GNUC_WARN_UNUSED_RESULT;
void sw_edit_free (SwEdit *edit);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwEdit, sw_edit_free)

G_END_DECLS
