/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/desk/sw-document.h"
#include "sheet/sw-sheet.h"

G_BEGIN_DECLS

/* The memory of dyeings that were done: one step to undo each. */

/**
 * sw_batch_note:
 * Keeps a batch as it is on the sheet now: amounts, what differs from the batch before, cost.
 * @log: (nullable): of the day, as sw_day_clock_log() has it
 * @date: the day, ISO 8601
 * @id: (out) (optional): of the batch that was made
 */
gboolean sw_batch_note (SwDocument *document, const SwSheet *sheet, const char *log, const char *date, guint *id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean sw_batch_delete (SwDocument *document, guint id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The next batch is of as many skeins. */
gboolean sw_batch_start_from (SwDocument *document, guint id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): addresses or paths, without empty ones */
char **sw_batch_photos (const SwBatch *batch) G_GNUC_WARN_UNUSED_RESULT;

/* Adds links to pictures; one that is there already is passed over. @uris: NULL-ended */
gboolean sw_batch_add_photos (SwDocument *document, guint id, const char *const *uris, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean sw_batch_remove_photo (SwDocument *document, guint id, const char *uri, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
