/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/cloth/sw-cloth-panel.h"

#include "app/desk/sw-cloth-gauges.h"
#include "app/desk/sw-cloth-words.h"
#include "app/parts/sw-setting-row.h"
#include "app/cloth/sw-stripe-list.h"

#include <glib/gi18n-lib.h>

struct _SwClothPanel
{
  AdwBin parent_instance;

  SwLive *live;
  gulong told_id;
  gulong changed_id;
  gboolean inches;
  gboolean showing; /* the rows are being set from the sketch */

  GtkLabel *verdict;
  GtkLabel *drift;
  GtkLabel *problem;
  SwStripeList *stripes;
  AdwComboRow *weight;
  AdwComboRow *state;
  AdwComboRow *fabric;
  AdwComboRow *worked;
  SwSettingRow *rows_row;
  SwSettingRow *stitch_length_row;
  GtkWidget *turn_row;
  GtkWidget *skein_row;
  GtkWidget *alternate_rows_row;
  GtkWidget *alternate_shift_row;
};

G_DEFINE_FINAL_TYPE (SwClothPanel, sw_cloth_panel, ADW_TYPE_BIN)

enum
{
  PROP_0,
  PROP_LIVE,
  PROP_INCHES,
  PROP_DOCUMENT,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static SwDocument *
document_of (SwClothPanel *self)
{
  return self->live != NULL ? sw_live_get_document (self->live) : NULL;
}

static void
show_words (SwClothPanel *self, SwForecast *forecast)
{
  g_autofree char *sentence = sw_pooling_sentence (&forecast->pooling);
  g_autofree char *drift = sw_cloth_drift (&forecast->pooling);

  gtk_label_set_text (self->verdict, sentence);
  gtk_label_set_text (self->drift, drift);
  gtk_widget_set_visible (GTK_WIDGET (self->drift), *drift != '\0');
}

static void
show_forecast (SwClothPanel *self)
{
  SwForecast *forecast = self->live != NULL ? sw_live_get_forecast (self->live) : NULL;

  if (forecast == NULL || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  show_words (self, forecast);
  sw_stripe_list_show (self->stripes, forecast, self->inches ? SW_SYSTEM_US : SW_SYSTEM_METRIC);
  g_object_set (self->rows_row, "worked-out", 10.0 / forecast->row_height_cm, NULL);
  g_object_set (self->stitch_length_row, "worked-out", forecast->stitch_length_cm, NULL);
}

/* It does not follow what nobody sees. */
static void
sw_cloth_panel_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (sw_cloth_panel_parent_class)->map (widget);
  show_forecast (SW_CLOTH_PANEL (widget));
}

static void
show_problem (SwClothPanel *self)
{
  const char *problem = sw_live_get_problem (self->live);

  gtk_label_set_text (self->problem, problem != NULL ? problem : "");
  gtk_widget_set_visible (GTK_WIDGET (self->problem), problem != NULL);
}

static void
show_settings (SwClothPanel *self)
{
  const SwSketch *sketch = sw_document_get_sketch (document_of (self));
  const int class = sw_gauge_class_of (sketch->cloth.stitches_per_10cm);

  self->showing = TRUE;
  adw_combo_row_set_selected (self->weight, class >= 0 ? (guint) class : GTK_INVALID_LIST_POSITION);
  adw_combo_row_set_selected (self->state, sketch->cloth.state);
  adw_combo_row_set_selected (self->fabric, sketch->cloth.fabric);
  adw_combo_row_set_selected (self->worked, sketch->cloth.worked);
  gtk_widget_set_sensitive (self->turn_row, sketch->cloth.worked == SW_WORKED_FLAT);
  gtk_widget_set_sensitive (self->skein_row, sketch->lay.skeins > 1);
  gtk_widget_set_sensitive (self->alternate_rows_row, sketch->cloth.alternate_skeins > 1);
  gtk_widget_set_sensitive (self->alternate_shift_row, sketch->cloth.alternate_skeins > 1);
  self->showing = FALSE;
}

static void
changed_cb (SwClothPanel *self, guint what)
{
  if (what & (SW_CHANGED (SW_RECORD_CLOTH) | SW_CHANGED (SW_RECORD_LAY)))
    show_settings (self);
}

/* Takes @edit over; an edit that is refused leaves the rows as the sketch has them. */
static void
edit (SwClothPanel *self, SwEdit *change, const char *name)
{
  g_autoptr (GError) error = NULL;

  if (!sw_document_edit (document_of (self), change, name, &error))
    {
      gtk_widget_error_bell (GTK_WIDGET (self));
      show_settings (self);
    }
}

static void
choose (SwClothPanel *self, AdwComboRow *row, const char *member, const char *name)
{
  SwValue value;

  if (self->showing || self->live == NULL || adw_combo_row_get_selected (row) == GTK_INVALID_LIST_POSITION)
    return;
  value = sw_value_choice ((int) adw_combo_row_get_selected (row));
  edit (self, sw_edit_set (SW_RECORD_CLOTH, 0, member, &value), name);
}

static void
weight_cb (SwClothPanel *self)
{
  const guint selected = adw_combo_row_get_selected (self->weight);

  if (self->showing || self->live == NULL || selected == GTK_INVALID_LIST_POSITION)
    return;
  /* Translators: a step to undo: the gauge usual for a weight of yarn was chosen */
  edit (self, sw_gauge_class_edit ((int) selected), _ ("Choose Yarn Weight"));
}

static void
state_cb (SwClothPanel *self)
{
  /* Translators: a step to undo: relaxed dry or wet */
  choose (self, self->state, "state", _ ("Change State of Cloth"));
}

static void
fabric_cb (SwClothPanel *self)
{
  /* Translators: a step to undo */
  choose (self, self->fabric, "fabric", _ ("Change Fabric"));
}

static void
worked_cb (SwClothPanel *self)
{
  /* Translators: a step to undo: flat or in the round */
  choose (self, self->worked, "worked", _ ("Change Way of Working"));
}

static void
set_live (SwClothPanel *self, SwLive *live)
{
  if (self->live == live)
    return;
  if (self->live != NULL)
    {
      g_signal_handlers_disconnect_by_func (self->live, show_problem, self);
      g_clear_signal_handler (&self->told_id, self->live);
      g_clear_signal_handler (&self->changed_id, document_of (self));
    }
  g_set_object (&self->live, live);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_DOCUMENT]);
  if (live == NULL)
    return;
  self->told_id = g_signal_connect_swapped (live, "told", G_CALLBACK (show_forecast), self);
  self->changed_id = g_signal_connect_swapped (document_of (self), "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (live, "notify::problem", G_CALLBACK (show_problem), self);
  show_settings (self);
  show_forecast (self);
  show_problem (self);
}

