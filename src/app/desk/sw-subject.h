/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-document.h"
#include "app/desk/sw-units.h"

G_BEGIN_DECLS

/**
 * SwSubject: what the fields of a pane are about: one record of a document,
 * or several steps at once, and the units in which they are shown.
 *
 * Property "inches": US customary units.
 * Signal "leaving": the fields will be about something else; what was typed belongs to what they are about now.
 * Signal "changed": another record, other units, or the record is not as it was.
 */
#define SW_TYPE_SUBJECT (sw_subject_get_type ())
G_DECLARE_FINAL_TYPE (SwSubject, sw_subject, SW, SUBJECT, GObject)

/**
 * sw_subject_new:
 * @document: (nullable): may come later
 */
SwSubject *sw_subject_new (SwDocument *document, SwRecord record) G_GNUC_WARN_UNUSED_RESULT;

void sw_subject_set_document (SwSubject *self, SwDocument *document);
SwDocument *sw_subject_get_document (SwSubject *self); /* (transfer none) (nullable) */
SwRecord sw_subject_get_record (SwSubject *self);
SwSystem sw_subject_get_system (SwSubject *self);

/**
 * sw_subject_set_ids:
 * @ids: (array length=n): of steps or dyes; the first speaks for all where only one can. Those that are gone are passed over
 * Records of which there is one need no ids.
 */
void sw_subject_set_ids (SwSubject *self, const guint *ids, gsize n);

/* How many records it is about that are still there. */
guint sw_subject_count (SwSubject *self);

/* The first record's id, 0 if there is none or it has no id. */
guint sw_subject_first (SwSubject *self);

/* Whether all the records use the member. Of drops and dry grains, a speckle zone uses the amount that counts. */
gboolean sw_subject_applies (SwSubject *self, const SwMember *member);

/**
 * sw_subject_get:
 * @value: (out caller-allocates): the first record's, to be cleared
 * @several: (out) (optional): whether others have another value
 * The volume of a pour that is told by its depth is what the depth asks for.
 * Returns: FALSE, and nothing set, if it is about nothing or the member does not apply
 */
gboolean sw_subject_get (SwSubject *self, const SwMember *member, SwValue *value, gboolean *several);

/**
 * sw_subject_set:
 * All records get the value, as one step to undo; none if that is what they have.
 * A dye's class brings the half-time that is usual for it; a pour's volume, when it is set, ends its depth.
 * @series: whether it continues what the same control did before
 * @error: SW_SKETCH_ERROR with a sentence; nothing was changed
 */
gboolean sw_subject_set (SwSubject *self, const SwMember *member, const SwValue *value, gboolean series, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_subject_nudge:
 * @steps: how many steps up or down, for each record from where it is; see sw_field_nudge()
 */
gboolean sw_subject_nudge (SwSubject *self, const SwMember *member, int steps, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
