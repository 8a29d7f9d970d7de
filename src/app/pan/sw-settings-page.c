/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-settings-page.h"

#include "app/parts/sw-expander-name.h"
#include "app/parts/sw-field-row.h"
#include "app/parts/sw-seen.h"
#include "app/desk/sw-settings-words.h"
#include "app/pan/sw-yarn-weight-row.h"

#include <glib/gi18n-lib.h>

/* Each record's fields, in the order of their tables. */
static const SwRecord records[] = { SW_RECORD_SKETCH, SW_RECORD_YARN, SW_RECORD_REEL, SW_RECORD_LAY, SW_RECORD_BATH };

struct _SwSettingsPage
{
  AdwBin parent_instance;

  SwLive *live;
  SwSelection *selection;
  SwSubject *subjects[G_N_ELEMENTS (records)];
  gboolean inches;

  AdwPreferencesGroup *colourway;
  AdwPreferencesGroup *notes;
  AdwExpanderRow *yarn;
  AdwExpanderRow *reel;
  AdwExpanderRow *lay;
  AdwExpanderRow *bath;
  SwYarnWeightRow *weight;
  GtkWidget *outside;
  GtkLabel *outside_label;
};

G_DEFINE_FINAL_TYPE (SwSettingsPage, sw_settings_page, ADW_TYPE_BIN)

