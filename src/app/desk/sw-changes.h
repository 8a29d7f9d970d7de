/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-member.h"

G_BEGIN_DECLS

/*
 * What differs between two states of a sketch. Found by looking, not told by
 * the edit: a group, an undo and a file loaded anew are then all the same.
 */

/* Bits of SwChanges.what and of the document's "changed" signal. */
#define SW_CHANGED(record) (1u << (record))
#define SW_CHANGED_ORDER (1u << SW_N_RECORDS) /* dyes or steps came, went or moved */
#define SW_CHANGED_ALL ((1u << (SW_N_RECORDS + 1)) - 1)

typedef struct
{
  guint what;    /* bits of the above */
  GArray *dyes;  /* of guint: ids of the dyes that are new, gone or not as they were */
  GArray *steps; /* the same of the steps */
} SwChanges;

/**
 * sw_changes_find:
 * @changes: (out caller-allocates): to be cleared
 */
void sw_changes_find (const SwSketch *before, const SwSketch *after, SwChanges *changes);
void sw_changes_clear (SwChanges *changes);

/* The one dye or step that changed; 0 if none did, or several. */
guint sw_changes_only_id (const SwChanges *changes);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SwChanges, sw_changes_clear)

G_END_DECLS
