/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "forecast/sw-latest.h"

struct _SwLatest
{
  gatomicrefcount ref_count; /* the owner's, and the running task's */
  SwLatestRun run;
  SwLatestDone done;
  gpointer user_data;
  GDestroyNotify free_question;
  GDestroyNotify free_answer;
  guint patience_ms;

  /* owner's thread only */
  gboolean freed;
  GCancellable *running; /* of the task under way; NULL when idle */
  gint64 started_us;
  gpointer waiting; /* asked meanwhile */
  gboolean has_waiting;
};

static void start (SwLatest *self, gpointer question);

SwLatest *
sw_latest_new (SwLatestRun run, SwLatestDone done, gpointer user_data, GDestroyNotify free_question, GDestroyNotify free_answer)
{
  SwLatest *self = g_new0 (SwLatest, 1);

  g_atomic_ref_count_init (&self->ref_count);
  self->run = run;
  self->done = done;
  self->user_data = user_data;
  self->free_question = free_question;
  self->free_answer = free_answer;
  return self;
}

static void
drop (SwLatest *self)
{
  if (g_atomic_ref_count_dec (&self->ref_count))
    g_free (self);
}

void
sw_latest_set_patience (SwLatest *self, guint milliseconds)
{
  self->patience_ms = milliseconds;
}

static void
run_worker (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  SwLatest *self = g_object_get_data (G_OBJECT (task), "latest");
  g_autoptr (GError) error = NULL;
  gpointer answer = self->run (data, self->user_data, cancellable, &error);

  if (answer != NULL)
    g_task_return_pointer (task, answer, self->free_answer);
  else
    g_task_return_error (task, g_steal_pointer (&error));
}

static void
answered_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  SwLatest *self = data;
  GTask *task = G_TASK (result);
  gboolean wanted = !self->freed && !g_cancellable_is_cancelled (g_task_get_cancellable (task));
  g_autoptr (GError) error = NULL;
  gpointer answer = g_task_propagate_pointer (task, &error);

  g_clear_object (&self->running);
  if (self->has_waiting)
    {
      self->has_waiting = FALSE;
      start (self, g_steal_pointer (&self->waiting));
    }

  if (wanted)
    self->done (answer, error, self->user_data);
  else if (answer != NULL)
    self->free_answer (answer);

  drop (self);
}

static void
start (SwLatest *self, gpointer question)
{
  g_autoptr (GTask) task = NULL;

  self->running = g_cancellable_new ();
  self->started_us = g_get_monotonic_time ();
  g_atomic_ref_count_inc (&self->ref_count);

  task = g_task_new (NULL, self->running, answered_cb, self);
  g_task_set_source_tag (task, start);
  g_task_set_name (task, "strandwise latest");
  /* An answer that came although it was cancelled is freed by answered_cb(). */
  g_task_set_check_cancellable (task, FALSE);
  g_task_set_task_data (task, question, self->free_question);
  g_object_set_data (G_OBJECT (task), "latest", self);
  g_task_run_in_thread (task, run_worker);
}

void
sw_latest_ask (SwLatest *self, gpointer question)
{
  if (self->running == NULL)
    {
      start (self, question);
      return;
    }

  if (self->has_waiting)
    self->free_question (self->waiting);
  self->waiting = question;
  self->has_waiting = TRUE;

  if (g_get_monotonic_time () - self->started_us >= (gint64) self->patience_ms * 1000)
    g_cancellable_cancel (self->running);
}

gboolean
sw_latest_is_busy (const SwLatest *self)
{
  return self->running != NULL;
}

void
sw_latest_free (SwLatest *self)
{
  self->freed = TRUE;
  if (self->has_waiting)
    {
      self->has_waiting = FALSE;
      self->free_question (g_steal_pointer (&self->waiting));
    }
  if (self->running != NULL)
    g_cancellable_cancel (self->running);
  drop (self);
}
