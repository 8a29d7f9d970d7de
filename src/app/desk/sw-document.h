/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-changes.h"
#include "app/desk/sw-entry.h"
#include "sketch/sw-edit.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* What became of the document's file behind our back. */
typedef enum
{
  SW_DISK_SAME,    /* as we left it, or there is no file */
  SW_DISK_CHANGED, /* another program wrote to it */
  SW_DISK_GONE,    /* moved or deleted */
} SwDisk;

/**
 * SwDocument: one open colourway: the sketch, its history and its file.
 * Everything in it is changed by edits; whoever shows it listens. One window
 * keeps one document; loading replaces what is in it.
 *
 * Properties, all read-only: "title", "file", "modified", "undo-name",
 * "redo-name", "read-only", "disk" (SwDisk as int), "busy" (loading or saving).
 *
 * Signal "changed" (guint what, guint id): after an edit, undo, redo or load;
 * @what is bits of SW_CHANGED(), @id the one dye or step that changed, 0 if
 * none or several. The lists have already followed.
 *
 * Signal "replaced": another drawing is in it, before "changed" tells what
 * differs; ids may be the same and mean other steps.
 *
 * Main thread only.
 */
#define SW_TYPE_DOCUMENT (sw_document_get_type ())
G_DECLARE_FINAL_TYPE (SwDocument, sw_document, SW, DOCUMENT, GObject)

#define SW_DOCUMENT_ERROR (sw_document_error_quark ())
GQuark sw_document_error_quark (void);
typedef enum
{
  SW_DOCUMENT_ERROR_READ,
  SW_DOCUMENT_ERROR_WRITE,
  SW_DOCUMENT_ERROR_CHANGED, /* the file is not the one that was loaded any more: ask, then save with @overwrite */
  SW_DOCUMENT_ERROR_BUSY,
  SW_DOCUMENT_ERROR_DRAFT,
} SwDocumentError;

/* An empty sketch without a file. */
SwDocument *sw_document_new (void) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_document_get_sketch:
 * Returns: (transfer none): as it is now; another thread needs a copy
 */
const SwSketch *sw_document_get_sketch (SwDocument *self);

/* Models of SwEntry, in the sketch's order. */
SwEntryList *sw_document_get_dyes (SwDocument *self);
SwEntryList *sw_document_get_steps (SwDocument *self);

/**
 * sw_document_edit:
 * @edit: (transfer full): freed whether it succeeds or not
 * @name: what a person calls it ("Move band"), translated; shown beside Undo
 * @error: SW_SKETCH_ERROR with a sentence; nothing was changed
 */
gboolean sw_document_edit (SwDocument *self, SwEdit *edit, const char *name, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_document_edit_series:
 * @series: which control is being turned, such as "step 12 x_cm"
 *
 * As sw_document_edit(), but edits of one series that follow one another
 * within a second are one step to undo: a held spin button, a moving slider.
 */
gboolean sw_document_edit_series (SwDocument *self, SwEdit *edit, const char *name, const char *series, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* A drag is one group: begin at the press, end at the release, or cancel to take all of it back. Groups nest. */
void sw_document_begin_group (SwDocument *self, const char *name);
void sw_document_end_group (SwDocument *self);
gboolean sw_document_cancel_group (SwDocument *self, GError **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean sw_document_undo (SwDocument *self, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean sw_document_redo (SwDocument *self, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* NULL when there is nothing to undo or redo, and inside a group. */
const char *sw_document_get_undo_name (SwDocument *self);
const char *sw_document_get_redo_name (SwDocument *self);

/* For people: the sketch's own title, or the file's name, or "Untitled colourway". */
const char *sw_document_get_title (SwDocument *self);
GFile *sw_document_get_file (SwDocument *self); /* (transfer none) (nullable) */
const char *sw_document_get_etag (SwDocument *self);
gboolean sw_document_get_read_only (SwDocument *self);
SwDisk sw_document_get_disk (SwDocument *self);
gboolean sw_document_get_busy (SwDocument *self);

/* Whether the file (or the template, if there is no file) differs from what is shown. */
gboolean sw_document_get_modified (SwDocument *self);

/* g_get_monotonic_time() of the latest change: the edit-to-paint time counts from here. */
gint64 sw_document_get_changed_at (SwDocument *self);

/**
 * sw_document_set_template:
 * @sketch: (transfer full): becomes an unmodified document without a file
 */
void sw_document_set_template (SwDocument *self, SwSketch *sketch);

/**
 * sw_document_recover:
 * @sketch: (transfer full): from a draft
 * @file: (nullable): whose draft it was
 * @etag: (nullable): of @file when it was last loaded or saved
 *
 * The document counts as modified until it is saved.
 */
void sw_document_recover (SwDocument *self, SwSketch *sketch, GFile *file, const char *etag);

/**
 * sw_document_load_async:
 * Replaces what is in the document if all goes well; else it stays as it was.
 * @finish error: SW_DOCUMENT_ERROR or SW_FILE_ERROR with a sentence that names the file; G_IO_ERROR_CANCELLED
 */
void sw_document_load_async (SwDocument *self, GFile *file, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer user_data);
gboolean sw_document_load_finish (SwDocument *self, GAsyncResult *result, GError **error);

/**
 * sw_document_save_async:
 * @file: (nullable): where to; NULL for the document's own file. Becomes its own file once written
 * @overwrite: even if another program changed it since
 *
 * Edits made while it is being written stay and count as modified.
 */
void sw_document_save_async (SwDocument *self, GFile *file, gboolean overwrite, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer user_data);
gboolean sw_document_save_finish (SwDocument *self, GAsyncResult *result, GError **error);

/* The person has seen that the file changed on disk and keeps what is shown: it counts as modified from now on. */
void sw_document_keep_mine (SwDocument *self);

G_END_DECLS
