/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/day/sw-day-page.h"

#include "app/day/sw-day-pans.h"
#include "app/day/sw-day-side.h"
#include "app/desk/sw-day-words.h"
#include "app/parts/sw-sheet-pan.h"
#include "app/parts/sw-swatch.h"

#include "sheet/sw-measure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

struct _SwDayPage
{
  AdwBin parent_instance;

  SwLive *live;
  SwDaySession *session;
  gboolean inches;

  AdwWindowTitle *title;
  GtkLabel *place;
  GtkProgressBar *progress;
  SwSwatch *swatch;
  GtkLabel *deed;
  GtkLabel *amount;
  GtkLabel *beside;
  GtkLabel *digits;
  GtkLabel *timer_detail;
  GtkLabel *detail;
  GtkWidget *caution_box;
  GtkLabel *caution;
  GtkWidget *next_box;
  GtkLabel *next;
  GtkWidget *question_box;
  GtkLabel *question;
  GtkWidget *keep;
  GtkWidget *buttons;
  GtkButton *done;
  GtkWidget *back;
  GtkButton *pause;
  GtkWidget *longer;
  SwSheetPan *pan;
  SwDayPans *pans;
  SwDaySide *side;
};

G_DEFINE_FINAL_TYPE (SwDayPage, sw_day_page, ADW_TYPE_BIN)

