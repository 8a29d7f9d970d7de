/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/sw-step-row.h"

#include "app/sw-document.h"
#include "app/sw-step-words.h"
#include "app/sw-swatch.h"
#include "draw/sw-pan-geometry.h"

struct _SwStepRow
{
  GtkWidget parent_instance;

  SwEntry *entry;
  gulong revision_id;
  gboolean inches;

  GtkImage *icon;
  GtkLabel *title;
  GtkLabel *detail;
  GtkLabel *number;
  SwSwatch *swatch;
};

G_DEFINE_FINAL_TYPE (SwStepRow, sw_step_row, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_ENTRY,
  PROP_INCHES,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static void
show_words (SwStepRow *self, const SwSketch *sketch, const SwStep *step)
{
  SwSystem system = self->inches ? SW_SYSTEM_US : SW_SYSTEM_METRIC;
  g_autofree char *title = sw_step_title (sketch, step);
  g_autofree char *detail = sw_step_detail (sketch, step, system);
  g_autofree char *sentence = sw_step_sentence (sketch, step, system);

  gtk_label_set_text (self->title, title);
  gtk_label_set_text (self->detail, detail);
  gtk_widget_set_visible (GTK_WIDGET (self->detail), *detail != '\0');
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), sentence);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, sentence, -1);
}

/* A pour bears the number that the picture shows on it, and its dye's colour. */
static void
show_pour (SwStepRow *self, const SwSketch *sketch, const SwStep *step)
{
  gboolean pour = sw_step_is_pour (step);
  const SwDye *dye = pour ? sw_sketch_find_dye (sketch, step->dye) : NULL;
  g_autofree char *number = pour ? g_strdup_printf ("%u", sw_pan_pour_number (sketch, step->id)) : NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->number), pour);
  gtk_widget_set_visible (GTK_WIDGET (self->swatch), pour);
  gtk_label_set_text (self->number, pour ? number : "");
  sw_swatch_set_sample (self->swatch, dye != NULL ? &dye->sample : NULL);
}

static void
show (SwStepRow *self)
{
  const SwStep *step = self->entry != NULL ? sw_entry_get_step (self->entry) : NULL;
  const SwSketch *sketch;
  g_autofree char *icon = NULL;

  if (step == NULL)
    return;
  sketch = sw_document_get_sketch (sw_entry_get_document (self->entry));
  icon = g_strdup_printf ("strandwise-%s-symbolic", sw_step_kind_name (step->kind));
  gtk_image_set_from_icon_name (self->icon, icon);
  show_words (self, sketch, step);
  show_pour (self, sketch, step);
}

static void
set_entry (SwStepRow *self, SwEntry *entry)
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
sw_step_row_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwStepRow *self = SW_STEP_ROW (object);

  switch (prop_id)
    {
    case PROP_ENTRY:
      g_value_set_object (value, self->entry);
      break;
    case PROP_INCHES:
      g_value_set_boolean (value, self->inches);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_step_row_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwStepRow *self = SW_STEP_ROW (object);

  switch (prop_id)
    {
    case PROP_ENTRY:
      set_entry (self, g_value_get_object (value));
      break;
    case PROP_INCHES:
      self->inches = g_value_get_boolean (value);
      show (self);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_step_row_dispose (GObject *object)
{
  SwStepRow *self = SW_STEP_ROW (object);
  GtkWidget *child;

  if (self->entry != NULL)
    g_clear_signal_handler (&self->revision_id, self->entry);
  g_clear_object (&self->entry);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (sw_step_row_parent_class)->dispose (object);
}

static void
sw_step_row_class_init (SwStepRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_step_row_get_property;
  object_class->set_property = sw_step_row_set_property;
  object_class->dispose = sw_step_row_dispose;

  props[PROP_ENTRY] = g_param_spec_object ("entry", NULL, NULL, SW_TYPE_ENTRY, flags);
  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_type_ensure (SW_TYPE_SWATCH);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-step-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SwStepRow, icon);
  gtk_widget_class_bind_template_child (widget_class, SwStepRow, title);
  gtk_widget_class_bind_template_child (widget_class, SwStepRow, detail);
  gtk_widget_class_bind_template_child (widget_class, SwStepRow, number);
  gtk_widget_class_bind_template_child (widget_class, SwStepRow, swatch);
}

static void
sw_step_row_init (SwStepRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
