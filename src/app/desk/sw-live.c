/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-live.h"

#include "app/desk/sw-place-words.h"
#include "forecast/sw-latest.h"

/* A forecast is finished, though the hand has moved on, unless it takes longer than this:
 * below what a forecast takes on a slow machine, a long drag would never show anything. */
#define PATIENCE_MS 5000

/* Words that change more often than this cannot be read, and laying them out costs a frame its time. */
#define READING_MS 100

G_DEFINE_BOXED_TYPE (SwForecast, sw_forecast, sw_forecast_ref, sw_forecast_unref)

/* Kept alive by the question that is being worked on, since that may outlive the window. */
typedef struct
{
  SwForecaster *forecaster;
} Bench;

static void
bench_clear (gpointer data)
{
  Bench *bench = data;

  sw_forecaster_free (bench->forecaster);
}

typedef struct
{
  Bench *bench;
  SwSketch *sketch;
  gint64 edit_time;
} Question;

static void
question_free (gpointer data)
{
  Question *question = data;

  g_atomic_rc_box_release_full (question->bench, bench_clear);
  sw_sketch_free (question->sketch);
  g_free (question);
}

typedef struct
{
  SwForecast *forecast;
  gint64 edit_time;
} Answer;

static void
answer_free (gpointer data)
{
  Answer *answer = data;

  g_clear_pointer (&answer->forecast, sw_forecast_unref);
  g_free (answer);
}

struct _SwLive
{
  GObject parent_instance;

  SwDocument *document;
  Bench *bench;
  SwLatest *latest;
  SwForecast *forecast;
  gint64 edit_time;
  char *problem;
  guint ask_id;  /* idle that asks */
  guint tell_id; /* timeout that tells */
  gint64 told_at;
  gboolean busy; /* as last notified */
};

G_DEFINE_FINAL_TYPE (SwLive, sw_live, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_FORECAST,
  PROP_BUSY,
  PROP_PROBLEM,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

enum
{
  SIGNAL_UPDATED,
  SIGNAL_TOLD,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static gpointer
run_worker (gpointer data, gpointer user_data, GCancellable *cancellable, GError **error)
{
  const Question *question = data;
  SwForecast *forecast = sw_forecaster_run (question->bench->forecaster, question->sketch, cancellable, error);
  Answer *answer;

  if (forecast == NULL)
    return NULL;
  answer = g_new (Answer, 1);
  answer->forecast = forecast;
  answer->edit_time = question->edit_time;
  return answer;
}

static void
tell_busy (SwLive *self)
{
  gboolean busy = self->ask_id != 0 || sw_latest_is_busy (self->latest);

  if (self->busy == busy)
    return;
  self->busy = busy;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_BUSY]);
}

static void
set_problem (SwLive *self, const GError *error)
{
  g_autofree char *problem = NULL;

  if (error != NULL)
    problem = sw_place_in_words (sw_document_get_sketch (self->document), error->message);
  if (g_strcmp0 (self->problem, problem) == 0)
    return;
  g_free (self->problem);
  self->problem = g_steal_pointer (&problem);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_PROBLEM]);
}

static gboolean
ask_cb (gpointer user_data)
{
  SwLive *self = user_data;
  Question *question = g_new (Question, 1);

  self->ask_id = 0;
  question->bench = g_atomic_rc_box_acquire (self->bench);
  question->sketch = sw_sketch_copy (sw_document_get_sketch (self->document));
  question->edit_time = sw_document_get_changed_at (self->document);
  sw_latest_ask (self->latest, question);
  tell_busy (self);
  return G_SOURCE_REMOVE;
}

/* Once per round of the main loop, after its events and before its painting: several edits are one question. */
static void
want (SwLive *self)
{
  if (self->ask_id == 0)
    self->ask_id = g_idle_add_full (G_PRIORITY_HIGH_IDLE, ask_cb, self, NULL);
  tell_busy (self);
}

static gboolean
tell_cb (gpointer user_data)
{
  SwLive *self = user_data;

  self->tell_id = 0;
  self->told_at = g_get_monotonic_time ();
  g_signal_emit (self, signals[SIGNAL_TOLD], 0);
  return G_SOURCE_REMOVE;
}

/* At once after a pause, else when it can be read. */
static void
tell (SwLive *self)
{
  const gint64 wait_ms = READING_MS - (g_get_monotonic_time () - self->told_at) / 1000;

  if (self->tell_id != 0)
    return;
  if (wait_ms <= 0)
    tell_cb (self);
  else
    self->tell_id = g_timeout_add ((guint) wait_ms, tell_cb, self);
}

