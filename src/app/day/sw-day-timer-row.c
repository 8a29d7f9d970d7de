/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/day/sw-day-timer-row.h"

#include "app/desk/sw-day-words.h"

#include <glib/gi18n-lib.h>

struct _SwDayTimerRow
{
  GtkListBoxRow parent_instance;

  SwDaySession *session;
  guint timer;

  GtkLabel *digits;
  GtkLabel *title;
  GtkLabel *detail;
  GtkButton *pause;
};

G_DEFINE_FINAL_TYPE (SwDayTimerRow, sw_day_timer_row, GTK_TYPE_LIST_BOX_ROW)

static void
pause_cb (SwDayTimerRow *self)
{
  sw_day_session_toggle_pause (self->session, self->timer);
}

static void
more_cb (SwDayTimerRow *self)
{
  sw_day_session_longer (self->session, self->timer, 1);
}

static void
stop_cb (SwDayTimerRow *self)
{
  sw_day_session_stop (self->session, self->timer);
}

static void
sw_day_timer_row_dispose (GObject *object)
{
  g_clear_object (&SW_DAY_TIMER_ROW (object)->session);

  G_OBJECT_CLASS (sw_day_timer_row_parent_class)->dispose (object);
}

static void
sw_day_timer_row_class_init (SwDayTimerRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_day_timer_row_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-day-timer-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SwDayTimerRow, digits);
  gtk_widget_class_bind_template_child (widget_class, SwDayTimerRow, title);
  gtk_widget_class_bind_template_child (widget_class, SwDayTimerRow, detail);
  gtk_widget_class_bind_template_child (widget_class, SwDayTimerRow, pause);
  gtk_widget_class_bind_template_callback (widget_class, pause_cb);
  gtk_widget_class_bind_template_callback (widget_class, more_cb);
  gtk_widget_class_bind_template_callback (widget_class, stop_cb);
}

static void
sw_day_timer_row_init (SwDayTimerRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
sw_day_timer_row_new (SwDaySession *session, guint timer)
{
  SwDayTimerRow *self = g_object_new (SW_TYPE_DAY_TIMER_ROW, NULL);

  self->session = g_object_ref (session);
  self->timer = timer;
  sw_day_timer_row_show (self);
  return GTK_WIDGET (self);
}

guint
sw_day_timer_row_get_timer (SwDayTimerRow *self)
{
  g_return_val_if_fail (SW_IS_DAY_TIMER_ROW (self), 0);
  return self->timer;
}

/* A label that is set anew is laid out anew, several times a second. */
static void
set_text (GtkLabel *label, const char *text)
{
  if (!g_str_equal (gtk_label_get_text (label), text))
    gtk_label_set_text (label, text);
}

static void
show_pause (SwDayTimerRow *self, gboolean paused)
{
  const char *words = paused ? _ ("Go On") : _ ("Pause");

  if (g_strcmp0 (gtk_widget_get_tooltip_text (GTK_WIDGET (self->pause)), words) == 0)
    return;
  gtk_button_set_icon_name (self->pause, paused ? "media-playback-start-symbolic" : "media-playback-pause-symbolic");
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->pause), words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->pause), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
}

void
sw_day_timer_row_show (SwDayTimerRow *self)
{
  const SwDayClock *clock = sw_day_session_get_clock (self->session);
  const SwDayTimer *timer = clock != NULL ? sw_day_clock_find (clock, self->timer) : NULL;
  g_autofree char *digits = NULL;
  g_autofree char *title = NULL;
  g_autofree char *detail = NULL;

  g_return_if_fail (SW_IS_DAY_TIMER_ROW (self));

  if (timer == NULL)
    return;
  digits = sw_day_digits (sw_day_timer_left (timer, sw_day_session_now (self->session)));
  title = sw_day_timer_title (timer);
  detail = sw_day_timer_detail (timer);
  set_text (self->digits, digits);
  set_text (self->detail, detail);
  show_pause (self, timer->paused);
  if (timer->rung)
    gtk_widget_add_css_class (GTK_WIDGET (self), "time-up");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "time-up");
  if (g_str_equal (gtk_label_get_text (self->title), title))
    return;
  gtk_label_set_text (self->title, title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
}