enum
{
  PROP_0,
  PROP_LIVE,
  PROP_INCHES,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

enum
{
  SIGNAL_LEFT,
  SIGNAL_FINISHED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static SwSystem
system_of (SwDayPage *self)
{
  return self->inches ? SW_SYSTEM_US : SW_SYSTEM_METRIC;
}

static const SwDayClock *
clock_of (SwDayPage *self)
{
  return self->session != NULL ? sw_day_session_get_clock (self->session) : NULL;
}

static void
set_text (GtkLabel *label, const char *text)
{
  if (!g_str_equal (gtk_label_get_text (label), text))
    gtk_label_set_text (label, text);
  gtk_widget_set_visible (GTK_WIDGET (label), *text != '\0');
}

/* What to do */

static const SwSketch *
sketch_of (SwDayPage *self)
{
  return sw_document_get_sketch (sw_day_session_get_document (self->session));
}

static void
show_pour (SwDayPage *self, const SwDayDeed *deed)
{
  const SwStep *step = sw_sketch_find_step (sketch_of (self), deed->step);
  const SwDye *dye = deed->pour > 0 && step != NULL ? sw_sketch_find_dye (sketch_of (self), step->dye) : NULL;
  g_autofree char *number = g_strdup_printf ("%u", deed->pour);

  gtk_widget_set_visible (GTK_WIDGET (self->swatch), dye != NULL);
  sw_swatch_set_sample (self->swatch, dye != NULL ? &dye->sample : NULL);
  sw_swatch_set_text (self->swatch, dye != NULL ? number : NULL);
  sw_sheet_pan_set_step (self->pan, deed->pour > 0 ? deed->step : 0);
}

static void
show_words (SwDayPage *self, const SwSheet *sheet, const SwDayDeed *deed)
{
  g_auto (SwDayWords) words = { NULL };

  sw_day_words (sheet, deed, system_of (self), &words);
  set_text (self->deed, words.title);
  set_text (self->amount, words.amount);
  set_text (self->beside, words.beside);
  set_text (self->detail, words.detail);
  set_text (self->caution, words.caution != NULL ? words.caution : "");
  gtk_widget_set_visible (self->caution_box, words.caution != NULL);
  gtk_widget_set_tooltip_text (self->caution_box, words.caution_text);
}

static void
show_next (SwDayPage *self, const SwSheet *sheet, const SwDayDeed *next)
{
  g_autofree char *words = next != NULL ? sw_day_next_words (sheet, next, system_of (self)) : NULL;

  set_text (self->next, words != NULL ? words : "");
  gtk_widget_set_visible (self->next_box, words != NULL);
}

/* One pan is through, and others are not. */
static void
show_pan_over (SwDayPage *self, const SwDayClock *clock)
{
  g_autofree char *title = g_strdup_printf (_ ("Pan %u Is Done"), clock->hand);

  set_text (self->deed, title);
  set_text (self->detail, "");
}

static void
show_over (SwDayPage *self, const SwDayClock *clock)
{
  gtk_widget_set_visible (GTK_WIDGET (self->swatch), FALSE);
  set_text (self->deed, _ ("All Done"));
  set_text (self->amount, "");
  set_text (self->beside, "");
  set_text (self->detail, _ ("Note the batch: then the next one can start from what was done today."));
  gtk_widget_set_visible (self->caution_box, FALSE);
  gtk_widget_set_visible (self->next_box, FALSE);
  sw_sheet_pan_set_step (self->pan, 0);
  if (sw_day_clock_unfinished_pan (clock) > 0)
    show_pan_over (self, clock);
}

static void
show_place (SwDayPage *self, const SwDayClock *clock)
{
  const guint n = clock->deeds->len, at = MIN (clock->current + 1, n);
  /* Translators: which thing of how many that are to be done in the day */
  g_autofree char *place = g_strdup_printf (_ ("%1$u of %2$u"), at, n);
  g_autoptr (GDateTime) begun = g_date_time_new_from_unix_local (clock->begun_us / G_USEC_PER_SEC);
  g_autofree char *time = g_date_time_format (begun, "%H:%M");
  /* Translators: the time of day at which a dye day was begun */
  g_autofree char *since = g_strdup_printf (_ ("Dye day since %s"), time);

  set_text (self->place, place);
  gtk_progress_bar_set_fraction (self->progress, n > 0 ? (double) clock->current / n : 1);
  adw_window_title_set_title (self->title, sw_document_get_title (sw_day_session_get_document (self->session)));
  adw_window_title_set_subtitle (self->title, since);
}

static void
show_deed (SwDayPage *self, const SwDayClock *clock)
{
  const SwDayDeed *deed = sw_day_clock_deed (clock, 0);
  g_autoptr (SwSketch) sketch = sw_day_sketch_in_hand (sketch_of (self), clock);
  g_autoptr (SwSheet) sheet = sw_sheet_new (sketch, NULL);
  g_autofree char *done = sw_day_done_words (clock);

  show_place (self, clock);
  gtk_button_set_label (self->done, done);
  if (deed == NULL)
    {
      show_over (self, clock);
      return;
    }
  show_words (self, sheet, deed);
  show_pour (self, deed);
  show_next (self, sheet, sw_day_clock_deed (clock, 1));
}

/* Timers */

static const SwDayTimer *
main_timer (SwDayPage *self)
{
  const SwDayClock *clock = clock_of (self);

  return clock != NULL ? sw_day_clock_current_timer (clock, clock->hand) : NULL;
}

static void
show_main_timer (SwDayPage *self)
{
  const SwDayTimer *timer = main_timer (self);
  g_autofree char *digits = timer != NULL ? sw_day_digits (sw_day_timer_left (timer, sw_day_session_now (self->session))) : NULL;
  g_autofree char *detail = timer != NULL ? sw_day_timer_detail (timer) : NULL;
  g_autofree char *both = NULL;

  set_text (self->digits, digits != NULL ? digits : "");
  /* Translators: the number of a pan, and "until 11:13" or the like */
  both = timer != NULL && timer->pan > 0 ? g_strdup_printf (_ ("pan %1$u · %2$s"), timer->pan, detail) : g_strdup (detail != NULL ? detail : "");
  set_text (self->timer_detail, both);
  if (timer != NULL && timer->rung)
    gtk_widget_add_css_class (GTK_WIDGET (self->digits), "time-up");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->digits), "time-up");
}

static void
show_buttons (SwDayPage *self, const SwDayClock *clock)
{
  const SwDayTimer *timer = main_timer (self);

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "day.back", clock->current > 0);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "day.pause", timer != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "day.longer", timer != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->pause), timer != NULL);
  gtk_widget_set_visible (self->longer, timer != NULL);
  gtk_button_set_label (self->pause, timer != NULL && timer->paused ? _ ("Go On") : _ ("Pause"));
}

static void
tick_cb (SwDayPage *self)
{
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  show_main_timer (self);
  sw_day_pans_tick (self->pans);
  sw_day_side_tick (self->side);
}

