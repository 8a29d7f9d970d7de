/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-step-page.h"

#include "app/parts/sw-account-row.h"
#include "app/parts/sw-field-row.h"
#include "app/parts/sw-seen.h"
#include "draw/sw-pan-geometry.h"

#include <glib/gi18n-lib.h>

struct _SwStepPage
{
  AdwBin parent_instance;

  SwLive *live;
  SwSelection *selection;
  SwSubject *subject;
  GPtrArray *accounts; /* of SwAccountRow, as many as were ever needed */

  AdwPreferencesGroup *fields;
  AdwPreferencesGroup *after;
};

G_DEFINE_FINAL_TYPE (SwStepPage, sw_step_page, ADW_TYPE_BIN)

enum
{
  PROP_0,
  PROP_LIVE,
  PROP_SELECTION,
  PROP_INCHES,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

/* What is shown */

static char *
title_of (SwStepPage *self)
{
  const SwSketch *sketch = sw_document_get_sketch (sw_selection_get_document (self->selection));
  const SwStep *step = sw_sketch_find_step (sketch, sw_subject_first (self->subject));
  guint n = sw_subject_count (self->subject);

  if (n > 1)
    return g_strdup_printf (ngettext ("%u Step Selected", "%u Steps Selected", n), n);
  if (step == NULL)
    return g_strdup ("");
  if (sw_step_is_pour (step))
    /* Translators: a kind of pour and the number that it bears in the picture: "Band 3" */
    return g_strdup_printf (_ ("%1$s %2$u"), sw_step_kind_label (step->kind), sw_pan_pour_number (sketch, step->id));
  return g_strdup (sw_step_kind_label (step->kind));
}

static void
show_title (SwStepPage *self)
{
  g_autofree char *title = NULL;
  g_autofree char *escaped = NULL;

  if (self->selection == NULL)
    return;
  title = title_of (self);
  escaped = g_markup_escape_text (title, -1);
  adw_preferences_group_set_title (self->fields, escaped);
}

/* As many rows as there are dyes in the pan; those made once are kept. */
static void
show_accounts (SwStepPage *self, const SwForecast *forecast, guint step)
{
  g_autoptr (GArray) accounts = sw_dyeing_accounts (forecast, step);

  while (self->accounts->len < accounts->len)
    {
      GtkWidget *row = g_object_new (SW_TYPE_ACCOUNT_ROW, NULL);

      adw_preferences_group_add (self->after, row);
      g_ptr_array_add (self->accounts, row);
    }
  for (guint i = 0; i < self->accounts->len; i++)
    {
      gtk_widget_set_visible (self->accounts->pdata[i], i < accounts->len);
      if (i < accounts->len)
        sw_account_row_show (self->accounts->pdata[i], forecast, step, &g_array_index (accounts, SwAccount, i));
    }
}

static void
show_after (gpointer page)
{
  SwStepPage *self = page;
  SwForecast *forecast = self->live != NULL ? sw_live_get_forecast (self->live) : NULL;
  guint step = sw_subject_first (self->subject);
  g_autofree char *bath = sw_dyeing_bath (forecast, step, sw_subject_get_system (self->subject));

  gtk_widget_set_visible (GTK_WIDGET (self->after), *bath != '\0' && sw_subject_count (self->subject) == 1);
  if (!gtk_widget_get_visible (GTK_WIDGET (self->after)))
    return;
  adw_preferences_group_set_description (self->after, bath);
  show_accounts (self, forecast, step);
}

static void
show (SwStepPage *self)
{
  show_title (self);
  show_after (self);
}

/* The step that was selected last speaks for all. */
static void
selection_changed_cb (SwStepPage *self)
{
  g_autofree guint *ids = NULL;
  const guint *steps;
  gsize n;

  steps = sw_selection_get_steps (self->selection, &n);
  ids = g_new (guint, n + 1);
  for (gsize i = 0; i < n; i++)
    ids[i] = steps[n - 1 - i];
  sw_subject_set_ids (self->subject, ids, n);
}

static void
set_selection (SwStepPage *self, SwSelection *selection)
{
  if (self->selection == selection)
    return;
  if (self->selection != NULL)
    g_signal_handlers_disconnect_by_data (self->selection, self);
  g_set_object (&self->selection, selection);
  sw_subject_set_document (self->subject, selection != NULL ? sw_selection_get_document (selection) : NULL);
  if (selection == NULL)
    return;
  g_signal_connect_swapped (selection, "changed", G_CALLBACK (selection_changed_cb), self);
  selection_changed_cb (self);
}

static void
set_live (SwStepPage *self, SwLive *live)
{
  if (self->live == live)
    return;
  if (self->live != NULL)
    sw_seen_disconnect (GTK_WIDGET (self), self->live);
  g_set_object (&self->live, live);
  if (live != NULL)
    sw_seen_connect (GTK_WIDGET (self), live, "told", show_after);
}

/* Lifecycle */

static void
sw_step_page_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwStepPage *self = SW_STEP_PAGE (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      g_value_set_object (value, self->live);
      break;
    case PROP_SELECTION:
      g_value_set_object (value, self->selection);
      break;
    case PROP_INCHES:
      g_object_get_property (G_OBJECT (self->subject), "inches", value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_step_page_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwStepPage *self = SW_STEP_PAGE (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      set_live (self, g_value_get_object (value));
      break;
    case PROP_SELECTION:
      set_selection (self, g_value_get_object (value));
      break;
    case PROP_INCHES:
      g_object_set_property (G_OBJECT (self->subject), "inches", value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_step_page_dispose (GObject *object)
{
  SwStepPage *self = SW_STEP_PAGE (object);

  if (self->subject != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->subject, self);
      set_selection (self, NULL);
      set_live (self, NULL);
    }
  g_clear_object (&self->subject);
  g_clear_pointer (&self->accounts, g_ptr_array_unref);

  G_OBJECT_CLASS (sw_step_page_parent_class)->dispose (object);
}

static void
sw_step_page_class_init (SwStepPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_step_page_get_property;
  object_class->set_property = sw_step_page_set_property;
  object_class->dispose = sw_step_page_dispose;

  props[PROP_LIVE] = g_param_spec_object ("live", NULL, NULL, SW_TYPE_LIVE, flags);
  props[PROP_SELECTION] = g_param_spec_object ("selection", NULL, NULL, SW_TYPE_SELECTION, flags);
  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-step-page.ui");
  gtk_widget_class_bind_template_child (widget_class, SwStepPage, fields);
  gtk_widget_class_bind_template_child (widget_class, SwStepPage, after);
}

static void
sw_step_page_init (SwStepPage *self)
{
  const SwMember *members;
  gsize n;

  gtk_widget_init_template (GTK_WIDGET (self));
  self->subject = sw_subject_new (NULL, SW_RECORD_STEP);
  self->accounts = g_ptr_array_new ();
  members = sw_record_members (SW_RECORD_STEP, &n);
  for (gsize i = 0; i < n; i++)
    adw_preferences_group_add (self->fields, sw_field_row_new (self->subject, &members[i]));
  g_signal_connect_swapped (self->subject, "changed", G_CALLBACK (show), self);
}