static void
answered_cb (gpointer data, const GError *error, gpointer user_data)
{
  SwLive *self = user_data;
  Answer *answer = data;
  gboolean fresh = answer != NULL;

  if (fresh)
    {
      g_clear_pointer (&self->forecast, sw_forecast_unref);
      self->forecast = g_steal_pointer (&answer->forecast);
      self->edit_time = answer->edit_time;
      answer_free (answer);
    }
  set_problem (self, error);
  tell_busy (self);
  if (fresh)
    {
      g_object_notify_by_pspec (G_OBJECT (self), props[PROP_FORECAST]);
      g_signal_emit (self, signals[SIGNAL_UPDATED], 0);
      tell (self);
    }
}

static void
sw_live_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwLive *self = SW_LIVE (object);

  switch (prop_id)
    {
    case PROP_FORECAST:
      g_value_set_boxed (value, self->forecast);
      break;
    case PROP_BUSY:
      g_value_set_boolean (value, self->busy);
      break;
    case PROP_PROBLEM:
      g_value_set_string (value, self->problem);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_live_dispose (GObject *object)
{
  SwLive *self = SW_LIVE (object);

  g_clear_handle_id (&self->ask_id, g_source_remove);
  g_clear_handle_id (&self->tell_id, g_source_remove);
  g_clear_pointer (&self->latest, sw_latest_free);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (sw_live_parent_class)->dispose (object);
}

static void
sw_live_finalize (GObject *object)
{
  SwLive *self = SW_LIVE (object);

  g_atomic_rc_box_release_full (self->bench, bench_clear);
  g_clear_pointer (&self->forecast, sw_forecast_unref);
  g_free (self->problem);

  G_OBJECT_CLASS (sw_live_parent_class)->finalize (object);
}

static void
sw_live_class_init (SwLiveClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GParamFlags flags = G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->dispose = sw_live_dispose;
  object_class->finalize = sw_live_finalize;
  object_class->get_property = sw_live_get_property;

  props[PROP_FORECAST] = g_param_spec_boxed ("forecast", NULL, NULL, SW_TYPE_FORECAST, flags);
  props[PROP_BUSY] = g_param_spec_boolean ("busy", NULL, NULL, FALSE, flags);
  props[PROP_PROBLEM] = g_param_spec_string ("problem", NULL, NULL, NULL, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  signals[SIGNAL_UPDATED] = g_signal_new ("updated", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
  signals[SIGNAL_TOLD] = g_signal_new ("told", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 0);
}

static void
sw_live_init (SwLive *self)
{
  self->bench = g_atomic_rc_box_new0 (Bench);
  self->bench->forecaster = sw_forecaster_new ();
  self->latest = sw_latest_new (run_worker, answered_cb, self, question_free, answer_free);
  sw_latest_set_patience (self->latest, PATIENCE_MS);
}

SwLive *
sw_live_new (SwDocument *document)
{
  SwLive *self;

  g_return_val_if_fail (SW_IS_DOCUMENT (document), NULL);

  self = g_object_new (SW_TYPE_LIVE, NULL);
  self->document = g_object_ref (document);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (want), self);
  want (self);
  return self;
}

SwDocument *
sw_live_get_document (SwLive *self)
{
  g_return_val_if_fail (SW_IS_LIVE (self), NULL);
  return self->document;
}

SwForecast *
sw_live_get_forecast (SwLive *self)
{
  g_return_val_if_fail (SW_IS_LIVE (self), NULL);
  return self->forecast;
}

gboolean
sw_live_get_busy (SwLive *self)
{
  g_return_val_if_fail (SW_IS_LIVE (self), FALSE);
  return self->busy;
}

const char *
sw_live_get_problem (SwLive *self)
{
  g_return_val_if_fail (SW_IS_LIVE (self), NULL);
  return self->problem;
}

gint64
sw_live_get_edit_time (SwLive *self)
{
  g_return_val_if_fail (SW_IS_LIVE (self), 0);
  return self->edit_time;
}

gboolean
sw_live_catch_up (SwLive *self, gint64 until_us)
{
  g_return_val_if_fail (SW_IS_LIVE (self), FALSE);

  if (self->ask_id != 0)
    {
      g_clear_handle_id (&self->ask_id, g_source_remove);
      ask_cb (self);
    }
  sw_latest_wait (self->latest, until_us);
  return !self->busy;
}
