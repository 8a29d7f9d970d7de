/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/parts/sw-setting-row.h"

#include "app/desk/sw-units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Gauge is counted over 10 cm, or over 4 in. */
#define PER_4_IN 1.016

struct _SwSettingRow
{
  AdwActionRow parent_instance;

  SwDocument *document;
  gulong changed_id;
  gboolean inches;
  const SwMember *member;
  char *edit_name;
  double worked_out;
  gboolean showing; /* the controls are being set from the sketch */

  GtkSpinButton *spin;
  GtkWidget *measured; /* switch; NULL if the member is always a number */
};

G_DEFINE_FINAL_TYPE (SwSettingRow, sw_setting_row, ADW_TYPE_ACTION_ROW)

enum
{
  PROP_0,
  PROP_DOCUMENT,
  PROP_INCHES,
  PROP_MEMBER,
  PROP_EDIT_NAME,
  PROP_STEP,
  PROP_WORKED_OUT,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static SwSystem
system_of (SwSettingRow *self)
{
  return self->inches ? SW_SYSTEM_US : SW_SYSTEM_METRIC;
}

static gboolean
is_gauge (SwSettingRow *self)
{
  return g_str_has_suffix (self->member->name, "_per_10cm");
}

/* Of a number that a person reads over the one that the sketch holds. */
static double
shown_factor (SwSettingRow *self)
{
  return is_gauge (self) && self->inches ? PER_4_IN : 1;
}

static char *
format (SwSettingRow *self, double value)
{
  return sw_units_format (sw_quantity_of_unit (self->member->unit), value * shown_factor (self), system_of (self));
}

static double
value_in_sketch (SwSettingRow *self)
{
  gconstpointer record = sw_sketch_record (sw_document_get_sketch (self->document), SW_RECORD_CLOTH, 0);
  SwValue value;

  sw_member_get (self->member, record, &value);
  return value.kind == SW_KIND_WHOLE ? (double) value.as.whole : value.as.number;
}

/* What is counted, or where the number comes from. */
static void
show_subtitle (SwSettingRow *self, gboolean measured)
{
  g_autofree char *number = NULL, *text = NULL;

  if (!measured && self->worked_out > 0)
    {
      number = format (self, self->worked_out);
      /* Translators: a number that follows from the gauge, where none was measured */
      text = g_strdup_printf (_ ("Worked out: %s"), number);
    }
  else if (is_gauge (self))
    text = g_strdup (self->inches ? _ ("to 4 inches") : _ ("to 10 cm"));
  adw_action_row_set_subtitle (ADW_ACTION_ROW (self), text != NULL ? text : "");
}

static void
show (SwSettingRow *self)
{
  double value;
  gboolean measured;

  if (self->document == NULL)
    return;
  value = value_in_sketch (self);
  measured = self->measured == NULL || value > 0;
  self->showing = TRUE;
  gtk_widget_set_visible (GTK_WIDGET (self->spin), measured);
  if (self->measured != NULL)
    gtk_switch_set_active (GTK_SWITCH (self->measured), measured);
  if (measured)
    {
      gtk_spin_button_set_value (self->spin, value);
      gtk_spin_button_update (self->spin);
    }
  show_subtitle (self, measured);
  self->showing = FALSE;
}

static void
set_value (SwSettingRow *self, double number)
{
  const SwValue value = self->member->kind == SW_KIND_WHOLE ? sw_value_whole (lround (number)) : sw_value_number (number);
  g_autofree char *series = g_strconcat ("cloth ", self->member->name, NULL);
  g_autoptr (GError) error = NULL;

  if (!sw_document_edit_series (self->document, sw_edit_set (SW_RECORD_CLOTH, 0, self->member->name, &value), self->edit_name, series, &error))
    {
      gtk_widget_error_bell (GTK_WIDGET (self));
      adw_action_row_set_subtitle (ADW_ACTION_ROW (self), error->message);
    }
}

static void
value_changed_cb (SwSettingRow *self)
{
  const double value = gtk_spin_button_get_value (self->spin);

  if (self->showing || self->document == NULL || fabs (value - value_in_sketch (self)) < 1e-9)
    return;
  set_value (self, value);
}

static void
measured_cb (SwSettingRow *self)
{
  const gboolean measured = gtk_switch_get_active (GTK_SWITCH (self->measured));

  if (self->showing || self->document == NULL)
    return;
  /* A measured number starts from the one that was worked out, to as many figures as can be measured. */
  set_value (self, measured ? MAX (round (self->worked_out * 100) / 100, self->member->above_zero) : 0);
}

static int
input_cb (SwSettingRow *self, double *value)
{
  const double factor = shown_factor (self);
  g_autoptr (GError) error = NULL;

  if (!sw_units_parse (sw_quantity_of_unit (self->member->unit), gtk_editable_get_text (GTK_EDITABLE (self->spin)), system_of (self),
                       gtk_spin_button_get_value (self->spin) * factor, value, &error))
    return GTK_INPUT_ERROR;
  *value /= factor;
  return TRUE;
}

static gboolean
output_cb (SwSettingRow *self)
{
  g_autofree char *text = format (self, gtk_spin_button_get_value (self->spin));

  if (!g_str_equal (text, gtk_editable_get_text (GTK_EDITABLE (self->spin))))
    gtk_editable_set_text (GTK_EDITABLE (self->spin), text);
  return TRUE;
}

static void
changed_cb (SwSettingRow *self, guint what)
{
  if (what & SW_CHANGED (SW_RECORD_CLOTH))
    show (self);
}

static void
set_document (SwSettingRow *self, SwDocument *document)
{
  if (self->document == document)
    return;
  if (self->document != NULL)
    g_clear_signal_handler (&self->changed_id, self->document);
  g_set_object (&self->document, document);
  if (document == NULL)
    return;
  self->changed_id = g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), self);
  show (self);
}

