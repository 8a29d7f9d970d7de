/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-pan-tools.h"

#include "app/desk/sw-pan-words.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

struct _SwPanTools
{
  GtkWidget parent_instance;

  SwSelection *selection;
  GtkWidget *bar;
  AdwButtonContent *face;
  GMenu *align_menu;
};

G_DEFINE_FINAL_TYPE (SwPanTools, sw_pan_tools, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_SELECTION,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static void
show_face (SwPanTools *self)
{
  adw_button_content_set_label (self->face, sw_selection_get_second_face (self->selection) ? _ ("Second Face") : _ ("First Face"));
}

static void
set_selection (SwPanTools *self, SwSelection *selection)
{
  if (self->selection == selection)
    return;
  if (self->selection != NULL)
    g_signal_handlers_disconnect_by_func (self->selection, show_face, self);
  g_set_object (&self->selection, selection);
  if (selection == NULL)
    return;
  g_signal_connect_swapped (selection, "notify::second-face", G_CALLBACK (show_face), self);
  show_face (self);
}

static void
sw_pan_tools_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  switch (prop_id)
    {
    case PROP_SELECTION:
      g_value_set_object (value, SW_PAN_TOOLS (object)->selection);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_pan_tools_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  switch (prop_id)
    {
    case PROP_SELECTION:
      set_selection (SW_PAN_TOOLS (object), g_value_get_object (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_pan_tools_dispose (GObject *object)
{
  SwPanTools *self = SW_PAN_TOOLS (object);

  set_selection (self, NULL);
  g_clear_pointer (&self->bar, gtk_widget_unparent);

  G_OBJECT_CLASS (sw_pan_tools_parent_class)->dispose (object);
}

static void
sw_pan_tools_class_init (SwPanToolsClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = sw_pan_tools_get_property;
  object_class->set_property = sw_pan_tools_set_property;
  object_class->dispose = sw_pan_tools_dispose;

  props[PROP_SELECTION] = g_param_spec_object ("selection", NULL, NULL, SW_TYPE_SELECTION, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-pan-tools.ui");
  gtk_widget_class_bind_template_child (widget_class, SwPanTools, bar);
  gtk_widget_class_bind_template_child (widget_class, SwPanTools, face);
  gtk_widget_class_bind_template_child (widget_class, SwPanTools, align_menu);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_TOOLBAR);
}

static void
sw_pan_tools_init (SwPanTools *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  sw_pan_fill_align_menu (self->align_menu);
}
