/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/pan/sw-pan-page.h"

#include "app/cloth/sw-cloth-view.h"
#include "app/pan/sw-dye-list.h"
#include "app/parts/sw-focus.h"
#include "app/pan/sw-pan-tools.h"
#include "app/pan/sw-pan-view.h"
#include "app/pan/sw-properties.h"
#include "app/parts/sw-seen.h"
#include "app/desk/sw-selection.h"
#include "app/pan/sw-step-list.h"
#include "app/pan/sw-strip-view.h"

#include <glib/gi18n-lib.h>

struct _SwPanPage
{
  AdwBin parent_instance;

  SwLive *live;
  SwSelection *selection;
  gboolean inches;

  GtkWidget *dyes;
  GtkWidget *steps;
  GtkWidget *pan;
  GtkWidget *strip;
  GtkWidget *cloth;
  GtkLabel *verdict;
  SwProperties *properties;
};

G_DEFINE_FINAL_TYPE (SwPanPage, sw_pan_page, ADW_TYPE_BIN)

enum
{
  PROP_0,
  PROP_LIVE,
  PROP_INCHES,
  PROP_SELECTION,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static void
show_verdict (gpointer page)
{
  SwPanPage *self = page;
  SwForecast *forecast = sw_live_get_forecast (self->live);
  g_autofree char *sentence = forecast != NULL ? sw_pooling_sentence (&forecast->pooling) : NULL;

  gtk_label_set_text (self->verdict, sentence != NULL ? sentence : "");
}

static void
set_live (SwPanPage *self, SwLive *live)
{
  SwDocument *document = live != NULL ? sw_live_get_document (live) : NULL;

  if (self->live == live)
    return;
  if (self->live != NULL)
    sw_seen_disconnect (GTK_WIDGET (self), self->live);
  g_set_object (&self->live, live);
  g_clear_object (&self->selection);
  if (document != NULL)
    self->selection = sw_selection_new (document);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SELECTION]);
  if (live == NULL)
    return;
  sw_seen_connect (GTK_WIDGET (self), live, "told", show_verdict);
  show_verdict (self);
}

static void
edit_dye_cb (SwPanPage *self, guint dye)
{
  sw_properties_show_dye (self->properties, dye);
}

static void
edit_done_cb (SwPanPage *self)
{
  gtk_widget_grab_focus (self->dyes);
}

/* To the numbers of what is selected, or of the colourway. */
static void
edit_properties_cb (SwPanPage *self)
{
  gtk_widget_child_focus (GTK_WIDGET (self->properties), GTK_DIR_TAB_FORWARD);
}

static gboolean
sw_pan_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (SW_PAN_PAGE (widget)->pan);
}

static void
sw_pan_page_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  SwPanPage *self = SW_PAN_PAGE (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      g_value_set_object (value, self->live);
      break;
    case PROP_INCHES:
      g_value_set_boolean (value, self->inches);
      break;
    case PROP_SELECTION:
      g_value_set_object (value, self->selection);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_pan_page_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  SwPanPage *self = SW_PAN_PAGE (object);

  switch (prop_id)
    {
    case PROP_LIVE:
      set_live (self, g_value_get_object (value));
      break;
    case PROP_INCHES:
      self->inches = g_value_get_boolean (value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
sw_pan_page_dispose (GObject *object)
{
  set_live (SW_PAN_PAGE (object), NULL);

  G_OBJECT_CLASS (sw_pan_page_parent_class)->dispose (object);
}

static void
sw_pan_page_class_init (SwPanPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sw_pan_page_get_property;
  object_class->set_property = sw_pan_page_set_property;
  object_class->dispose = sw_pan_page_dispose;
  widget_class->focus = sw_focus_bin_in_order;
  widget_class->grab_focus = sw_pan_page_grab_focus;

  props[PROP_LIVE] = g_param_spec_object ("live", NULL, NULL, SW_TYPE_LIVE, flags);
  props[PROP_INCHES] = g_param_spec_boolean ("inches", NULL, NULL, FALSE, flags);
  props[PROP_SELECTION] = g_param_spec_object ("selection", NULL, NULL, SW_TYPE_SELECTION, G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_type_ensure (SW_TYPE_CLOTH_VIEW);
  g_type_ensure (SW_TYPE_DYE_LIST);
  g_type_ensure (SW_TYPE_PAN_TOOLS);
  g_type_ensure (SW_TYPE_PAN_VIEW);
  g_type_ensure (SW_TYPE_PROPERTIES);
  g_type_ensure (SW_TYPE_STEP_LIST);
  g_type_ensure (SW_TYPE_STRIP_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/strandwise/Strandwise/sw-pan-page.ui");
  gtk_widget_class_bind_template_child (widget_class, SwPanPage, dyes);
  gtk_widget_class_bind_template_child (widget_class, SwPanPage, steps);
  gtk_widget_class_bind_template_child (widget_class, SwPanPage, pan);
  gtk_widget_class_bind_template_child (widget_class, SwPanPage, strip);
  gtk_widget_class_bind_template_child (widget_class, SwPanPage, cloth);
  gtk_widget_class_bind_template_child (widget_class, SwPanPage, verdict);
  gtk_widget_class_bind_template_child (widget_class, SwPanPage, properties);
  gtk_widget_class_bind_template_callback (widget_class, edit_dye_cb);
  gtk_widget_class_bind_template_callback (widget_class, edit_done_cb);
  gtk_widget_class_bind_template_callback (widget_class, edit_properties_cb);
}

static void
sw_pan_page_init (SwPanPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
sw_pan_page_guide (SwPanPage *self, SwGuide *guide)
{
  g_return_if_fail (SW_IS_PAN_PAGE (self));

  sw_guide_add (guide, self->pan, _ ("The Pan"),
                _ ("This is the skein as it lies in the pan, drawn to scale. Each numbered outline is a pour of dye."));
  sw_guide_add (guide, self->dyes, _ ("Dye Pots"),
                _ ("Your dyes, with the strength of their stock and how fast they strike."));
  sw_guide_add (guide, self->steps, _ ("Steps"),
                _ ("The dyeing from top to bottom: pours, rests, flips, acid, and the final heat. The order matters, as in the kitchen."));
  sw_guide_add (guide, self->strip, _ ("The Strand"),
                _ ("One loop of the yarn as it comes off the skein, with the length of each colour."));
  sw_guide_add (guide, self->cloth, _ ("The Cloth"),
                _ ("What it will look like knitted. It follows every change you make."));
}
