/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-properties.h"

#include "app/pan/sw-dye-page.h"
#include "app/pan/sw-settings-page.h"
#include "app/pan/sw-step-page.h"

struct _SwProperties
{
  AdwBin parent_instance;

  SwLive *live;
  SwSelection *selection;
  gboolean inches;
  guint dye; /* shown until steps are selected; 0 for none */

  GtkStack *stack;
  SwDyePage *dye_page;
};

G_DEFINE_FINAL_TYPE (SwProperties, sw_properties, ADW_TYPE_BIN)

enum
{
  PROP_0,
  PROP_LIVE,
  PROP_SELECTION,
  PROP_INCHES,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];
static guint done_signal;

static void
show (SwProperties *self)
{
  gsize n = 0;

  if (self->selection != NULL)
    sw_selection_get_steps (self->selection, &n);
  g_object_set (self->dye_page, "dye", self->dye, NULL);
  gtk_stack_set_visible_child_name (self->stack, self->dye != 0 ? "dye" : n > 0 ? "steps"
                                                                                : "settings");
}

static void
selection_changed_cb (SwProperties *self)
{
  if (sw_selection_get_lead (self->selection) != 0)
    self->dye = 0;
  show (self);
}

/* A dye that is gone is not looked at any more. */
static void
document_changed_cb (SwProperties *self)
{
  if (self->dye == 0 || sw_sketch_find_dye (sw_document_get_sketch (sw_selection_get_document (self->selection)), self->dye) != NULL)
    return;
  self->dye = 0;
  show (self);
}

/* Who goes on to another pot while one is looked at wants to see that one. */
static void
dye_changed_cb (SwProperties *self)
{
  if (self->dye != 0)
    self->dye = sw_selection_get_dye (self->selection);
  show (self);
}

static void
done_cb (SwProperties *self)
{
  sw_properties_show_dye (self, 0);
  g_signal_emit (self, done_signal, 0);
}

static void
set_selection (SwProperties *self, SwSelection *selection)
{
  if (self->selection == selection)
    return;
  if (self->selection != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->selection, self);
      g_signal_handlers_disconnect_by_data (sw_selection_get_document (self->selection), self);
    }
  g_set_object (&self->selection, selection);
  self->dye = 0;
  if (selection == NULL)
    return;
  g_signal_connect_swapped (selection, "changed", G_CALLBACK (selection_changed_cb), self);
  g_signal_connect_swapped (selection, "notify::dye", G_CALLBACK (dye_changed_cb), self);
  g_signal_connect_swapped (sw_selection_get_document (selection), "changed", G_CALLBACK (document_changed_cb), self);
  show (self);
}

static void
sw_properties_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwProperties *self = SW_PROPERTIES (object);

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
sw_properties_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwProperties *self = SW_PROPERTIES (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      g_set_object (&self->live, g_value_get_object (value));
      break;
    case PROP_SELECTION:
      set_selection (self, g_value_get_object (value));
      break;
    case PROP_INCHES:
      self->inches = g_value_get_boolean (value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_properties_dispose (GObject *object)
{
  SwProperties *self = SW_PROPERTIES (object);

  set_selection (self, NULL);
  g_clear_object (&self->live);

  G_OBJECT_CLASS (sw_properties_parent_class)->dispose (object);
}

static void
sw_properties_class_init (SwPropertiesClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_properties_get_property;
  object_class->set_property = sw_properties_set_property;
  object_class->dispose = sw_properties_dispose;

  props[PROP_LIVE] = g_param_spec_object ("live", NULL, NULL, SW_TYPE_LIVE, flags);
  props[PROP_SELECTION] = g_param_spec_object ("selection", NULL, NULL, SW_TYPE_SELECTION, flags);
  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
  done_signal = g_signal_new ("done", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);

  g_type_ensure (SW_TYPE_DYE_PAGE);
  g_type_ensure (SW_TYPE_SETTINGS_PAGE);
  g_type_ensure (SW_TYPE_STEP_PAGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-properties.ui");
  gtk_widget_class_bind_template_child (widget_class, SwProperties, stack);
  gtk_widget_class_bind_template_child (widget_class, SwProperties, dye_page);
  gtk_widget_class_bind_template_callback (widget_class, done_cb);
}

static void
sw_properties_init (SwProperties *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
sw_properties_show_dye (SwProperties *self, guint dye)
{
  g_return_if_fail (SW_IS_PROPERTIES (self));

  self->dye = dye;
  show (self);
  if (dye != 0)
    gtk_widget_grab_focus (GTK_WIDGET (self->dye_page));
}
