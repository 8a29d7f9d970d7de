/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-yarn-weight-row.h"

#include "app/parts/sw-toast.h"
#include "app/desk/sw-yarn-weights.h"

#include <glib/gi18n-lib.h>

struct _SwYarnWeightRow
{
  AdwPreferencesRow parent_instance;

  SwDocument *document;
  gboolean showing;

  GtkDropDown *drop_down;
};

G_DEFINE_FINAL_TYPE (SwYarnWeightRow, sw_yarn_weight_row, ADW_TYPE_PREFERENCES_ROW)

static void
show (SwYarnWeightRow *self)
{
  if (self->document == NULL)
    return;
  self->showing = TRUE;
  gtk_drop_down_set_selected (self->drop_down, (guint) sw_yarn_weight_of (sw_document_get_sketch (self->document)->yarn.metres_per_100_g));
  self->showing = FALSE;
}

static void
selected_cb (SwYarnWeightRow *self)
{
  guint weight = gtk_drop_down_get_selected (self->drop_down);
  g_autoptr (GError) error = NULL;

  if (self->showing || self->document == NULL || weight >= sw_n_yarn_weights)
    return;
  if (sw_document_edit (self->document, sw_yarn_weight_edit (weight), _ ("Choose Usual Weight of Yarn"), &error))
    return;
  sw_toast (GTK_WIDGET (self), error->message);
  show (self);
}

static void
sw_yarn_weight_row_dispose (GObject *object)
{
  sw_yarn_weight_row_set_document (SW_YARN_WEIGHT_ROW (object), NULL);

  G_OBJECT_CLASS (sw_yarn_weight_row_parent_class)->dispose (object);
}

static void
sw_yarn_weight_row_class_init (SwYarnWeightRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_yarn_weight_row_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-yarn-weight-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SwYarnWeightRow, drop_down);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
}

static void
sw_yarn_weight_row_init (SwYarnWeightRow *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  gtk_widget_init_template (GTK_WIDGET (self));
  for (gsize i = 0; i < sw_n_yarn_weights; i++)
    gtk_string_list_append (names, _ (sw_yarn_weights[i].name));
  self->showing = TRUE;
  gtk_drop_down_set_model (self->drop_down, G_LIST_MODEL (names));
  self->showing = FALSE;
}

void
sw_yarn_weight_row_set_document (SwYarnWeightRow *self, SwDocument *document)
{
  g_return_if_fail (SW_IS_YARN_WEIGHT_ROW (self));

  if (self->document == document)
    return;
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "changed", G_CALLBACK (show), self);
  show (self);
}