/* Whether to skip what is left of a wait: asked in the place of the buttons. NULL takes the question away. */
static void
ask (SwDayPage *self, const char *words)
{
  const gboolean asked = gtk_widget_get_visible (self->question_box);

  gtk_label_set_text (self->question, words != NULL ? words : "");
  gtk_widget_set_visible (self->question_box, words != NULL);
  gtk_widget_set_visible (self->buttons, words == NULL);
  if (words != NULL)
    gtk_widget_grab_focus (self->keep);
  else if (asked)
    gtk_widget_grab_focus (GTK_WIDGET (self->done));
}

static void
show (SwDayPage *self)
{
  const SwDayClock *clock = clock_of (self);

  if (clock == NULL)
    return;
  ask (self, NULL);
  show_deed (self, clock);
  show_main_timer (self);
  show_buttons (self, clock);
  sw_day_pans_show (self->pans);
  sw_day_side_show (self->side);
  tick_cb (self);
}

/* What a person does */

static void
keep_cb (SwDayPage *self)
{
  ask (self, NULL);
}

static void
skip_cb (SwDayPage *self)
{
  sw_day_session_done (self->session);
}

/* The key that asked does not answer, too: pressed twice it changes nothing. */
static void
do_next (SwDayPage *self, const SwDayClock *clock)
{
  const double left = sw_day_clock_cut_short (clock, sw_day_session_now (self->session));
  g_autofree char *time = sw_minutes_text (ceil (left));
  g_autofree char *question = NULL;

  if (sw_day_clock_is_unbegun (clock))
    sw_day_session_begin_deed (self->session);
  else if (gtk_widget_get_visible (self->question_box))
    keep_cb (self);
  else if (left > 0)
    {
      /* Translators: something that waits, and how much time is left of it */
      question = g_strdup_printf (_ ("%1$s: %2$s left. Go on without waiting?"), sw_day_clock_deed (clock, 0)->title, time);
      ask (self, question);
    }
  else
    sw_day_session_done (self->session);
}

static void
done_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  SwDayPage *self = SW_DAY_PAGE (widget);
  const SwDayClock *clock = clock_of (self);

  if (clock == NULL)
    return;
  if (sw_day_clock_deed (clock, 0) != NULL)
    {
      do_next (self, clock);
      return;
    }
  if (sw_day_clock_unfinished_pan (clock) > 0)
    {
      sw_day_session_take (self->session, sw_day_clock_unfinished_pan (clock));
      return;
    }
  sw_day_session_end (self->session);
  g_signal_emit (self, signals[SIGNAL_FINISHED], 0);
}

static void
back_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  sw_day_session_back (SW_DAY_PAGE (widget)->session);
}

static void
pause_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  const SwDayTimer *timer = main_timer (SW_DAY_PAGE (widget));

  if (timer != NULL)
    sw_day_session_toggle_pause (SW_DAY_PAGE (widget)->session, timer->id);
}

static void
longer_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  const SwDayTimer *timer = main_timer (SW_DAY_PAGE (widget));

  if (timer != NULL)
    sw_day_session_longer (SW_DAY_PAGE (widget)->session, timer->id, 1);
}

static void
end_answered_cb (SwDayPage *self, const char *response)
{
  if (!g_str_equal (response, "end"))
    return;
  sw_day_session_end (self->session);
  g_signal_emit (self, signals[SIGNAL_FINISHED], 0);
}

