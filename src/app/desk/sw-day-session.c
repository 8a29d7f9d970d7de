/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/desk/sw-day-session.h"

#include "files/sw-day-file.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <time.h>

#define TICK_MS 200

struct _SwDaySession
{
  GObject parent_instance;

  SwDocument *document;
  char *folder;
  char *path; /* of the day's file; NULL without a day */
  SwDayClock *clock;
  SwDayNow now;
  gpointer now_data;
  guint tick_id;
  guint settle_id;
  gboolean replaced; /* another drawing came since it was last settled */
  gboolean failing;
};

G_DEFINE_FINAL_TYPE (SwDaySession, sw_day_session, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_STATE,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

enum
{
  SIGNAL_CHANGED,
  SIGNAL_TICK,
  SIGNAL_RANG,
  SIGNAL_FOUND,
  SIGNAL_FAILED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* CLOCK_BOOTTIME counts on while the machine sleeps, as the pan on the stove does. */
static SwMoment
machine_now (gpointer data)
{
  SwMoment now = { g_get_real_time (), g_get_monotonic_time () };

#ifdef CLOCK_BOOTTIME
  struct timespec time;

  if (clock_gettime (CLOCK_BOOTTIME, &time) == 0)
    now.steady_us = (gint64) time.tv_sec * G_USEC_PER_SEC + time.tv_nsec / 1000;
#endif
  return now;
}

/* The file */

static char *
document_key (SwDaySession *self)
{
  GFile *file = sw_document_get_file (self->document);

  if (file != NULL)
    return g_file_get_uri (file);
  return g_strconcat ("unsaved:", sw_document_get_title (self->document), NULL);
}

static char *
wanted_path (SwDaySession *self)
{
  g_autofree char *key = document_key (self);
  g_autofree char *sum = g_compute_checksum_for_string (G_CHECKSUM_SHA1, key, -1);
  g_autofree char *name = g_strconcat (sum, ".json", NULL);

  return g_build_filename (self->folder, name, NULL);
}

static void
tell_failure (SwDaySession *self, const char *sentence)
{
  if (!self->failing)
    g_signal_emit (self, signals[SIGNAL_FAILED], 0, sentence);
  self->failing = TRUE;
}

static void
save (SwDaySession *self)
{
  g_autofree char *key = document_key (self);
  g_autofree char *sentence = NULL;
  g_autoptr (GError) error = NULL;

  if (g_mkdir_with_parents (self->folder, 0700) == 0 && sw_day_file_save (self->clock, key, self->path, &error))
    {
      self->failing = FALSE;
      return;
    }
  /* Translators: %s is a folder */
  sentence = g_strdup_printf (_ ("The dye day cannot be kept in %s: it would not survive a restart. Make room or mend the folder’s permissions; the timers run on."), self->folder);
  tell_failure (self, sentence);
}

/* Telling */

static gboolean
tick_cb (gpointer user_data)
{
  sw_day_session_look (user_data);
  return G_SOURCE_CONTINUE;
}

static void
follow_clock (SwDaySession *self)
{
  gboolean wanted = sw_day_session_get_state (self) == SW_DAY_STATE_UNDER_WAY;

  if (wanted && self->tick_id == 0)
    self->tick_id = g_timeout_add (TICK_MS, tick_cb, self);
  else if (!wanted)
    g_clear_handle_id (&self->tick_id, g_source_remove);
}

static void
tell (SwDaySession *self)
{
  follow_clock (self);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_STATE]);
}

static void
keep (SwDaySession *self, gboolean changed)
{
  if (!changed)
    return;
  save (self);
  tell (self);
}

/* The document */

static void
drop (SwDaySession *self)
{
  g_clear_pointer (&self->clock, sw_day_clock_free);
  g_clear_pointer (&self->path, g_free);
}

/* What cannot be read is put aside, so that the next day does not write over it. */
static void
put_aside (SwDaySession *self, const char *path, const GError *error)
{
  g_autofree char *aside = g_strconcat (path, ".unreadable", NULL);
  g_autofree char *sentence = NULL;

  g_rename (path, aside);
  /* Translators: a path, and the reason */
  sentence = g_strdup_printf (_ ("A dye day of this colourway was found that cannot be read; it is kept in %1$s. %2$s"), aside, error->message);
  tell_failure (self, sentence);
}