static void
sw_cloth_panel_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwClothPanel *self = SW_CLOTH_PANEL (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      g_value_set_object (value, self->live);
      break;
    case PROP_INCHES:
      g_value_set_boolean (value, self->inches);
      break;
    case PROP_DOCUMENT:
      g_value_set_object (value, document_of (self));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_cloth_panel_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwClothPanel *self = SW_CLOTH_PANEL (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      set_live (self, g_value_get_object (value));
      break;
    case PROP_INCHES:
      self->inches = g_value_get_boolean (value);
      show_forecast (self);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_cloth_panel_dispose (GObject *object)
{
  set_live (SW_CLOTH_PANEL (object), NULL);

  G_OBJECT_CLASS (sw_cloth_panel_parent_class)->dispose (object);
}

static void
sw_cloth_panel_class_init (SwClothPanelClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_cloth_panel_get_property;
  object_class->set_property = sw_cloth_panel_set_property;
  object_class->dispose = sw_cloth_panel_dispose;
  widget_class->map = sw_cloth_panel_map;

  props[PROP_LIVE] = g_param_spec_object ("live", NULL, NULL, SW_TYPE_LIVE, flags);
  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, flags);
  props[PROP_DOCUMENT] = g_param_spec_object ("document", NULL, NULL, SW_TYPE_DOCUMENT, G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_type_ensure (SW_TYPE_SETTING_ROW);
  g_type_ensure (SW_TYPE_STRIPE_LIST);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-cloth-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, SwClothPanel, verdict);
  gtk_widget_class_bind_template_child (widget_class, SwClothPanel, drift);
  gtk_widget_class_bind_template_child (widget_class, SwClothPanel, problem);
  gtk_widget_class_bind_template_child (widget_class, SwClothPanel, stripes);
  gtk_widget_class_bind_template_child (widget_class, SwClothPanel, weight);
  gtk_widget_class_bind_template_child (widget_class, SwClothPanel, state);
  gtk_widget_class_bind_template_child (widget_class, SwClothPanel, fabric);
  gtk_widget_class_bind_template_child (widget_class, SwClothPanel, worked);
  gtk_widget_class_bind_template_child (widget_class, SwClothPanel, rows_row);
  gtk_widget_class_bind_template_child (widget_class, SwClothPanel, stitch_length_row);
  gtk_widget_class_bind_template_child (widget_class, SwClothPanel, turn_row);
  gtk_widget_class_bind_template_child (widget_class, SwClothPanel, skein_row);
  gtk_widget_class_bind_template_child (widget_class, SwClothPanel, alternate_rows_row);
  gtk_widget_class_bind_template_child (widget_class, SwClothPanel, alternate_shift_row);
  gtk_widget_class_bind_template_callback (widget_class, weight_cb);
  gtk_widget_class_bind_template_callback (widget_class, state_cb);
  gtk_widget_class_bind_template_callback (widget_class, fabric_cb);
  gtk_widget_class_bind_template_callback (widget_class, worked_cb);
}

static void
fill_weights (AdwComboRow *row)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  for (gsize i = 0; i < SW_N_GAUGE_CLASSES; i++)
    gtk_string_list_append (list, _ (sw_gauge_classes[i].label));
  adw_combo_row_set_model (row, G_LIST_MODEL (list));
}

static void
fill_choices (AdwComboRow *row, const char *name)
{
  const SwMember *member = sw_record_find_member (SW_RECORD_CLOTH, name);
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  for (gsize i = 0; member->choice_labels[i] != NULL; i++)
    gtk_string_list_append (list, _ (member->choice_labels[i]));
  adw_combo_row_set_model (row, G_LIST_MODEL (list));
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), _ (member->label));
}

static void
sw_cloth_panel_init (SwClothPanel *self)
{
  self->showing = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_weights (self->weight);
  fill_choices (self->state, "state");
  fill_choices (self->fabric, "fabric");
  fill_choices (self->worked, "worked");
  self->showing = FALSE;
}
