/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-document.h"
#include "app/desk/sw-entry-private.h"
#include "sketch/sw-history.h"

G_BEGIN_DECLS

/* Shared by the files of the document: its edits, its file, its watch on the disk. */

struct _SwDocument
{
  GObject parent_instance;

  SwSketch *sketch;
  SwSketch *seen; /* as it was when listeners were last told */
  SwHistory *history;
  guint depth;  /* of open groups */
  char *series; /* the open series of edits, or NULL */
  char *series_name;
  guint series_id; /* timeout that closes it */
  guint64 serial;  /* goes up with every change */
  gint64 changed_at;

  SwEntryList *dyes;
  SwEntryList *steps;

  GFile *file;
  char *etag;
  gboolean read_only;
  gboolean busy;
  gboolean unsaved; /* the file does not hold what the history calls saved */
  SwDisk disk;
  GFileMonitor *monitor;
  guint look_id; /* timeout until the next look at the disk */
  GCancellable *looking;

  /* as last notified */
  char *title;
  char *undo_name;
  char *redo_name;
  gboolean modified;
};

/* Tells listeners about everything that differs from what they were told last. */
void sw_document_tell (SwDocument *self);

SwHistory *sw_document_new_history (SwDocument *self) G_GNUC_WARN_UNUSED_RESULT;

/* The series of edits that may be open is one finished step now. */
void sw_document_end_series (SwDocument *self);

/**
 * sw_document_replace:
 * @sketch: (transfer full)
 * @file: (nullable)
 * @unsaved: whether it counts as modified from the start
 * A new history begins.
 */
void sw_document_replace (SwDocument *self, SwSketch *sketch, GFile *file, const char *etag, gboolean read_only, gboolean unsaved);

/* Setters that notify. */
void sw_document_set_file (SwDocument *self, GFile *file, const char *etag, gboolean read_only);
void sw_document_set_busy (SwDocument *self, gboolean busy);
void sw_document_set_disk (SwDocument *self, SwDisk disk);

/* Follow the document's file on the disk, or stop if there is none. */
void sw_document_watch (SwDocument *self);
void sw_document_unwatch (SwDocument *self);

G_END_DECLS
