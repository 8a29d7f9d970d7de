/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/day/sw-day-side.h"

#include "app/day/sw-day-timer-row.h"

#include <glib/gi18n-lib.h>

struct _SwDaySide
{
  AdwBin parent_instance;

  SwDaySession *session;
  guint n_logged; /* lines of the log that are shown */

  GtkButton *pan_button;
  GtkWidget *part_button;
  GtkWidget *timers_heading;
  GtkListBox *timers;
  GtkEditable *label;
  GtkSpinButton *minutes;
  GtkListBox *log;
};

G_DEFINE_FINAL_TYPE (SwDaySide, sw_day_side, ADW_TYPE_BIN)

static guint started_signal;

static const SwDayClock *
clock_of (SwDaySide *self)
{
  return self->session != NULL ? sw_day_session_get_clock (self->session) : NULL;
}

/* Timers */

static gboolean
is_beside (SwDaySide *self, const SwDayTimer *timer)
{
  const SwDayClock *clock = clock_of (self);

  if (timer->put_away)
    return FALSE;
  if (clock->hand > 0) /* each pan's own is beside its name */
    return timer->pan == 0 || timer != sw_day_clock_pan_timer (clock, timer->pan);
  return timer != sw_day_clock_current_timer (clock, 0);
}

static GtkListBoxRow *
find_row (SwDaySide *self, guint timer)
{
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->timers, i)) != NULL; i++)
    if (sw_day_timer_row_get_timer (SW_DAY_TIMER_ROW (row)) == timer)
      return row;
  return NULL;
}

static void
drop_rows (SwDaySide *self)
{
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->timers, i)) != NULL;)
    {
      const SwDayTimer *timer = sw_day_clock_find (clock_of (self), sw_day_timer_row_get_timer (SW_DAY_TIMER_ROW (row)));

      if (timer == NULL || !is_beside (self, timer))
        gtk_list_box_remove (self->timers, GTK_WIDGET (row));
      else
        i++;
    }
}

static void
show_timers (SwDaySide *self, const SwDayClock *clock)
{
  gboolean any = FALSE;

  drop_rows (self);
  for (guint i = 0; i < clock->timers->len; i++)
    {
      const SwDayTimer *timer = clock->timers->pdata[i];

      if (!is_beside (self, timer))
        continue;
      any = TRUE;
      if (find_row (self, timer->id) == NULL)
        gtk_list_box_append (self->timers, sw_day_timer_row_new (self->session, timer->id));
    }
  gtk_widget_set_visible (GTK_WIDGET (self->timers), any);
  gtk_widget_set_visible (self->timers_heading, any);
}

static void
show_pan_button (SwDaySide *self)
{
  const guint pan = sw_day_session_next_pan (self->session);
  /* Translators: starts the same timer for another pan */
  g_autofree char *words = g_strdup_printf (_ ("Start the Timer of Pan %u"), pan);

  gtk_widget_set_visible (GTK_WIDGET (self->pan_button), pan != 0);
  gtk_button_set_label (self->pan_button, words);
  gtk_widget_set_visible (self->part_button, sw_day_clock_can_part (clock_of (self)));
}

static void
pan_cb (SwDaySide *self)
{
  sw_day_session_start_pan (self->session);
}

static void
part_cb (SwDaySide *self)
{
  sw_day_session_part (self->session);
  g_signal_emit (self, started_signal, 0);
}

static void
start_cb (SwDaySide *self)
{
  const char *typed = gtk_editable_get_text (self->label);

  gtk_spin_button_update (self->minutes);
  /* Translators: stands for a timer that was given no name */
  sw_day_session_start (self->session, *typed != '\0' ? typed : _ ("Timer"), gtk_spin_button_get_value (self->minutes));
  gtk_editable_set_text (self->label, "");
  g_signal_emit (self, started_signal, 0);
}

/* The log, the newest first */

static void
show_log (SwDaySide *self, const SwDayClock *clock)
{
  if (clock->events->len < self->n_logged)
    {
      GtkListBoxRow *row;

      while ((row = gtk_list_box_get_row_at_index (self->log, 0)) != NULL)
        gtk_list_box_remove (self->log, GTK_WIDGET (row));
      self->n_logged = 0;
    }
  for (; self->n_logged < clock->events->len; self->n_logged++)
    {
      g_autofree char *line = sw_day_event_text (clock->events->pdata[self->n_logged]);
      GtkWidget *label = gtk_label_new (line);

      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_widget_add_css_class (label, "numeric");
      gtk_list_box_prepend (self->log, label);
    }
}

/* Lifecycle */

static void
sw_day_side_dispose (GObject *object)
{
  g_clear_object (&SW_DAY_SIDE (object)->session);

  G_OBJECT_CLASS (sw_day_side_parent_class)->dispose (object);
}

static void
sw_day_side_class_init (SwDaySideClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_day_side_dispose;

  started_signal = g_signal_new ("started", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-day-side.ui");
  gtk_widget_class_bind_template_child (widget_class, SwDaySide, pan_button);
  gtk_widget_class_bind_template_child (widget_class, SwDaySide, part_button);
  gtk_widget_class_bind_template_child (widget_class, SwDaySide, timers_heading);
  gtk_widget_class_bind_template_child (widget_class, SwDaySide, timers);
  gtk_widget_class_bind_template_child (widget_class, SwDaySide, label);
  gtk_widget_class_bind_template_child (widget_class, SwDaySide, minutes);
  gtk_widget_class_bind_template_child (widget_class, SwDaySide, log);
  gtk_widget_class_bind_template_callback (widget_class, pan_cb);
  gtk_widget_class_bind_template_callback (widget_class, part_cb);
  gtk_widget_class_bind_template_callback (widget_class, start_cb);
}

static void
sw_day_side_init (SwDaySide *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
sw_day_side_set_session (SwDaySide *self, SwDaySession *session)
{
  g_return_if_fail (SW_IS_DAY_SIDE (self) && self->session == NULL);
  self->session = g_object_ref (session);
}

void
sw_day_side_show (SwDaySide *self)
{
  const SwDayClock *clock;

  g_return_if_fail (SW_IS_DAY_SIDE (self));

  clock = clock_of (self);
  if (clock == NULL)
    return;
  show_timers (self, clock);
  show_pan_button (self);
  show_log (self, clock);
}

void
sw_day_side_tick (SwDaySide *self)
{
  GtkListBoxRow *row;

  g_return_if_fail (SW_IS_DAY_SIDE (self));

  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->timers, i)) != NULL; i++)
    sw_day_timer_row_show (SW_DAY_TIMER_ROW (row));
}
