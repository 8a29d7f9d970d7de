/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-dye-row.h"

#include "app/desk/sw-document.h"
#include "app/desk/sw-spectrum-file.h"
#include "app/parts/sw-swatch.h"
#include "app/parts/sw-toast.h"
#include "app/desk/sw-units.h"

#include <glib/gi18n-lib.h>

struct _SwDyeRow
{
  GtkWidget parent_instance;

  SwEntry *entry;
  gulong revision_id;

  gboolean current;
  GCancellable *loading;

  SwSwatch *swatch;
  GtkLabel *name;
  GtkLabel *detail;
  GtkWidget *mark;
  GtkActionable *edit;
};

G_DEFINE_FINAL_TYPE (SwDyeRow, sw_dye_row, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_ENTRY,
  PROP_CURRENT,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

/* A list's own row is what the keyboard and a screen reader come to. */
static void
tell_accessible (SwDyeRow *self, const char *name, const char *detail)
{
  GtkWidget *row = gtk_widget_get_parent (GTK_WIDGET (self));
  g_autofree char *label = NULL;

  if (row == NULL)
    return;
  if (self->current)
    /* Translators: a dye pot read out: name, and stock and half-time */
    label = g_strdup_printf (_ ("%1$s, %2$s, poured next"), name, detail);
  else
    /* Translators: a dye pot read out: name, and stock and half-time */
    label = g_strdup_printf (_ ("%1$s, %2$s"), name, detail);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static void
show (SwDyeRow *self)
{
  const SwDye *dye = self->entry != NULL ? sw_entry_get_dye (self->entry) : NULL;
  const char *name;
  g_autofree char *strength = NULL;
  g_autofree char *half_time = NULL;
  g_autofree char *detail = NULL;

  sw_swatch_set_sample (self->swatch, dye != NULL ? &dye->sample : NULL);
  /* Hidden by opacity, so that rows do not shift. */
  gtk_widget_set_opacity (self->mark, self->current ? 1 : 0);
  if (dye == NULL)
    return;

  strength = sw_units_format (SW_QUANTITY_PERCENT, dye->stock_percent, SW_SYSTEM_METRIC);
  half_time = sw_units_format (SW_QUANTITY_TIME, dye->half_time_min, SW_SYSTEM_METRIC);
  /* Translators: of a dye: strength of its stock, and the time in which half of it goes to the fibre: "1 % stock, half in 3 min" */
  detail = g_strdup_printf (_ ("%s stock, half in %s"), strength, half_time);
  /* Translators: stands for a dye that the dyer has not named */
  name = *dye->name != '\0' ? dye->name : _ ("Dye without a name");
  gtk_label_set_text (self->name, name);
  gtk_label_set_text (self->detail, detail);
  tell_accessible (self, name, detail);
}

/* Spectra dropped on the pot */

static void
loaded_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SwDyeRow) self = user_data;
  g_autoptr (GError) error = NULL;
  SwDocument *document = self->entry != NULL ? sw_entry_get_document (self->entry) : NULL;
  gboolean done;
  SwSample sample;
  SwValue value;

  done = sw_spectrum_file_load_finish (result, &sample, &error);
  if (done && document != NULL)
    {
      value = sw_value_colour (&sample);
      done = sw_document_edit (document, sw_edit_set (SW_RECORD_DYE, sw_entry_get_id (self->entry), "sample", &value),
                               _ ("Give Pot a Measured Colour"), &error);
    }
  if (!done && !g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    sw_toast (GTK_WIDGET (self), error->message);
}

/* A drawing that is let go here was meant for the window. */
static gboolean
drop_cb (GtkDropTarget *target, const GValue *value, double x, double y, SwDyeRow *self)
{
  GFile *file = g_value_get_object (value);
  g_autofree char *uri = g_file_get_uri (file);

  if (g_str_has_suffix (uri, ".colourway"))
    return gtk_widget_activate_action (GTK_WIDGET (self), "win.open-uri", "s", uri);

  g_cancellable_cancel (self->loading);
  g_clear_object (&self->loading);
  self->loading = g_cancellable_new ();
  sw_spectrum_file_load_async (file, self->loading, loaded_cb, g_object_ref (self));
  return TRUE;
}

static void
set_entry (SwDyeRow *self, SwEntry *entry)
{
  if (self->entry == entry)
    return;
  if (self->entry != NULL)
    g_clear_signal_handler (&self->revision_id, self->entry);
  /* What is still being read was meant for the pot that was here. */
  g_cancellable_cancel (self->loading);
  g_set_object (&self->entry, entry);
  if (entry != NULL)
    gtk_actionable_set_action_target (self->edit, "u", sw_entry_get_id (entry));
  if (entry != NULL)
    self->revision_id = g_signal_connect_swapped (entry, "notify::revision", G_CALLBACK (show), self);
  show (self);
}

static void
sw_dye_row_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwDyeRow *self = SW_DYE_ROW (object);

  switch (prop_id)
    {
    case PROP_ENTRY:
      g_value_set_object (value, self->entry);
      break;
    case PROP_CURRENT:
      g_value_set_boolean (value, self->current);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_dye_row_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwDyeRow *self = SW_DYE_ROW (object);

  switch (prop_id)
    {
    case PROP_ENTRY:
      set_entry (self, g_value_get_object (value));
      break;
    case PROP_CURRENT:
      self->current = g_value_get_boolean (value);
      show (self);
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
  g_cancellable_cancel (self->loading);
  g_clear_object (&self->loading);
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
  props[PROP_CURRENT] = g_param_spec_boolean ("current", NULL, NULL, FALSE, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_type_ensure (SW_TYPE_SWATCH);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-dye-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SwDyeRow, swatch);
  gtk_widget_class_bind_template_child (widget_class, SwDyeRow, name);
  gtk_widget_class_bind_template_child (widget_class, SwDyeRow, detail);
  gtk_widget_class_bind_template_child (widget_class, SwDyeRow, mark);
  gtk_widget_class_bind_template_child (widget_class, SwDyeRow, edit);
}

static void
sw_dye_row_init (SwDyeRow *self)
{
  GtkDropTarget *drop = gtk_drop_target_new (G_TYPE_FILE, GDK_ACTION_COPY);

  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_actionable_set_action_target (self->edit, "u", 0);
  gtk_actionable_set_action_name (self->edit, "dyes.edit");
  g_signal_connect (drop, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drop));
}

SwEntry *
sw_dye_row_get_entry (SwDyeRow *self)
{
  g_return_val_if_fail (SW_IS_DYE_ROW (self), NULL);
  return self->entry;
}
