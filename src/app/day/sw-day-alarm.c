/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/day/sw-day-alarm.h"

#include "app/desk/sw-day-words.h"

#include <glib/gi18n-lib.h>
#ifdef HAVE_GSOUND
#include <gsound.h>
#endif

#define AGAIN_S 30

struct _SwDayAlarm
{
  SwDaySession *session;
  GtkWidget *widget;
  guint again_id;
#ifdef HAVE_GSOUND
  GSoundContext *sound; /* NULL where there is none */
#endif
};

static void
bell (SwDayAlarm *self)
{
  gdk_display_beep (gtk_widget_get_display (self->widget));
}

#ifdef HAVE_GSOUND
/* The widget's display is all that a bell needs, and it outlives the alarm. */
static void
played_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (GdkDisplay) display = user_data;
  g_autoptr (GError) error = NULL;

  if (!gsound_context_play_full_finish (GSOUND_CONTEXT (source), result, &error))
    gdk_display_beep (display);
}

static void
sound (SwDayAlarm *self)
{
  if (self->sound == NULL)
    {
      bell (self);
      return;
    }
  gsound_context_play_full (self->sound, NULL, played_cb, g_object_ref (gtk_widget_get_display (self->widget)),
                            GSOUND_ATTR_EVENT_ID, "alarm-clock-elapsed",
                            GSOUND_ATTR_EVENT_DESCRIPTION, _ ("A timer is up"),
                            NULL);
}
#else
static void
sound (SwDayAlarm *self)
{
  bell (self);
}
#endif

static gboolean
again_cb (gpointer user_data)
{
  SwDayAlarm *self = user_data;
  const SwDayClock *clock = sw_day_session_get_clock (self->session);

  if (clock != NULL && sw_day_clock_is_ringing (clock))
    {
      sound (self);
      return G_SOURCE_CONTINUE;
    }
  self->again_id = 0;
  return G_SOURCE_REMOVE;
}

static void
notify (SwDayAlarm *self, const SwDayTimer *timer)
{
  GtkRoot *root = gtk_widget_get_root (self->widget);
  GtkApplication *application = GTK_IS_WINDOW (root) ? gtk_window_get_application (GTK_WINDOW (root)) : NULL;
  g_autofree char *title = sw_day_timer_title (timer);
  /* Translators: a notification; %s is what the timer was for */
  g_autofree char *heading = g_strdup_printf (_ ("Time is up: %s"), title);
  g_autofree char *id = g_strdup_printf ("day-timer-%u", timer->id);
  g_autoptr (GNotification) notification = g_notification_new (heading);
  const SwDayClock *clock = sw_day_session_get_clock (self->session);
  const SwDayDeed *next = sw_day_clock_deed (clock, 1);

  if (next != NULL && timer->deed >= 0 && (clock->hand == 0 || timer->pan == clock->hand))
    {
      /* Translators: in a notification; the next thing to do */
      g_autofree char *body = g_strdup_printf (_ ("Then: %s"), next->title);

      g_notification_set_body (notification, body);
    }
  g_notification_set_priority (notification, G_NOTIFICATION_PRIORITY_URGENT);
  if (application != NULL)
    g_application_send_notification (G_APPLICATION (application), id, notification);
}

static void
rang_cb (SwDayAlarm *self, guint id)
{
  const SwDayTimer *timer = sw_day_clock_find (sw_day_session_get_clock (self->session), id);

  sound (self);
  if (timer != NULL)
    notify (self, timer);
  if (self->again_id == 0)
    self->again_id = g_timeout_add_seconds (AGAIN_S, again_cb, self);
}

SwDayAlarm *
sw_day_alarm_new (SwDaySession *session, GtkWidget *widget)
{
  SwDayAlarm *self = g_new0 (SwDayAlarm, 1);

  self->session = g_object_ref (session);
  self->widget = widget;
#ifdef HAVE_GSOUND
  self->sound = gsound_context_new (NULL, NULL);
#endif
  g_signal_connect_swapped (session, "rang", G_CALLBACK (rang_cb), self);
  return self;
}

void
sw_day_alarm_free (SwDayAlarm *self)
{
  g_signal_handlers_disconnect_by_data (self->session, self);
  g_clear_handle_id (&self->again_id, g_source_remove);
#ifdef HAVE_GSOUND
  g_clear_object (&self->sound);
#endif
  g_object_unref (self->session);
  g_free (self);
}
