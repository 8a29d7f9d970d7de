/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-member.h"

#include <gio/gio.h>

G_BEGIN_DECLS

typedef struct _SwDocument SwDocument;

/**
 * SwEntry: a dye or a step as the item of a list. It says which one, and
 * notifies "revision" (and "name") when what is shown of it may have changed;
 * it never holds a copy of the record.
 *
 * Properties, all read-only: "id", "name" (as the dyer called it, may be
 * empty), "position" (from 0), "revision".
 */
#define SW_TYPE_ENTRY (sw_entry_get_type ())
G_DECLARE_FINAL_TYPE (SwEntry, sw_entry, SW, ENTRY, GObject)

guint sw_entry_get_id (SwEntry *self);
guint sw_entry_get_position (SwEntry *self);

/**
 * sw_entry_get_dye:
 * Returns: (nullable): the dye; NULL once it or its document is gone, or if the entry is a step
 */
const SwDye *sw_entry_get_dye (SwEntry *self);
const SwStep *sw_entry_get_step (SwEntry *self);

/**
 * sw_entry_get_document:
 * Returns: (transfer none) (nullable): NULL once it is gone
 */
SwDocument *sw_entry_get_document (SwEntry *self);

/* SwEntryList: the dyes or the steps as a GListModel of SwEntry. One id keeps one entry while it is in the list. */
#define SW_TYPE_ENTRY_LIST (sw_entry_list_get_type ())
G_DECLARE_FINAL_TYPE (SwEntryList, sw_entry_list, SW, ENTRY_LIST, GObject)

/**
 * sw_entry_list_find:
 * @position: (out) (optional): where it is
 * Returns: whether there is an entry with that id
 */
gboolean sw_entry_list_find (SwEntryList *self, guint id, guint *position);

G_END_DECLS
