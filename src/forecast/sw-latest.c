/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "forecast/sw-latest.h"

/* One question in the worker's hands. The owner's thread and the worker each hold it. */
typedef struct
{
  SwLatest *latest;
  gpointer question;
  GCancellable *cancellable;
  GMainContext *context; /* the owner's */

  GMutex mutex;
  GCond done;
  gboolean ready;
  gpointer answer;
  GError *error;

  gboolean taken; /* owner's thread only */
} Job;

struct _SwLatest
{
  gatomicrefcount ref_count; /* the owner's, and the running job's */
  SwLatestRun run;
  SwLatestDone done;
  gpointer user_data;
  GDestroyNotify free_question;
  GDestroyNotify free_answer;
  guint patience_ms;
  GThreadPool *pool; /* of one thread, so that what it keeps for itself (fonts, memory) is kept */

  /* owner's thread only */
  gboolean freed;
  Job *running; /* NULL when idle */
  gint64 started_us;
  gpointer waiting; /* asked meanwhile */
  gboolean has_waiting;
};

static void start (SwLatest *self, gpointer question);
static void take (SwLatest *self, Job *job);

static void
drop (SwLatest *self)
{
  if (g_atomic_ref_count_dec (&self->ref_count))
    g_free (self);
}

static void
job_clear (gpointer data)
{
  Job *job = data;

  g_object_unref (job->cancellable);
  g_main_context_unref (job->context);
  g_mutex_clear (&job->mutex);
  g_cond_clear (&job->done);
  drop (job->latest);
}

static void
job_unref (gpointer job)
{
  g_atomic_rc_box_release_full (job, job_clear);
}

static gboolean
answered_cb (gpointer data)
{
  Job *job = data;

  if (!job->taken)
    take (job->latest, job);
  return G_SOURCE_REMOVE;
}

static void
run_worker (gpointer data, gpointer user_data)
{
  Job *job = data;
  SwLatest *self = job->latest;
  GSource *source = g_idle_source_new ();
  GError *error = NULL;
  gpointer answer = self->run (job->question, self->user_data, job->cancellable, &error);

  self->free_question (g_steal_pointer (&job->question));
  g_mutex_lock (&job->mutex);
  job->answer = answer;
  job->error = error;
  job->ready = TRUE;
  g_cond_signal (&job->done);
  g_mutex_unlock (&job->mutex);

  g_source_set_priority (source, G_PRIORITY_DEFAULT);
  g_source_set_static_name (source, "strandwise latest");
  g_source_set_callback (source, answered_cb, job, job_unref);
  g_source_attach (source, job->context);
  g_source_unref (source);
}

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
  self->pool = g_thread_pool_new (run_worker, NULL, 1, TRUE, NULL);
  return self;
}

void
sw_latest_set_patience (SwLatest *self, guint milliseconds)
{
  self->patience_ms = milliseconds;
}

/* Hands the answer over, and goes on with what was asked meanwhile. */
static void
take (SwLatest *self, Job *job)
{
  gboolean wanted = !self->freed && !g_cancellable_is_cancelled (job->cancellable);
  g_autoptr (GError) error = g_steal_pointer (&job->error);
  gpointer answer = g_steal_pointer (&job->answer);

  job->taken = TRUE;
  self->running = NULL;
  g_atomic_ref_count_inc (&self->ref_count);
  if (self->has_waiting)
    {
      self->has_waiting = FALSE;
      start (self, g_steal_pointer (&self->waiting));
    }

  if (wanted)
    self->done (answer, error, self->user_data);
  else if (answer != NULL)
    self->free_answer (answer);

  job_unref (job);
  drop (self);
}

static void
start (SwLatest *self, gpointer question)
{
  Job *job = g_atomic_rc_box_new0 (Job);

  g_atomic_ref_count_inc (&self->ref_count);
  job->latest = self;
  job->question = question;
  job->cancellable = g_cancellable_new ();
  job->context = g_main_context_ref_thread_default ();
  g_mutex_init (&job->mutex);
  g_cond_init (&job->done);
  self->running = job;
  self->started_us = g_get_monotonic_time ();
  g_thread_pool_push (self->pool, g_atomic_rc_box_acquire (job), NULL);
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
    g_cancellable_cancel (self->running->cancellable);
}

gboolean
sw_latest_wait (SwLatest *self, gint64 until_us)
{
  Job *job = self->running;
  gboolean ready;

  if (job == NULL)
    return TRUE;
  g_mutex_lock (&job->mutex);
  while (!job->ready && g_cond_wait_until (&job->done, &job->mutex, until_us))
    ;
  ready = job->ready;
  g_mutex_unlock (&job->mutex);
  if (ready)
    take (self, job);
  return ready;
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
    g_cancellable_cancel (self->running->cancellable);
  /* Neither at once nor waiting for it: a job under way ends by itself. */
  g_thread_pool_free (g_steal_pointer (&self->pool), FALSE, FALSE);
  drop (self);
}
