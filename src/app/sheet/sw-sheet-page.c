/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sheet/sw-sheet-page.h"

#include "app/sheet/sw-sheet-amounts.h"
#include "app/sheet/sw-sheet-batches.h"
#include "app/sheet/sw-sheet-cost.h"
#include "app/parts/sw-sheet-pan.h"
#include "app/sheet/sw-sheet-setup.h"
#include "app/sheet/sw-sheet-surety.h"
#include "app/sheet/sw-sheet-timeline.h"
#include "app/desk/sw-step-words.h"
#include "app/desk/sw-subject.h"
#include "forecast/sw-repeat.h"

#include <glib/gi18n-lib.h>

struct _SwSheetPage
{
  AdwBin parent_instance;

  SwLive *live;
  SwSubject *subject; /* the sheet's settings */
  gboolean inches;
  gboolean stale; /* what is shown is not of the latest forecast */
  SwForecast *forecast;
  SwSheet *sheet; /* of that forecast */
  guint step;     /* chosen; 0 none */

  SwSheetPan *pan;
  GtkLabel *pan_label;
  SwSheetSetup *setup;
  GtkStack *stack;
  SwSheetAmounts *amounts;
  SwSheetTimeline *timeline;
  SwSheetCost *cost;
  SwSheetSurety *surety;
  SwSheetBatches *batches;
};

G_DEFINE_FINAL_TYPE (SwSheetPage, sw_sheet_page, ADW_TYPE_BIN)

enum
{
  PROP_0,
  PROP_LIVE,
  PROP_INCHES,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static SwSystem
system_of (SwSheetPage *self)
{
  return self->inches ? SW_SYSTEM_US : SW_SYSTEM_METRIC;
}

/* A chosen step that is gone gives way to the first pour. */
static guint
step_to_show (const SwSheet *sheet, guint step)
{
  if (sw_sketch_find_step (sheet->sketch, step) != NULL)
    return step;
  return sheet->n_pours > 0 ? sheet->pours[0].step : 0;
}

static void
show_step (SwSheetPage *self)
{
  const SwStep *step = sw_sketch_find_step (self->sheet->sketch, self->step);
  g_autofree char *words = step != NULL ? sw_step_reading (self->sheet->sketch, step, system_of (self)) : NULL;

  sw_sheet_pan_set_step (self->pan, self->step);
  gtk_label_set_text (self->pan_label, words != NULL ? words : "");
  sw_sheet_amounts_choose (self->amounts, self->step);
  sw_sheet_timeline_choose (self->timeline, self->step);
}

static void
show (SwSheetPage *self)
{
  SwForecast *forecast = self->live != NULL ? sw_live_get_forecast (self->live) : NULL;

  if (forecast == NULL)
    return;
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    {
      self->stale = TRUE;
      return;
    }
  self->stale = FALSE;
  sw_sheet_setup_show (self->setup, NULL);
  sw_sheet_batches_show (self->batches, NULL);
  g_clear_pointer (&self->sheet, sw_sheet_free);
  g_clear_pointer (&self->forecast, sw_forecast_unref);
  self->forecast = sw_forecast_ref (forecast);
  self->sheet = sw_forecast_sheet (forecast);
  sw_sheet_setup_show (self->setup, self->sheet);
  sw_sheet_amounts_show (self->amounts, self->sheet, system_of (self));
  sw_sheet_timeline_show (self->timeline, self->sheet);
  sw_sheet_cost_show (self->cost, self->sheet);
  sw_sheet_batches_show (self->batches, self->sheet);
  self->step = step_to_show (self->sheet, self->step);
  show_step (self);
}

static void
step_chosen_cb (SwSheetPage *self, guint step)
{
  self->step = step;
  show_step (self);
}

static void
sw_sheet_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (sw_sheet_page_parent_class)->map (widget);
  if (SW_SHEET_PAGE (widget)->stale)
    show (SW_SHEET_PAGE (widget));
}

