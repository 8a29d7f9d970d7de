/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "forecast/sw-forecast.h"

G_BEGIN_DECLS

/*
 * Background work for the window: one job running per question, in a thread of
 * its own; the newest wanted one wins, late answers are dropped.
 */
typedef struct _SwLatest SwLatest;

/**
 * SwLatestRun: in the worker thread
 * @question: (transfer none): what was asked
 * Returns: (transfer full): the answer, or NULL with @error
 */
typedef gpointer (*SwLatestRun) (gpointer question, gpointer user_data, GCancellable *cancellable, GError **error);

/**
 * SwLatestDone: in the thread-default main context of sw_latest_new()'s caller
 * @answer: (transfer full) (nullable): NULL with @error. Never called for an answer that is no longer wanted
 */
typedef void (*SwLatestDone) (gpointer answer, const GError *error, gpointer user_data);

SwLatest *sw_latest_new (SwLatestRun run, SwLatestDone done, gpointer user_data, GDestroyNotify free_question, GDestroyNotify free_answer) G_GNUC_WARN_UNUSED_RESULT;

/**
 * sw_latest_ask:
 * @question: (transfer full)
 * Cancels what runs, and starts on @question as soon as that has stopped; of several asked meanwhile only the last is answered.
 */
void sw_latest_ask (SwLatest *self, gpointer question);

/**
 * sw_latest_set_patience:
 * @milliseconds: a job younger than this is let finish when something newer
 *   is asked, and its answer, the newest there is, is still called back: so
 *   a hand that never stops moving keeps seeing pictures. 0, the default,
 *   cancels at once.
 */
void sw_latest_set_patience (SwLatest *self, guint milliseconds);

/**
 * sw_latest_wait:
 * @until_us: g_get_monotonic_time() at which to give up
 *
 * Waits for the job under way, and calls back its answer from within: what a
 * frame shows can so be of the same frame, if it is done in time. What was
 * asked meanwhile is only started.
 *
 * Returns: FALSE if it was not done by then; it is called back later as usual
 */
gboolean sw_latest_wait (SwLatest *self, gint64 until_us);
gboolean sw_latest_is_busy (const SwLatest *self);

/* Nothing is called back after this returns. A running job is cancelled; @user_data must live until it has ended (run it on values of its own). */
void sw_latest_free (SwLatest *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwLatest, sw_latest_free)

G_END_DECLS
