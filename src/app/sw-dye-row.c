/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sw-dye-row.h"

#include "app/sw-swatch.h"
#include "app/sw-units.h"

#include <glib/gi18n-lib.h>

struct _SwDyeRow
{
  GtkWidget parent_instance;

  SwEntry *entry;
  gulong revision_id;

  SwSwatch *swatch;
  GtkLabel *name;
  GtkLabel *detail;
};

G_DEFINE_FINAL_TYPE (SwDyeRow, sw_dye_row, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_ENTRY,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static void
show (SwDyeRow *self)
{
  const SwDye *dye = self->entry != NULL ? sw_entry_get_dye (self->entry) : NULL;
  g_autofree char *strength = NULL;
  g_autofree char *half_time = NULL;
  g_autofree char *detail = NULL;

  sw_swatch_set_sample (self->swatch, dye != NULL ? &dye->sample : NULL);
  if (dye == NULL)
    return;

  strength = sw_units_format (SW_QUANTITY_PERCENT, dye->stock_percent, SW_SYSTEM_METRIC);
  half_time = sw_units_format (SW_QUANTITY_TIME, dye->half_time_min, SW_SYSTEM_METRIC);
  /* Translators: of a dye: strength of its stock, and the time in which half of it goes to the fibre: "1 % stock, half in 3 min" */
  detail = g_strdup_printf (_ ("%s stock, half in %s"), strength, half_time);
  /* Translators: stands for a dye that the dyer has not named */
  gtk_label_set_text (self->name, *dye->name != '\0' ? dye->name : _ ("Dye without a name"));
  gtk_label_set_text (self->detail, detail);
}

static void
set_entry (SwDyeRow *self, SwEntry *entry)
{
  if (self->entry == entry)
    return;
  if (self->entry != NULL)
    g_clear_signal_handler (&self->revision_id, self->entry);
  g_set_object (&self->entry, entry);
  if (entry != NULL)
    self->revision_id = g_signal_connect_swapped (entry, "notify::revision", G_CALLBACK (show), self);
  show (self);
}

static void
sw_dye_row_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  switch (prop_id)
    {
    case PROP_ENTRY:
      g_value_set_object (value, SW_DYE_ROW (object)->entry);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_dye_row_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  switch (prop_id)
    {
    case PROP_ENTRY:
      set_entry (SW_DYE_ROW (object), g_value_get_object (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_dye_row_dispose (GObject *object)
{
  SwDyeRow *self = SW_DYE_ROW (object);
  GtkWidget *child;

  if (self->entry != NULL)
    g_clear_signal_handler (&self->revision_id, self->entry);
  g_clear_object (&self->entry);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (sw_dye_row_parent_class)->dispose (object);
}

static void
sw_dye_row_class_init (SwDyeRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = sw_dye_row_get_property;
  object_class->set_property = sw_dye_row_set_property;
  object_class->dispose = sw_dye_row_dispose;

  props[PROP_ENTRY] = g_param_spec_object ("entry", NULL, NULL, SW_TYPE_ENTRY, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_type_ensure (SW_TYPE_SWATCH);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-dye-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SwDyeRow, swatch);
  gtk_widget_class_bind_template_child (widget_class, SwDyeRow, name);
  gtk_widget_class_bind_template_child (widget_class, SwDyeRow, detail);
}

static void
sw_dye_row_init (SwDyeRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