static void
set_live (SwSheetPage *self, SwLive *live)
{
  if (self->live == live)
    return;
  if (self->live != NULL)
    g_signal_handlers_disconnect_by_data (self->live, self);
  g_set_object (&self->live, live);
  sw_subject_set_document (self->subject, live != NULL ? sw_live_get_document (live) : NULL);
  if (self->surety != NULL)
    sw_sheet_surety_set_document (self->surety, live != NULL ? sw_live_get_document (live) : NULL);
  if (live != NULL)
    g_signal_connect_swapped (live, "updated", G_CALLBACK (show), self);
  show (self);
}

static void
set_inches (SwSheetPage *self, gboolean inches)
{
  self->inches = inches;
  g_object_set (self->subject, "inches", inches, NULL);
  g_object_set (self->pan, "inches", inches, NULL);
  g_object_set (self->surety, "inches", inches, NULL);
  show (self);
}

static void
sw_sheet_page_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwSheetPage *self = SW_SHEET_PAGE (object);

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
sw_sheet_page_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwSheetPage *self = SW_SHEET_PAGE (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      set_live (self, g_value_get_object (value));
      break;
    case PROP_INCHES:
      set_inches (self, g_value_get_boolean (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_sheet_page_dispose (GObject *object)
{
  SwSheetPage *self = SW_SHEET_PAGE (object);

  if (self->subject != NULL)
    set_live (self, NULL);
  g_clear_object (&self->subject);
  g_clear_pointer (&self->sheet, sw_sheet_free);
  g_clear_pointer (&self->forecast, sw_forecast_unref);

  G_OBJECT_CLASS (sw_sheet_page_parent_class)->dispose (object);
}

static void
sw_sheet_page_class_init (SwSheetPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_sheet_page_get_property;
  object_class->set_property = sw_sheet_page_set_property;
  object_class->dispose = sw_sheet_page_dispose;
  widget_class->map = sw_sheet_page_map;

  props[PROP_LIVE] = g_param_spec_object ("live", NULL, NULL, SW_TYPE_LIVE, flags);
  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_type_ensure (SW_TYPE_SHEET_AMOUNTS);
  g_type_ensure (SW_TYPE_SHEET_BATCHES);
  g_type_ensure (SW_TYPE_SHEET_COST);
  g_type_ensure (SW_TYPE_SHEET_SURETY);
  g_type_ensure (SW_TYPE_SHEET_TIMELINE);
  g_type_ensure (SW_TYPE_SHEET_PAN);
  g_type_ensure (SW_TYPE_SHEET_SETUP);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-sheet-page.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSheetPage, pan);
  gtk_widget_class_bind_template_child (widget_class, SwSheetPage, pan_label);
  gtk_widget_class_bind_template_child (widget_class, SwSheetPage, setup);
  gtk_widget_class_bind_template_child (widget_class, SwSheetPage, stack);
  gtk_widget_class_bind_template_child (widget_class, SwSheetPage, amounts);
  gtk_widget_class_bind_template_child (widget_class, SwSheetPage, timeline);
  gtk_widget_class_bind_template_child (widget_class, SwSheetPage, cost);
  gtk_widget_class_bind_template_child (widget_class, SwSheetPage, surety);
  gtk_widget_class_bind_template_child (widget_class, SwSheetPage, batches);
  gtk_widget_class_bind_template_callback (widget_class, step_chosen_cb);
}

static void
sw_sheet_page_init (SwSheetPage *self)
{
  self->subject = sw_subject_new (NULL, SW_RECORD_SHEET);
  gtk_widget_init_template (GTK_WIDGET (self));
  sw_sheet_setup_set_subject (self->setup, self->subject);
  sw_sheet_timeline_set_subject (self->timeline, self->subject);
  sw_sheet_cost_set_subject (self->cost, self->subject);
}

void
sw_sheet_page_set_session (SwSheetPage *self, SwDaySession *session)
{
  g_return_if_fail (SW_IS_SHEET_PAGE (self));
  sw_sheet_batches_set_session (self->batches, session);
}

void
sw_sheet_page_show_part (SwSheetPage *self, const char *part)
{
  g_return_if_fail (SW_IS_SHEET_PAGE (self));
  gtk_stack_set_visible_child_name (self->stack, part);
}
