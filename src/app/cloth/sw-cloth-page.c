/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/cloth/sw-cloth-page.h"

#include "app/cloth/sw-cloth-canvas.h"
#include "app/desk/sw-cloth-edit.h"
#include "app/cloth/sw-cloth-panel.h"
#include "app/cloth/sw-scan-view.h"
#include "app/desk/sw-units.h"

/* One press of a zoom button. */
#define ZOOM_STEP 1.25

struct _SwClothPage
{
  AdwBin parent_instance;

  SwLive *live;
  gulong changed_id;
  gboolean inches;
  gboolean showing; /* the controls are being set from the sketch */

  SwClothCanvas *cloth;
  GtkAdjustment *width_adjustment;
  GtkAdjustment *scale_adjustment;
  GtkLabel *width_label;
};

G_DEFINE_FINAL_TYPE (SwClothPage, sw_cloth_page, ADW_TYPE_BIN)

enum
{
  PROP_0,
  PROP_LIVE,
  PROP_INCHES,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static void
show_controls (SwClothPage *self)
{
  const SwSketch *sketch = sw_document_get_sketch (sw_live_get_document (self->live));
  const double width = (double) sketch->cloth.width_stitches;
  g_autofree char *across = sw_units_format (SW_QUANTITY_LENGTH, width * 10 / sketch->cloth.stitches_per_10cm, self->inches ? SW_SYSTEM_US : SW_SYSTEM_METRIC);
  gsize from, to;

  sw_scan_view_range ((gsize) sketch->cloth.width_stitches, &from, &to);
  self->showing = TRUE;
  gtk_adjustment_set_value (self->width_adjustment, width);
  gtk_adjustment_configure (self->scale_adjustment, width, (double) from, (double) to, 1, 4, 0);
  gtk_label_set_text (self->width_label, across);
  self->showing = FALSE;
}

static void
changed_cb (SwClothPage *self, guint what)
{
  if (what & SW_CHANGED (SW_RECORD_CLOTH))
    show_controls (self);
}

static void
set_width (SwClothPage *self, double width)
{
  g_autoptr (GError) error = NULL;

  if (self->showing || self->live == NULL)
    return;
  if (!sw_cloth_set_width (sw_live_get_document (self->live), width, &error))
    {
      gtk_widget_error_bell (GTK_WIDGET (self));
      show_controls (self);
    }
}

static void
width_changed_cb (SwClothPage *self)
{
  set_width (self, gtk_adjustment_get_value (self->width_adjustment));
}

static void
scale_changed_cb (SwClothPage *self)
{
  set_width (self, gtk_adjustment_get_value (self->scale_adjustment));
}

static void
zoom_in_cb (SwClothPage *self)
{
  sw_cloth_canvas_zoom_by (self->cloth, ZOOM_STEP);
}

static void
zoom_out_cb (SwClothPage *self)
{
  sw_cloth_canvas_zoom_by (self->cloth, 1 / ZOOM_STEP);
}

static void
set_live (SwClothPage *self, SwLive *live)
{
  if (self->live == live)
    return;
  if (self->live != NULL)
    g_clear_signal_handler (&self->changed_id, sw_live_get_document (self->live));
  g_set_object (&self->live, live);
  if (live == NULL)
    return;
  self->changed_id = g_signal_connect_swapped (sw_live_get_document (live), "changed", G_CALLBACK (changed_cb), self);
  show_controls (self);
}

static void
sw_cloth_page_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwClothPage *self = SW_CLOTH_PAGE (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      g_value_set_object (value, self->live);
      break;
    case PROP_INCHES:
      g_value_set_boolean (value, self->inches);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_cloth_page_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwClothPage *self = SW_CLOTH_PAGE (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      set_live (self, g_value_get_object (value));
      break;
    case PROP_INCHES:
      self->inches = g_value_get_boolean (value);
      if (self->live != NULL)
        show_controls (self);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_cloth_page_dispose (GObject *object)
{
  set_live (SW_CLOTH_PAGE (object), NULL);

  G_OBJECT_CLASS (sw_cloth_page_parent_class)->dispose (object);
}

static void
sw_cloth_page_class_init (SwClothPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_cloth_page_get_property;
  object_class->set_property = sw_cloth_page_set_property;
  object_class->dispose = sw_cloth_page_dispose;

  props[PROP_LIVE] = g_param_spec_object ("live", NULL, NULL, SW_TYPE_LIVE, flags);
  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_type_ensure (SW_TYPE_CLOTH_CANVAS);
  g_type_ensure (SW_TYPE_CLOTH_PANEL);
  g_type_ensure (SW_TYPE_SCAN_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-cloth-page.ui");
  gtk_widget_class_bind_template_child (widget_class, SwClothPage, cloth);
  gtk_widget_class_bind_template_child (widget_class, SwClothPage, width_adjustment);
  gtk_widget_class_bind_template_child (widget_class, SwClothPage, scale_adjustment);
  gtk_widget_class_bind_template_child (widget_class, SwClothPage, width_label);
  gtk_widget_class_bind_template_callback (widget_class, width_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, scale_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, zoom_in_cb);
  gtk_widget_class_bind_template_callback (widget_class, zoom_out_cb);
}

static void
sw_cloth_page_init (SwClothPage *self)
{
  const SwMember *width = sw_record_find_member (SW_RECORD_CLOTH, "width_stitches");

  self->showing = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_adjustment_set_lower (self->width_adjustment, width->min);
  gtk_adjustment_set_upper (self->width_adjustment, width->max);
  self->showing = FALSE;
}