/* A wheel over a long pane scrolls the pane; it does not turn what is beneath the pointer. */
static void
leave_wheel_alone (GtkWidget *spin)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (spin);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_EVENT_CONTROLLER_SCROLL (controller))
        gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_NONE);
    }
}

static void
add_switch (SwSettingRow *self)
{
  self->measured = gtk_switch_new ();
  gtk_widget_set_valign (self->measured, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (self->measured, _ ("Give a measured number"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->measured), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Give a measured number"), -1);
  g_signal_connect_swapped (self->measured, "notify::active", G_CALLBACK (measured_cb), self);
  adw_action_row_add_suffix (ADW_ACTION_ROW (self), self->measured);
}

static void
set_member (SwSettingRow *self, const char *name)
{
  const SwMember *member = sw_record_find_member (SW_RECORD_CLOTH, name);
  GtkAdjustment *adjustment = gtk_spin_button_get_adjustment (self->spin);

  g_return_if_fail (member != NULL && (member->kind == SW_KIND_NUMBER || member->kind == SW_KIND_WHOLE));
  self->member = member;
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self), _ (member->label));
  self->showing = TRUE;
  gtk_adjustment_set_lower (adjustment, member->above_zero > 0 ? member->above_zero : member->min);
  gtk_adjustment_set_upper (adjustment, member->max);
  self->showing = FALSE;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->spin), GTK_ACCESSIBLE_PROPERTY_LABEL, _ (member->label), -1);
  if (member->above_zero > 0)
    add_switch (self);
}

static void
sw_setting_row_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwSettingRow *self = SW_SETTING_ROW (object);

  switch (prop_id)
    {
    case PROP_DOCUMENT:
      g_value_set_object (value, self->document);
      break;
    case PROP_INCHES:
      g_value_set_boolean (value, self->inches);
      break;
    case PROP_EDIT_NAME:
      g_value_set_string (value, self->edit_name);
      break;
    case PROP_WORKED_OUT:
      g_value_set_double (value, self->worked_out);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_setting_row_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwSettingRow *self = SW_SETTING_ROW (object);

  switch (prop_id)
    {
    case PROP_DOCUMENT:
      set_document (self, g_value_get_object (value));
      break;
    case PROP_INCHES:
      self->inches = g_value_get_boolean (value);
      show (self);
      break;
    case PROP_MEMBER:
      set_member (self, g_value_get_string (value));
      break;
    case PROP_EDIT_NAME:
      g_free (self->edit_name);
      self->edit_name = g_value_dup_string (value);
      break;
    case PROP_STEP:
      gtk_spin_button_set_increments (self->spin, g_value_get_double (value), 10 * g_value_get_double (value));
      break;
    case PROP_WORKED_OUT:
      self->worked_out = g_value_get_double (value);
      show (self);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_setting_row_dispose (GObject *object)
{
  set_document (SW_SETTING_ROW (object), NULL);

  G_OBJECT_CLASS (sw_setting_row_parent_class)->dispose (object);
}

static void
sw_setting_row_finalize (GObject *object)
{
  g_free (SW_SETTING_ROW (object)->edit_name);

  G_OBJECT_CLASS (sw_setting_row_parent_class)->finalize (object);
}

static void
sw_setting_row_class_init (SwSettingRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;
  const GParamFlags once = G_PARAM_WRITABLE | G_PARAM_CONSTRUCT_ONLY | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_setting_row_get_property;
  object_class->set_property = sw_setting_row_set_property;
  object_class->dispose = sw_setting_row_dispose;
  object_class->finalize = sw_setting_row_finalize;

  props[PROP_DOCUMENT] = g_param_spec_object ("document", NULL, NULL, SW_TYPE_DOCUMENT, flags);
  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, flags);
  props[PROP_MEMBER] = g_param_spec_string ("member", NULL, NULL, NULL, once);
  props[PROP_EDIT_NAME] = g_param_spec_string ("edit-name", NULL, NULL, NULL, flags);
  props[PROP_STEP] = g_param_spec_double ("step", NULL, NULL, 0.001, 1000, 1, G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_WORKED_OUT] = g_param_spec_double ("worked-out", NULL, NULL, 0, G_MAXDOUBLE, 0, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
sw_setting_row_init (SwSettingRow *self)
{
  self->spin = GTK_SPIN_BUTTON (gtk_spin_button_new (gtk_adjustment_new (0, 0, 1, 1, 10, 0), 0, 3));
  gtk_editable_set_width_chars (GTK_EDITABLE (self->spin), 7);
  gtk_widget_set_valign (GTK_WIDGET (self->spin), GTK_ALIGN_CENTER);
  leave_wheel_alone (GTK_WIDGET (self->spin));
  g_signal_connect_swapped (self->spin, "input", G_CALLBACK (input_cb), self);
  g_signal_connect_swapped (self->spin, "output", G_CALLBACK (output_cb), self);
  g_signal_connect_swapped (self->spin, "value-changed", G_CALLBACK (value_changed_cb), self);
  adw_action_row_add_suffix (ADW_ACTION_ROW (self), GTK_WIDGET (self->spin));
}