static void
find_day (SwDaySession *self)
{
  g_autofree char *path = wanted_path (self);
  g_autoptr (SwDayClock) found = NULL;
  g_autoptr (GError) error = NULL;
  const SwSketch *sketch = sw_document_get_sketch (self->document);

  found = sw_day_file_load (path, &error);
  if (found == NULL)
    {
      if (!g_error_matches (error, G_FILE_ERROR, G_FILE_ERROR_NOENT))
        put_aside (self, path, error);
      return;
    }
  if (sw_document_get_file (self->document) == NULL && !sw_day_clock_fits (found, sketch))
    return;
  self->clock = g_steal_pointer (&found);
  self->path = g_steal_pointer (&path);
  sw_day_clock_follow (self->clock, sketch);
  if (!self->clock->ended)
    {
      sw_day_clock_wake (self->clock, sw_day_session_now (self));
      save (self);
    }
  g_signal_emit (self, signals[SIGNAL_FOUND], 0);
  tell (self);
}

/* The day goes where its document goes. */
static void
move_day (SwDaySession *self)
{
  g_autofree char *path = wanted_path (self);

  if (g_str_equal (path, self->path))
    return;
  g_unlink (self->path);
  g_free (self->path);
  self->path = g_steal_pointer (&path);
  save (self);
}

static gboolean
settle_cb (gpointer user_data)
{
  SwDaySession *self = user_data;
  gboolean replaced = self->replaced;

  self->settle_id = 0;
  self->replaced = FALSE;
  if (!replaced && self->clock != NULL)
    {
      move_day (self);
      return G_SOURCE_REMOVE;
    }
  if (!replaced)
    return G_SOURCE_REMOVE;
  drop (self);
  find_day (self);
  tell (self);
  return G_SOURCE_REMOVE;
}

/* A new file name comes both with another drawing and with saving: which of them it was is known a moment later. */
static void
settle_soon (SwDaySession *self)
{
  if (self->settle_id == 0)
    self->settle_id = g_idle_add_full (G_PRIORITY_HIGH_IDLE, settle_cb, self, NULL);
}

static void
replaced_cb (SwDaySession *self)
{
  self->replaced = TRUE;
  settle_soon (self);
}

#define OF_THE_DAY (SW_CHANGED (SW_RECORD_STEP) | SW_CHANGED (SW_RECORD_SHEET) | SW_CHANGED (SW_RECORD_DYE) | SW_CHANGED (SW_RECORD_BATH) | \
                    SW_CHANGED (SW_RECORD_LAY) | SW_CHANGED_ORDER)

static void
document_changed_cb (SwDaySession *self, guint what)
{
  if (self->replaced || sw_day_session_get_state (self) != SW_DAY_STATE_UNDER_WAY || (what & OF_THE_DAY) == 0)
    return;
  sw_day_clock_follow (self->clock, sw_document_get_sketch (self->document));
  keep (self, TRUE);
}

/* Lifecycle */

