/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sketch/sw-sketch.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/*
 * Drafts: what was drawn but not saved, kept so that a crash or a kill loses
 * a few seconds at most. Each running program has a folder of its own among
 * the drafts, and holds a lock in it; the lock falls with the program, however
 * that ends, so the next one knows which folders have lost their owner.
 *
 * A draft is a whole .colourway file with one member more, which names the
 * file it belongs to; written beside and renamed, so that there is always a
 * good one.
 */
typedef struct _SwDrafts SwDrafts;

/**
 * sw_drafts_open:
 * @parent: the folder of all drafts; made if it is not there
 */
SwDrafts *sw_drafts_open (const char *parent, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Gives up the folder; drafts that are still in it will be found by the next program. */
void sw_drafts_close (SwDrafts *self);

/**
 * sw_drafts_new_path:
 * Returns: (transfer full): where a new draft may be written
 */
char *sw_drafts_new_path (const SwDrafts *self) G_GNUC_WARN_UNUSED_RESULT;

typedef struct
{
  char *path;
  SwSketch *sketch;   /* NULL if it cannot be read */
  GFile *file;        /* whose draft it is; NULL if it was never saved */
  char *etag;         /* of that file when it was last loaded or saved, or NULL */
  GDateTime *written; /* local time, or NULL */
  char *problem;      /* a sentence if it cannot be read: the draft is then kept aside at @path */
} SwDraft;

void sw_draft_free (SwDraft *draft);

/**
 * sw_draft_write:
 * @file: (nullable): whose draft it is
 * Any thread.
 */
gboolean sw_draft_write (const char *path, const SwSketch *sketch, GFile *file, const char *etag, GError **error) G_GNUC_WARN_UNUSED_RESULT;

SwDraft *sw_draft_read (const char *path, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_drafts_adopt:
 * Takes over what programs left that are no more.
 *
 * Returns: (transfer full) (element-type SwDraft): newest first; they lie in
 *   this program's folder now, and stay there until removed
 */
GPtrArray *sw_drafts_adopt (SwDrafts *self) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwDrafts, sw_drafts_close)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwDraft, sw_draft_free)

G_END_DECLS