/* What is left to do, and the timers that run, would be lost. */
static void
end_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  SwDayPage *self = SW_DAY_PAGE (widget);
  GtkWidget *dialog = adw_message_dialog_new (GTK_WINDOW (gtk_widget_get_root (widget)), _ ("End the Day Here?"),
                                              _ ("Timers stop, and what is left to do stays undone. The log is kept for the batch."));

  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "go-on", _ ("_Go On"), "end", _ ("_End the Day"), NULL);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog), "end", ADW_RESPONSE_DESTRUCTIVE);
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "go-on");
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "go-on");
  g_signal_connect_object (dialog, "response", G_CALLBACK (end_answered_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
leave_cb (SwDayPage *self)
{
  g_signal_emit (self, signals[SIGNAL_LEFT], 0);
}

static void
leave_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  leave_cb (SW_DAY_PAGE (widget));
}

/* Lifecycle */

static void
set_live (SwDayPage *self, SwLive *live)
{
  if (!g_set_object (&self->live, live))
    return;
  g_object_set (self->pan, "live", live, NULL);
}

static void
sw_day_page_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwDayPage *self = SW_DAY_PAGE (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      g_value_set_object (value, self->live);
      break;
    case PROP_INCHES:
      g_value_set_boolean (value, self->inches);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_day_page_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwDayPage *self = SW_DAY_PAGE (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      set_live (self, g_value_get_object (value));
      break;
    case PROP_INCHES:
      self->inches = g_value_get_boolean (value);
      g_object_set (self->pan, "inches", self->inches, NULL);
      show (self);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_day_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (sw_day_page_parent_class)->map (widget);
  show (SW_DAY_PAGE (widget));
}

static void
sw_day_page_dispose (GObject *object)
{
  SwDayPage *self = SW_DAY_PAGE (object);

  if (self->session != NULL)
    g_signal_handlers_disconnect_by_data (self->session, self);
  g_clear_object (&self->session);
  g_clear_object (&self->live);

  G_OBJECT_CLASS (sw_day_page_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, title);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, place);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, progress);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, swatch);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, deed);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, amount);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, beside);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, digits);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, timer_detail);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, detail);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, caution_box);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, caution);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, next_box);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, next);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, question_box);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, question);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, keep);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, buttons);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, pans);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, done);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, back);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, pause);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, longer);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, pan);
  gtk_widget_class_bind_template_child (widget_class, SwDayPage, side);
  gtk_widget_class_bind_template_callback (widget_class, keep_cb);
  gtk_widget_class_bind_template_callback (widget_class, leave_cb);
  gtk_widget_class_bind_template_callback (widget_class, skip_cb);
}

/* A focused button takes Space for itself; what is clicked does not take the focus, so that Space stays with the large button. */
static void
add_keys (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "day.done", NULL, done_action);
  gtk_widget_class_install_action (widget_class, "day.back", NULL, back_action);
  gtk_widget_class_install_action (widget_class, "day.pause", NULL, pause_action);
  gtk_widget_class_install_action (widget_class, "day.longer", NULL, longer_action);
  gtk_widget_class_install_action (widget_class, "day.end", NULL, end_action);
  gtk_widget_class_install_action (widget_class, "day.leave", NULL, leave_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_space, 0, "day.done", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_BackSpace, 0, "day.back", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_p, 0, "day.pause", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_plus, 0, "day.longer", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_KP_Add, 0, "day.longer", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "day.leave", NULL);
}

static void
sw_day_page_class_init (SwDayPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_day_page_get_property;
  object_class->set_property = sw_day_page_set_property;
  object_class->dispose = sw_day_page_dispose;
  widget_class->map = sw_day_page_map;

  props[PROP_LIVE] = g_param_spec_object ("live", NULL, NULL, SW_TYPE_LIVE, flags);
  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  signals[SIGNAL_LEFT] = g_signal_new ("left", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_FINISHED] = g_signal_new ("finished", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);

  g_type_ensure (SW_TYPE_DAY_PANS);
  g_type_ensure (SW_TYPE_DAY_SIDE);
  g_type_ensure (SW_TYPE_SHEET_PAN);
  g_type_ensure (SW_TYPE_SWATCH);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-day-page.ui");
  bind_children (widget_class);
  add_keys (widget_class);
}

static void
sw_day_page_init (SwDayPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
sw_day_page_set_session (SwDayPage *self, SwDaySession *session)
{
  g_return_if_fail (SW_IS_DAY_PAGE (self) && self->session == NULL);

  self->session = g_object_ref (session);
  g_signal_connect_swapped (session, "changed", G_CALLBACK (show), self);
  g_signal_connect_swapped (session, "tick", G_CALLBACK (tick_cb), self);
  g_signal_connect_swapped (self->side, "started", G_CALLBACK (sw_day_page_focus), self);
  sw_day_pans_set_session (self->pans, session);
  sw_day_side_set_session (self->side, session);
}

void
sw_day_page_focus (SwDayPage *self)
{
  g_return_if_fail (SW_IS_DAY_PAGE (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->done));
}
