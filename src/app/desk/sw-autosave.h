/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-document.h"

G_BEGIN_DECLS

/**
 * SwAutosave: keeps a draft of a document while it is modified, at most a few
 * seconds old; there is none while it is not. So a draft goes only once the
 * file holds what was drawn, or the person gave it up.
 *
 * Signal "failed" (const char *sentence): a draft could not be written; once
 * until one succeeds again.
 */
#define SW_TYPE_AUTOSAVE (sw_autosave_get_type ())
G_DECLARE_FINAL_TYPE (SwAutosave, sw_autosave, SW, AUTOSAVE, GObject)

/**
 * sw_autosave_new:
 * @path: of the draft: sw_drafts_new_path(), or that of the draft which the document was recovered from
 */
SwAutosave *sw_autosave_new (SwDocument *document, const char *path) G_GNUC_WARN_UNUSED_RESULT;

/* Longest time an edit stays without a draft, ms; 2000 at first. */
void sw_autosave_set_pause (SwAutosave *self, guint ms);

/* Goes on with another draft, which the document was recovered from; the one so far is removed. */
void sw_autosave_set_path (SwAutosave *self, const char *path);

/* Writes what is not in the draft yet, at once, and waits for it: the program is about to end. */
void sw_autosave_flush (SwAutosave *self);

/* The person closes the drawing without saving it: removes the draft and writes none any more. */
void sw_autosave_give_up (SwAutosave *self);

G_END_DECLS