static void
sw_day_session_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  switch (prop_id)
    {
    case PROP_STATE:
      g_value_set_int (value, sw_day_session_get_state (SW_DAY_SESSION (object)));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_day_session_dispose (GObject *object)
{
  SwDaySession *self = SW_DAY_SESSION (object);

  g_clear_handle_id (&self->tick_id, g_source_remove);
  g_clear_handle_id (&self->settle_id, g_source_remove);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (sw_day_session_parent_class)->dispose (object);
}

static void
sw_day_session_finalize (GObject *object)
{
  SwDaySession *self = SW_DAY_SESSION (object);

  drop (self);
  g_free (self->folder);

  G_OBJECT_CLASS (sw_day_session_parent_class)->finalize (object);
}

static void
sw_day_session_class_init (SwDaySessionClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GType type = G_TYPE_FROM_CLASS (klass);

  object_class->get_property = sw_day_session_get_property;
  object_class->dispose = sw_day_session_dispose;
  object_class->finalize = sw_day_session_finalize;

  props[PROP_STATE] = g_param_spec_int ("state", NULL, NULL, SW_DAY_STATE_NONE, SW_DAY_STATE_OVER, SW_DAY_STATE_NONE, G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  signals[SIGNAL_CHANGED] = g_signal_new ("changed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_TICK] = g_signal_new ("tick", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_RANG] = g_signal_new ("rang", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[SIGNAL_FOUND] = g_signal_new ("found", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_FAILED] = g_signal_new ("failed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
sw_day_session_init (SwDaySession *self)
{
  self->now = machine_now;
}

SwDaySession *
sw_day_session_new (SwDocument *document, const char *folder)
{
  SwDaySession *self;

  g_return_val_if_fail (SW_IS_DOCUMENT (document) && folder != NULL, NULL);

  self = g_object_new (SW_TYPE_DAY_SESSION, NULL);
  self->document = g_object_ref (document);
  self->folder = g_strdup (folder);
  g_signal_connect_swapped (document, "replaced", G_CALLBACK (replaced_cb), self);
  g_signal_connect_swapped (document, "notify::file", G_CALLBACK (settle_soon), self);
  g_signal_connect_swapped (document, "notify::title", G_CALLBACK (settle_soon), self);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (document_changed_cb), self);
  return self;
}

void
sw_day_session_set_now (SwDaySession *self, SwDayNow now, gpointer data)
{
  g_return_if_fail (SW_IS_DAY_SESSION (self) && now != NULL);

  self->now = now;
  self->now_data = data;
}

SwMoment
sw_day_session_now (SwDaySession *self)
{
  return self->now (self->now_data);
}

SwDayState
sw_day_session_get_state (SwDaySession *self)
{
  g_return_val_if_fail (SW_IS_DAY_SESSION (self), SW_DAY_STATE_NONE);

  if (self->clock == NULL)
    return SW_DAY_STATE_NONE;
  return self->clock->ended ? SW_DAY_STATE_OVER : SW_DAY_STATE_UNDER_WAY;
}

SwDocument *
sw_day_session_get_document (SwDaySession *self)
{
  g_return_val_if_fail (SW_IS_DAY_SESSION (self), NULL);
  return self->document;
}

const SwDayClock *
sw_day_session_get_clock (SwDaySession *self)
{
  g_return_val_if_fail (SW_IS_DAY_SESSION (self), NULL);
  return self->clock;
}

/* What a person does */

static gboolean
under_way (SwDaySession *self)
{
  return sw_day_session_get_state (self) == SW_DAY_STATE_UNDER_WAY;
}

void
sw_day_session_begin (SwDaySession *self)
{
  g_return_if_fail (SW_IS_DAY_SESSION (self));

  if (under_way (self))
    return;
  drop (self);
  self->clock = sw_day_clock_new (sw_document_get_sketch (self->document), sw_day_session_now (self));
  self->path = wanted_path (self);
  keep (self, TRUE);
}

void
sw_day_session_done (SwDaySession *self)
{
  g_return_if_fail (SW_IS_DAY_SESSION (self));
  if (under_way (self))
    keep (self, sw_day_clock_done (self->clock, sw_day_session_now (self)));
}

void
sw_day_session_back (SwDaySession *self)
{
  g_return_if_fail (SW_IS_DAY_SESSION (self));
  if (under_way (self))
    keep (self, sw_day_clock_back (self->clock, sw_day_session_now (self)));
}

void
sw_day_session_part (SwDaySession *self)
{
  g_return_if_fail (SW_IS_DAY_SESSION (self));
  if (under_way (self))
    keep (self, sw_day_clock_part (self->clock, sw_day_session_now (self)));
}

void
sw_day_session_take (SwDaySession *self, guint pan)
{
  g_return_if_fail (SW_IS_DAY_SESSION (self));
  if (!under_way (self))
    return;
  sw_day_clock_hush (self->clock);
  keep (self, sw_day_clock_take (self->clock, sw_day_session_now (self), pan));
}

void
sw_day_session_begin_deed (SwDaySession *self)
{
  g_return_if_fail (SW_IS_DAY_SESSION (self));
  if (under_way (self))
    keep (self, sw_day_clock_begin (self->clock, sw_day_session_now (self)));
}

void
sw_day_session_toggle_pause (SwDaySession *self, guint timer)
{
  const SwDayTimer *now = under_way (self) ? sw_day_clock_find (self->clock, timer) : NULL;

  if (now == NULL)
    return;
  sw_day_clock_hush (self->clock);
  keep (self, now->paused ? sw_day_clock_resume (self->clock, sw_day_session_now (self), timer)
                          : sw_day_clock_pause (self->clock, sw_day_session_now (self), timer));
}

void
sw_day_session_longer (SwDaySession *self, guint timer, double minutes)
{
  g_return_if_fail (SW_IS_DAY_SESSION (self));
  if (under_way (self))
    keep (self, sw_day_clock_longer (self->clock, sw_day_session_now (self), timer, minutes));
}

void
sw_day_session_stop (SwDaySession *self, guint timer)
{
  g_return_if_fail (SW_IS_DAY_SESSION (self));
  if (under_way (self))
    keep (self, sw_day_clock_stop (self->clock, sw_day_session_now (self), timer));
}

void
sw_day_session_hush (SwDaySession *self)
{
  g_return_if_fail (SW_IS_DAY_SESSION (self));

  if (!under_way (self) || !sw_day_clock_is_ringing (self->clock))
    return;
  sw_day_clock_hush (self->clock);
  keep (self, TRUE);
}

void
sw_day_session_end (SwDaySession *self)
{
  g_return_if_fail (SW_IS_DAY_SESSION (self));

  if (!under_way (self))
    return;
  sw_day_clock_end (self->clock, sw_day_session_now (self));
  keep (self, TRUE);
}

void
sw_day_session_start (SwDaySession *self, const char *label, double minutes)
{
  g_return_if_fail (SW_IS_DAY_SESSION (self));
  if (under_way (self))
    keep (self, sw_day_clock_start (self->clock, sw_day_session_now (self), label, minutes, -1, 0) != 0);
}

guint
sw_day_session_next_pan (SwDaySession *self)
{
  const SwDayDeed *deed = under_way (self) ? sw_day_clock_deed (self->clock, 0) : NULL;

  if (deed == NULL || self->clock->hand > 0 || !deed->waits || !sw_day_deed_is_per_pan (deed))
    return 0;
  for (guint pan = 1; self->clock->pans > 1 && pan <= self->clock->pans; pan++)
    if (sw_day_clock_current_timer (self->clock, pan) == NULL)
      return pan;
  return 0;
}

void
sw_day_session_start_pan (SwDaySession *self)
{
  const guint pan = sw_day_session_next_pan (self);
  const SwDayDeed *deed = pan != 0 ? sw_day_clock_deed (self->clock, 0) : NULL;

  if (deed != NULL)
    keep (self, sw_day_clock_start (self->clock, sw_day_session_now (self), deed->title, deed->minutes, (int) self->clock->current, pan) != 0);
}

void
sw_day_session_forget (SwDaySession *self)
{
  g_return_if_fail (SW_IS_DAY_SESSION (self));

  if (self->clock == NULL)
    return;
  g_unlink (self->path);
  drop (self);
  tell (self);
}

void
sw_day_session_look (SwDaySession *self)
{
  g_autoptr (GPtrArray) rung = NULL;
  guint n_events;

  g_return_if_fail (SW_IS_DAY_SESSION (self));

  if (!under_way (self))
    return;
  n_events = self->clock->events->len;
  rung = sw_day_clock_tick (self->clock, sw_day_session_now (self));
  if (self->clock->events->len != n_events)
    keep (self, TRUE);
  for (guint i = 0; rung != NULL && i < rung->len; i++)
    g_signal_emit (self, signals[SIGNAL_RANG], 0, ((const SwDayTimer *) rung->pdata[i])->id);
  g_signal_emit (self, signals[SIGNAL_TICK], 0);
}