enum
{
  PROP_0,
  PROP_LIVE,
  PROP_SELECTION,
  PROP_INCHES,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

/* Few dyers ever change these: they stand under "More". */
static const char *const rare[] = {
  "growth",
  "wraps_per_sweep",
  "wander",
  "alkalinity_meq_per_l",
  "keep_carbonate",
  "spread_cm2_per_min",
};

static gboolean
is_rare (const SwMember *member)
{
  for (gsize i = 0; i < G_N_ELEMENTS (rare); i++)
    if (g_str_equal (rare[i], member->name))
      return TRUE;
  return FALSE;
}

/* Words */

static void
set_summary (AdwExpanderRow *row, char *summary)
{
  g_autofree char *escaped = g_markup_escape_text (summary, -1);

  adw_expander_row_set_subtitle (row, escaped);
  g_free (summary);
}

/* Pours that lost the skein under them are told of even while the lay is closed. */
static void
show_lay (SwSettingsPage *self, const SwSketch *sketch, SwSystem system)
{
  g_autofree char *outside = sw_pours_outside_sentence (sketch);
  g_autofree char *lay = sw_lay_summary (sketch, system);

  set_summary (self->lay, outside != NULL ? g_strconcat (lay, "\n", outside, NULL) : g_strdup (lay));
  gtk_label_set_text (self->outside_label, outside != NULL ? outside : "");
  gtk_widget_set_visible (self->outside, outside != NULL);
}

static void
show (gpointer page)
{
  SwSettingsPage *self = page;
  SwSystem system = self->inches ? SW_SYSTEM_US : SW_SYSTEM_METRIC;
  const SwSketch *sketch;

  if (self->selection == NULL)
    return;
  sketch = sw_document_get_sketch (sw_selection_get_document (self->selection));
  set_summary (self->yarn, sw_yarn_summary (sketch, system));
  set_summary (self->reel, sw_reel_summary (sketch, system));
  show_lay (self, sketch, system);
  set_summary (self->bath, sw_bath_summary (sketch, self->live != NULL ? sw_live_get_forecast (self->live) : NULL, system));
}

static void
select_outside_cb (SwSettingsPage *self)
{
  g_autoptr (GArray) pours = sw_pours_outside (sw_document_get_sketch (sw_selection_get_document (self->selection)));

  sw_selection_set_steps (self->selection, (const guint *) (gpointer) pours->data, pours->len);
}

/* Fields */

/* Returns: (transfer none) (nullable): the row of what is rare */
static AdwExpanderRow *
add_fields (AdwExpanderRow *expander, SwSubject *subject)
{
  GtkWidget *more = NULL;
  const SwMember *members;
  gsize n;

  members = sw_record_members (sw_subject_get_record (subject), &n);
  for (gsize i = 0; i < n; i++)
    {
      if (is_rare (&members[i]) && more == NULL)
        more = g_object_new (ADW_TYPE_EXPANDER_ROW, "title", _ ("More"), NULL);
      adw_expander_row_add_row (ADW_EXPANDER_ROW (is_rare (&members[i]) ? more : GTK_WIDGET (expander)), sw_field_row_new (subject, &members[i]));
    }
  sw_expander_tell_name (expander);
  if (more == NULL)
    return NULL;
  sw_expander_tell_name (ADW_EXPANDER_ROW (more));
  adw_expander_row_add_row (expander, more);
  return ADW_EXPANDER_ROW (more);
}

/* Following */

static void
set_selection (SwSettingsPage *self, SwSelection *selection)
{
  SwDocument *document = selection != NULL ? sw_selection_get_document (selection) : NULL;

  if (self->selection == selection)
    return;
  if (self->selection != NULL)
    sw_seen_disconnect (GTK_WIDGET (self), sw_selection_get_document (self->selection));
  g_set_object (&self->selection, selection);
  for (gsize i = 0; i < G_N_ELEMENTS (records); i++)
    sw_subject_set_document (self->subjects[i], document);
  sw_yarn_weight_row_set_document (self->weight, document);
  if (document != NULL)
    sw_seen_connect (GTK_WIDGET (self), document, "changed", show);
  show (self);
}

static void
set_live (SwSettingsPage *self, SwLive *live)
{
  if (self->live == live)
    return;
  if (self->live != NULL)
    sw_seen_disconnect (GTK_WIDGET (self), self->live);
  g_set_object (&self->live, live);
  if (live != NULL)
    sw_seen_connect (GTK_WIDGET (self), live, "told", show);
}

static void
set_inches (SwSettingsPage *self, gboolean inches)
{
  self->inches = inches;
  for (gsize i = 0; i < G_N_ELEMENTS (records); i++)
    g_object_set (self->subjects[i], "inches", inches, NULL);
  show (self);
}

/* Lifecycle */

static void
sw_settings_page_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwSettingsPage *self = SW_SETTINGS_PAGE (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      g_value_set_object (value, self->live);
      break;
    case PROP_SELECTION:
      g_value_set_object (value, self->selection);
      break;
    case PROP_INCHES:
      g_value_set_boolean (value, self->inches);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_settings_page_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwSettingsPage *self = SW_SETTINGS_PAGE (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      set_live (self, g_value_get_object (value));
      break;
    case PROP_SELECTION:
      set_selection (self, g_value_get_object (value));
      break;
    case PROP_INCHES:
      set_inches (self, g_value_get_boolean (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_settings_page_dispose (GObject *object)
{
  SwSettingsPage *self = SW_SETTINGS_PAGE (object);

  if (self->subjects[0] != NULL)
    {
      set_selection (self, NULL);
      set_live (self, NULL);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (records); i++)
    g_clear_object (&self->subjects[i]);

  G_OBJECT_CLASS (sw_settings_page_parent_class)->dispose (object);
}

static void
sw_settings_page_class_init (SwSettingsPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_settings_page_get_property;
  object_class->set_property = sw_settings_page_set_property;
  object_class->dispose = sw_settings_page_dispose;

  props[PROP_LIVE] = g_param_spec_object ("live", NULL, NULL, SW_TYPE_LIVE, flags);
  props[PROP_SELECTION] = g_param_spec_object ("selection", NULL, NULL, SW_TYPE_SELECTION, flags);
  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_type_ensure (SW_TYPE_YARN_WEIGHT_ROW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-settings-page.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSettingsPage, colourway);
  gtk_widget_class_bind_template_child (widget_class, SwSettingsPage, notes);
  gtk_widget_class_bind_template_child (widget_class, SwSettingsPage, yarn);
  gtk_widget_class_bind_template_child (widget_class, SwSettingsPage, reel);
  gtk_widget_class_bind_template_child (widget_class, SwSettingsPage, lay);
  gtk_widget_class_bind_template_child (widget_class, SwSettingsPage, bath);
  gtk_widget_class_bind_template_child (widget_class, SwSettingsPage, weight);
  gtk_widget_class_bind_template_child (widget_class, SwSettingsPage, outside);
  gtk_widget_class_bind_template_child (widget_class, SwSettingsPage, outside_label);
  gtk_widget_class_bind_template_callback (widget_class, select_outside_cb);
}

static void
sw_settings_page_init (SwSettingsPage *self)
{
  AdwExpanderRow *expanders[G_N_ELEMENTS (records)], *more;

  gtk_widget_init_template (GTK_WIDGET (self));
  for (gsize i = 0; i < G_N_ELEMENTS (records); i++)
    self->subjects[i] = sw_subject_new (NULL, records[i]);

  adw_preferences_group_add (self->colourway, sw_field_row_new (self->subjects[0], sw_record_find_member (SW_RECORD_SKETCH, "title")));
  adw_preferences_group_add (self->notes, sw_field_row_new (self->subjects[0], sw_record_find_member (SW_RECORD_SKETCH, "notes")));
  expanders[1] = self->yarn;
  expanders[2] = self->reel;
  expanders[3] = self->lay;
  expanders[4] = self->bath;
  for (gsize i = 1; i < G_N_ELEMENTS (records); i++)
    {
      more = add_fields (expanders[i], self->subjects[i]);
      /* Chance is what the wander of the wraps is drawn from. */
      if (records[i] == SW_RECORD_REEL)
        adw_expander_row_add_row (more, sw_field_row_new (self->subjects[0], sw_record_find_member (SW_RECORD_SKETCH, "seed")));
    }
  adw_expander_row_add_row (self->lay, self->outside);
}
