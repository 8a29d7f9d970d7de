/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-entry.h"

G_BEGIN_DECLS

/* For the document, which keeps its lists in step with the sketch. */

SwEntry *sw_entry_new (SwDocument *document, SwRecord record, guint id) G_GNUC_WARN_UNUSED_RESULT;
void sw_entry_set_position (SwEntry *self, guint position);
void sw_entry_touch (SwEntry *self);

/**
 * sw_entry_list_new:
 * @document: not owned; tell the list when it goes by sw_entry_list_detach()
 * @record: SW_RECORD_DYE or SW_RECORD_STEP
 */
SwEntryList *sw_entry_list_new (SwDocument *document, SwRecord record) G_GNUC_WARN_UNUSED_RESULT;
void sw_entry_list_detach (SwEntryList *self);

/* Makes the list as the document's sketch has it, with as little coming and going as that takes. */
void sw_entry_list_sync (SwEntryList *self);

/**
 * sw_entry_list_touch:
 * What is shown of the entry with that id may have changed; 0 means all.
 */
void sw_entry_list_touch (SwEntryList *self, guint id);

G_END_DECLS
