/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/*
 * Undo and redo without limit. It knows no document: it keeps opaque edits
 * and asks the caller to apply them.
 */
typedef struct _SwHistory SwHistory;

/**
 * SwHistoryFuncs:
 * @apply: does @edit and returns its inverse (transfer full), or NULL with an error and nothing done
 * @free_edit: frees one
 */
typedef struct
{
  gpointer (*apply) (gpointer edit, gpointer document, GError **error);
  void (*free_edit) (gpointer edit);
} SwHistoryFuncs;

SwHistory *sw_history_new (const SwHistoryFuncs *funcs, gpointer document) G_GNUC_WARN_UNUSED_RESULT;
void sw_history_free (SwHistory *history);

/**
 * sw_history_do:
 * @edit: (transfer full): freed whether it succeeds or not
 * @name: what a person calls it ("Move band"), translated
 *
 * Applies @edit; what was undone before can then no longer be redone. Inside
 * a group it joins the group's one step.
 */
gboolean sw_history_do (SwHistory *history, gpointer edit, const char *name, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/*
 * A drag is one group: begin at the press, end at the release. Groups nest and
 * make one step, named by the outermost; an empty group leaves no step, and
 * what could be redone before it still can.
 */
void sw_history_begin_group (SwHistory *history, const char *name);
void sw_history_end_group (SwHistory *history);

/**
 * sw_history_cancel_group: takes back all of the innermost open group (the drag was cancelled) and closes it
 *
 * Returns: FALSE with @error when it could not be taken back; the group is then closed as it stands
 */
gboolean sw_history_cancel_group (SwHistory *history, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_history_undo:
 * While there is nothing to undo or a group is open, it does nothing and that is no error.
 *
 * Returns: FALSE with @error, document and history as they were, when the step could not be taken back
 */
gboolean sw_history_undo (SwHistory *history, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean sw_history_redo (SwHistory *history, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The step's name, or NULL when there is none to undo or redo, or a group is open. */
const char *sw_history_get_undo_name (SwHistory *history);
const char *sw_history_get_redo_name (SwHistory *history);

/* Modified means "not at the saved step", at first the empty history; a saved step that was overwritten cannot be reached any more. */
void sw_history_mark_saved (SwHistory *history);
gboolean sw_history_get_modified (SwHistory *history);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwHistory, sw_history_free)

G_END_DECLS
