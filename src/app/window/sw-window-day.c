/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/window/sw-window-private.h"

#include <glib/gi18n-lib.h>

/* The dye day lies over the whole window; the places are as they were when it is left. */

static void
show_day (SwWindow *self)
{
  gtk_stack_set_visible_child_name (self->views, "day");
  sw_day_page_focus (self->day_page);
}

static void
show_places (SwWindow *self)
{
  gtk_stack_set_visible_child_name (self->views, "places");
}

static void
dye_day_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SwWindow *self = user_data;

  sw_day_session_begin (self->day);
  show_day (self);
}

static void
left_cb (SwWindow *self)
{
  show_places (self);
}

/* The sheet is where a batch is noted. */
static void
finished_cb (SwWindow *self)
{
  show_places (self);
  adw_view_stack_set_visible_child_name (self->stack, "sheet");
  sw_sheet_page_show_part (self->sheet_page, "batches");
}

/* Whoever comes back after a crash or a cut of the power wants to know how long the pan has been on. */
static void
found_cb (SwWindow *self)
{
  if (sw_day_session_get_state (self->day) == SW_DAY_STATE_UNDER_WAY)
    show_day (self);
}

static void
failed_cb (SwWindow *self, const char *sentence)
{
  sw_window_toast (self, sentence);
}

/* Another drawing has no part in the day that is shown. */
static void
state_cb (SwWindow *self)
{
  if (sw_day_session_get_state (self->day) == SW_DAY_STATE_NONE)
    show_places (self);
}

static void
close_answered_cb (SwWindow *self, const char *response)
{
  if (!g_str_equal (response, "close"))
    return;
  self->day_may_rest = TRUE;
  gtk_window_close (GTK_WINDOW (self));
}

static gboolean
has_running_timer (const SwDayClock *clock)
{
  for (guint i = 0; i < clock->timers->len; i++)
    {
      const SwDayTimer *timer = clock->timers->pdata[i];

      if (!timer->put_away && !timer->paused && !timer->rung)
        return TRUE;
    }
  return FALSE;
}

gboolean
sw_window_asks_about_day (SwWindow *self)
{
  const SwDayClock *clock = sw_day_session_get_state (self->day) == SW_DAY_STATE_UNDER_WAY ? sw_day_session_get_clock (self->day) : NULL;
  GtkWidget *dialog;

  if (clock == NULL || !has_running_timer (clock))
    return FALSE;
  dialog = adw_message_dialog_new (GTK_WINDOW (self), _ ("Close While Timers Run?"),
                                   _ ("The day is kept, and its time runs on, but no timer rings while the colourway is closed."));
  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "stay", _ ("_Stay"), "close", _ ("_Close"), NULL);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog), "close", ADW_RESPONSE_DESTRUCTIVE);
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "stay");
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "stay");
  g_signal_connect_object (dialog, "response", G_CALLBACK (close_answered_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
  return TRUE;
}

void
sw_window_add_day (SwWindow *self)
{
  const GActionEntry entries[] = {
    { "dye-day", dye_day_cb },
  };
  g_autofree char *folder = g_build_filename (g_get_user_data_dir (), "strandwise", "days", NULL);

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  self->day = sw_day_session_new (self->document, folder);
  self->alarm = sw_day_alarm_new (self->day, GTK_WIDGET (self));
  sw_day_page_set_session (self->day_page, self->day);
  sw_sheet_page_set_session (self->sheet_page, self->day);
  g_object_set (self->day_page, "live", self->live, NULL);
  g_signal_connect_object (self->day, "found", G_CALLBACK (found_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->day, "failed", G_CALLBACK (failed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->day, "notify::state", G_CALLBACK (state_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->day_page, "left", G_CALLBACK (left_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->day_page, "finished", G_CALLBACK (finished_cb), self, G_CONNECT_SWAPPED);
}
